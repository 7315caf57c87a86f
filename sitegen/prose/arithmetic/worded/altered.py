"""Alterations: what a thing is now and is to be, and by how much it is changed; one thing so much shorter than another;
and a rule that is told in words and used for one size."""

from __future__ import annotations

import re
from collections.abc import Iterator
from fractions import Fraction

from sitegen.prose.arithmetic.agree import Exactness
from sitegen.prose.arithmetic.statements import Stated
from sitegen.prose.arithmetic.worded.line import Line

_NOW = re.compile(
    r"\b(?:now|currently|at present|measures?|presently|at the moment|is|are|was|were)\b(?: at)? L"
    r"(?P<a>\d+)(?P<gap>[^LNR\n]{0,60}?)"
    r"\b(?:wants?|wanted|should be|needs? to be|has to be|asked for|to finish(?: at)?|would like|is to be|to be|likes?"
    r"|ordered|wears|target)\b(?: (?:it|them|this|a|an|at|just|only|to be)){0,2} L(?P<b>\d+)(?P<mid>[^LNR\n]{0,50}?)"
    r"\b(?P<way>take (?:it |them |this )?(?:up|in)|taken? (?:up|in)|shorten(?: it| them)?(?: by)?|lose|remove|take off"
    r"|cut off|raise(?: it)?(?: by)?|let (?:it |them |this )?(?:down|out)|lengthen(?: it| them)?(?: by)?|add)"
    r"(?: (?:by|the hem|the hems|the legs|the sleeves|another))? L(?P<r>\d+)(?P<behind>[^LNR.\n]{0,40})"
)
_LONGER = re.compile(r"let|lengthen|add")
_SIDES = re.compile(r"\b(?:each|every|both|either|side|sides|seam|seams)\b")
_THAN = re.compile(
    r"L(?P<a>\d+)(?P<gap>[^LNR.\n]{0,60})L(?P<d>\d+) (?P<way>less|more|shorter|longer|narrower|wider|smaller|bigger)"
    r" than (?:that|this|it)\b(?P<lead>[^LNR.\n]{0,60})L(?P<r>\d+)"
)
_MORE = frozenset(("more", "longer", "wider", "bigger"))
_RULE = re.compile(
    r"\b(?P<name>[a-z]{4,}) (?P<sign>minus|less|plus) L(?P<d>\d+)(?P<gap>[^LNR.\n]{0,40})\b(?P<kind>[LN])(?P<n>\d+)-?"
    r" (?P=name)\b(?P<lead>[^LNR.\n]{0,30})L(?P<r>\d+)"
)
_TELLS = re.compile(r"\b(?:gives?|gets?|makes?|is|needs?|so|means|comes? to|wants|cut|cuts)\b|[,:=]")
_OTHER = re.compile(r"\b(?:plus|minus|add|allow|half|double|twice)\b")
_OVER = re.compile(
    r"\bL(?P<d>\d+)(?: of ease)? (?:over|on top of|bigger than) (?:my|her|his|your|the|our) L(?P<a>\d+)"
    r"(?P<what>(?: [a-z]+){1,2})"
    r"(?P<lead>[^LNR.\n]{0,40})\b(?:finish\w*|measures?|came out|comes out|ended up|makes?|gives?|is|was)"
    r"(?: [a-z]+){0,2}"
    r" L(?P<r>\d+)"
)


def altered(line: Line) -> Iterator[Stated]:
    """What is taken up or let down, what is so much shorter than another, and what a rule gives."""
    for found in _NOW.finditer(line.text):
        now, wanted = line.value(found, "a"), line.value(found, "b")
        longer = _LONGER.match(found["way"]) is not None
        if (wanted > now) is not longer or wanted == now or _SIDES.search(found["behind"] + found["mid"]):
            continue
        greater, less = ("b", "a") if longer else ("a", "b")
        words = f"{line.said(line.item(found, greater))} − {line.said(line.item(found, less))}"
        stated = line.told(
            found, (abs(now - wanted),), words, "difference", "ab", exactness=Exactness.EXACT, near=Fraction(1, 2)
        )
        if stated:
            yield stated
    for found in _THAN.finditer(line.text):
        if _OTHER.search(found["lead"]):
            continue
        yield from _changed(line, found, 1 if found["way"] in _MORE else -1)
    for found in _OVER.finditer(line.text):
        yield from _changed(line, found, 1)
    for found in _RULE.finditer(line.text):
        sign = 1 if found["sign"] == "plus" else -1
        item, unit = line.item(found, "n"), line.item(found, "d").unit
        if unit is None or not _TELLS.search(found["lead"]) or _OTHER.search(found["lead"]):
            continue
        size = item.value if found["kind"] == "L" else item.value * unit.mm
        value = size + sign * line.value(found, "d")
        words = f"{line.said(item)} {'+' if sign > 0 else '−'} {line.said(line.item(found, 'd'))}"
        kind = "sum" if sign > 0 else "difference"
        stated = line.told(found, (value,), words, kind, "d", exactness=Exactness.EXACT)
        if stated:
            yield stated


def _changed(line: Line, found: re.Match[str], sign: int) -> Iterator[Stated]:
    value = line.value(found, "a") + sign * line.value(found, "d")
    a, d = (line.said(line.item(found, each)) for each in "ad")
    words, kind = f"{a} {'+' if sign > 0 else '−'} {d}", "sum" if sign > 0 else "difference"
    stated = line.told(found, (value,), words, kind, "ad", exactness=Exactness.EXACT)
    if stated:
        yield stated
