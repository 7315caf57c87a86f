"""What each step uses and what it makes, as far as its author says."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass

from sitegen.tutorial.making.joining import part_of, parts_of
from sitegen.tutorial.model import Boxed, Elastic, Step, Tutorial


@dataclass(frozen=True, slots=True)
class Work:
    """The work of one step.

    ``uses`` and ``makes`` are names of parts, edges, hems, darts and boxed corners: what must be there, and what is
    cut, stabilised, sewn, finished, turned or put in. ``handles`` are the parts (pieces, bands and so on) that lie on
    the table: those it uses or makes, and those that its text names.
    """

    step: int
    uses: frozenset[str]
    makes: frozenset[str]
    handles: frozenset[str]
    minutes: int | None

    @property
    def told(self) -> bool:
        """Whether the author says what the step makes; if not, only its place among the others is known."""
        return bool(self.makes)


def works_of(tutorial: Tutorial) -> tuple[Work, ...]:
    """The work of every step in order. The other way of a step is left out: it makes the same."""
    return tuple(_work(step, tutorial) for step in tutorial.steps)


def _work(step: Step, tutorial: Tutorial) -> Work:
    cut = {name.name for name in step.cuts}
    sewn = {name.name for join in step.joins for name in join.names()}
    sewn |= {name.name for name in step.stabilises}
    sewn |= {name.name for chain in step.finishes for name in chain}
    hems = [tutorial.hems[name.name] for name in step.hems if name.name in tutorial.hems]
    sewn |= {edge.name for hem in hems for edge in hem.edges}
    elastics = [tutorial.elastics[name.name] for name in step.inserts if name.name in tutorial.elastics]
    trims = [tutorial.trims[name.name] for name in step.inserts if name.name in tutorial.trims]
    darts = [dart for piece in tutorial.pieces.values() for dart in piece.darts.values()]
    taken_in = [dart for dart in darts if any(name.name == dart.name for name in step.darts)]
    # A dart changes its edge: whatever joins the edge later waits for it.
    sewn |= {dart.edge_name for dart in taken_in}
    boxes = [tutorial.boxed[name.name] for name in step.boxes if name.name in tutorial.boxed]
    put_in = {elastic.key for elastic in elastics} | {trim.key for trim in trims}
    uses = sewn | put_in | {edge for elastic in elastics for edge in seat_of(elastic, tutorial)}
    uses |= {edge.name for trim in trims for edge in trim.edges}
    uses |= {edge for boxed in boxes for edge in corner_edges(boxed, tutorial)}
    uses |= _parts(uses, tutorial) | {piece.name for boxed in boxes for piece in boxed.pieces}
    makes = cut | sewn | put_in | {hem.key for hem in hems}
    makes |= {dart.name for dart in taken_in} | {boxed.key for boxed in boxes}
    handles = _parts(uses | cut, tutorial) | _named(step, tutorial)
    return Work(step.number, frozenset(uses), frozenset(makes), frozenset(handles), step.minutes)


def _parts(names: Iterable[str], tutorial: Tutorial) -> set[str]:
    return {part for name in names if (part := part_of(name, tutorial)) is not None}


def seat_of(elastic: Elastic, tutorial: Tutorial) -> tuple[str, ...]:
    """The edges in whose casing an elastic lies; none when the author's words do not tell.

    They are the edges called like the measurement that it goes round, ``front.waist`` for ``body.waist``, of the
    pieces that have the elastic at one of their sides.
    """
    measure = elastic.around.name.rpartition(".")[2]
    beside = (
        piece for piece in tutorial.pieces.values() if any(side.name == elastic.key for side in piece.sides.values())
    )
    return tuple(piece.edges[measure].name for piece in beside if measure in piece.edges)


def corner_edges(boxed: Boxed, tutorial: Tutorial) -> tuple[str, ...]:
    """The edges whose seams meet at boxed corners: those at the sides and at the bottom of the piece with the corners.

    A side that is no edge with a name, such as a fold, is left out.
    """
    piece = tutorial.pieces.get(boxed.pieces[-1].name)
    if piece is None:
        return ()
    beside = dict.fromkeys(piece.sides[side].name for side in ("left", "right", "bottom") if side in piece.sides)
    return tuple(piece.edges[name].name for name in beside if name in piece.edges)


def _named(step: Step, tutorial: Tutorial) -> set[str]:
    """The parts that the words and the numbers of a card name."""
    text = step.text.text if step.text else ""
    words = " ".join([step.title, *(need.text for need in step.needs), text])
    found = _parts((reference.name for reference in step.text.references), tutorial) if step.text else set()
    called = {piece.key: piece.called for piece in tutorial.pieces.values()}
    for key in (part.key for part in parts_of(tutorial)):
        names = {key.replace("_", " "), called.get(key, key)}
        pattern = "|".join(re.escape(name.removesuffix("s")) for name in sorted(names) if name.strip("s"))
        if pattern and re.search(rf"\b(?:{pattern})s?\b", words, re.IGNORECASE):
            found.add(key)
    return found
