"""What a layout says: where every piece lies, how much cloth that takes, and how much less could do at best."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from enum import Enum
from fractions import Fraction
from math import ceil, floor

from sitegen.quantities import RULER, Length, Ratio, System, show_value
from sitegen.sewing.layout.bound import Reason
from sitegen.sewing.layout.parts import Fold, Outline


class FoldSide(Enum):
    """Which fold of the cloth a piece lies on, as one looks at it."""

    LEFT = "left"
    RIGHT = "right"


@dataclass(frozen=True, slots=True)
class Section:
    """A stretch of the cloth that lies in one way: from where on, how long, and how wide as it lies."""

    fold: Fold
    start: Length
    length: Length
    width: Length


@dataclass(frozen=True, slots=True)
class Placement:
    """Where one paper piece lies and what it gives.

    ``x`` and ``y`` are the lower left corner of its box ``width`` × ``height``: from the left edge of the cloth
    as it lies (a fold, or the selvage if it is open) and from the start of the cloth. ``copies`` are the numbers
    of the pieces of cloth cut there. ``turned``: degrees anticlockwise, after the paper was ``turned_over`` or
    not. ``layers`` are cut through; one layer in a folded section means that the other stays unused.
    ``at_fold`` names the fold on which its fold side lies; ``opened``: the whole of a piece that is drawn as half.
    """

    piece: str
    copies: tuple[int, ...]
    section: int
    x: Length
    y: Length
    width: Length
    height: Length
    turned: int
    turned_over: bool
    layers: int
    at_fold: FoldSide | None
    opened: bool
    outline: Outline


@dataclass(frozen=True, slots=True)
class Layout:
    """A cutting layout: the sections in order, every placement, and the length of cloth that it takes.

    ``least`` is a length that no layout of these pieces can do without, and ``reason`` what shows it; it holds for
    cloth folded as ``least_holds_for`` says, or for any cloth of the width if that is None. The pieces are taken
    as rectangles where no outline was given.
    """

    fold: Fold
    sections: tuple[Section, ...]
    placements: tuple[Placement, ...]
    length: Length
    least: Length
    reason: Reason
    least_holds_for: Fold | None

    @property
    def efficiency(self) -> Ratio:
        """The least that any layout needs, as a share of what this one takes."""
        return Ratio(self.least.over(self.length))

    @property
    def is_shortest(self) -> bool:
        """Whether no layout can be shorter, as far as ``least`` holds."""
        return self.least == self.length

    def in_words(self, system: System) -> str:
        """``needs 142 cm of cloth laid open in one layer; no layout can need less than 131 cm (the longest piece …)``.

        What is needed is rounded up to the ruler's mark, what no layout can do without is rounded down.
        """
        needs = f"needs {_on_mark(self.length, system, ceil)} of cloth {self.fold.value}"
        which = f"no layout on cloth {self.least_holds_for.value}" if self.least_holds_for else "no layout"
        less = "less" if self.is_shortest else f"less than {_on_mark(self.least, system, floor)}"
        return f"{needs}; {which} can need {less} ({self.reason.value})"


@dataclass(frozen=True, slots=True)
class TooWide:
    """A piece that does not fit, how much it takes across, and the width of cloth that would do for it."""

    piece: str
    across: Length
    cloth_width: Length
    opened: bool = False
    """Whether that width is of the cloth opened out, although it lies folded for the other pieces."""


@dataclass(frozen=True, slots=True)
class CannotLay:
    """Why there is no layout: the pieces that are too wide for the cloth as it lies."""

    fold: Fold
    cloth_width: Length
    too_wide: tuple[TooWide, ...]

    @property
    def width_that_does(self) -> Length:
        """The width of a cloth on which every piece fits."""
        return max(each.cloth_width for each in self.too_wide)

    def in_words(self, system: System) -> str:
        """``yoke takes 70 cm across, which needs 142 cm; this one is 120 cm wide``."""
        pieces = "; ".join(
            f"{each.piece} takes {show_value(each.across, system)} across, which needs a cloth "
            f"{_on_mark(each.cloth_width, system, ceil)} wide{' even when it is opened out' if each.opened else ''}"
            for each in self.too_wide
        )
        return f"{pieces}; this one is {show_value(self.cloth_width, system)} wide, {self.fold.value}"


def _on_mark(value: Length, system: System, to_whole: Callable[[Fraction], int]) -> str:
    """A length in words, brought to a mark of the ruler in one direction."""
    step = RULER.step(value, system)
    return show_value(step * to_whole(value.over(step)), system)
