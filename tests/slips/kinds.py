"""The slips themselves: for each sort of value the texts that a hand, an eye or a hurried head makes of it."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from fractions import Fraction
from itertools import pairwise

from slips.fields import MINUTES, Sort
from slips.find import Measure, Role, Span, Value
from slips.names import Known
from slips.numbers import UNIT, number, other_units, slips_of_number, written
from slips.slip import Pick, Slip, slip

PAIR, SUM, TERM = "one side of a pair", "number in a written sum", "term of a written sum left out or doubled"
RATIO, RATIO_DIGITS = "ratio 5 points off", "ratio with other digits"
SHIFTED, SWAPPED, MISSING = "sizes shifted by one", "neighbouring sizes swapped", "size left out"
ONE_DROPPED, ONE_DOUBLED = "allowance dropped", "allowance doubled"
WRONG_COUNT, HEM_FORGOTTEN = "wrong number of allowances", "hem forgotten or taken twice"
REPLACED, MISSPELT, LEFT_OUT = "name replaced by another", "name misspelt", "name left out"
OPENING, HEM_EDGE = "band opening without one edge", "hem without one edge"
OTHER_NUMBER, REFERENCE = "reference to another number", "reference misspelt"
STITCH_LINE, NEEDLE_GAP, SEAM = "stitch line moved", "needle gap", "allowance of a seam"
STITCH, SETTING, NEEDLE = "stitch that does not stretch", "stitch setting", "size of a needle"
CUT, COUNT, NOTCH, TIME = "how many to cut", "count", "notch single or double", "minutes"
ORDER_OF_SIZES, ORDER_OF_STEPS = "order of sizes", "two steps swapped"
CHOICE = "other word of two"

_SIZES_TAKEN = 2
"""How many sizes of a list slip in each way; ``every`` takes all."""
_OWN_KIND = {"stitch_line": STITCH_LINE, "needle_gap": NEEDLE_GAP}
_CUT = {
    "1 on fold": ("1", "2", "2 on fold"), "2 on fold": ("1 on fold", "2"), "2 mirrored": ("2", "1"), "1": ("2",),
    "2": ("1", "2 mirrored"), "4": ("2", "1"),
}  # fmt: skip
_WORDS = {
    "measured_on": ("seam line", "cut edge"),
    "structure": ("knit", "woven"),
    "measured_in": ("inches", "centimetres"),
    "goes_over": ("head", "hand"),
}
_CUT_NUMBERS = ("cut_length", "cut_width", "length", "width", "new_cut_length")
_FINISHED_NUMBERS = ("finished_length", "finished_width", "joined_length", "new_finished_length")


def slips_of(value: Value, known: Known, pick: Pick) -> Iterator[Slip]:
    """Every slip that this value can have."""
    yield from _BY_SORT[value.field.sort](value, known, pick)


def order_of_steps(home: str, steps: tuple[str, ...]) -> Iterator[Slip]:
    """Neighbouring step files with their numbers swapped."""
    for first, second in pairwise(steps):
        ahead, behind = (name.partition("-") for name in (first, second))
        renamed = ((first, f"{behind[0]}-{ahead[2]}"), (second, f"{ahead[0]}-{behind[2]}"))
        file = f"{home}/steps/{first}"
        yield Slip(ORDER_OF_STEPS, "order of steps", file, "", first, second, frozenset(), renamed=renamed)


def columns_of_table(rows: tuple[Value, ...], pick: Pick) -> Iterator[Slip]:
    """Two neighbouring columns of a size table with all their values swapped, the headings left where they are."""
    rows = tuple(row for row in rows if row.measures)
    if not rows:
        return
    for index in pick.some(range(len(rows[0].measures) - 1), _SIZES_TAKEN, rows[0].file, "columns"):
        pairs = [(row.measures[index].number, row.measures[index + 1].number) for row in rows]
        changes = [(span, new) for one, two in pairs for span, new in ((one, two.text), (two, one.text))]
        yield _together(SWAPPED, rows[0], changes)


# -- lengths ----------------------------------------------------------------------------------------------


def _lengths(value: Value, known: Known, pick: Pick) -> Iterator[Slip]:
    yield from _references(value, known, pick)
    for measure in pick.some(value.measures, _SIZES_TAKEN, value.file, value.path):
        yield from _measure(value, measure, pick)
    for measure in value.measures:
        yield from _units(value, measure)
    yield from _columns(value, pick)
    yield from _allowances(value, known)


def _measure(value: Value, measure: Measure, pick: Pick) -> Iterator[Slip]:
    """One slip of each kind in a single number."""
    by_kind: dict[str, list[str]] = {}
    for kind, slipped in slips_of_number(measure.number.text, measure.unit_name):
        by_kind.setdefault(kind, []).append(slipped)
    own = _own_kind(value, measure)
    for kind, texts in by_kind.items():
        for slipped in pick.some(texts, 1, value.file, value.path, measure.number.start, kind):
            yield slip(own or kind, value, (measure.number, slipped))


def _own_kind(value: Value, measure: Measure) -> str:
    """The kind under which all slips of a number are counted, because of what or where it is."""
    if measure.role is Role.PAIR:
        return PAIR
    if measure.role is Role.SUM:
        return SUM
    keys = value.path.split(".")
    if "join" in keys and keys[-1] == "seam_allowance":
        return SEAM
    return _OWN_KIND.get(keys[-1], "")


def _units(value: Value, measure: Measure) -> Iterator[Slip]:
    if measure.unit is not None:
        for other in other_units(measure.unit.text):
            yield slip(_own_kind(value, measure) or UNIT, value, (measure.unit, other))


def _columns(value: Value, pick: Pick) -> Iterator[Slip]:
    """Values that stand under another size than theirs."""
    cells = [measure.number for measure in value.measures]
    numbers = [number(cell.text) for cell in cells]
    exact = [each for each in numbers if each is not None]
    if len(cells) < 3 or len(exact) != len(cells) or len(set(exact)) == 1:
        return
    unit = value.measures[0].unit_name
    beyond = exact[-1] * 2 - exact[-2]
    ahead = exact[0] * 2 - exact[1]
    late = [*(cell.text for cell in cells[1:]), written(beyond, cells[-1].text, unit)]
    early = [written(ahead, cells[0].text, unit), *(cell.text for cell in cells[:-1])]
    for moved in (late, early):
        yield _together(SHIFTED, value, list(zip(cells, moved, strict=True)))
    pairs = [(one, two) for one, two in pairwise(cells) if one.text != two.text]
    for one, two in pick.some(pairs, _SIZES_TAKEN, value.path, "swapped"):
        yield slip(SWAPPED, value, (one, two.text), (two, one.text))
    for index in pick.some(range(len(cells) - 1), 1, value.path, "missing"):
        cell = cells[index]
        gap = cell if value.cells or value.keyed else Span(cell.text, cell.start, cells[index + 1].start, cell.line)
        yield slip(MISSING, value, (gap, ""))


def _together(kind: str, value: Value, changes: list[tuple[Span, str]]) -> Slip:
    return slip(kind, value, *((span, new) for span, new in changes if span.text != new))


def _allowances(value: Value, known: Known) -> Iterator[Slip]:
    """The whole value with an allowance too few or too many, as when a sum was begun or ended wrong."""
    keys = value.path.split(".")
    edge = value.field.group == "edge of a piece"
    size = value.field.group in ("claim", "size of a piece") and keys[-1] in _CUT_NUMBERS + _FINISHED_NUMBERS
    if not value.measures or not (edge or size):
        return
    unit = value.measures[0].unit_name
    part = keys[0] if value.cells else keys[1]
    one = known.allowance(part, unit)
    if one is None:
        return
    finished = keys[-1] in _FINISHED_NUMBERS or "finished" in keys
    sign = 1 if finished or edge else -1
    per_end = 2 if edge else 1
    kinds = [(ONE_DROPPED, sign * per_end), (ONE_DOUBLED, -sign * per_end)]
    if not edge:
        kinds += [(WRONG_COUNT, 2), (WRONG_COUNT, -2)]
    yield from (found for kind, count in kinds if (found := _all_by(kind, value, one * count, unit)))
    hem = known.hem_of(part, unit) if keys[-1].endswith("length") and keys[0] == "pieces" else None
    if hem is not None:
        yield from (found for apart in (hem, -hem) if (found := _all_by(HEM_FORGOTTEN, value, apart, unit)))


def _all_by(kind: str, value: Value, apart: Fraction, unit: str) -> Slip | None:
    changes = []
    for measure in value.measures:
        exact = number(measure.number.text)
        if exact is None or exact + apart <= 0:
            return None
        changes.append((measure.number, written(exact + apart, measure.number.text, unit)))
    return _together(kind, value, changes)


def _line(value: Value, known: Known, pick: Pick) -> Iterator[Slip]:
    """Where a piece is cut across, or the length that is wanted, with the word behind it."""
    for measure in value.measures:
        yield from _measure(value, measure, pick)
        yield from _units(value, measure)
    for word, other in (("top", "bottom"), ("bottom", "top"), ("finished", "cut")):
        if value.whole.text.endswith(word):
            yield slip(CHOICE, value, (_tail(value.whole, len(word)), other))


def _tail(span: Span, size: int) -> Span:
    return Span(span.text[-size:], span.end - size, span.end, span.line)


# -- ratios, counts, words --------------------------------------------------------------------------------


def _share(value: Value, known: Known, pick: Pick) -> Iterator[Slip]:
    for measure in value.measures:
        exact = number(measure.number.text)
        if exact is None:
            continue
        for apart in (5, -5):
            if exact + apart > 0:
                yield slip(RATIO, value, (measure.number, written(exact + apart, measure.number.text, "%")))
        text = measure.number.text
        others = [text[::-1]] if len(text) == 2 and text[1] not in ("0", text[0]) else [f"{text}0", text.rstrip("0")]
        for other in others:
            if other and other != text:
                yield slip(RATIO_DIGITS, value, (measure.number, other))


def _count(value: Value, known: Known, pick: Pick) -> Iterator[Slip]:
    text = value.whole.text
    head = re.match(r"\d+(?:\.\d+)?", text)
    if head is None:
        return
    front = Span(head.group(), value.whole.start, value.whole.start + head.end(), value.whole.line)
    if value.field.group == MINUTES:
        yield from (slip(TIME, value, (front, other)) for other in (str(int(text) + 5), text[::-1]))
    elif "stitch" in value.path.rpartition(".")[2]:
        others = [other for _, other in slips_of_number(front.text, "mm")]
        yield from (slip(SETTING, value, (front, other)) for other in pick.some(others, 3, value.file, value.path))
    else:
        others = [str(int(front.text) + apart) for apart in (1, -1)] if front.text.isdigit() else []
        others += [other for _, other in slips_of_number(front.text, "")] if not others else []
        yield from (slip(COUNT, value, (front, other)) for other in others if other != "0")


def _word(value: Value, known: Known, pick: Pick) -> Iterator[Slip]:
    text, key = value.whole.text, value.path.rpartition(".")[2]
    found: list[tuple[str, str]] = []
    if key == "stitch":
        found += [(STITCH, "straight")] if known.any_knit else []
        found += [(MISSPELT, _misspelt(text))]
    elif key == "cut":
        found += [(CUT, other) for other in _CUT.get(text, ())]
    elif key == "turn":
        degrees, _, way = text.partition(" ")
        found += [(CHOICE, f"{degrees} {'outward' if way == 'inward' else 'inward'}")]
        found += [(COUNT, f"{int(degrees) * 2} {way}")]
    elif key == "needle":
        size, _, other = text.partition("/")
        swapped = _needle_swapped(size)
        found += [(NEEDLE, f"{new}/{other}") for new in swapped] + [(NEEDLE, f"{size}/{int(other) + 1}")]
    elif value.field.group == "notches":
        found += [(NOTCH, "double" if text == "single" else "single")]
    elif key in _WORDS:
        found += [(CHOICE, other) for other in _WORDS[key] if other != text]
    yield from (slip(kind, value, (value.whole, other)) for kind, other in found if other != text)


def _needle_swapped(size: str) -> list[str]:
    whole, point, part = size.partition(".")
    if point:
        return [f"{other}.{part}" for other in ("2", "3") if other != whole]
    return [other for other in (size[::-1], str(int(size) + 5)) if not other.startswith("0")]


# -- names ------------------------------------------------------------------------------------------------


def _names(value: Value, known: Known, pick: Pick) -> Iterator[Slip]:
    for name in value.names:
        others = known.others(name.text, value.field.names, value.path)
        for other in pick.some(others, 2, value.path, name.start):
            yield slip(REPLACED, value, (name, other))
    for name in pick.some(value.names, 1, value.path, "misspelt"):
        yield slip(MISSPELT, value, (name, _misspelt(name.text)))
    if len(value.names) > 1:
        keys = value.path.split(".")
        kind = OPENING if keys[-1] == "opening" else HEM_EDGE if keys[0] == "hems" else LEFT_OUT
        for index in pick.some(range(len(value.names)), 2, value.path, "left out"):
            yield slip(kind, value, (_with_its_comma(value.names, index), ""))


def _with_its_comma(names: tuple[Span, ...], index: int) -> Span:
    """A name with what parts it from its neighbour."""
    name = names[index]
    if index + 1 < len(names):
        return Span(name.text, name.start, names[index + 1].start, name.line)
    return Span(name.text, names[index - 1].end, name.end, name.line)


def _misspelt(text: str) -> str:
    """The text without one of its inner letters, a double one first."""
    doubled = re.search(r"([a-z])\1", text)
    at = doubled.start() if doubled else len(text) - 2 if len(text) > 2 else 0
    return text[:at] + text[at + 1 :] if len(text) > 1 else f"{text}{text}"


def _references(value: Value, known: Known, pick: Pick) -> Iterator[Slip]:
    """Numbers that stand in braces."""
    for name in value.names:
        if name.text == "size":
            continue
        for others in known.other_numbers(name.text):
            for other in pick.some(others, 1, value.path, name.start, len(others)):
                yield slip(OTHER_NUMBER, value, (name, other))
    for name in pick.some(value.names, 2, value.file, value.path, "misspelt"):
        yield slip(REFERENCE, value, (name, _misspelt(name.text)))


# -- texts and sizes --------------------------------------------------------------------------------------


def _prose(value: Value, known: Known, pick: Pick) -> Iterator[Slip]:
    for measure in value.measures:
        found = [*_measure(value, measure, pick), *_units(value, measure)]
        together = measure.role is not Role.ALONE
        yield from pick.some(found, 3 if together else len(found), value.file, value.path, measure.number.start)
        if measure.term is not None:
            text = measure.term.text
            other = pick.some(["", f" {text} {text}"], 1, value.file, value.path, measure.number.start, "term")
            yield from (slip(TERM, value, (measure.term, each)) for each in other)
    yield from _references(value, known, pick)


def _sizes(value: Value, known: Known, pick: Pick) -> Iterator[Slip]:
    pairs = list(pairwise(value.names))
    for one, two in pick.some(pairs, _SIZES_TAKEN, value.file, "sizes"):
        yield slip(ORDER_OF_SIZES, value, (one, two.text), (two, one.text))
    if len(value.names) > 1:
        yield slip(MISSING, value, (_with_its_comma(value.names, len(value.names) - 1), ""))


_BY_SORT: dict[Sort, Callable[[Value, Known, Pick], Iterator[Slip]]] = {
    Sort.LENGTHS: _lengths,
    Sort.SHARE: _share,
    Sort.COUNT: _count,
    Sort.NAME: _names,
    Sort.NAMES: _names,
    Sort.WORD: _word,
    Sort.SIZES: _sizes,
    Sort.LINE: _line,
    Sort.PROSE: _prose,
    Sort.NOTE: _prose,
}
