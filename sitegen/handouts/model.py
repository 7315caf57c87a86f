"""What a printed handout holds, and nothing else: plain frozen data, ready to be laid out on paper.

Every text is in the language of the site and in the units of the copy. Lengths are in millimetres of paper.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum
from fractions import Fraction

from sitegen.publishing import Block, Span
from sitegen.quantities import System


class Paper(Enum):
    """A size of paper. The value is its name on the command line."""

    A4 = "a4"
    """210 × 297 mm (ISO 216)."""
    LETTER = "letter"
    """8.5 × 11 in (ANSI/ASME Y14.1)."""


class Copy(Enum):
    """For whom a handout is printed. The value is its name on the command line."""

    STUDENT = "student"
    TEACHER = "teacher"


@dataclass(frozen=True, slots=True)
class Wanted:
    """How a handout is wanted: the sizes as places in the run of sizes, the units in their order."""

    sizes: tuple[int, ...]
    units: tuple[System, ...]
    paper: Paper = Paper.A4
    copy: Copy = Copy.STUDENT
    large_print: bool = False


@dataclass(frozen=True, slots=True)
class Table:
    """Rows of text below a head."""

    head: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    by_size: bool = False
    """Whether every column but the first is one of a size: then the sheet may lay it out another way. A row with
    nothing behind its first cell is a heading of those below."""


@dataclass(frozen=True, slots=True)
class SheetPicture:
    """A drawing or a photo as SVG. ``alt`` says what it shows to who cannot see it."""

    svg: str
    width: float
    """As wide as it is with room; a picture of true size is printed just so wide."""
    height: float
    true_size: bool
    title: str
    alt: str
    marks: tuple[tuple[int, tuple[Span, ...]], ...] = ()
    """What the numbers on a photo mean."""


@dataclass(frozen=True, slots=True)
class Care:
    """What can hurt, and the usual care."""

    name: str
    text: str


@dataclass(frozen=True, slots=True)
class Sewn:
    """How one seam or hem is sewn: its name, and every setting in words."""

    what: str
    settings: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class SecondWay:
    """Another way of doing a step, and when it suits."""

    when: tuple[Block, ...]
    text: tuple[Block, ...]
    sewn: tuple[Sewn, ...]


@dataclass(frozen=True, slots=True)
class SheetCard:
    """One step card."""

    number: int
    title: str
    minutes: str
    when: str
    """In which session it is done, or at home; empty where that is not known."""
    needs: tuple[str, ...]
    tools: tuple[str, ...]
    text: tuple[Block, ...]
    sewn: tuple[Sewn, ...]
    numbers: Table | None
    """What differs by size, a column for each; None where nothing does."""
    pictures: tuple[SheetPicture, ...]
    care: tuple[Care, ...]
    look_for: tuple[Block, ...]
    if_wrong: tuple[Block, ...]
    second_way: SecondWay | None
    teacher: tuple[Block, ...]
    """Notes of the teacher; empty in a student's copy."""
    uses: tuple[str, ...]
    """The names of the numbers on it."""


@dataclass(frozen=True, slots=True)
class Measured:
    """A number that can be measured on the work, and between which two it may lie."""

    what: str
    should_be: str
    from_to: str


@dataclass(frozen=True, slots=True)
class Marking:
    """What the marking sheet asks of one step."""

    number: int
    title: str
    points: tuple[tuple[Span, ...], ...]
    measured: tuple[Measured, ...]


@dataclass(frozen=True, slots=True)
class AllowanceMark:
    """One line of the gauge for seam allowances."""

    length: Fraction
    words: str
    used_for: str


@dataclass(frozen=True, slots=True)
class Gauges:
    """What is printed at true scale."""

    allowances: tuple[AllowanceMark, ...]
    pictures: tuple[SheetPicture, ...]


@dataclass(frozen=True, slots=True)
class Cover:
    """The first page."""

    facts: tuple[str, ...]
    sessions: tuple[str, ...]
    summary: tuple[Block, ...]
    learn: tuple[tuple[Span, ...], ...]
    before: tuple[Block, ...]
    done_before: tuple[str, ...]
    """Titles of the steps that the teacher does before class."""
    bring: tuple[str, ...]
    fabrics: Table | None
    supplies: Table | None
    care: tuple[Care, ...]
    picture: SheetPicture | None
    code: str
    """The address of the page as a QR code (ISO/IEC 18004), as SVG; empty where the site has no address."""
    address: str


@dataclass(frozen=True, slots=True)
class Working:
    """How an amount was got, a sum a line."""

    of: str
    lines: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class PartGroup:
    """What stands below a head; all of it may be empty."""

    head: str
    lines: tuple[str, ...] = ()
    table: Table | None = None
    pictures: tuple[SheetPicture, ...] = ()
    workings: tuple[Working, ...] = ()


@dataclass(frozen=True, slots=True)
class Part:
    """A part of the teacher's copy that no student sees."""

    title: str
    groups: tuple[PartGroup, ...]


@dataclass(frozen=True, slots=True)
class Handout:
    """A whole handout."""

    language: str
    title: str
    class_title: str
    author: str
    mark: str
    """The release mark: the day and a few letters that stand for every number and text of this print."""
    sizes: tuple[str, ...]
    cover: Cover
    tables: tuple[tuple[str, Table], ...]
    """Measurements of the body and of what is made, and what is cut, each with its heading."""
    cloth: Table | None
    """How much of each fabric each size takes; None for one size, and where students cut none."""
    layouts: tuple[SheetPicture, ...]
    cards: tuple[SheetCard, ...]
    marking: tuple[Marking, ...]
    gauges: Gauges
    parts: tuple[Part, ...]
    words: dict[str, str]
    """The fixed words of the sheets by their keys."""
    wanted: Wanted
