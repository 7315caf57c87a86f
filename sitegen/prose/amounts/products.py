"""Products: so much cloth at a price, so many bags of one weight, and a price for one out of a price for several."""

from __future__ import annotations

import re
from collections.abc import Iterator
from fractions import Fraction

from sitegen.prose.amounts.amount import COUNT, LENGTH, MONEY, NUMBERS, PERCENT, RATE, TIME, WEIGHT, Item
from sitegen.prose.amounts.claims import Claim, Paragraph
from sitegen.prose.amounts.items import stem
from sitegen.prose.amounts.vocabulary import (
    CHEAPER,
    MANY_IN,
    MASSES,
    MINUTES_IN,
    ONE_THING,
    PEOPLE,
    RATE_WORDS,
    SUBJECTS,
    TAKES,
)
from sitegen.quantities import Unit, vulgar

_REACH = 32
"""Items from a price for one to the price for all."""
_BACK = 45
"""Items back from a price for one, among which its quantity may stand."""
_BACK_FOR_COUNTS = 25
_FREE_REACH = 12
_AHEAD = re.compile(r"(?:[LNT][_e]{0,5}|L[_i]{0,6}),?a_?$")
_BEHIND = re.compile(r"f[_c]{0,3}[LNT]")
_IS = re.compile(r"(?:^_?|[LNT]_{0,3}|Lf_{1,2})i_?$")
"""``Six at $15 each is $90``; ``15 yards cost $12``."""
_ALL_OF_IT = re.compile(r",?s_{0,2}[LNGT]_{0,2}[i=][_=]{0,2}")
"""``It was $8 a yard, so two yards is $16``."""
_NAMED_BETWEEN = re.compile(r"(?:N_{1,2}|[TL]),$")
_PRICE_OF_ONE = re.compile(r"(?P<one>M)[^MUTGLPXN]{1,14}(?P<n>N)_{0,2},?(?:s_{0,2}=?|=|:)[_=i]{0,2}(?P<r>M)")
_REASON_REACH = 6
_FOR_BOTH = re.compile(r"f_{1,3}")
_BREAKS = frozenset("-oPv/XM")
_SOLD_IN = ("M", "YD", "FT")
_COUNTED = re.compile(r"(?P<n>N)_{0,2}?[_*]?[fa]?_{0,3}(?P<one>[TGM])(?=_{0,2}e?[_,]{0,5}[s=:,(])")
_EACH = re.compile(r"(?P<one>[TGU])e?[^.TGMUNX]{0,20}?[s=,_]_{0,3}(?P<n>N)_{0,2}[i=][_=]{0,2}(?P<r>[TGM])")
_SHARED = re.compile(r"M[^.MU/]{0,24}(?:\._{0,2})?/[_*]{0,2}N_{0,3}[,)]?[=s:i][_=i]{0,3}(?P<r>[MU])")
_SHARE = re.compile(r"N_{0,2}/_{0,2}M,?s?_?e[_p]{0,2}(?P<r>M)")
_SPLIT = re.compile(r"/_{0,3}N_{0,4},?_{0,2}M_?[=i]_?(?P<r>U)")
_AMONG = re.compile(r"M[^.MUNX]{0,10}N__,s_?(?P<r>U)")
_FOR_SEVERAL = re.compile(r"M_{0,3}fN_{0,3}[,]?s_{0,2}(?P<r>U)")

_AT_THAT_RATE = re.compile(r"(?P<one>T)_{0,2}e[^.]{0,8}\.?_?a__,?_{0,2}(?P<n>N)_{0,3}[^.MUTGLN]{0,8}(?P<r>T)")
_OF_US = (("of", "us"), ("of", "you"), ("of", "them"))
_AT_EACH = re.compile(r"(?P<n>N)_{1,2}a_?(?P<one>[GT])e?(?:,?__|_|[i=]_?)(?P<r>[GT])")
_FOR_A_PAIR = re.compile(r",?_?[s=][_=i]{0,3}(?P<r>[MU])")
_SAFE_REACH = 5
_FOR_A_PAIR_REACH = 12
_OF_ONE_SHARE = re.compile(r"[=s:i][_e]{0,3}/[_i=]{0,3}(?P<r>[MU])")

_JOINED_TO_A_LINE = re.compile(r"[NL]_{0,4}aU_{0,2},?&_{0,2}$")
"""``14 at £4.50 and`` before ``six at £3``: what is told behind both is what both come to."""
_LINE = 14


def products(told: Paragraph) -> Iterator[Claim]:
    """Every product of a paragraph that words name as one."""
    for at in told.numbers:
        if told.symbols[at] == RATE and (claim := _of_rate(told, at)):
            yield claim
    yield from _for_pairs(told)
    yield from _of_count(told)
    yield from _at_each(told)
    yield from _of_one(told)
    yield from _at_that_rate(told)
    yield from _shares(told)
    yield from _shares_of_rate(told)


def _of_rate(told: Paragraph, at: int) -> Claim | None:
    """The price of a quantity, of which the price for one is told before."""
    result = next((each for each in range(at + 1, min(at + _REACH, len(told.items))) if told.symbols[each] in "MU"), 0)
    if not result or told.symbols[result] != MONEY or told.items[result].unit != "money":
        return None
    between = told.symbols[at + 1 : result]
    if between.count(".") > 1 or not _BREAKS.isdisjoint(between):
        return None
    for_some = _BEHIND.match(told.behind(result, 6))
    tied = told.tie_before(result) or not between or _IS.search(between)
    ends = told.ends_clause(result) or told.behind(result, 1) in tuple(",&c")
    ends = ends or told.words_behind(result, 2) == ("in", "the")  # “in the pot”
    in_a_list = between == "," and _AHEAD.search(told.symbols[max(0, at - 8) : at]) and ends
    if not (tied or in_a_list or (for_some and between[-1:] == ",") or _is_named_between(told, at, result)):
        return None
    if (not for_some and _is_of_another(told, at, result)) or _is_partly_free(told, at, result):
        return None
    found = _quantity(told, at, result)
    if found is None:
        return None
    place, firm = found
    if _JOINED_TO_A_LINE.search(told.symbols[max(0, place - _LINE) : place]) or (
        not firm and _is_one_of_several(told, at)
    ):
        return None
    price = told.items[at]
    value = _factor(told.items[place]) * price.value
    words = f"{_amount_said(told, place)} at {told.said(price)}"
    return Claim(result, (value,), words, "product", (place, at), firm=firm)


def _is_named_between(told: Paragraph, at: int, result: int) -> bool:
    """Whether so many of what the price is for stand right before a price: ``£32 a width. Five widths, £160``."""
    named = _NAMED_BETWEEN.search(told.symbols[at + 1 : result])
    if named is None:
        return False
    many, per = told.items[result - len(named.group())], told.items[at].per
    alike = many.noun == per if many.symbol == COUNT else _fits(many, told.items[at])
    reason = told.words_behind(result, _REASON_REACH)
    return bool(per) and alike and told.behind(result, 1) in ("", *".,&c)") and CHEAPER.isdisjoint(reason)


def _is_of_another(told: Paragraph, at: int, result: int) -> bool:
    """Whether a new clause with a subject of its own leads to the result: ``a metre, and the lining was £12``."""
    start = next((place for place in range(result - 1, at, -1) if told.symbols[place] in ",.&"), None)
    if start is None:
        return False
    if told.symbols[start] == "&" and _FOR_BOTH.fullmatch(told.symbols, at + 1, start):
        return False  # “£7.50 a head for hessian and wadding came to £90”
    rest = range(start + 1, result)
    other = (place for place in rest if told.symbols[place] == "_" and told.symbols[place - 1] not in "LNT")
    return any(told.word(told.items[place]) not in SUBJECTS for place in other)


def _is_partly_free(told: Paragraph, at: int, result: int) -> bool:
    """Whether one of the things costs nothing: ``the first lesson is free, then £9 each``."""
    start = max(0, at - _FREE_REACH)
    return "free" in told.words_behind(start, result - start)


def _is_one_of_several(told: Paragraph, at: int) -> bool:
    """Whether another price for one stands before it: ``£5 per adult and £3 per child``."""
    before = re.split(r"[M.]", told.symbols[max(0, at - 20) : at])[-1]
    return RATE in before


def _amount_said(told: Paragraph, place: int) -> str:
    item = told.items[place]
    return told.said(item) if item.symbol in (LENGTH, TIME, WEIGHT) else vulgar(item.value)


def _quantity(told: Paragraph, at: int, result: int) -> tuple[int, bool] | None:
    """Where the quantity stands, and whether words bind it to the price."""
    if behind := _BEHIND.match(told.behind(result, 6)):
        place = result + behind.end()
        if _fits(told.items[place], told.items[at]):
            return place, True
    if ahead := _AHEAD.search(told.symbols[max(0, at - 8) : at]):
        place = at - len(ahead.group())
        if told.words_behind(place - 3, 2) == ("of", "the"):
            return None  # “52 of the 60 at £4”
        if _fits(told.items[place], told.items[at]):
            return place, True
        wide = place - 2  # “1 3/4 yd of 108" wideback at $16 a yard”
        if told.symbols[wide : place + 1] == "L_L" and _fits(told.items[wide], told.items[at]):
            return wide, True
    inside = [each for each in range(at + 1, result) if told.symbols[each] in "LNTG"]
    if inside:
        bound = _ALL_OF_IT.fullmatch(told.symbols, at + 1, result) is not None
        return (inside[0], bound) if len(inside) == 1 and _fits(told.items[inside[0]], told.items[at]) else None
    by_length = told.items[at].per in Unit.__members__
    stops = 0
    for place in range(at - 1, max(-1, at - (_BACK if by_length else _BACK_FOR_COUNTS)), -1):
        stops += told.symbols[place] == "."
        if stops > 1:
            return None
        if _fits(told.items[place], told.items[at]) and (by_length or told.items[place].symbol == COUNT):
            return place, False
    return None


def _fits(item: Item, price: Item) -> bool:
    if price.per in MINUTES_IN:
        return item.symbol == TIME and item.unit == price.per
    if price.per in MASSES:
        return item.symbol == WEIGHT and item.unit == MASSES[price.per]
    if price.per in Unit.__members__:
        return item.symbol == LENGTH and item.unit == price.per
    if item.symbol == LENGTH:
        return not price.per and item.unit in _SOLD_IN
    return item.symbol == COUNT and item.value > 1 and item.value.denominator == 1


def _factor(item: Item) -> Fraction:
    return item.value / MINUTES_IN[item.unit] if item.symbol == TIME else item.value


def _for_pairs(told: Paragraph) -> Iterator[Claim]:
    """``£35 per curtain, so £70 for the pair``; with no word of reckoning, both may well cost less."""
    for at in told.numbers:
        if told.symbols[at] != RATE or told.items[at].per in MANY_IN or told.items[at].per in Unit.__members__:
            continue
        found = _FOR_A_PAIR.match(told.symbols, at + 1, at + _FOR_A_PAIR_REACH)
        if found is None:
            continue
        result = found.start("r")
        name, named_at = _several_named(told, result)
        if name and told.behind(named_at, 1) in ("", *".,)&s"):  # not “for a pair of small ones”
            many, price = MANY_IN[name], told.items[at]
            words = f"{many} × {told.said(price)}"
            yield Claim(result, (many * price.value,), words, "product", (at,), firm=True)


def _several_named(told: Paragraph, at: int) -> tuple[str, int]:
    """The word for several behind a price, as ``for the pair``, and where it stands; empty where there is none."""
    if told.items[at].per in MANY_IN:
        return told.items[at].per, at
    behind = told.words_behind(at, 3)
    if behind[:1] == ("for both",):
        return "both", at + 1
    if behind[:1] in (("for",), ("the",), ("a",)):
        return next(((word, at + 1 + n) for n, word in enumerate(behind) if word in MANY_IN), ("", at))
    return "", at


def _at_that_rate(told: Paragraph) -> Iterator[Claim]:
    """``4 minutes apiece. At that rate the 42 blocks take 168 minutes``."""
    for found in _AT_THAT_RATE.finditer(told.symbols):
        at = told.symbols.rindex("a", found.start(), found.start("n"))
        pointing, name = told.words_behind(at, 2)
        if pointing in ("that", "this") and name in RATE_WORDS and _whole(told.items[found.start("n")]):
            yield _product(told, found.start("n"), found.start("one"), found.start("r"), firm=True)


def _of_count(told: Paragraph) -> Iterator[Claim]:
    """``three 20 oz bags, so 60 oz in total``; ``50 minutes each, so six is 300 minutes``."""
    for found in _COUNTED.finditer(told.symbols):
        number, one = found.start("n"), found.start("one")
        result = _next_of(told, one)
        if result is None or not told.tie_before(result) or not _whole(told.items[number]):
            continue
        between = told.symbols[one + 1 : result]
        if set(between) <= set("_,se=ci:(p"):
            yield _product(told, number, one, result, firm="_" not in between.lstrip("_e,")[:4])
    for found in _EACH.finditer(told.symbols):
        one, number, result = (found.start(name) for name in ("one", "n", "r"))
        of_each = "e" in told.symbols[one : one + 2] or told.items[one].per == "each"
        if of_each and _whole(told.items[number]) and _same(told.items[one], told.items[result]):
            yield _product(told, number, one, result, firm=True)


def _at_each(told: Paragraph) -> Iterator[Claim]:
    """``With 20 bears at 150 grams you need 3000 grams``."""
    for found in _AT_EACH.finditer(told.symbols):
        number, one, result = (found.start(name) for name in ("n", "one", "r"))
        needed = told.symbols[result - 1] in "i=" or told.words_behind(result - 2, 1)[0] in TAKES
        safe = "safe" in told.words_behind(result, _SAFE_REACH)
        if needed and not safe and _whole(told.items[number]) and _same(told.items[one], told.items[result]):
            yield _product(told, number, one, result, firm=True)


def _of_one(told: Paragraph) -> Iterator[Claim]:
    """``A reel costs £2.40. I bought 5, so £12.00``: the price of one thing, then of several."""
    for found in _PRICE_OF_ONE.finditer(told.symbols):
        one, number, result = (found.start(name) for name in ("one", "n", "r"))
        article, name, costs = (*told.words_behind(one - 4, 3), "", "", "")[:3]
        if article not in ONE_THING or costs not in ("costs", "cost", "is", "was", "at", ":"):
            continue
        noun = told.items[number].noun
        if _whole(told.items[number]) and noun in ("", stem(name)) and CHEAPER.isdisjoint(told.words_behind(result, 4)):
            yield _product(told, number, one, result, firm=False)


def _whole(count: Item) -> bool:
    return count.value > 1 and count.value.denominator == 1


def _product(told: Paragraph, count: int, one: int, result: int, *, firm: bool) -> Claim:
    number, each = told.items[count].value, told.items[one]
    words = f"{vulgar(number)} × {told.said(each)}"
    return Claim(result, (number * each.value,), words, "product", (count, one), firm=firm)


def _next_of(told: Paragraph, at: int) -> int | None:
    """The next amount behind one, if it is of the same kind and near."""
    for place in range(at + 1, min(at + 14, len(told.items))):
        if told.symbols[place] in NUMBERS:
            return place if _same(told.items[at], told.items[place]) else None
        if told.symbols[place] == ".":
            return None
    return None


def _same(one: Item, other: Item) -> bool:
    alike = one.symbol == other.symbol or (one.symbol, other.symbol) == (RATE, MONEY)
    return alike and (one.unit == other.unit or one.symbol == "T")


def _shares(told: Paragraph) -> Iterator[Claim]:
    """A price for several, and what one of them costs."""
    yield from _named_shares(told)
    for form in (_SHARED, _FOR_SEVERAL, _SPLIT, _SHARE, _AMONG):
        for found in form.finditer(told.symbols):
            result = found.start("r")
            whole = found.start() + found.group().index(MONEY)
            counts = [each for each in range(found.start(), result) if told.symbols[each] == COUNT]
            count = told.items[counts[-1]]
            if form is _AMONG and told.words_behind(counts[-1], 2) not in _OF_US:
                continue
            if not _whole(count) or PERCENT in told.symbols[whole:result]:
                continue
            words = f"{told.said(told.items[whole])} ÷ {vulgar(count.value)}"
            value = told.items[whole].value / count.value
            yield Claim(result, (value,), words, "share", (whole, counts[-1]), firm=True)


def _shares_of_rate(told: Paragraph) -> Iterator[Claim]:
    """``We are eight, and 8.8 m are put aside. It costs £12 a metre, which makes your share £13.20``."""
    for found in _OF_ONE_SHARE.finditer(told.symbols):
        result = found.start("r")
        before = range(max(0, result - _BACK), result)
        heads = [each for each in before if told.symbols[each] == COUNT and told.items[each].noun in PEOPLE]
        rates = [each for each in before if told.symbols[each] == RATE]
        if not heads or not rates or not _whole(told.items[heads[-1]]):
            continue
        price, people = told.items[rates[-1]], told.items[heads[-1]].value
        bought = [each for each in before if told.symbols[each] == LENGTH and _fits(told.items[each], price)]
        if bought:
            values = [_factor(told.items[each]) * price.value for each in reversed(bought)]
            words = f"{told.said(told.items[bought[-1]])} at {told.said(price)} ÷ {vulgar(people)}"
            shares = (values[0] / people, *values)
            yield Claim(result, shares, words, "share", (bought[-1], rates[-1], heads[-1]), firm=True)


def _named_shares(told: Paragraph) -> Iterator[Claim]:
    """``A cone costs €7.20 and lasts for six shirts, so €1.20 a shirt``."""
    for result in told.numbers:
        item = told.items[result]
        if item.symbol != RATE or not item.per or not (told.tie_before(result) or _is_or(told, result)):
            continue
        before = range(max(0, result - _BACK_FOR_COUNTS), result)
        counts = [each for each in before if told.symbols[each] == COUNT and told.items[each].noun == item.per]
        prices = [each for each in before if told.symbols[each] in (MONEY, RATE)]
        if len(counts) == 1 and len(prices) == 1 and told.symbols[prices[0]] == MONEY and _whole(told.items[counts[0]]):
            whole, number = told.items[prices[0]], told.items[counts[0]].value
            words = f"{told.said(whole)} ÷ {vulgar(number)}"
            yield Claim(result, (whole.value / number,), words, "share", (prices[0], counts[0]))


def _is_or(told: Paragraph, at: int) -> bool:
    """Whether an amount is another way to say what stands before it: ``€84, or €4.20 a bag``."""
    return at > 1 and told.symbols[at - 2] == "," and told.words_behind(at - 2, 1) == ("or",)
