"""A YAML file as nodes with places, or everything that is wrong with it.

The fast parser in C reads what is right; as soon as something is wrong the one in Python reads the file again, because
its places and words are known exactly. So what is found does not depend on which of the two is installed.
"""

from __future__ import annotations

from itertools import islice
from typing import Any

import yaml

from sitegen.findings import Collector
from sitegen.reading.nodes import Empty, Mapping, Node, Scalar, Sequence
from sitegen.reading.offsets import Source
from sitegen.reading.slip import MOST_SLIPS, Slip, tell, too_many
from sitegen.reading.yaml_lines import Lines
from sitegen.reading.yaml_nodes import Builder
from sitegen.reading.yaml_slips import hidden_slips, tab_slip
from sitegen.reading.yaml_words_lines import no_space

PYTHON_LOADER: Any = yaml.SafeLoader
FAST_LOADER: Any = getattr(yaml, "CSafeLoader", PYTHON_LOADER)


def read_yaml(
    source: Source, collector: Collector, loader: Any = FAST_LOADER, *, may_be_empty: bool = False
) -> Mapping | None:
    """The keys and values of a file, or None if it cannot be used; says everything that is wrong with it."""
    root, slips = _read(source, loader)
    if loader is not PYTHON_LOADER and any(slip.unread for slip in slips):
        root, slips = _read(source, PYTHON_LOADER)
    for slip in slips:
        tell(slip, source, collector)
    if any(slip.unread for slip in slips):
        return None
    if may_be_empty and (root is None or isinstance(root, Empty)):
        return None
    return _mapping(root, source, collector)


def _read(source: Source, loader: Any) -> tuple[Node | None, list[Slip]]:
    builder = Builder(source)
    failure = builder.read(loader)
    tab = tab_slip(source, builder.reached, builder.long_texts)
    if tab is not None:
        return None, [tab]  # the rest may be a consequence of it
    if failure is not None:
        return None, [*builder.slips, failure]
    slips = [*builder.slips, *islice(hidden_slips(builder.doubtful, source), MOST_SLIPS + 1)]
    if len(slips) > MOST_SLIPS:
        slips[MOST_SLIPS:] = [too_many(slips[MOST_SLIPS])]
    return builder.root, slips


def _mapping(root: Node | None, source: Source, collector: Collector) -> Mapping | None:
    if isinstance(root, Mapping):
        return root
    if root is None or isinstance(root, Empty):
        tell(Slip("file-empty", 0, 0, "There is nothing in this file."), source, collector)
        return None
    lines = Lines(source)
    slip = no_space(root.place.line, lines) if isinstance(root, Scalar) and not root.quoted else None
    if slip is None:
        what = "a list" if isinstance(root, Sequence) else "only text"
        message = f"This file must hold keys with values, such as title: Summer tee; it holds {what}."
        slip = Slip("not-a-mapping", *lines.full(root.place.line), message)
    tell(slip, source, collector)
    return None
