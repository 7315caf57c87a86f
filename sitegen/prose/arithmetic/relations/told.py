"""The relations that the words of a window name between its result and one length, or several."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from sitegen.prose.arithmetic.agree import Exactness, part_exactness
from sitegen.prose.arithmetic.relations.parts import are_all_shares, at_points, gaps
from sitegen.prose.arithmetic.relations.window import Window
from sitegen.prose.arithmetic.symbols import is_cloth_width
from sitegen.prose.arithmetic.ties import tie_of, told_of_the_length_before
from sitegen.quantities import Ratio, show_ratio, vulgar

_HALVES = re.compile(
    r"\b(?:fold(?:s|ed|ing)?(?!-| up| under| over| back| down| in\b(?! half| two))|creas(?:e|es|ed|ing)"
    r"|(?:finds?|marks?|lies|has|puts?|at|from|to|along|down) (?:its|the|their) (?:middle|cent(?:re|er))"
    r"|midline|midpoint|halfway|half(?! an?\b| inch))\b"
)
_DOUBLES = re.compile(
    r"\b(?:doubl\w*|twice|two layers|both|on each|on the fold|so the whole|same (?:again|on|at|for)|mirror\w*"
    r"|opens? out|unfold\w*|opened|pair|left and right|right and left|back and front|front and back|top and bottom)\b"
)
_LAID_FLAT = re.compile(r"\b(?:laid|lies|lying|folded) flat\b")
_OVER = re.compile(r"(?:over|extra|on top|more)\b")
_LAID = re.compile(r"\b(?:fold|laid|lay|over\b)")
CLOSE = Fraction(1, 10)
"""So near a count of lengths a result is hardly another length."""
_OTHER_SHARES = re.compile(r"\b(?:third|quarter|fifth|sixth|eighth|tenth)s?\b")


@dataclass(frozen=True, slots=True)
class Told:
    """A relation that the words name: what it makes in millimetres, the sum in words, how exactly it must follow."""

    kind: str
    value: Fraction
    words: str
    exactness: Exactness
    greatest: Fraction
    """The greatest of the parts, or of the parts together."""


def share_words(symbol: str, factor: Fraction, said: str) -> str:
    """A share of a length in words."""
    return f"{show_ratio(Ratio(factor))} of {said}" if symbol == "P" else f"{vulgar(factor)} × {said}"


def told_of_one(window: Window) -> Iterator[Told]:
    """Every relation that the words name between the result and the one other length."""
    value, factors = window.value(window.parts[0]), window.factors
    symbols = "".join(window.symbols[at] for at in factors)
    if not factors:
        yield from _at_sides(window, value)
    elif symbols == "N":
        yield from _counted(window, factors[0], value)
    elif symbols == "NN" and window.has("e*"):
        one, other = (window.value(at) for at in factors)
        words = f"{vulgar(one)} × {vulgar(other)} × {window.name(window.parts[0])}"
        yield Told("product", one * other * value, words, Exactness.RULER, value)
    elif symbols in ("D", "H") and not _beyond_its_sentence(window, factors[0]):
        yield from _doubled(window, symbols, value)
    elif symbols in ("P", "R"):
        yield from _shared(window, factors[0], value)
    elif are_all_shares(window):
        for at in factors:
            yield Told(
                "share",
                value * window.value(at),
                share_words("R", window.value(at), window.name(window.parts[0])),
                Exactness.COARSE,
                value,
            )


def _beyond_its_sentence(window: Window, at: int) -> bool:
    """Whether a doubling stands in a sentence of its own, and no word calls the length a result."""
    apart = all("." in window.symbols[min(at, each) : max(at, each)] for each in (*window.parts, window.at))
    return apart and tie_of(window.symbols, window.at) is None


def _at_sides(window: Window, value: Fraction) -> Iterator[Told]:
    """Half of a length, or twice as much, where no number says so: ``fold the 9 in strip; it is now 4 1/2 in``."""
    said, around = window.name(window.parts[0]), set(window.ahead + window.behind)
    shared = _OTHER_SHARES.search(window.words) is not None or window.has("PRDH")
    if window.result <= value:
        laid = _LAID_FLAT.search(window.words) is not None and window.has("u")
        folded = laid or (not shared and _HALVES.search(window.words) is not None and not around.isdisjoint("qk=:"))
        if folded or re.match(r"[_i]{0,2}fS", window.behind):
            yield Told("halving", value / 2, f"{said} ÷ 2", part_exactness(value / 2), value)
    elif window.at > window.parts[0]:
        doubled = not shared and _DOUBLES.search(window.words) is not None and not around.isdisjoint("c=qkT")
        if doubled or (window.has("S") and not around.isdisjoint("c=")):
            yield Told("doubling", 2 * value, f"2 × {said}", Exactness.RULER, value)


def _counted(window: Window, at: int, value: Fraction) -> Iterator[Told]:
    """So many times a length, or a length in so many parts; where points are counted, one more or one fewer too."""
    count, said = window.value(at), window.name(window.parts[0])
    told = window.symbols[at - 1 : at] == "k"  # “and there are five, so 13 3/4 in”
    alone = window.symbols[at + 1 : at + 2] in tuple(",.;:)") and not (told or window.has("/"))
    if not window.has("n") and is_cloth_width(window.items, window.parts[0], window.said):
        return
    if (alone and not window.has("*")) or (count.denominator != 1 and not window.has("*")):
        return
    points = at_points(window)
    beside = re.search(r"N[_apjzk]{0,4}o?_?L|N[=k]", window.text) is not None
    near = abs(window.result - count * value) <= count * value * CLOSE
    multiplies = points or beside or near or window.has("ec*n") or "ratio" in window.words
    quarters = window.name(at).lower().startswith("quarter")
    apart = not set("nze").isdisjoint(window.ahead + window.behind) or window.has("/z")
    divides = quarters or apart or re.search(r"L[^.]*[ig]_?N|f[^.L]*L[^.]*N", window.text) is not None
    for each in gaps(window, count) if points else (count,):
        if each <= 0:
            continue
        if (
            window.result > value
            and multiplies
            and not (points and (window.ahead.endswith("e") or window.behind.startswith("j")))
        ):
            yield Told("product", each * value, f"{vulgar(each)} × {said}", Exactness.RULER, value)
        elif window.result <= value and divides:
            part = value / each
            yield Told("division", part, f"{said} ÷ {vulgar(each)}", part_exactness(part), value)


def _doubled(window: Window, symbol: str, value: Fraction) -> Iterator[Told]:
    """Twice a length, or half of it: what is folded in half was twice as wide, what is laid double is half as wide."""
    said = window.name(window.parts[0])
    if window.result > value:
        kind = "doubling" if symbol == "D" else "halving"
        yield Told(kind, 2 * value, f"2 × {said}", Exactness.RULER, value)
    elif symbol == "H" or _LAID.search(window.words) is not None:
        yield Told("halving", value / 2, f"{said} ÷ 2", part_exactness(value / 2), value)


def _shared(window: Window, at: int, value: Fraction) -> Iterator[Told]:
    """A share of a length, the length with it or without it, or the whole of which the length is a share."""
    if told_of_the_length_before(window.items, window.symbols, window.said, at) not in (None, window.at):
        return
    part, symbol, factor = window.parts[0], window.symbols[at], window.value(at)
    said = window.name(part)
    share = share_words(symbol, factor, said)
    half = factor == Fraction(1, 2)
    kind = "percent" if symbol == "P" else "halving" if half else "share"
    exactness = part_exactness(value * factor) if half else Exactness.COARSE
    given = re.match(r"_?(?:o_?)?[k(=]_?L", window.symbols[at + 1 : at + 8])
    # “a quarter of the front; the front's 48 cm”
    whole_named = window.name(part - 1).lower().endswith("'s") or _says_twice(window, at, part)
    if given and at + given.end() == part and not whole_named:
        more = "u" in window.ahead and not set("aAp+").isdisjoint(window.symbols[at + given.end() + 1 : window.at])
        if window.result > value and 0 < factor < 1 and not more:
            yield Told(kind, value / factor, f"{said} ÷ {vulgar(factor)}", exactness, value)
        return
    way = _way(window, at)
    if factor < Fraction(1, 2) and window.result * 2 < value:
        way = 0  # what is lost or added, not what remains
    if way > 0 or (way < 0 and window.result > value and symbol == "P"):
        yield Told(kind, value * (1 + factor), f"{said} + {share}", exactness, value)
    elif way == 0:
        yield Told(kind, value * factor, share, exactness, value)
    elif factor < 1:
        yield Told(kind, value * (1 - factor), f"{said} − {share}", exactness, value)


def _says_twice(window: Window, first: int, behind: int) -> bool:
    """Whether a thing is named again between two items: ``a third of the shawl, the shawl is 24 in``."""
    names = [word for at in range(first, behind) for word in window.name(at).lower().split() if len(word) > 3]
    return len(set(names)) < len(names)


def _way(window: Window, at: int) -> int:
    """1 where a share is added to a length, -1 where it is taken off, 0 where it is taken of the length."""
    symbols = window.symbols
    before = symbols[max(0, at - 3) : at].rstrip("_")[-1:]
    behind = symbols[at + 1 : at + 5].partition("t")[0]
    following = window.name(at + 1).lower() if at + 1 < len(window.items) else ""
    more = ">" in behind or re.match(r"[^o]*Q", behind) is not None or _OVER.match(following) is not None
    if symbols[at] == "R":
        return 1 if more else -1 if "<" in behind or before == "-" else 0
    of = re.match(r"_?o", behind) is not None
    start = max(window.start, symbols.rfind(".", window.start, at) + 1)
    taken = not set("hT<-m").isdisjoint(symbols[start : max(window.at, at)]) and not window.ahead.endswith("T")
    if before == "t":
        return 0  # “reduce it to 90%”
    taken = taken or re.match(r"_?d", symbols[at + 1 : at + 3]) is not None
    if "<" in behind or (not of and (before in tuple("-Tm<") or taken)):
        return -1
    return 1 if more or "A" in behind or before in tuple("A+l") else 0
