"""The cutting layout: pieces and a cloth in, where each piece lies and how much cloth that takes out.

Knows nothing of files, sizes or pages. Lengths are exact; the search has a fixed number of tries and no clock.

Source: arithmetic of areas for the bound; folds, grain and nap are common practice, no source.
"""

from sitegen.sewing.layout.bound import Reason
from sitegen.sewing.layout.kept import kept_layout
from sitegen.sewing.layout.lay import TRIES, each_way, lay_out
from sitegen.sewing.layout.need import cloth_needed
from sitegen.sewing.layout.parts import Cloth, Fold, LayoutPiece, Outline
from sitegen.sewing.layout.result import CannotLay, FoldSide, Layout, Placement, Section, TooWide

__all__ = [
    "TRIES",
    "CannotLay",
    "Cloth",
    "Fold",
    "FoldSide",
    "Layout",
    "LayoutPiece",
    "Outline",
    "Placement",
    "Reason",
    "Section",
    "TooWide",
    "cloth_needed",
    "each_way",
    "kept_layout",
    "lay_out",
]
