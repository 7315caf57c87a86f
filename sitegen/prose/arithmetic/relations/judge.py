"""Which results contradict the relation that the words around them name."""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence, Set
from dataclasses import dataclass
from fractions import Fraction

from sitegen.prose.arithmetic.agree import Exactness, agrees
from sitegen.prose.arithmetic.relations.excuses import is_excused
from sitegen.prose.arithmetic.relations.parts import cuts_a_sum, of_one_sum
from sitegen.prose.arithmetic.relations.roles import is_rounded
from sitegen.prose.arithmetic.relations.told import CLOSE, Told, told_of_one
from sitegen.prose.arithmetic.relations.told_sums import told_of_several
from sitegen.prose.arithmetic.relations.window import Window, widened, windows_of
from sitegen.prose.arithmetic.symbols import Item
from sitegen.prose.arithmetic.terms import Said
from sitegen.prose.arithmetic.ties import tie_of

_NEAR = {
    "percent": Fraction(1, 2), "share": Fraction(2, 5), "doubling": Fraction(1, 3), "halving": Fraction(1, 3),
    "product": Fraction(7, 20), "division": Fraction(1, 2), "sum": Fraction(1, 4), "difference": Fraction(1, 4),
}  # fmt: skip
"""How far a slip may lie from the right result: of the right one; for differences, of the greatest part."""
_ROUNDED = Fraction(1, 28)
_SAME_SHARE = Fraction(1, 50)
_TIMES = Fraction(5, 2)
"""How many times as great a wrong difference may be as the right one, or the right one as it."""
_SMALL = 4
"""A percentage that makes less than such a part of a length is a loss, or an allowance for one."""
_ABOUT = 5
"""What is lost by about so many per cent may be a fifth more or less (common practice, no source)."""
_SHORT = Fraction(80)
"""Millimetres: sums of allowances, of which a slip is a greater part."""
_FARTHEST = 60
"""Symbols before a result in which its sentence is looked for."""
_UNTIED = frozenset(("share", "percent", "halving", "doubling"))


_OWN_RESULT = 4
"""Items behind the parts of a sum within which their own result stands."""


@dataclass(frozen=True, slots=True)
class Contradicted:
    """A result that contradicts the relation told around it: its place among the items, and that relation."""

    at: int
    told: Told
    parts: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Judged:
    """The results that a named relation makes, those that some other way explains, and those that contradict one."""

    right: frozenset[int]
    excused: frozenset[int]
    wrong: tuple[Contradicted, ...]


def judged(
    items: Sequence[Item], symbols: str, said: Said, known: Mapping[int, tuple[int, ...]], doubted: Set[int]
) -> Judged:
    """The results of a text whose words name their relation to the numbers around them.

    ``known`` are results that are right, with the places of what they are made of. ``doubted`` are results that are
    held to be wrong: those that the numbers around them explain all the same are among the excused.
    """
    settled = dict(known)
    explained = settled.keys() | {at for made in known.values() for at in made}
    results_of: defaultdict[int, set[int]] = defaultdict(set)
    for result, made in known.items():
        for at in made:
            results_of[at].add(result)
    near: dict[int, tuple[Window, Told]] = {}
    by_result: defaultdict[int, list[Window]] = defaultdict(list)
    asked = [at for at, symbol in enumerate(symbols) if symbol == "L" and (at not in explained or at in doubted)]
    in_order = sorted(windows_of(items, symbols, said, asked), key=lambda each: each.at < min(each.places, default=0))
    for whole in in_order:
        window = of_one_sum(whole, settled)
        if not _may_be_judged(window) or _is_told_already(window, results_of):
            continue
        by_result[window.at].append(window)
        told = list(_told(window))
        if any(_makes(window, each) for each in told):
            explained |= {window.at, *window.parts}
            if window.at not in settled:
                settled[window.at] = window.places
                for at in window.places:
                    results_of[at].add(window.at)
        elif told:
            nearest = min(told, key=lambda each: abs(each.value - window.result))
            other = near.get(window.at)
            if _is_slip(window, nearest) and (other is None or len(window.places) >= len(other[0].places)):
                near[window.at] = window, nearest
    wrong = tuple(
        Contradicted(at, told, window.places)
        for at, (window, told) in near.items()
        if at not in explained
        and not any(
            is_excused(each) for each in (*by_result[at], *(more for one in by_result[at] for more in widened(one)))
        )
    )
    excused = frozenset(
        at for at in doubted if any(_holds_its_sentence(each) and is_excused(each) for each in by_result[at])
    )
    return Judged(frozenset(settled.keys() - known.keys()), excused, wrong)


def _is_told_already(window: Window, results_of: Mapping[int, Set[int]]) -> bool:
    """Whether the parts behind a result make another one there."""
    if not window.parts or window.at > window.parts[0]:
        return False
    return any(at not in window.parts for part in window.parts for at in results_of.get(part, ()))


def _holds_its_sentence(window: Window) -> bool:
    """Whether all numbers of the result's sentence, up to it, are in the window."""
    first = max(0, window.at - _FARTHEST)
    start = max(first, window.symbols.rfind(".", first, window.at) + 1)
    return all(
        window.symbols[at] not in "LNPR" or window.items[at].value == 1 for at in range(start, min(window.places))
    )


def _may_be_judged(window: Window) -> bool:
    """Whether the window has parts at all, and its result is neither one of them nor only a name."""
    if not window.parts or cuts_a_sum(window):
        return False
    least, most = window.beside.same
    if any(least <= window.value(at) <= most for at in window.parts):
        return False
    if window.beside.only_names or is_rounded(window.words):
        return False
    return window.at > window.parts[0] or not any(
        not set("q=").isdisjoint(window.symbols[at - 3 : at]) for at in window.parts[1:]
    )


def _told(window: Window) -> Iterator[Told]:
    """The relations that the words name, where they call the length a result."""
    tied = tie_of(window.symbols, window.at) is not None
    alone = len(window.parts) == len(window.factors) == 1 and window.at > window.parts[0]
    if not (tied or alone) or _has_a_rectangle(window) or _has_a_total_between(window):
        return
    for told in told_of_one(window) if len(window.parts) == 1 else told_of_several(window):
        lone = told.kind == "product" and window.symbols[window.at - 1] != "N"
        close = lone and abs(told.value - window.result) <= told.value * CLOSE
        if tied or close or told.kind in _UNTIED:
            yield told


def _has_a_rectangle(window: Window) -> bool:
    first = max(0, window.start - 6)
    for match in re.finditer(r"L_?([*b])_?L", window.symbols[first : window.end + 5]):
        at = first + match.start()
        if match.group(1) == "*" or set("TlmAh<L/").isdisjoint(window.symbols[max(0, at - 8) : at]):
            return True
    return False


def _has_a_total_between(window: Window) -> bool:
    """Whether ``in all`` stands between two parts, and so tells another total."""
    return window.at > window.parts[-1] and "c" in window.symbols[window.parts[0] : window.parts[-1]]


def _makes(window: Window, told: Told) -> bool:
    """Whether a relation makes the result, or its partner in the other unit."""
    hedged = _is_hedged(window, told)
    if window.hedged and not hedged and abs(told.value - window.result) * _ABOUT <= abs(told.value - told.greatest):
        return True  # “shrinks by about 6%” is loose for what is lost, not for what is left
    written = window.items[window.at].written
    return any(agrees(value, unit, (told.value,), told.exactness, hedged=hedged) for value, unit in written)


def _is_hedged(window: Window, told: Told) -> bool:
    """Whether the result need only be about right: a hedged percentage hedges only what is lost or added by it."""
    if told.kind != "percent" or told.value * 2 < told.greatest:
        return window.hedged
    return any(window.items[at].hedged for at in (window.at, *window.parts))


def _is_slip(window: Window, told: Told) -> bool:
    """Whether a result that a relation does not make may be a slip, and neither rounded nor another length."""
    apart = abs(told.value - window.result)
    if _is_hedged(window, told) or any(window.value(at) == told.value for at in window.parts):
        return False
    if window.at < window.parts[0] and _is_told_behind(window, told.value):
        return False
    if told.exactness is Exactness.COARSE:
        if apart < told.value * _ROUNDED and not _could_be_written(window, told.value):
            return False
        if any(abs(window.value(at) - window.result) < window.result * _SAME_SHARE for at in window.parts):
            return False
    later = "." in window.symbols[window.parts[-1] : window.at]
    if told.kind == "difference" and later and set("=qvcu:(T<d").isdisjoint(window.ahead + window.behind):
        return False
    if told.kind == "difference" and not told.value < _TIMES * window.result < _TIMES**2 * told.value:
        return False
    if told.kind == "share" and re.search(r"Ro?_,?$", window.symbols[max(0, window.at - 5) : window.at]):
        return apart * 5 <= told.value * 3  # “a third of that, 30 cm”
    if told.kind == "percent" and told.value * _SMALL < told.greatest:
        return apart <= told.value  # “a loss of 4 in” for 5% of 40 in: nobody means another part of it
    if told.kind == "sum" and told.value < _SHORT and not set("=qcT").isdisjoint(window.ahead + window.behind):
        return apart * 2 <= told.value
    return apart <= _NEAR[told.kind] * (told.greatest if told.kind == "difference" else told.value)


def _is_told_behind(window: Window, value: Fraction) -> bool:
    """Whether what the parts make has its own place behind them: ``because 80% of 20 in is 16 in, plus two seams``."""
    behind = range(window.end, min(len(window.symbols), window.end + _OWN_RESULT))
    return any(window.symbols[at] == "L" and window.value(at) == value for at in behind)


def _could_be_written(window: Window, value: Fraction) -> bool:
    """Whether a length could be written as finely as the result is, so that nobody need have rounded it."""
    number = window.items[window.at].number
    if number is None or number.unit is None:
        return False
    step = Fraction(1, 10**number.decimals) if number.decimals else Fraction(1, number.value.denominator)
    return (value / number.unit.mm / step).denominator == 1
