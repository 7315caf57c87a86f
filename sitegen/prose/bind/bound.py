"""Every length of a text that its words bind to numbers of the tutorial."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache

from sitegen.prose.bind.parts import Around
from sitegen.prose.bind.phrases import BY, PHRASES
from sitegen.prose.bind.sentences import sentence_around, sentence_ends, sizes_named
from sitegen.prose.find import read
from sitegen.prose.measurement import Kind, Measurement
from sitegen.tutorial import Computed, Prose, Step

_HEDGED_BEFORE = re.compile(
    r"(?:\b(?:about|roughly|around|approximately|nearly|almost|just (?:over|under)|(?:more|less|longer|shorter) than"
    r"|at (?:least|most)|up to|a (?:scant|generous|good))|~)\s*\Z",
    re.IGNORECASE,
)
_HEDGED_BEHIND = re.compile(r"\s*(?:or (?:so|more|less)|at (?:least|most))\b", re.IGNORECASE)
"""Near a number is not it: ``about 60 cm``, ``60 cm or so``."""
_UNSURE = re.compile(
    r"\b(?:if|unless|whether|would|could|might|instead|rather|prefer|other|others|many|most|usual|usually|often|mostly"
    r"|commercial|bought|ready-to-wear)\b",
    re.IGNORECASE,
)
"""A sentence with one of these may speak of what is not done here: ``many patterns have a 1.5 cm seam allowance``."""
_LISTED = re.compile(r"\s*(?:,|,?\s*(?:and|or)|/)\s*")


@dataclass(frozen=True, slots=True)
class Bound:
    """A typed length and the names of the numbers that its words can mean: it must be one of them, or ``less`` than
    one.

    It is ``sure`` where they can mean nothing else, in a sentence that speaks of what is done.
    """

    measurement: Measurement
    names: tuple[str, ...]
    size: int | None = None
    """The size of which the sentence speaks, None for all."""
    sure: bool = True
    less: bool = False
    row: tuple[int, int] = (0, 0)
    """From where to where the list reaches in which it stands, one length for each size; or only itself."""


@lru_cache(maxsize=2048)
def _measurements(text: str) -> tuple[Measurement, ...]:
    """The measurements of a text; kept, since more than one check asks for them, in every view."""
    return read(text)


def bind(prose: Prose, step: Step | None, computed: Computed) -> Iterator[Bound]:
    """Every length of a text that its words bind to a number of the tutorial.

    Of lengths in a list, ``63, 68 and 74 cm long``, each is that of its size where there is one for each.
    """
    text = prose.text
    ends = sentence_ends(text)
    found = [each for each in _measurements(text) if each.kind is Kind.LENGTH and each.high is None]
    for row in _rows(found, text):
        last = row[-1]
        if (
            last.supplied
            or (last.carried and not BY.match(text, last.end))
            or len(row) not in (1, computed.tutorial.size_count)
        ):
            continue
        start, end = sentence_around(ends, row[0].start, last.end)
        hedged = _HEDGED_BEFORE.search(text, start, row[0].start) or _HEDGED_BEHIND.match(text, last.end, end)
        around = Around(text[start : row[0].start], text[last.end : end], step, computed)
        for phrase in PHRASES:
            if hedged and not phrase.less:
                continue
            names = around.known(phrase.names(around)) if phrase.fits(around) else ()
            if names:
                sizes = sizes_named(around.sentence, computed.tutorial)
                size = sizes[0] if len(sizes) == 1 else None
                span = row[0].start, last.end
                sure = phrase.sure and _UNSURE.search(around.sentence) is None
                for index, one in enumerate(row):
                    own = size if len(row) == 1 else index
                    yield Bound(one, names, own, sure, phrase.less, span)
                break


def _rows(found: Sequence[Measurement], text: str) -> Iterator[list[Measurement]]:
    """The lengths of a text, those that a list joins together."""
    row: list[Measurement] = []
    for one in found:
        if row and not (row[-1].carried and _LISTED.fullmatch(text, row[-1].end, one.start)):
            yield row
            row = []
        row.append(one)
    if row:
        yield row
