"""A slip: what it is called, where it was made, and what it makes of the files."""

from __future__ import annotations

import random
from collections import defaultdict
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from hashlib import sha256
from typing import TypeVar

from slips.find import Span, Value

T = TypeVar("T")
_ONE_IN = 100


@dataclass(frozen=True, slots=True)
class Edit:
    """New text for the characters of a file from ``start`` up to ``end``."""

    start: int
    end: int
    new: str


@dataclass(frozen=True, slots=True)
class Slip:
    """One plausible slip in an otherwise correct folder.

    ``before`` and ``after`` are the texts for a report. ``lines`` are the lines of the file at which a finding counts
    as pointing at it. ``claim`` says that pages show a computed number instead, ``number`` names it. ``renamed`` holds the old and new names of step files, for a slip in their order.
    """

    kind: str
    where: str
    file: str
    path: str
    before: str
    after: str
    lines: frozenset[int]
    claim: bool = False
    number: str = ""
    edits: tuple[Edit, ...] = ()
    renamed: tuple[tuple[str, str], ...] = ()

    @property
    def tutorial(self) -> str:
        """The name of the tutorial's folder."""
        return self.file.split("/")[1]

    def __str__(self) -> str:
        line = min(self.lines, default=0)
        return f"{self.file.removeprefix('tutorials/')}:{line} {self.path}: {self.before} → {self.after} ({self.kind})"


def slip(kind: str, value: Value, *changes: tuple[Span, str]) -> Slip:
    """A slip in a value: new texts for some of its parts."""
    spans = [span for span, _ in changes]
    return Slip(
        kind,
        value.field.group,
        value.file,
        value.path,
        ", ".join(span.text for span in spans),
        ", ".join(new for _, new in changes),
        frozenset(span.line for span in spans),
        value.field.claim,
        value.number_name,
        tuple(Edit(span.start, span.end, new) for span, new in changes),
    )


@dataclass(frozen=True, slots=True)
class Pick:
    """Chooses a few out of many in the same way on every run; ``most`` of None takes all."""

    seed: int
    every: bool = False

    def some(self, options: Sequence[T], most: int, *key: object) -> list[T]:
        """At most so many of the options, in their order."""
        if self.every or len(options) <= most:
            return list(options)
        chosen = random.Random(f"{self.seed} {key}").sample(range(len(options)), most)
        return [options[index] for index in sorted(chosen)]


def sample(slips: Iterable[Slip], least: int, seed: int) -> tuple[Slip, ...]:
    """So many slips of each kind, and more of a kind that has many: one in a hundred.

    Each slip has a lot of its own, so that new content changes few of the choices.
    """

    def lot(each: Slip) -> bytes:
        return sha256(f"{seed} {each.file} {each.path} {each.before} {each.after}".encode()).digest()

    by_kind: dict[str, list[Slip]] = defaultdict(list)
    for each in slips:
        by_kind[each.kind].append(each)
    return tuple(each for found in by_kind.values() for each in sorted(found, key=lot)[: least + len(found) // _ONE_IN])
