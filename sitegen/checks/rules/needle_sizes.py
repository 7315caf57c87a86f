"""The two numbers of a needle's size, which must be one size."""

from __future__ import annotations

import re
from collections.abc import Iterator

from sitegen.checks.registry import COMMON_PRACTICE, check
from sitegen.findings import Finding, Place, Severity
from sitegen.tutorial import Computed, Step, Tutorial

SIZES = {
    60: (8,),
    65: (9,),
    70: (10,),
    75: (11,),
    80: (12,),
    85: (13,),
    90: (14,),
    100: (16,),
    110: (18,),
    120: (19, 20),
}
"""Hundredths of a millimetre, and the older number or numbers of the same needle."""
_NEEDLE = re.compile(r"\bneedles?\b", re.IGNORECASE)
_NO_INCH = r"(?![\d/]|\s*(?:in(?:ch|ches)?\b|[\"″]))"
_SIZE = re.compile(rf"(?<![\d.,/])(?P<metric>\d{{2,3}})/(?P<older>\d{{1,2}}){_NO_INCH}")
_TWIN_SIZE = re.compile(rf"(?<![\d.,/])\d(?:[.,]\d)?/(?P<metric>\d{{2,3}}){_NO_INCH}")
_NEAR_NEEDLE = re.compile(rf"\bneedles?\b[^.;:\d]{{0,20}}(?P<size>\d[\d.,]*/\d+){_NO_INCH}", re.IGNORECASE)


@check(
    id="needle-size",
    area="supplies",
    severity=Severity.DOUBTFUL,
    looks_at=(Tutorial, Step),
    title="A size of a needle that does not exist",
    why="The student looks for it in vain, or takes a needle that is too thick or too fine for the cloth.",
    source="From 70/10 to 90/14 for knits: sewing.org; the whole row of sizes is " + COMMON_PRACTICE,
    trips="supplies: [{item: universal needle, size: 80/14}, {item: thread}]",
    passes="supplies: [{item: universal needle, size: 80/12}, {item: thread}]",
)
def needle_size(part: Tutorial | Step, computed: Computed) -> Iterator[Finding]:
    """Both numbers of a needle's size, in the supplies and on the cards, belong together: 80/12, 90/14. Behind the gap
    of a twin needle stands such a size too: 4.0/75."""
    for text, place in _on_card(part) if isinstance(part, Step) else _in_supplies(part):
        if match := _SIZE.search(text):
            metric, older = int(match["metric"]), int(match["older"])
            if older not in SIZES.get(metric, ()):
                yield _finding(match.group(), _pairs(metric, older), text, place)
        elif (match := _TWIN_SIZE.search(text)) and int(match["metric"]) not in SIZES:
            yield _finding(match.group(), [], text, place)


def _in_supplies(tutorial: Tutorial) -> Iterator[tuple[str, Place]]:
    for supply in tutorial.supplies:
        if _NEEDLE.search(supply.item.text):
            yield from ((words.text, words.place) for words in (supply.size, supply.item) if words is not None)


def _on_card(step: Step) -> Iterator[tuple[str, Place]]:
    yield from ((need.text, need.place) for need in step.needs if _NEEDLE.search(need.text))
    for text in step.prose():
        for match in _NEAR_NEEDLE.finditer(text.text):
            start, end = match.span("size")
            yield text.text[start:end], text.locate(start, end)


def _pairs(metric: int, older: int) -> list[str]:
    """The sizes that have one of the two numbers."""
    return [f"{size}/{numbers[0]}" for size, numbers in SIZES.items() if size == metric or older in numbers]


def _finding(said: str, pairs: list[str], text: str, place: Place) -> Finding:
    usual = f" Usual {'is' if len(pairs) == 1 else 'are'} {' and '.join(pairs)}." if pairs else ""
    return Finding(
        "needle-size",
        Severity.DOUBTFUL,
        place,
        f"{said} is no usual size of a needle.{usual}",
        text,
        text.replace(said, pairs[0]) if len(pairs) == 1 else "",
    )
