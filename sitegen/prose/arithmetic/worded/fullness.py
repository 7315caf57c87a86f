"""Frills and valances that are so many times as full: ``ratio 1 : 1.8. The edge is 50 cm, the strip 90 cm``, and
ratios of just two lengths: ``gather 40 in to 20 in, a ratio of 2 to 1``."""

from __future__ import annotations

import re
from collections.abc import Iterator
from fractions import Fraction

from sitegen.prose.arithmetic.agree import Exactness
from sitegen.prose.arithmetic.statements import Stated
from sitegen.prose.arithmetic.worded.line import Line

_FACTOR = re.compile(
    r"N(?P<f>\d+) times (?:as )?(?:full(?:ness)?|long as|the (?:length|edge|width|hem|waist|rail|track"
    r"|pole)|its (?:length|width))\b"
    r"|\b(?:ratio|fullness)\b(?: of| is|:)?(?: 1)? ?(?:[:]|to)? ?N(?P<g>\d+)\b"
)
_FULL = re.compile(
    r"\b(?:strip|frill|ruffle|flounce|valance|skirt|tier|cloth|fabric|net|lining|curtain|cut|needs?|piece)\b"
)
_EDGE = re.compile(r"\b(?:edge|hem|waist|rail|track|pole|window|make|makes|opening|round|seam|yoke|bed|sides?|width)\b")
_DEEP = re.compile(r"^ (?:deep|drop|high|tall|from)\b")
_RATIO = re.compile(r"\bratio\b(?: of| is|:)?(?: 1 ?(?:to|:))? ?N(?P<r>\d+)(?: ?(?:to|:) ?1)?\b(?! ?(?:to|:) ?[N\d])")
_GATHERED = re.compile(r"\b(?:gather|frill|ruffle|flounce|shirr|full|tulle)")
_OTHERS = re.compile(r"[NR]\d+|\b(?:each|twice|double|half|plus|minus|add\w*|allow\w*|seams?)\b")
_RATIO_NEAR = Fraction(2, 3)
_REACH = 240
_LENGTH = re.compile(r"L(\d+)")


def fullness(line: Line) -> Iterator[Stated]:
    """What is cut of an edge and how full it is to be, each told beside the other."""
    yield from _of_two(line)
    for found in _FACTOR.finditer(line.text):
        place = int(found["f"] or found["g"])
        factor = line.items[place].value
        if not 1 < factor <= 6:
            continue
        text = line.text[found.end() : found.end() + _REACH].partition("\n")[0]
        lengths = list(_LENGTH.finditer(text))
        flat = [each for each in lengths if not _DEEP.match(text[each.end() :])]
        for index in range(1, len(flat)):
            edge, result = flat[index - 1], flat[index]
            ahead = text[flat[index - 2].end() if index > 1 else 0 : edge.start()]
            lead = text[edge.end() : result.start()]
            if lead.count(".") > 1 or not _EDGE.search(ahead) or not _FULL.search(lead) or "finish" in lead:
                continue
            if "N" in text[edge.end() : result.start()] or "L" in lead:
                continue
            if re.search(r"\b(?:plus|minus|add|allow|less|each|every)\b", lead):
                continue
            one = line.items[int(edge[1])]
            said = line.said(line.items[place])
            stated = line.judged(
                int(result[1]), (one.value * factor,), f"{said} × {line.said(one)}", "product", (int(edge[1]),),
                Exactness.COARSE, frozenset((place,)),
            )  # fmt: skip
            if stated:
                yield stated
            break


def _of_two(line: Line) -> Iterator[Stated]:
    """A ratio in one sentence with what is gathered and what it is gathered to, and with no other number."""
    for found in _RATIO.finditer(line.text):
        start = max(line.text.rfind(stop, 0, found.start()) for stop in (". ", "\n"))
        rest = line.text[found.end() : found.end() + _REACH]
        end = min(at for at in (rest.find(". "), rest.find("\n"), len(rest)) if at >= 0)
        ahead, behind = line.text[start + 1 : found.start()], rest[:end]
        places = [int(each[1]) for each in _LENGTH.finditer(ahead + behind)]
        plain = _GATHERED.search(ahead + behind) and not _OTHERS.search(ahead + behind)
        if len(places) != 2 or "~" in line.symbols[places[0] : places[1]] or not plain:
            continue
        edge, gathered = sorted(places, key=lambda place: line.items[place].value)
        ratio = line.items[int(found["r"])]
        stated = line.judged(
            gathered, (line.items[edge].value * ratio.value,), f"{line.said(ratio)} × {line.said(line.items[edge])}",
            "product", (edge,), Exactness.COARSE, frozenset((int(found["r"]),)), _RATIO_NEAR,
        )  # fmt: skip
        if stated:
            yield stated
