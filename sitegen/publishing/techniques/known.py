"""The techniques that a tutorial can hold, by the parts of its model, and the numbers that are their settings.

Names are the plain ones of the trade (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from enum import Enum
from typing import Any

from sitegen.tutorial import Gather, Pleats, Step, Tutorial


class Kind(Enum):
    """How techniques are grouped; the order of the groups."""

    STITCHES = "Stitches"
    EDGES = "Edges, bands and hems"
    SHAPE = "Fullness and shape"
    MEASURING = "Measuring and changing"


@dataclass(frozen=True, slots=True)
class Named:
    """A technique: its name, its group, and under which names a glossary may explain it, the best first."""

    name: str
    kind: Kind
    terms: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Section:
    """A section of ``tutorial.yaml`` whose parts are made by a technique."""

    parts: Callable[[Tutorial], Mapping[str, Any]]
    named: Callable[[Any], Named]
    settings: tuple[str, ...]
    """The fields of a part whose numbers are told."""
    made: Callable[[Step], Iterable[str]]
    """The names that a step gives of what is made in it: edges that it joins, hems that it turns."""
    edges: Callable[[Any], Iterable[str]] = lambda part: ()
    """Edges of a part: joining one of them makes the part."""


def stitch(text: str) -> Named | None:
    """The technique of a stitch by the author's name for it; None for what is a remark rather than a name."""
    words = " ".join(text.lower().split())
    if not words or len(words.split()) > _MOST_WORDS or not words.replace("-", "").replace(" ", "").isalpha():
        return None
    full = words if any(word in words for word in _NAMES_OF_THEIR_OWN) else f"{words} stitch"
    shorter = full.split(" ", 1)[-1]
    return Named(full, Kind.STITCHES, (full, words, shorter) if " " in shorter else (full, words))


_MOST_WORDS = 4
_NAMES_OF_THEIR_OWN = ("stitch", "needle", "basting", "hem", "overlock")

FINISHING = Named("finishing an edge", Kind.EDGES, ("finish an edge", "finishing"))
STABILISING = Named("stabilising an edge", Kind.EDGES, ("stabilise",))
DARTS = Named("darts", Kind.SHAPE, ("dart", "darts"))
DART_SETTINGS = ("width", "length")


def _joined(step: Step) -> Iterable[str]:
    return (name.name for join in step.every_join() for name in join.names())


def _put_in(step: Step) -> Iterable[str]:
    return (name.name for name in step.inserts)


def _hemmed(step: Step) -> Iterable[str]:
    other = step.other_way.hems if step.other_way is not None else ()
    return (name.name for name in (*step.hems, *other))


def _edges(part: Gather | Pleats) -> Iterable[str]:
    return (edge.name for edge in part.edges)


def _hem(part: Any) -> Named:
    if part.fold_under is not None:
        return Named("double-fold hem", Kind.EDGES, ("double-fold hem", "hem"))
    return Named("single-fold hem", Kind.EDGES, ("single-fold hem", "hem"))


def _change(part: Any) -> Named:
    name = "making a piece wider" if part.widens else "making a piece longer or shorter"
    return Named(name, Kind.MEASURING)


def _pleats(part: Any) -> Named:
    word = part.kind.word
    return Named(f"{word}s", Kind.SHAPE, (word, word.replace("box ", ""), "pleat"))


def _trim(part: Any) -> Named:
    where = {"cord": "in a casing", "zip": "in an opening"}.get(part.kind, "along an edge")
    return Named(f"{part.kind} {where}", Kind.EDGES, (part.kind,))


def _always(named: Named) -> Callable[[Any], Named]:
    return lambda part: named


_BAND = Named("band on an opening", Kind.EDGES, ("band",))
_BIAS = Named("bias binding", Kind.EDGES, ("bias binding", "binding", "bias"))
_CASING = Named("elastic in a casing", Kind.EDGES, ("casing", "elastic"))
_GATHERS = Named("gathers", Kind.SHAPE, ("gather", "gathers"))
_BOXED = Named("boxed corners", Kind.SHAPE, ("boxed corner",))
_CIRCLE = Named("skirt cut from a circle", Kind.SHAPE, ("circle skirt",))
_DROPS = Named("drops of cloth side by side", Kind.SHAPE, ("drop", "drops"))
_MARKS = Named("marks at equal distances", Kind.MEASURING)

SECTIONS = (
    Section(lambda each: each.hems, _hem, ("allowance", "turn", "fold_under", "stitch_line", "needle_gap"), _hemmed),
    Section(lambda each: each.bands, _always(_BAND), ("ratio", "finished_width", "cut_length"), _joined),
    Section(
        lambda each: each.bindings, _always(_BIAS), ("finished_width", "strip_width", "length", "square_side"), _joined
    ),
    Section(
        lambda each: each.elastics,
        _always(_CASING),
        ("ratio", "width", "overlap", "cut_length", "casing"),
        _put_in,
    ),
    Section(lambda each: each.trims, _trim, ("length", "each_end"), _put_in),
    Section(lambda each: each.gathers, _always(_GATHERS), ("ratio", "before", "after"), _joined, _edges),
    Section(lambda each: each.pleats, _pleats, ("depth", "take_up", "visible"), _joined, _edges),
    Section(
        lambda each: each.boxed,
        _always(_BOXED),
        ("square", "depth", "from_tip"),
        lambda step: (name.name for name in step.boxes),
    ),
    Section(lambda each: each.circles, _always(_CIRCLE), ("radius", "cut_radius", "hem_radius"), _joined),
    Section(lambda each: each.drops, _always(_DROPS), ("full_width", "cut_length", "cloth"), _joined),
    Section(lambda each: each.spacings, _always(_MARKS), ("gap",), lambda step: ()),
    Section(
        lambda each: each.changes, _change, ("amount", "part_above", "part_below", "new_finished_length"), lambda _: ()
    ),
)
