"""A length in a text beside a written sum in which it stands with another value."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

from sitegen.checks.registry import COMMON_PRACTICE, check
from sitegen.findings import Finding, Severity
from sitegen.prose import WrittenSum, find_pairs, find_sums
from sitegen.quantities import NUMBER_PATTERN, UNIT_NAMES, Length, NotUnderstood, number_of
from sitegen.tutorial import Computed, Prose

_BLOCK = re.compile(r"(?:[^\n]|\n(?!\s*(?:\n|[-*|] |\d{1,2}[.)] )))+")
_UNITS = r"(?P<unit>in|cm|mm)(?![A-Za-z])(?!\s+(?:the|a|an|this|that|your|each|both|all)\b)"
_LENGTH = re.compile(rf"(?<![\w{{./,⁄-]){NUMBER_PATTERN}\s*{_UNITS}")
_SIGN = re.compile(r"[+−×÷=]\s*$")
_HEAD = "--- steps/01.yaml\ntitle: Measure\ntext: The shoulder measures "
_TAIL = " along the cutting line, and a seam takes 3/8 in at each end. So 6 7/8 in − 3/8 in − 3/8 in = 6 1/8 in."


@dataclass(frozen=True, slots=True)
class _Lone:
    """A length outside every sum and pair."""

    length: Length
    text: str
    number: str
    unit: str
    start: int
    end: int


@check(
    id="length-beside-sum",
    area="sums",
    severity=Severity.DOUBTFUL,
    looks_at=Prose,
    title="A length that is another in the sum beside it",
    why="The sentence says 6 in, the sum behind it begins with 6 7/8 in, and the student does not know which holds.",
    source="A sum is made of the numbers that the sentences before it name: " + COMMON_PRACTICE,
    trips=_HEAD + "6 in" + _TAIL,
    passes=_HEAD + "6 7/8 in" + _TAIL,
)
def length_beside_sum(part: Prose, computed: Computed) -> Iterator[Finding]:
    """A length in the sentences beside a written sum that is almost a term of it, which is named nowhere else there:
    the same digits in another order or unit, or the same whole number with another fraction."""
    for block in _BLOCK.finditer(part.text):
        sums = [each for each in find_sums(part.text) if block.start() <= each.terms[0].start < block.end()]
        if not sums:
            continue
        lone = list(_lone(part.text, block.start(), block.end(), sums))
        terms = _terms(part.text, sums)
        said = {each.length for each in lone}
        unsaid = {length: text for length, text in terms.items() if length not in said}
        for each in lone:
            meant = [length for length, text in unsaid.items() if _almost(each, length, text)]
            if each.length not in terms and meant:
                right = unsaid[min(meant, key=lambda length: abs(length.mm - each.length.mm))]
                yield Finding(
                    "length-beside-sum",
                    Severity.DOUBTFUL,
                    part.locate(each.start, each.end),
                    f"The text says {each.text}, the sum beside it has {right}.",
                    part.text[each.start : each.end],
                    right,
                )


def _terms(text: str, sums: list[WrittenSum]) -> dict[Length, str]:
    """Every length in the sums, as it is written there."""
    found: dict[Length, str] = {}
    for each in sums:
        for term in (*each.terms, each.result):
            if isinstance(term.value, Length):
                found.setdefault(term.value, " ".join(text[term.start : term.end].split()))
    return found


def _lone(text: str, start: int, end: int, sums: list[WrittenSum]) -> Iterator[_Lone]:
    paired = [(pair.start, pair.end) for pair in find_pairs(text)]
    summed = [(each.terms[0].start, each.result.end) for each in sums]
    for match in _LENGTH.finditer(text, start, end):
        inside = any(first <= match.start() < last for first, last in (*paired, *summed))
        if inside or _SIGN.search(text, start, match.start()):
            continue
        try:
            number = number_of(match)
        except NotUnderstood:
            continue
        length = Length(number * UNIT_NAMES[match["unit"]].mm)
        said = " ".join(match.group().split())
        yield _Lone(length, said, said.removesuffix(match["unit"]).strip(), match["unit"], *match.span())


def _almost(lone: _Lone, length: Length, text: str) -> bool:
    """Whether a term is this length but for a slip: the same number with another unit, its digits in another order,
    a point moved, its fraction dropped or changed, or one more or less."""
    number, _, unit = text.rpartition(" ")
    if unit not in ("in", "cm", "mm"):
        return False
    if number == lone.number:
        return True
    if unit != lone.unit:
        return False
    digits, own = re.sub(r"\D", "", number), re.sub(r"\D", "", lone.number)
    if (sorted(digits) == sorted(own) and len(own) > 1) or digits.rstrip("0") == own.strip("0"):
        return True
    whole, own_whole = re.match(r"\d+(?!\d*/)", number), re.match(r"\d+(?!\d*/)", lone.number)
    fraction = " " in number or "/" in number or "." in number
    if whole and own_whole and whole.group() == own_whole.group() and fraction:
        return True
    near = abs(length.mm - lone.length.mm) <= max(length.mm / 10, UNIT_NAMES[unit].mm / 8)
    return near and fraction
