"""Seam allowances taken off, put back, and overlapped."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from sitegen.quantities import Term, Worked, minus, plus, work


@dataclass(frozen=True, slots=True)
class End:
    """What happens at one end of a piece.

    ``taken`` is the cloth that disappears there (a seam allowance, a hem allowance, a casing), None at a raw
    end or a fold. ``added`` is what a band sewn there adds, its finished width.
    """

    taken: Worked | None = None
    added: Worked | None = None


def finished_length(name: str, cut: Worked, ends: Sequence[End]) -> Worked:
    """The length of a piece once it is sewn: cut length, less what both ends take, plus bands sewn to them.

    Source: a band added to a leg shortens it by the finished band less one allowance (worked example in a
    web lesson, name withheld; common practice).
    """
    terms = [minus(end.taken) for end in ends if end.taken] + [plus(end.added) for end in ends if end.added]
    return work(name, cut, *_together(terms))


def cut_length(name: str, finished: Worked, ends: Sequence[End]) -> Worked:
    """The length to cut so that a piece is this long once sewn: the other way round from ``finished_length``.

    Source: common practice, no source.
    """
    terms = [minus(end.added) for end in ends if end.added] + [plus(end.taken) for end in ends if end.taken]
    return work(name, finished, *_together(terms))


def joined_length(name: str, cut: Sequence[Worked], overlaps: Sequence[tuple[Worked, Worked]]) -> Worked:
    """The cut length of pieces laid seam line over seam line: A + B − a − b for each seam between them.

    ``overlaps`` holds the two allowances of each seam, one fewer than there are pieces. Two pieces laid so
    overlap by both allowances. Source: common practice, no source.
    """
    first, *others = cut
    terms = [plus(piece) for piece in others]
    terms += [minus(allowance) for pair in overlaps for allowance in pair]
    return work(name, first, *_together(terms))


def _together(terms: list[Term]) -> list[Term]:
    """Neighbouring terms of one and the same number become one term: ``− 2 seam allowances of 3/8 in``."""
    kept: list[Term] = []
    for term in terms:
        last = kept[-1] if kept else None
        if (
            last
            and last.sign == term.sign
            and (last.number.name, last.number.value)
            == (
                term.number.name,
                term.number.value,
            )
        ):
            kept[-1] = Term(term.sign, last.count + term.count, term.number)
        else:
            kept.append(term)
    return kept
