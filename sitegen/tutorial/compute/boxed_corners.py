"""Defines the numbers of boxed corners: what to cut out, and the bag that the panel makes."""

from __future__ import annotations

from sitegen.quantities import Worked, plus, work
from sitegen.sewing import rectangle
from sitegen.tutorial.compute.given import allowance_or_own, lengths_maker, need
from sitegen.tutorial.compute.lengths_of_pieces import end_of
from sitegen.tutorial.compute.naming import words_of
from sitegen.tutorial.compute.numbers import Missing, Numbers
from sitegen.tutorial.model import Boxed, Piece, Tutorial


def define_boxed(tutorial: Tutorial, numbers: Numbers) -> None:
    """Boxed corners: depth, square, and the finished width and height, or the panel that gives them."""
    for each in tutorial.boxed.values():
        allowance_or_own(f"{each.key}.corner_allowance", each.corner_allowance, numbers)
        _define_depth(each, tutorial, numbers)
        if each.cut_out:
            _define_cut_out(each, tutorial, numbers)
        if each.cut_for_width is not None and each.cut_for_height is not None:
            numbers.define(f"{each.key}.width", lengths_maker(each.cut_for_width, numbers))
            numbers.define(f"{each.key}.height", lengths_maker(each.cut_for_height, numbers))
            _define_panel(each, numbers)
        else:
            _define_bag(each, tutorial, numbers)


def _define_depth(each: Boxed, tutorial: Tutorial, numbers: Numbers) -> None:
    key = each.key
    depth, tip = f"{key}.depth", f"{key}.from_tip"
    if each.depth is not None:
        numbers.define(depth, lengths_maker(each.depth, numbers))
        numbers.define(tip, lambda size: rectangle.half_depth(words_of(tip), numbers.at(depth, size)))
        return
    if each.square is None:
        raise AssertionError("boxed corners have a square or a depth")
    numbers.define(f"{key}.square", lengths_maker(each.square, numbers))
    numbers.define(
        tip,
        lambda size: rectangle.square_on_seams(
            words_of(tip),
            numbers.at(f"{key}.square", size),
            _taken(each, "side", tutorial, numbers, size),
            numbers.at(f"{key}.corner_allowance", size),
        ),
    )
    numbers.define(
        depth,
        lambda size: rectangle.depth_of_corner(words_of(depth), numbers.at(tip, size).named("side of the corner")),
    )


def _define_cut_out(each: Boxed, tutorial: Tutorial, numbers: Numbers) -> None:
    """How far in from the side and how far up from the lower edge is cut out; a square where both are alike."""
    key = each.key
    for field, where in (("cut_out_width", "side"), ("cut_out_height", "bottom")):
        name = f"{key}.{field}"
        numbers.define(
            name,
            lambda size, name=name, where=where: rectangle.corner_square(  # type: ignore[misc]
                words_of(name),
                numbers.at(f"{key}.depth", size),
                seam_allowance=_taken(each, where, tutorial, numbers, size),
                corner_allowance=numbers.at(f"{key}.corner_allowance", size),
            ),
        )

    def square(size: int) -> Worked:
        width, height = (numbers.at(f"{key}.{field}", size) for field in ("cut_out_width", "cut_out_height"))
        if width.value != height.value:
            raise Missing(f"{key}.square")
        return width.named(words_of(f"{key}.square"))

    numbers.define(f"{key}.square", square)


def _define_panel(each: Boxed, numbers: Numbers) -> None:
    key = each.key
    width, length = f"{key}.panel_width", f"{key}.panel_length"
    numbers.define(
        width,
        lambda size: rectangle.boxed_width(
            words_of(width), numbers.at(f"{key}.width", size), numbers.at(f"{key}.depth", size)
        ),
    )
    numbers.define(
        length,
        lambda size: rectangle.boxed_length(
            words_of(length), numbers.at(f"{key}.height", size), numbers.at(f"{key}.depth", size)
        ),
    )


def _define_bag(each: Boxed, tutorial: Tutorial, numbers: Numbers) -> None:
    key = each.key
    width, height = f"{key}.width", f"{key}.height"

    def across(size: int) -> Worked:
        panel = _corner_piece(each, tutorial)
        found = numbers.length_at(f"{panel.key}.finished_width", size)
        if any(side in panel.sides and panel.sides[side].name == "fold" for side in ("left", "right")):
            found = work(f"whole {words_of(panel.key)} width", plus(found, 2))
        return rectangle.width_once_boxed(words_of(width), found, numbers.at(f"{key}.depth", size))

    def up(size: int) -> Worked:
        first, *others = (
            numbers.length_at(f"{need(tutorial.pieces, name.name).key}.finished_length", size) for name in each.pieces
        )
        panel = work("length of the panel", first, *(plus(other) for other in others)) if others else first
        return rectangle.height_once_boxed(words_of(height), panel, numbers.at(f"{key}.depth", size))

    numbers.define(width, across)
    numbers.define(height, up)


def _corner_piece(each: Boxed, tutorial: Tutorial) -> Piece:
    return need(tutorial.pieces, each.pieces[-1].name)


def _taken(each: Boxed, where: str, tutorial: Tutorial, numbers: Numbers, size: int) -> Worked | None:
    """What the seam at the side or at the bottom takes; nothing at a fold. Raises Missing where a side is not said."""
    piece = _corner_piece(each, tutorial)
    sides = ("bottom",) if where == "bottom" else ("left", "right")
    said = [side for side in sides if side in piece.sides]
    seams = [side for side in said if piece.sides[side].name != "fold"] or said
    if not seams:
        raise Missing(f"{piece.key}.{sides[0]}")
    return end_of(piece, seams[0], tutorial, numbers, size).taken
