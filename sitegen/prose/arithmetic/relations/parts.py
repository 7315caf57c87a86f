"""What the words beside the parts of a window say of them: how often each is taken, added or taken off."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import replace
from itertools import pairwise

from sitegen.prose.arithmetic.relations.window import Window
from sitegen.prose.arithmetic.workers import AGAIN
from sitegen.prose.words import words

_STOPS = re.compile(r"[L.\n]")
_CLAUSES = re.compile(r"[L.\n,;:&]")
_MOST_TIMES = 100
_UPRIGHT = words("long tall high deep thick")
_ACROSS = words("wide across broad")
_SIZE_OF = re.compile(r"\b(?:width|height|depth) of$")
_AT_POINTS = words(
    "button buttons buttonhole buttonholes mark marks eyelet eyelets pin pins hook hooks snap snaps ring rings apart"
    " carrier carriers stud studs"
)
_SPACED = re.compile(r"\bfirst\b.*\blast\b|\bspac(?:ed|ing)\b|\bdistances?\b|\bintervals?\b|\bcent(?:re|er)s? to\b")

Settled = Mapping[int, tuple[int, ...]]
"""For each result that a relation makes, the places of the quantities that it is made of."""


def times(window: Window, at: int) -> tuple[int, int | None]:
    """How often a part is taken by the words of its own clause, and the place of the count that says so."""
    symbols = window.symbols
    first = max(0, at - 7)
    counted = re.search(r"N(?:\*|[_apejnzWk]{0,4}o?_?)$", symbols[first:at])
    if counted and (place := first + counted.start()) in window.factors:
        value = window.items[place].value
        if value.denominator == 1 and 1 < value < _MOST_TIMES:
            return int(value), place
    if re.match(r"[^L.\n]{0,5}[&,;]_?S[_ukm]{0,3}L", symbols[at + 1 : at + 12]):
        return 1, None  # “10 cm long, and each end needs 1 cm”
    ahead = _CLAUSES.split(symbols[max(0, at - 5) : at])[-1]
    behind = _STOPS.split(symbols[at + 1 : at + 8], maxsplit=1)[0]
    sides = "S" in behind or "S" in ahead or re.search(r"S&_$", symbols[max(0, at - 5) : at]) is not None
    twice = sides or "p" in _CLAUSES.split(behind)[0][:3] or re.match(r"_?D", behind) is not None
    return (2 if twice else 1), None


def sign(window: Window, at: int) -> int:
    """1 where the words beside a part add it, -1 where they take it off, 0 where they tell neither or both."""
    symbols = window.symbols
    *earlier, before = _STOPS.split(symbols[max(0, at - 7) : at])
    if earlier:
        before = re.sub(r"^_?[<>T]", "", before)  # “3 in shorter, plus 1/2 in”: shorter belongs to the 3 in
    end = window.at if window.at > at else window.end
    behind = re.split(r"[L.\n,&]", symbols[at + 1 : min(at + 6, end)])[0]
    less, more = not set("T-<m").isdisjoint(before + behind), not set("+AlB>").isdisjoint(before + behind)
    if less == more:
        return 0
    again = more and any(
        symbol == "A" and window.name(at - len(before) + place).lower() in AGAIN for place, symbol in enumerate(before)
    )
    last = max((other for other in window.parts if other < at), default=None)
    return sign(window, last) if again and last is not None else 1 if more else -1


def at_points(window: Window) -> bool:
    """Whether what is counted stands at points, with one gap fewer between them."""
    if re.search(r"N_?n", window.text) or window.has("/"):
        return False
    things = any(
        symbol == "z"
        or (symbol == "j" and window.name(at).lower() in _AT_POINTS and "N" in window.symbols[max(0, at - 2) : at])
        for at, symbol in enumerate(window.text, window.start)
    )
    return things or _SPACED.search(window.words) is not None


def other_way(window: Window, at: int) -> bool:
    """Whether the result and a part are measured in two directions: ``36 in wide, 48 in tall``."""
    if max(window.at, at) + 1 >= len(window.items):
        return False
    one, other = (window.name(each + 1).lower() for each in (window.at, at))
    return (one in _UPRIGHT and other in _ACROSS) or (one in _ACROSS and other in _UPRIGHT)


def is_a_width(window: Window, at: int) -> bool:
    """Whether a length is called a width or a height: ``with a width of 150 cm``, ``2 in wide``."""
    before = " ".join(window.name(each) for each in range(max(0, at - 2), at)).lower()
    return window.symbols[at + 1 : at + 2] == "W" or _SIZE_OF.search(before) is not None


def cuts_a_sum(window: Window) -> bool:
    """Whether the window begins in the midst of a sum: ``11 in minus twice 3 in is 5 in``."""
    first = min((*window.places, window.at))
    return re.search(r"L[^L.\n]{0,4}[+\-][_NPRDHo*]{0,3}$", window.symbols[max(0, first - 8) : first]) is not None


def of_one_sum(window: Window, settled: Settled) -> Window:
    """The window without the quantities that can have no part in its sum.

    These are lengths in another direction than the result, the parts of a result that is a part itself, what only tells
    how another part was got (``1/2 in for the two 1/4 in seams``), the buttons beside the number of their gaps, the
    number of the parts (``the three strips``), and a factor said twice.
    """
    gone = {at for at in window.parts if other_way(window, at)}
    for at in window.parts:
        if at in settled:
            gone.update(settled[at])
            gone.update(each for each in window.factors if each < at)
    for one, other in pairwise(window.parts):
        often, place = times(window, other)
        if place is not None and often * window.value(other) == window.value(one):
            gone |= {other, place}
    if re.search(r"N_?n", window.text):
        gone.update(at for at in window.factors if re.match(r"N_?j", window.symbols[at : at + 3]))
    said: set[object] = set()
    for at in window.factors:
        value = window.value(at)
        if value in said or (window.symbols[at] == "N" and value == len(window.parts) and _counts_parts(window, at)):
            gone.add(at)
        said.add(value)
    if gone.isdisjoint(window.places):
        return window
    parts = tuple(at for at in window.parts if at not in gone)
    return replace(window, parts=parts, factors=tuple(at for at in window.factors if at not in gone))


def _counts_parts(window: Window, at: int) -> bool:
    inside = window.parts[0] < at < window.parts[-1] if window.parts else True
    return len(window.parts) > 1 and not inside and window.symbols[at + 1 : at + 2] != "*"
