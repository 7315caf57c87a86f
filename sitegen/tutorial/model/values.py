"""Values as an author typed them, each with its place."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field

from sitegen.findings import Place
from sitegen.quantities import BySize, Ratio, Typed


@dataclass(frozen=True, slots=True)
class Reference:
    """A name that stands for a number or a part, and where it was written."""

    name: str
    place: Place


@dataclass(frozen=True, slots=True)
class Amount:
    """A single length as it was typed, and where."""

    typed: Typed
    place: Place


@dataclass(frozen=True, slots=True)
class Lengths:
    """Lengths by size, typed out or taken from another number by reference.

    ``name`` is the full name of the number that they give or claim.
    """

    name: str
    place: Place
    source: BySize[Amount] | Reference
    bolt: bool = False
    """Whether it is the width of cloth on the bolt, for which coarser pairs are usual."""

    def amount_at(self, size: int) -> Amount | None:
        """What was typed for the size at this index; None for a reference, or where sizes still lack a value."""
        if isinstance(self.source, Reference):
            return None
        values = self.source.values
        return values[0] if len(values) == 1 else values[size] if size < len(values) else None


@dataclass(frozen=True, slots=True)
class Claim:
    """A number that the author wrote although it can be computed: it is held against the computed one."""

    lengths: Lengths
    part: str
    """The kind of part it stands in: band, piece, hem, elastic, joined, girth, change, spacing, gather …"""

    @property
    def field(self) -> str:
        """The last word of the number's name: ``cut_length``."""
        return self.lengths.name.rpartition(".")[2]


@dataclass(frozen=True, slots=True)
class Share:
    """A ratio or stretch as it was typed, and where."""

    ratio: Ratio
    text: str
    place: Place


OnlyIn = Mapping[str, tuple[str, ...]]
"""In which choices of which views a part belongs to the garment; a view that is not named does not matter."""


@dataclass(frozen=True, slots=True)
class Words:
    """A short text, and where it stands."""

    text: str
    place: Place


@dataclass(frozen=True, slots=True)
class Accepted:
    """A finding that the author accepts in this file, and why."""

    check: str
    said: str
    reason: str
    place: Place


@dataclass(frozen=True, slots=True)
class Prose:
    """Running text for the student: Markdown with references, which can be traced back to the file."""

    text: str
    place: Place
    references: tuple[Reference, ...]
    locate: Callable[[int, int], Place] = field(compare=False)
    """The place in the file of a stretch of the text, given by its start and end."""
    language: str = ""
    """The language of the text, where it lacks a translation into that of the pages; else empty."""
