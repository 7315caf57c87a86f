"""Elastic and its casing. Sources: common practice, no source."""

from __future__ import annotations

from sitegen.quantities import Worked, plus, times, work


def finished_length(name: str, body: Worked, ratio: Worked) -> Worked:
    """The elastic as a ring: body measurement × ratio."""
    return work(name, body, times(ratio))


def cut_length(name: str, finished: Worked, overlap: Worked) -> Worked:
    """The elastic to cut: the ring and the overlap of its ends."""
    return work(name, finished, plus(overlap))


def casing(name: str, width: Worked, room: Worked, fold_under: Worked | None) -> Worked:
    """The cloth to allow above the fold line: elastic width, room to move, and the edge folded under."""
    return work(name, width, plus(room), *([plus(fold_under)] if fold_under else []))


def casing_depth(name: str, width: Worked, room: Worked) -> Worked:
    """How deep a casing is once its raw edge lies folded under, from its fold line to the stitching: elastic width and
    room to move."""
    return work(name, width, plus(room))
