"""Checks that are withheld while a part of a tutorial is not understood: what they would find could follow from it."""

from __future__ import annotations

from sitegen.checks.registry import Check
from sitegen.tutorial import SIZES_FILE, Tutorial

MAKING = "making"
"""The area of the checks that go by how the garment is made."""
FROM_ABSENCE = frozenset({"fabric-unused", "reach-missing", "thread-missing", "twin-needle-missing"})
"""Checks that speak of what is nowhere in a tutorial, besides those of the order of making."""
FROM_GAPS = frozenset({"claim-unheld", "common-cause", "picture-undrawable"})
"""Checks that speak of numbers that are not known, or that would be others if more were."""

FROM_THE_TABLE = frozenset({"notch-edge"})
"""Checks that speak of edges that are not known, which a size table may hold."""


def can_tell(check: Check, tutorial: Tutorial) -> bool:
    """Whether a check has what it goes by. How a garment is made, and what is never used in it, cannot be told while
    one of its steps or parts is not understood: that is reported, and the rest would be its consequence. So it is with
    what cannot be worked out or drawn while a key or a row of numbers is not."""
    if tutorial.gaps and check.id in FROM_GAPS:
        return False
    if SIZES_FILE in tutorial.gaps and check.id in FROM_THE_TABLE:
        return False
    return not tutorial.unread or (check.area != MAKING and check.id not in FROM_ABSENCE)
