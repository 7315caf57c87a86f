"""Cloth and the pieces that are cut from it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import Enum
from fractions import Fraction

from sitegen.findings import Place
from sitegen.tutorial.model.values import Amount, Lengths, Prose, Reference, Share, Words


@dataclass(frozen=True, slots=True)
class Swatch:
    """A piece of cloth across the grain that was measured at rest, and stretched as far as it goes with ease."""

    rest: Amount
    stretched: Amount


@dataclass(frozen=True, slots=True)
class Washed:
    """A piece of cloth that was measured along the grain before it was washed, and after."""

    before: Amount
    after: Amount


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
    one_way: bool
    """Whether it has a nap or a print with a head, so that no piece may lie head to foot."""
    laid: str
    """How it is laid for cutting: folded, to the middle, open; empty where the layout may choose."""
    selvage: Lengths | None
    straighten: Lengths | None
    """What straightening the cut ends takes off its length."""
    swatch: Swatch | None = None
    repeat: Lengths | None = None
    """From one motif of a print to the next along the cloth; absent where nothing is matched."""
    washed: Washed | None = None
    matched: tuple[Reference, ...] = ()
    """The pieces that begin at the same place of the print; every piece of the fabric when none is named."""

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
class Arc:
    """A part of a circle, by its radius and by how far it goes round."""

    radius: Lengths
    degrees: Fraction


@dataclass(frozen=True, slots=True)
class Edge:
    """An edge of a piece, with its length or the arc from which its length follows."""

    key: str
    piece: str
    place: Place
    lengths: Lengths | None
    measured_on: MeasuredOn
    turn: Turn | None
    seam_allowance: Amount | None
    arc: Arc | None = None

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


@dataclass(frozen=True, slots=True)
class Notch:
    """The notches at an edge of a piece: single, double or triple."""

    edge: Reference
    """The edge by its name within the piece."""
    kind: Words


@dataclass(frozen=True, slots=True)
class Dart:
    """A dart, or several alike, in an edge. Its width is given, or follows from the edge that the sewn edge meets."""

    key: str
    piece: str
    place: Place
    edge: Reference
    """The edge by its name within the piece."""
    count: int
    width: Lengths | None
    meets: tuple[Reference, ...]
    length: Lengths

    @property
    def name(self) -> str:
        """The full name, ``front.bust``."""
        return f"{self.piece}.{self.key}"

    @property
    def edge_name(self) -> str:
        """The full name of its edge, ``front.side``."""
        return f"{self.piece}.{self.edge.name}"


SIDES = ("top", "bottom", "left", "right")
PLAIN_SIDES = ("seam", "fold", "raw")
AXES = {"length": ("top", "bottom"), "width": ("left", "right")}
"""The sides at which each measure of a piece ends."""


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
    notches: Mapping[str, Notch]
    bias: bool
    crosswise: bool
    """Whether it may lie a quarter turned, across the grain."""
    darts: Mapping[str, Dart] = field(default_factory=dict)

    @property
    def on_fold(self) -> bool:
        """Whether one half is drawn and cut on the fold."""
        return self.cut is not None and "fold" in self.cut.text

    def untold_sides(self, axis: str) -> tuple[str, ...]:
        """The sides at which its length or width ends of which nothing is said. If there are none, its cut size
        follows from the finished one, or this from that."""
        return tuple(side for side in AXES[axis] if side not in self.sides)

    def given_along(self, axis: str) -> Lengths | None:
        """Its length or its width as written."""
        return self.length if axis == "length" else self.width

    def darts_in(self, edge: str) -> tuple[Dart, ...]:
        """The darts in one of its edges, by the edge's name within the piece."""
        return tuple(dart for dart in self.darts.values() if dart.edge.name == edge)
