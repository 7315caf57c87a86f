"""A class as its teacher wrote it: frozen parts, every value with its place in the file. No names of students."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date, datetime, time, timedelta
from fractions import Fraction

from sitegen.classes.clocks import later
from sitegen.findings import Place
from sitegen.quantities import Ratio, System, Unit
from sitegen.tutorial import Amount, Computed, Link, Reference, Step, Words, making_of

DEFAULT_AT_TOOL = Ratio.percent(50)
"""How much of a step is sewn or pressed, the rest being reading, pinning and measuring (common practice, no source)."""
DEFAULT_SPARE_LENGTHS = Ratio.percent(5)
DEFAULT_SPARE_COUNTED = Ratio.percent(10)
"""What to have over for a cut that goes wrong or a needle that breaks (common practice, no source)."""


@dataclass(frozen=True, slots=True)
class Count:
    """A count and where it was written."""

    number: int
    place: Place


@dataclass(frozen=True, slots=True)
class Students:
    """How many students make one size, by the size's index; index 0 when the tutorial has no sizes."""

    size: int
    count: int
    place: Place


@dataclass(frozen=True, slots=True)
class Session:
    """One session. ``minutes`` pass from its begin to its end, whatever clocks show; ``pause`` of them nobody sews."""

    number: int
    place: Place
    day: date | None
    begins: time | None
    ends: time | None
    """The time at which it was said to end; None where its minutes were said."""
    minutes: int
    pause: int
    zone: str = ""
    """The time zone by whose clocks it begins."""

    @property
    def working(self) -> int:
        """The minutes that are left for steps."""
        return max(0, self.minutes - self.pause)

    @property
    def starts(self) -> datetime | None:
        """When it begins, as clocks at its place show; None when that is not said."""
        return datetime.combine(self.day, self.begins) if self.day is not None and self.begins is not None else None

    @property
    def stops(self) -> datetime | None:
        """When it ends, as clocks at its place show; None when that is not said."""
        return self.clock(self.minutes)

    @property
    def said_to_stop(self) -> datetime | None:
        """When it was said to end; None where its day or its end was not said."""
        return datetime.combine(self.day, self.ends) if self.day is not None and self.ends is not None else None

    def clock(self, minutes: int) -> datetime | None:
        """What clocks at its place show so many minutes after it began; None when it is not said when it does."""
        return later(self.starts, timedelta(minutes=minutes), self.zone) if self.starts is not None else None


@dataclass(frozen=True, slots=True)
class Price:
    """What one of a thing costs, or one metre or yard of it."""

    item: Words
    amount: Fraction
    currency: str
    """A sign, £, or three letters, EUR."""
    per: Unit | None
    place: Place


@dataclass(frozen=True, slots=True)
class SewingClass:
    """Everything a teacher wrote for one class."""

    key: str
    place: Place
    address: str
    """The address of the site to which the class belongs; empty when it has none."""
    title: str
    tutorial: Words
    measured_in: System | None
    """The units that the class works in; None where they are those of the tutorial."""
    changes: tuple[Reference, ...]
    views: Mapping[str, Words]
    students: tuple[Students, ...]
    sessions: tuple[Session, ...]
    time_zone: str
    where: str
    seats: Count | None
    room: Mapping[str, Count]
    """The tools of the room, and how many there are of each."""
    at_tool: Ratio
    """The share of a step's minutes that a student is at its shared tool."""
    brings: tuple[Words, ...]
    shared: Mapping[str, Count]
    """Supplies of which one amount serves several students, and how many."""
    widths: Mapping[str, tuple[Amount, ...]]
    """The widths in which a fabric can be had, the one to buy first."""
    spare_lengths: Ratio
    spare_counted: Ratio
    before_class: tuple[Reference, ...]
    left_out: tuple[Reference, ...]
    homework: tuple[Reference, ...]
    together: tuple[tuple[Reference, ...], ...]
    """Steps that follow each other in one session."""
    prices: tuple[Price, ...]
    prices_place: Place | None = None
    """Where the prices begin."""
    prices_unread: frozenset[str] = frozenset()
    """Things whose price stands in the file and was not understood, which was reported there."""
    sessions_unread: bool = False
    """Whether a session was written that could not be understood, so that nobody knows what fits into them all."""
    on_site: bool = False
    """Whether the site has a page for its students."""
    translations: Mapping[str, Mapping[str, str]] = field(default_factory=dict)
    """What its title and place are called in the further languages of the site, as far as that is written."""


@dataclass(frozen=True)
class ComputedClass:
    """A class with its tutorial in the views of the class and with its changes made, and every number of it."""

    written: SewingClass
    computed: Computed
    plain: Computed
    """The same before the changes of the class are made."""
    steps: Mapping[str, Step]
    """The steps of the tutorial by every name that a class file may call them."""
    links: tuple[Link, ...]
    """What must come before what, as the tutorial's order of making has it."""

    @property
    def first_system(self) -> System:
        """The units that the class works in."""
        return self.written.measured_in or self.computed.tutorial.first_system

    @property
    def student_count(self) -> int:
        """How many students there are."""
        return sum(each.count for each in self.written.students)

    def numbers_of(self, names: tuple[Reference, ...]) -> frozenset[int]:
        """The numbers of the steps that are called so."""
        return frozenset(self.steps[name.name].number for name in names if name.name in self.steps)

    @property
    def before_class(self) -> frozenset[int]:
        """The steps that the teacher does before class."""
        return self.numbers_of(self.written.before_class)

    @property
    def left_out(self) -> frozenset[int]:
        """The steps that nobody does."""
        return self.numbers_of(self.written.left_out)

    @property
    def at_home(self) -> frozenset[int]:
        """The steps that each student does at home."""
        return self.numbers_of(self.written.homework)

    def in_class(self) -> tuple[Step, ...]:
        """The steps that are done in the sessions, in the tutorial's order."""
        others = self.before_class | self.left_out | self.at_home
        return tuple(step for step in self.computed.tutorial.steps if step.number not in others)


def computed_class(
    written: SewingClass, computed: Computed, plain: Computed, steps: Mapping[str, Step]
) -> ComputedClass:
    """A class with the order of making of its tutorial."""
    return ComputedClass(written, computed, plain, steps, making_of(computed.tutorial).links)
