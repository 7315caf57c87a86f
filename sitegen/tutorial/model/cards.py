"""Step cards and what they hold."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from sitegen.findings import Place
from sitegen.tutorial.model.photos import Photo
from sitegen.tutorial.model.values import Lengths, OnlyIn, Prose, Reference, Words


@dataclass(frozen=True, slots=True)
class Supply:
    """Something to have at hand."""

    item: Words
    size: Words | None
    amount: Words | None
    purpose: str
    place: Place
    only_in: OnlyIn


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
    enclosed: Words | None
    """How its raw edges are hidden: in a French seam, inside a band, under a lining."""

    def names(self) -> Iterator[Reference]:
        """Every name in its chains, in the order in which they were written."""
        yield from (name for chain in self.chains for name in chain)


@dataclass(frozen=True, slots=True)
class OtherWay:
    """A second way of doing a step, and when it suits. It takes no part in the order of making."""

    place: Place
    text: Prose | None
    when: Prose | None
    joins: tuple[Join, ...]
    hems: tuple[Reference, ...]
    finishes: tuple[tuple[Reference, ...], ...]


@dataclass(frozen=True, slots=True)
class Step:
    """One step card."""

    number: int
    file: str
    place: Place
    title: str
    minutes: int | None
    minutes_place: Place
    text: Prose | None
    needs: tuple[Words, ...]
    tools: tuple[Words, ...]
    cuts: tuple[Reference, ...]
    """Pieces, bands, elastics and trims that are cut in this step."""
    stabilises: tuple[Reference, ...]
    """Edges that are kept from stretching before they are sewn."""
    joins: tuple[Join, ...]
    hems: tuple[Reference, ...]
    finishes: tuple[tuple[Reference, ...], ...]
    inserts: tuple[Reference, ...]
    """Elastics that are put into their casings, and trims that are drawn in or sewn on."""
    darts: tuple[Reference, ...]
    """Darts that are sewn in this step, ``front.bust``."""
    boxes: tuple[Reference, ...]
    """Boxed corners that are sewn across in this step."""
    other_way: OtherWay | None
    diagrams: tuple[Reference, ...]
    look_for: Prose | None
    if_wrong: Prose | None
    cautions: tuple[Words, ...]
    photos: tuple[Photo, ...]
    video: Words | None
    teacher: Prose | None
    only_in: OnlyIn

    def prose(self) -> Iterator[Prose]:
        """Every running text of the card."""
        other = (self.other_way.text, self.other_way.when) if self.other_way else ()
        yield from (text for text in (self.text, *other, self.look_for, self.if_wrong, self.teacher) if text)
        yield from (mark.text for photo in self.photos for mark in photo.marks)

    def every_join(self) -> Iterator[Join]:
        """The seams of the step, then those of its other way."""
        yield from self.joins
        if self.other_way:
            yield from self.other_way.joins
