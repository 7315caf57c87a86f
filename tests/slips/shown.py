"""What a student gets to see and use of a tutorial, to tell whether a slip changes it.

Numbers are taken as a ruler shows them, so a change that no ruler shows is none. What an author writes although it is
computed (a claim) is not shown: pages show the computed number.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache

from sitegen.quantities import System, Value, show_value
from sitegen.tutorial import Computed, Prose, Step

_REFERENCE = re.compile(r"(?<!\{)\{\s*([a-z][A-Za-z0-9_.]*)\s*\}")
_PIECE = ("cut_length", "cut_width", "finished_length", "finished_width")


@dataclass(frozen=True, slots=True)
class Shown:
    """The numbers and texts of a page, and apart from them what else the hands do."""

    numbers: frozenset[tuple[str, str]]
    work: tuple[tuple[str, ...], ...]
    """The order of the steps, and with what stitch each seam and hem is sewn."""


def shown(views: tuple[Computed, ...]) -> Shown:
    """What the page of a tutorial shows, in all its views."""
    numbers: set[tuple[str, str]] = set()
    work: list[tuple[str, ...]] = []
    for computed in views:
        numbers |= {(name, _in_both(computed, name)) for name in _names(computed)}
        numbers |= {*_facts(computed), *_texts(computed)}
        work += _work(computed)
    return Shown(frozenset(numbers), tuple(work))


def _in_both(computed: Computed, name: str) -> str:
    worked = computed.by_size(name)
    return "" if worked is None else " | ".join(_both(each.value) for each in worked)


@lru_cache(maxsize=50_000)
def _both(value: Value) -> str:
    """A value in both systems. Kept, because nearly all values are the same before and after a slip."""
    return "; ".join(show_value(value, system) for system in System)


def _names(computed: Computed) -> set[str]:
    """The names of the numbers that stand in tables and drawings."""
    tutorial = computed.tutorial
    found = {f"body.{name}" for name in tutorial.body} | {"seam_allowance"}
    found |= {f"{key}.{field}" for key in tutorial.pieces for field in _PIECE}
    others = {name for name in computed.names() if name.partition(".")[0] not in {*tutorial.pieces, "body"}}
    return found | others


def _facts(computed: Computed) -> Iterator[tuple[str, str]]:
    """Numbers that are given and shown as they are."""
    tutorial = computed.tutorial
    yield "sizes", ", ".join(tutorial.sizes)
    for fabric in tutorial.fabrics.values():
        for name in ("stretch_across", "stretch_down", "shrinkage"):
            share = getattr(fabric, name)
            yield f"{fabric.key}.{name}", share.text if share else ""
    for piece in tutorial.pieces.values():
        yield (
            f"cut {piece.key}",
            f"{piece.cut.text if piece.cut else ''} of {piece.fabric.name if piece.fabric else ''}",
        )
    for band in tutorial.bands.values():
        yield f"cut {band.key}", f"{band.make} of {band.fabric.name}"
    for index, supply in enumerate(tutorial.supplies):
        yield f"supply {index}", f"{supply.size} {supply.amount}"
    for step in tutorial.steps:
        for index, join in enumerate(step.every_join()):
            settings = (
                join.stitch_width_mm,
                join.stitch_length_mm,
                join.stitches_per_inch and join.stitches_per_inch.text,
            )
            yield f"seam {step.title} {index}", f"{settings}"
        yield f"needs {step.title}", ", ".join(need.text for need in step.needs)


def _texts(computed: Computed) -> Iterator[tuple[str, str]]:
    """Running texts as they are read: every reference with the number that stands for it."""
    for prose in _prose(computed):
        yield "text", _REFERENCE.sub(lambda match: _in_both(computed, match.group(1)), prose.text)


def _prose(computed: Computed) -> Iterator[Prose]:
    """Every running text that the student sees; notes to the teacher are not shown."""
    notes = {id(step.teacher) for step in computed.tutorial.steps}
    yield from (prose for prose in computed.tutorial.prose() if id(prose) not in notes)


def _work(computed: Computed) -> Iterator[tuple[str, ...]]:
    for hem in computed.tutorial.hems.values():
        yield hem.key, hem.stitch.text if hem.stitch else "", ", ".join(edge.name for edge in hem.edges)
    for step in computed.tutorial.steps:
        yield step.title, *_seams(step)


def _seams(step: Step) -> Iterator[str]:
    for join in step.every_join():
        chains = ", ".join(" + ".join(edge.name for edge in chain) for chain in join.chains)
        yield f"{chains}: {join.stitch.text if join.stitch else ''}"
    yield from (hem.name for hem in step.hems)
    yield from (" + ".join(edge.name for edge in chain) for chain in step.finishes)
