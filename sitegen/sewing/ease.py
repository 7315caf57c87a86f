"""Ease: the room between a body and a garment, wanted or found, and the share of a change at each edge.

Sources: ease = finished garment − body (US clothing-construction textbook; New Mexico State Univ. Guides C-220
and C-228); a change of width is shared out over the seam edges (Central Washington Univ., costume
construction text, chapter 17). Published wearing ease differs from source to source; each is kept with its own.
"""

from __future__ import annotations

from dataclasses import dataclass

from sitegen.quantities import Length, Worked, given, inches, minus, over, plus, work
from sitegen.sewing import counting


@dataclass(frozen=True, slots=True)
class WearingEase:
    """A published range of wearing ease for wovens: where on the body, from, to, in what garment, by whom."""

    where: str
    least: Length
    most: Length
    source: str
    garment: str = ""
    """Empty when the source names no garment."""


_TEXTBOOK = "US clothing-construction textbook"
_COLLEGE = "Central Washington Univ., costume construction text, chapter 16"
_EXTENSION = "New Mexico State Univ. Guide C-228"

WEARING_EASE = (
    WearingEase("bust", inches(3), inches(4), _EXTENSION),
    WearingEase("bust", inches("5/2"), inches(4), _TEXTBOOK),
    WearingEase("bust", inches("3/2"), inches(2), _COLLEGE),
    WearingEase("waist", inches(1), inches(1), _TEXTBOOK),
    WearingEase("waist", inches("3/4"), inches(1), _COLLEGE, "dresses"),
    WearingEase("waist", inches("1/2"), inches("3/4"), _COLLEGE, "skirts"),
    WearingEase("hip", inches(2), inches("5/2"), _TEXTBOOK),
    WearingEase("hip", inches(2), inches("11/4"), _COLLEGE),
)
"""Published ranges, which differ. Designs for knits only have little or no wearing ease (the same chapter 16)."""


def published(where: str) -> tuple[WearingEase, ...]:
    """Every published range for a place on the body; none for a place of which no source speaks."""
    return tuple(each for each in WEARING_EASE if each.where == where)


def ease(name: str, finished: Worked, body: Worked) -> Worked:
    """The ease: finished garment − body; negative when a knit is smaller than the body."""
    return work(name, finished, minus(body))


def finished_for(name: str, body: Worked, wanted: Worked) -> Worked:
    """The finished garment for a wanted ease: body + ease, which may be negative."""
    return work(name, body, plus(wanted))


def per_edge(name: str, change: Worked, edges: int) -> Worked:
    """What each seam edge takes of a change of width: change ÷ edges; two side seams have four edges.

    Raises ValueError for no edges.
    """
    count = given("seam edges", counting.at_least(1, "seam edges", edges))
    return work(name, change, over(count))
