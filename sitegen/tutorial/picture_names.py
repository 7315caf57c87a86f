"""The names by which an author asks for a picture of a seam, of two edges that meet, or of a piece as it is cut.

``seam of front.side`` and ``meeting of sleeve.cap`` name a seam by one of its edges, or by one of either side,
``seam of front.side and back.side``, where an edge is sewn more than once; ``plan of pocket`` names what is cut.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from enum import Enum

from sitegen.tutorial.model import Join, Tutorial

_BASTING = "basting"


class Asked(Enum):
    """What is to be drawn. The value is how its name begins."""

    SEAM = "seam of "
    MEETING = "meeting of "
    PLAN = "plan of "


@dataclass(frozen=True, slots=True)
class PictureOf:
    """What is asked for: a join, or the key of the piece or band whose plan is to be drawn."""

    asked: Asked
    join: Join | None = None
    part: str = ""


def picture_names(tutorial: Tutorial) -> Mapping[str, PictureOf]:
    """Every name of this kind that a tutorial has. Of several seams with one edge the name is that of the first,
    a seam that is only basted apart."""
    found: dict[str, PictureOf] = {}
    joins = [join for step in tutorial.steps for join in step.every_join()]
    for join in sorted(joins, key=_basted):
        for words in _edges_of(join):
            for asked in (Asked.SEAM, Asked.MEETING):
                found.setdefault(asked.value + words, PictureOf(asked, join))
    for part in (*tutorial.pieces, *tutorial.bands):
        found[Asked.PLAN.value + part] = PictureOf(Asked.PLAN, part=part)
    return found


def _basted(join: Join) -> bool:
    return join.stitch is not None and join.stitch.text == _BASTING


def _edges_of(join: Join) -> list[str]:
    """How a join is named: by each of its edges, and by each two of different sides, in either order."""
    chains = [list(dict.fromkeys(name.name for name in chain)) for chain in join.chains]
    single = [name for chain in chains for name in chain]
    double = [
        f"{one} and {other}"
        for here, chain in enumerate(chains)
        for there, beyond in enumerate(chains)
        for one in chain
        for other in beyond
        if here != there
    ]
    return [*single, *double]
