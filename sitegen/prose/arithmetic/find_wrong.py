"""Finds results in a text that are not what their parts make."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from sitegen.prose.arithmetic.agree import agrees
from sitegen.prose.arithmetic.forms import FORMS, Form, Tie
from sitegen.prose.arithmetic.percents import wrong_percents
from sitegen.prose.arithmetic.rectangles import wrong_sides
from sitegen.prose.arithmetic.related import related_results
from sitegen.prose.arithmetic.symbols import Item, items_of
from sitegen.prose.arithmetic.workers import Made, Match
from sitegen.prose.find import Measured, Reading
from sitegen.quantities import Unit

_SOFT = Fraction(2, 5)
"""How far, as a share of the right result, a number may lie that soft words call the result of a sum."""
_CLOSE = Fraction(3, 20)
_STRONG = Fraction(20)
_FEWEST_LENGTHS = 2
"""A result and one part: with less nothing can be done again."""


@dataclass(frozen=True, slots=True)
class WrongResult:
    """A result that its parts do not make: the item, what it should be, and the sum in words.

    What it should be is in millimetres, or a share where the unit is None.
    """

    kind: str
    number: Measured
    unit: Unit | None
    should_be: Fraction
    words: str


def wrong_results(reading: Reading, pairs: dict[int, Measured], skipped: frozenset[int]) -> Iterator[WrongResult]:
    """Every wrong result of a text, each once, in order. A sum never reaches over an empty line."""
    block: list[Item] = []
    for item in items_of(reading, pairs, skipped):
        if item.symbol != "\n":
            block.append(item)
            continue
        yield from _in_block(reading, block)
        block = []
    yield from _in_block(reading, block)


def _in_block(reading: Reading, items: list[Item]) -> Iterator[WrongResult]:
    symbols = "".join(item.symbol for item in items)
    if symbols.count("L") < _FEWEST_LENGTHS:
        return

    def said(item: Item) -> str:
        start, end = reading.tokens[item.first].start, reading.tokens[item.behind - 1].end
        return " ".join(reading.text[start:end].split())

    right: set[int] = set()
    wrong: dict[int, WrongResult] = {}
    parts: set[int] = set()
    for form in FORMS:
        if not form.may_match(symbols):
            continue
        for found in _everywhere(form, symbols):
            match = Match(items, symbols, found, said)
            place = found.start("r")
            made = form.work(match) if place not in right else None
            if made is None or not made.values:
                continue
            if _holds(match, made):
                right.add(place)
            elif _may_be_wrong(form, match, made):
                wrong.setdefault(place, _wrong(form, match, made))
            else:
                continue
            parts.update(at for at in range(*found.span()) if symbols[at] == "L" and at != place)
    settled = right | wrong.keys()
    for each in related_results(items, symbols, said, frozenset(settled), frozenset(parts - settled)):
        number, unit = each.item.number, each.item.unit
        if number is not None and unit is not None:
            wrong[each.index] = WrongResult(each.way.kind, number, unit, each.way.value, each.way.words)
    for side in wrong_sides(items, symbols, said):
        number = items[side.index].number
        if number is not None:
            wrong[side.index] = WrongResult("cut length", number, number.unit, side.value, side.words)
    for percent in wrong_percents(items, symbols, said):
        number = items[percent.index].number
        if number is not None:
            wrong[percent.index] = WrongResult("percent", number, None, percent.share, percent.words)
    yield from (wrong[place] for place in sorted(wrong.keys() - right))


def _everywhere(form: Form, symbols: str) -> Iterator[re.Match[str]]:
    """Matches of a form from each of its starting places; a result may begin the next sum."""
    position = 0
    while found := form.pattern.search(symbols, position):
        yield found
        position = found.start() + 1


def _holds(match: Match, made: Made) -> bool:
    """Whether the written result, or its partner in the other unit, is what the parts make."""
    result = match.item("r")
    hedged = made.hedged or result.hedged
    said = [each for each in (result.number, result.other) if each is not None and each.high is None]
    return any(
        agrees(each.value * each.unit.mm, each.unit, made.values, made.exactness, hedged=hedged)
        for each in said
        if each.unit is not None
    )


def _may_be_wrong(form: Form, match: Match, made: Made) -> bool:
    """Whether a result that does not hold is one: not too far from what its parts make for the words that tie it."""
    result = match.item("r")
    allowed = {Tie.SOFT: _SOFT, Tie.CLOSE: _CLOSE, Tie.STRONG: _STRONG}[form.tie]
    shares = [abs(result.value - value) / value for value in made.values if value > 0]
    return result.unit is not None and bool(shares) and min(shares) <= allowed


def _wrong(form: Form, match: Match, made: Made) -> WrongResult:
    result = match.item("r")
    if result.number is None or result.unit is None:
        raise TypeError("a result is a length")
    return WrongResult(_kind(form, match), result.number, result.unit, made.values[0], made.words)


def _kind(form: Form, match: Match) -> str:
    if form.kind != "worked":
        return form.kind
    term = match.found.group("term")
    if "P" in term:
        return "percent"
    if "R" in term:
        share = next(
            item for item in match.items[match.found.start("term") : match.found.end("term")] if item.symbol == "R"
        )
        return "halving" if share.value == Fraction(1, 2) else "share"
    return "doubling" if "D" in term else "product"
