"""A tutorial as its author wrote it: frozen parts, every value with its place in the files.

Names of parts (``neckband``) and of numbers (``neckband.cut_length``) are the keys of the author's own files.
"""

from sitegen.tutorial.model.cards import Join, OtherWay, Photo, Step, Supply
from sitegen.tutorial.model.cloth import PLAIN_SIDES, SIDES, Edge, Fabric, MeasuredOn, Piece, Taper, Turn
from sitegen.tutorial.model.sewn import Band, Change, Elastic, Girth, Hem, Joined, LineAt, Swap
from sitegen.tutorial.model.values import Accepted, Amount, Claim, Lengths, OnlyIn, Prose, Reference, Share, Words
from sitegen.tutorial.model.whole import Site, Term, Tutorial

__all__ = [
    "PLAIN_SIDES",
    "SIDES",
    "Accepted",
    "Amount",
    "Band",
    "Change",
    "Claim",
    "Edge",
    "Elastic",
    "Fabric",
    "Girth",
    "Hem",
    "Join",
    "Joined",
    "Lengths",
    "LineAt",
    "MeasuredOn",
    "OnlyIn",
    "OtherWay",
    "Photo",
    "Piece",
    "Prose",
    "Reference",
    "Share",
    "Site",
    "Step",
    "Supply",
    "Swap",
    "Taper",
    "Term",
    "Turn",
    "Tutorial",
    "Words",
]
