"""Frills and valances that are so many times as full: ``ratio 1 : 1.8. The edge is 50 cm, the strip 90 cm``."""

from __future__ import annotations

import re
from collections.abc import Iterator

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
_REACH = 240
_LENGTH = re.compile(r"L(\d+)")


def fullness(line: Line) -> Iterator[Stated]:
    """What is cut of an edge and how full it is to be, each told beside the other."""
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
