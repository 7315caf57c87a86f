"""Cut lengths told as a list: what the body or the finished thing measures, what is added, and what is cut. ``Waist
66 cm, ease 2 cm, underlap 3 cm, and a 1 cm seam at each end. Cut 73 cm``."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from itertools import product

from sitegen.prose.arithmetic.agree import Exactness
from sitegen.prose.arithmetic.statements import Stated
from sitegen.prose.arithmetic.worded.line import Line

_WHOLE = re.compile(
    r"\b(?:waist|wrist|neck|neckline|hips?|head|ankle|chest|bust|thigh|calf|knee|arm|upper arm|opening"
    r"|finished(?: [a-z]+){0,2}"
    r"|(?:[a-z]+ )?(?:length|drop|width|depth|height)|body|edge)(?: (?:is|of|measures|measurement|size"
    r"|wanted))?:? L(?P<w>\d+)"
)
_ADDED = (
    r"(?:ease|overlap|underlap|lap|wrap|seams?|seam allowances?|sa|allowances?|turnings?|hem|hems|button"
    r" stand|stand|extension"
    r"|placket|facing|heading|header|casing|tuck|turn-?over|turn-?up|shrinkage)"
)
_NAMED_BEHIND = re.compile(
    rf"^-? ?(?:for |of |in |as )*(?:a |an |the |each |both |two |double )*(?:[a-z]+ ){{0,2}}?{_ADDED}\b"
)
_NAMED_BEFORE = re.compile(rf"\b{_ADDED}(?: (?:is|of|are|at))?:? (?:(?:a|an) )?$")
_TWICE = re.compile(
    r"\b(?:each|both|either|every|two)(?: of(?: the)?)?(?: [a-z]+){0,2} (?:ends?|sides?|edges?)\b|\btwice\b|\bends\b"
)
_PLURAL = re.compile(r"\b(?:seams|allowances|turnings|hems|each|double)\b")
_LESS = re.compile(r"\b(?:less|minus|negative|take|off|deduct|subtract|shorter|smaller)\b|[-−]")
_CUT = re.compile(
    r"\b(?:cut|cutting)\b(?: [a-z]+){0,4}:? (?:at |to |it )?$|\bcut (?:length|band|width|size|drop)\b[^.]{0,12}$"
)
_NEXT = re.compile(r"(?P<gap>[^LR\n]{0,70}?)\bL(?P<at>\d+)")
_MOST = 5
_FEWEST = 2


@dataclass(frozen=True, slots=True)
class _Added:
    """What is added, with the words before it and behind."""

    at: int
    often: tuple[int, ...]


def bands(line: Line) -> Iterator[Stated]:
    """Every cut length behind such a list of two additions or more."""
    for whole in _WHOLE.finditer(line.text):
        added: list[_Added] = []
        position, gap = whole.end(), ""
        while len(added) <= _MOST and (following := _NEXT.match(line.text, position)):
            gap = following["gap"]
            if _CUT.search(gap) and gap.count(".") < 2 and len(added) >= _FEWEST:
                if stated := _cut(line, int(whole["w"]), added, int(following["at"])):
                    yield stated
                break
            behind = re.split(r"[L.;,\n]", line.text[following.end() : following.end() + 60])[0]
            named = _NAMED_BEFORE.search(gap) or _NAMED_BEHIND.match(behind.strip())
            if not named or "." in gap or _LESS.search(gap) or _LESS.search(behind):
                break
            told = f"{re.split('[,;]| and ', gap)[-1]} {behind}"
            counted = re.search(r"\bN(\d+) [a-z ]*$", gap)
            often = (
                (int(line.items[int(counted[1])].value),)
                if counted
                else (2,)
                if _TWICE.search(told)
                else (1, 2)
                if _PLURAL.search(told)
                else (1,)
            )
            added.append(_Added(int(following["at"]), often))
            position = following.end()


def _cut(line: Line, whole: int, added: list[_Added], at: int) -> Stated | None:
    one = line.items[whole]
    values = [
        one.value
        + sum((times * line.items[each.at].value for each, times in zip(added, taken, strict=True)), Fraction(0))
        for taken in product(*(each.often for each in added))
    ]
    words = line.said(one) + "".join(
        f" + {f'{each.often[0]} × ' if each.often[0] > 1 else ''}{line.said(line.items[each.at])}" for each in added
    )
    places = (whole, *(each.at for each in added))
    return line.judged(at, values, words, "band", places, Exactness.EXACT)
