"""How the author wants the site to look: which theme, and which of its colours and fonts are the author's own."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from sitegen.findings import Place
from sitegen.tutorial.model.values import Words


@dataclass(frozen=True, slots=True)
class Colour:
    """A colour under the name that style sheets know it by."""

    name: str
    """``accent``; style sheets say ``var(--accent)``."""
    value: str
    """``#`` and six hexadecimal digits, small letters, as in CSS; eight where something shows through."""
    place: Place


@dataclass(frozen=True, slots=True)
class Logo:
    """A picture file of the content folder that stands at the head of every page."""

    file: Words
    shows: str


@dataclass(frozen=True, slots=True)
class Look:
    """What site.yaml says of the look."""

    theme: Words | None = None
    """None when it is not said, which means the theme that is taken by default."""
    colours: Mapping[str, tuple[Colour, ...]] = field(default_factory=dict)
    """By scheme, ``light`` and ``dark``."""
    fonts: Mapping[str, Words] = field(default_factory=dict)
    """By what is set in it, ``headings``, ``text`` and ``labels``: the name of a list of fonts."""
    logo: Logo | None = None
