"""What was understood of the numbers in a step, one line each, for the author to confirm."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from fractions import Fraction

from sitegen.prose.captions import clock
from sitegen.prose.draft.steps import Step
from sitegen.prose.find import read
from sitegen.prose.measurement import Kind, Measurement
from sitegen.prose.proofread import proofread
from sitegen.quantities import RULER, Length, System, Unit, decimal, vulgar

_BESIDE = {
    Kind.RATIO: "a ratio",
    Kind.STITCH: "a stitch setting",
    Kind.WEIGHT: "a weight of cloth",
    Kind.AREA: "an area",
    Kind.TIME: "a time",
    Kind.COUNT: "a count",
}


@dataclass(frozen=True, slots=True)
class Heard:
    """Measurements and wrong sums of a step, a line each, with the time, the words and what was understood."""

    measurements: tuple[str, ...]
    wrong: tuple[str, ...]


def unit_of(steps: Iterable[Step]) -> Unit:
    """Inches, or centimetres where most lengths of the talk are said in metric units."""
    said = [each.unit for step in steps for each in read(step.text) if each.unit is not None and not each.supplied]
    metric = sum(1 for unit in said if unit.system is System.CENTIMETRES)
    return Unit.CM if metric * 2 > len(said) else Unit.IN


def heard_in(step: Step, author: Unit) -> Heard:
    """Everything that is measured in a step, and every sum in it that does not add up."""
    found = [
        f"{clock(step.time_at(each.start))}  {_quoted(each.text)}  = {_understood(each)}   confirm"
        for each in read(step.text, author=author)
    ]
    wrong = [
        f"{clock(step.time_at(each.start))}  {_quoted(step.text[each.start : each.end])}  should be"
        f" {_plain(each.should_be)}: {_plain(each.message)}"
        for each in proofread(step.text, author=author)
    ]
    return Heard(tuple(found), tuple(wrong))


def _understood(found: Measurement) -> str:
    if found.kind is Kind.LENGTH and found.unit is not None:
        shown = " to ".join(_both(Length(end), found.unit) for end in _ends(found))
        return f"{shown}, without a unit of its own" if found.supplied or found.carried else shown
    numbers = " to ".join(decimal(end, 3) for end in _ends(found))
    return f"{numbers}%" if found.kind is Kind.PERCENT else f"{numbers}, {_BESIDE[found.kind]}"


def _ends(found: Measurement) -> Iterator[Fraction]:
    yield found.low
    if found.high is not None:
        yield found.high


def _both(value: Length, unit: Unit) -> str:
    """The length as it was said, exactly, and in the other system as a ruler shows it."""
    other = System.CENTIMETRES if unit.system is System.INCHES else System.INCHES
    number = value.in_unit(unit)
    own = f"{vulgar(number) if unit.system is System.INCHES else decimal(number, 3)} {unit.symbol}"
    return f"{own} ({RULER.show(value, other)})"


def _quoted(words: str) -> str:
    return f'"{_plain(words)}"'


def _plain(words: str) -> str:
    return " ".join(words.split())
