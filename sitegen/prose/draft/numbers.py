"""What was understood of the numbers in a step, one line each, for the author to confirm."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from sitegen.findings import Severity
from sitegen.prose.captions import Captions, clock
from sitegen.prose.draft.steps import Step
from sitegen.prose.find import read
from sitegen.prose.measurement import Kind, Measurement
from sitegen.prose.proofread import TextFinding, proofread
from sitegen.quantities import RULER, Length, System, Unit, decimal, vulgar

_BESIDE = {
    Kind.RATIO: "a ratio",
    Kind.STITCH: "a stitch setting",
    Kind.WEIGHT: "a weight of cloth",
    Kind.AREA: "an area",
    Kind.TIME: "a time",
    Kind.COUNT: "a count",
}


Told = tuple[str, Fraction, TextFinding]
"""The words in which an error is said, when, and the error."""


@dataclass(frozen=True, slots=True)
class Heard:
    """Measurements, wrong and doubtful sums of a step, a line each: the time, the words and what was understood."""

    measurements: tuple[str, ...]
    wrong: tuple[str, ...]
    doubtful: tuple[str, ...]


def unit_of(steps: Iterable[Step]) -> Unit:
    """Inches, or centimetres where most lengths of the talk are said in metric units."""
    said = [each.unit for step in steps for each in read(step.text) if each.unit is not None and not each.supplied]
    metric = sum(1 for unit in said if unit.system is System.CENTIMETRES)
    return Unit.CM if metric * 2 > len(said) else Unit.IN


def heard_in(step: Step, author: Unit, errors: Iterable[Told]) -> Heard:
    """Everything that is measured in a step, and those sums of the talk that are in it and do not add up."""
    found = [
        f"{clock(step.time_at(each.start))}  {_quoted(each.text)}  = {_understood(each)}   confirm"
        for each in read(step.text, author=author)
    ]
    wrong, doubtful = [], []
    for said, when, error in errors:
        at = f"{clock(when)}  {_quoted(said)}"
        if error.severity is Severity.WRONG:
            wrong.append(f"{at}  should be {_plain(error.should_be)}: {_plain(error.message)}")
        else:
            doubtful.append(f"{at}  {_plain(error.message)}")
    return Heard(tuple(found), tuple(wrong), tuple(doubtful))


def told_in(captions: Captions, steps: Sequence[Step], author: Unit) -> tuple[tuple[Told, ...], ...]:
    """What is wrong in each step. The talk is read as a whole, as proofreading its captions reads it: what was said in
    the step before tells what a number means."""
    found: list[list[Told]] = [[] for _ in steps]
    begins = [step.begins for step in steps]
    for error in proofread(captions.said, author=author):
        cue = captions.cue_at(error.start)
        when = cue.begins if cue is not None else Fraction(0)
        said = captions.words(error.start, error.end)
        at = max(0, bisect_right(begins, when) - 1)
        if at and said not in _plain(steps[at].text) and said in _plain(steps[at - 1].text):
            at -= 1  # the step opens in the middle of this caption
        found[at].append((said, when, error))
    return tuple(map(tuple, found))


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
