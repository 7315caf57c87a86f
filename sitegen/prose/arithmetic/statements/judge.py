"""Whether a statement's terms make its result, and if not, whether the result is a slip of what they make."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import product

from sitegen.prose.arithmetic.agree import Exactness, agrees
from sitegen.prose.arithmetic.likely import is_like
from sitegen.prose.arithmetic.slack import has_slack
from sitegen.prose.arithmetic.statements.terms import Term, counts_before, is_allowance, own_sign
from sitegen.prose.arithmetic.symbols import Item
from sitegen.prose.arithmetic.terms import Said
from sitegen.prose.arithmetic.vocabulary import ACROSS, UPRIGHT
from sitegen.quantities import vulgar

_STRONG = frozenset("=vcB")
"""Words that tie the whole statement to its result."""
_LONGEST = 40
"""Items before a statement in which other numbers may explain its result."""
_LOST = re.compile(r"\b(?:los[te]|loses|overlaps?|minus|less)\b")
"""Words that only take off, so that adding is a slip."""
_OTHERS = re.compile(r"\bthe (?:other|others|rest|remaining)\b")
"""Words that tell the rest of a whole, so that both are added."""
_PLUS = re.compile(r"L_?\+_?L")
_EQUALS = re.compile(r"[_,]{0,2}[k=]_?=?")
_SMALL = 3
"""How many times as long the greatest term is as what is easily forgotten."""


@dataclass(frozen=True, slots=True)
class Stated:
    """A result with its terms: whether they make it, else what they make, and the sum in words."""

    at: int
    places: tuple[int, ...]
    holds: bool
    kind: str
    value: Fraction
    words: str
    counts: frozenset[int] = frozenset()
    """The places of the numbers that count its terms."""


@dataclass(frozen=True, slots=True)
class Statement:
    """The terms of a result at ``at``, the words between the last of them and the result, and what multiplies all."""

    items: Sequence[Item]
    symbols: str
    said: Said
    at: int
    terms: tuple[Term, ...]
    lead: str
    factor: Fraction

    @property
    def result(self) -> Item:
        """The written result."""
        return self.items[self.at]

    def length(self, term: Term) -> Fraction:
        """Millimetres, in the system of the result where a term is given in both, in its unit where in none."""
        item, unit = self.items[term.at], self.result.unit
        if unit is None or item.unit is None:
            return item.value * (unit.mm if unit is not None else 1)
        return item.beside(unit)

    def makes(self, terms: Sequence[Term], often: Sequence[int]) -> Fraction:
        """What terms make, each taken so often."""
        taken = zip(terms, often, strict=True)
        return self.factor * sum((term.sign * times * self.length(term) for term, times in taken), Fraction(0))

    @property
    def words(self) -> str:
        """The sum, what is added first."""
        parts = ""
        for term in sorted(self.terms, key=lambda term: -term.sign):
            times = f"{term.often[0]} × " if term.often[0] > 1 else ""
            parts += f"{' + ' if term.sign > 0 else ' − '}{times}{self.said(self.items[term.at])}"
        parts = parts.removeprefix(" + ")
        if self.factor == 1:
            return parts
        return f"({parts}) ÷ {vulgar(1 / self.factor)}" if self.factor < 1 else f"{vulgar(self.factor)} × ({parts})"


def judged(statement: Statement) -> Stated | None:
    """What the statement says of its result; None where the words name no sum, or the result may be another's."""
    statement = replace(statement, terms=_signed(statement))
    terms, result, items = statement.terms, statement.result, statement.items
    if not terms or result.unit is None or result.hedged or any(items[term.at].hedged for term in terms):
        return None
    units = {items[term.at].unit for term in terms if statement.symbols[term.at] == "L"} | {result.unit}
    one_system = len({unit.system for unit in units if unit is not None}) == 1
    if not one_system and not any(items[term.at].other for term in terms):
        return None
    exactness = Exactness.EXACT if len(units) == 1 else Exactness.RULER
    values = [statement.makes(terms, often) for often in product(*(term.often for term in terms))]
    likely, greatest = values[0], max(statement.length(term) for term in terms)
    kind = "difference" if min(term.sign for term in terms) < 0 else "sum"
    turned = kind == "difference" and _is_added(statement)
    whole = statement.factor == 1 and (result.value <= greatest) is (kind == "sum")
    if likely <= 0 or (whole and not turned):
        return None
    holds = any(agrees(value, unit, values, exactness, hedged=False) for value, unit in result.written)
    counts = {term.at - len(said) for term in terms if (said := counts_before(statement.symbols, term.at))}
    places = tuple(term.at for term in terms)
    stated = Stated(statement.at, places, holds, kind, likely, statement.words, frozenset(counts))
    if holds:
        return stated
    slip = (
        turned
        or is_like(result.value, likely, result.unit)
        or _is_forgotten(statement)
        or _is_equation(statement, likely)
    )
    if not slip or _is_excused(statement, values):
        return None
    slack = has_slack(items, statement.symbols, statement.at, likely, kind, statement.said)
    return None if slack else stated


def _signed(statement: Statement) -> tuple[Term, ...]:
    """The terms with a sign each, by the words; none where these name no sum."""
    items, terms, lead = statement.items, statement.terms, statement.lead
    text = statement.symbols[terms[0].at : statement.at]
    if len(terms) < 2:
        return ()
    if not any(term.sign for term in terms):
        words = " ".join(statement.said(item) for item in items[terms[0].at : terms[-1].at]).lower()
        listed = _OTHERS.search(words) is not None or "c" in lead or "=" in lead or (len(terms) > 2 and "v" not in lead)
        own = any(is_allowance(text, term.at - terms[0].at) for term in terms[1:]) and not set("qu:").isdisjoint(lead)
        if "v" in lead or _is_a_size(statement) or not (listed or own):
            return ()
        return tuple(replace(term, sign=1) for term in terms)
    base = max(terms, key=lambda term: items[term.at].value)
    signed, last = list[Term](), 1
    for term in terms:
        if term.at == base.at:
            counted = counts_before(statement.symbols, term.at) or "Do" in text
            signed.append(replace(term, sign=1, often=term.often if counted else (1,)))
            continue
        last = term.sign or last
        signed.append(replace(term, sign=last))
    return tuple(signed)


def _is_a_size(statement: Statement) -> bool:
    """Whether lengths of several directions stand among the terms: of a height and a width nobody makes a sum."""
    items = statement.items[statement.terms[0].at : statement.at]
    told = [statement.said(item).lower() for item in items if item.symbol == "W"]
    return not (ACROSS.issuperset(told) or UPRIGHT.issuperset(told))


def _is_added(statement: Statement) -> bool:
    """Whether a result is all terms together, where words such as ``lost`` take some off."""
    words = " ".join(statement.said(item) for item in statement.items[statement.terms[0].at : statement.at]).lower()
    together = sum((term.often[0] * statement.length(term) for term in statement.terms), Fraction(0))
    return "u" not in statement.lead and _LOST.search(words) is not None and statement.result.value == together


def _is_equation(statement: Statement, right: Fraction) -> bool:
    """Whether nothing but ``is`` or ``makes`` stands between a sum and its result, so that even half or twice as much
    is a slip: ``one inch plus half an inch is two inches``."""
    first, last = statement.terms[0].at, statement.terms[-1].at
    joined = _PLUS.fullmatch(statement.symbols, first, last + 1) is not None
    joined = joined and _EQUALS.fullmatch(statement.lead) is not None
    return joined and right <= 2 * statement.result.value <= 4 * right


def _is_forgotten(statement: Statement) -> bool:
    """Whether a small term was left out, or one taken less often than it is to be."""
    terms, often = statement.terms, [term.often[0] for term in statement.terms]
    greatest = max(statement.length(term) for term in terms)
    for place, term in enumerate(terms):
        least = 0 if statement.length(term) * _SMALL <= greatest else 1
        for fewer in range(least, term.often[0]):
            if statement.makes(terms, [*often[:place], fewer, *often[place + 1 :]]) == statement.result.value:
                return True
    return False


def _is_excused(statement: Statement, values: Sequence[Fraction]) -> bool:
    """Whether the last of the terms alone, the length before them, or a count make the result all the same."""
    items, symbols, terms, wanted = statement.items, statement.symbols, statement.terms, statement.result.value
    first = terms[0].at
    counts = [items[at].value for at in range(max(0, first - _LONGEST), statement.at) if symbols[at] == "N"]
    made = [each for value in values for count in counts if count for each in (value * count, value / count)]
    if _STRONG.isdisjoint(statement.lead) or not all(term.sign for term in terms[1:]):
        made += [
            statement.makes(terms[start:], [term.often[0] for term in terms[start:]])
            for start in range(1, len(terms) - 1)
        ]
    if own_sign(symbols, first) and min(term.sign for term in terms) > 0:
        before = [at for at in range(max(0, first - _LONGEST), first) if symbols[at] == "L"][-2:]
        made += [items[at].value + way * value for at in before for value in values for way in (1, -1)]
    return any(abs(each) == wanted for each in made)
