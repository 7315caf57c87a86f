"""Results that stand apart from their parts: ``The neckline is 20 in. Cut the band at 80%: 16 in.``

For each length that words call a result, the numbers near it are put together in every way that the words around them
name (a percentage, a share, a doubling, parts taken off, counts). If one of these ways makes the result, it is right.
If none does and one of them comes close, as a slip would, the result is wrong. Else nobody can tell, and nothing is
said.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from sitegen.prose.arithmetic.agree import agrees
from sitegen.prose.arithmetic.slack import loses_seams
from sitegen.prose.arithmetic.symbols import Item
from sitegen.prose.arithmetic.terms import Said
from sitegen.prose.arithmetic.ties import tie_of
from sitegen.prose.arithmetic.ways_of import Scope, Way, ways_in
from sitegen.quantities import System, Unit

_SENTENCES = 4
"""How many sentences before the result's own may hold its parts."""
_ITEMS = 36
_TOLD = frozenset("=qcuv:")
_MADE = frozenset("q")
_SURE = frozenset("=k:qcv(")
_NEAR = {
    "percent": Fraction(1, 4), "share": Fraction(1, 4), "doubling": Fraction(1, 3), "halving": Fraction(1, 4),
    "product": Fraction(7, 20), "division": Fraction(1, 3), "sum": Fraction(3, 20), "difference": Fraction(1, 5),
}  # fmt: skip
"""How far a wrong result may lie from the right one: of the right one; for differences, of the greater part."""
_LEAST_NEAR = Fraction(13)
"""Millimetres: half an inch is near, whatever the share; but never more than half of a small result."""
_PERCENT_NEAR = Fraction(7, 10)
"""The same for a percentage whose result words like ``so`` and ``makes`` tie."""
_NO_RESULT = re.compile(
    r"\b(?:the|those|these|that)$|\bstays? at$|\bselv[ae]d?ges? to selv[ae]d?ges? ?,?$"
    r"|\ball but$|\b(?:if|unless) (?:[a-z]+ ){0,4}(?:is|are|measures)$|\bevery$"
    r"|\. (?:over|under)lap (?!is|of)[a-z ]*$"
    r"|\bnow (?:i |we )?(?:use|draw|sew|do|prefer)\b[a-z ]*$"
)
_UNKNOWN = re.compile(r"[+\-A]_?X[^L.\n]*$")
"""Something is added of which nobody knows here how much it is: ``plus a seam on both sides``."""
_ALLOWED_BEHIND = re.compile(r"_L_?S")
"""What was allowed in it is told behind it: ``cut at 6 in with 5/8 in at each end``."""
_NEAR_ITEMS = 12
_JOINED = re.compile(r"\b(?:join\w*|seamed|sewn?|stitch\w*|overlap\w*)\b.*\b(?:with|by)\b")
"""Pieces that are joined are shorter together than each by itself."""
_PLACED = re.compile(r"\b(?:below|above)\b")
"""Places, ``8 cm below the waist``, are seldom added."""
_WEAKER = Fraction(4, 5)


@dataclass(frozen=True, slots=True)
class Related:
    """A wrong result: its item, and the way that comes closest to it."""

    index: int
    item: Item
    way: Way


def related_results(
    items: Sequence[Item], symbols: str, said: Said, settled: frozenset[int], parts: frozenset[int]
) -> Iterator[Related]:
    """Every wrong result that is not settled by a form already, in no order. ``parts`` are the parts of those forms.

    Results whose parts stand before them come first: what is a part or a result there is not tried as a result whose
    parts come later.
    """
    known = {items[at].value for at in parts}
    candidates = [
        at for at, symbol in enumerate(symbols) if symbol == "L" and at not in parts and items[at].value not in known
    ]
    done, used, results = set(settled), set(settled), set(settled)
    wrong: dict[int, Related] = {}
    for order in ("before", "behind"):
        for at in candidates:
            tie = None if at in done else tie_of(symbols, at)
            if (
                tie is None
                or _UNKNOWN.search(symbols[max(0, at - _NEAR_ITEMS) : at])
                or _makes_the_next(items, symbols, at)
                or _only_supposed(items, said, at)
                or _ALLOWED_BEHIND.match(symbols, at + 1)
            ):
                continue
            if order == "behind" and (at in used or not _leads(symbols, at, tie) or _is_named_first(items, at, said)):
                continue
            for start, end in _scopes(symbols, at, order):
                around = range(start, end)
                if order == "behind" and not settled.isdisjoint(around):
                    continue
                scope = Scope(start, end, at, tie, frozenset(results.intersection(around)))
                verdict = _judge(items, symbols, at, scope, said)
                if verdict is None:
                    continue
                right = _makes(verdict, items[at], items[at].written)
                if order == "behind" and not right and _is_made_of_a_result(items, symbols, around, verdict, said):
                    continue
                done.add(at)
                if verdict.named:
                    used.update(other for other in around if symbols[other] == "L")
                    used.add(at)
                if verdict.named and right:
                    results.add(at)
                if not right:
                    wrong[at] = Related(at, items[at], verdict)
                if (right and verdict.named) or _TOLD & set(tie):
                    near = [
                        other for other in range(max(0, at - _ITEMS), at + _ITEMS) if other in wrong and other != at
                    ]
                    for part in [other for other in near if _is_part(said(items[other]), verdict)]:
                        if right or not _TOLD & set(tie_of(symbols, part) or ""):
                            del wrong[part]  # what another result is made of is no wrong result
                break
    known = {items[at].value for at in results}
    yield from (each for each in wrong.values() if each.item.value not in known)


def _is_named_first(items: Sequence[Item], at: int, said: Said) -> bool:
    """Whether a length is only named, to be told again or finished: its parts do not stand behind it."""
    again = any(item.symbol == "L" and item.value == items[at].value for item in items[at + 1 : at + _ITEMS])
    return again or any(said(item).lower().startswith("finish") for item in items[max(0, at - 3) : at])


def _is_part(said: str, way: Way) -> bool:
    return re.search(rf"(?<![\w/.]){re.escape(said)}(?![\w/])", way.words) is not None


def _is_made_of_a_result(items: Sequence[Item], symbols: str, around: range, way: Way, said: Said) -> bool:
    """Whether one of the parts that follow is a result itself: ``95 cm finished. Add 2 cm, so cut it 98 cm``."""
    results = (at for at in around if symbols[at] == "L" and not _MADE.isdisjoint(tie_of(symbols, at) or ""))
    return any(_is_part(said(items[at]), way) for at in results)


def _judge(items: Sequence[Item], symbols: str, at: int, scope: Scope, said: Said) -> Way | None:
    """The way that makes the result, or else the named way that comes close to it."""
    result = items[at]
    written = result.written
    named: list[Way] = []
    excuse: Way | None = None
    for way in ways_in(items, symbols, scope, said):
        if way.named:
            named.append(way)
        if (way.named or excuse is None) and _makes(way, result, written):
            if way.named:
                return way
            excuse = way
    if excuse is not None:
        return excuse
    sure = any(symbol in _SURE for symbol in scope.tie) or any(symbol in "cv" for symbol in symbols[at + 1 : at + 4])
    said_already = {
        items[other].value for other in range(scope.start, scope.end) if symbols[other] == "L" and other != at
    }
    allowance = re.match(r"_?[ap]", symbols[at + 1 : at + 3]) is not None
    last = symbols.rfind("L", scope.start, at)
    apart = last >= 0 and "." in symbols[last:at]
    weak = apart and set("=qcuv:(").isdisjoint(scope.tie)
    text, behind = _words(items, scope.start, at, said), _words(items, at, scope.end, said)
    close = [
        way
        for way in named
        if not (weak and way.kind == "product" and abs(way.value - result.value) * 6 > way.value)
        and not (way.kind == "sum" and set("=qcv:(").isdisjoint(scope.tie) and _PLACED.search(text))
        and not (way.kind == "product" and (_JOINED.search(text) or loses_seams(text)))
        and not (way.kind == "sum" and scope.start > at and _JOINED.search(behind))
        and not (result.hedged and way.kind in ("sum", "difference", "product", "division"))
        and _close(way, result, sure, scope.tie)
        and way.value not in said_already
        and not (allowance and way.kind in ("sum", "difference", "division"))
    ]
    return min(close, key=lambda way: abs(way.value - result.value), default=None)


def _words(items: Sequence[Item], first: int, behind: int, said: Said) -> str:
    return " ".join(said(item) for item in items[first:behind]).lower()


def _scopes(symbols: str, index: int, order: str) -> list[tuple[int, int]]:
    """Where the parts may stand: in the sentences before the result; or behind it, or around it."""
    first = max(0, index - _ITEMS)
    before = symbols[first:index].rpartition("\n")[2]
    sentences = before.rsplit(".", _SENTENCES)
    start = index - len(before) + (len(sentences[0]) + 1 if len(sentences) > _SENTENCES else 0)
    if order == "before":
        return [(start, index)]
    behind = symbols[index + 1 : index + _ITEMS].partition("\n")[0]
    end = index + 1 + len(".".join(behind.split(".", 2)[:2]))
    return [(index + 1, end), (start, end)]


def _only_supposed(items: Sequence[Item], said: Said, at: int) -> bool:
    """Whether a length is no result by the words beside it: ``every 3 in``, ``if the hem is 4 in or deeper``."""
    before = " ".join(said(item) for item in items[max(0, at - 4) : at]).lower()
    behind = said(items[at + 1]).lower() if at + 1 < len(items) else ""
    return _NO_RESULT.search(before) is not None or behind.startswith(("or ", "is not", "isn't"))


def _makes_the_next(items: Sequence[Item], symbols: str, index: int) -> bool:
    """Whether a count before a length makes the next one of it: ``two pieces, 34 cm each, use 68 cm``."""
    following = symbols.find("L", index + 1, index + 10)
    counts = [items[at].value for at in range(max(0, index - 6), index) if symbols[at] == "N"]
    return following > 0 and any(count * items[index].value == items[following].value for count in counts)


def _leads(symbols: str, index: int, tie: str) -> bool:
    """Whether the words let the parts of a result follow it: ``Cut it 17 in long:``, or in the next sentence."""
    gap = symbols[index + 1 : index + 10].partition("L")[0]
    if ":" in gap[:3] or "c" in tie:
        return True
    reasons = bool(set("qAr") & set(gap))
    told = bool(set("u=ce:kv") & set(tie)) or "v" in gap[:2]
    return (told and ("." in gap or "(" in gap or reasons)) or ("r" in gap and "T" in tie)


def _makes(way: Way, result: Item, written: Sequence[tuple[Fraction, Unit]]) -> bool:
    """Whether a way makes a result, in one of the units in which it is written."""
    hedged = way.hedged or result.hedged
    return any(agrees(value, unit, (way.value,), way.exactness, hedged=hedged) for value, unit in written)


def _close(way: Way, result: Item, sure: bool, tie: str) -> bool:
    apart = abs(way.value - result.value)
    base = way.greatest if way.kind == "difference" else way.value
    metric = result.unit is not None and result.unit.system is System.CENTIMETRES
    if way.kind != "division" and sure and metric and result.value in (way.value * 10, way.value / 10):
        return True
    if way.kind == "percent" and (tie.endswith("T") or set("q=k") & set(tie)):
        return apart <= way.value * _PERCENT_NEAR
    if way.kind == "difference" and not way.value <= 3 * result.value <= 9 * way.value:
        return False
    near = max(base * _NEAR[way.kind] * (1 if sure else _WEAKER), min(_LEAST_NEAR, way.value / 2))
    return apart <= near
