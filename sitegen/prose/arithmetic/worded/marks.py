"""Marks in a row: so far apart, how far it is from the first to the last, and where each of them lies."""

from __future__ import annotations

import re
from collections.abc import Iterator
from fractions import Fraction
from itertools import pairwise

from sitegen.prose.arithmetic.agree import part_exactness
from sitegen.prose.arithmetic.statements import Stated
from sitegen.prose.arithmetic.worded.line import Line

_APART = (
    r"(?:apart|spac\w+|intervals?|every|(?:from )?cent(?:re|er) to cent(?:re|er)|between (?:them|each|neighbou?rs)"
    r"|gaps?|from (?:one|each) to the next)"
)
_FIRST_TO_LAST = (
    r"\b(?:from |between )?(?:the |your )?(?:first|top|end)(?: (?!to\b|and\b)[a-z]+){0,2} (?:to|and) (?:the |your )?"
    r"(?:cent(?:re|er) of the )?(?:last|bottom|other end)\b"
)
_ROW = re.compile(
    rf"N(?P<n>\d+) (?P<things>[a-z' -]{{3,40}}?)\b[^LNR\n]{{0,60}}L(?P<d>\d+)(?P<behind>[^LNR\n]{{0,60}}?)"
    rf"{_FIRST_TO_LAST}(?P<tail>[^LNR.\n]{{0,50}})L(?P<r>\d+)"
)
_ROW_OF_RESULT = re.compile(
    rf"N(?P<n>\d+) (?P<things>[a-z' -]{{3,40}}?)\b[^LNR\n]{{0,60}}L(?P<d>\d+)(?P<behind>[^LNR\n]{{0,50}})"
    rf"L(?P<r>\d+)(?P<tail>[^LNR.,\n]{{0,20}}?){_FIRST_TO_LAST}"
)
_ROWS_FROM = re.compile(
    r"\b(?:start|begin|first)\w*\b[^LNR\n]{0,40}L(?P<a>\d+)[^LNR\n]{0,12}\bfrom\b[^LNR\n]{0,90}N(?P<n>\d+)"
    r" (?P<more>more )?(?:rows?|lines?|tucks?|pleats?)\b[^LNR\n]{0,30}L(?P<d>\d+)"
    r"[^LNR\n]{0,60}\blast\b[^LNR.\n]{0,30}L(?P<r>\d+)(?=[^LNR.\n]{0,12}\bfrom\b)"
)
"""Rows of which the first and the last are told from one edge."""
_GAPS = re.compile(r"\b(?:gaps?|spaces?|intervals?)\b")
_NAMES_APART = re.compile(rf"\b{_APART}\b")
_PLACED = re.compile(r"\b(?:below|above|under|in)\b.*\b(?:edge|hem|neck\w*|top|end|side)\b")

_SPACING = re.compile(rf"(?:\b(?:every|at|of) L(?P<e>\d+)|L(?P<d>\d+) {_APART}\b)")
_START = re.compile(r"\b(?:beginning|starting|begin|start|starts|begins|first|top)\b[^LNR.\n]{0,40}?L(?P<s>\d+)")
_ORDINALS = {
    name: place for place, names in enumerate(("second 2nd", "third 3rd", "fourth 4th", "fifth 5th", "sixth 6th"), 2)
    for name in names.split()
}  # fmt: skip
_ORDINAL = re.compile(rf"\b(?P<which>{'|'.join(_ORDINALS)})\b(?P<words>[^LNR.;\n]{{0,30}}?)L(?P<r>\d+)")
_FROM_THE_FIRST = re.compile(r" (?:below|under|above|from|after|behind) (?:the )?(?:first|top)\b")
_REACH = 260
_IN_A_ROW = re.compile(r"L\d+(?:(?:,|, and| and|, then| then|;) (?:at )?L\d+){2,}")

_INSETS = re.compile(
    r"\b(?:first|top)\b[^LNR\n]{0,40}L(?P<a>\d+)[^LNR\n]{0,40}\b(?:last|bottom|lowest)\b[^LNR\n]{0,40}L(?P<b>\d+)"
    rf"(?P<mid>[^LNR\n]{{0,60}}(?:L\d+[^LNR\n]{{0,60}})?)L(?P<r>\d+)(?= (?:cent(?:re|er) to cent(?:re|er)|{_APART})\b)"
)
_THINGS = re.compile(r"N(\d+) (?!gaps|spaces|intervals)[a-z' -]*?[a-z]{2}s\b")
_AT_THE_ENDS = re.compile(
    r"(?:\bN\d+ at (?:each|either) end|at (?:its|the|both) (?:very )?ends"
    r"|\b(?:first|top|highest)\b[^L\n]{0,60}\b(?:last|bottom|lowest|second|third|fourth|fifth|sixth|seventh|eighth|ninth"
    r"|tenth)\b)"
)
_MORE_BETWEEN = re.compile(r"N(?P<n>\d+) (?:more|others?)? ?(?:[a-z]+ )?between\b")
_ONE_GAP = re.compile(
    rf"(?:\b(?:gaps?|spaces) (?:at|of|are) L(?P<d>\d+)|L(?P<e>\d+) (?:{_APART}|between(?=[.,;]))(?=\W|$))"
)
_BEFORE = 140
_MOST_GAPS = 60


def marks(line: Line) -> Iterator[Stated]:
    """Every distance from the first mark to the last, every place of a mark in a row, every gap between the marks."""
    if "first" in line.text or "top" in line.text or "between" in line.text:
        yield from _rows(line)
        yield from _between_ends(line)
    if "last" in line.text:
        yield from _from_one_edge(line)
    if "end" in line.text or "first" in line.text or "top" in line.text:
        yield from _from_end_to_end(line)
    yield from _chains(line)


def _rows(line: Line) -> Iterator[Stated]:
    for pattern in (_ROW, _ROW_OF_RESULT):
        for found in pattern.finditer(line.text):
            number, one = line.count(found, "n"), line.value(found, "d")
            before = line.text[max(found.start(), found.start("d") - 30) : found.start("d")]
            if not number or not (_NAMES_APART.search(before) or _NAMES_APART.match(found["behind"].strip())):
                continue
            if "L" in found["tail"] or _PLACED.search(found["tail"]):
                continue
            if re.search(r"\b(?:remaining|other|rest)\b", line.text[max(0, found.start() - 14) : found.start()]):
                continue  # the first is counted apart
            gaps = number if _GAPS.search(found["things"]) else number - 1
            words = f"{gaps} × {line.said(line.item(found, 'd'))}"
            stated = line.told(found, (gaps * one,), words, "product", "d", counts="n", near=Fraction(1, 2))
            if stated:
                yield stated


def _from_one_edge(line: Line) -> Iterator[Stated]:
    """Where the last row lies: ``start 6 mm from the edge, 7 more rows each 7 mm on, the last 5.5 cm in``."""
    for found in _ROWS_FROM.finditer(line.text):
        gaps = line.count(found, "n") - (0 if found["more"] else 1)
        if gaps > 0:
            value = line.value(found, "a") + gaps * line.value(found, "d")
            words = f"{line.said(line.item(found, 'a'))} + {gaps} × {line.said(line.item(found, 'd'))}"
            stated = line.told(found, (value,), words, "sum", ("a", "d"), counts="n", near=Fraction(1, 4))
            if stated:
                yield stated


def _between_ends(line: Line) -> Iterator[Stated]:
    """How far apart the marks lie that part a length, but for what lies before the first and behind the last."""
    for found in _INSETS.finditer(line.text):
        before = line.text[max(0, found.start() - _BEFORE) : found.start()]
        wholes = re.findall(r"L(\d+)", found["mid"]) or re.findall(r"L(\d+)", before)[-1:]
        counts = _THINGS.findall(before)
        number = int(line.items[int(counts[-1])].value) if counts else 0
        if len(wholes) != 1 or number < 2:
            continue
        a, b, whole = line.item(found, "a"), line.item(found, "b"), line.items[int(wholes[0])]
        value = (whole.value - a.value - b.value) / (number - 1)
        words = f"({line.said(whole)} − {line.said(a)} − {line.said(b)}) ÷ {number - 1}"
        places = int(wholes[0]), int(found["a"]), int(found["b"])
        if value > 0 and (
            stated := line.judged(
                int(found["r"]), (value,), words, "division", places, part_exactness(value),
                frozenset((int(counts[-1]),)),
            )
        ):  # fmt: skip
            yield stated


def _from_end_to_end(line: Line) -> Iterator[Stated]:
    """How far apart the marks lie of which the outer two lie at the ends of a length: one gap less than marks."""
    for found in _ONE_GAP.finditer(line.text):
        at = int(found["d"] or found["e"])
        before = line.text[max(0, found.start() - _REACH) : found.start()].rpartition("\n")[2]
        ends = _AT_THE_ENDS.search(before)
        between, things = _MORE_BETWEEN.search(before), _THINGS.findall(before)
        wholes = re.findall(r"L(\d+)", before)
        if ends is None or len(wholes) != 1 or not (between or things):
            continue
        count = int(between["n"] if between else things[0])
        gaps = line.items[count].value + (1 if between else -1)
        if not 1 < gaps < _MOST_GAPS:
            continue
        whole = line.items[int(wholes[0])]
        value, words = whole.value / gaps, f"{line.said(whole)} ÷ {gaps}"
        stated = line.judged(
            at,
            (value,),
            words,
            "division",
            (int(wholes[0]),),
            part_exactness(value),
            frozenset((count,)),
            Fraction(1, 2),
        )
        if stated:
            yield stated


def _chains(line: Line) -> Iterator[Stated]:
    """Marks that are numbered, or told one after the other, each so much farther on than the one before."""
    for spacing in _SPACING.finditer(line.text):
        at = int(spacing["d"] or spacing["e"])
        step = line.items[at].value
        text, last = line.text, spacing.end() + _REACH
        start = _START.search(text, max(0, spacing.start() - _REACH // 2), last)
        named = [each for each in _ORDINAL.finditer(text, spacing.end(), last) if int(each["r"]) != at]
        if start and int(start["s"]) != at and named:
            first = int(start["s"])
            yield from _numbered(line, named, first, at, step)
        for row in _IN_A_ROW.finditer(text, spacing.end(), last):
            yield from _row_by_row(line, [int(each) for each in re.findall(r"L(\d+)", row.group())], at, step)


def _numbered(line: Line, named: list[re.Match[str]], first: int, at: int, step: Fraction) -> Iterator[Stated]:
    start = line.items[first].value
    named = [each for each in named if not _FROM_THE_FIRST.match(line.text, each.end())]
    wanted = [(int(each["r"]), start + (_ORDINALS[each["which"]] - 1) * step, each) for each in named]
    right = sum(line.items[place].value == value for place, value, _ in wanted)
    if len(wanted) - right > 1 or (not right and len(wanted) > 1):
        return
    for place, value, each in wanted:
        more = _ORDINALS[each["which"]] - 1
        words = f"{line.said(line.items[first])} + {more} × {line.said(line.items[at])}"
        stated = line.judged(place, (value,), words, "sum", (first, at), near=Fraction(1, 4), sure=len(wanted) > 2)
        if stated:
            yield stated


def _row_by_row(line: Line, places: list[int], at: int, step: Fraction) -> Iterator[Stated]:
    """One of a row of marks that does not lie so far behind the one before, though all the others do."""
    values = [line.items[place].value for place in places]
    starts = [value - index * step for index, value in enumerate(values)]
    likely = max(starts, key=starts.count)
    wrong = [index for index, start in enumerate(starts) if start != likely]
    if (len(wrong) == 1 and len(places) > 3) or (len(wrong) == 1 and wrong[0] > 0 and len(places) > 2):
        index = wrong[0]
        if any(one >= other for one, other in pairwise(values)):
            return
        place, before = places[index], places[index - 1] if index else places[index + 1]
        sign = "+" if index else "−"
        words = f"{line.said(line.items[before])} {sign} {line.said(line.items[at])}"
        stated = line.judged(place, (likely + index * step,), words, "sum", (before, at), sure=True)
        if stated:
            yield stated
