"""How much cloth to ask for, so that the layout still fits on it after washing."""

from __future__ import annotations

from sitegen.quantities import Worked, given, plus, work
from sitegen.sewing import fabric_need
from sitegen.sewing.layout.result import Layout


def cloth_needed(
    name: str, layout: Layout, *, shrinkage: Worked | None = None, straightening: Worked | None = None
) -> Worked:
    """The length of cloth for a layout: its length ÷ (1 − shrinkage), and what straightening the cut ends takes.

    Rounding up to what shops sell is left to the caller. Source: derived; common practice for the ends.
    Raises ValueError unless shrinkage is from 0 to under 100 %.
    """
    laid = given("cutting layout", layout.length, f"cloth {layout.fold.value}")
    need = fabric_need.before_washing("before washing", laid, shrinkage) if shrinkage else laid
    return work(name, need, plus(straightening)) if straightening else need.named(name)
