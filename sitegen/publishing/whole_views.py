"""What a page shows of a tutorial as a whole: its size chart, gauges, cutting layouts and order of making, and what is
needed to find a size. Knows nothing of how they were made."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from markupsafe import Markup

from sitegen.publishing.picture_views import Diagram


@dataclass(frozen=True, slots=True)
class OrderedStep:
    """A step in the order of making: the steps right after which it comes, and those beside which it can be done."""

    number: int
    title: str
    anchor: str
    after: tuple[int, ...] = ()
    beside: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True)
class OrderOfSteps:
    """The order of making as a map, and the same as a list."""

    diagram: Diagram
    steps: tuple[OrderedStep, ...]
    with_help: int | None = None
    """Minutes of the steps that wait for each other longest; None when that is known of none, or all wait in a row."""

    @property
    def any_beside(self) -> bool:
        """Whether two steps can be done at the same time."""
        return any(step.beside for step in self.steps)


@dataclass(frozen=True, slots=True)
class WholeDrawings:
    """The drawings of a tutorial as a whole, as far as its numbers are known."""

    chart: Diagram | None = None
    gauges: Mapping[str, Diagram] = field(default_factory=dict)
    """The stretch gauge of a fabric by the author's short name for it."""
    layouts: Mapping[str, Diagram] = field(default_factory=dict)
    """The cutting layout of a fabric by the author's short name for it."""
    order: OrderOfSteps | None = None


@dataclass(frozen=True, slots=True)
class SizeFinder:
    """What the student may measure, and what is needed to find her size."""

    measures: tuple[str, ...]
    """In words, in the order of the table."""
    data: Markup
    """The tables in both systems, as JSON for an attribute in single quotation marks."""
    over: str
    """How far over a size she is still between two, in both systems: ``1/2 in (1.3 cm)``."""
    stretches: bool
    """Whether every piece is cut of a knit."""
    eased: bool
    """Whether the garment is known at one of the measurements."""
