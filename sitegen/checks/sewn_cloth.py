"""The cloth in which seams and hems are sewn."""

from __future__ import annotations

from collections.abc import Iterable

from sitegen.tutorial import Fabric, Reference, Tutorial


def fabric_of(name: str, tutorial: Tutorial) -> Fabric | None:
    """The cloth of a band, or of the piece to which an edge belongs; None when it is not known."""
    band = tutorial.bands.get(name)
    piece = tutorial.pieces.get(name.partition(".")[0])
    reference = band.fabric if band else piece.fabric if piece else None
    return tutorial.fabrics.get(reference.name) if reference else None


def knits_of(names: Iterable[Reference], tutorial: Tutorial) -> tuple[Fabric, ...]:
    """The knits among the cloths of these edges and bands, each once."""
    found = (fabric_of(name.name, tutorial) for name in names)
    return tuple({fabric.key: fabric for fabric in found if fabric is not None and fabric.knit}.values())
