"""A tutorial as its author wrote it: frozen parts, every value with its place in the files.

Names of parts (``neckband``) and of numbers (``neckband.cut_length``) are the keys of the author's own files.
"""

from sitegen.tutorial.model.cards import Join, OtherWay, Photo, Step, Supply
from sitegen.tutorial.model.cloth import (
    PLAIN_SIDES,
    SIDES,
    Arc,
    Edge,
    Fabric,
    MeasuredOn,
    Notch,
    Piece,
    Swatch,
    Taper,
    Turn,
)
from sitegen.tutorial.model.sewn import Band, Change, Elastic, Girth, Hem, Joined, LineAt, Swap
from sitegen.tutorial.model.values import Accepted, Amount, Claim, Lengths, OnlyIn, Prose, Reference, Share, Words
from sitegen.tutorial.model.whole import Site, Term, Tutorial
from sitegen.tutorial.model.worked_parts import Binding, Button, CircleSkirt, Fullness, Gather, Pleats, Spacing

__all__ = [
    "PLAIN_SIDES",
    "SIDES",
    "Accepted",
    "Amount",
    "Arc",
    "Band",
    "Binding",
    "Button",
    "Change",
    "CircleSkirt",
    "Claim",
    "Edge",
    "Elastic",
    "Fabric",
    "Fullness",
    "Gather",
    "Girth",
    "Hem",
    "Join",
    "Joined",
    "Lengths",
    "LineAt",
    "MeasuredOn",
    "Notch",
    "OnlyIn",
    "OtherWay",
    "Photo",
    "Piece",
    "Pleats",
    "Prose",
    "Reference",
    "Share",
    "Site",
    "Spacing",
    "Step",
    "Supply",
    "Swap",
    "Swatch",
    "Taper",
    "Term",
    "Turn",
    "Tutorial",
    "Words",
]
