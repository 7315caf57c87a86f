"""Ways by a share, a percentage, a doubling or a halving of a length."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from enum import Enum
from fractions import Fraction

from sitegen.prose.arithmetic.agree import Exactness, part_exactness
from sitegen.prose.arithmetic.symbols import Item
from sitegen.prose.arithmetic.ties import is_of_another, told_of_the_length_before
from sitegen.prose.arithmetic.ways_of.parts import Parts, Way, sign_of, times_of
from sitegen.quantities import Ratio, show_ratio, vulgar


def shared_ways(parts: Parts) -> Iterator[Way]:
    """Every way by a share, a percentage, a doubling or a halving."""
    yield from _middle(parts)
    yield from _each_half(parts)
    items = parts.items
    lengths = [items[at] for at in parts.lengths]
    for at in range(parts.scope.start, parts.scope.end):
        item = items[at]
        if item.symbol not in "PRDH" or not lengths:
            continue
        own = told_of_the_length_before(items, parts.symbols, parts.said, at) if item.symbol in "PR" else None
        if own not in (None, parts.scope.at):
            continue
        whole = _whole_of_a_share(parts, at)
        if whole is not None:
            yield whole
        if whole is None or "(" in parts.symbols[at : at + 6]:
            yield from _with_factor(parts, at, lengths)


def _whole_of_a_share(parts: Parts, at: int) -> Way | None:
    """The whole, where only the share of something is given: ``half the neck is 3 in, so the whole is 6 in``."""
    item, first = parts.items[at], min(parts.lengths)
    given = re.match(r"_?(?:o_?)?[k(=]_?L", parts.symbols[at + 1 : at + 8])
    if item.symbol not in "RP" or not 0 < item.value < 1 or first < at or given is None:
        return None
    length = parts.items[at + given.end()]
    if length.symbol != "L":
        return None
    if "u" in parts.scope.tie and not set("aAp+&").isdisjoint(parts.symbols[at + given.end() : parts.scope.at]):
        return None  # “half the depth is 4 cm; with an allowance on both edges cut it 7 cm wide”
    kind = "doubling" if item.value == Fraction(1, 2) else "share"
    value = length.value / item.value
    words = f"{parts.said(length)} ÷ {vulgar(item.value)}"
    return Way(kind, value, words, part_exactness(value), length.hedged, value)


class _Mode(Enum):
    """What a share does to a length."""

    OF = "of"
    MORE = "more"
    LESS = "less"


def _mode(parts: Parts, at: int) -> _Mode:
    """Whether a share is taken of a length, added to it, or taken off, by the words beside it, else by those around."""
    item, symbols = parts.items[at], parts.symbols
    if item.symbol in "DH":
        return _Mode.OF
    behind, before = symbols[at + 1 : at + 5].partition("t")[0], symbols[max(0, at - 3) : at].rstrip("_")[-1:]
    if item.symbol == "R" and set(">Q") & set(behind):
        return _Mode.MORE
    if "f" in behind[:2]:
        return _Mode.OF  # “take 1/4 away from”
    if parts.scope.tie.endswith("T"):
        return _Mode.OF  # “it will lose 3 in”
    if "<" in behind or (before in ("-", "T") and not behind.startswith(("_oL", "oL"))):
        return _Mode.LESS
    if _is_extra(symbols, at) and item.symbol == "P":
        return _Mode.MORE
    if item.symbol == "P" and "o" not in symbols[at + 1 : at + 3]:
        if parts.has("<T-v"):
            return _Mode.LESS
        if parts.has("h>"):
            return (
                _Mode.MORE if parts.items[parts.scope.at].value > parts.items[parts.lengths[-1]].value else _Mode.LESS
            )
    return _Mode.OF


def _with_factor(parts: Parts, at: int, lengths: Sequence[Item]) -> Iterator[Way]:
    """The ways in which one share, doubling or halving makes something of the lengths."""
    item = parts.items[at]
    factor = {"D": Fraction(2), "H": Fraction(1, 2)}.get(item.symbol, item.value)
    kind = {"P": "percent", "D": "doubling", "H": "halving"}.get(item.symbol, "share")
    kind = "halving" if factor == Fraction(1, 2) else kind
    used_up = any(at < result < parts.scope.at for result in parts.scope.settled)
    mode = _mode(parts, at)
    greatest = max(length.value for length in lengths)
    allowances = [parts.items[place] for place in parts.lengths if times_of(parts, place) > 1]

    def likely(each: Item) -> tuple[bool, int]:
        """Shares are taken of what is long and near, not of allowances."""
        small = each.value * 4 < greatest or (each.value < greatest and each in allowances)
        return small, abs(each.first - item.first)

    for rank, length in enumerate(sorted(lengths, key=likely)):
        halves = item.symbol in "DH" or factor == Fraction(1, 2)
        exactness = part_exactness(length.value * factor) if halves else Exactness.COARSE
        hedged = length.hedged or item.hedged
        said = parts.said(length)
        share = f"{show_ratio(Ratio(factor))} of {said}" if item.symbol == "P" else f"{vulgar(factor)} × {said}"
        place = parts.lengths[lengths.index(length)]
        another = is_of_another(parts.items, parts.symbols, parts.said, at, place)
        first = rank == 0 and not used_up and not another
        apart = bool(set(".q") & set(parts.symbols[at:place]))
        made = {_Mode.OF: (length.value * factor, share)}
        if item.symbol == "H" and parts.items[parts.scope.at].value > length.value:
            made = {_Mode.OF: (length.value * 2, f"2 × {said}")}  # folded in half, it was twice as wide
        if item.symbol in "PR":
            made[_Mode.MORE] = (length.value * (1 + factor), f"{said} + {share}")
            if factor < 1:
                made[_Mode.LESS] = (length.value * (1 - factor), f"{said} − {share}")
        for way, (value, words) in made.items():
            small = (
                parts.items[parts.scope.at].value * 2 < length.value and item.symbol == "P" and factor < Fraction(1, 2)
            )
            meant = (
                way is mode
                or (way is _Mode.OF and mode is not _Mode.OF and small)
                or (way is _Mode.OF and mode is _Mode.MORE and apart and item.symbol == "P")
            )
            named = any(parts.items[place].times for place in parts.lengths if place > at)
            short = way is _Mode.OF and (named or _with_allowances(parts, at, length))
            if not short:
                yield Way(kind, value, words, exactness, hedged, length.value, first and meant)
            yield from _and_more(
                parts, Way(kind, value, words, exactness, hedged, length.value, first and meant), length
            )


def _and_more(parts: Parts, share: Way, length: Item) -> Iterator[Way]:
    """A share of a length with the smaller lengths around added or taken off as the words say."""
    places = [at for at in parts.lengths if parts.items[at] is not length and parts.items[at].value * 3 <= length.value]
    cut = "u" in parts.scope.tie or parts.has("Aap+S")
    for at in places:
        small = parts.items[at]
        allowance = bool(set("ape") & set(parts.symbols[at + 1 : at + 4])) or times_of(parts, at) == 2
        for times in (2,) if parts.has("S") else (1, 2) if allowance else (1,):
            words = f"{share.words} + {'2 × ' if times == 2 else ''}{parts.said(small)}"
            named = share.named and times == times_of(parts, at) and parts.has("Sp") and cut and len(places) == 1
            yield share._replace(value=share.value + times * small.value, words=words, named=named)
    signs = [sign_of(parts, at) for at in places]
    if places and all(signs):
        value, words = share.value, share.words
        for at, sign in zip(places, signs, strict=True):
            times = times_of(parts, at)
            value += sign * times * parts.items[at].value
            words += f" {'+' if sign > 0 else '−'} {f'{times} × ' if times > 1 else ''}{parts.said(parts.items[at])}"
        if value > 0:
            yield share._replace(value=value, words=words)


def _is_extra(symbols: str, at: int) -> bool:
    """Whether a percentage is added: ``add 50%``, ``50% extra for fullness``."""
    behind = symbols[at + 1 : at + 3].partition("t")[0]
    return "A" in behind or symbols[max(0, at - 2) : at].rstrip("_")[-1:] in ("A", "+")


def _with_allowances(parts: Parts, at: int, length: Item) -> bool:
    """Whether allowances at both ends are named between a share and what is cut: the share alone is too short."""
    between = parts.symbols[at : parts.scope.at]
    small = any(parts.items[other].value * 3 <= length.value for other in parts.lengths if other > at)
    return small and "S" in between and "u" in parts.scope.tie


def _each_half(parts: Parts) -> Iterator[Way]:
    """Half of a length, of which each leg or side gets its part: ``2 in in total, so each leg of it …``."""
    tie = parts.scope.tie
    if len(parts.lengths) == 1 and "q" in tie and "e" in tie and "N" not in parts.around:
        length = parts.items[parts.lengths[0]]
        half = length.value / 2
        yield Way("halving", half, f"{parts.said(length)} ÷ 2", part_exactness(half), length.hedged, length.value)


def _middle(parts: Parts) -> Iterator[Way]:
    """Half of the length before, from either end of it: ``lies 20 in from either end``."""
    if parts.lengths and re.match(r"_?fS", parts.symbols[parts.scope.at + 1 : parts.scope.at + 4]):
        length = parts.items[parts.lengths[-1]]
        half = length.value / 2
        yield Way("halving", half, f"{parts.said(length)} ÷ 2", part_exactness(half), length.hedged, length.value)
