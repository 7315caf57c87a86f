"""Counts that words make of others: rows and columns, so many of each, a time told in another unit."""

from __future__ import annotations

import re
from collections.abc import Iterator
from fractions import Fraction
from math import ceil, floor

from sitegen.prose.amounts.amount import COUNT, LENGTH, TIME, WEIGHT
from sitegen.prose.amounts.claims import Claim, Paragraph, sort_of
from sitegen.prose.amounts.items import stem
from sitegen.prose.amounts.vocabulary import (
    ACROSS,
    DONE,
    HAS,
    IN_A_ROW,
    NO_NOUN,
    OF_THOSE,
    ONE_OF_EACH,
    TAKES,
    THESE,
    TO_A,
    UPRIGHT,
    WHERE,
)
from sitegen.quantities import vulgar

_GRID = re.compile(r"(?P<a>N)[_A]{1,3}[&,_]{0,3}(?P<b>N)[_D]{1,3}(?P<to>[_,.:=s(if]{1,6})(?P<r>N)(?!_{0,2}[AD])")
_PARTS_LIST = re.compile(r"[LN]_{1,2}(?:,[&]?[LN]_{1,2}){1,5},?s(?P<r>N)")
_IN_TIME = re.compile(r"(?P<a>T)(?:[,(]?(?:s_?[=i]|=)[_i]{0,2}|,_)(?P<r>T)")
_TWO_SORTS = re.compile(r"(?P<a>N)_{1,3}&_{0,2}(?P<b>N)_{1,3},?s_?(?P<r>N)_{0,2}c")
_ROWS = re.compile(r"(?:s_?(?P<whole>N)_{1,2}[=i]_?|(?P<told>N)_{1,2},?s_{0,3})(?P<r>N)")
_TIMES = re.compile(r"(?:\*|f)_?$")
_AHEAD_OF_EACH = re.compile(r"[NT][_f]{0,3}$")
_AHEAD_REACH = 5
_COUNT_AND_NOUN = 2
_OF_THE = 2
_IN_ROWS = re.compile(r"(?P<row>N)[^MTGLUXP.]{1,12}?[:s=,]_?(?P<r>N)_")
_TO_A_THING = re.compile(r"[s=i,:]_?(?P<r>N)_[_e]")
_ROW_REACH = 14
_LAID = re.compile(r"(?P<row>N)[^NMTGLUXP.]{3,9}?,?[s=][^NMTGLUXP.,]{0,5}(?P<r>N)")
_ROWS_OF = re.compile(r"(?P<a>N)(?P<of>__)(?P<b>N)_{1,2}[,]?(?P<to>s?[=_i]{0,2})(?P<r>N)")
_WITH_EACH = re.compile(r"(?P<a>N)[_=]{1,3},?(?P<b>N)_[_a]?e[,:_s=i]{1,4}(?P<r>N)")
_ONE_HOLDS = re.compile(r"__(?P<a>[NG])_{1,2}[,.;&]")
_OF_ALL_EACH = re.compile(r"e__(?P<a>N)_{1,3}(?P<b>N)_{1,2},?[s=]_?(?P<r>N)")
_BY = re.compile(r"(?P<a>N)_{0,2}\*(?P<b>N)_{1,2}[,=:s]{1,2}_?(?P<r>N)")
_USED = re.compile(r"(?P<whole>N)[^NMTGLX.]{1,8}(?P<less>N)(?:[_,]{0,3}|\._)(?:v_?(?P<r>N)|s_?(?P<r2>N)[_i]{0,3}w)")
_FOR = re.compile(r"N_{0,2}f_{0,2}$")
_OF_THESE = re.compile(r"(?P<whole>N)[^N]{1,8}\.[_]{1,3}(?P<less>N)[^N.]{0,6}v_?(?P<r>N)")
_OF_EACH = re.compile(r"_{0,2}(?P<a>[NTG])(?:_{1,3}[&,]{1,2}(?P<b>N))?")
_SHARED_OUT = re.compile(r"/_?(?P<a>N)[_*]{1,2}(?P<b>N)[&,_s=i]{1,8}(?P<r>N)")
_DIVIDED = re.compile(r"(?P<a>N)_{0,2}/\*?(?P<b>N)_{0,2},?[=is]{1,2}_{0,2}(?P<r>N)")
_WHOLE_AND_PARTS = re.compile(
    r"(?P<r>N)_[^.N:MTGLUXP]{0,6}:_?(?P<p>N[^.N:;eMTGLUXP]{1,6}(?:,_?N[^.N:;eMTGLUXP]{1,6}){0,3}&_?N)"
    r"(?P<end>[^.,;NeMTGLUXP]{0,6}(?:[.;]|,(?!&)))"
)
_TWO_WORDS = re.compile(r"N_&N_[.;]")
_STILL = re.compile(r"(?P<less>N)(?=[^.NMTGLUX]{0,12}(?P<r>N))")
_NEAR_HAS = 5
_REACH = 40
_WANTED = 20
"""Items behind the number of things, among which the counts of their parts stand."""
_SIDE_BY_SIDE = 8
_STILL_REACH = 12


def counts(told: Paragraph) -> Iterator[Claim]:
    """Every count, and time in another unit, that words name as made of others."""
    yield from _grids(told)
    yield from _out_of(told)
    yield from _shared_out(told)
    yield from _wholes(told)
    yield from _still_wanted(told)
    yield from _lists(told)
    yield from _each_has(told)
    yield from _rows(told)
    yield from _rows_laid(told)
    yield from _in_rows_of(told)
    yield from _to_one(told)
    yield from _times(told)


def _grids(told: Paragraph) -> Iterator[Claim]:
    """``8 across and 9 down, 72 squares in all``."""
    for found in _GRID.finditer(told.symbols):
        across, down = (told.words_behind(found.start(name), 2) for name in ("a", "b"))
        if not DONE.isdisjoint(told.words_behind(found.start("b"), found.start("r") - found.start("b"))):
            continue  # “so I cut 50”
        told_in_all = found["to"] != "." or "c" in told.behind(found.start("r"), 3)
        if told_in_all and not (ACROSS.isdisjoint(across) or UPRIGHT.isdisjoint(down)):
            yield _product(told, found.start("a"), found.start("b"), found.start("r"))


def _out_of(told: Paragraph) -> Iterator[Claim]:
    """``4 rows of 9 blocks, 36 blocks in total``; ``20 children with 4 buttons each need 80 buttons``."""
    for found in _ROWS_OF.finditer(told.symbols):
        one, result = told.items[found.start("b")], told.items[found.start("r")]
        tied = found["to"] or told.behind(found.start("r"), 3).find("c") >= 0
        if told.words_behind(found.start("a"), 2)[1:] == ("of",) and tied and one.noun and one.noun == result.noun:
            yield _product(told, found.start("a"), found.start("b"), found.start("r"))
    for found in _WITH_EACH.finditer(told.symbols):
        one, result = told.items[found.start("b")], told.items[found.start("r")]
        if one.noun and one.noun == result.noun:
            yield _product(told, found.start("a"), found.start("b"), found.start("r"))
    for found in _OF_ALL_EACH.finditer(told.symbols):
        one, result = told.items[found.start("b")], told.items[found.start("r")]
        has = told.words_behind(found.start("a"), found.start("b") - found.start("a") - 1)
        if one.noun and one.noun == result.noun and not HAS.isdisjoint(has):
            yield _product(told, found.start("a"), found.start("b"), found.start("r"))
    for found in _BY.finditer(told.symbols):
        one, result = told.items[found.start("b")], told.items[found.start("r")]
        if one.noun and one.noun == result.noun:
            yield _product(told, found.start("a"), found.start("b"), found.start("r"))
    for found in _USED.finditer(told.symbols):
        whole, less = found.start("whole"), found.start("less")
        plural = told.items[whole].noun and told.words_behind(whole, 1)[0].endswith("s")
        if plural and told.items[less].noun in ("", told.items[whole].noun):
            yield _rest(told, whole, less, found.start("r") if found["r"] else found.start("r2"))
    for found in _OF_THESE.finditer(told.symbols):
        before = told.words_behind(found.start("less") - 3, 2)
        if {"of", "these", "them", "those"} & set(before):
            yield _rest(told, found.start("whole"), found.start("less"), found.start("r"))


def _shared_out(told: Paragraph) -> Iterator[Claim]:
    """``Divide your 360 by 9 and you see that you want 40 strips``; a rest may call for one more."""
    for found in _SHARED_OUT.finditer(told.symbols):
        whole, number = told.items[found.start("a")].value, told.items[found.start("b")].value
        if {whole.denominator, number.denominator} == {1} and number and "by" in told.words_behind(found.start("a"), 2):
            value = whole / number
            values = (value,) if value.denominator == 1 else (Fraction(ceil(value)), value, Fraction(floor(value)))
            words = f"{vulgar(whole)} ÷ {vulgar(number)}"
            parts = found.start("a"), found.start("b")
            yield Claim(found.start("r"), values, words, "quotient", parts, firm=True)
    for found in _DIVIDED.finditer(told.symbols):
        whole, number = told.items[found.start("a")].value, told.items[found.start("b")].value
        result = found.start("r")
        if number and told.items[result].noun and (whole / number).denominator == 1:
            words = f"{vulgar(whole)} ÷ {vulgar(number)}"
            parts = found.start("a"), found.start("b")
            yield Claim(result, (whole / number,), words, "quotient", parts, firm=True)


def _wholes(told: Paragraph) -> Iterator[Claim]:
    """``There are 28 corners: 24 on the napkins and 4 on the cloth``: all of them, by where they are."""
    for found in _WHOLE_AND_PARTS.finditer(told.symbols):
        parts = tuple(at for at in range(*found.span("p")) if told.symbols[at] == COUNT)
        total = found.start("r")
        noun = told.items[total].noun
        placed = all(told.words_behind(at, 1)[0] in WHERE or told.items[at].noun == noun for at in parts)
        placed = placed or _are_two_sorts(told, parts, found)
        if noun and placed:
            values = [told.items[at].value for at in parts]
            words = " + ".join(vulgar(value) for value in values)
            yield Claim(total, (sum(values, Fraction(0)),), words, "sum", parts)


def _are_two_sorts(told: Paragraph, parts: tuple[int, ...], found: re.Match[str]) -> bool:
    """Whether the parts of a whole are two sorts of it: ``48 squares: 24 light and 24 dark``."""
    sorts = [told.items[at].noun for at in parts]
    plural = any(told.words_behind(at, 1)[0].endswith("s") for at in parts)
    return _TWO_WORDS.fullmatch(found["p"] + found["end"]) is not None and all(sorts) and not plural


def _still_wanted(told: Paragraph) -> Iterator[Claim]:
    """``It takes 48 squares. With 42 in the pack you have to find 6 more``."""
    for found in _STILL.finditer(told.symbols):
        less, result = found.start("less"), found.start("r")
        if told.words_behind(result, 1) != ("more",) or told.words_behind(less - 2, 1) != ("with",):
            continue
        whole = next(
            (at for at in range(less - 1, max(-1, less - _STILL_REACH), -1) if told.symbols[at] == COUNT), None
        )
        if whole is not None and told.items[whole].noun and told.items[whole].value > told.items[less].value:
            yield _rest(told, whole, less, result, firm=True)


def _rest(told: Paragraph, whole: int, less: int, result: int, *, firm: bool = False) -> Claim:
    all_of_them, used = told.items[whole].value, told.items[less].value
    words = f"{vulgar(all_of_them)} − {vulgar(used)}"
    return Claim(result, (all_of_them - used,), words, "rest" if firm else "difference", (whole, less), firm=firm)


def _lists(told: Paragraph) -> Iterator[Claim]:
    """``Two in canvas, two in lining, so four panels``: the same word behind each count."""
    for found in _PARTS_LIST.finditer(told.symbols):
        parts = tuple(at for at in range(*found.span()) if told.symbols[at] in "LN")[:-1]
        if all(_is_in_something(told, at) for at in parts):
            values = [told.items[at].value for at in parts]
            words = " + ".join(vulgar(value) for value in values)
            yield Claim(found.start("r"), (sum(values, Fraction(0)),), words, "count", parts, firm=True)
    for found in _TWO_SORTS.finditer(told.symbols):
        one, other = (told.items[found.start(name)].value for name in "ab")
        parts = found.start("a"), found.start("b")
        yield Claim(found.start("r"), (one + other,), f"{vulgar(one)} + {vulgar(other)}", "sum", parts)


def _is_in_something(told: Paragraph, at: int) -> bool:
    """Whether a count is ``two in canvas``, which may have been read as two inches."""
    item = told.items[at]
    return told.words_behind(at, 1) == ("in",) or (item.symbol == LENGTH and told.said(item).endswith(" in"))


def _each_has(told: Paragraph) -> Iterator[Claim]:
    """``Each bag has two pieces. For 12 bags we need 24 pieces``; ``6 from each strip, so 8 strips give you 48``."""
    for each, item in told.items.kept.items():
        if item.symbol not in ("e", "_") or told.word(item) not in ONE_OF_EACH:
            continue
        if told.word(item) in ("a", "an") and (holds := _ONE_HOLDS.match(told.symbols, each + 1)):
            name, verb = (*told.words_behind(each, 2), "", "")[:2]
            if verb in HAS and name.isalpha():
                one = holds.start("a")
                yield from _for_several(told, [one], one + 1, {stem(name)}, named=True)
                continue
        ahead = _AHEAD_OF_EACH.search(told.symbols[max(0, each - _AHEAD_REACH) : each])
        if item.symbol == "_" and ahead is None:
            continue
        thing = {stem(word) for word in told.words_behind(each, 2)[:2] if word.isalpha() and word not in NO_NOUN}
        near = told.words_behind(each, _NEAR_HAS)
        has = next((at for at, word in enumerate(near) if word in HAS), None)
        behind = _OF_EACH.match(told.symbols, each + 1 + has) if has is not None and told.symbols[each] == "e" else None
        if behind is not None:
            single = [behind.start(name) for name in ("a", "b") if behind[name]]
            yield from _for_several(told, single, single[-1] + 1, thing, named=True)
        elif ahead is not None:
            one = each - len(ahead.group())
            to_a = told.words_behind(each - 2, 1)[0] in TO_A and each - one == _COUNT_AND_NOUN + 1
            if told.symbols[each] == "e" or to_a or each - one == (1 if told.symbols[one] == TIME else _COUNT_AND_NOUN):
                yield from _for_several(told, [one], each + 1, thing, named=False)


def _for_several(told: Paragraph, single: list[int], start: int, thing: set[str], *, named: bool) -> Iterator[Claim]:
    """The claims of a count that is made of several things with so many of each."""
    window = range(start, min(start + _REACH, len(told.items)))
    counted = [at for at in window if told.symbols[at] == COUNT]
    many = next((at for at in counted if _is_multiplier(told, at, thing, named=named)), None)
    of_all = not thing and not named and told.behind(start - 1, 1) in tuple(".,:")
    of_these = not thing and (of_all or _are_these(told, start))
    if not thing and not of_these and counted and counted[0] <= start + _OF_THE:
        many = counted[0]  # “for each of the 14 aprons”
    first = single[-1] if many is None else many
    if many is None:
        before = range(max(0, single[0] - _WANTED), single[0])
        many = next((at for at in before if told.symbols[at] == COUNT and told.items[at].noun in thing), None)
        if of_these:
            many = next((at for at in reversed(before) if told.symbols[at] == COUNT and told.items[at].noun), None)
    if many is None or told.items[many].value <= 1:
        return
    wanted = [at for at in range(first + 1, min(first + _WANTED, len(told.items))) if told.symbols[at] in "NTG"]
    if not wanted and (told_before := _FOR.search(told.symbols[first - 1 - _AHEAD_REACH : first])):
        wanted = [first - len(told_before.group())]
        first = wanted[0] - 1
    if not wanted or "&" in told.symbols[first + 1 : wanted[0]] or (first != many and not _is_tied(told, wanted[0])):
        return  # “for 12 children and a teacher”
    between = told.words_behind(first, wanted[0] - first - 1)
    if not DONE.isdisjoint(between) and between[-1:] != ("all",) and between[-2:] != ("so", "cut"):
        return  # “I cut 45, to be safe”
    for one in single:
        name = told.names(one)[:1]
        if told.symbols[one] in (TIME, WEIGHT):
            alike = told.symbols[wanted[0]] == told.symbols[one] and sort_of(told.items[one]) == sort_of(
                told.items[wanted[0]]
            )
            result = wanted[0] if alike else None
        elif of_these:
            alike = not of_all or (bool(name) and name[0] in told.names(wanted[0]))
            result = wanted[0] if told.tie_before(wanted[0]) and alike else None
        elif named or (name and name[0] not in thing):
            result = next((at for at in wanted if name and name[0] in told.names(at)), None)
        else:
            result = wanted[0] if {"s", "="} & set(told.tie_before(wanted[0])) else None
        if result is not None and told.symbols[result] == told.symbols[one]:
            yield _product(told, one, many, result)


def _is_tied(told: Paragraph, at: int) -> bool:
    """Whether words tie a count to what stands before it: ``so 54``, ``all 54 stars``, ``you need 54``."""
    before = told.words_behind(at - 2, 1)
    return bool(told.tie_before(at)) or before == ("all",) or (before[0] in TAKES and told.ends_clause(at + 1))


def _are_these(told: Paragraph, start: int) -> bool:
    """Whether ``each`` is one of those that were counted last: ``four patches in each of them``."""
    return told.words_behind(start - 1, 1) == ("of",) and told.words_behind(start, 1)[0:1] in THESE


def _is_multiplier(told: Paragraph, at: int, thing: set[str], *, named: bool) -> bool:
    """Whether a count tells how many things there are: ``for 12 bags``, ``times 30``, ``8 strips``."""
    if not thing.isdisjoint(told.names(at)):
        return True
    if named and told.words_behind(at, 2) in OF_THOSE:
        return True
    return named and _TIMES.search(told.symbols[max(0, at - 2) : at]) is not None


def _rows(told: Paragraph) -> Iterator[Claim]:
    """``Four pieces lie side by side, so 24 pieces make 6 rows``."""
    for found in _ROWS.finditer(told.symbols):
        whole, result = max(found.start("whole"), found.start("told")), found.start("r")
        if told.words_behind(result, 1) not in (("rows",), ("strips",)):
            continue
        before = [at for at in range(max(0, whole - _REACH), whole) if told.symbols[at] == COUNT]
        beside = [at for at in before if _is_in_a_row(told.words_behind(at, _SIDE_BY_SIDE))]
        if beside and told.items[beside[-1]].value:
            pieces, row = told.items[whole].value, told.items[beside[-1]].value
            words = f"{vulgar(pieces)} ÷ {vulgar(row)}"
            yield Claim(result, (Fraction(ceil(pieces / row)),), words, "rows", (whole, beside[-1]), firm=True)


def _rows_laid(told: Paragraph) -> Iterator[Claim]:
    """``Eight napkins are cut from cloth 150 cm wide. Three fit side by side, so the layout has 3 rows``."""
    for found in _LAID.finditer(told.symbols):
        row, result = found.start("row"), found.start("r")
        if told.words_behind(result, 1) not in (("rows",), ("strips",)):
            continue
        if not DONE.isdisjoint(told.words_behind(row, result - row - 1)):
            continue
        if not _is_in_a_row(told.words_behind(row, _SIDE_BY_SIDE)) or not told.items[row].value:
            continue
        before = (at for at in range(row - 1, max(-1, row - _REACH), -1) if told.symbols[at] == COUNT)
        whole = next((at for at in before if told.items[at].noun and told.words_behind(at, 1)[0].endswith("s")), None)
        if whole is not None and told.items[whole].value > told.items[row].value:
            pieces, one = told.items[whole].value, told.items[row].value
            words = f"{vulgar(pieces)} ÷ {vulgar(one)}"
            yield Claim(result, (Fraction(ceil(pieces / one)),), words, "rows", (whole, row))


def _in_rows_of(told: Paragraph) -> Iterator[Claim]:
    """``48 hexagons laid in rows of eight: six rows``."""
    for found in _IN_ROWS.finditer(told.symbols):
        row, result = found.start("row"), found.start("r")
        if told.words_behind(row - 3, 2) != ("rows", "of") or told.words_behind(result, 1) != ("rows",):
            continue
        around = told.numbers_between(row - _ROW_REACH, result)
        near = [at for at in around if at != row and told.symbols[at] == COUNT]
        plural = [at for at in near if told.items[at].noun and told.words_behind(at, 1)[0].endswith("s")]
        if len(plural) == 1 and told.items[row].value:
            pieces, one = told.items[plural[0]].value, told.items[row].value
            words = f"{vulgar(pieces)} ÷ {vulgar(one)}"
            yield Claim(result, (Fraction(ceil(pieces / one)),), words, "rows", (plural[0], row))


def _to_one(told: Paragraph) -> Iterator[Claim]:
    """``24 of you and four tables, so six to a table``."""
    for found in _TO_A_THING.finditer(told.symbols):
        result = found.start("r")
        to, a, name = (*told.words_behind(result, 3), "", "", "")[:3]
        if to not in ("to", "at", "per") or (to != "per" and a not in ("a", "each")):
            continue
        name = stem(a if to == "per" else name)
        near = [at for at in told.numbers_between(result - _ROW_REACH, result) if told.symbols[at] == COUNT]
        if len(near) != 2 or [told.items[at].noun for at in near].count(name) != 1:
            continue
        number, whole = sorted(near, key=lambda at: told.items[at].noun != name)
        if told.items[number].value > 1 and (told.items[whole].value / told.items[number].value).denominator == 1:
            value = told.items[whole].value / told.items[number].value
            words = f"{vulgar(told.items[whole].value)} ÷ {vulgar(told.items[number].value)}"
            yield Claim(result, (value,), words, "rows", (whole, number))


def _is_in_a_row(behind: tuple[str, ...]) -> bool:
    return any(behind[at : at + 3] in IN_A_ROW for at in range(len(behind)))


def _times(told: Paragraph) -> Iterator[Claim]:
    """``300 minutes, so that's five hours``."""
    for found in _IN_TIME.finditer(told.symbols):
        one, other = told.items[found.start("a")], told.items[found.start("r")]
        bare = found.group()[1] == "," and told.words_behind(found.start() + 1, 1) != ("or",)
        if one.unit != other.unit and not bare:
            yield Claim(found.start("r"), (one.value,), told.said(one), TIME, (found.start("a"),))


def _product(told: Paragraph, one: int, other: int, result: int) -> Claim:
    first, second = told.items[one].value, told.items[other].value
    said = told.said(told.items[one]) if told.symbols[one] in (TIME, WEIGHT) else vulgar(first)
    return Claim(result, (first * second,), f"{said} × {vulgar(second)}", "grid", (one, other), firm=True)
