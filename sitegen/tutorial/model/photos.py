"""Photos and the marks that their author puts on them."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from sitegen.findings import Place
from sitegen.tutorial.model.values import Prose


@dataclass(frozen=True, slots=True)
class Spot:
    """A place in a picture as it is seen upright, in percent: across from its left edge, down from its top edge."""

    across: Fraction
    down: Fraction


@dataclass(frozen=True, slots=True)
class ArrowMark:
    """An arrow to what is meant, its text at its tail."""

    place: Place
    text: Prose
    tail: Spot
    tip: Spot


@dataclass(frozen=True, slots=True)
class CircleMark:
    """A circle around what is meant, its text beside it."""

    place: Place
    text: Prose
    centre: Spot
    across: Fraction
    """In percent of the picture's width."""


@dataclass(frozen=True, slots=True)
class NumberMark:
    """A number on what is meant, its text in the list below the picture."""

    place: Place
    text: Prose
    number: int
    at: Spot


Mark = ArrowMark | CircleMark | NumberMark


@dataclass(frozen=True, slots=True)
class Photo:
    """A picture of a step or of the whole, and what it shows."""

    file: str
    shows: str
    place: Place
    exists: bool
    marks: tuple[Mark, ...] = ()
    hindrance: str = ""
    """Why what bears this name cannot be taken, in words that follow it; empty where nothing bears it."""
