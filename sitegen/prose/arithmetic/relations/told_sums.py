"""The sums and differences that the words of a window name between its result and several lengths."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from sitegen.prose.arithmetic.agree import Exactness, part_exactness
from sitegen.prose.arithmetic.relations.parts import are_all_shares, is_allowance, of_sides, sign, times
from sitegen.prose.arithmetic.relations.told import Told, share_words
from sitegen.prose.arithmetic.relations.window import Window
from sitegen.prose.arithmetic.symbols import is_cloth_width
from sitegen.prose.arithmetic.ties import is_of_another
from sitegen.quantities import Unit, vulgar

_SUMS = re.compile(
    r"\b(?:totals?|totall?ing|altogether|in all|all told|together|sum|combined|add(?:s|ed|ing)?|plus|join(?:s|ed|ing)?"
    r"|end to end|side by side|overall|edge to edge|(?:over|under)laps?|overlapp(?:ed|ing)|wraps? over)\b"
)
_TAKES = re.compile(
    r"\b(?:left|leav\w*|remain\w*|rest|short(?:er|en\w*)?|less|minus|off|los(?:e|es|t|s|ing)|trim\w*|away|surplus|spare"
    r"|without|subtract\w*|deduct\w*|difference|eat(?:s|en)?|swallow\w*|us(?:e|es|ed) up|took|tak(?:e|es|en)|smaller"
    r"|narrower|clearance|(?:over|under)lap\w*|rais(?:e|ed|es)|lower(?:ed|s)?)\b"
)
_PLACED = re.compile(r"\b(?:below|above)\b")
"""A length above or below a seam is no allowance."""
_FINISHED = re.compile(r"\bfinish(?:es|ed|ing)?\b")
_SMALL = 3
"""How many times as long the whole must be, of which a share is taken, as what is added to the share."""


@dataclass(frozen=True, slots=True)
class _Several:
    """The parts of a window: what each measures, how often it is taken, and which is the greatest."""

    window: Window
    values: Sequence[Fraction]
    often: Sequence[int]
    counted: Sequence[bool]
    base: int

    @property
    def rest(self) -> list[int]:
        """The parts beside the greatest."""
        return [index for index in range(len(self.values)) if index != self.base]

    def said(self, index: int, often: int) -> str:
        """A part as often as it is taken, in words."""
        name = self.window.name(self.window.parts[index])
        return f"{often} × {name}" if often > 1 else name


def told_of_several(window: Window) -> Iterator[Told]:
    """Every sum, difference, or share with something added that the words name."""
    values = [window.value(at) for at in window.parts]
    counted = [times(window, at) for at in window.parts]
    used = {place for _, place in counted}
    free = [at for at in window.factors if at not in used]
    if "".join(window.symbols[at] for at in free) == "N":
        counted, free = _with_each(window, counted, free)
    base = max(range(len(values)), key=lambda index: values[index])
    often, told = [times for times, _ in counted], [place is not None for _, place in counted]
    several = _Several(window, values, often, told, base)
    symbols = "".join(window.symbols[at] for at in free)
    if not free:
        yield from _summed(several)
    elif are_all_shares(window) and len(values) == 2:
        yield from _other_share(several)
    elif symbols in ("P", "R"):
        yield from _share_and_more(several, free[0])
    elif symbols in ("D", "H", "DH", "HD") and len(values) == 2:
        yield from _folded(several)
    elif symbols == "N" and len(values) == 2 and window.has("/") and window.has("T-<v"):
        yield from _rest_divided(several, free[0])


def _with_each(
    window: Window, counted: list[tuple[int, int | None]], free: list[int]
) -> tuple[list[tuple[int, int | None]], list[int]]:
    """The parts, the one of which each gets its own as often as the lone count says: ``ten pupils, 40 cm each``."""
    each = [index for index, at in enumerate(window.parts) if re.match(r"[_o]{0,3}e", window.symbols[at + 1 : at + 5])]
    count = window.value(free[0])
    if len(each) != 1 or count.denominator != 1 or window.parts[each[0]] < free[0]:
        return counted, free
    return [(int(count), free[0]) if index == each[0] else one for index, one in enumerate(counted)], []


def _adds(window: Window) -> bool:
    """Whether the words add the parts together."""
    tie = "" if re.match(r";_?:", window.ahead) else window.ahead  # “armhole binding: 48 cm; neck binding: 62 cm”
    return (
        window.has("+Ac")
        or (window.has("&,") and not set("=:").isdisjoint(tie) and "." not in tie)
        or (window.has("ap") and not set("u:").isdisjoint(tie + window.text) and not _PLACED.search(window.words))
        or (window.has("S") and (window.has("u") or not set("q=:").isdisjoint(tie)))
        or (_listed(window) and (not set("u:=q").isdisjoint(tie) or "kt" in tie))
        or _SUMS.search(window.words) is not None
        or ("q" in tie and all(window.name(at + 1).lower().startswith("for") for at in window.parts))
    )


def _listed(window: Window) -> bool:
    """Whether three lengths or more stand in one list: ``yoke 7 in, tier 12 in, flounce 9 in``."""
    between = [window.symbols[one + 1 : other] for one, other in pairwise(window.parts)]
    return len(between) > 1 and all(re.fullmatch(r"[^L.\n]{0,8}[,;&][_&Aa:]{0,5}", each) for each in between)


def _summed(several: _Several) -> Iterator[Told]:
    """All parts added, or taken off the greatest, as the words beside each say, else as those around say."""
    window, base = several.window, several.base
    if _of_two_systems(window) or _has_cloth_to_buy(window):
        return
    whole = several.values[base]
    signs = [1 if index == base else sign(window, at) for index, at in enumerate(window.parts)]
    often = [
        times if index != base or counted or of_sides(window, window.parts[index]) else 1
        for index, (times, counted) in enumerate(zip(several.often, several.counted, strict=True))
    ]
    beside = [signs[index] for index in several.rest]
    lost = "T" in window.ahead and all(sign(window, at) < 0 for at in window.parts)
    turned = max(beside) < 0 and ("u" in window.ahead or lost) and not window.has("-<m")
    if turned and window.result > whole:
        signs, beside = [1] * len(signs), [1] * len(beside)  # “with 1 cm turned in at each end, so cut”
    if not all(beside):
        way = _way(several, beside, rises=window.result > whole)
        if not way:
            return
        signs = [1 if index == base else way for index in range(len(signs))]
        beside = [way]
    taken = zip(signs, often, several.values, strict=True)
    value = sum((way * times * each for way, times, each in taken), Fraction(0))
    rises, falls = min(beside) > 0, max(beside) < 0
    if value <= 0 or (rises and window.result <= whole) or (falls and window.result >= whole * often[base]):
        return
    first = window.parts[0]
    if signs[0] < 0 and window.symbols[max(0, first - 2) : first] == "X-":
        return  # “{waist.casing} less 1 cm. Leave a gap of 5 cm”: it is taken off what is not told here
    words = several.said(0, often[0]) if signs[0] > 0 else f"−{several.said(0, often[0])}"
    for index in range(1, len(signs)):
        words += f" {'+' if signs[index] > 0 else '−'} {several.said(index, often[index])}"
    exactness = Exactness.EXACT if len({window.items[at].unit for at in window.parts}) == 1 else Exactness.RULER
    kind, greatest = ("sum", value) if rises else ("difference", whole * often[base])
    yield Told(kind, value, words, exactness, greatest)


def _has_cloth_to_buy(window: Window) -> bool:
    """Whether so much cloth is told, and how wide it is."""
    bought = window.items[window.at].unit in (Unit.YD, Unit.M)
    return bought and any(is_cloth_width(window.items, at, window.said) for at in window.parts)


def _of_two_systems(window: Window) -> bool:
    """Whether some of the lengths are metric and some are not: nobody adds them up."""
    systems = {
        item.unit.system for at in (window.at, *window.parts) if (item := window.items[at]).unit and not item.other
    }
    return len(systems) > 1


def _way(several: _Several, beside: Sequence[int], *, rises: bool) -> int:
    """1 where the words around add the parts, -1 where they take them off the greatest, 0 where they tell neither."""
    window, parts = several.window, several.window.parts
    if rises:
        ends_shorter = _FINISHED.search(window.words_ahead) is not None and not (window.has("+") or _listed(window))
        adds = min(beside) >= 0 and "v" not in window.ahead and not ends_shorter
        adds = adds and (_adds(window) or _only_allowances(several))
        return 1 if adds else 0
    from_it = window.symbols[max(0, parts[several.base] - 1) : parts[several.base]] == "f"
    off = (
        several.base == 0
        or from_it
        or (len(parts) == 2 and (beside[0] < 0 or "f" in window.symbols[parts[0] : parts[1]]))
    )
    takes = _only_allowances(several) or window.has("-Tv<dm") or _TAKES.search(window.words) is not None
    return -1 if max(beside) <= 0 and off and takes else 0


def _only_allowances(several: _Several) -> bool:
    """Whether all parts but the greatest are small and called seams, hems or allowances."""
    whole = several.values[several.base]
    return not is_allowance(several.window, several.window.parts[several.base]) and all(
        several.values[index] * _SMALL <= whole and is_allowance(several.window, several.window.parts[index])
        for index in several.rest
    )


def _share_and_more(several: _Several, at: int) -> Iterator[Told]:
    """A share of the greatest length, with allowances: ``85% of 52 cm, and 1 cm at either end``."""
    window, factor, rest = several.window, several.window.value(at), several.rest
    small = all(several.values[index] * _SMALL <= several.values[several.base] for index in rest)
    of_another = is_of_another(window.items, window.symbols, window.said, at, window.parts[several.base])
    if not small or not window.has("u+AS") or window.has("T-<v") or of_another:
        return
    value = several.values[several.base] * factor
    value += sum((several.often[index] * several.values[index] for index in rest), Fraction(0))
    share = share_words(window.symbols[at], factor, window.name(window.parts[several.base]))
    words = " + ".join((share, *(several.said(index, several.often[index]) for index in rest)))
    kind = "percent" if window.symbols[at] == "P" else "share"
    yield Told(kind, value, words, Exactness.COARSE, several.values[several.base])


def _other_share(several: _Several) -> Iterator[Told]:
    """The second of two shares of a length, where the first is given: ``a third of 18 in is 6 in, the rest 12 in``."""
    window, whole, given = several.window, several.values[several.base], several.values[several.rest[0]]
    for at in window.factors:
        if whole * window.value(at) != given and whole * (1 - window.value(at)) == given:
            words = share_words("R", window.value(at), several.said(several.base, 1))
            yield Told("share", whole * window.value(at), words, Exactness.COARSE, whole)


def _folded(several: _Several) -> Iterator[Told]:
    """A band that is cut double, and what it is finished: half as wide, without the seam.

    ``2 × 4 cm + 2 × 1 cm = 10 cm`` wide cut; ``10 cm ÷ 2 − 1 cm = 4 cm`` finished.
    """
    base, other, result = several.base, several.rest[0], several.window.result
    whole, allowance = several.values[base], several.values[other]
    if allowance * 2 > whole:
        return
    if result > whole and (several.often[other] == 2 or several.window.has("ap")):
        words = f"{several.said(base, 2)} + {several.said(other, 2)}"
        yield Told("doubling", 2 * whole + 2 * allowance, words, Exactness.RULER, whole)
    elif result < whole and several.window.has("ap") and base == 0 and several.window.at > several.window.parts[-1]:
        words = f"{several.said(base, 1)} ÷ 2 − {several.said(other, 1)}"
        yield Told("halving", whole / 2 - allowance, words, part_exactness(whole / 2), whole)


def _rest_divided(several: _Several, at: int) -> Iterator[Told]:
    """What is left of a length, in equal parts: ``take 1 in off either end of 22 in and divide the rest by 4``."""
    base, other, count = several.base, several.rest[0], several.window.value(at)
    value = (several.values[base] - several.often[other] * several.values[other]) / count
    if value > 0:
        words = f"({several.said(base, 1)} − {several.said(other, several.often[other])}) ÷ {vulgar(count)}"
        yield Told("division", value, words, part_exactness(value), several.values[base])
