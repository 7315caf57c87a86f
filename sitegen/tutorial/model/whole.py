"""A whole tutorial, and the whole content folder."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from sitegen.findings import Place
from sitegen.quantities import System, Unit
from sitegen.tutorial.model.cards import Step, Supply
from sitegen.tutorial.model.cloth import Fabric, Piece
from sitegen.tutorial.model.look import Look
from sitegen.tutorial.model.photos import Photo
from sitegen.tutorial.model.sewn import Band, Change, Elastic, Girth, Hem, Joined, Swap
from sitegen.tutorial.model.values import Accepted, Amount, Claim, Lengths, OnlyIn, Prose, Words
from sitegen.tutorial.model.worked_parts import Binding, Boxed, CircleSkirt, Drops, Gather, Pleats, Spacing, Trim

SIZES_FILE = "sizes.csv"
"""The size table. Where it is not understood, its name stands for all of its numbers."""


@dataclass(frozen=True, slots=True)
class Tutorial:
    """Everything an author wrote for one garment or project."""

    key: str
    place: Place
    title: str
    title_place: Place
    summary: Prose | None
    level: str
    child: bool
    unit: Unit
    sizes: tuple[str, ...]
    size_places: tuple[Place, ...]
    runs: tuple[int, ...]
    """Where a new run of sizes begins, such as adult sizes after children's: indices into ``sizes``."""
    views: Mapping[str, tuple[str, ...]]
    """What the student may choose, such as neck: neckband or hood; empty when there is nothing to choose."""
    only_in: Mapping[str, OnlyIn]
    """The parts that belong to some choices only, by their names."""
    chosen: tuple[tuple[str, str], ...]
    """What is chosen in each view; empty in a tutorial as it was written."""
    learn: tuple[Prose, ...]
    before: Prose | None
    photo: Photo | None
    names: Mapping[str, str]
    """What parts are called on the page where it is not by their names, in the language of the page."""
    untranslated: frozenset[str]
    """Short texts that the author wrote in the first language of the site alone."""
    translated: Mapping[str, str]
    """What texts of the first language are called in that of the page, where the author wrote both."""
    video_length: Words | None
    """How long its video is: ``42:10``."""
    body: Mapping[str, Lengths]
    seam_allowance: Amount | None
    fabrics: Mapping[str, Fabric]
    pieces: Mapping[str, Piece]
    bands: Mapping[str, Band]
    hems: Mapping[str, Hem]
    elastics: Mapping[str, Elastic]
    joined: Mapping[str, Joined]
    girths: Mapping[str, Girth]
    changes: Mapping[str, Change]
    swaps: Mapping[str, Swap]
    spacings: Mapping[str, Spacing]
    gathers: Mapping[str, Gather]
    pleats: Mapping[str, Pleats]
    bindings: Mapping[str, Binding]
    circles: Mapping[str, CircleSkirt]
    boxed: Mapping[str, Boxed]
    drops: Mapping[str, Drops]
    trims: Mapping[str, Trim]
    supplies: tuple[Supply, ...]
    tools: tuple[Words, ...]
    steps: tuple[Step, ...]
    claims: tuple[Claim, ...]
    accepted: tuple[Accepted, ...]
    typed: tuple[Lengths, ...]
    """Every length the author typed anywhere in the YAML or the size table, claims included."""
    referred: tuple[Lengths, ...]
    """Every length for which the author wrote a reference."""
    unread: frozenset[str]
    """Parts, numbers and step files that are there and could not be understood. What is wrong with them is reported
    where they stand; whatever refers to them is not reported as well."""
    gaps: frozenset[str]
    """What of ``tutorial.yaml`` and the size table is unread, lacks sizes or holds a key that is not known: from it
    may follow that other numbers are not known."""
    could_have: frozenset[str]
    """The names of all numbers that the parts of this tutorial could give or be held against."""

    @property
    def size_count(self) -> int:
        """How many sizes there are; one when the project has no sizes."""
        return max(1, len(self.sizes))

    @property
    def first_system(self) -> System:
        """The units in which the author measured."""
        return self.unit.system

    def prose(self) -> Iterator[Prose]:
        """Every running text of the tutorial and its cards."""
        yield from (text for text in (self.summary, self.before, *self.learn) if text)
        yield from (fabric.advice for fabric in self.fabrics.values() if fabric.advice)
        yield from (mark.text for mark in (self.photo.marks if self.photo is not None else ()))
        for step in self.steps:
            yield from step.prose()


@dataclass(frozen=True, slots=True)
class Term:
    """A word of the trade, explained in a line, with its US and UK names."""

    term: str
    means: Prose
    us: str
    uk: str
    place: Place


@dataclass(frozen=True, slots=True)
class Site:
    """The whole content folder."""

    place: Place
    title: str
    author: str
    address: str
    first_system: System
    language: str
    look: Look
    about: Prose | None
    note: str
    glossary: tuple[Term, ...]
    tutorials: tuple[Tutorial, ...]
    languages: tuple[str, ...] = ("en",)
    """Every language in which the site is published; the first is that of its root."""
    units_said: bool = False
    """Whether the author says which units come first. Else it is as the readers of the language measure."""
    untranslated: frozenset[str] = frozenset()
    """Short texts of the site that are in its first language alone."""
