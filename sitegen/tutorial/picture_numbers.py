"""The numbers that a picture of a seam, of two edges that meet or of a piece needs, and which of them are lacking."""

from __future__ import annotations

from collections.abc import Iterable

from sitegen.quantities import ZERO, Worked, plus, work
from sitegen.tutorial.compute import Computed, edge_number, words_of
from sitegen.tutorial.model import Join, Reference
from sitegen.tutorial.picture_names import Asked, PictureOf

_MOST_TIMES = 10
_ON_TOP = ("topstitch", "cover stitch", "twin needle", "blind hem", "slip stitch")
"""Rows that hold layers which already lie on each other: nothing is sewn right sides together with them."""
_NOT_CLOTH = "only a seam of two single layers of cloth is drawn"


def chain_length(chain: tuple[Reference, ...], computed: Computed, size: int) -> Worked | None:
    """The edges of one side of a seam, one behind the other, as they are before they are gathered or stretched."""
    parts = [computed.length(edge_number(name, computed.tutorial), size) for name in chain]
    known = [part for part in parts if part is not None]
    if not known or len(known) != len(parts):
        return None
    name = " + ".join(name.name for name in chain)
    return known[0] if len(known) == 1 else work(name, known[0], *map(plus, known[1:]))


def chain_allowance(chain: tuple[Reference, ...], computed: Computed, size: int) -> Worked | None:
    """The seam allowance of one side of a seam; None when it is not known, or not alike along the whole side."""
    found = [_allowance(name.name, computed, size) for name in chain]
    known = [each for each in found if each is not None]
    alike = len(known) == len(chain) and len({each.value for each in known}) == 1
    return known[0] if alike else None


def _allowance(name: str, computed: Computed, size: int) -> Worked | None:
    part = name.partition(".")[0]
    return computed.length(f"{name}.seam_allowance", size) or computed.length(f"{part}.seam_allowance", size)


def lacking(picture: PictureOf, computed: Computed, size: int) -> str:
    """Why this picture cannot be drawn for the size, in words; empty when it can."""
    if picture.join is None:
        return _lacking_of_plan(picture.part, computed, size)
    join = picture.join
    if len(join.chains) != 2:
        return f"it joins {len(join.chains)} edges, and only a seam of two is drawn"
    bands = [name.name for name in join.names() if name.name in computed.tutorial.bands]
    if bands:
        return f"a band has a picture of its own; write diagrams: [{bands[0]}]"
    return _lacking_of_seam(join, computed, size) if picture.asked is Asked.SEAM else _apart(join, computed, size)


def _lacking_of_seam(join: Join, computed: Computed, size: int) -> str:
    tutorial = computed.tutorial
    for name in join.names():
        if name.name in tutorial.elastics or name.name in tutorial.bindings:
            return f"{name.name} is sewn on in another way; {_NOT_CLOTH}"
    if join.stitch is not None and join.stitch.text in _ON_TOP:
        return f"a {join.stitch.text} holds layers that lie on each other; only a seam sewn from the inside is drawn"
    for chain in join.chains:
        allowance = chain_allowance(chain, computed, size)
        if allowance is None:
            return f"the seam allowance of {_listed(chain)} is not known, or not the same all along"
        if allowance.length <= ZERO:
            return f"{_listed(chain)} has no seam allowance"
    return ""


def _apart(join: Join, computed: Computed, size: int) -> str:
    lengths = []
    for chain in join.chains:
        length = chain_length(chain, computed, size)
        if length is None or length.length <= ZERO:
            return f"the length of {_listed(chain)} is not known"
        lengths.append(length.length)
    if lengths[0] == lengths[1]:
        return f"{_listed(join.chains[0])} and {_listed(join.chains[1])} are equally long"
    if max(lengths) > min(lengths) * _MOST_TIMES:
        return "the two sides differ too much to be drawn to one scale"
    return ""


def _lacking_of_plan(part: str, computed: Computed, size: int) -> str:
    for field in ("cut_length", "cut_width"):
        number = computed.length(f"{part}.{field}", size)
        if number is None or number.length <= ZERO:
            return f"the {words_of(f'{part}.{field}')} is not known"
    return ""


def _listed(chain: Iterable[Reference]) -> str:
    return " + ".join(name.name for name in chain)
