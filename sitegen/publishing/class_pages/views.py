"""What the pages of a class show: the data of ``class_views`` with their drawings, and links."""

from __future__ import annotations

from dataclasses import dataclass

from markupsafe import Markup

from sitegen.publishing.class_views import KitView, PlanView, SamplesView
from sitegen.publishing.picture_views import Picture
from sitegen.publishing.views import SiteView


@dataclass(frozen=True, slots=True)
class DrawnLayout:
    """The cutting layout of a fabric for the whole class."""

    fabric: str
    title: str
    svg: Markup
    words: str
    """What it shows, for those who do not see it."""


@dataclass(frozen=True, slots=True)
class TeacherPage:
    """Everything that the teacher of a class prepares, on one page that needs no other file."""

    site: SiteView
    kit: KitView
    plan: PlanView | None
    """None for a class that cannot be planned, because steps have no minutes."""
    samples: SamplesView
    layouts: tuple[DrawnLayout, ...]
    style: Markup
    """The style sheet of the page."""
    root: str = ""


@dataclass(frozen=True, slots=True)
class ClassLink:
    """A class in a list: its title, and the first of its days, empty where none is told."""

    title: str
    href: str
    """From the folder of the site."""
    first_day: str


@dataclass(frozen=True, slots=True)
class StepLink:
    """A step card, seen from the page of the class."""

    number: int
    title: str
    href: str


@dataclass(frozen=True, slots=True)
class StudentSession:
    """One session for its students."""

    number: int
    day: str
    """``Tuesday 12 January 2027``; empty where it is not told."""
    begins: str
    ends: str
    starts: str
    """As HTML has it: ``2027-01-12T18:30``; empty where it is not told."""
    minutes: int
    steps: tuple[StepLink, ...]
    homework: tuple[StepLink, ...]


@dataclass(frozen=True, slots=True)
class ClassPage:
    """The page of a class for its students: no prices, no counts, nothing that is for the teacher alone."""

    site: SiteView
    root: str
    address: str
    """From the folder of the site: ``classes/evening/index.html``."""
    title: str
    tutorial: str
    href: str
    """The page of the tutorial, from the folder of the site."""
    summary: Markup
    picture: Picture | None
    changes: tuple[str, ...]
    sizes: tuple[str, ...]
    where: str
    brings: tuple[str, ...]
    homework_before: tuple[StepLink, ...]
    sessions: tuple[StudentSession, ...]

    @property
    def link(self) -> ClassLink:
        """The class in a list."""
        return ClassLink(self.title, self.address, next((each.day for each in self.sessions if each.day), ""))
