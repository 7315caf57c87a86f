"""Sums told in one plain statement, whatever other words stand between: ``38 cm for the side, 6 cm for half the
base, 1 cm for the seam and 4 cm for the hem: 49 cm altogether``.

The terms are sought backwards from the result: each length that plain words join to the one behind it is one more.
The words right beside a length say how often it is taken, those that lead to it whether it is added or taken off.
Where anything else is told between two lengths, the statement begins behind it.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from enum import Enum
from fractions import Fraction
from itertools import product

from sitegen.prose.arithmetic.agree import Exactness, agrees
from sitegen.prose.arithmetic.likely import is_like
from sitegen.prose.arithmetic.slack import has_slack
from sitegen.prose.arithmetic.symbols import Item
from sitegen.prose.arithmetic.terms import Said

_LEAD = re.compile(r"[=vcqB]|,_?&?_?u_?$|&_?u_?$|:[_u]{0,2}$|&_g")
"""Between the last term and the result: words that call it one."""
_IS = re.compile(r"[_apSe]{0,5}k_?$")
_OR = re.compile(r"(?:^|,) ?(?:or|that is|i\.e\.|or just|in other words)$")
_IN_ALL = re.compile(r"W?_?i?_?c")
_NO_RESULT = re.compile(r"W?_?[b*]_?L|_?[+\-]|_?&_?[LN]")
"""Behind a length that is a side of a rectangle, or a part of another sum."""
_SIDE = re.compile(r"L_?[b*]_?$")
_STRONG = frozenset("=vcB")
_LONGEST = 40
_MOST_TERMS = 6
_OTHERS = frozenset("LNPRDHX~\n")
_JOINED = re.compile(r"\b(?:join\w*|seamed|sewn|row|overlapp\w*|pieced|each \w+ after)\b")
"""Pieces that are joined are shorter together, by seams that are counted in many ways."""
_COUNTED = re.compile(r"N(?:\*|[_apejnz]{0,4}o?_?)$")
_FOUR = re.compile(r"\b(?:four|4)\b")
_SMALL = 3
"""How many times as long the greatest term is as what is easily forgotten."""
_FARTHEST = 8
"""Tokens between two lengths of one list."""
_NEAR = 14
_COUNTS = 7
"""Items before a length among which a number may count it."""
_WHERE = 5
"""Items beside a length in which sides, ends and allowances are told of it."""


class _Link(Enum):
    """How a length is joined to the one before it."""

    PLUS = 1
    MINUS = -1
    LISTED = 0
    AGAIN = 2
    """The same length told in another unit."""


@dataclass(frozen=True, slots=True)
class _Term:
    """A length of a statement: its place, 1 or -1 where words add it or take it off, and how often it may be taken."""

    at: int
    sign: int
    often: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Stated:
    """A result with its terms: whether they make it, else what they make, and the sum in words."""

    at: int
    places: tuple[int, ...]
    holds: bool
    kind: str
    value: Fraction
    words: str
    counted: bool = False
    """Whether a number counts one of the terms, so that the bare lengths are not the sum."""


def stated_results(items: Sequence[Item], symbols: str, said: Said) -> Iterator[Stated]:
    """Every result of a plain statement."""
    for at, symbol in enumerate(symbols):
        if symbol == "L" and not items[at].times and (stated := _stated(items, symbols, at, said)):
            yield stated


def _stated(items: Sequence[Item], symbols: str, at: int, said: Said) -> Stated | None:
    last = _quantity_before(items, symbols, at, said)
    if last is None or _NO_RESULT.match(symbols[at + 1 : at + 6]):
        return None
    *_, stop, lead = symbols[last + 1 : at].rpartition(".")
    if stop and not re.match(r"[_:*]*[=cqu]", lead):
        return None  # “42 cm plus 1 cm at each end. Each ribbon is 45 cm long”
    if not set("NPRDH").isdisjoint(re.sub(r"N_?[ap]", "", lead)):
        return None
    if _OR.search(" ".join(said(item) for item in items[at - len(lead) : at]).lower()):
        lead = "="
    in_all = _IN_ALL.match(symbols[at + 1 : at + 6]) is not None
    terms = _terms(items, symbols, last, said)
    sure = len(terms) > 1 and all(term.sign for term in terms[1:])
    plain = _IS.fullmatch(lead) is not None and (sure or _is_plain_list(symbols, terms))
    side = _SIDE.search(symbols[max(0, terms[0].at - 4) : terms[0].at]) is not None
    if side and not (len(terms) > 1 and terms[1].sign > 0):
        return None
    if not (_LEAD.search(lead) or in_all or plain) or not 0 < len(terms) <= _MOST_TERMS:
        return None
    lead += "c" if in_all else "=" if plain else ""
    words = " ".join(said(item) for item in items[max(0, terms[0].at - 4) : at + 6]).lower()
    signed = None if _JOINED.search(words) else _signed(items, terms, symbols[terms[0].at : at], lead)
    return None if signed is None else _judged(items, symbols, at, signed, lead, said)


def _is_plain_list(symbols: str, terms: Sequence[_Term]) -> bool:
    """Whether nothing but ``and`` stands between the terms: ``38 and 38 and 57``."""
    between = symbols[terms[0].at : terms[-1].at]
    return len(terms) > 1 and re.fullmatch(r"(?:L[&+]_?)+", between) is not None


def _quantity_before(items: Sequence[Item], symbols: str, at: int, said: Said) -> int | None:
    """The length before an item, or a bare number that a sum takes for one."""
    for place in range(at - 1, max(-1, at - _LONGEST), -1):
        if symbols[place] == "L" or (symbols[place] == "N" and _is_a_term(items, symbols, place, said)):
            return place
        if symbols[place] in "X~\n":
            return None
    return None


def _is_a_term(items: Sequence[Item], symbols: str, place: int, said: Said) -> bool:
    """Whether a bare number is added or has something added to it: ``15, plus 2 for the base``."""
    if re.match(r"N,?_?[+A]", symbols[place : place + 4]):
        return True
    alone = symbols[place + 1 : place + 2] in tuple(",.;:&+=kq") or said(items[place + 1]).lower().startswith("for ")
    return re.search(r"[+&][_o]{0,3}$", symbols[max(0, place - 4) : place]) is not None and alone


def _terms(items: Sequence[Item], symbols: str, last: int, said: Said) -> list[_Term]:
    """The terms up to the last one, back to where plain words no longer join them."""
    terms: list[_Term] = []
    at, post = last, 0
    while len(terms) <= _MOST_TERMS:
        before = _quantity_before(items, symbols, at, said)
        link, ahead = _link(items, symbols, before, at, said) if before is not None else (None, 0)
        often = _often(items, symbols, at, said)
        if before is None or link is None:
            terms.append(_Term(at, post or _own_sign(symbols, at), often))
            break
        if link is _Link.AGAIN:
            at = before
            continue
        terms.append(_Term(at, post or link.value, often))
        if ahead and set(",;&.").isdisjoint(symbols[before:at]):  # “add 1 cm to the 70 cm” is all of a sum
            terms.append(_Term(before, ahead, _often(items, symbols, before, said)))
            break
        at, post = before, ahead
    return terms[::-1]


def _own_sign(symbols: str, at: int) -> int:
    """The sign of a first term, by the words before it: ``add 1 in to``, ``take 2 in off``."""
    near = re.split(r"[LNPRDHX~.,;:\n=q]", symbols[max(0, at - 4) : at])[-1]
    return 1 if "A" in near else -1 if not set("T-m").isdisjoint(near) else 0


def _link(items: Sequence[Item], symbols: str, before: int, at: int, said: Said) -> tuple[_Link | None, int]:
    """How two lengths are joined, None where something else stands between them; and the sign behind the first."""
    gap = symbols[before + 1 : at]
    counted = _COUNTED.search(gap)
    if counted:
        gap = gap[: counted.start()]
    if items[before].value == items[at].value and items[before].unit is not items[at].unit and "." not in gap:
        return _Link.AGAIN, 0
    if "." in gap:
        tail = gap.rpartition(".")[2]
        smaller = items[at].value < items[before].value
        added = smaller and gap.count(".") == 1 and re.fullmatch(r"_?q?_?[A+][_apS]*", tail) is not None
        return (_Link.PLUS, 0) if added else (None, 0)
    for place, symbol in enumerate(gap, before + 1):
        if symbol in "RHD" and not _describes(symbols, place):
            return None, 0
        if symbol == "c" and not said(items[place + 1]).lower().startswith("with"):
            return None, 0
    gap = gap.replace("c", "+")
    if re.fullmatch(r"[^.]*,?q?_?o_?", gap) and "q" in gap and not counted:
        return (_Link.LISTED, 0) if "," in gap else (None, 0)  # “3 cm, so of the 24 cm there remain”
    if not set("NP/*hQydzElmX~=vq\n").isdisjoint(gap):
        return None, 0
    words = " ".join(said(item) for item in items[before + 1 : at]).lower()
    if gap.endswith(("b", "b_")) and "overlap" in words:
        return _Link.MINUS, 0
    pre, *rest = re.split(r"[,;&]", gap, maxsplit=1)
    post = "".join(rest)
    own = 0
    if rest:
        own = -1 if set("T<") & set(pre) else 1 if ">" in pre else 0
    else:
        post = pre
    if set("-T<m") & set(post):
        return (_Link.MINUS if not set("+AB") & set(post) else None), own
    if set("+AB>") & set(post):
        return _Link.PLUS, own
    if rest:
        listed = _Link.PLUS if items[at].times else _Link.LISTED
        far = items[at].first - items[before].behind > _FARTHEST
        return (None if not set("uW").isdisjoint(gap) or far else listed), own
    added = _own_sign(symbols, before)
    joined = re.fullmatch(r"[_apSE]*[otf]_?", gap)
    return (_Link.LISTED, added) if added and joined else (None, 0)  # “allow 1 cm at either end of the 70 cm”


def _describes(symbols: str, place: int) -> bool:
    """Whether a half or a double only tells what a length is for: ``2 in for half the bottom``."""
    before = symbols[max(0, place - 3) : place]
    behind = re.match(r".[_apW]*(?:[,;&.+:=]|$)", symbols[place : place + 6])
    return re.search(r"L[_aof]{1,2}$", before) is not None and behind is not None


def _often(items: Sequence[Item], symbols: str, place: int, said: Said) -> tuple[int, ...]:
    """How often a length may be taken by the words beside it, the likeliest first."""
    counted = _COUNTED.search(symbols[max(0, place - _COUNTS) : place])
    if counted and symbols[place] == "L":
        count = items[max(0, place - _COUNTS) + counted.start()].value
        return (int(count),) if count.denominator == 1 and 1 < count < 100 else (1,)
    if re.search(r"Do?$", symbols[max(0, place - 3) : place]):
        return (2,)
    behind = re.split(r"[L.\n,;&+=q(]", symbols[place + 1 : place + 1 + _WHERE])[0]
    ahead = re.split(r"[L.\n,;+&q]", symbols[max(0, place - _WHERE) : place])[-1]
    if re.match(r"_?S", behind) and said(items[place + 1]).lower().endswith("for"):
        return 2, 1  # “1 1/4 in for both ends”
    if re.match(r"_?S", behind) and _FOUR.search(said(items[place + behind.index("S") + 1]).lower()):
        return 2, 4
    if "S" in behind or "S" in ahead or re.search(r"S&_?[=k]?_?$", symbols[max(0, place - _WHERE) : place]):
        return (2,)
    if re.match(r"[_oaTA]{0,4}[pe]|_?D(?![ap])", behind):
        return (2,) if "S" in symbols[max(0, place - _NEAR) : place] else (2, 1)
    shared = re.match(r"[^LN.;]{0,4}&[^LN.;]{0,3}L[^LN.;,&]{0,4}S", symbols[place + 1 : place + 14])
    return (1, 2) if shared else (1,)


def _is_allowance(symbols: str, place: int) -> bool:
    behind = re.split(r"[L,;.]", symbols[place + 1 : place + 4])[0]
    before = symbols[max(0, place - 4) : place]
    return not set("ap").isdisjoint(behind) or re.search(r"[ap]_?[ok:]?_?$", before) is not None


def _signed(items: Sequence[Item], terms: Sequence[_Term], text: str, lead: str) -> list[_Term] | None:
    """The terms with a sign each, by the words; None where these name no sum."""
    rest = terms[1:]
    if not rest:
        return None
    told = [term.sign for term in terms if term.sign]
    if not told:
        listed = "c" in lead or "=" in lead or (len(terms) > 2 and "v" not in lead)
        own = any(_is_allowance(text, term.at - terms[0].at) for term in rest) and not set("qu:").isdisjoint(lead)
        if "v" in lead or "W" in text or not (listed or own):
            return None
        return [replace(term, sign=1) for term in terms]
    base = max(terms, key=lambda term: items[term.at].value)
    signed, last = list[_Term](), 1
    for term in terms:
        if term.at == base.at:
            counted = _COUNTED.search(text[: term.at - terms[0].at]) or term.often[0] > 2
            signed.append(replace(term, sign=1, often=term.often if counted or "Do" in text else (1,)))
            continue
        last = term.sign or last
        signed.append(replace(term, sign=last))
    return signed


def _judged(
    items: Sequence[Item], symbols: str, at: int, terms: Sequence[_Term], lead: str, said: Said
) -> Stated | None:
    result = items[at]
    if result.unit is None or result.hedged or any(items[term.at].hedged for term in terms):
        return None
    units = {items[term.at].unit for term in terms if symbols[term.at] == "L"} | {result.unit}
    if len({unit.system for unit in units if unit is not None}) > 1 and not any(items[t.at].other for t in terms):
        return None
    exactness = Exactness.EXACT if len(units) == 1 else Exactness.RULER
    each = [_value(items[term.at], result) for term in terms]
    values = [
        sum((term.sign * times * one for term, times, one in zip(terms, often, each, strict=True)), Fraction(0))
        for often in product(*(term.often for term in terms))
    ]
    likely = values[0]
    kind = "difference" if min(term.sign for term in terms) < 0 else "sum"
    if (result.value <= max(each)) is (kind == "sum") or likely <= 0:
        return None
    words = "".join(
        f"{' + ' if term.sign > 0 else ' − '}{f'{term.often[0]} × ' if term.often[0] > 1 else ''}{said(items[term.at])}"
        for term in terms
    ).removeprefix(" + ")
    holds = any(
        agrees(one.value * one.unit.mm, one.unit, values, exactness, hedged=False)
        for one in (result.number, result.other)
        if one is not None and one.unit is not None and one.high is None
    )
    counted = any(_COUNTED.search(symbols[max(0, term.at - _COUNTS) : term.at]) for term in terms)
    stated = Stated(at, tuple(term.at for term in terms), holds, kind, likely, words.strip(), counted)
    if holds:
        return stated
    if _is_excused(items, symbols, at, terms, values, lead) or has_slack(items, symbols, at, likely, kind, said):
        return None
    slip = is_like(result.value, likely, result.unit) or _is_forgotten(terms, each, result.value)
    return stated if slip else None


def _is_forgotten(terms: Sequence[_Term], each: Sequence[Fraction], said: Fraction) -> bool:
    """Whether one of the terms was left out, or taken once or twice where it is to be taken more or less often."""
    value = sum((term.sign * term.often[0] * one for term, one in zip(terms, each, strict=True)), Fraction(0))
    rest = [(value - term.sign * term.often[0] * one, term.sign * one) for term, one in zip(terms, each, strict=True)]
    fewer = (
        without + often * one
        for place, (without, one) in enumerate(rest)
        for often in range(0 if each[place] * _SMALL <= max(each) else 1, terms[place].often[0])
    )
    return any(said == each for each in fewer)


def _value(item: Item, result: Item) -> Fraction:
    """Millimetres, in the system of the result where a length is given in both, and in its unit where in none."""
    if result.unit is None or item.unit is None:
        return item.value * (result.unit.mm if result.unit is not None else 1)
    other = item.other
    if other is None or other.unit is None or item.unit.system is result.unit.system:
        return item.value
    return other.value * other.unit.mm


def _is_excused(
    items: Sequence[Item], symbols: str, at: int, terms: Sequence[_Term], values: Sequence[Fraction], lead: str
) -> bool:
    """Whether the last of the terms alone, the length before them, or a count make the result all the same."""
    wanted = items[at].value
    first = terms[0].at
    counts = [items[place].value for place in range(max(0, first - _LONGEST), at) if symbols[place] == "N"]
    made = [value * count for value in values for count in counts]
    made += [value / count for value in values for count in counts if count]
    if _STRONG.isdisjoint(lead) or not all(term.sign for term in terms[1:]):
        made += [
            sum((term.sign * items[term.at].value * term.often[0] for term in terms[start:]), Fraction(0))
            for start in range(1, len(terms) - 1)
        ]
    if _own_sign(symbols, first) and min(term.sign for term in terms) > 0:
        before = [place for place in range(max(0, first - _LONGEST), first) if symbols[place] == "L"][-2:]
        made += [items[place].value + way * value for place in before for value in values for way in (1, -1)]
    return any(abs(each) == wanted for each in made)
