"""Lengths that a text gives in two units, and ranges written with the greater end first."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import pairwise

from sitegen.prose.find import Measured, Reading, TokenKind, reading_of
from sitegen.prose.measurement import Kind
from sitegen.prose.nominal import is_nominal, nearly
from sitegen.prose.words import words
from sitegen.quantities import (
    SHOP_STEPS,
    Length,
    NotUnderstood,
    System,
    Typed,
    Unit,
    cm,
    decimal,
    grain,
    inches,
    pair_agrees,
    parse_length,
)

_LINKS = words(
    "under over which is that that's that equals = about roughly or approximately approx in metric equal to your"
    " regular usual the our good old i.e ie aka approx. a.k.a around nearly just so , ~ ≈ are be say it's makes"
    " works out reads almost"
)
_SAME = words("or which that's equals = i.e ie aka is are")
_NOUNS = words("this one it altogether total seam seams allowance hem wide long of it across deep bolt fabric cloth -")
"""Words that may follow a length before it is said again."""
_OPERATORS = words("of x × * + plus - minus less by times twice double ÷ /")
"""Words before a length that make it a part of a sum, whose result is no other name of it."""
_BRACKET_ENDS = words(", ! ? ) ] for if in to on by with at each wide long deep")
_APPOSITION_ENDS = words(", . ; : – — - ! ?") | frozenset(("", "for", "if", "all", "throughout", "\n"))
_CONDITIONS = (["if"], ["when"], ["where"], ["depending"])
"""Words behind two lengths joined by ``or`` that make them a choice: ``1 cm, or 5/8 in if your pattern has that``."""
_PLACES = words(
    "metric imperial inches centimetres centimeters europe america states uk canada australia overseas abroad"
)
"""Words that tell of readers elsewhere: ``or 6 mm if you're over in europe`` is no choice."""
_FARTHEST, _FARTHEST_SAID = 8, 12
"""Tokens between a length and the same length in the other unit; the second where words name the other system."""
_FAR = Fraction(12)
"""How many times as long one may be as the other where ``or`` and ``which is`` join them."""
_NO_CHOICE = Fraction(4, 3)
"""Nobody offers a choice between centimetres and millimetres so near: ``2.5 cm or 20 mm`` is a slip."""
_LOOSE = Fraction(5, 2)
_BESIDE = Fraction(7, 4)
"""The same where no word joins them."""
_SAYS = (["that's"], ["thats"], ["it's"])
_IS_OR = words("is or so")
_GOING = words("gonna going be like to")
_FILLERS = words("uh um er well like okay")
_SIGNS = words("+ − - × * plus minus times")
_SHARES = words("half third thirds quarter quarters fifth fifths tenth tenths percent cent twice double eighths")
_EQUALS = frozenset(("is", "that's", "equals", "="))
_HEDGES = words("quite about roughly approximately approx around nearly just ~ ≈ say almost")
_HEDGED_PAIRS = tuple((word, way) for word in ("just", "slightly", "bit", "little") for way in ("under", "over"))
_INCH, _FIVE, _ROUND, _SHORT = inches(1), cm(5), 50, 510
"""Whole inches beside a multiple of 5 cm are one length within 2 per cent, up to 20 in: 18 in (45 cm)."""
_HEDGED = Fraction(6, 100)


@dataclass(frozen=True, slots=True)
class InTwoUnits:
    """A length and its partner in the other unit, with the tokens from ``first`` up to ``behind``."""

    one: Measured
    other: Measured
    first: int
    behind: int
    agrees: bool
    bolt: bool = False
    unit_slipped: str = ""
    """What was meant, where both are in one system and another unit of either would make them one length."""
    sure: bool = True
    """Whether a bracket or words such as ``which is`` join the two; else they may be two lengths."""
    hidden_from: int | None = None
    """The first of the tokens that only say the length again, where they do not stand right behind it."""

    @property
    def said_again(self) -> range:
        """The tokens that only say the length again."""
        return range(self.one.behind if self.hidden_from is None else self.hidden_from, self.behind)


@dataclass(frozen=True, slots=True)
class WrittenPair:
    """A length with its partner in the other unit, from ``start`` to ``end`` of the text, the bracket included."""

    first: Typed
    second: Typed
    start: int
    end: int
    agrees: bool
    sure: bool
    """Whether a bracket or words such as ``which is`` join the two; else they may be two lengths."""
    unit_slipped: str = ""
    """What was meant, where both are in one system and another unit of either would make them one length."""


def find_pairs(text: str) -> Iterator[WrittenPair]:
    """Each length of a text that is given again in the other system of units, in order."""
    reading = reading_of(text)
    for pair in in_two_units(reading):
        start, end = reading.tokens.starts[pair.first], reading.tokens.ends[pair.behind - 1]
        first, second = typed_of(reading, pair.one), typed_of(reading, pair.other)
        yield WrittenPair(first, second, start, end, pair.agrees, pair.sure, pair.unit_slipped)


def in_two_units(reading: Reading) -> Iterator[InTwoUnits]:
    """Each length that is given again in the other system of units, in order."""
    lengths = [one for one in reading.numbers if one.kind is Kind.LENGTH]
    rectangles = list(_rectangles(reading, lengths))
    yield from rectangles
    of_rectangles = {pair.other.first for pair in rectangles}
    for one, other in pairwise(lengths):
        if other.first in of_rectangles:
            continue
        apart = other.first - one.behind
        if one.unit is None or other.unit is None or apart > _FARTHEST_SAID:
            continue
        if apart > _FARTHEST and not _in_metric(reading, one, other):
            continue
        found = _pair(reading, one, other, one.unit, other.unit)
        if found is not None:
            yield found


_SIDES = (["x"], ["×"], ["by"], ["*"])


def _rectangles(reading: Reading, lengths: list[Measured]) -> Iterator[InTwoUnits]:
    """The sides of rectangles that are given again in the other unit: ``36 x 48 in (91 x 122 cm)``."""
    tokens = reading.tokens

    def words(one: Measured, other: Measured) -> list[str]:
        return tokens.words[one.behind : min(other.first, one.behind + 8)]

    for at in range(len(lengths) - 3):
        one, two, three, four = lengths[at : at + 4]
        if words(one, two) not in _SIDES or words(three, four) not in _SIDES or None in (one.unit, three.unit):
            continue
        between = [word for word in words(two, three) if word not in _NOUNS and word != "finished"]
        joined = (
            between[:1] in (["("], ["["], ["/"])
            or between[-1:] in (["–"], ["—"])
            or ("or" in between and all(word in _LINKS for word in between))
        )
        other_system = one.unit is not None and three.unit is not None and one.unit.system is not three.unit.system
        if joined and other_system and len(between) <= 4:
            closed = four.behind < len(tokens) and tokens.words[four.behind] in (")", "]")
            for first, again, behind in ((one, three, three.behind), (two, four, four.behind + closed)):
                agrees = _agree(typed_of(reading, first), typed_of(reading, again))
                found = InTwoUnits(first, again, again.first, again.behind, agrees, hidden_from=two.behind)
                yield replace(found, behind=behind) if agrees else found


def _in_metric(reading: Reading, one: Measured, other: Measured) -> bool:
    """Whether the words between say that the length follows in the other system: ``and for my metric friends``."""
    between = reading.tokens.words[one.behind : min(other.first, one.behind + 12)]
    while between and between[-1] in _HEDGES:
        between.pop()
    return between[-1:] in ([word] for word in _EQUALS) and bool({"metric", "imperial"} & set(between))


@dataclass(frozen=True, slots=True)
class _Link:
    """What joins a length to the next one: how many times apart the two may be, and the token behind both."""

    farthest: Fraction | None
    """None where a bracket or a stroke joins them, whatever the two are."""
    behind: int
    words: tuple[str, ...]
    bracket: bool


def _link(reading: Reading, one: Measured, other: Measured) -> _Link | None:
    """The link between two lengths that follow each other; None where they are two lengths and not one."""
    tokens = reading.tokens
    between = [word for word in tokens.words[one.behind : other.first] if word not in _FILLERS]
    after = tokens.words[other.behind] if other.behind < len(tokens) else ""
    closed = other.behind + 1 if after in (")", "]") else other.behind
    words = _without_nouns(between)
    plain = [word for word in words if word != "," and word not in _HEDGES]
    if words[:1] in (["("], ["["]) and after in _BRACKET_ENDS and all(word in _LINKS for word in words[1:]):
        return _Link(None, closed, tuple(words), True)
    if words in (["/"], ["|"]):
        return _Link(None, other.behind, tuple(words), False)
    if after == ")" and "(" in (words[-1:] + words[:1]) and all(word.isalpha() or word == "(" for word in words):
        return _Link(_BESIDE, closed, tuple(words), False)
    if _is_worked(reading, one):
        return None
    said = 0 < len(words) <= 6 and all(word in _LINKS for word in words) and bool(_SAME & set(words))
    if said or _in_metric(reading, one, other):
        return _Link(_FAR, other.behind, tuple(words), False)
    apposition = words in ([","], ["–"], ["—"], ["-"]) and after in _APPOSITION_ENDS
    so = plain in ([], ["so"]) and words != [","] and other.first > one.behind
    if apposition or so:
        return _Link(_BESIDE, other.behind, tuple(words), False)
    ending = [word for word in words if word not in _HEDGES and word not in _GOING]
    named = len(ending) == 2 and ending[0].isalpha() and ending[1] in _IS_OR and words[-1] not in _HEDGES
    if ending[-1:] in _SAYS or named or (ending[:1] == ["which"] and ending[-1:] == ["is"]):
        return _Link(_LOOSE, other.behind, tuple(ending), False)
    return None


def _without_nouns(between: list[str]) -> list[str]:
    """The words between two lengths without what the first is called: ``seam (``, ``of elastic (``."""
    words = list(between)
    while words and words[0] in _NOUNS:
        words = words[1:]
    named = words[-1:] == ["("] and len(words) <= 4 and between[0] == "of"
    return ["("] if named and all(word.isalpha() for word in words[:-1]) else words


def _pair(reading: Reading, one: Measured, other: Measured, unit: Unit, second: Unit) -> InTwoUnits | None:
    link = _link(reading, one, other)
    if link is None:
        return None
    if unit.system is second.system:
        return _one_system(reading, one, other, link)
    if (one.high is None) != (other.high is None):
        return _half_a_range(reading, one, other, link)
    after = reading.tokens.words[link.behind : link.behind + 8]
    bolt = is_nominal(reading, one, other, link.behind)
    agrees = _agree(typed_of(reading, one), typed_of(reading, other), bolt=bolt)
    if not agrees and _is_hedged(reading, one, link):
        ends = zip(_ends(one, unit), _ends(other, second), strict=True)
        agrees = all(abs(a - b) <= _HEDGED * max(a, b) for a, b in ends)
    of_place = not _PLACES.isdisjoint(after)
    chosen = not agrees and "or" in link.words and after[:1] in _CONDITIONS and not of_place
    in_a_sum = link.bracket and one.first > 0 and reading.tokens.words[one.first - 1] in _SIGNS
    far = link.farthest is not None and not _plausible(one, other, unit, second, link.farthest)
    far = far and not _ten_times(one, other, unit, second)
    if not agrees and (far or in_a_sum or chosen):
        return None
    sure = link.farthest is None or link.farthest is _FAR
    return InTwoUnits(one, other, one.first, link.behind, agrees, bolt, sure=sure)


def _agree(one: Typed, other: Typed, *, bolt: bool = False) -> bool:
    """Whether two lengths are one as running text rounds them.

    Cloth to buy may be off by half of what a shop cuts off (common practice, no source).
    """
    if pair_agrees(one, other, bolt=bolt):
        return True
    if one.high is not None or other.high is not None or one.unit.system is other.unit.system:
        return False
    apart, most = abs(one.value.mm - other.value.mm), max(one.value.mm, other.value.mm)
    imperial, metric = (one, other) if one.unit.system is System.INCHES else (other, one)
    if imperial.value.sits_on(_INCH) and metric.value.sits_on(_FIVE) and apart * _ROUND <= most <= _SHORT:
        return True
    shop = {one.unit, other.unit} <= {Unit.YD, Unit.M, Unit.CM} and apart * 2 <= SHOP_STEPS[System.CENTIMETRES].mm
    return shop and apart * 10 <= most


def _half_a_range(reading: Reading, one: Measured, other: Measured, link: _Link) -> InTwoUnits | None:
    """A range with a single length in brackets: wrong, unless that is one of its ends."""
    if one.high is None or one.unit is None or other.unit is None or not link.bracket:
        return None
    ends = [replace(one, value=value, high=None) for value in (one.value, one.high)]
    if any(pair_agrees(typed_of(reading, end), typed_of(reading, other)) for end in ends):
        return None
    return InTwoUnits(one, other, one.first, link.behind, False)


def _is_hedged(reading: Reading, one: Measured, link: _Link) -> bool:
    before = reading.tokens.words[max(0, one.first - 2) : one.first]
    return (
        bool(_HEDGES & set(link.words))
        or before[-1:] in ([word] for word in _HEDGES)
        or tuple(before) in _HEDGED_PAIRS
        or ("just" in link.words and bool({"under", "over"} & set(link.words)))
    )


def _one_system(reading: Reading, one: Measured, other: Measured, link: _Link) -> InTwoUnits | None:
    """Two lengths of one system: the same in a greater or smaller unit, or a unit that slipped."""
    unit, second = one.unit, other.unit
    if unit is None or second is None:
        return None
    if unit is second:
        meant = _slipped(reading, one, other) if link.words in (("(",), ("[",)) else ""
        return InTwoUnits(one, other, one.first, link.behind, False, unit_slipped=meant) if meant else None
    if one.value * unit.mm == 2 * other.value * second.mm:
        return None  # “3 cm, that is 15 mm on either side”
    again = _same_system(reading, one, other, link.behind)
    if link.bracket or (bool(link.words) and link.words[-1] in _EQUALS):
        times = _BESIDE if "so" in link.words else _NO_CHOICE if link.farthest is _LOOSE else _FAR
        return again if _plausible(one, other, unit, second, times) else None
    if link.words[-1:] == ("so",):
        return again if _plausible(one, other, unit, second, _NO_CHOICE) else None
    if "or" in link.words:
        near = _is_hedged(reading, one, link) and nearly(one, other, unit, second)
        if again.agrees or near:
            return replace(again, agrees=True)
        choice = unit.system is System.INCHES or not _plausible(one, other, unit, second, _NO_CHOICE)
        return None if choice else again
    return None


def _same_system(reading: Reading, one: Measured, other: Measured, behind: int) -> InTwoUnits:
    """A length given again in a greater or smaller unit of the same system: ``0.3 cm (3 mm)``, ``63 in (1 3/4 yd)``."""
    typed, second = typed_of(reading, one), typed_of(reading, other)
    apart = abs(typed.value - second.value)
    coarse = grain(second) if second.unit is not Unit.YD else max(grain(typed), grain(second))
    agrees = apart * 2 <= coarse if Unit.YD in (one.unit, other.unit) else not apart
    return InTwoUnits(one, other, one.first, behind, agrees)


def _is_worked(reading: Reading, one: Measured) -> bool:
    """Whether a length is a part of a sum, ``half of 10 in``, and not only named, ``a seam of 5/8 in``."""
    first = max(0, one.first - 2)
    before = reading.tokens.words[first : one.first]
    if not before or before[-1] not in _OPERATORS:
        return False
    names = reading.tokens.kinds[first] is TokenKind.WORD and before[0] not in _SHARES
    return not (before[-1] == "of" and len(before) == 2 and names)


def _plausible(one: Measured, other: Measured, unit: Unit, second: Unit, times: Fraction) -> bool:
    """Whether the words may well join one length in two units: so many times apart at most."""
    low, high = sorted((one.value * unit.mm, other.value * second.mm))
    return high <= times * low


def _ten_times(one: Measured, other: Measured, unit: Unit, second: Unit) -> bool:
    """Whether one is about ten times the other: centimetres said for millimetres, or a point left out."""
    low, high = sorted((one.value * unit.mm, other.value * second.mm))
    return abs(high - 10 * low) * 10 <= high


def _ends(one: Measured, unit: Unit) -> list[Fraction]:
    return [one.value * unit.mm] + ([one.high * unit.mm] if one.high is not None else [])


def typed_of(reading: Reading, one: Measured) -> Typed:
    """The length as the readers of files give it, with the number as it was printed."""
    if one.unit is None:
        raise TypeError("a length has a unit")
    start, end = reading.span(one)
    high = None if one.high is None else Length(one.high * one.unit.mm)
    number = reading.tokens.words[one.first] if one.decimals is not None else ""
    last = decimal(one.high, 6) if one.high is not None and one.decimals is not None else ""
    return Typed(
        Length(one.value * one.unit.mm), one.unit, reading.text[start:end], start, end, high, None, number, last
    )


def _slipped(reading: Reading, one: Measured, other: Measured) -> str:
    """Both lengths with the unit of one put right, if that makes them one length."""
    if one.high is not None or other.high is not None or one.unit is None or other.unit is None:
        return ""
    first, second = (reading.text[slice(*_number_span(reading, each))].strip() for each in (one, other))
    for unit in (Unit.IN, Unit.CM, Unit.MM):
        if unit.system is one.unit.system:
            continue
        for left, right in ((unit, other.unit), (one.unit, unit)):
            try:
                typed = parse_length(f"{first} {left.symbol}"), parse_length(f"{second} {right.symbol}")
            except NotUnderstood:
                continue
            if pair_agrees(*typed):
                return f"{first} {left.symbol} ({second} {right.symbol})"
    return ""


def _number_span(reading: Reading, one: Measured) -> tuple[int, int]:
    return reading.tokens.starts[one.first], reading.tokens.ends[one.first]
