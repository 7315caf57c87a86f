"""Round a rectangle, across a round cloth with its drop, and circles that are divided by 6.28."""

from __future__ import annotations

import re
from collections.abc import Iterator
from fractions import Fraction

from sitegen.prose.arithmetic.agree import Exactness, agrees
from sitegen.prose.arithmetic.statements import Stated
from sitegen.prose.arithmetic.worded.line import Line

_RECTANGLE = re.compile(r"L(?P<a>\d+)(?: [a-z]+)? (?:x|×|by|\*) L(?P<b>\d+)(?! (?:x|×|by|\*) L)|L(?P<s>\d+)-? square\b")
_ROUND = re.compile(
    r"\b(?:right|all(?: the way)?|goes|go|runs?|once|way) (?:a?round)\b|\bround (?:it|the edge|the outside|all)\b"
    r"|\bperimeter\b|\bboxing\b|\b(?:all )?four sides (?:come|make|add|together|total)\b|\bedges? all round\b"
)
_ROUND_BEFORE = re.compile(
    r"\b(?:binding|trim|braid|piping|fringe|lace|tape|bound|piped|edged|edging|ruffle|frill)\b[^LNR.\n]{0,20}"
    r"\b(?:round|around|for)\b[^LNR.\n]{0,30}$|\bround (?:a|an|the|your|my) (?:[a-z]+ ){1,2}$"
)
_TIE = re.compile(
    r"(?:\b(?:so|is|are|that's|makes?|comes? to|needs?|takes?|total|be|of|wants?|measures?)\b|:"
    r"|=)[^LNR\n]*$|\bperimeter $"
)
_LONGEST = 160

_CLOTH = re.compile(
    r"\b(?:round|circular|circle|oval)\b[^LNR.\n]{0,40}?L(?P<a>\d+)(?P<a_words>[^LNR.\n]{0,30})"
    r"(?:[^LNR.\n]{0,20})L(?P<d>\d+)(?P<d_words>[^LNR\n]{0,90})L(?P<r>\d+)(?P<r_words>[^LNR.\n]{0,24})"
)
_ACROSS = re.compile(r"\b(?:across|diameter|wide)\b")
_DROP = re.compile(r"\b(?:drop|overhang|hang|fall|top to floor|to the floor|to the ground)\b")

_CIRCLE = re.compile(
    r"L(?P<c>\d+)(?P<between>[^LR\n]{0,60}?)(?P<how>(?:divided? (?:it |that |this |the [a-z]+ )?)?by|÷|/)"
    r" N(?P<pi>\d+)\b"
    r"(?P<lead>[^LNR\n]{0,40}?)L(?P<r>\d+)"
)
_CIRCLES = (
    Fraction("6.28"),
    Fraction("6.283"),
    Fraction("6.3"),
    Fraction("3.14"),
    Fraction("3.1416"),
    Fraction("3.142"),
)


def shapes(line: Line) -> Iterator[Stated]:
    """Every length round a rectangle, every round cloth with its drop, and every radius or diameter."""
    yield from _perimeters(line)
    yield from _round_cloths(line)
    yield from _divided_circles(line)


def _perimeters(line: Line) -> Iterator[Stated]:
    for found in _RECTANGLE.finditer(line.text):
        behind = line.text[found.end() : found.end() + _LONGEST]
        ahead = line.text[max(0, found.start() - 80) : found.start()]
        around = _ROUND.search(behind)
        before = _ROUND_BEFORE.search(ahead) or _ROUND.search(re.split(r"[.\n]", ahead)[-1])
        if around is None and before is None:
            continue
        start = around.start() if around is not None and before is None else 0
        result = re.match(r"[^LNR\n]*?L(?P<r>\d+)(?P<behind>[^LNR.\n]{0,24})", behind[start:])
        if result is None or behind[:start].count("L") > 1 or behind[: start + result.start("r")].count(".") > 1:
            continue
        lead = behind[: start + result.start("r") - 1]
        tied = _TIE.search(lead) or re.match(r" (?:of [a-z]+ )?(?:round|around|in all|altogether)\b", result["behind"])
        if not tied and not (before and re.match(r"^\W*$", lead)):
            continue
        places = tuple(int(place) for place in (found["a"], found["b"], found["s"]) if place)
        sides = [line.items[place].value for place in places]
        sides = sides * 2 if len(sides) == 1 else sides
        value = 2 * (sides[0] + sides[1])
        counts = [line.items[int(each)].value for each in re.findall(r"N(\d+)", ahead + lead)]
        values = (value, *(value * count for count in counts), 2 * sides[0] + sides[1], sides[0] + 2 * sides[1])
        if len(places) == 1:
            words = f"4 × {line.said(line.items[places[0]])}"
        else:
            words = " + ".join(f"2 × {line.said(line.items[place])}" for place in places)
        stated = line.judged(int(result["r"]), values, words, "sum", places, Exactness.EXACT)
        if stated:
            yield stated


def _round_cloths(line: Line) -> Iterator[Stated]:
    for found in _CLOTH.finditer(line.text):
        across = (
            _ACROSS.search(found["a_words"])
            or "diameter" in line.text[max(0, found.start("a") - 20) : found.start("a")]
        )
        drop = _DROP.search(re.split(r"[,.;]", found["d_words"])[0]) or _DROP.search(
            line.text[found.end("a_words") - len(found["a_words"]) : found.start("d")]
        )
        result = re.search(
            r"^ (?:across|wide|in diameter|diameter|finished|circle|round)\b", found["r_words"]
        ) or re.search(
            r"\b(?:circle|diameter|cloth)(?: of| is| at)?(?: [a-z]+){0,2} $",
            line.text[max(0, found.start("r") - 41) : found.start("r") - 1],
        )
        if not (across and drop and result):
            continue
        value = line.value(found, "a") + 2 * line.value(found, "d")
        words = f"{line.said(line.item(found, 'a'))} + 2 × {line.said(line.item(found, 'd'))}"
        stated = line.told(found, (value,), words, "sum", "ad", exactness=Exactness.EXACT)
        if stated:
            yield stated


def _divided_circles(line: Line) -> Iterator[Stated]:
    for found in _CIRCLE.finditer(line.text):
        number, around, result = line.value(found, "pi"), line.item(found, "c"), line.item(found, "r")
        asked = "divide" in line.text[max(0, found.start() - 16) : found.start()]
        if (
            number not in _CIRCLES
            or not (asked or found["how"] != "by")
            or re.search(r"\b(?:plus|minus|less|add|take)\b", found["between"])
        ):
            continue
        value = around.value / number
        apart = abs(result.value - value)
        hedged = around.hedged or result.hedged
        if result.unit is None or apart * 2 > value:
            continue
        right = agrees(result.value, result.unit, (value,), Exactness.COARSE, hedged=hedged)
        near = line.text[max(0, found.start() - _LONGEST) : found.end() + _LONGEST]
        others = [line.items[int(each)].value for each in re.findall(r"\bL(\d+)\b", near)]
        if right or not any(apart == other for other in others):
            words = f"{line.said(around)} ÷ {line.said(line.item(found, 'pi'))}"
            yield Stated(int(found["r"]), (int(found["c"]),), right, "division", value, words)
