"""A text in pieces, each with what was found in it, for a person to read."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from sitegen.findings import Severity
from sitegen.prose.measurement import Measurement
from sitegen.prose.proofread import TextFinding


@dataclass(frozen=True, slots=True)
class Piece:
    """A part of a text: plain, a measurement, or a place where something is wrong, or both."""

    text: str
    measurement: Measurement | None = None
    finding: TextFinding | None = None
    last: bool = True
    """Whether the finding ends with this piece."""


def pieces_of(text: str, measurements: Sequence[Measurement], findings: Sequence[TextFinding]) -> tuple[Piece, ...]:
    """The whole text, cut wherever a measurement or a finding begins or ends. Of findings that overlap, the first."""
    kept: list[TextFinding] = []
    for each in findings:
        if not kept or each.start >= kept[-1].end:
            kept.append(each)
    edges = {0, len(text)}
    edges.update(edge for one in measurements for edge in (one.start, one.end))
    edges.update(edge for one in kept for edge in (one.start, one.end))
    cuts = sorted(edges)
    pieces: list[Piece] = []
    measured, wrong = 0, 0
    for start, end in pairwise(cuts):
        while measured < len(measurements) and measurements[measured].end <= start:
            measured += 1
        while wrong < len(kept) and kept[wrong].end <= start:
            wrong += 1
        measurement = (
            measurements[measured] if measured < len(measurements) and measurements[measured].start <= start else None
        )
        finding = kept[wrong] if wrong < len(kept) and kept[wrong].start <= start else None
        pieces.append(Piece(text[start:end], measurement, finding, finding is not None and finding.end == end))
    return tuple(pieces)


def marked_text(pieces: Sequence[Piece]) -> str:
    """The text with ``[ ]`` around each measurement and ``⟦said → should be⟧`` around each finding; a question mark is
    put to what is doubtful.

    >>> from sitegen.prose import proofread, read
    >>> said = "16 in plus 1 in makes 18 in"
    >>> marked_text(pieces_of(said, read(said), proofread(said)))
    '[16 in] plus [1 in] makes ⟦[18 in] → 17 in⟧'
    """
    marked: list[str] = []
    inside: TextFinding | None = None
    for piece in pieces:
        if piece.finding is not None and piece.finding is not inside:
            marked.append("⟦")
        inside = piece.finding
        marked.append(f"[{piece.text}]" if piece.measurement is not None else piece.text)
        if piece.finding is not None and piece.last:
            should_be = " ".join(piece.finding.should_be.split())
            doubt = "" if piece.finding.severity is Severity.WRONG else "?"
            marked.append(f" → {should_be}{doubt}⟧" if should_be else f"{doubt}⟧")
    return "".join(marked)
