"""The length of edges in a seam once their gathers are drawn in and their pleats are folded."""

from __future__ import annotations

from collections import Counter

from sitegen.quantities import Worked
from sitegen.sewing import gather
from sitegen.tutorial.compute.given import edge_number
from sitegen.tutorial.compute.naming import words_of
from sitegen.tutorial.compute.result import Computed
from sitegen.tutorial.model import Gather, Reference


def pleated_width(chain: tuple[Reference, ...], computed: Computed, size: int) -> Worked | None:
    """The finished width of the pleats that lie in exactly these edges; None when there are none."""
    names = Counter(name.name for name in chain)
    for pleats in computed.tutorial.pleats.values():
        if pleats.edges and Counter(name.name for name in pleats.edges) == names:
            return computed.number(f"{pleats.key}.finished_width", size)
    return None


def gathered_edge(name: Reference, computed: Computed, size: int) -> Worked | None:
    """The length of an edge once it is gathered; None when it is not, or when its ratio is not known."""
    found = _gather_of(name.name, computed)
    if found is None:
        return None
    before, ratio = (
        computed.length(edge_number(name, computed.tutorial), size),
        computed.number(f"{found.key}.ratio", size),
    )
    if before is None or ratio is None or not ratio.number:
        return None
    return gather.gathered_length(f"{words_of(name.name)} drawn in", before, ratio)


def _gather_of(name: str, computed: Computed) -> Gather | None:
    gathers = computed.tutorial.gathers.values()
    return next((each for each in gathers if any(edge.name == name for edge in each.edges)), None)
