"""Rectangles: cut sizes from finished ones, and corners boxed to give depth.

A strap or a band folded once is ``band.cut_width``, one folded in four ``bias.strip_width`` (straight grain), a
casing for elastic ``elastic.casing``.

Source: arithmetic of allowances; that squares are cut at a boxed corner is common practice, no source.
"""

from __future__ import annotations

from dataclasses import dataclass

from sitegen.quantities import Worked, given, minus, over, plus, work
from sitegen.sewing import allowance
from sitegen.sewing.allowance import End

TWO_PANELS = given("panels at the corner", 2)
TWO_HALVES = given("halves of the piece", 2)


@dataclass(frozen=True, slots=True)
class Size:
    """The two sides of a rectangle: length from top to bottom, width from left to right."""

    length: Worked
    width: Worked


@dataclass(frozen=True, slots=True)
class Sides:
    """What happens at each side of a rectangle; nothing where a side is left out, as at a fold."""

    top: End = End()
    bottom: End = End()
    left: End = End()
    right: End = End()


def cut_size(name: str, finished: Size, sides: Sides) -> Size:
    """The rectangle to cut: finished length and width, each with what its two ends take."""
    return Size(
        allowance.cut_length(f"{name} cut length", finished.length, (sides.top, sides.bottom)),
        allowance.cut_length(f"{name} cut width", finished.width, (sides.left, sides.right)),
    )


def finished_size(name: str, cut: Size, sides: Sides) -> Size:
    """The rectangle once it is sewn: the other way round from ``cut_size``."""
    return Size(
        allowance.finished_length(f"{name} finished length", cut.length, (sides.top, sides.bottom)),
        allowance.finished_length(f"{name} finished width", cut.width, (sides.left, sides.right)),
    )


def on_fold(name: str, whole: Worked) -> Worked:
    """The width to cut with one side on the fold: half of the whole cut width. Source: common practice, no source."""
    return work(name, whole, over(TWO_HALVES))


def boxed_width(name: str, width: Worked, depth: Worked) -> Worked:
    """The seam-to-seam width of a panel whose corners are boxed: finished width + half of the depth at each side.

    Source: geometry of the folded corner.
    """
    return work(name, width, plus(half_depth("half depth", depth), 2))


def boxed_length(name: str, height: Worked, depth: Worked) -> Worked:
    """The length of such a panel from its top to the seam along the bottom: finished height + half of the depth.

    Source: geometry of the folded corner.
    """
    return work(name, height, plus(half_depth("half depth", depth)))


def corner_square(
    name: str, depth: Worked, *, seam_allowance: Worked | None = None, corner_allowance: Worked | None = None
) -> Worked:
    """The side of the square at a boxed corner: half of the finished depth, as the seam across lies.

    Measured from the raw edges of the panel (``seam_allowance`` of the side and the bottom), the square is
    larger by that allowance; cut out before the corner is sewn (``corner_allowance`` of the seam across), it
    is smaller by that one. Where both are alike, the cut-out square is half of the depth from the raw edges.
    Source: geometry of the folded corner. Raises ValueError when nothing is left to cut out.
    """
    half = half_depth("half depth", depth)
    terms = [plus(seam_allowance)] if seam_allowance else []
    terms += [minus(corner_allowance)] if corner_allowance else []
    side = work(name, half, *terms) if terms else half.named(name)
    if side.length.mm <= 0:
        raise ValueError(f"{depth.name} leaves no square at the corner")
    return side


def depth_of_corner(name: str, square: Worked) -> Worked:
    """The finished depth that a square makes, its side measured from the seam lines to the seam across: twice the side.

    Source: geometry of the folded corner.
    """
    return work(name, plus(square, 2))


def half_depth(name: str, depth: Worked) -> Worked:
    """How far from the tip of the corner, along its seam, the seam across lies: half of the depth.

    Source: geometry of the folded corner.
    """
    return work(name, depth, over(TWO_PANELS))


def square_on_seams(name: str, cut: Worked, seam_allowance: Worked | None, corner_allowance: Worked) -> Worked:
    """The side of a cut-out square from the seam lines to the seam across: cut square − seam + corner allowance.

    Source: geometry of the folded corner; the other way round from ``corner_square``. Raises ValueError when the seam
    takes the whole square.
    """
    terms = [minus(seam_allowance)] if seam_allowance else []
    side = work(name, cut, *terms, plus(corner_allowance))
    if side.length.mm <= 0:
        raise ValueError(f"the seams leave nothing of {cut.name}")
    return side


def width_once_boxed(name: str, panel: Worked, depth: Worked) -> Worked:
    """The width of the bottom of a bag: panel − depth, half of it at each side.

    Source: geometry of the folded corner.
    """
    return work(name, panel, minus(half_depth("half depth", depth), 2))


def height_once_boxed(name: str, panel: Worked, depth: Worked) -> Worked:
    """The height of a bag: panel from its top to the bottom seam − half of the depth.

    Source: geometry of the folded corner.
    """
    return work(name, panel, minus(half_depth("half depth", depth)))
