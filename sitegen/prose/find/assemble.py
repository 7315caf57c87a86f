"""Puts numbers together into measurements."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from sitegen.prose.find.atoms import Atom
from sitegen.prose.find.bare import with_author_unit
from sitegen.prose.find.carried import with_carried_units
from sitegen.prose.find.measured import CIRCLE_NUMBERS, Measured, between, word_at
from sitegen.prose.find.numbers import Form
from sitegen.prose.find.ranges import with_ranges
from sitegen.prose.find.tokens import Tokens
from sitegen.prose.find.unsaid import with_unsaid_units
from sitegen.prose.measurement import Kind
from sitegen.prose.words import words
from sitegen.quantities import Unit

_LISTED = (("to",), ("and",), ("or",), (",",), ("-",), ("–",), (",", "and"), (",", "or"), ("&",))
LOOK_ALIKES = words(
    "size sizes step steps view views age ages aged page pages needle needles figure fig no number"
    " numbers chapter part parts tension setting settings style option row rows group groups table line"
    " lines level version photo picture weight lesson session week day class year years grade pattern"
    " piece pieces point points stage cup dial programme program stitch card cards video section sheet"
    " sheets volume tex tkt ticket denier ply speed gauge course round room building"
)
"""Words before a number that is no measurement, unless a unit says otherwise."""
_NUMBERED = words(
    "lesson lessons age ages aged step steps row rows page pages chapter chapters week weeks day days class classes"
    " size sizes grade grades session sessions view views figure figures"
)
"""Words before ``3-8`` that make it a range of numbers, and no three eighths."""
_BEHIND_LENGTHS = words("from away below above of in inch inside outside")
_FOLK = words("people persons students kids children adults participants beginners sewists")
_YEARS = range(1900, 2100)
_BEFORE_YEARS = words("in since by during until till before after around spring summer autumn fall winter")
_NEEDLES = {60: 8, 65: 9, 70: 10, 75: 11, 80: 12, 90: 14, 100: 16, 110: 18, 120: 19}
"""Sizes of needles in hundredths of a millimetre and in the older numbers, said together: ``an eighty twelve``
(common practice, no source)."""


def assembled(tokens: Tokens, atoms: Sequence[Atom], author: Unit) -> list[Measured]:
    """All numbers in order, each with what can be known of it. ``author`` is the unit where no unit stands."""
    numbers = with_ranges(tokens, _counted_on(tokens, [_single(tokens, atom) for atom in atoms]))
    measured = with_author_unit(tokens, with_carried_units(tokens, numbers), author)
    return with_unsaid_units(tokens, measured, author)


def _counted_on(tokens: Tokens, numbers: list[Measured]) -> list[Measured]:
    """The numbers, those that go on a list of numbered things counted too: ``steps 4 to 6``, ``sizes 8, 10 and 12``."""
    for index in range(1, len(numbers)):
        one, other = numbers[index - 1], numbers[index]
        if one.counted and other.kind is None and other.form is Form.WHOLE and _goes_on_list(tokens, one, other):
            numbers[index] = replace(other, counted=True)
        elif _are_needles(one, other):
            numbers[index - 1], numbers[index] = replace(one, counted=True), replace(other, counted=True)
    return numbers


def _are_needles(one: Measured, other: Measured) -> bool:
    beside = one.behind == other.first and one.kind is other.kind is None
    return beside and _NEEDLES.get(int(one.value)) == other.value


def _goes_on_list(tokens: Tokens, one: Measured, other: Measured) -> bool:
    several = one.first > 0 and tokens.words[one.first - 1].endswith("s")
    return several and between(tokens, one, other) in _LISTED


def _single(tokens: Tokens, atom: Atom) -> Measured:
    return Measured(
        atom.first,
        atom.behind,
        atom.value,
        Kind.RATIO if atom.kind is None and atom.value in CIRCLE_NUMBERS else atom.kind,
        atom.unit,
        atom.form,
        decimals=atom.decimals,
        spoken=atom.spoken,
        counted=atom.kind is None and _names(tokens, atom),
    )


def _names(tokens: Tokens, atom: Atom) -> bool:
    """Whether a number without a unit only names or counts: ``size 12``, ``rows 3-8``, ``3-8 people``, ``in 2024``."""
    if atom.form is Form.FRACTION:
        if tokens.words[atom.first + 1 : atom.first + 2] != ["-"] or atom.spoken:
            return False
        behind = word_at(tokens, atom.behind)
        return behind in _FOLK or (word_at(tokens, atom.first - 1) in _NUMBERED and behind not in _BEHIND_LENGTHS)
    if _is_a_side(tokens, atom.behind):
        return False
    return _is_counted(tokens, atom.first) or _is_a_year(tokens, atom)


def _is_a_year(tokens: Tokens, atom: Atom) -> bool:
    """Whether it is a year of our time behind a word that goes before one."""
    if atom.form is not Form.WHOLE or atom.spoken or len(tokens.words[atom.first]) != 4:
        return False
    return word_at(tokens, atom.first - 1) in _BEFORE_YEARS and int(atom.value) in _YEARS


def _is_a_side(tokens: Tokens, behind: int) -> bool:
    """Whether another side follows: ``pieces 16 x 18 in``."""
    return tokens.words[behind : behind + 1] in (["x"], ["×"]) and tokens.value(behind + 1) is not None


def _is_counted(tokens: Tokens, first: int) -> bool:
    before = tokens.words[first - 1] if first else ""
    if before in (".", ":", "no.") and first > 1 and tokens.ends[first - 2] == tokens.starts[first - 1]:
        before = tokens.words[first - 2] if tokens.words[first - 2] in ("no", "fig") else before
    return before in LOOK_ALIKES
