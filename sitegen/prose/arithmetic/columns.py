"""Lengths in rows with a label each, one a line, and the row that tells what they come to: the working of a cut length
as handouts set it out."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from sitegen.prose.arithmetic.agree import Exactness, agrees
from sitegen.prose.arithmetic.likely import is_like
from sitegen.prose.arithmetic.statements import Stated
from sitegen.prose.arithmetic.symbols import Item
from sitegen.prose.find import Reading

_COLUMN = re.compile(r"(?:\s{2,}|\t|[.…]{2,} ?|[:=] ?)[*_+−-]{0,3}\s?$")
"""What stands before a length in a column of its own."""
_TOTAL = re.compile(
    r"^\W*(?:(?:so|in|the|your|total|full|final|whole) )*"
    r"(?:cut(?:ting)? (?:length|width|height|depth|size|drop)"
    r"|total|altogether|in all|all together|cut at|to cut|sum|all)\b",
    re.IGNORECASE,
)
_TAKEN_OFF = re.compile(r"\b(?:less|minus|take (?:off|away)|deduct|subtract|lost)\b|[−-]\s?$", re.IGNORECASE)
_EACH = re.compile(r"\b(?:each|every|per|size|finished|cloth|fabric|needle|stitch)\b", re.IGNORECASE)
"""Words of a row that is more than one part, or none."""
_TWICE = re.compile(r"\b(?:twice|doubled?|both|two)\b", re.IGNORECASE)
_FEWEST = 2
_BESIDE = 12
"""Characters before a length in which a column may begin."""
_WRAPPED = 2
"""Lines from row to row, one of which may be the first half of a long label."""


@dataclass(frozen=True, slots=True)
class _Row:
    """A line that ends in a length: its place among the items, and the label before it."""

    at: int
    label: str
    line: int


def column_results(reading: Reading, items: Sequence[Item], symbols: str) -> Iterator[Stated]:
    """Every total of a column of lengths, and every row that names the parts of its length."""
    block: list[_Row] = []
    for row in _rows(reading, items, symbols):
        if block and row.line > block[-1].line + _WRAPPED:
            block = []
        if block and (stated := _worked(reading, items, symbols, block[-1], row)):
            yield stated
        if _TOTAL.match(row.label) and len(block) >= _FEWEST:
            if stated := _total(reading, items, block, row):
                yield stated
            block = []
        else:
            block.append(row)


def _rows(reading: Reading, items: Sequence[Item], symbols: str) -> Iterator[_Row]:
    tokens, text = reading.tokens, reading.text
    for at, symbol in enumerate(symbols):
        behind = items[at].behind
        last = behind >= len(tokens) or tokens.opens_line(behind) or tokens.words[behind] == "\n"
        if symbol != "L" or not last or items[at].hedged or items[at].times:
            continue
        start = tokens.starts[items[at].first]
        opens = text.rfind("\n", 0, start) + 1
        label = text[opens:start]
        if _COLUMN.search(label[-_BESIDE:]) and re.search(r"[^\W\d]", label):
            yield _Row(at, label, reading.line_and_column(start)[0])


def _worked(reading: Reading, items: Sequence[Item], symbols: str, before: _Row, row: _Row) -> Stated | None:
    """A row whose label tells of what its length is made: ``Bottom hem, 2 in turned twice    4 in``."""
    parts = [at for at in range(before.at + 1, row.at) if symbols[at] == "L"]
    unit, others = items[row.at].unit, set("NPRHX~*/T-<") & set(symbols[before.at + 1 : row.at])
    twice = len(parts) == 1 and _TWICE.search(row.label) is not None
    if unit is None or others or not parts or (len(parts) == 1 and not twice) or _EACH.search(row.label):
        return None
    sizes = [items[at].value for at in parts]
    value = (2 if twice else 1) * sum(sizes, Fraction(0))
    right = any(agrees(written, one, (value,), Exactness.EXACT, hedged=False) for written, one in items[row.at].written)
    if not right and not (is_like(items[row.at].value, value, unit) or (twice and items[row.at].value in sizes)):
        return None
    said = [reading.text[slice(*reading.span(number))] for at in parts if (number := items[at].number)]
    return Stated(row.at, tuple(parts), right, "sum", value, ("2 × " if twice else "") + " + ".join(said))


def _total(reading: Reading, items: Sequence[Item], block: Sequence[_Row], total: _Row) -> Stated | None:
    """What the rows come to; None where one of them may be no part."""
    result, unit = items[total.at], items[total.at].unit
    if unit is None or any(items[row.at].unit is None or _EACH.search(row.label) for row in block[1:]):
        return None
    if len({items[row.at].unit for row in block} | {unit}) > 1:
        return None
    signed = [(-1 if _TAKEN_OFF.search(row.label) else 1) * items[row.at].value for row in block]
    sums = [sum(signed[first:], Fraction(0)) for first in range(len(signed) - 1)]
    right = any(agrees(written, one, sums, Exactness.EXACT, hedged=False) for written, one in result.written)
    if not right and not (sums[0] > 0 and is_like(result.value, sums[0], unit)):
        return None
    said = [reading.text[slice(*reading.span(number))] for row in block if (number := items[row.at].number)]
    words = "".join(f" {'−' if value < 0 else '+'} {each}" for value, each in zip(signed, said, strict=True))
    return Stated(total.at, tuple(row.at for row in block), right, "sum", sums[0], words.removeprefix(" + "))
