"""The plain data of a class. Every string is as it is read; order is the order of the list."""

from __future__ import annotations

from dataclasses import dataclass

from sitegen.diagrams import cutting_layout


@dataclass(frozen=True, slots=True)
class WorkedText:
    """An amount as it is read, and the lines of its working, the last of which gives it."""

    text: str
    working: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class OneSize:
    """A size by its name, empty when the tutorial has no sizes, and what holds for one student of it."""

    size: str
    text: str


@dataclass(frozen=True, slots=True)
class ClassHead:
    """Which class it is: ``students`` and ``made`` are phrases without a stop, ``8 students: 2 in size S, …``."""

    title: str
    students: str
    made: str
    """``Tutorial boxy-tee; changed: longer sleeve``."""
    tutorial: str
    """The title of the tutorial."""
    where: str


@dataclass(frozen=True, slots=True)
class KitItem:
    """One thing to buy."""

    key: str
    name: str
    detail: str
    """``150 cm wide``, ``75/11``; empty when there is none."""
    buy: WorkedText
    """What to ask for, ``7.4 m``, spare included."""
    needed: str
    spare: str
    cost: WorkedText | None
    for_one: tuple[OneSize, ...]
    """What one student of each size needs; empty for what is shared."""
    shared: str
    """``shared by 2``, ``all share it``; empty where each student has her own."""
    notes: tuple[str, ...]
    """How cloth is laid, and what it saves: phrases without a stop."""
    other_widths: tuple[str, ...]

    @property
    def called(self) -> str:
        """Name and detail."""
        return f"{self.name}, {self.detail}" if self.detail else self.name


@dataclass(frozen=True, slots=True)
class KitGroup:
    """All things of a kind, ``Cloth``."""

    head: str
    items: tuple[KitItem, ...]


@dataclass(frozen=True, slots=True)
class PartRow:
    """A part that is cut before class: ``front``, ``1 on fold``, and for each size how many of all, and how large."""

    name: str
    how: str
    cells: tuple[str, ...]
    """In the order of ``KitView.sizes``; empty where a size lacks it."""


@dataclass(frozen=True, slots=True)
class Packed:
    """A thing in a bag, and how much of it."""

    name: str
    amount: str


@dataclass(frozen=True, slots=True)
class BagView:
    """The bags of one size."""

    head: str
    """``2 bags of size S``."""
    cut: tuple[str, ...]
    """``1 front``, ``2 sleeves``."""
    things: tuple[Packed, ...]


@dataclass(frozen=True, slots=True)
class ClothLayout:
    """The cutting layout of a fabric for the whole class."""

    key: str
    fabric: str
    width: str
    length: str
    picture: cutting_layout.CuttingLayout


@dataclass(frozen=True, slots=True)
class KitView:
    """What to buy, to cut and to pack, and what it costs."""

    head: ClassHead
    sizes: tuple[str, ...]
    """The sizes of the class by their names; one empty name when the tutorial has none."""
    groups: tuple[KitGroup, ...]
    unknown: tuple[str, ...]
    """What nobody can tell, and why."""
    total: WorkedText | None
    """What all that has a price costs; None when nothing has."""
    without_price: tuple[str, ...]
    parts: tuple[PartRow, ...]
    bags: tuple[BagView, ...]
    shared: tuple[str, ...]
    brought: tuple[str, ...]
    costs: tuple[tuple[str, WorkedText], ...]
    """By size: its name and what one student of it pays."""
    layouts: tuple[ClothLayout, ...]


@dataclass(frozen=True, slots=True)
class StepName:
    """A step by its number on the cards, its title, and what the tutorial notes on it for the teacher alone."""

    number: int
    title: str
    notes: tuple[str, ...] = ()
    """A paragraph each."""


@dataclass(frozen=True, slots=True)
class PlanStep:
    """A step in a session."""

    step: StepName
    begins: str
    """``18:30``, or ``40′`` after the beginning where no time is told."""
    minutes: int
    turns: str
    """``2 turns at the iron; each waits 13 min``; empty when nobody waits."""
    meanwhile: tuple[StepName, ...]
    may_stop: bool
    """Whether the session may end behind it."""
    working: tuple[str, ...]
    """How its minutes were got."""
    pause: int = 0
    """The minutes of the break behind it; 0 for none."""
    pause_begins: str = ""


@dataclass(frozen=True, slots=True)
class SessionView:
    """One session. ``day``, ``begins`` and ``ends`` are empty where they are not told."""

    number: int
    day: str
    begins: str
    ends: str
    minutes: int
    steps: tuple[PlanStep, ...]
    free: int
    homework: tuple[StepName, ...]

    @property
    def when(self) -> str:
        """``Tuesday 12 January 2027, 18:30 to 21:00``, or how long it is."""
        return f"{self.day}, {self.begins} to {self.ends}" if self.day else f"{self.minutes} minutes"


@dataclass(frozen=True, slots=True)
class PlanView:
    """What is done when."""

    head: ClassHead
    before: tuple[StepName, ...]
    """By the teacher, before class."""
    homework_before: tuple[StepName, ...]
    sessions: tuple[SessionView, ...]
    left: tuple[StepName, ...]
    rule: tuple[str, ...]
    """How steps are laid into sessions, in sentences."""


@dataclass(frozen=True, slots=True)
class SampleRectangle:
    """Rectangles of one fabric for one sample: ``2``, ``cotton jersey``, ``10 cm across, 20 cm along``."""

    pieces: int
    fabric: str
    size: WorkedText


@dataclass(frozen=True, slots=True)
class SampleView:
    """One sample to prepare: what it is, how many, from what, for which steps, and how it is made."""

    name: str
    count: WorkedText
    cloth: tuple[SampleRectangle, ...]
    steps: tuple[StepName, ...]
    how: tuple[str, ...]
    """Sentences."""
    working: tuple[str, ...]
    """How its count, the size of its cloth and the numbers in ``how`` were got."""


@dataclass(frozen=True, slots=True)
class SampleGroup:
    """All samples of a kind, ``Swatches``."""

    head: str
    samples: tuple[SampleView, ...]


@dataclass(frozen=True, slots=True)
class SampleTotal:
    """What samples take of one fabric, or of a supply that is sewn in."""

    fabric: str
    what: str
    """``swatches and strips``, ``3 made-up samples of size M``."""
    amount: WorkedText | None
    reason: str = ""
    """Why there is no amount."""


@dataclass(frozen=True, slots=True)
class SamplesView:
    """The samples and swatches to prepare, and what they take besides the kit."""

    head: ClassHead
    groups: tuple[SampleGroup, ...]
    totals: tuple[SampleTotal, ...]
