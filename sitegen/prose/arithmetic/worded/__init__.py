"""Results that set phrases tie to their parts, wherever these stand: ``six buttons 9 cm apart, from the first to the
last 45 cm``.

A paragraph is written out as a line of small words in which each length, number and share is a letter with its place;
each reader looks in it for the phrases of one kind of sum. What the words of such a phrase say is plain, so that a
result is wrong that its parts do not make, unless another length around explains it.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from sitegen.prose.arithmetic.statements import Stated
from sitegen.prose.arithmetic.symbols import Item
from sitegen.prose.arithmetic.terms import Said
from sitegen.prose.arithmetic.worded.altered import altered
from sitegen.prose.arithmetic.worded.apiece import apiece
from sitegen.prose.arithmetic.worded.bands import bands
from sitegen.prose.arithmetic.worded.fullness import fullness
from sitegen.prose.arithmetic.worded.line import line_of
from sitegen.prose.arithmetic.worded.marks import marks
from sitegen.prose.arithmetic.worded.pieced import pieced
from sitegen.prose.arithmetic.worded.shapes import shapes
from sitegen.prose.arithmetic.worded.shares import shares
from sitegen.prose.arithmetic.worded.turned import turned

__all__ = ["worded_results"]
_READERS = (marks, apiece, shapes, fullness, turned, altered, pieced, bands, shares)


def worded_results(items: Sequence[Item], symbols: str, said: Said) -> Iterator[Stated]:
    """Every result that such a phrase tells, right or wrong."""
    line = line_of(items, symbols, said)
    for reader in _READERS:
        yield from reader(line)
