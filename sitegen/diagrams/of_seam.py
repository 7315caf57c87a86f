"""From a join of a computed tutorial to the picture of its seam, or of how its two edges meet."""

from __future__ import annotations

import re
from collections.abc import Iterable

from sitegen.diagrams.drawing import Drawing
from sitegen.diagrams.kinds import edges_meeting, seam_section
from sitegen.diagrams.kinds.seam_section import Closed, Layer, Pressed, Row
from sitegen.quantities import System
from sitegen.tutorial import Computed, Join, Reference, chain_allowance, chain_length, edge_number, part_of, words_of

_CLOSED = (
    (re.compile(r"\bfrench\b", re.IGNORECASE), Closed.FRENCH),
    (re.compile(r"\bfell", re.IGNORECASE), Closed.FELLED),
)
_EITHER = re.compile(r"\b(?:one|either) side\b", re.IGNORECASE)
_AWAY = re.compile(r"\baway from\b", re.IGNORECASE)


def seam_drawing(join: Join, computed: Computed, size: int, first: System) -> Drawing | None:
    """The seam of a join of two sides; None when an allowance is not known."""
    sides = [_layer(chain, computed, size) for chain in join.chains]
    known = [side for side in sides if side is not None]
    if len(known) != 2:
        return None
    pressed = _pressed(join)
    towards = _towards(join, computed) if pressed is Pressed.ASIDE else 1
    if towards == 0:
        known.reverse()
    one, other = known
    if towards is None:
        one, other = _unnamed(one, "one piece"), _unnamed(other, "the other piece")
    stitch = join.stitch.text if join.stitch is not None else ""
    hidden = join.enclosed.text if join.enclosed is not None else ""
    together = pressed is not Pressed.OPEN and _finished_later(join, computed)
    picture = seam_section.SeamSection(
        called=_called(join),
        first=one,
        second=other,
        stitch=stitch,
        row=next((row for row in (Row.OVERLOCK, Row.ZIGZAG) if row.value in stitch), Row.STRAIGHT),
        pressed=pressed,
        press=join.press,
        hidden=hidden,
        closed=next((closed for words, closed in _CLOSED if words.search(hidden)), None),
        together=together,
    )
    return seam_section.draw(picture, first=first)


def meeting_drawing(join: Join, computed: Computed, size: int, first: System) -> Drawing | None:
    """How the two sides of a join meet that are not equally long; None when a length is not known."""
    sides = [_side(chain, computed, size) for chain in join.chains]
    known = [side for side in sides if side is not None]
    if len(known) != 2:
        return None
    longer, shorter = sorted(known, key=lambda side: side.length, reverse=True)
    picture = edges_meeting.EdgesMeeting(longer, shorter, _way(join, computed))
    return edges_meeting.draw(picture, first=first)


def _called(join: Join) -> str:
    edges = dict.fromkeys(f"the {words_of(chain[0].name)}" for chain in join.chains)
    return f"seam of {' and '.join(edges)}"


def _layer(chain: tuple[Reference, ...], computed: Computed, size: int) -> Layer | None:
    allowance = chain_allowance(chain, computed, size)
    if allowance is None:
        return None
    name = chain[0].name
    owner = name if computed.length(f"{name}.seam_allowance", size) is not None else name.partition(".")[0]
    finished = {edge.name for step in computed.tutorial.steps for ring in step.finishes for edge in ring}
    return Layer(_parts_called(chain, computed), owner, allowance.length, all(edge.name in finished for edge in chain))


def _finished_later(join: Join, computed: Computed) -> bool:
    """Whether its edges are only finished once it is sewn, so that one row of stitches goes round both."""
    steps = computed.tutorial.steps
    edges = {name.name for name in join.names()}
    sewn = next((step.number for step in steps if join in step.every_join()), 0)
    return not any(
        step.number < sewn and edges & {edge.name for chain in step.finishes for edge in chain} for step in steps
    )


def _unnamed(layer: Layer, called: str) -> Layer:
    return Layer(called, layer.edge, layer.allowance, layer.finished)


def _parts_called(chain: Iterable[Reference], computed: Computed) -> str:
    """The pieces of one side: ``front and sleeve``."""
    return " and ".join(dict.fromkeys(_part_called(name, computed) for name in chain))


def _part_called(name: Reference, computed: Computed) -> str:
    part = part_of(name.name, computed.tutorial) or name.name
    piece = computed.tutorial.pieces.get(part)
    return piece.called if piece is not None and piece.called else words_of(part)


def _pressed(join: Join) -> Pressed:
    if not join.press:
        return Pressed.NOT
    return Pressed.OPEN if re.search(r"\bopen\b", join.press, re.IGNORECASE) else Pressed.ASIDE


def _towards(join: Join, computed: Computed) -> int | None:
    """To which side of a seam the author's words press it; the second when it does not matter, None when not known."""
    if _EITHER.search(join.press):
        return 1
    said = _tokens(join.press)
    words = [
        _tokens(f"{_parts_called(chain, computed)} {' '.join(name.name for name in chain)}") for chain in join.chains
    ]
    named = [bool(said & (words[side] - words[1 - side])) for side in (0, 1)]
    if named[0] == named[1]:
        return None
    side = named.index(True)
    return 1 - side if _AWAY.search(join.press) else side


def _tokens(text: str) -> set[str]:
    return {word.removesuffix("s") for word in re.findall(r"[a-z]+", text.lower())}


def _side(chain: tuple[Reference, ...], computed: Computed, size: int) -> edges_meeting.EdgeChain | None:
    whole = chain_length(chain, computed, size)
    if whole is None:
        return None
    parts = []
    for name in chain:
        number = edge_number(name, computed.tutorial)
        length = computed.length(number, size)
        if length is None:
            return None
        parts.append(edges_meeting.EdgePart(words_of(name.name), number, length.length))
    return edges_meeting.EdgeChain(tuple(parts))


def _way(join: Join, computed: Computed) -> edges_meeting.Way:
    """What makes the two sides meet: the one is stretched, or the other gathered, or eased in."""
    tutorial = computed.tutorial
    names = {name.name for name in join.names()}
    if join.stretched or names & {*tutorial.bands, *tutorial.elastics}:
        return edges_meeting.Way.STRETCH
    gathered = {edge.name for gather in tutorial.gathers.values() for edge in gather.edges}
    folded = {edge.name for pleats in tutorial.pleats.values() for edge in pleats.edges}
    if names & gathered:
        return edges_meeting.Way.GATHER
    return edges_meeting.Way.PLEAT if names & folded else edges_meeting.Way.EASE
