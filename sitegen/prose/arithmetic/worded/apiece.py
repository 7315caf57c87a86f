"""What one thing takes, and what several of them take, where both are named: ``a 32 cm repeat … Seven repeats come to
224 cm``; and what each of several parts is of a whole: ``an eight-gore skirt … 40 in. Each gore is 5 in``."""

from __future__ import annotations

import re
from collections.abc import Iterator
from fractions import Fraction

from sitegen.prose.arithmetic.agree import Exactness, part_exactness
from sitegen.prose.arithmetic.statements import Stated
from sitegen.prose.arithmetic.worded.line import Line

_TAKES = (
    r"(?:is|are|be|takes?(?: up| in)?|taking|needs?|uses?(?: up)?|wants?|measures?|eats?(?: up)?|gets?|has|have|adds?"
    r"|loses?|comes? (?:to|out at)|makes?|means?|works? out at|gives?|requires?|=)"
)
_PER = (
    # 66 cm a skirt; 40 cm of calico for each bag
    re.compile(
        r"L(?P<p>\d+)(?: of [a-z]+(?: [a-z]+)?)? (?:a|an|per|each|every|for (?:each|every|one|a)) (?P<noun>[a-z]{3,})\b"
    ),
    # every pleat is an inch on the outside and takes 2 in
    re.compile(
        r"\b(?:each|every|one|a|an|per) (?P<noun>[a-z]{3,})\b[^LNR.,;\n]{0,30}? "
        rf"{_TAKES} [^LNR.,;\n]{{0,20}}?L(?P<o>\d+)"
        rf"(?:[^LNR.,;\n]{{0,40}} {_TAKES} [^LNR.,;\n]{{0,20}}?L(?P<p>\d+))?"
    ),
    # a 32 cm repeat
    re.compile(r"\b(?:a|an|each|every|one|the) L(?P<p>\d+)-? (?P<noun>[a-z]{3,})\b"),
)
_COUNT = re.compile(
    rf"N(?P<n>\d+) (?:(?!of\b)[a-z-]+ ){{0,2}}?(?P<nouns>[a-z]{{3,}}s)\b(?P<gap>[^LNR.\n]{{0,24}}?) ?"
    rf"(?:{_TAKES}|:|,) (?:[a-z']+ ){{0,3}}?L(?P<r>\d+)"
)
_COUNT_BEFORE = re.compile(r"N(?P<n>\d+) (?:(?!of\b)[a-z-]+ ){0,2}?(?P<nouns>[a-z]{3,}s)\b")
_IN_ALL_BEHIND = re.compile(
    r"^ (?:for|in) (?:the|all) (?:set|lot|[a-z]+)\b|^ (?:altogether|in all|in total|all told)\b"
)
_ROLL = re.compile(r"^ (?:off|from|out of) (?:the|a|my|your|our) L\d+(?: [a-z]+)? (?:roll|bolt|reel|piece|card)\b")
_REACH = 220
_NOT_THINGS = frozenset(
    ["one", "time", "times", "way", "side", "end", "edge", "inch", "size", "other", "day", "week", "year", "lot"]
)
_OTHER_SUM = re.compile(r"\b(?:plus|seams|minus|less(?! than)|except|joined|overlap\w*|apart)\b")

_PARTS = re.compile(
    r"N(?P<n>\d+) ?-?(?: (?!of\b)[a-z-]+){0,1}? ?(?P<noun>gore|panel|section|piece|segment|tier|width"
    r"|strip|wedge|block)s?\b"
)
_EACH = re.compile(
    r"\b(?:each|every|one) (?P<noun>gore|panel|section|piece|segment|width|strip|wedge)\b(?P<words>[^LNR.,;\n]{0,40}?)"
    r" (?:is|are|measures|finishes|comes (?:out at|to)|wants to be|=)(?P<more>(?: [a-z']+){0,3}) L(?P<r>\d+)"
)


_TUCKS = re.compile(
    r"N(?P<n>\d+) (?:[a-z]+ ){0,2}?(?:tucks|pleats|folds)\b[^LNR\n]{0,40}L(?P<d>\d+)[^LNR\n]{0,80}\b(?:twice|double)\b"
    r"(?: (?:its|their|that|the|this|as much|depth|width|much|in|length|of|it))*[^LNR\n]{0,40}?"
    r"\b(?:add|allow|takes?|taking|lose|shorten|uses?|total|makes?|so|need|longer)\b[^LNR.\n]{0,30} L(?P<r>\d+)"
)


def apiece(line: Line) -> Iterator[Stated]:
    """What several things take of which one is told, and what each part is of a whole."""
    yield from _several(line)
    yield from _of_parts(line)
    for found in _TUCKS.finditer(line.text):
        number, one = line.count(found, "n"), line.item(found, "d")
        values = (2 * number * one.value, 2 * one.value)
        words = f"{number} × 2 × {line.said(one)}"
        if number and (stated := line.told(found, values, words, "product", "d", counts="n")):
            yield stated


def _several(line: Line) -> Iterator[Stated]:
    for pattern in _PER:
        for per in pattern.finditer(line.text):
            noun = per["noun"]
            if noun in _NOT_THINGS or noun.endswith("ss"):
                continue
            places = [int(place) for name, place in per.groupdict().items() if name != "noun" and place]
            for count in _COUNT.finditer(line.text, per.end(), per.end() + _REACH):
                if not _names(count["nouns"], noun) or int(count["r"]) in places or not line.count(count, "n"):
                    continue
                if _OTHER_SUM.search(line.text[per.end() : count.end()]):
                    continue
                yield from _product(line, count, places, per.end())
            yield from _told_before(line, per, places, noun)


def _names(several: str, one: str) -> bool:
    return several in (f"{one}s", f"{one}es") or (one.endswith("y") and several == f"{one[:-1]}ies")


def _told_before(line: Line, per: re.Match[str], places: list[int], noun: str) -> Iterator[Stated]:
    """The total behind what one takes, where the things are counted before: ``Four pads … 168 cm a pad, 672 cm for the
    set``."""
    first = max(0, per.start() - _REACH)
    counts = [
        each for each in _COUNT_BEFORE.finditer(line.text, first, per.start())
        if _names(each["nouns"], noun) and line.count(each, "n")
    ]  # fmt: skip
    result = re.match(r"[^LNR.\n]{0,30}?L(?P<r>\d+)", line.text[per.end() : per.end() + 40])
    if len({each["n"] for each in counts}) != 1 or result is None:
        return
    behind = line.text[per.end() + result.end() : per.end() + result.end() + 40]
    lead = line.text[per.end() : per.end() + result.start("r")]
    sure = _IN_ALL_BEHIND.match(behind) or _ROLL.match(behind) or re.search(r"\b(?:all|total|altogether)\b", lead)
    if sure and not _OTHER_SUM.search(lead):
        number = line.count(counts[-1], "n")
        part = line.items[places[-1]]
        words = f"{number} × {line.said(part)}"
        stated = line.judged(
            int(result["r"]), (number * part.value,), words, "product", tuple(places[-1:]),
            counts=frozenset((int(counts[-1]["n"]),)),
        )  # fmt: skip
        if stated:
            yield stated


def _product(line: Line, count: re.Match[str], places: list[int], behind: int) -> Iterator[Stated]:
    number, result = line.count(count, "n"), int(count["r"])
    # Of two lengths of a thing the result is of the one that goes on in the same words, else of the last.
    following = line.text[count.end() : count.end() + 9]
    before = line.text[max(0, count.start() - 2 * _REACH) : count.start()]
    alike = [place for place in places if following.strip() and f"L{place}{following}" in before]
    likely = (alike or places)[-1]
    values = tuple(number * line.items[place].value for place in (likely, *places))
    words = f"{number} × {line.said(line.items[likely])}"
    stated = line.judged(
        result, values, words, "product", tuple(places), counts=frozenset((int(count["n"]),)),
        near=Fraction(2, 5) if alike else None,
    )  # fmt: skip
    told = [int(each) for each in re.findall(r"L(\d+)", line.text[behind : count.start("r") - 1])]
    others = any(number * line.items[place].value == line.items[result].value for place in told)
    if stated and (stated.holds or not others):
        yield stated


def _of_parts(line: Line) -> Iterator[Stated]:
    for each in _EACH.finditer(line.text):
        first = max(0, each.start() - _REACH)
        before = line.text[first : each.start()]
        counts = [part for part in _PARTS.finditer(before) if part["noun"] == each["noun"] and line.count(part, "n")]
        wholes = [int(place) for place in re.findall(r"L(\d+)", before)]
        if len(counts) != 1 or not wholes or re.search(r"\b(?:plus|with|add|includ\w+)\b", each["words"]):
            continue
        number = line.count(counts[0], "n")
        wanted = line.items[int(each["r"])].value
        sizes = [line.items[place].value for place in wholes[-3:]]
        summed = len(sizes) == 3 and sizes[0] + sizes[1] == sizes[2]  # “hip 38 in with 2 in ease is 40 in”
        nearest = wholes[-1] if summed else min(wholes, key=lambda at: abs(line.items[at].value / number - wanted))
        whole = line.items[nearest]
        value = whole.value / number
        exactness = part_exactness(value) if value else Exactness.RULER
        values = (value, *(line.items[place].value / number for place in wholes))
        words = f"{line.said(whole)} ÷ {number}"
        stated = line.judged(
            int(each["r"]), values, words, "division", (nearest,), exactness, frozenset((int(counts[0]["n"]),))
        )
        if stated and (stated.holds or _is_no_allowance(line, stated, whole.value, number, wholes)):
            yield stated


def _is_no_allowance(line: Line, stated: Stated, whole: Fraction, number: int, wholes: list[int]) -> bool:
    """Whether no length told before makes the part, added to the whole or to each part."""
    wanted = line.items[stated.at].value
    more = [line.items[place].value for place in wholes[:-1]]
    if len(more) > 1 and more[-1] + more[-2] == whole:
        return True  # it is in the whole already
    return all(
        wanted not in ((whole + way * one) / number, whole / number + way * one)
        for one in more
        for way in (1, -1, 2, -2)
    )
