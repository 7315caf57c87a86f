"""Which of the supplies are elastic for a casing, and which elastics of the garment are cut from them."""

from __future__ import annotations

import re

from sitegen.quantities import NUMBER_PATTERN, NotUnderstood, Typed, cm, length_at, pair_agrees
from sitegen.tutorial.model import Elastic, Supply, Tutorial

_ELASTIC = re.compile(r"\belastics?\b(?!\s+(?:thread|cord))", re.IGNORECASE)
_NOT_FOR_A_CASING = re.compile(r"\b(?:clear|shirring)\b", re.IGNORECASE)
_NUMBER = re.compile(NUMBER_PATTERN)
_WIDEST = cm(10)
"""Elastic is hardly sold wider (common practice, no source)."""


def elastic_supplies(tutorial: Tutorial) -> tuple[Supply, ...]:
    """The supplies that can be elastic for a casing."""
    return tuple(
        supply
        for supply in tutorial.supplies
        if _ELASTIC.search(supply.item.text) and not _NOT_FOR_A_CASING.search(supply.item.text)
    )


def stated_width(supply: Supply) -> Typed | None:
    """The one length in the size of a supply, or in its name where it has no size (``elastic 2.5 cm wide``); None when
    there is none, or more than one. In a name, what is longer than elastic is wide is how much of it there is.
    """
    text = (supply.size or supply.item).text
    found: list[Typed] = []
    for match in _NUMBER.finditer(text):
        if found and match.start() < found[-1].end:
            continue
        try:
            found.append(length_at(text, match.start()))
        except NotUnderstood:
            continue
    if len(found) != 1 or found[0].high is not None:
        return None
    return found[0] if supply.size is not None or found[0].value <= _WIDEST else None


def same_width(width: Typed, elastic: Elastic) -> bool:
    """Whether elastic of this width is what an elastic of the garment is planned for."""
    needed = elastic.width.amount_at(0)
    return needed is not None and pair_agrees(width, needed.typed)


def elastics_from(supply: Supply, tutorial: Tutorial) -> tuple[Elastic, ...]:
    """The elastics of the garment that are cut from a supply; none where it is not certain which."""
    supplies = elastic_supplies(tutorial)
    if supply not in supplies:
        return ()
    width = stated_width(supply)
    if width is None and len(supplies) > 1:
        return ()
    others = [each for each in supplies if each is not supply]
    if width is not None and any((other := stated_width(each)) and pair_agrees(other, width) for each in others):
        return ()
    return tuple(each for each in tutorial.elastics.values() if width is None or same_width(width, each))
