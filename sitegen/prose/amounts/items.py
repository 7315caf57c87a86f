"""A paragraph as a line of items, each a word, a sign or an amount, with one symbol each."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction
from itertools import repeat

from sitegen.prose.amounts.amount import COUNT, LENGTH, MONEY, NUMBERS, OPAQUE, PERCENT, RATE, TIME, WEIGHT, Item
from sitegen.prose.amounts.line import Line
from sitegen.prose.amounts.vocabulary import (
    CALLED_TOGETHER,
    CHARGE,
    HEDGES,
    LABELS,
    LENGTH_NAMES,
    MINUTES_IN,
    MONEY_WORDS,
    NO_NOUN,
    NO_THING,
    ONE_OF_EACH,
    PAIRS,
    SEVERAL,
    SHORT_TIMES,
    SIGNS,
    SYMBOL_OF,
    VOLUMES,
)
from sitegen.prose.find import Measured, Reading, TokenKind, Tokens
from sitegen.prose.measurement import Kind

_PRICE = re.compile(
    r"(?P<sign>[$£€])?\s?(?P<whole>\d{1,3}(?:,\d{3})+|\d{1,9})(?:(?P<point>[.,])(?P<part>\d{1,2}))?"
    r"(?:\s?(?P<word>dollars?|cents?|pence|pounds? sterling|euros?|usd|gbp|eur))?"
)
_CLOCK = re.compile(r"\d{1,2}:\d\d.*")
_TYPED_SIGNS = {"-": "-", "–": ":", "*": "*", "x": "*", "/": "/"}
"""Signs that are signs of a sum only between two blanks."""
_MORE = frozenset((*_TYPED_SIGNS, "together", "an", *ONE_OF_EACH))
"""Words and signs that tell what they are only with those beside them, or that are looked for by their places."""
_FIRST_OF_TWO = frozenset(first for first, _ in PAIRS) - _MORE
_MAY_BE_MORE = _MORE | _FIRST_OF_TWO
_ALONE = ("each", "apiece")
_ONE_OF = ("a", "an", "per", "/", "every", "the")
_NO_RATE = ("ago", "later", "or", "early", "away", "before")
"""Words behind ``a week`` by which a price is no rent."""
_FOR_ONE = ("each", "every", "one")
_REACH = 60
"""Tokens back to a price, within which ``22 50`` is another."""
_HEDGED_BEFORE = 3
_CHARGED = 6
_CENTS = 2


def told_at(tokens: Tokens, number_at: Mapping[int, Measured]) -> list[int]:
    """The places of all tokens that may tell a price, a time, a weight or a count, in order."""
    return sorted([*tokens.skipped, *(at for at, one in number_at.items() if not _is_only_factor(one))])


def _is_only_factor(one: Measured) -> bool:
    """Whether a number is a length, a percentage or a range, of which nothing here is made without another number."""
    if one.high is not None or one.counted or one.kind is Kind.PERCENT:
        return True
    supplied = one.carried or one.supplied or one.decimals == _CENTS
    return one.kind is Kind.LENGTH and one.unit is not None and not supplied


def special_tokens(tokens: Tokens, number_at: Mapping[int, Measured]) -> list[int]:
    """The places of all tokens that are more than a word or sign that stands for itself, in order."""
    words = tokens.words
    may_be_more = [at for at, word in enumerate(words) if word in _MAY_BE_MORE]
    special = {at for at in may_be_more if words[at] not in _FIRST_OF_TWO or tuple(words[at : at + 2]) in PAIRS}
    return sorted(special.union(tokens.printed, tokens.skipped, number_at))


def items_of(
    reading: Reading, first: int, behind: int, number_at: Mapping[int, Measured], special: Sequence[int]
) -> Line:
    """The items from one token of a text to another; ``special`` are the places of those that are no plain words."""
    found = Line()
    index, priced = first, -_REACH
    words = reading.tokens.words
    for at in (*special, behind):
        if at < index:
            continue  # the last item has taken it in
        found.add_words(list(map(SYMBOL_OF.get, words[index:at], repeat("_"))), index)
        index = at
        if index == behind:
            break
        item = _item(reading, index, behind, number_at, priced=index - priced < _REACH)
        index = item.behind
        if _CLOCK.fullmatch(words[at]):
            continue
        if item.symbol == COUNT and not item.noun and found.last == "p" and index - priced < _REACH:
            item = item._replace(symbol=MONEY, unit="money")  # “and i spent 27”
        if item.symbol == MONEY:
            priced = item.first
            item, index = _rated(reading.tokens, found.last, item, behind)
        if item.symbol in NUMBERS and _is_hedged(reading.tokens, item):
            item = item._replace(hedged=True)
        found.add(item)
    hours = any(item.unit == "hour" for item in found.kept.values())
    return Line.of(_joined_times(found)) if hours else found


def _item(reading: Reading, index: int, behind: int, number_at: Mapping[int, Measured], *, priced: bool) -> Item:
    tokens = reading.tokens
    kind, word = tokens.kinds[index], tokens.words[index]
    one = number_at.get(index)
    if one is not None and one.behind <= behind:
        return _number(tokens, one, number_at, priced=priced)
    if kind is TokenKind.SKIPPED:
        return _skipped(tokens, index, priced=priced)
    if kind is TokenKind.NUMBER:
        return Item(OPAQUE, index, index + 1)
    if hour := _hour(tokens, index, number_at):
        return hour
    if word in _TYPED_SIGNS:
        return Item(_TYPED_SIGNS[word] if _is_sign(reading, index) else "_", index, index + 1)
    if index + 1 < behind and (pair := PAIRS.get((word, tokens.words[index + 1]))):
        return Item(pair, index, index + 2)
    if word == "together":
        behind_it = tokens.words[index + 1] if index + 1 < behind else "."
        of_all = behind_it in CALLED_TOGETHER or (index > 0 and tokens.kinds[index - 1] is TokenKind.MARK)
        return Item("c" if of_all else "_", index, index + 1)
    return Item(SYMBOL_OF.get(word, "_"), index, index + 1)


def _is_sign(reading: Reading, index: int) -> bool:
    """Whether a dash or star stands between two blanks of one line."""
    tokens, text = reading.tokens, reading.text
    start, end = tokens.starts[index], tokens.ends[index]
    inside = index > 0 and not tokens.opens_line(index) and end < len(text)
    return inside and text[start - 1].isspace() and text[end].isspace()


def _skipped(tokens: Tokens, index: int, *, priced: bool) -> Item:
    """A price, where the token is one; what may be any other number is opaque."""
    word = tokens.words[index]
    price = _PRICE.fullmatch(word)
    if price is None or not (price["sign"] or price["word"]):
        return Item(OPAQUE if word[:1] in "$£€{" or (priced and word[:1].isdigit()) else "_", index, index + 1)
    value = Fraction(f"{price['whole'].replace(',', '')}.{price['part'] or '0'}")
    cents = price["word"] in ("cent", "cents", "pence")
    unit, decimals = "cents" if cents else "money", len(price["part"] or "")
    money = Item(MONEY, index, index + 1, value / 100 if cents else value, unit, decimals=decimals)
    return money if cents or price["part"] else _with_cents(tokens, money)


def _with_cents(tokens: Tokens, money: Item) -> Item:
    """``10 pounds 80``, ``4 dollars 50``, ``4 dollars and 50 cents``."""
    at = money.behind
    if tokens.words[at - 1][:1] in SIGNS:
        return money
    cents_behind = re.fullmatch(r"(\d{1,2}) (?:cents|pence)", " ".join(tokens.words[at + 1 : at + 2]))
    if cents_behind and tokens.word(at) == "and":
        cents = Fraction(cents_behind[1]) / 100
        return money._replace(value=money.value + cents, behind=at + 2, decimals=2)
    if at < len(tokens) and re.fullmatch(r"\d\d", tokens.words[at]) and tokens.starts[at] - tokens.ends[at - 1] == 1:
        return money._replace(value=money.value + Fraction(tokens.words[at]) / 100, behind=at + 1, decimals=2)
    return money


def _number(tokens: Tokens, one: Measured, number_at: Mapping[int, Measured], *, priced: bool) -> Item:
    if one.high is not None:
        return Item(OPAQUE, one.first, one.behind, one.value)
    if one.counted:
        return Item("_", one.first, one.behind, one.value)
    plain = Item(COUNT, one.first, one.behind, one.value, decimals=one.decimals or 0)
    if one.carried or one.supplied:
        return _count(tokens, plain, number_at, priced=priced)
    if one.decimals == _CENTS and one.kind in (None, Kind.LENGTH) and _by_length(tokens, one.first + 1):
        return plain._replace(symbol=MONEY, behind=one.first + 1, unit="money")  # “at 6.50 a metre”
    if one.kind is Kind.LENGTH and one.unit is not None:
        return plain._replace(symbol=LENGTH, unit=one.unit.name)
    last = tokens.words[one.behind - 1]
    if one.kind is Kind.WEIGHT:
        if last in ("pounds", "pound") and _is_price(tokens, one, priced=priced):
            return _with_cents(tokens, plain._replace(symbol=MONEY, unit="money"))
        return plain._replace(symbol=WEIGHT, unit=last.rstrip("s"))
    if one.kind is Kind.TIME:
        unit = SHORT_TIMES.get(stem(last), stem(last))
        minutes = MINUTES_IN.get(unit)
        return plain._replace(symbol=TIME, value=one.value * minutes, unit=unit) if minutes else _opaque(plain)
    if one.kind is Kind.PERCENT:
        return plain._replace(symbol=PERCENT, value=one.value / 100)
    if one.kind not in (None, Kind.COUNT):
        return _opaque(plain)
    return _count(tokens, plain, number_at, priced=priced)


def _opaque(plain: Item) -> Item:
    return plain._replace(symbol=OPAQUE)


def _by_length(tokens: Tokens, index: int) -> bool:
    return tokens.word(index) in ("a", "per") and tokens.word(index + 1) in LENGTH_NAMES


def _is_cents_by_length(tokens: Tokens, index: int) -> bool:
    """Whether the token is the ``50`` of ``6 50 a yard``."""
    return re.fullmatch(r"\d\d", tokens.words[index]) is not None and _by_length(tokens, index + 1)


def _is_price(tokens: Tokens, one: Measured, *, priced: bool) -> bool:
    """Whether pounds are money: a rate, a price that is paid, pence behind, or prices all around."""
    before = tokens.words[one.first - 1] if one.first else ""
    behind = tokens.words[one.behind : one.behind + 2]
    rate = behind[:1] in (["each"], ["apiece"], ["per"]) or (behind[:1] == ["a"] and behind[1:] != ["of"])
    pence = bool(behind) and re.fullmatch(r"\d\d", behind[0]) is not None and behind[1:] not in (["oz"], ["ounces"])
    paid = before in ("at", "cost", "costs", "paid", "pay", "pays", "spent", "charge", "for", "was")
    charged = behind[:1] == ["for"] and not CHARGE.isdisjoint(tokens.words[max(0, one.first - _CHARGED) : one.first])
    return behind[:1] != ["of"] and (rate or pence or (before == "at" or (paid and priced)) or priced or charged)


def _count(tokens: Tokens, plain: Item, number_at: Mapping[int, Measured], *, priced: bool) -> Item:
    """A bare number: a price behind which its currency stands, ``22 50`` where prices are told, or a count."""
    at = plain.behind
    behind = tokens.words[at] if at < len(tokens) else ""
    if behind in SIGNS:
        return plain._replace(symbol=MONEY, behind=at + 1, unit="money")
    if behind == "-" and tokens.word(at + 1) == "dollar" and tokens.ends[at] == tokens.starts[at + 1]:
        return plain._replace(symbol=MONEY, behind=at + 2, unit="money")  # “a six-dollar zip”
    per_one = MONEY_WORDS.get(behind)
    if per_one is not None and (behind != "p" or tokens.touch(at)):
        unit = "cents" if per_one > 1 else "money"
        money = plain._replace(symbol=MONEY, value=plain.value / per_one, behind=at + 1, unit=unit)
        return money if per_one > 1 else _with_cents(tokens, money)
    second = number_at.get(at)
    if second is not None and plain.value.denominator == 1 and _is_cents_by_length(tokens, at):
        cents = Fraction(tokens.words[at]) / 100
        return plain._replace(symbol=MONEY, value=plain.value + cents, behind=at + 1, unit="money", decimals=2)
    if priced and second is not None and second.kind is None and plain.value.denominator == 1 and not plain.decimals:
        spoken = re.fullmatch(r"\d\d", tokens.words[at]) is not None or not tokens.words[at][0].isdigit()
        if spoken and 10 <= second.value < 100 and second.value.denominator == 1 and plain.value < 1000:
            return plain._replace(
                symbol=MONEY, value=plain.value + second.value / 100, behind=second.behind, unit="money", decimals=2
            )
    if (tokens.words[plain.first] == "one" and plain.value == 1) or tokens.word(plain.first - 1) in LABELS:
        return plain._replace(symbol="_")
    if behind in VOLUMES:
        return plain._replace(symbol=WEIGHT, behind=at + 1, unit=behind.rstrip("s"))
    noun = behind if behind.isalpha() and behind not in NO_NOUN else ""
    return plain._replace(noun=stem(noun))


def stem(noun: str) -> str:
    """One for several: ``blocks`` and ``block`` alike."""
    if noun.endswith(("ches", "shes", "xes", "sses")):
        return noun.removesuffix("es")
    return SEVERAL.get(noun, noun.removesuffix("s"))


def _hour(tokens: Tokens, index: int, number_at: Mapping[int, Measured]) -> Item | None:
    """``an hour``, ``an hour and a quarter``, ``a minute``."""
    if tokens.words[index] not in ("a", "an") or tokens.word(index + 1) not in ("hour", "minute"):
        return None
    unit = tokens.words[index + 1]
    minutes = MINUTES_IN[unit]
    fraction = number_at.get(index + 3) if tokens.word(index + 2) == "and" else None
    if fraction is not None and fraction.kind is None and fraction.value < 1:
        return Item(TIME, index, fraction.behind, minutes * (1 + fraction.value), unit)
    return Item(TIME, index, index + 2, minutes, unit)


def _joined_times(items: Sequence[Item]) -> Iterator[Item]:
    """The items, ``2 hours 15 minutes`` and ``4 hours 20`` as one."""
    index = 0
    while index < len(items):
        item = items[index]
        at = index + 1 + (index + 1 < len(items) and items[index + 1].symbol == "&")
        after = items[at] if at < len(items) else None
        if item.symbol == TIME and item.unit == "hour" and after is not None:
            minutes = after.symbol == TIME and after.unit == "minute"
            bare = after.symbol == COUNT and at == index + 1 and 5 <= after.value < 60 and not after.noun
            if minutes or bare:
                yield item._replace(value=item.value + after.value, behind=after.behind, exact=True)
                index = at + 1
                continue
        yield item
        index += 1


def _rated(tokens: Tokens, before: str, money: Item, behind: int) -> tuple[Item, int]:
    """The price as a rate, if it is one, ``a yard``, ``each``, or ``at`` before it; and the token behind all that."""
    at = money.behind
    word, after = (*tokens.words[at : at + 2], "", "")[:2] if at < behind else ("", "")
    if word == "per" and tokens.opens_line(at):
        word = ""  # a row of its own
    if word == "for" and after in _FOR_ONE:
        return money._replace(symbol=RATE, per=_thing(tokens, at + 2)), at + 2
    if word in _ALONE:
        return money._replace(symbol=RATE, per="each"), at + 1
    by_time = word in ("a", "per") and after in ("day", "week", "month") and tokens.word(at + 2) not in _NO_RATE
    named = after.isalpha() and after not in NO_THING and (word != "the" or after in LENGTH_NAMES)
    if word in _ONE_OF and (named or by_time):
        return money._replace(symbol=RATE, per=_thing(tokens, at + 1)), at + 2
    if before == "a":
        return money._replace(symbol=RATE), at
    return money, at


def _thing(tokens: Tokens, index: int) -> str:
    word = tokens.words[index] if index < len(tokens) else ""
    return LENGTH_NAMES.get(word, stem(word))


def _is_hedged(tokens: Tokens, item: Item) -> bool:
    near = tokens.words[max(0, item.first - _HEDGED_BEFORE) : item.first]
    if not HEDGES.isdisjoint(near):
        last = max((at for at, word in enumerate(near) if word in (",", ".", ":", ";")), default=-1)
        if not HEDGES.isdisjoint(near[last + 1 :]):
            return True
    after = tokens.words[item.behind : item.behind + 2]
    return after in (["or", "so"], ["give", "or"]) or after[:1] == ["ish"]
