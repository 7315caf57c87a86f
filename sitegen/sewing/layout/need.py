"""How much cloth to ask for, so that the layout still fits on it after washing."""

from __future__ import annotations

from sitegen.quantities import Rounding, Worked, given, plus, work
from sitegen.sewing import fabric_need
from sitegen.sewing.layout.result import Layout


def cloth_needed(
    name: str, layout: Layout, *, shrinkage: Worked | None = None, straightening: Worked | None = None
) -> Worked:
    """The length of cloth for a layout: its length ÷ (1 − shrinkage), and what straightening the cut ends takes.

    It is exact, and shown rounded up; rounding to what shops sell is left to the caller. Source: derived; common
    practice for the ends. Raises ValueError unless shrinkage is from 0 to under 100 %.
    """
    laid = given("cutting layout", layout.length, layout.fold.value).rounded(Rounding.ENOUGH)
    need = fabric_need.before_washing("before washing", laid, shrinkage) if shrinkage else laid
    whole = work(name, need, plus(straightening)) if straightening else need.named(name)
    return whole.rounded(Rounding.ENOUGH)
