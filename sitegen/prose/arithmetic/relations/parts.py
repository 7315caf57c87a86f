"""What the words beside the parts of a window say of them: how often each is taken, added or taken off."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction
from functools import lru_cache
from itertools import pairwise

from sitegen.prose.arithmetic.relations.window import Window
from sitegen.prose.arithmetic.vocabulary import ACROSS, UPRIGHT
from sitegen.prose.arithmetic.workers import AGAIN
from sitegen.prose.words import words

_HOW_OFTEN = frozenset("NDSp")
"""Without one of these beside it a part is taken once."""
_STOPS = re.compile(r"[L.\n]")
_CLAUSES = re.compile(r"[L.\n,;:&q]")
_MOST_TIMES = 100
_SIZE_OF = re.compile(r"\b(?:width|height|depth) of$")
_AT_POINTS = words(
    "button buttons buttonhole buttonholes mark marks eyelet eyelets pin pins hook hooks snap snaps ring rings apart"
    " carrier carriers stud studs"
)
_TURNS = re.compile(r"(?:turn|fold|tuck|press)")
_INCLUDED = re.compile(r"\b(?:of which|includ(?:es|ing|ed)|inclusive of|incl)(?: an?| the)?$")
_ONE_AT_EACH = r"\bone (?:right )?(?:at|on|in) (?:each|either|both) (?:end|side|corner)s?\b"
_ENDS = re.compile(rf"\bfirst\b.*\blast\b|{_ONE_AT_EACH}")
"""With the first thing at one end and the last at the other, there is one gap fewer."""
_FOR_ALL = re.compile(r"^for (?!each|either|every)")
_GAPS, _THINGS, _NOTHING = re.compile(r"N_?n"), re.compile(r"N_?j"), re.compile(r"[_j]{0,2}")
_ALLOWED_BEHIND, _ALLOWED_BEFORE = re.compile(r"[^L,;.]{0,2}[ap]"), re.compile(r"[ap]_?[ok:]?_?$")
_TAKEN_OFF_TOO = re.compile(r"T[^L.\n]{0,3}L[^LW.,;:\n]{0,4}&[_T]{0,2}$")
_SIZED_BEFORE = re.compile(r"LW[,&]_?$")
_LISTED_BEFORE, _LISTED = re.compile(r"L[_apW]{0,3},_{0,2}$"), re.compile(r"L[_apW]{0,3},_{0,2}L")
_COUNTED_BEFORE = re.compile(r"N(?:\*|_?[np]?_?o)$")
_ADDED_BEFORE, _GOES_ON = re.compile(r"L[^L.\n]{0,4}[+\-][_NPRDHo*]{0,3}$"), re.compile(r"[_apoW]{0,3}[+\-]")
_IN_ALL = re.compile(r"W?_?i?_?c")
_GIVES_REASON = words("for because since")
_FOR = re.compile(r"for(?: the| both| all)*")
_SPACED = re.compile(
    rf"\bfirst\b.*\blast\b|{_ONE_AT_EACH}|\bspac(?:ed|ing)\b|\bdistances?\b|\bintervals?\b|\bcent(?:re|er)s? to\b"
)

Settled = Mapping[int, tuple[int, ...]]
"""For each result that a relation makes, the places of the quantities that it is made of."""


def times(window: Window, at: int) -> tuple[int, int | None]:
    """How often a part is taken by the words of its own clause, and the place of the count that says so."""
    symbols = window.symbols
    first = max(0, at - 7)
    if _HOW_OFTEN.isdisjoint(symbols[first : at + 9]):
        return 1, None
    for place in _counts_of(symbols[first:at]):
        if first + place in window.factors:
            value = Fraction(2) if symbols[first + place] == "D" else window.items[first + place].value
            if value.denominator == 1 and 1 < value < _MOST_TIMES:
                return int(value), first + place
    if not _is_at_two(symbols[first:at], symbols[at + 1 : at + 12]):
        return 1, None
    if symbols[at + 1 : at + 3] == "_S" and _FOR_ALL.search(f"{window.name(at + 1)} {window.name(at + 2)}".lower()):
        return 1, None  # “eight for the pair of sides”
    return 2, None


@lru_cache(maxsize=1024)
def _counts_of(before: str) -> tuple[int, ...]:
    """Where a number, or a doubling, counts the part that stands behind these symbols."""
    found = re.search(r"N(?:\*|[_apejnzWku]{0,4}o?_?)$", before), re.search(r"D_?(?:o_?)?$", before)
    return tuple(each.start() for each in found if each)


@lru_cache(maxsize=4096)
def _is_at_two(before: str, following: str) -> bool:
    """Whether a part between these symbols is at two sides, is an allowance of a pair, or is said to be doubled."""
    if _IN_ALL.match(following[:5]) or re.match(r"[^L.\n]{0,5}[&,;]_?S[_ukm]{0,3}L", following):
        return False  # “10 cm long, and each end needs 1 cm”
    ahead, behind = _CLAUSES.split(before[-5:])[-1], _STOPS.split(following[:7], maxsplit=1)[0]
    sides = "S" in behind or "S" in ahead or re.search(r"S&_$|S_?[ap]?[,:]_?$", before[-6:]) is not None
    if sides and re.match(r"_?oS", behind) is None:  # but “2 in of each seam”
        return True
    return "p" in _CLAUSES.split(behind)[0][:3] or re.match(r"D|_D(?!_?[apL])", following[:5]) is not None


def of_sides(window: Window, at: int) -> bool:
    """Whether two sides measure so much each: ``two long sides of 12 in``."""
    return re.search(r"(?<!L)(?<!L_)S_?o?_?$", window.symbols[max(0, at - 6) : at]) is not None


def sign(window: Window, at: int) -> int:
    """1 where the words beside a part add it, -1 where they take it off, 0 where they tell neither or both."""
    symbols = window.symbols
    *earlier, before = _STOPS.split(symbols[max(0, at - 7) : at])
    if earlier:
        before = re.sub(r"^_?[<>T]", "", before)  # “3 in shorter, plus 1/2 in”: shorter belongs to the 3 in
    end = window.at if window.at > at else window.end
    behind = re.split(r"[L.\n,&]", symbols[at + 1 : min(at + 6, end)])[0]
    beside = before + behind
    first = at - len(before)
    turned = any(
        symbol == "T" and _TURNS.match(window.name(first + place + (place >= len(before))).lower())
        for place, symbol in enumerate(beside)
    )
    less = not set("-<m" if turned else "T-<m").isdisjoint(beside)
    more = not set("+AlB>").isdisjoint(beside)
    last = max((other for other in window.parts if other < at), default=None)
    if less == more:
        joined = last is not None and not less and re.fullmatch(r"[_a]{0,2}&_?", symbols[last + 1 : at])
        return sign(window, last) if joined and last is not None and last != _greatest(window) else 0
    again = more and any(
        symbol == "A" and window.name(at - len(before) + place).lower() in AGAIN for place, symbol in enumerate(before)
    )
    return sign(window, last) if again and last is not None else 1 if more else -1


def _greatest(window: Window) -> int:
    return max(window.parts, key=window.value)


def at_points(window: Window) -> bool:
    """Whether what is counted stands at points, with one gap fewer between them."""
    spaced = _SPACED.search(window.words) is not None
    if _GAPS.search(window.text) or (window.has("/") and not spaced):
        return False
    things = any(
        (symbol == "z" and window.name(at).lower().startswith("spac"))
        or (symbol == "j" and window.name(at).lower() in _AT_POINTS and "N" in window.symbols[max(0, at - 2) : at])
        for at, symbol in enumerate(window.text, window.start)
    )
    return things or spaced


def are_all_shares(window: Window) -> bool:
    """Whether two shares are told that together are all of a length: ``a third for the flap, two thirds …``."""
    values = [window.value(at) for at in window.factors]
    return len(values) == 2 and sum(values) == 1


def gaps(window: Window, count: Fraction) -> tuple[Fraction, ...]:
    """Of how many gaps a count of things at points may tell, its own number first where nothing says which."""
    if _ENDS.search(window.words) is not None:
        return (count - 1,)
    return count, count - 1, count + 1


def is_a_width(window: Window, at: int) -> bool:
    """Whether a length is called a width or a height: ``with a width of 150 cm``, ``2 in wide``."""
    before = " ".join(window.name(each) for each in range(max(0, at - 2), at)).lower()
    return window.symbols[at + 1 : at + 2] == "W" or _SIZE_OF.search(before) is not None


def is_allowance(window: Window, at: int) -> bool:
    """Whether a part is called a seam, a hem or an allowance."""
    symbols = window.symbols
    behind, before = symbols[at + 1 : at + 4], symbols[max(0, at - 4) : at]
    return _ALLOWED_BEHIND.match(behind) is not None or _ALLOWED_BEFORE.search(before) is not None


def cuts_a_sum(window: Window) -> bool:
    """Whether the window begins in the midst of a sum: ``11 in minus twice 3 in is 5 in``."""
    first = min((*window.places, window.at))
    before = window.symbols[max(0, first - 8) : first]
    if window.at > first and _TAKEN_OFF_TOO.search(before):
        return True  # “take 2 cm off at the top and 3 cm at the bottom”
    sized = window.symbols[first + 1 : first + 2] == "W" and _SIZED_BEFORE.search(before)
    if sized and window.name(first + 1).lower() != window.name(window.at + 1).lower():
        return True  # “112 cm wide, 164 cm high”: only one of them can have a part in the sum
    if window.at > first and _names_more_parts(window):
        return True
    if window.at > first and _LISTED_BEFORE.search(before) and _LISTED.match(window.symbols[first : first + 9]):
        return True  # “yoke 7 in, tier 12 in, flounce 9 in”, of which none may be left out
    last = max((*window.parts, window.at))
    if window.at < last and _GOES_ON.match(window.symbols[last + 1 : last + 6]):
        return True  # “two layers of 2 in + two seams of 1/2 in”
    if window.at > first and _COUNTED_BEFORE.search(before):
        return True  # the count of the first length is left out
    return _ADDED_BEFORE.search(before) is not None


def _names_more_parts(window: Window) -> bool:
    """Whether more lengths are added up than there are parts: ``these three add up to 8 cm``."""
    counts = [
        window.value(at) for at in window.factors if window.name(at - 1).lower().endswith(("these", "those", "all"))
    ]
    return any(count > len(window.parts) for count in counts) and window.has("Ac")


def of_one_sum(window: Window, settled: Settled) -> Window:
    """The window without the quantities that can have no part in its sum.

    These are lengths in another direction than the result, the parts of a result that is a part itself, what only tells
    how another part was got (``1/2 in for the two 1/4 in seams``), the buttons beside the number of their gaps, the
    number of the parts (``the three strips``), and a factor said twice.
    """
    others = window.beside.other_ways
    gone = {at for at in window.parts if others and window.name(at + 1).lower() in others}
    if window.name(min(window.at + 1, len(window.items) - 1)).lower() not in UPRIGHT | ACROSS:
        gone |= _of_the_other_way(window)
    if window.parts and window.result > max(window.value(at) for at in window.parts):
        gone |= {at for at in window.parts if _INCLUDED.search(_words_before(window, at))}
    for at in window.parts:
        if at in settled and not are_all_shares(window):
            gone.update(settled[at])
            gone.update(each for each in window.factors if each < at)
    for one, other in pairwise(window.parts):
        often, place = times(window, other)
        if (
            place is not None
            and often * window.value(other) == window.value(one)
            and any(not _GIVES_REASON.isdisjoint(window.name(each).lower().split()) for each in range(one + 1, other))
        ):
            gone |= {other, place}
        elif times(window, one)[0] == 2 and 2 * window.value(one) == window.value(other):
            gone.add(one)  # “3/8 in all round, so you lose 3/4 in”
        elif _IN_ALL.match(window.symbols[other + 1 : other + 6]) and window.value(other) in _several(window, one):
            gone.add(one)  # “5/8 in from each of four edges, 2 1/2 in in all”
    if window.factors:
        gone |= _needless(window)
    if gone.isdisjoint(window.places):
        return window
    parts = tuple(at for at in window.parts if at not in gone)
    return replace(window, parts=parts, factors=tuple(at for at in window.factors if at not in gone))


def _needless(window: Window) -> set[int]:
    """The factors that can have no part in the sum."""
    gone: set[int] = set()
    shares = {1 / window.value(at) for at in window.factors if window.symbols[at] == "R"}
    gone.update(at for at in window.factors if window.symbols[at] == "N" and window.value(at) in shares)
    if _GAPS.search(window.text):
        gone.update(at for at in window.factors if _THINGS.match(window.symbols[at : at + 3]))
    said: set[object] = set()
    counting = {times(window, at)[1] for at in window.parts if is_allowance(window, at)}
    for at in window.factors:
        value = window.value(at)
        if (value in said and at not in counting and window.symbols[at + 1 : at + 2] != "*") or (
            window.symbols[at] == "N" and value == len(window.parts) and _counts_parts(window, at)
        ):
            gone.add(at)
        said.add(value)
    gone |= {at for at in window.factors if window.symbols[max(0, at - 2) : at] == "L_" and _is_for(window, at)}
    gone |= {
        at
        for at in window.factors
        if "u" in window.symbols[max(0, at - 2) : at] and _NOTHING.fullmatch(window.symbols[at + 1 : window.at])
    }
    return gone


def _several(window: Window, at: int) -> tuple[Fraction, ...]:
    """A length taken two to eight times."""
    return tuple(count * window.value(at) for count in range(2, 9))


def _of_the_other_way(window: Window) -> set[int]:
    """The parts that are said to be wide beside a longer one that is said to be long: ``72 in long, 14 in wide``."""
    if len(window.parts) == 1:
        return set()
    names = {at: window.name(at + 1).lower() for at in window.parts if at + 1 < len(window.items)}
    upright = [at for at, name in names.items() if name in UPRIGHT]
    across = [at for at, name in names.items() if name in ACROSS]
    if not upright or not across:
        return set()
    longest = max((*upright, *across), key=window.value)
    return set(across if longest in upright else upright)


def _words_before(window: Window, at: int) -> str:
    names = [window.name(each) for each in range(max(0, at - 3), at) if window.symbols[each] not in "LNPR"]
    return " ".join(names).lower()


def _is_for(window: Window, at: int) -> bool:
    """Whether a count tells what the length before it is for: ``1 in for the two seams``."""
    return _FOR.fullmatch(window.name(at - 1).lower()) is not None and window.symbols[at + 1 : at + 2] in tuple("ap")


def _counts_parts(window: Window, at: int) -> bool:
    inside = window.parts[0] < at < window.parts[-1] if window.parts else True
    return len(window.parts) > 1 and not inside and window.symbols[at + 1 : at + 2] != "*"
