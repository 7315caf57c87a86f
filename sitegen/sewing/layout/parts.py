"""What is laid, and on what: the pieces in their cut sizes and the cloth."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum

from sitegen.quantities import ZERO, Length

Outline = tuple[tuple[Length, Length], ...]
"""The corners of a piece in order, each as (across, along) from the lower left corner of its box."""


class Fold(Enum):
    """How the cloth lies on the table, the simplest to lay and to cut first. The value says it in words."""

    LENGTHWISE = "folded lengthwise, selvage on selvage"
    DOUBLE = "folded with both selvages to the middle"
    OPEN = "laid open in one layer"


@dataclass(frozen=True, slots=True)
class LayoutPiece:
    """A paper piece and how often it is wanted, allowances included: ``width`` across the grain, ``length`` along it.

    A piece ``on_fold`` is half of the whole, ``width`` is that of the half, and its fold is its left side, at 0.
    ``count`` is the number of pieces of cloth. ``mirrored``: they come in pairs, left and right. ``bias``: the
    piece is turned 45° to the grain. ``rotate``: it may lie head to foot on cloth without nap. ``crosswise``: it
    may lie a quarter turned, across the grain. ``outline`` is its true shape, a polygon that does not cross
    itself; without it the piece is a rectangle. Raises ValueError for a piece that cannot be.
    """

    name: str
    width: Length
    length: Length
    count: int = 1
    on_fold: bool = False
    mirrored: bool = False
    bias: bool = False
    rotate: bool = True
    crosswise: bool = False
    outline: Outline | None = None

    def __post_init__(self) -> None:
        if self.width <= ZERO or self.length <= ZERO:
            raise ValueError(f"{self.name}: a piece has a width and a length above nothing")
        if self.count < 1:
            raise ValueError(f"{self.name}: a piece is wanted at least once")
        if self.mirrored and not self.on_fold and self.count % 2:
            raise ValueError(f"{self.name}: mirrored pieces come in pairs, {self.count} is no even number")
        if self.outline is not None:
            self._check_outline(self.outline)

    def _check_outline(self, outline: Outline) -> None:
        if len(set(outline)) < 3 or len(set(outline)) < len(outline):
            raise ValueError(f"{self.name}: an outline has at least three corners, and none of them twice")
        if not all(ZERO <= x <= self.width and ZERO <= y <= self.length for x, y in outline):
            raise ValueError(f"{self.name}: an outline lies inside the width and the length of its piece")
        if self.on_fold:
            follows = zip(outline, outline[1:] + outline[:1], strict=True)
            begins = [1 for (x, _), (after, _) in follows if x > ZERO and after == ZERO]
            if sum(1 for x, _ in outline if x == ZERO) < 2 or len(begins) != 1:
                raise ValueError(
                    f"{self.name}: the outline of a piece on the fold has one edge at the fold, at 0 across"
                )


@dataclass(frozen=True, slots=True)
class Cloth:
    """A cloth as it is laid, after washing: its whole width and the part of it at each side that cannot be used.

    ``folded`` says how it must lie; None leaves that to the layout. ``one_way``: it has a nap or a print with a
    head, so that nothing lies head to foot or a quarter turned. Raises ValueError for a cloth without usable width.
    """

    width: Length
    folded: Fold | None = None
    one_way: bool = False
    selvage: Length = ZERO

    def __post_init__(self) -> None:
        if self.selvage < ZERO or self.width <= self.selvage * 4:
            raise ValueError("a cloth is wider than its selvages, also when both are folded to the middle")

    def layer(self, fold: Fold) -> Length:
        """The usable width of one strip: the whole width between the selvages, or of one folded side."""
        if fold is Fold.OPEN:
            return self.width - self.selvage * 2
        if fold is Fold.LENGTHWISE:
            return self.width / 2 - self.selvage
        return self.width / 4 - self.selvage

    def as_it_lies(self, fold: Fold) -> Length:
        """The width of the cloth on the table."""
        return self.width if fold is Fold.OPEN else self.width / 2

    def wide_enough(self, across: Length, fold: Fold) -> Length:
        """The width of a cloth on which so much lies in one strip of this fold."""
        if fold is Fold.OPEN:
            return across + self.selvage * 2
        if fold is Fold.LENGTHWISE:
            return (across + self.selvage) * 2
        return (across + self.selvage) * 4
