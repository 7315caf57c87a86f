"""How the forms of written sums are worked out: from the symbols that a form matched to what its parts make."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import product as combined

from sitegen.prose.arithmetic.agree import Exactness, part_exactness
from sitegen.prose.arithmetic.symbols import Item
from sitegen.prose.arithmetic.terms import TERM, Said, TermRead, factor_said, read_term
from sitegen.prose.arithmetic.vocabulary import ACROSS, UPRIGHT
from sitegen.prose.find import CIRCLE_NUMBERS
from sitegen.prose.words import words
from sitegen.quantities import vulgar

AGAIN = words("another further additional")
"""Words that go on as before: ``the hem eats up 1 1/2 in and the seam another 1/2 in``."""
_NEAR = 30
"""Symbols before a result in which a length may be divided."""
_AHEAD = 8
"""Symbols before a term in which it is added to something, or the things are counted that have it."""
_APIECE = re.compile(r"N[_aj]{1,2},?e$")
"""``two rings, each`` of a sum."""
_ADDED_TO = 3
"""How many times as long as a term a result is that has more in it than the term."""
_EQUAL = re.compile(r"\b(?:gaps?|spaces|spacings|intervals|distances|halves|thirds|quarters|equal\w*|same)\b")
_JOINED = re.compile(r"\b(?:joined|seamed|sewn|stitched|sew|join) (?:together )?with\b")
"""Words that make an allowance in a list one that is taken off, once or twice for each seam."""
_TERM = re.compile(TERM)
_CHAIN_PART = re.compile(rf"(?P<op>[+\-ATB])|(?P<term>{TERM})")


@dataclass(frozen=True, slots=True)
class Made:
    """What the parts of a form make: every reading in millimetres, the likeliest first; the sum in words."""

    values: tuple[Fraction, ...]
    words: str
    exactness: Exactness
    hedged: bool = False


@dataclass(frozen=True, slots=True)
class Match:
    """A form found in the symbols of a text."""

    items: Sequence[Item]
    symbols: str
    found: re.Match[str]
    said: Said

    def item(self, group: str) -> Item:
        """The item of a group of one symbol."""
        return self.items[self.found.start(group)]


Worker = Callable[[Match], Made | None]


def chain(match: Match) -> Made | None:
    """Terms added and taken off, in every reading that their plurals allow."""
    start, end = match.found.span("chain")
    terms: list[TermRead] = []
    signs: list[int] = []
    sign = 1
    if _goes_on_before(match.symbols, start):
        return None
    for part in _CHAIN_PART.finditer(match.symbols, start, end):
        if part.group("op"):
            again = part.group("op") == "A" and match.said(match.items[part.start()]).lower() in AGAIN
            sign = (signs[-1] if again and signs else 1) if part.group("op") in "+A" else -1
        else:
            terms.append(read_term(match.items, match.symbols, part.start(), part.end(), match.said))
            signs.append(sign)
            sign = 1
    if len(terms) < 2:
        return None
    times = _times_bracket(match, start, end)
    values = tuple(
        dict.fromkeys(
            total
            for reading in combined(*(term.values[:3] for term in terms[:5]))
            if (total := times * sum((one * value for one, value in zip(signs, reading, strict=False)), Fraction(0)))
            > 0
        )
    )
    if len(terms) > 5 and any(len(term.values) > 1 for term in terms):
        return None
    if len(terms) > 5:
        values = (sum((one * term.values[0] for one, term in zip(signs, terms, strict=True)), Fraction(0)),)
    written = terms[0].words + "".join(
        f" {'+' if one > 0 else '−'} {term.words}" for one, term in zip(signs[1:], terms[1:], strict=True)
    )
    worked = len({item.unit for item in match.items[start:end] if item.symbol == "L"}) > 1
    written = f"{vulgar(times)} × ({written})" if times != 1 else written
    shared = any(symbol in "PR" for symbol in match.symbols[start:end])
    exactness = Exactness.COARSE if shared else Exactness.RULER if worked else Exactness.EXACT
    return Made(values, written, exactness, any(term.hedged for term in terms)) if values else None


def _times_bracket(match: Match, start: int, end: int) -> Fraction:
    """By what a sum in brackets is multiplied: ``2 x (52 in + 64 in)``; 1 without such a bracket."""
    before, behind = match.symbols[max(0, start - 3) : start], match.symbols[end : end + 3]
    if before.endswith("N*(") and ")" in behind:
        return match.items[start - 3].value
    if before.endswith(("N(", "D(")) and ")" in behind:
        return match.items[start - 2].value or Fraction(2)
    return Fraction(1)


def _goes_on_before(symbols: str, start: int) -> bool:
    """Whether the chain is only the end of a longer one, whose beginning no form could read."""
    at = start - 1
    while at >= 0 and symbols[at] in "_,&otfwpae(":
        at -= 1
    near = symbols[max(0, at - 12) : at].rpartition(".")[2]
    return at > 0 and symbols[at] in "+-AT" and "L" in near


def term(match: Match) -> Made | None:
    start, end = match.found.span("term")
    term = read_term(match.items, match.symbols, start, end, match.said)
    ahead = match.symbols[max(0, start - _AHEAD) : start].rpartition(".")[2]
    if "A" in ahead and "L" not in ahead and match.item("r").value > _ADDED_TO * term.values[0]:
        return None  # “it is 10 in. Add a seam, twice 1/4 in, and you get 10 1/2 in”
    shares = [match.items[at].value for at in range(start, end) if match.symbols[at] in "PR"]
    if shares == [Fraction(1, 2)]:
        return Made(term.values[:1], term.words, part_exactness(term.values[0]), term.hedged)
    circle = any(match.items[at].value in CIRCLE_NUMBERS for at in range(start, end))
    return Made(term.values[:1], term.words, Exactness.COARSE if shares or circle else Exactness.RULER, term.hedged)


def product(match: Match) -> Made:
    length, number = match.item("a"), match.item("n")
    words = f"{factor_said(number.value)} × {match.said(length)}"
    return Made((number.value * length.value,), words, Exactness.RULER, length.hedged)


def quotient(match: Match) -> Made | None:
    length, parts = match.item("a"), match.item("n").value
    if parts < 2 or (parts.denominator != 1 and parts not in CIRCLE_NUMBERS):
        return None
    value = length.value / parts
    exactness = Exactness.COARSE if parts in CIRCLE_NUMBERS else part_exactness(value)
    return Made((value,), f"{match.said(length)} ÷ {factor_said(parts)}", exactness, length.hedged)


def equal_parts(match: Match) -> Made | None:
    """A length in gaps or equal parts that are counted: ``over 56 cm, eight gaps of 7 cm``."""
    first, behind = match.found.start("n"), match.found.start("r")
    words = " ".join(match.said(item) for item in match.items[first:behind]).lower()
    told = _EQUAL.search(words) is not None or re.search(
        r"/[^L.]*L[^L.]*i_?N_?n?_?o_?L$", match.symbols[max(0, behind - _NEAR) : behind + 1]
    )
    placed = match.said(match.items[match.found.start("a") + 1]).lower().startswith(("below", "above"))
    return quotient(match) if told and not placed and match.item("r").value < match.item("a").value else None


def bare_quotient(match: Match) -> Made | None:
    """A number in so many parts, in the unit of the result: ``24 ÷ 4 = 6 inches``."""
    whole, parts, unit = match.item("a").value, match.item("n").value, match.item("r").unit
    if unit is None or parts < 2:
        return None
    value = whole / parts * unit.mm
    exactness = Exactness.COARSE if parts in CIRCLE_NUMBERS else part_exactness(value)
    return Made((value,), f"{vulgar(whole)} ÷ {factor_said(parts)}", exactness)


def bare_product(match: Match) -> Made | None:
    """One number times another, in the unit of the result: ``six times ninety-two is 552 cm``."""
    one, other, unit = match.item("a").value, match.item("n").value, match.item("r").unit
    if unit is None or min(one, other) < 2:
        return None
    exactness = Exactness.RULER if CIRCLE_NUMBERS.isdisjoint((one, other)) else Exactness.COARSE
    return Made((one * other * unit.mm,), f"{factor_said(one)} × {factor_said(other)}", exactness)


def difference(match: Match) -> Made | None:
    one, other = match.item("a"), match.item("b")
    more, less = (one, other) if one.value > other.value else (other, one)
    if more.value == less.value:
        return None
    exactness = Exactness.EXACT if one.unit is other.unit else Exactness.RULER
    return Made(
        (more.value - less.value,), f"{match.said(more)} − {match.said(less)}", exactness, one.hedged or other.hedged
    )


def _is_a_size(words: str) -> bool:
    """Whether one length is called a height, another a width."""
    said = set(words.split())
    return not (UPRIGHT.isdisjoint(said) or ACROSS.isdisjoint(said))


def listed(match: Match) -> Made | None:
    """Lengths listed with commas and ``and``, and their total. None where more lengths stand before the list."""
    start, end = match.found.span("chain")
    if "L" in re.split(r"[.\n;:]", match.symbols[max(0, start - 12) : start])[-1] and match.found.start("r") > start:
        return None
    terms = [
        read_term(match.items, match.symbols, part.start(), part.end(), match.said)
        for part in _TERM.finditer(match.symbols, start, end)
    ]
    between = " ".join(match.said(item) for item in match.items[start : end + 1]).lower()
    if not 2 <= len(terms) <= 8 or _JOINED.search(between) or _is_a_size(between):
        return None
    often = _APIECE.search(match.symbols[max(0, start - _AHEAD) : start])
    times = match.items[start - len(often.group())].value if often else Fraction(1)
    total = times * sum((term.values[0] for term in terms), Fraction(0))
    plain = sum((term.values[-1] for term in terms), Fraction(0))
    rest = terms[0].values[-1] - sum((term.values[0] for term in terms[1:]), Fraction(0))
    both_sides = "S" in match.symbols[start:end]
    units = {item.unit for item in match.items[start:end] if item.symbol == "L"}
    exactness = Exactness.EXACT if len(units) == 1 else Exactness.RULER
    values = (total, plain, rest) if both_sides else (total, plain)
    words = " + ".join(term.words for term in terms)
    words = f"{vulgar(times)} × ({words})" if often else words
    return Made(values, words, exactness, any(term.hedged for term in terms))
