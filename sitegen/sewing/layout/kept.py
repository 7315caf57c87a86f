"""Layouts that were found before, since a search takes long and the same pieces are laid again and again."""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache

from sitegen.sewing.layout.lay import lay_out
from sitegen.sewing.layout.parts import Cloth, LayoutPiece
from sitegen.sewing.layout.result import CannotLay, Layout


def kept_layout(pieces: tuple[LayoutPiece, ...], cloth: Cloth) -> Layout | CannotLay:
    """What ``lay_out`` finds, kept. Lengths that are the same, and of which one is shown to the millimetre, are kept
    apart: a layout is shown as the lengths of its own cloth and pieces are."""
    return _kept(pieces, cloth, tuple(_shown_to_the_millimetre(pieces, cloth)))


@lru_cache(maxsize=4096)
def _kept(pieces: tuple[LayoutPiece, ...], cloth: Cloth, _fine: tuple[bool, ...]) -> Layout | CannotLay:
    return lay_out(pieces, cloth)


def _shown_to_the_millimetre(pieces: tuple[LayoutPiece, ...], cloth: Cloth) -> Iterator[bool]:
    yield cloth.width.fine
    yield cloth.selvage.fine
    for piece in pieces:
        yield piece.width.fine
        yield piece.length.fine
        for across, along in piece.outline or ():
            yield across.fine
            yield along.fine
