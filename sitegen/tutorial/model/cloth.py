"""Cloth and the pieces that are cut from it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from enum import Enum
from fractions import Fraction

from sitegen.findings import Place
from sitegen.tutorial.model.values import Amount, Lengths, Prose, Reference, Share, Words


@dataclass(frozen=True, slots=True)
class Fabric:
    """A cloth of the tutorial."""

    key: str
    place: Place
    name: str
    structure: str
    stretch_across: Share | None
    stretch_down: Share | None
    width: Lengths | None
    shrinkage: Share | None
    weight: str
    buy: Lengths | None
    advice: Prose | None

    @property
    def knit(self) -> bool:
        """Whether the cloth is a knit."""
        return self.structure == "knit"


class MeasuredOn(Enum):
    """Where along the allowance an edge was measured."""

    SEAM_LINE = "seam line"
    CUT_EDGE = "cut edge"


@dataclass(frozen=True, slots=True)
class Turn:
    """By how many degrees an edge changes its direction from end to end, and to which side it curves."""

    degrees: Fraction
    inward: bool
    place: Place


@dataclass(frozen=True, slots=True)
class Edge:
    """An edge of a piece."""

    key: str
    piece: str
    place: Place
    lengths: Lengths | None
    measured_on: MeasuredOn
    turn: Turn | None
    seam_allowance: Amount | None

    @property
    def name(self) -> str:
        """The full name, ``front.neckline``."""
        return f"{self.piece}.{self.key}"


@dataclass(frozen=True, slots=True)
class Taper:
    """The widths of a piece at two levels, the height between, and how many of its edges slope."""

    top: Lengths
    bottom: Lengths
    over: Lengths
    edges: int
    place: Place


SIDES = ("top", "bottom", "left", "right")
PLAIN_SIDES = ("seam", "fold", "raw")


@dataclass(frozen=True, slots=True)
class Piece:
    """A piece of the garment. ``sides`` says what becomes of each side: an edge, hem, elastic, seam, fold, raw."""

    key: str
    place: Place
    called: str
    cut: Words | None
    fabric: Reference | None
    seam_allowance: Amount | None
    length: Lengths | None
    width: Lengths | None
    finished_given: bool
    """Whether length and width are the finished ones, so that the cut ones are computed."""
    sides: Mapping[str, Reference]
    edges: Mapping[str, Edge]
    taper: Taper | None
    notches: Mapping[str, Words]

    @property
    def on_fold(self) -> bool:
        """Whether one half is drawn and cut on the fold."""
        return self.cut is not None and "fold" in self.cut.text
