"""Each number of a text with the unit right behind it: ``3/8 in``, ``half an inch``, ``an inch and a half``."""

from __future__ import annotations

from fractions import Fraction
from typing import NamedTuple

from sitegen.prose.find.numbers import STARTS, Form, Number, fraction_at, number_at
from sitegen.prose.find.tokens import TokenKind, Tokens
from sitegen.prose.find.units import UnitFound, unit_at
from sitegen.prose.measurement import Kind
from sitegen.prose.words import MONEY, words
from sitegen.quantities import Unit

_ARTICLES = frozenset(("a", "an"))
_ONE_UNITS = words("inch yard metre meter centimetre centimeter millimetre millimeter")
_LENGTH_WORDS = _ONE_UNITS | words("inches yards metres meters centimetres centimeters millimetres millimeters cm mm")
_RATES = words("stitches stitch per every spi pounds $ £ €") | MONEY
_SMALLER = {Unit.YD: (Unit.FT, Unit.IN), Unit.FT: (Unit.IN,), Unit.M: (Unit.CM, Unit.MM), Unit.CM: (Unit.MM,)}
_METRIC = (Unit.MM, Unit.CM, Unit.M)


class Atom(NamedTuple):
    """A number and what it measures, from token ``first`` up to, not including, ``behind``.

    ``kind`` is None where no unit stands.
    """

    value: Fraction
    form: Form
    first: int
    behind: int
    kind: Kind | None = None
    unit: Unit | None = None
    decimals: int | None = None
    spoken: bool = False


_EMPHASIS = words("whole full more extra further good")
"""Words between a number and its unit: ``one more inch``, ``another whole inch``."""
_STARTS = STARTS | {"another"}
_FOOT = words("foot feet ft")
_FEET_MARKS = words("' ′ ’")
_STATURES = (4, 5, 6)
_BEFORE_STATURE = words("i'm she's he's am is are be at about only barely you're they're")
"""Words before the height of a person: ``I'm 5'4 if that helps``."""
_BEHIND_HEIGHT = words(
    "so and but tall is for which that she he i we you on in at with when from by to over nothing . , ; : ! ? )"
)
"""What may stand behind inches that are said without their unit: ``five foot two``."""
_HEIGHTS = (Form.WHOLE, Form.MIXED)
_POINTING = frozenset(("this", "that", "each", "every", "which", "another"))
"""``this one`` is no number."""


def atoms_of(tokens: Tokens, text: str) -> list[Atom]:
    """All numbers in order, none inside another."""
    found: list[Atom] = []
    behind = 0
    spoken = [index for index, word in enumerate(tokens.words) if word in _STARTS]
    for index in sorted([*spoken, *tokens.printed]):
        if index >= behind and (atom := _atom_at(tokens, index, text)) is not None:
            found.append(atom)
            behind = atom.behind
    return found


def _atom_at(tokens: Tokens, index: int, text: str) -> Atom | None:
    word = tokens.words[index]
    if index not in tokens.printed and (one := _one_unit(tokens, index, word)):
        return _compound(tokens, _with_fraction(tokens, one, text), text)
    number = number_at(tokens, index)
    if number is None:
        return None
    if number.hyphened and (plain := _as_range_start(tokens, number, text)):
        number = plain
    following = tokens.words[number.behind] if number.behind < len(tokens.words) else ""
    if following in _FEET_MARKS and (feet := _feet_and_inches(tokens, number)):
        return feet
    if following in _FOOT and (feet := _height(tokens, number)):
        return feet
    printed = tokens.printed.get(index)
    improper = number.form is Form.MIXED and printed is not None and printed.vulgar and not printed.mixed
    found = None if improper else _unit_behind(tokens, number, text)
    if found is None and number.spoken and number.value == 1 and index and tokens.words[index - 1] in _POINTING:
        return None
    behind, kind, unit = (number.behind, None, None) if found is None else (found.behind, found.kind, found.unit)
    atom = Atom(number.value, number.form, number.first, behind, kind, unit, number.decimals, number.spoken)
    if kind is Kind.LENGTH:
        atom = _compound(tokens, _with_fraction(tokens, atom, text), text)
    return atom


def _as_range_start(tokens: Tokens, number: Number, text: str) -> Number | None:
    """The first number alone where ``3-8`` is a range: ``3-8 inches``, ``3-8 cm``. A fraction comes before one inch."""
    following = tokens.words[number.behind] if number.behind < len(tokens) else ""
    if number.form is not Form.FRACTION or following not in (
        "inches",
        "in",
        "cm",
        "mm",
        "m",
        "yards",
        "yd",
        '"',
        "″",
        "%",
    ):
        return None
    first = tokens.value(number.first)
    if first is None:
        return None
    return Number(first, Form.WHOLE, number.first, number.first + 1)


def _one_unit(tokens: Tokens, index: int, word: str) -> Atom | None:
    """``an inch``, ``a yard``, and ``inch`` before ``and a half``."""
    before = tokens.kinds[index - 1] if index else None
    if word == "inch":
        if tokens.word(index + 1) != "and" or (before is TokenKind.NUMBER):
            return None
        fraction = fraction_at(tokens, index + 2)
        if fraction is None or tokens.word(fraction.behind) in ("of", "inch", "inches"):
            return None
        return Atom(Fraction(1), Form.WHOLE, index, index + 1, Kind.LENGTH, Unit.IN, spoken=True)
    at = index + 2 if tokens.word(index + 1) in _EMPHASIS else index + 1
    if word not in _ARTICLES | {"another"} or tokens.word(at) not in _ONE_UNITS:
        return None
    rate = before in (TokenKind.NUMBER, TokenKind.SKIPPED) or (index > 0 and tokens.words[index - 1] in _RATES)
    found = unit_at(tokens, index, at, whole=True, text="")
    if rate or found is None:
        return None
    return Atom(Fraction(1), Form.WHOLE, index, at + 1, Kind.LENGTH, found.unit, spoken=True)


def _unit_behind(tokens: Tokens, number: Number, text: str) -> UnitFound | None:
    whole = number.form is Form.WHOLE
    found = unit_at(tokens, number.first, number.behind, whole=whole, text=text)
    if found is None and tokens.word(number.behind) in _EMPHASIS and tokens.word(number.behind + 1) in _LENGTH_WORDS:
        return unit_at(tokens, number.first, number.behind + 1, whole=whole, text=text)
    if found is not None or number.form is Form.WHOLE:
        return found
    # half an inch, three eighths of an inch, 3/8 of an inch
    at = number.behind + 1 if tokens.word(number.behind) == "of" else number.behind
    if tokens.word(at) in ("a", "an", "one"):
        return unit_at(tokens, number.first, at + 1, whole=False, text=text)
    if at > number.behind and tokens.word(at) in ("inch", "yard", "metre", "meter"):
        return unit_at(tokens, number.first, at, whole=False, text=text)
    return None


_NAMING = words("the that this a an its your")
_MATERIAL = words("fabric cloth material elastic ribbon binding")


def _with_fraction(tokens: Tokens, atom: Atom, text: str) -> Atom:
    """``an inch and a half``, ``2 inches and three quarters``."""
    between = atom.first > 0 and tokens.words[atom.first - 1] == "between"
    if between or tokens.word(atom.behind) != "and" or atom.unit is None or atom.form is not Form.WHOLE:
        return atom
    fraction = fraction_at(tokens, atom.behind + 1)
    if fraction is None or unit_at(tokens, fraction.first, fraction.behind, whole=True, text=text) is not None:
        return atom
    following = tokens.word(fraction.behind)
    if atom.unit in _METRIC and fraction.value.denominator in (8, 16):
        return atom  # eighths are of an inch
    what = tokens.word(fraction.behind + 1), tokens.word(fraction.behind + 2)
    bought = atom.unit in (Unit.YD, Unit.M) or not what[1] or what[1] in _MATERIAL
    of_another = following == "of" and what[0] in _NAMING and not bought
    ends = (fraction.behind < len(tokens) and tokens.opens_line(fraction.behind)) or (following, what[0]) == (
        "as",
        "well",
    )
    if of_another or (following in ("a", "an", "the", "as", "way", "again") and not ends):
        return atom
    return atom._replace(value=atom.value + fraction.value, form=Form.MIXED, behind=fraction.behind, spoken=True)


def _compound(tokens: Tokens, atom: Atom, text: str) -> Atom:
    """``1 yd 9 in``, ``5 ft 2 in``, ``1 m 20 cm``, ``two metres ten``: one length, in its greater unit."""
    smaller = _SMALLER.get(atom.unit) if atom.unit is not None else None
    if smaller is None or atom.unit is None or atom.behind >= len(tokens) or atom.form is Form.DECIMAL:
        return atom
    at = atom.behind + 1 if tokens.word(atom.behind) == "and" else atom.behind
    number = number_at(tokens, at) if at < len(tokens) else None
    if number is None or number.first != at:
        return atom
    found = unit_at(tokens, at, number.behind, whole=number.form is Form.WHOLE, text=text)
    if found is None and atom.unit is Unit.M and number.form is Form.WHOLE and at == atom.behind:
        if not 10 <= number.value < 100:
            return atom
        return atom._replace(value=atom.value + number.value / 100, form=Form.MIXED, behind=number.behind)
    if found is None or found.unit is None or found.unit not in smaller or number.value * found.unit.mm >= atom.unit.mm:
        return atom
    both = atom.value + number.value * found.unit.mm / atom.unit.mm
    return atom._replace(value=both, form=Form.MIXED, behind=found.behind)


def _feet_and_inches(tokens: Tokens, number: Number) -> Atom | None:
    """``5' 2"``: the only place where a single mark is feet."""
    at = number.behind
    if at + 1 >= len(tokens.words) or not tokens.touch(at):
        return None
    value = tokens.value(at + 1)
    if value is None or value >= 12:
        return None
    if tokens.words[at + 2 : at + 3] not in (['"'], ["″"], ["”"], ["''"], ["’’"], ["′′"]):
        tall = number.value in _STATURES and tokens.touch(at + 1) and value.denominator == 1
        if not tall or tokens.word(number.first - 1) not in _BEFORE_STATURE:
            return None
        both = number.value + value / 12
        return Atom(both, Form.MIXED, number.first, at + 2, Kind.LENGTH, Unit.FT, None, number.spoken)
    both = number.value + value / 12
    return Atom(both, Form.MIXED, number.first, at + 3, Kind.LENGTH, Unit.FT, number.decimals, number.spoken)


def _height(tokens: Tokens, number: Number) -> Atom | None:
    """``5 foot 4``, ``five foot two``: the inches are said without their unit."""
    if number.form is not Form.WHOLE:
        return None
    at = number.behind + 1
    if tokens.word(at) == "nothing":
        return Atom(number.value, Form.WHOLE, number.first, at, Kind.LENGTH, Unit.FT, None, number.spoken)
    inches = number_at(tokens, at) if at < len(tokens) else None
    if inches is None or inches.first != at or inches.form not in _HEIGHTS or not 0 < inches.value < 12:
        return None
    if inches.form is Form.MIXED and not inches.spoken:
        return None
    if inches.behind < len(tokens) and tokens.words[inches.behind] not in _BEHIND_HEIGHT:
        return None
    if inches.behind < len(tokens) and unit_at(tokens, at, inches.behind, whole=True, text=tokens.text):
        return None
    both = number.value + inches.value / 12
    return Atom(both, Form.MIXED, number.first, inches.behind, Kind.LENGTH, Unit.FT, None, number.spoken)
