"""The ways in which the words of a text may put its numbers together."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import combinations

from sitegen.prose.arithmetic.agree import Exactness, part_exactness
from sitegen.prose.arithmetic.symbols import Item
from sitegen.prose.arithmetic.terms import Said
from sitegen.quantities import Ratio, show_ratio, vulgar

_MOST_LENGTHS = 6


@dataclass(frozen=True, slots=True)
class Way:
    """One way: what it makes in millimetres, the sum in words, and how exactly the result must follow."""

    kind: str
    value: Fraction
    words: str
    exactness: Exactness
    hedged: bool
    greatest: Fraction
    named: bool = True
    """Whether words name this way; others only excuse a result."""


@dataclass(frozen=True, slots=True)
class Scope:
    """Where the parts of the result at ``at`` may stand, the words that tie it, and the results settled already."""

    start: int
    end: int
    at: int
    tie: str
    settled: frozenset[int]


@dataclass(frozen=True, slots=True)
class _Parts:
    items: Sequence[Item]
    symbols: str
    scope: Scope
    said: Said
    lengths: tuple[int, ...]
    around: str
    """The symbols of the scope, to a little behind its last length, and those right behind the result."""

    def has(self, symbols: str) -> bool:
        """Whether one of these symbols stands around."""
        return bool(set(self.around) & set(symbols))

    def after(self) -> list[Fraction]:
        """The lengths said soon behind the result: what is left over, perhaps."""
        behind = range(self.scope.at + 1, min(len(self.items), self.scope.at + 12))
        return [self.items[at].value for at in behind if self.symbols[at] == "L"]

    def summed(self) -> list[int]:
        """The lengths from the last settled result onwards."""
        results = [at for at in self.lengths if at in self.scope.settled]
        return [at for at in self.lengths if not results or at >= results[-1]]


def ways_in(items: Sequence[Item], symbols: str, scope: Scope, said: Said) -> Iterator[Way]:
    """Every way, named or not, in no order."""
    lengths = tuple(at for at in range(scope.start, scope.end) if symbols[at] == "L" and at != scope.at)[
        -_MOST_LENGTHS:
    ]
    last = max(lengths, default=scope.start)
    end = scope.end if scope.end == scope.at else min(scope.end, last + 8)
    behind = "".join(symbol for symbol in symbols[scope.at + 1 : scope.at + 5] if symbol in "cveSE")
    behind += "T" if re.match(r"_?t_?T", symbols[scope.at + 1 :][:4]) else ""
    around = symbols[scope.start : end] + " " + behind
    parts = _Parts(items, symbols, scope, said, lengths, around)
    told = _adds(parts) and "S" in around and bool(set(scope.tie) & set("u="))
    for at in () if told else lengths:
        yield Way("", items[at].value, "", Exactness.EXACT, items[at].hedged, items[at].value, named=False)
    around_result = scope.start < scope.at < scope.end
    for way in (*_by_factor(parts), *_by_count(parts), *_added(parts), *_taken_off(parts)):
        yield replace(way, named=way.named and way.kind == "percent") if around_result else way


def _by_factor(parts: _Parts) -> Iterator[Way]:
    items = parts.items
    lengths = [items[at] for at in parts.lengths]
    for at in range(parts.scope.start, parts.scope.end):
        item = items[at]
        if item.symbol not in "PRDH" or not lengths:
            continue
        again = item.symbol == "R" and ">" in parts.symbols[at + 1 : at + 5]
        factor = {"D": Fraction(2), "H": Fraction(1, 2)}.get(item.symbol, item.value)
        kind = {"P": "percent", "D": "doubling", "H": "halving"}.get(item.symbol, "share")
        kind = "halving" if factor == Fraction(1, 2) else kind
        smaller = parts.has("<T-v")
        used_up = any(at < result < parts.scope.at for result in parts.scope.settled)
        of_it = "o" in parts.symbols[at + 1 : at + 3]
        changed = again or (item.symbol == "P" and not of_it and (parts.has("h>") or smaller))
        greatest = max(length.value for length in lengths)
        by_distance = sorted(lengths, key=lambda each: (each.value * 4 < greatest, abs(each.first - item.first)))
        for rank, length in enumerate(by_distance):
            exactness = Exactness.RULER if item.symbol in "DH" else Exactness.COARSE
            hedged = length.hedged or item.hedged
            said = parts.said(length)
            words = f"{show_ratio(Ratio(factor))} of {said}" if item.symbol == "P" else f"{vulgar(factor)} × {said}"
            value = length.value * factor
            if not _with_allowances(parts, at, length):
                yield Way(kind, value, words, exactness, hedged, length.value, not again and not used_up and rank == 0)
            if item.symbol in "PR":
                up = (parts.has("h>") and not smaller) or again
                yield Way(
                    kind,
                    length.value + value,
                    f"{said} + {words}",
                    exactness,
                    hedged,
                    length.value,
                    changed and up and not used_up and rank == 0,
                )
                if factor < 1:
                    down = changed and smaller and not again and not used_up and rank == 0
                    yield Way(kind, length.value - value, f"{said} − {words}", exactness, hedged, length.value, down)
            for small in lengths:
                if small is not length and small.value * 3 <= length.value:
                    ends = 2 if parts.has("S") else 1
                    for times in (2,) if parts.has("S") else (1, 2):
                        both = f"{words} + {'2 × ' if times == 2 else ''}{parts.said(small)}"
                        named = (
                            item.symbol in "PR" and rank == 0 and times == ends and not used_up and parts.has("Aap+S")
                        )
                        yield Way(
                            kind,
                            value + times * small.value,
                            both,
                            exactness,
                            hedged,
                            length.value,
                            named and parts.has("Sp"),
                        )


def _with_allowances(parts: _Parts, at: int, length: Item) -> bool:
    """Whether allowances at both ends are named between a share and what is cut: the share alone is too short."""
    between = parts.symbols[at : parts.scope.at]
    small = any(parts.items[other].value * 3 <= length.value for other in parts.lengths if other > at)
    return small and "S" in between and "u" in parts.scope.tie


def _by_count(parts: _Parts) -> Iterator[Way]:
    items, scope = parts.items, parts.scope
    after = max((at for at in scope.settled if at < scope.at), default=-1)
    counts = [
        at
        for at in range(scope.start, scope.end)
        if parts.symbols[at] == "N" and items[at].value > 1 and items[at].number is not None
    ]
    divides = parts.has("/nz") or "iN" in parts.around or re.search(r"[q&]_?e", scope.tie) is not None
    multiplies = parts.has("ec*n") or "No" in parts.around or "N" in scope.tie
    for at in counts[-3:]:
        count = items[at]
        for place in sorted(parts.lengths, key=lambda each: abs(each - at))[:3]:
            if _is_a_side(parts.symbols, place):
                continue
            length, between = items[place], parts.symbols[min(at, place) : max(at, place)]
            said = parts.said(length)
            spaced = bool(re.match(r"_?[jz]", parts.symbols[at + 1 : at + 3]))
            if spaced and any(re.match(r"n", parts.symbols[other + 1 : other + 2]) for other in counts if other != at):
                continue  # “10 eyelets, 9 equal distances”: the parts are counted by themselves
            near = (
                abs(place - at) < 16
                and after < max(at, place)
                and ("." not in between or bool(set(scope.tie) & set("N=q:")))
            )
            times = f"{vulgar(count.value)} × {said}"
            yield Way(
                "product",
                count.value * length.value,
                times,
                Exactness.RULER,
                length.hedged,
                length.value,
                multiplies and near,
            )
            shares = (count.value, *((count.value - 1, count.value + 1) if spaced else ()))
            for share in shares:
                if share > 1 and share.denominator == 1:
                    left_over = [each for each in parts.after() if each < length.value]
                    for rest in left_over:
                        value = (length.value - rest) / share
                        yield Way("", value, "", part_exactness(value), length.hedged, length.value, named=False)
                    named = divides and near and share == count.value
                    words = f"{said} ÷ {vulgar(share)}"
                    each = length.value / share
                    yield Way("division", each, words, part_exactness(each), length.hedged, length.value, named)


def _is_a_side(symbols: str, at: int) -> bool:
    """Whether a length is a side of a rectangle: ``20 cm by 25 cm``."""
    behind, ahead = symbols[at + 1 : at + 5], symbols[max(0, at - 4) : at]
    return bool(re.match(r"_?[b*]_?L", behind) or re.search(r"L_?[b*]_?$", ahead))


def _counts(parts: _Parts) -> list[int]:
    """The whole numbers of the scope that may count one of its lengths."""
    found = (parts.items[at] for at in range(parts.scope.start, parts.scope.end) if parts.symbols[at] == "N")
    return [int(item.value) for item in found if 1 < item.value < 100 and item.value.denominator == 1][-2:]


def _times(symbols: str, at: int) -> int:
    """How often a length is taken: twice at both ends, or as one of several allowances."""
    if re.match(r"[^L.\n]{0,5}[&,;][_]?S[_uk]{0,3}L", symbols[at + 1 : at + 12]):
        return 1  # “10 cm long, and each end needs 1 cm”: the ends are the next length's
    behind = re.split(r"[L.\n]", symbols[at + 1 : at + 7], maxsplit=1)[0]
    ahead = re.split(r"[L.\n]", symbols[max(0, at - 4) : at])[-1]
    return 2 if "S" in behind or "S" in ahead or "p" in behind[:2] else 1


def _adds(parts: _Parts) -> bool:
    allowance = parts.has("ap")
    if "=" in parts.scope.tie and (parts.has("&") or parts.around.count(",") > 1):
        return True
    return (
        parts.has("+AcB")
        or "c" in parts.scope.tie
        or (parts.has("Se") and allowance)
        or ("u" in parts.scope.tie and allowance)
    )


def _added(parts: _Parts) -> Iterator[Way]:
    adds, summed = _adds(parts), parts.summed()
    for size in range(2, len(summed) + 1):
        some = [(parts.items[at], _times(parts.symbols, at)) for at in summed[-size:]]
        exactness = Exactness.EXACT if len({item.unit for item, _ in some}) == 1 else Exactness.RULER
        hedged = any(item.hedged for item, _ in some)
        whole = max(item.value for item, _ in some)
        likely = tuple(1 if item.value == whole else times for item, times in some)
        readings = [likely, (1, *(2 for _ in some[1:]))]
        if "D" in parts.around:
            readings.append(tuple(1 if item.value == whole else 2 * times for item, times in some))
        if "S" not in parts.around:
            readings.append(tuple(1 for _ in some))
        for often in _counts(parts):
            readings += [tuple(often if at == place else 1 for at in range(len(some))) for place in range(len(some))]
        for times in dict.fromkeys(readings):
            pairs = [(item, often) for (item, _), often in zip(some, times, strict=True)]
            words = " + ".join(f"{f'{often} × ' if often > 1 else ''}{parts.said(item)}" for item, often in pairs)
            value = sum((often * item.value for item, often in pairs), Fraction(0))
            yield Way("sum", value, words, exactness, hedged, value, adds and times == likely and size == len(summed))


def _taken_off(parts: _Parts) -> Iterator[Way]:
    summed = parts.summed()
    takes = parts.has("T-v<dmyhB") or parts.around.endswith("E") or (parts.has("S") and parts.has("ap"))
    least = 2 if "S" in parts.around else 1
    for one, other in combinations(parts.lengths, 2):
        items = parts.items[one], parts.items[other]
        more, less = items if items[0].value >= items[1].value else items[::-1]
        exactness = Exactness.EXACT if more.unit is less.unit else Exactness.RULER
        hedged = more.hedged or less.hedged
        both = len(summed) == 2 and one in summed and other in summed
        for times in (least, 2 * least):
            value = more.value - times * less.value
            if value > 0:
                words = f"{parts.said(more)} − {f'{times} × ' if times > 1 else ''}{parts.said(less)}"
                yield Way("difference", value, words, exactness, hedged, more.value, takes and both and times == least)
        if not _adds(parts) or (other == parts.lengths[-1] and "A" in parts.symbols[max(0, other - 3) : other]):
            yield Way("", more.value + less.value, "", exactness, hedged, more.value, named=False)
    if len(summed) > 2:
        yield from _all_taken_off(parts, [parts.items[at] for at in summed], takes)


def _all_taken_off(parts: _Parts, items: Sequence[Item], takes: bool) -> Iterator[Way]:
    """The first or the greatest length without all the others: ``36 in, 2 in off the top and 2 in off the bottom``."""
    whole = max(items, key=lambda item: item.value)
    rest = [item for item in items if item is not whole]
    value = whole.value - sum((item.value for item in rest), Fraction(0))
    if value > 0:
        words = f"{parts.said(whole)} − " + " − ".join(parts.said(item) for item in rest)
        exactness = Exactness.EXACT if len({item.unit for item in items}) == 1 else Exactness.RULER
        hedged = any(item.hedged for item in items)
        yield Way("difference", value, words, exactness, hedged, whole.value, takes and not parts.has("+A"))
