"""Step cards and what they hold."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from sitegen.findings import Place
from sitegen.tutorial.model.values import Lengths, Prose, Reference, Words


@dataclass(frozen=True, slots=True)
class Supply:
    """Something to have at hand."""

    item: str
    size: str
    amount: str
    purpose: str
    place: Place


@dataclass(frozen=True, slots=True)
class Join:
    """A seam sewn in a step: the chains of edges that it joins, and how it is sewn."""

    place: Place
    chains: tuple[tuple[Reference, ...], ...]
    stitch: Words | None
    stitch_length: Words | None
    stitch_length_mm: Fraction | None
    stitch_width_mm: Fraction | None
    stitches_per_inch: Words | None
    seam_allowance: Lengths | None
    press: str
    stabilised: bool
    stretched: bool
    ease: Lengths | None


@dataclass(frozen=True, slots=True)
class Photo:
    """A picture of a step and what it shows."""

    file: str
    shows: str
    place: Place
    exists: bool


@dataclass(frozen=True, slots=True)
class Step:
    """One step card."""

    number: int
    file: str
    place: Place
    title: str
    minutes: int | None
    text: Prose | None
    needs: tuple[str, ...]
    tools: tuple[Words, ...]
    joins: tuple[Join, ...]
    hems: tuple[Reference, ...]
    finishes: tuple[tuple[Reference, ...], ...]
    diagrams: tuple[Reference, ...]
    look_for: Prose | None
    if_wrong: Prose | None
    cautions: tuple[Words, ...]
    photos: tuple[Photo, ...]
    video: str
    teacher: Prose | None

    def prose(self) -> Iterator[Prose]:
        """Every running text of the card."""
        yield from (text for text in (self.text, self.look_for, self.if_wrong, self.teacher) if text)
