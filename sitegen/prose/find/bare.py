"""Numbers without any unit where only a length fits: ``sew it at three eighths``. The unit is the author's."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise

from sitegen.prose.find.measured import Measured, between
from sitegen.prose.find.numbers import Form
from sitegen.prose.find.tokens import Tokens
from sitegen.prose.measurement import Kind
from sitegen.prose.words import words
from sitegen.quantities import UNIT_NAMES, Unit

_RULER_PARTS = (8, 16)
_COARSE_PARTS = (2, 4)
_AT_WORDS = words("at a to by the")
_SEAM_WORDS = words("seam seams allowance allowances hem hems margin from topstitch topstitching edge")


_DIMENSIONS = words("wide long deep high tall across")


_MEASURED = _DIMENSIONS | frozenset(("around", "round"))
_CUTTING_DOWN = words(
    "sew stitch sewn stitched trim trimmed grade graded topstitch seam allowance allowances press clip"
)
_NO_LENGTH_BEHIND = words("of way full through length circle yard : past turn marks mark")
"""What stands behind a share, a way or a turn."""
_GIRTHS = words("waist waists hip hips bust busts chest chests inseam inseams")
_SMALLEST_GIRTH = 20
_NAMED = words("size sizes age ages no number")
_LISTED = ((",",), ("and",), ("or",), (",", "and"), ("&",))
_ENDS = words(". , ; ) and or so which with")
_SHAPES = words("square squares rectangle piece panel block")


_UNITS_BEFORE = {
    name: unit
    for name, unit in UNIT_NAMES.items()
    if name in words("inches centimetres centimeters millimetres millimeters")
}
_SAYS = words("that that's it it's is about roughly around nearly almost so just call , :")
"""Words between a unit said first and its number: ``in centimetres that's 46``."""


def with_author_unit(tokens: Tokens, found: Sequence[Measured], author: Unit) -> list[Measured]:
    """The numbers, those that can only be lengths given the author's unit."""
    sides, girths = _sides(tokens, found), _girths(tokens, found)
    return [
        replace(one, kind=Kind.LENGTH, unit=said)
        if one.kind is None and not one.counted and (said := _unit_said_first(tokens, one)) is not None
        else replace(one, kind=Kind.LENGTH, unit=_among_yards(found, index) or _own_unit(one, author), supplied=True)
        if one.kind is None
        and not one.counted
        and (one.first in sides or one.first in girths or _only_a_length_fits(tokens, one))
        else one
        for index, one in enumerate(found)
    ]


def _unit_said_first(tokens: Tokens, one: Measured) -> Unit | None:
    """The unit of ``in centimetres that's 46``."""
    at = one.first - 1
    while at > max(0, one.first - 6) and tokens.words[at] in _SAYS:
        at -= 1
    if at < 1 or at == one.first - 1 or tokens.words[at - 1] != "in":
        return None
    return _UNITS_BEFORE.get(tokens.words[at])


def _among_yards(found: Sequence[Measured], index: int) -> Unit | None:
    """Yards, where both neighbours are in yards: ``3 yards, used 1 7/8, and 1 1/8 yards left``."""
    beside = [*found[max(0, index - 1) : index], *found[index + 1 : index + 2]]
    return Unit.YD if len(beside) == 2 and all(other.unit is Unit.YD for other in beside) else None


def _sides(tokens: Tokens, found: Sequence[Measured]) -> set[int]:
    """The first tokens of two bare numbers that are the sides of something: ``eight and a half by eleven``."""
    sides: set[int] = set()
    for one, other in pairwise(found):
        if one.kind is None and other.kind is None and between(tokens, one, other) in (("by",), ("x",), ("×",)):
            before = set(tokens.words[max(0, one.first - 4) : one.first])
            measured = one.value >= 3 and other.value >= 3 and any(each.kind is Kind.LENGTH for each in found)
            if measured or Form.MIXED in (one.form, other.form) or (before & _SHAPES and one.value >= 3):
                sides |= {one.first, other.first}
    return sides


def _girths(tokens: Tokens, found: Sequence[Measured]) -> set[int]:
    """The first tokens of numbers that tell how large people are: ``chest 39, waist 34``, ``chests 40, 42 and 44``."""
    girths: set[int] = set()
    for index, one in enumerate(found):
        if one.kind is not None or one.counted or one.form is Form.FRACTION or one.value < _SMALLEST_GIRTH:
            continue
        ahead = tokens.words[one.first - 1] if one.first else ""
        listed = index > 0 and found[index - 1].first in girths and between(tokens, found[index - 1], one) in _LISTED
        ends = one.behind >= len(tokens) or tokens.words[one.behind] in _ENDS
        if ends and (
            listed or (ahead in _GIRTHS and not _NAMED.intersection(tokens.words[max(0, one.first - 4) : one.first]))
        ):
            girths.add(one.first)
    return girths


def _own_unit(one: Measured, author: Unit) -> Unit:
    """A vulgar fraction is of an inch, whatever the author's unit."""
    return Unit.IN if one.form in (Form.FRACTION, Form.MIXED) else author


def _only_a_length_fits(tokens: Tokens, one: Measured) -> bool:
    after = [*tokens.words[one.behind : one.behind + 2], "", ""]
    if after[0] in _NO_LENGTH_BEHIND:
        return False
    if (
        one.spoken
        and one.behind == one.first + 1
        and tokens.words[max(0, one.first - 1) : one.first] in (["in"], ["to"])
    ):
        return False  # “fold it in half long ways”, “we're going to quarter that”
    if after[0] in _DIMENSIONS and one.form is not Form.WHOLE:
        return True
    measured = tokens.words[one.first - 1] in ("is", "it's") if one.first else False
    if measured and after[0] in _MEASURED and one.value >= 3:
        return True
    if after[1] in ("circle", "points", "marks", "mark", "way"):
        return False
    before = tokens.words[max(0, one.first - 5) : one.first]
    last = before[-1] if before else ""
    if one.value.denominator in _COARSE_PARTS and after[0] in ("on", "at") and after[1] in ("each", "both", "either"):
        return True
    seam_behind = after[0] in ("seam", "seams", "allowance", "allowances") or (
        after[0] == "-" and after[1] in ("seam", "allowance")
    )
    seam_before = last in ("of", "is", "are", "at", ":", "=") and bool(set(before) & {"allowance", "allowances"})
    if one.form is Form.WHOLE:
        return (
            seam_behind
            and not one.spoken
            and (after[1] in ("allowance", "allowances") or after[0] == "allowance")
            and last in ("a", "the", "with", "using", "take")
        )
    if one.form is Form.DECIMAL:
        return seam_behind or seam_before
    bottom = one.value.denominator
    if bottom in _RULER_PARTS:
        return last not in ("into", "per") and not (last == "on" and not one.spoken)
    if bottom not in _COARSE_PARTS or after[0] in ("the", "its", "as"):
        return False
    behind = after[0] in _SEAM_WORDS or (
        after[0] in ("inside", "in", "away", "below", "above") and after[1] in ("from", "the", "of")
    )
    at_end = (
        last in ("at", "to", "by", "a")
        and bool(set(before) & _CUTTING_DOWN)
        and not (set(before) & {"fold", "folded", "into", "reduce"})
    )
    return seam_behind or seam_before or (last in _AT_WORDS and behind) or at_end
