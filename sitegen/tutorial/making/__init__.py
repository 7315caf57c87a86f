"""The order of making: what each step uses and makes, and what follows from it. Pure functions of a tutorial.

Knows nothing of numbers, and nothing of pages or of the rules of checks. Names of pieces, edges, bands, hems and
elastics are the author's own and stand for every copy: both sleeves, both sides.
"""

from sitegen.tutorial.making.copies import copies_of, pieces_cut
from sitegen.tutorial.making.graph import LongestPath, longest_path
from sitegen.tutorial.making.joining import (
    Joining,
    Seam,
    neighbours,
    part_of,
    parts_of,
    seam_of,
    seams_of,
    unjoined,
)
from sitegen.tutorial.making.order import Link, Making, making_of
from sitegen.tutorial.making.work import Work, corner_edges, seat_of, works_of

__all__ = [
    "Joining",
    "Link",
    "LongestPath",
    "Making",
    "Seam",
    "Work",
    "copies_of",
    "corner_edges",
    "longest_path",
    "making_of",
    "neighbours",
    "part_of",
    "parts_of",
    "pieces_cut",
    "seam_of",
    "seams_of",
    "seat_of",
    "unjoined",
    "works_of",
]
