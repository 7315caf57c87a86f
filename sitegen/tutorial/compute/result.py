"""A tutorial with all its numbers: what every room above reads."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from sitegen.quantities import BySize, Length, Worked
from sitegen.sewing import layout
from sitegen.tutorial.compute.cloth import cloth_of, lay, pieces_to_lay
from sitegen.tutorial.compute.numbers import Circle, Missing, Numbers
from sitegen.tutorial.model import Tutorial


@dataclass(frozen=True)
class Computed:
    """A tutorial and every number in it that could be worked out."""

    tutorial: Tutorial
    numbers: Numbers
    changed: Mapping[str, Computed] = field(default_factory=dict)
    """The tutorial as it is after each change and swap, by its name, with every number that follows."""

    def number(self, name: str, size: int) -> Worked | None:
        """The number for the size at this index; None when it cannot be worked out."""
        try:
            return self.numbers.at(name, size)
        except (Missing, Circle, ZeroDivisionError):
            return None

    def length(self, name: str, size: int) -> Worked | None:
        """The number for one size if it is a length; None when it is something else or cannot be worked out."""
        found = self.number(name, size)
        return found if found is not None and isinstance(found.value, Length) else None

    def by_size(self, name: str) -> BySize[Worked] | None:
        """The number for every size, a single one when all are alike; None when it cannot be worked out."""
        try:
            return self.numbers.by_size(name)
        except (Missing, Circle, ZeroDivisionError):
            return None

    def names(self) -> tuple[str, ...]:
        """The names of all numbers that can be worked out."""
        return tuple(name for name in self.numbers if self.by_size(name) is not None)

    def laid(self, fabric: str, size: int) -> layout.Layout | layout.CannotLay | None:
        """The cutting layout of a fabric for one size, or why there is none; None when a measure is not known."""
        found = self.tutorial.fabrics.get(fabric)
        if found is None or f"{fabric}.need" not in self.numbers:
            return None
        try:
            return lay(found, self.tutorial, self.numbers, size)
        except (Missing, Circle, ZeroDivisionError):
            return None

    def to_lay(self, fabric: str, size: int) -> tuple[tuple[layout.LayoutPiece, ...], layout.Cloth] | None:
        """The paper pieces of a fabric for one size, and the cloth to lay them on; None when a measure is not known."""
        found = self.tutorial.fabrics.get(fabric)
        if found is None or f"{fabric}.need" not in self.numbers:
            return None
        try:
            return pieces_to_lay(found, self.tutorial, self.numbers, size), cloth_of(found, self.numbers, size)
        except (Missing, Circle, ZeroDivisionError):
            return None

    def cannot_lay(self, fabric: str, size: int) -> str:
        """Why the pieces of a fabric cannot be laid on its width, in words; empty when they can, or it is not known."""
        laid = self.laid(fabric, size)
        return laid.in_words(self.tutorial.first_system) if isinstance(laid, layout.CannotLay) else ""

    def size_name(self, size: int) -> str:
        """The name of the size at this index, empty when the project has no sizes."""
        return self.tutorial.sizes[size] if self.tutorial.sizes else ""
