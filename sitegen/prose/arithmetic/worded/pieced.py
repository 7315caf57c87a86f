"""Strips and blocks that are joined: what their seams leave, and what rows of blocks come to."""

from __future__ import annotations

import re
from collections.abc import Iterator

from sitegen.prose.arithmetic.agree import Exactness
from sitegen.prose.arithmetic.statements import Stated
from sitegen.prose.arithmetic.worded.line import Line

_STRIPS = re.compile(
    r"(?:\b(?:sew|join|stitch|piece|seam)(?:ed|ing)?(?: [a-z]+){0,3} )?N(?P<n>\d+) L(?P<w>\d+)-?(?: "
    r"(?:wide|square|[a-z]+))?"
    r" (?:strips|squares|pieces|blocks|panels|bars)\b(?P<gap>[^LNR\n]{0,70})L(?P<s>\d+) (?:seams?|seam allowances?)\b"
    r"(?P<rest>[^LNR\n]{0,90})L(?P<r>\d+)(?P<behind>[^LNR.\n]{0,20})"
)
_ROW = re.compile(r"\b(?:side by side|together|in a row|set|row|unit|strip set|panel|end to end)\b")
_WIDE = re.compile(r"\b(?:wide|across|long|measures?|should|finishes|raw edge)\b")
_COUNTS = re.compile(
    r"N(?P<n>\d+) (?P<one>[a-z]+(?: down| across)?)? ?(?:of|by|x|×|and) N(?P<m>\d+)\b(?: (?P<two>[a-z]+))?"
)
_BLOCK = re.compile(
    r"\b(?:blocks?|squares?|patches|hexies|units?)(?:,? (?:that|which|are|is|each|all|finish(?:ing|es)?"
    r"|finished|at|measure|of)){0,3}"
    r" L(?P<b>\d+)|L(?P<c>\d+)-? (?:finished )?(?:blocks?|squares?|patches)\b"
)
_SIZE = re.compile(r"L(?P<a>\d+)(?: [a-z]+)? (?:x|×|by) L(?P<b>\d+)")
_REACH = 200


def pieced(line: Line) -> Iterator[Stated]:
    """What joined strips measure, and how wide and long so many rows of blocks are."""
    for found in _STRIPS.finditer(line.text):
        number, wide, seam = line.count(found, "n"), line.value(found, "w"), line.value(found, "s")
        told = re.search(r"\b(?:sew|join|stitch|piec|seam)", found.group())
        told = told and _ROW.search(found["gap"] + found["rest"]) and _WIDE.search(found["rest"] + found["behind"])
        if not number or not told or seam * 4 > wide:
            continue
        values = number * wide - 2 * (number - 1) * seam, number * (wide - 2 * seam)
        often = 2 * (number - 1)
        words = f"{number} × {line.said(line.item(found, 'w'))} − {often} × {line.said(line.item(found, 's'))}"
        stated = line.told(found, values, words, "product", "ws", counts="n", exactness=Exactness.EXACT)
        if stated:
            yield stated
    yield from _rows_of_blocks(line)


def _rows_of_blocks(line: Line) -> Iterator[Stated]:
    for counts in _COUNTS.finditer(line.text):
        numbers = line.count(counts, "n"), line.count(counts, "m")
        told = counts.group() + line.text[counts.end() : counts.end() + 12]
        if not all(numbers) or not re.search(r"\b(?:rows?|across|down|blocks?|squares?)\b", told):
            continue
        first, behind = max(0, counts.start() - _REACH), counts.end() + _REACH
        blocks = {int(each["b"] or each["c"]) for each in _BLOCK.finditer(line.text, first, behind)}
        size = _SIZE.search(line.text, counts.end(), behind)
        if len(blocks) != 1 or size is None:
            continue
        yield from _sides(line, (int(size["a"]), int(size["b"])), numbers, blocks.pop())


def _sides(line: Line, sides: tuple[int, int], numbers: tuple[int, int], block: int) -> Iterator[Stated]:
    """Both sides of so many blocks, where one of them is what its blocks make."""
    size, said = line.items[block].value, line.said(line.items[block])
    for one, other in (sides, sides[::-1]):
        for number, last in (numbers, numbers[::-1]):
            if line.items[one].value != number * size:
                continue
            yield Stated(one, (block,), True, "product", number * size, f"{number} × {said}")
            if stated := line.judged(other, (last * size,), f"{last} × {said}", "product", (block,), sure=True):
                yield stated
            return
