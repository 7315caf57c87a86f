"""The cutting list of a page: what is cut, how often, out of what, and the numbers by which it is cut."""

from __future__ import annotations

from dataclasses import dataclass

from sitegen.publishing.number_book import NumberBook
from sitegen.publishing.views import CutPiece, NumberView
from sitegen.quantities import vulgar
from sitegen.tutorial import Binding, Boxed, CircleSkirt, Computed, Drops, Piece, words_of

_ELASTIC = "elastic"
_DART = ("width", "length", "leg")


@dataclass(frozen=True, slots=True)
class _Row:
    """A part of the list: what it is called, how it is cut, the fabric by its name, and the names of its numbers."""

    called: str
    how_cut: str
    fabric: str
    names: tuple[str, ...]


def cutting_list(computed: Computed, book: NumberBook) -> tuple[tuple[CutPiece, ...], tuple[NumberView, ...]]:
    """Everything that is cut, and the workings of these numbers."""
    fabrics, say = computed.tutorial.fabrics, book.language.own
    found: list[CutPiece] = []
    working: list[NumberView] = []
    for row in _rows(computed):
        table = book.table(row.names, "with the cutting list")
        cloth = fabrics.get(row.fabric)
        found.append(CutPiece(say(row.called), say(row.how_cut), say(cloth.name if cloth else row.fabric), table.rows))
        working.extend(table.working)
    return tuple(found), tuple(working)


def _rows(computed: Computed) -> list[_Row]:
    """Pieces with their darts, what is cut out of corners, bands, elastics, circles, bindings, cords and drops."""
    tutorial = computed.tutorial
    rows = [_piece(piece) for piece in tutorial.pieces.values()]
    rows += [_boxed(boxed, computed) for boxed in tutorial.boxed.values() if boxed.cut_out]
    rows += [
        _Row(words_of(band.key), str(band.make), band.fabric.name, _named(band.key, "cut_length", "cut_width"))
        for band in tutorial.bands.values()
    ]
    rows += [
        _Row(_as_elastic(words_of(elastic.key)), "1", "", _named(elastic.key, "cut_length", "cut_width"))
        for elastic in tutorial.elastics.values()
    ]
    rows += [_strip_or_circle(part) for part in tutorial.circles.values()]
    rows += [_strip_or_circle(part) for part in tutorial.bindings.values()]
    rows += [
        _Row(words_of(trim.key), "1", "", _named(trim.key, "length"))
        for trim in tutorial.trims.values()
        if not trim.is_zip
    ]
    return rows + [_drops(drops, computed) for drops in tutorial.drops.values()]


def _as_elastic(words: str) -> str:
    """A name that says what is cut: an author may call it after the place where it lies, ``waist``."""
    return words if _ELASTIC in words.split() else f"{words} {_ELASTIC}"


def _named(key: str, *fields: str) -> tuple[str, ...]:
    return tuple(f"{key}.{field}" for field in fields)


def _piece(piece: Piece) -> _Row:
    darts = [name for dart in piece.darts.values() for name in _named(dart.name, *_DART)]
    return _Row(
        piece.called,
        piece.cut.text if piece.cut else "",
        piece.fabric.name if piece.fabric else "",
        (*_named(piece.key, "cut_length", "cut_width"), *darts),
    )


def _boxed(boxed: Boxed, computed: Computed) -> _Row:
    """The square that is cut out of the lower corners of a piece; width and height where they differ."""
    name = boxed.pieces[-1].name
    piece = computed.tutorial.pieces.get(name)
    square = _named(boxed.key, "square")
    names = square if computed.by_size(square[0]) is not None else _named(boxed.key, "cut_out_width", "cut_out_height")
    fabric = piece.fabric.name if piece is not None and piece.fabric is not None else ""
    return _Row(
        words_of(boxed.key),
        f"out of the lower corners of each {piece.called if piece is not None else words_of(name)}",
        fabric,
        (*names, *_named(boxed.key, "from_tip")),
    )


def _strip_or_circle(part: Binding | CircleSkirt) -> _Row:
    fabric = part.fabric.name if part.fabric else ""
    if isinstance(part, Binding):
        return _Row(words_of(part.key), "on the bias", fabric, _named(part.key, "length", "strip_width"))
    how = "a full circle" if part.share == 1 else f"{vulgar(part.share)} of a circle"
    return _Row(words_of(part.key), how, fabric, _named(part.key, "cut_radius", "hem_radius"))


def _drops(drops: Drops, computed: Computed) -> _Row:
    """Widths of cloth side by side: how many, and how long each is cut, in whole repeats where the cloth has them."""
    count = computed.by_size(f"{drops.key}.drops")
    counts = list(dict.fromkeys(str(number.number) for number in count)) if count is not None else []
    names = _named(drops.key, *(() if len(counts) == 1 else ("drops",)), "cut_length", "for_repeat", "repeat_length")
    how = f"{counts[0]} {'drop' if counts == ['1'] else 'drops'}" if len(counts) == 1 else "in drops"
    return _Row(words_of(drops.key), how, drops.fabric.name, names)
