"""What is turned, trimmed or folded in two steps: hems turned twice, what comes off each side, tabs in four layers."""

from __future__ import annotations

import re
from collections.abc import Iterator
from fractions import Fraction

from sitegen.prose.arithmetic.agree import Exactness, part_exactness
from sitegen.prose.arithmetic.statements import Stated
from sitegen.prose.arithmetic.worded.line import Line

_TURN = r"\b(?:fold|turn|press|iron|tuck|crease)(?:ed|ing|s)?\b"
_TWICE = re.compile(
    rf"(?:{_TURN}|\bfirst)(?P<how>[^LNR.;\n]{{0,30}})L(?P<a>\d+)(?P<gap>[^LNR\n]{{0,60}})L(?P<b>\d+)"
    rf"(?P<more>[^LNR\n]{{0,120}}?)"
    r"\b(?P<tie>allow\w*|leave|left|needs?|allowance(?: of| is)?|takes?|lose|loses|goes|eats|uses?|used"
    r"|total(?: of)?|altogether|in all"
    r"|all told|disappears?|makes?|depth)\b(?P<lead>[^LNR.\n]{0,40})L(?P<r>\d+)(?P<behind>[^LR.\n]{0,60})"
)
_AGAIN = re.compile(r"\b(?:then|again|another|further|second|second time|followed by)\b")
_MORE_BEHIND = re.compile(r"^ (?:more|again|further|on top)\b")
_UNDER = re.compile(r"\b(?:up|under|over|in|down|back)\b")
_TWO_TURNS = re.compile(
    r"\b(?:two|both|double|turnings?|turns?|hem|hems|casing|this|these|it|that|allowance|all|both turns)\b"
)
_TRIMMED = re.compile(
    r"L(?P<a>\d+)(?P<gap>[^LNR\n]{0,60})\b(?:has to be|have to be|needs? to be|must be|should be|ought to"
    r" be|to be|down to"
    r"|want(?:s|ed)?(?: it at| it)?|supposed to (?:be|measure)|should (?:measure|finish))(?: [a-z]+){0,2} L(?P<b>\d+)"
    r"(?P<mid>[^LNR\n]{0,140}?)L(?P<r>\d+)(?P<behind>[^LNR.\n]{0,50})"
)
_OFF = re.compile(r"\b(?:off|trim|trimmed|slice|shave|cut|take|remove|lose|away)\b")
_EACH_SIDE = re.compile(
    r"\b(?:each|every|all|both|either)(?: (?:one )?of(?: the)?)?(?: [a-z]+){0,2}? (?:sides?|edges?"
    r"|ends?)\b|\ball round\b"
)
_TO_MIDDLE = re.compile(
    r"\b(?:long |raw |both |the |its )*(?:edges|sides|edge)(?: [a-z]+){0,3} to (?:the |meet (?:at|in) the )?"
    r"(?:cent(?:re|er)|middle)(?: [a-z]+){0,2}\b(?P<gap>[^LNR\n]{0,60}?)\bfold(?:ed)?\b"
    r"(?P<rest>[^LR\n]{0,90})L(?P<r>\d+)"
)
_WIDE = re.compile(r"^ (?:wide|across|finished|strap|tab|strip|tie|handle|binding|loop)\b")
_DIMENSION = re.compile(
    r"L(?P<a>\d+) (?P<which>tall|wide|deep|high|long)\b(?P<gap>[^\n]{0,90}?)"
    r"\b(?:(?:fold(?:ed|s)?|double)(?: (?:it|them|this|each|the [a-z]+))?(?: [a-z]+)? in half|in half|halved?)\b"
    r"(?P<rest>[^LNR.\n]{0,60})L(?P<r>\d+) (?P=which)\b"
)


def turned(line: Line) -> Iterator[Stated]:
    """What two turns take together, what comes off each side, and what folding leaves."""
    text = line.text
    yield from _turned_twice(line)
    for found in _TRIMMED.finditer(text):
        more, less = line.value(found, "a"), line.value(found, "b")
        near = found["mid"][-60:] + found["behind"]
        if not less < more <= 2 * less or not _OFF.search(near) or not _EACH_SIDE.search(near) or "." in found["gap"]:
            continue
        a, b = (line.said(line.item(found, each)) for each in "ab")
        values = [(more - less) / 2, *([(more - less) / 4] if "seam" in near else [])]
        stated = line.told(
            found, values, f"({a} − {b}) ÷ 2", "division", "ab",
            exactness=Exactness.EXACT, near=Fraction(1),
        )  # fmt: skip
        if stated and (stated.holds or line.value(found, "r") != more - less or "all" not in near):
            yield stated
    yield from _in_quarters(line)
    for found in _DIMENSION.finditer(text):
        if re.search(r"\b(?:seams?|plus|add|trim|cut)\b", found["rest"]):
            continue
        value = line.value(found, "a") / 2
        words = f"{line.said(line.item(found, 'a'))} ÷ 2"
        stated = line.told(found, (value,), words, "halving", "a", exactness=part_exactness(value))
        if stated:
            yield stated


def _turned_twice(line: Line) -> Iterator[Stated]:
    for found in _TWICE.finditer(line.text):
        gap, behind = found["gap"], found["more"]
        under = _UNDER.search(found["how"]) or re.match(r" (?:up|under|over|in|down|back|to the wrong)\b", gap)
        again = _AGAIN.search(gap) or _MORE_BEHIND.match(behind) or re.search(_TURN, gap)
        if not under or not again or gap.count(".") > 1 or (found["more"] + found["tie"]).count(".") > 2:
            continue
        if not _TWO_TURNS.search(found["more"][-30:] + found["lead"] + found["behind"]):
            continue
        one, other, result = (line.value(found, each) for each in "abr")
        if result <= max(one, other):
            continue
        a, b = (line.said(line.item(found, each)) for each in "ab")
        stated = line.told(found, (one + other,), f"{a} + {b}", "sum", "ab", exactness=Exactness.EXACT)
        if stated:
            yield stated


def _in_quarters(line: Line) -> Iterator[Stated]:
    """What is folded to the middle and again is a fourth as wide."""
    for found in _TO_MIDDLE.finditer(line.text):
        before = line.text[max(0, found.start() - 120) : found.start()].rpartition("\n")[2]
        lengths = re.findall(r"L(\d+)", before)
        sides = lengths[-2:]
        again = re.search(r"\b(?:again|in half|in two|double)\b", found["rest"][:30])
        wide = _WIDE.match(line.text[found.end() :][:12]) or re.search(r"\b(?:wide|width|finished)\b", found["rest"])
        if not sides or not again or not wide or "." in found["gap"]:
            continue
        long = re.search(r"\blong (?:raw )?(?:edges|sides)", found.group()) is not None
        folded = min((int(side) for side in sides), key=lambda at: line.items[at].value)
        values = [line.items[folded].value / 4]
        values += [] if long else [line.items[int(side)].value / 4 for side in lengths]
        words = f"{line.said(line.items[folded])} ÷ 4"
        stated = line.judged(
            int(found["r"]), values, words, "division", (folded,), part_exactness(values[0]), near=Fraction(1)
        )
        if stated:
            yield stated
