"""Puts numbers together into measurements."""

from __future__ import annotations

from collections.abc import Sequence

from sitegen.prose.find.atoms import Atom
from sitegen.prose.find.bare import with_author_unit
from sitegen.prose.find.carried import with_carried_units
from sitegen.prose.find.measured import Measured
from sitegen.prose.find.numbers import Form
from sitegen.prose.find.ranges import with_ranges
from sitegen.prose.find.said_again import with_unsaid_units
from sitegen.prose.find.tokens import Token
from sitegen.prose.words import words
from sitegen.quantities import Unit

LOOK_ALIKES = words(
    "size sizes step steps view views age ages aged page pages needle needles figure fig no number"
    " numbers chapter part parts tension setting settings style option row rows group groups table line"
    " lines level version photo picture weight lesson session week day class year years grade pattern"
    " piece pieces point points stage cup dial programme program stitch card cards video section sheet"
    " sheets volume tex tkt ticket denier ply speed gauge course round"
)
"""Words before a number that is no measurement, unless a unit says otherwise."""


def assembled(tokens: Sequence[Token], atoms: Sequence[Atom], author: Unit) -> list[Measured]:
    """All numbers in order, each with what can be known of it. ``author`` is the unit where no unit stands."""
    numbers = with_ranges(tokens, [_single(tokens, atom) for atom in atoms])
    measured = with_author_unit(tokens, with_carried_units(tokens, numbers), author)
    return with_carried_units(tokens, with_unsaid_units(tokens, measured))


def _single(tokens: Sequence[Token], atom: Atom) -> Measured:
    return Measured(
        atom.first,
        atom.behind,
        atom.value,
        atom.kind,
        atom.unit,
        atom.form,
        decimals=atom.decimals,
        spoken=atom.spoken,
        counted=atom.kind is None and atom.form is not Form.FRACTION and _is_counted(tokens, atom.first),
    )


def _is_counted(tokens: Sequence[Token], first: int) -> bool:
    before = tokens[first - 1].word if first else ""
    if before in (".", ":", "no.") and first > 1 and tokens[first - 2].end == tokens[first - 1].start:
        before = tokens[first - 2].word if tokens[first - 2].word in ("no", "fig") else before
    return before in LOOK_ALIKES
