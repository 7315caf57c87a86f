"""Defines how much of each fabric is needed: the cutting layout, shrinkage, and straightening the ends."""

from __future__ import annotations

import re

from sitegen.quantities import ZERO, Rounding, Worked, given, plus, work
from sitegen.sewing import fabric_need, layout
from sitegen.tutorial.compute.given import lengths_maker
from sitegen.tutorial.compute.naming import words_of
from sitegen.tutorial.compute.numbers import Missing, Numbers
from sitegen.tutorial.model import Fabric, Piece, Tutorial

_LAID = {
    "folded": layout.Fold.LENGTHWISE,
    "to the middle": layout.Fold.DOUBLE,
    "open": layout.Fold.OPEN,
    "": None,
}


def define_cloth(tutorial: Tutorial, numbers: Numbers) -> None:
    """The need of every fabric whose width is known and all of whose pieces have a cut length and width."""
    for fabric in tutorial.fabrics.values():
        if fabric.width is not None and _all_known(fabric, tutorial, numbers):
            _define_need(fabric, tutorial, numbers)


def lay(fabric: Fabric, tutorial: Tutorial, numbers: Numbers, size: int) -> layout.Layout | layout.CannotLay:
    """The cutting layout of one fabric for one size. Raises Missing when a measure of it is not known."""
    pieces = pieces_to_lay(fabric, tutorial, numbers, size)
    return layout.kept_layout(pieces, cloth_of(fabric, numbers, size))


def cloth_of(fabric: Fabric, numbers: Numbers, size: int) -> layout.Cloth:
    """The cloth as it is laid. Raises Missing when its width is not known, or leaves nothing between the selvages."""
    selvage = numbers.length_at(f"{fabric.key}.selvage", size).length if fabric.selvage else ZERO
    width = numbers.length_at(f"{fabric.key}.width", size).length
    if width <= selvage * 4:
        raise Missing(fabric.key)
    return layout.Cloth(width, _LAID[fabric.laid], fabric.one_way, selvage)


def _define_need(fabric: Fabric, tutorial: Tutorial, numbers: Numbers) -> None:
    key = fabric.key
    for field, lengths in (("selvage", fabric.selvage), ("straighten", fabric.straighten)):
        if lengths:
            numbers.define(f"{key}.{field}", lengths_maker(lengths, numbers))

    def need(size: int) -> Worked:
        laid = lay(fabric, tutorial, numbers, size)
        if isinstance(laid, layout.CannotLay):
            raise Missing(key)
        shrinkage = numbers.at(f"{key}.shrinkage", size) if fabric.shrinkage else None
        ends = numbers.length_at(f"{key}.straighten", size) if fabric.straighten else None
        words = words_of(f"{key}.need")
        if fabric.repeat is None:
            alone = layout.cloth_needed(words, laid, shrinkage=shrinkage, straightening=ends)
            return alone.rounded(Rounding.SOLD)
        plain = layout.cloth_needed(f"{words} without matching", laid, shrinkage=shrinkage, straightening=ends)
        return work(words, plain, plus(numbers.at(f"{key}.for_repeat", size))).rounded(Rounding.SOLD)

    def for_repeat(size: int) -> Worked:
        laid = lay(fabric, tutorial, numbers, size)
        if isinstance(laid, layout.CannotLay):
            raise Missing(key)
        matched = {piece.name for piece in fabric.matched} or set(tutorial.pieces)
        begins = {placed.y for placed in laid.placements if placed.piece in matched}
        rows = given("rows of matched pieces in the cutting layout", len(begins))
        return fabric_need.matched_rows(words_of(f"{key}.for_repeat"), numbers.at(f"{key}.repeat", size), rows)

    def least(size: int) -> Worked:
        laid = lay(fabric, tutorial, numbers, size)
        if isinstance(laid, layout.CannotLay):
            raise Missing(key)
        return given(words_of(f"{key}.least"), laid.least, f"no layout can do with less: {laid.reason.value}")

    if fabric.repeat is not None:
        numbers.define(f"{key}.for_repeat", for_repeat)
    numbers.define(f"{key}.need", need)
    numbers.define(f"{key}.least", least)


def _all_known(fabric: Fabric, tutorial: Tutorial, numbers: Numbers) -> bool:
    own = [piece for piece in tutorial.pieces.values() if piece.fabric and piece.fabric.name == fabric.key]
    names = [f"{piece.key}.cut_{axis}" for piece in own for axis in ("length", "width")]
    bands = [band for band in tutorial.bands.values() if band.fabric.name == fabric.key]
    return bool(own or bands) and all(name in numbers for name in names) and all(how_many(piece) for piece in own)


def pieces_to_lay(fabric: Fabric, tutorial: Tutorial, numbers: Numbers, size: int) -> tuple[layout.LayoutPiece, ...]:
    """The paper pieces of one fabric; a band is a strip whose length runs across the cloth, where it stretches.

    Raises Missing when there are none, or a measure of one is not known.
    """
    found = []
    for piece in tutorial.pieces.values():
        if piece.fabric is None or piece.fabric.name != fabric.key:
            continue
        length = numbers.length_at(f"{piece.key}.cut_length", size).length
        width = numbers.length_at(f"{piece.key}.cut_width", size).length
        count = how_many(piece)
        if length <= ZERO or width <= ZERO or not count:
            raise Missing(piece.key)
        drawn_whole = piece.on_fold and not any(side.name == "fold" for side in piece.sides.values())
        paired = bool(re.search(r"\b(?:mirrored|pair)", piece.cut.text)) if piece.cut else False
        found.append(
            layout.LayoutPiece(
                piece.key,
                width / 2 if drawn_whole else width,
                length,
                count,
                on_fold=piece.on_fold,
                mirrored=paired and count % 2 == 0,
                bias=piece.bias,
                crosswise=piece.crosswise,
            )
        )
    for band in tutorial.bands.values():
        if band.fabric.name == fabric.key:
            across = numbers.length_at(f"{band.key}.cut_length", size).length
            along = numbers.length_at(f"{band.key}.cut_width", size).length
            if across <= ZERO or along <= ZERO:
                raise Missing(band.key)
            found.append(layout.LayoutPiece(band.key, across, along, band.make))
    if not found:
        raise Missing(fabric.key)
    return tuple(found)


def how_many(piece: Piece) -> int:
    """How many of a piece are cut: the number with which its ``cut`` begins; 0 when there is none."""
    match = re.match(r"\s*(\d{1,3})\b", piece.cut.text) if piece.cut else None
    return int(match.group(1)) if match else 0
