"""Every value of a tutorial that can slip, with its place in its file.

The files are read by the program's own reading room, so that only real values are found: no comment, no key, no text
that merely looks like a value.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from enum import Enum
from pathlib import Path

from slips.fields import (
    NAMES,
    NOTHING_TO_SLIP,
    OTHER,
    PLACES_ON_A_PICTURE,
    SIZES,
    STEP,
    TUTORIAL,
    Field,
    Sort,
    field_at,
    fits,
    row_field,
)

from sitegen.findings import Collector, Place
from sitegen.quantities import NUMBER_PATTERN
from sitegen.reading import ContentFolder, Mapping, Node, Scalar, Sequence, Table


@dataclass(frozen=True, slots=True)
class Span:
    """A stretch of a file: its text as a value, its offsets in the file, its line."""

    text: str
    start: int
    end: int
    line: int


class Role(Enum):
    """How a length stands among others."""

    ALONE = "alone"
    PAIR = "one side of a pair"
    SUM = "in a written sum"


@dataclass(frozen=True, slots=True)
class Measure:
    """A number with its unit. ``carried`` is the unit that holds for it when none stands behind it."""

    number: Span
    unit: Span | None
    carried: str
    role: Role
    term: Span | None = None
    """In a written sum the sign before it and itself, when it is not the first."""

    @property
    def unit_name(self) -> str:
        """The unit, wherever it stands."""
        return self.unit.text if self.unit else self.carried


@dataclass(frozen=True, slots=True)
class Value:
    """A value of a file, whole and in its parts."""

    file: str
    """Relative to the content folder."""
    path: str
    field: Field
    whole: Span
    measures: tuple[Measure, ...] = ()
    names: tuple[Span, ...] = ()
    """The names of a list or chain, the references of a text, or the sizes."""
    cells: bool = False
    """Whether the measures are cells of the size table."""
    keyed: bool = False
    """Whether each measure stands behind the name of its size."""

    @property
    def number_name(self) -> str:
        """The name of the number in the program, ``neckband.cut_length``, if it is one."""
        return self.path if self.cells or self.path.startswith("body.") else self.path.partition(".")[2]


_UNIT = r"(?:in|cm|mm|m|yd|%)(?![A-Za-z0-9/])"
_NOT_INCH = r"(?!in\s+(?:the|a|an|this|that|your|each|one|both|all)\b)"
_MEASURE = re.compile(rf"{NUMBER_PATTERN}(?:\s*{_NOT_INCH}(?P<unit>{_UNIT}))?")
_PROSE_MEASURE = re.compile(rf"(?<![\w{{./]){NUMBER_PATTERN}\s*{_NOT_INCH}(?P<unit>{_UNIT})")
_LENGTHS = re.compile(rf"[\d ./,]+{_UNIT}(?: \([^)]*\))?")
_REFERENCE = re.compile(r"(?<!\{)\{\s*([a-z][A-Za-z0-9_.]*)\s*\}")
_NAME = re.compile(r"[A-Za-z0-9_.]+")
_SUM_BEFORE = re.compile(r"\s*[+−×÷=]\s*$")
_SUM_BEHIND = re.compile(r"\s*[+−×÷=]\s*[\d{(]")
_PAIR_BEHIND = re.compile(r"\s*[(/]\s*$")
_NEEDLE = re.compile(r"(?<![\d/])\d{1,3}(?:\.\d)?/\d{2}(?![\d/]|\s*in\b)")
"""A size of a needle, 75/11 or 4.0/75."""
_COUNT = re.compile(r"(?<=\| )\d+(?= \|)|\A\d+(?=\Z| (?:spool|large|sheet|piece))")


def values(root: Path, tutorial: str) -> tuple[Value, ...]:
    """Every value of one tutorial that can slip, in the order of the files."""
    home = f"tutorials/{tutorial}"
    reader, collector = ContentFolder(root, "content"), Collector()
    found: list[Value] = []
    whole = reader.yaml(f"{home}/tutorial.yaml", collector)
    if whole is None:
        raise ValueError(f"{home}/tutorial.yaml cannot be read")
    unit = "cm" if _word(whole, "measured_in") == "centimetres" else "in"
    found += _of_yaml(root, f"{home}/tutorial.yaml", whole, TUTORIAL, unit, _sizes(whole))
    table = reader.csv(f"{home}/sizes.csv", collector) if reader.exists(f"{home}/sizes.csv") else None
    if table is not None:
        found += _of_table(root, f"{home}/sizes.csv", table, unit)
    for name in reader.list(f"{home}/steps", collector, suffixes=(".yaml",)):
        node = reader.yaml(f"{home}/steps/{name}", collector)
        if node is not None:
            found += _of_yaml(root, f"{home}/steps/{name}", node, STEP, unit, frozenset())
    return tuple(found)


def _sizes(whole: Mapping) -> frozenset[str]:
    """The names of the sizes, by which values may be keyed."""
    entry = whole.get("sizes")
    texts = (node.text for _, node in _nodes(entry.value, "sizes") if isinstance(node, Scalar)) if entry else ()
    return frozenset(texts)


def _word(node: Mapping, key: str) -> str:
    entry = node.get(key)
    return entry.value.text if entry is not None and isinstance(entry.value, Scalar) else ""


class _File:
    """Turns places of a file into offsets."""

    def __init__(self, root: Path, name: str) -> None:
        self.name = name
        self.text = (root / name).read_bytes().decode("utf-8")
        self._starts = [0, *(match.end() for match in re.finditer("\n", self.text))]

    def span(self, node: Scalar, start: int, end: int) -> Span:
        """A stretch of a text, which may run over the end of a line."""
        first, last = node.at(start, start + 1), node.at(end - 1, end)
        return Span(" ".join(node.text[start:end].split()), self._offset(first), self._offset(last) + 1, first.line)

    def _offset(self, place: Place) -> int:
        return self._starts[place.line - 1] + place.column - 1


def _nodes(node: Node, path: str) -> Iterator[tuple[str, Node]]:
    """Every node with the keys that lead to it."""
    if path:
        yield path, node
    inner: list[tuple[str, Node]] = []
    if isinstance(node, Mapping):
        inner = [(entry.key.text, entry.value) for entry in node.entries]
    elif isinstance(node, Sequence):
        inner = [(str(index), item) for index, item in enumerate(node.items)]
    for key, value in inner:
        yield from _nodes(value, f"{path}.{key}" if path else key)


def passed_over(root: Path, tutorial: str) -> tuple[str, ...]:
    """The places of texts with a digit that nothing here knows, so that a new key of the format is not forgotten."""
    home = f"tutorials/{tutorial}"
    reader, collector = ContentFolder(root, "content"), Collector()
    names = [f"{home}/steps/{name}" for name in reader.list(f"{home}/steps", collector, suffixes=(".yaml",))]
    whole = reader.yaml(f"{home}/tutorial.yaml", collector)
    sizes = _sizes(whole) if whole is not None else frozenset()
    found: list[str] = []
    for name, table in [(f"{home}/tutorial.yaml", TUTORIAL), *((name, STEP) for name in names)]:
        whole = reader.yaml(name, collector)
        for path, node in _nodes(whole, "") if whole is not None else ():
            digits = isinstance(node, Scalar) and any(char.isdigit() for char in node.text)
            if digits and path.rpartition(".")[2] not in sizes and not _is_known(path, node, table):
                found.append(path)
    return tuple(dict.fromkeys(found))


def _is_known(path: str, node: Node, table: tuple[tuple[str, Field], ...]) -> bool:
    upper = path.rpartition(".")[0]
    known = field_at(path, table) or _by_its_look(node) or (upper and field_at(upper, table))
    return bool(known) or any(fits(path, pattern) for pattern in (*NOTHING_TO_SLIP, *PLACES_ON_A_PICTURE))


def _of_yaml(
    root: Path, name: str, node: Mapping, table: tuple[tuple[str, Field], ...], unit: str, sizes: frozenset[str]
) -> Iterator[Value]:
    file = _File(root, name)
    for path, found in _nodes(node, ""):
        if path.rpartition(".")[2] in sizes or any(fits(path, place) for place in PLACES_ON_A_PICTURE):
            continue
        by_size = isinstance(found, Mapping) and bool(found.entries) and set(found.keys) <= sizes
        field = field_at(path, table) or _by_its_look(found) or (Field(Sort.LENGTHS, OTHER) if by_size else None)
        if field is not None and (by_size or not isinstance(found, Mapping)):
            yield from _value(file, path, found, field, unit)


def _by_its_look(node: Node) -> Field | None:
    """What a value of a key that the table does not have is taken for: lengths or a percentage, if it is nothing else."""
    if not isinstance(node, Scalar) or not _LENGTHS.fullmatch(node.text.strip()):
        return None
    return Field(Sort.SHARE if node.text.strip().endswith("%") else Sort.LENGTHS, OTHER)


def _texts(node: Node) -> tuple[Node, ...]:
    """The nodes of a list, those behind the sizes of a table, or the node itself."""
    if isinstance(node, Sequence):
        return node.items
    return tuple(entry.value for entry in node.entries) if isinstance(node, Mapping) else (node,)


def _value(file: _File, path: str, node: Node, field: Field, unit: str) -> Iterator[Value]:
    texts = _texts(node)
    scalars = [item for item in texts if isinstance(item, Scalar) and item.text.strip()]
    if not scalars:
        return
    first, last = file.span(scalars[0], 0, 1), file.span(scalars[-1], 0, len(scalars[-1].text.rstrip()))
    whole = Span(", ".join(scalar.text.strip() for scalar in scalars), first.start, last.end, first.line)
    measures: list[Measure] = []
    names: list[Span] = []
    for scalar in scalars:
        if field.sort in (Sort.LENGTHS, Sort.LINE, Sort.SHARE) and "{" not in scalar.text:
            measures += _measures(file, scalar, _MEASURE, unit)
        elif field.sort in (Sort.PROSE, Sort.NOTE):
            measures += _measures(file, scalar, _PROSE_MEASURE, "")
            names += [file.span(scalar, *match.span(1)) for match in _REFERENCE.finditer(scalar.text)]
        if field.sort in (Sort.NAME, Sort.NAMES, Sort.SIZES) or "{" in scalar.text[:1]:
            names += [file.span(scalar, *match.span()) for match in _NAME.finditer(scalar.text)]
        if field.sort in (Sort.PROSE, Sort.NOTE):
            yield from _other_numbers(file, path, scalar, field)
    if measures and field.sort is Sort.LENGTHS and not isinstance(node, Mapping):
        measures = _carried(measures)
    yield Value(file.name, path, field, whole, tuple(measures), tuple(names), keyed=isinstance(node, Mapping))


def _other_numbers(file: _File, path: str, scalar: Scalar, field: Field) -> Iterator[Value]:
    """Sizes of needles, and counts in a table or in front of what is bought."""
    for match in _NEEDLE.finditer(scalar.text):
        yield Value(file.name, f"{path}.needle", Field(Sort.WORD, field.group), file.span(scalar, *match.span()))
    for match in _COUNT.finditer(scalar.text):
        count = Field(Sort.COUNT, field.group if field.sort is Sort.NOTE else "how many to cut")
        yield Value(file.name, f"{path}.count", count, file.span(scalar, *match.span()))


def _measures(file: _File, scalar: Scalar, pattern: re.Pattern[str], unit: str) -> Iterator[Measure]:
    text = scalar.text
    matches = list(pattern.finditer(text))
    for index, match in enumerate(matches):
        start, end = match.span()
        unit_span = file.span(scalar, *match.span("unit")) if match.group("unit") else None
        number_end = len(text[: match.start("unit")].rstrip()) if unit_span else end
        following = matches[index + 1] if index + 1 < len(matches) else None
        before = matches[index - 1] if index else None
        paired = bool(following and _PAIR_BEHIND.fullmatch(text[end : following.start()])) or bool(
            before and _PAIR_BEHIND.fullmatch(text[before.end() : start])
        )
        sign = _SUM_BEFORE.search(text, max(0, start - 8), start)
        summed = bool(sign or _SUM_BEHIND.match(text, end))
        role = Role.PAIR if paired else Role.SUM if summed else Role.ALONE
        term = file.span(scalar, sign.start(), end) if sign and "=" not in sign.group() else None
        yield Measure(file.span(scalar, start, number_end), unit_span, unit, role, term)


def _carried(measures: list[Measure]) -> list[Measure]:
    """The unit behind the last length of a list holds for those before it."""
    unit = measures[-1].unit_name
    return [each if each.unit else Measure(each.number, None, unit, each.role) for each in measures]


def _of_table(root: Path, name: str, table: Table, unit: str) -> Iterator[Value]:
    file = _File(root, name)
    headings = tuple(file.span(cell, 0, len(cell.text)) for cell in table.header[1:])
    whole = Span(", ".join(each.text for each in headings), headings[0].start, headings[-1].end, headings[0].line)
    yield Value(name, "header", Field(Sort.SIZES, SIZES), whole, names=headings, cells=True)
    for row in table.rows:
        key = file.span(row[0], 0, len(row[0].text))
        cells = [file.span(cell, 0, len(cell.text)) for cell in row[1:]]
        measures = tuple(Measure(cell, None, unit, Role.ALONE) for cell in cells)
        whole = Span(", ".join(cell.text for cell in cells), cells[0].start, cells[-1].end, key.line)
        yield Value(name, key.text, row_field(key.text), whole, measures, cells=True)
        yield Value(name, f"{key.text}.row", Field(Sort.NAME, NAMES, "row"), key, names=(key,))
