"""Two numbers that are the ends of one range: ``1/4 to 3/8 in``, ``between 1/4 and 3/8 in``, ``1/4- to 3/8-in.``"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import takewhile

from sitegen.prose.find.measured import Measured, between, word_at
from sitegen.prose.find.numbers import Form
from sitegen.prose.find.tokens import TokenKind, Tokens
from sitegen.prose.measurement import Kind
from sitegen.prose.words import words
from sitegen.quantities import Unit

_TOUCHING_DASHES = frozenset(("-", "‐", "‑", "–", "—"))
_ADDING = words("add adds adding added sew sewing attach join stitch pin baste compare next close")
_SETTINGS = frozenset(("length", "width"))
"""``Stitch length 3 to 4 mm`` stitches nothing to anything."""
_MOVING = words(
    "lengthen shorten increase decrease change changes changed go goes went grow grows widen narrow"
    " reduce reduced taper tapers tapering going lengthened shortened widened shrink shrinks shrank drops drop"
    " rises raise raised lower lowered brings bring take takes took stretch stretches stretched"
)
_HAS = words("take takes took")
_MAKING_SMALLER = words(
    "gather gathers gathered trim trims trimmed trimming pull pulls pulled pulling draw draws drew drawn grade"
    " grades graded grading cinch cinches cinched shirr shirrs shirred pleat pleats pleated squeeze"
    " squeezes squeezed eases eased easing steam steams steamed"
)
"""Verbs of which what is named behind them goes from a greater length to a smaller one: ``trim 5/8 in to 1/4 in``."""
_BEFORE_CHOICE = words("of every by to at with about within")
_BEFORE_EASE = words(". , ; : and then to you we i gently") | frozenset(("\n", ""))
"""What may stand before ``ease`` where it is a verb."""
_CHOICE = words(
    "vary varies varying runs run anything fits fit suits suit suitable any wide widths sizes anywhere graded range"
    " ranges ranging depending somewhere between either"
)
"""Words that say that a range is a choice, and not a way from one length to another."""


_STOPS = words(", . ; : ! ?")
_SENTENCE_ENDS = words(". ; : ! ?") | frozenset("\n")
_ARE = words("are is be measures measure")
_LEAVES = words("leave leaves leaving allow allows keep pick add choose need needs want generous plenty use make")
_CHOSEN = words("hem hems allowance allowances seam seams ease overlap turning turnings border borders margin")
"""What is chosen from a range: ``leave a generous hem, from 3 in to 4 in``."""
_WIDEST, _FAR = 8, 6
"""How many times as long as its low end a range is at most, and words before a wider one that may tell of adding."""
_HALVING = words("fold folds folded folding half")
_ENDS_OF_SUMS = (["="], ["+"], ["equals"], ["leaves"], ["altogether"])
_TOTALS = (["in", "all"], ["in", "total"], ["all", "told"])
"""What stands behind a total, and not behind the end of a range: ``heading 5 cm, hem 15 cm – 160 cm in all``."""


def with_ranges(tokens: Tokens, found: Sequence[Measured]) -> list[Measured]:
    """The numbers, those that are two ends of one range put together."""
    joined: list[Measured] = []
    index = 0
    while index < len(found):
        one = found[index]
        both = _range(tokens, one, found[index + 1]) if index + 1 < len(found) else None
        joined.append(both or one)
        index += 2 if both else 1
    return joined


def _range(tokens: Tokens, one: Measured, other: Measured) -> Measured | None:
    link = between(tokens, one, other)
    in_half = one.first > 0 and tokens.words[one.first - 1] == "in"
    if in_half and one.kind is None and one.behind - one.first == 1 and one.spoken and one.form is Form.FRACTION:
        return None  # “pressed in half to 4 cm”
    if one.spoken and one.value == 1 and not other.spoken:
        return None  # “trim the inner one to 6 mm”
    if not _links_range(tokens, one, other, link):
        return None
    one = _in_the_unit_of(tokens, one, other)
    kind, unit = other.kind or one.kind, other.unit or one.unit
    if kind is None:
        kind = Kind.RATIO if _shares(tokens, one, other) else None
        if (
            kind is None
            and one.form is other.form is Form.FRACTION
            and ({one.value.denominator, other.value.denominator} & {8, 16} or _from_an_edge(tokens, other))
        ):
            kind, unit = Kind.LENGTH, Unit.IN  # only a ruler has eighths, and only a length is away from an edge
    if kind is None or (one.kind is not None and other.kind is not None and (one.kind, one.unit) != (kind, unit)):
        return None
    between_them = link == ("and",) and other.form is Form.FRACTION
    if (
        other.kind is None
        and kind is not Kind.RATIO
        and not between_them
        and (other.form is Form.WHOLE or one.form is Form.WHOLE)
    ):
        return None
    low, high = sorted((one.value, other.value))
    if low == high or (one.value > other.value and not _said_wrong_way(tokens, one, other, link)):
        return None
    return replace(
        other, first=one.first, value=low, high=high, kind=kind, unit=unit, wrong_way=one.value > other.value,
        counted=one.counted, spoken=one.spoken or other.spoken,
        decimals=max((places for places in (one.decimals, other.decimals) if places is not None), default=None),
    )  # fmt: skip


def _in_the_unit_of(tokens: Tokens, one: Measured, other: Measured) -> Measured:
    """The first end of a range in the unit of the last, where a bracket holds no more than both: ``(6 mm to 1 cm)``."""
    metric = {one.unit, other.unit} == {Unit.MM, Unit.CM}
    alone = tokens.words[one.first - 1 : one.first] in (["("], ["["]) and tokens.words[
        other.behind : other.behind + 1
    ] in ([")"], ["]"])
    if not (metric and alone) or one.unit is None or other.unit is None:
        return one
    return replace(one, value=one.value * one.unit.mm / other.unit.mm, unit=other.unit, decimals=None)


def _from_an_edge(tokens: Tokens, one: Measured) -> bool:
    """Whether the number tells how far something lies from something else."""
    behind = tokens.words[one.behind : one.behind + 2]
    return behind == ["away", "from"] or behind[:1] == ["from"]


def _shares(tokens: Tokens, one: Measured, other: Measured) -> bool:
    """Whether two fractions are shares of something: ``2/3 to 3/4 of the opening``."""
    both = one.form is other.form is Form.FRACTION
    return both and other.behind < len(tokens) and tokens.words[other.behind] == "of"


def _links_range(tokens: Tokens, one: Measured, other: Measured, link: tuple[str, ...]) -> bool:
    before = tuple(tokens.words[max(0, one.first - 8) : one.first])
    if link in (("to",), ("-", "to"), ("up", "to")):
        near = before[-3:]
        depends = "depending" in tokens.words[other.behind : other.behind + 8]
        if one.kind is other.kind is Kind.LENGTH and other.value > _WIDEST * one.value:
            near = before[-_FAR:]  # “add two seams of 1/4 in to 12 1/2 in”
        by = near[-1:] == ("by",) and one.kind is not None and not depends
        adds = any(word in _ADDING for word in near) and near[-1:] != ("every",) and _SETTINGS.isdisjoint(near)
        if by or adds:
            return False
        moves = any(word in _MOVING for word in before) and not any(word in _CHOICE for word in before)
        return not ("from" in near and one.kind is not None and moves)
    if link == ("/",):
        return one.kind is None and one.form is other.form is Form.WHOLE and other.kind is Kind.LENGTH
    if link == ("and",) or link == ("-", "and"):
        return (bool(before) and before[-1] == "between") or before[-2:] in (("between", "about"),)
    if len(link) == 1 and link[0] in _TOUCHING_DASHES:
        dash = tokens.words[one.behind]
        touching = tokens.touch(one.behind) and tokens.touch(other.first)
        behind = tokens.words[other.behind : other.behind + 2]
        ends_sum = behind[:1] in _ENDS_OF_SUMS or (one.kind is not None and behind in _TOTALS)
        offered = bool(_CHOICE & set(before)) and one.kind is not None
        if _is_in_a_row(tokens, one.first - 1, dash) or _is_in_a_row(tokens, other.behind, dash):
            return False  # “88 – 92 – 96 cm”, a size each
        mixed = one.form is other.form is Form.MIXED and one.value < other.value and one.kind in (None, other.kind)
        return (touching or (one.value < other.value and dash != "-") or offered or mixed) and not ends_sum
    return False


def _is_in_a_row(tokens: Tokens, at: int, dash: str) -> bool:
    """Whether this is the same dash, between two numbers too."""
    beside = tokens.kinds[max(0, at - 1) : at] + tokens.kinds[at + 1 : at + 2]
    return at > 0 and tokens.words[at : at + 1] == [dash] and beside == [TokenKind.NUMBER, TokenKind.NUMBER]


def _leads_to_a_choice(before: Sequence[str]) -> bool:
    """Whether nothing moves ``from`` one length to another, but one is to be chosen."""
    chosen = before[-1:] == [","] and not _CHOSEN.isdisjoint(before[-2:-1]) and not _LEAVES.isdisjoint(before)
    return chosen or not _ARE.isdisjoint(before[-1:])


def _said_wrong_way(tokens: Tokens, one: Measured, other: Measured, link: tuple[str, ...]) -> bool:
    """Whether the greater end first is a slip: not where something goes down from one length to another."""
    if link not in (("to",), ("-", "to")) and link[0] not in _TOUCHING_DASHES:
        return link in (("and",), ("up", "to"))
    before = tokens.words[max(0, one.first - 10) : one.first]
    if "ratio" in before or "ratio" in tokens.words[other.behind : other.behind + _FAR]:
        return False  # “the ratio of ruffle to edge is 2:1, 40" to 20"”
    if ";" in before:
        before = before[len(before) - before[::-1].index(";") :]
    within, behind = tokens.words[one.first : other.behind], tokens.words[other.behind : other.behind + 4]
    if {*before, *within, *behind} & _CHOICE or link[0] in _TOUCHING_DASHES:
        return True
    words = {*before, *within, *takewhile(lambda word: word not in _STOPS, behind)}
    down = "down" in words and tokens.words[max(0, one.first - 2) : one.first] != ["down", "to"]
    if before[-1:] == ["of"] and (before[-3:-2] in (["a"], ["an"]) or "".join(before[-2:-1]).endswith("s")):
        words -= _HAS  # “straight skirts take a hem of 2 in to 3 in”
    moves = words & _MOVING and ("from" in before[-3:] or not words & _MOVING <= {"go", "going"})
    halved = one.value == 2 * other.value and not _HALVING.isdisjoint([*before, *within])
    if moves or down or halved or _is_made_smaller(tokens, one):
        return False
    if "from" in tokens.words[max(0, one.first - 10) : one.first]:
        return before[-1:] == ["from"] and _leads_to_a_choice(before[:-1])
    return True


def _is_made_smaller(tokens: Tokens, one: Measured) -> bool:
    """Whether a verb before the range tells that the first length becomes the last: ``ease 14 in to 13 in``."""
    first = max(0, one.first - _FAR)
    before = tokens.words[first : one.first]
    if not _BEFORE_CHOICE.isdisjoint(before[-1:]):
        return False  # “gather a strip of 4 in to 3 in”, “trim it back by 5 to 3 mm”
    for at in range(len(before) - 1, -1, -1):
        if before[at] in _SENTENCE_ENDS:
            return False
        eases = before[at] == "ease" and word_at(tokens, first + at - 1) in _BEFORE_EASE
        if eases or before[at] in _MAKING_SMALLER:
            return True
    return False
