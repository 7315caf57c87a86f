"""What is sewn to the pieces and done with them."""

from __future__ import annotations

import re
from dataclasses import dataclass

from sitegen.findings import Place
from sitegen.tutorial.model.values import Amount, Lengths, Reference, Share, Words

_NECK = re.compile(r"neck|collar|hood|escote|cuello|capucha", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Band:
    """A band or cuff sewn to an opening that is longer than it."""

    key: str
    place: Place
    front: tuple[Reference, ...]
    back: tuple[Reference, ...]
    around: tuple[Reference, ...]
    """All edges of the opening in order; ``front`` and ``back`` are empty when it has no such halves."""
    ratio: Share
    finished_width: Lengths
    fabric: Reference
    seam_allowance: Amount | None
    goes_over: Words | None
    """What it is pulled over: head, hand, foot, nothing, or a measurement by its full name, ``body.hip``."""
    make: int
    folded: bool

    @property
    def on_neck(self) -> bool:
        """Whether shoulder seams part its opening into a front and a back: it has such halves, and lies on a neck by
        its name, by that of an edge, or since the head goes through it."""
        named = (self.key, *(edge.name.rpartition(".")[2] for edge in self.around))
        over_head = self.goes_over is not None and self.goes_over.text == "head"
        return bool(self.front and self.back) and (over_head or any(_NECK.search(name) for name in named))


@dataclass(frozen=True, slots=True)
class Hem:
    """An edge turned up and stitched; double when it is folded under first."""

    key: str
    place: Place
    edges: tuple[Reference, ...]
    turn: Lengths
    fold_under: Lengths | None
    stitch: Words | None
    needle_gap: Lengths | None
    stitch_line: Lengths | None


@dataclass(frozen=True, slots=True)
class Elastic:
    """Elastic in a casing."""

    key: str
    place: Place
    around: Reference
    ratio: Share
    overlap: Lengths
    width: Lengths
    room: Lengths
    fold_under: Lengths | None


@dataclass(frozen=True, slots=True)
class Joined:
    """Pieces laid seam line over seam line, from the top down."""

    key: str
    place: Place
    pieces: tuple[Reference, ...]


@dataclass(frozen=True, slots=True)
class Girth:
    """A measurement round the finished garment, and the body measurement it goes round."""

    key: str
    place: Place
    edges: tuple[Reference, ...]
    body: Reference | None


@dataclass(frozen=True, slots=True)
class LineAt:
    """Where a piece is cut across to lengthen or shorten it."""

    share: Share | None
    distance: Lengths | None
    from_top: bool
    place: Place


@dataclass(frozen=True, slots=True)
class ChangeLine:
    """One of the lines of a change, with its own amount or its share of the whole amount."""

    at: LineAt
    place: Place
    amount: Lengths | None
    shortens: bool
    share: Share | None
    """Its share of the amount; where no line has one, the amount is shared equally."""
    crosses: tuple[Reference, ...]


@dataclass(frozen=True, slots=True)
class Change:
    """A lengthening, shortening or widening of one piece, or of pieces that stay equal."""

    key: str
    place: Place
    pieces: tuple[Reference, ...]
    line_at: LineAt | None
    wanted: Lengths | None
    wanted_finished: bool
    amount: Lengths | None
    shortens: bool
    crosses: tuple[Reference, ...]
    seam_edges: int = 0
    """At how many seam edges a widening is added; 0 for a change of length."""
    lines: tuple[ChangeLine, ...] = ()
    """The lines from the top down where the change is made at several; ``line_at`` is absent then."""

    @property
    def widens(self) -> bool:
        """Whether the width changes, not the length."""
        return self.seam_edges > 0

    @property
    def owners(self) -> tuple[tuple[str, str], ...]:
        """Under which names its numbers stand, each with the piece to which they belong: its own with the first piece,
        and, where it changes several pieces, ``longer.front`` and ``longer.back``."""
        names = list(dict.fromkeys(piece.name for piece in self.pieces))
        own = [(f"{self.key}.{name}", name) for name in names] if len(names) > 1 else []
        return ((self.key, names[0]), *own)


@dataclass(frozen=True, slots=True)
class Swap:
    """A band made from another fabric than its own, with a ratio that suits it, or with the least that serves."""

    key: str
    place: Place
    band: Reference
    fabric: Reference
    ratio: Share | None
