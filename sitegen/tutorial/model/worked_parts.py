"""What is worked out along edges and out of cloth: marks, gathers, pleats, bindings, circles."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from sitegen.findings import Place
from sitegen.sewing import bias, pleats, spacing
from sitegen.tutorial.model.values import Amount, Lengths, Reference


@dataclass(frozen=True, slots=True)
class Button:
    """A button, measured for its buttonhole."""

    diameter: Lengths
    thickness: Lengths


@dataclass(frozen=True, slots=True)
class Spacing:
    """Marks at even distances. ``marks`` or ``greatest_gap`` is given, or both, to be held against each other."""

    key: str
    place: Place
    along: tuple[Reference, ...]
    """The edges or other lengths along which the marks lie; empty when ``length`` was typed."""
    length: Lengths | None
    marks: int | None
    marks_place: Place
    greatest_gap: Lengths | None
    spread: spacing.Spread
    first_margin: Lengths | None
    last_margin: Lengths | None
    start: Lengths | None
    """Round a ring, how far behind its beginning the first mark lies."""
    button: Button | None


@dataclass(frozen=True, slots=True)
class Fullness:
    """A ratio of gathers as it was typed, ``1.5 to 1``, and where."""

    number: Fraction
    text: str
    place: Place


@dataclass(frozen=True, slots=True)
class GatheringRows:
    """Rows of gathering stitches: the first from the raw edge, each further one from the one before, how many."""

    first: Lengths
    apart: Lengths
    count: int


@dataclass(frozen=True, slots=True)
class Gather:
    """Edges that are drawn in to fit shorter ones."""

    key: str
    place: Place
    edges: tuple[Reference, ...]
    onto: tuple[Reference, ...]
    onto_length: Lengths | None
    ratio: Fullness | None
    cut_for_ratio: bool
    """Whether the ratio was chosen and the edges are to be cut for it; else it follows from them, and is a claim."""
    rows: GatheringRows | None = None


@dataclass(frozen=True, slots=True)
class Pleats:
    """Equal pleats or tucks in a row. ``depth`` is absent where it follows from the cut and the finished width."""

    key: str
    place: Place
    kind: pleats.Pleat
    count: int
    depth: Lengths | None
    edges: tuple[Reference, ...]
    """The edges that are pleated, as they are before; empty when the cut width is worked out."""
    finished: Lengths | None


@dataclass(frozen=True, slots=True)
class Binding:
    """A bias strip that finishes edges."""

    key: str
    place: Place
    edges: tuple[Reference, ...]
    kind: bias.Binding
    finished_width: Lengths
    overlap: Lengths
    turn_of_cloth: Lengths | None
    join_allowance: Amount | None
    square: Lengths | None
    """The side of the square of cloth out of which the strips are cut."""
    strip: Lengths | None
    """How long each strip is, where they are not cut out of a square."""
    fabric: Reference | None

    @property
    def wraps(self) -> bool:
        """Whether it goes round the raw edge, so that nothing of the piece disappears into a seam."""
        return self.kind is not bias.Binding.SINGLE_FOLD


@dataclass(frozen=True, slots=True)
class CircleSkirt:
    """A skirt cut as a ring of cloth, or as a share of one."""

    key: str
    place: Place
    waist: Lengths
    ease: Lengths | None
    share: Fraction
    length: Lengths
    seam_allowance: Amount | None
    hem: Reference | None
    """The hem at its edge, by name."""
    hem_allowance: Lengths | None
    """What is turned at its edge, where it is no hem with a name."""
    fabric: Reference | None

    @property
    def hem_edge(self) -> str:
        """The name of its lower edge, which may stand wherever an edge may."""
        return f"{self.key}.hem_edge"

    @property
    def waist_edge(self) -> str:
        """The name of its upper edge along the seam line."""
        return f"{self.key}.waist"


@dataclass(frozen=True, slots=True)
class Boxed:
    """Corners that are sewn across, which turn two flat panels into a bag with a depth."""

    key: str
    place: Place
    pieces: tuple[Reference, ...]
    """The pieces that make one panel, from the top down; the corners are those of the last one."""
    square: Lengths | None
    """The side of the square cut out of the raw corner, from which the depth follows."""
    depth: Lengths | None
    corner_allowance: Amount | None
    """What the seam across the corner takes, where it is not the allowance of the garment."""
    cut_for_width: Lengths | None
    cut_for_height: Lengths | None
    """The size of the finished bag for which the panel is to be cut."""
    cut_out: bool
    """Whether the corner is cut out before it is sewn across; a corner with a depth alone is sewn across uncut."""


@dataclass(frozen=True, slots=True)
class Drops:
    """Widths of cloth side by side, such as a curtain: how many, how long each, and how much cloth in all."""

    key: str
    place: Place
    width: Lengths
    ratio: Fullness | None
    """How many times as wide as what they cover, before they are gathered or pleated."""
    length: Lengths
    top: Lengths | None
    hem: Lengths | None
    side: Lengths | None
    """What is turned at the top, at the bottom, and at either side."""
    seam_allowance: Amount | None
    fabric: Reference
    count: int | None
    """How many the author says that it takes."""
    count_place: Place


@dataclass(frozen=True, slots=True)
class Trim:
    """A cord, tape or zip that lies along edges."""

    key: str
    place: Place
    kind: str
    edges: tuple[Reference, ...]
    each_end: Lengths | None
    """What it has beyond its edges at each end: to hang out with its knot, to turn under, to lap."""
    supply: Reference
    """What it is cut from, by the name that the supplies have."""

    @property
    def is_zip(self) -> bool:
        """Whether it is sold in lengths of its own, and not cut from a roll."""
        return self.kind == "zip"
