"""Cords, tapes and zips that lie along edges. Sources: common practice, no source."""

from __future__ import annotations

from sitegen.quantities import Worked, plus, work


def length(name: str, edges: Worked, each_end: Worked | None = None) -> Worked:
    """How long it is: the edges along which it lies, and twice what it has beyond them at each end, to hang out, turn
    under or lap.

    A zip is as long as its opening: it may be longer, and is cut off, but never shorter.
    """
    return work(name, edges, *([plus(each_end, 2)] if each_end else []))
