"""What follows from a change or a swap: the whole tutorial worked out again with it made."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from functools import partial

from sitegen.quantities import Worked, plus, work
from sitegen.sewing import lengthen
from sitegen.tutorial.compute.define import numbers_of
from sitegen.tutorial.compute.lines_of_change import on_slope
from sitegen.tutorial.compute.naming import words_of
from sitegen.tutorial.compute.numbers import Circle, Maker, Missing, Numbers
from sitegen.tutorial.compute.result import Computed
from sitegen.tutorial.model import Change, ChangeLine, Piece, Share, Swap, Tutorial

_CANNOT = (Missing, Circle, ZeroDivisionError)


def changed_by(plain: Computed) -> Mapping[str, Computed]:
    """The tutorial after each change and swap. Numbers that moved get names of their own: ``CHANGE.then.NAME``."""
    tutorial = plain.tutorial
    found: dict[str, Computed] = {}
    for change in tutorial.changes.values():
        after = numbers_of(tutorial, lambda new, change=change: _make(change, plain, new))  # type: ignore[misc]
        found[change.key] = Computed(replace(tutorial, claims=()), after)
    for swap in tutorial.swaps.values():
        other = _swapped(swap, plain)
        if other is not None:
            found[swap.key] = Computed(other, numbers_of(other))
    for key, changed in found.items():
        _name_what_moved(key, plain.numbers, changed.numbers, tutorial)
    return found


def made_together(plain: Computed, keys: Sequence[str]) -> Computed:
    """The tutorial with several of its changes and swaps made at once, by their names, and every number that follows.

    The numbers of these changes themselves stay what they are before they are made: a change tells the way from the
    one to the other. Raises ValueError in words when two of the changes alter one number, or two of the swaps one
    band: what they do together is not said anywhere.
    """
    base = plain
    swapped: dict[str, str] = {}
    for key in (key for key in keys if key in plain.tutorial.swaps):
        band = plain.tutorial.swaps[key].band.name
        if band in swapped:
            raise ValueError(f"{swapped[band]} and {key} both alter {band}")
        swapped[band] = key
        other = _swapped(plain.tutorial.swaps[key], plain)
        if other is not None:
            bands = {**base.tutorial.bands, band: other.bands[band]}
            base = _computed(replace(base.tutorial, bands=bands))
    changes = [plain.tutorial.changes[key] for key in keys if key in plain.tutorial.changes]
    altered: dict[str, str] = {}
    for change in changes:
        own = Numbers(plain.tutorial.size_count)
        _make(change, base, own)
        for name in own:
            if name in altered:
                raise ValueError(f"{altered[name]} and {change.key} both alter {words_of(name)}")
            altered[name] = change.key

    def make(new: Numbers) -> None:
        for name in plain.numbers:
            if name.partition(".")[0] in keys:
                new.define(name, partial(plain.numbers.at, name))
        for change in changes:
            _make(change, base, new)

    tutorial = replace(base.tutorial, claims=())
    return Computed(tutorial, numbers_of(tutorial, make))


def more_cloth(key: str, fabric: str, plain: Computed) -> Mapping[int, Worked]:
    """What the pieces of a fabric need after a change or swap, for every size by its index in which that is more than
    the tutorial tells to buy; nothing where it does not tell, or nobody can know."""
    found = {}
    for size in range(plain.tutorial.size_count):
        need, bought = (plain.length(name, size) for name in (f"{key}.then.{fabric}.need", f"{fabric}.buy"))
        if need is not None and bought is not None and need.length > bought.length:
            found[size] = need
    return found


def _computed(tutorial: Tutorial) -> Computed:
    return Computed(tutorial, numbers_of(tutorial))


def _make(change: Change, plain: Computed, new: Numbers) -> None:
    """Define the lengths that the change itself alters; all others follow from them."""
    old, tutorial = plain.numbers, plain.tutorial
    pieces = [tutorial.pieces[name.name] for name in change.pieces if name.name in tutorial.pieces]
    axis = "width" if change.widens else "length"
    for piece in pieces:
        name = f"{piece.key}.{'finished' if piece.finished_given else 'cut'}_{axis}"
        if name in old:
            _add(name, lambda size: _share_of_piece(change, len(pieces), old, size), old, new)
        for edge in change.crosses:
            key = edge.name.removeprefix(f"{piece.key}.")
            if key in piece.edges:
                growth = partial(_growth, change, key, piece, len(pieces), tutorial, old)
                _add(piece.edges[key].name, growth, old, new)


def _add(name: str, more: Maker, old: Numbers, new: Numbers) -> None:
    new.define(name, lambda size: work(words_of(name), old.at(name, size), plus(more(size))))


def _share_of_piece(change: Change, pieces: int, old: Numbers, size: int) -> Worked:
    """What the change adds to each of its pieces: all of a length, a share of a width."""
    amount = old.at(f"{change.key}.amount", size)
    return lengthen.share_of_each(amount, pieces) if change.widens else amount


def _growth(
    change: Change, edge: str, piece: Piece, pieces: int, tutorial: Tutorial, old: Numbers, size: int
) -> Worked:
    """What the change adds to an edge that it crosses; where the piece tapers, a little more than the amount."""
    if change.widens or (piece.taper is None and not change.lines):
        return _share_of_piece(change, pieces, old, size)
    sloping, straight = [old.at(f"{change.key}.amount", size)], list[Worked]()
    if change.lines:
        crossing = [line for line in change.lines if _crosses(line, edge, piece)]
        sloping, straight = on_slope(change, crossing, piece, tutorial, old, size)
    if piece.taper is None:
        return lengthen.together(f"added to the {words_of(edge)}", [*sloping, *straight])
    top, bottom, over = (old.at(f"{piece.key}.taper_{end}", size) for end in ("top", "bottom", "over"))
    if not sloping:
        return lengthen.together(f"added to the {words_of(edge)}", straight)
    by = lengthen.together("added where it slopes", sloping) if change.lines else sloping[0]
    growth = lengthen.edge_growth(top, bottom, over, piece.taper.edges, by)
    return lengthen.together(f"added to the {words_of(edge)}", [growth, *straight]) if straight else growth


def _crosses(line: ChangeLine, edge: str, piece: Piece) -> bool:
    return any(name.name.removeprefix(f"{piece.key}.") == edge for name in line.crosses)


def _swapped(swap: Swap, plain: Computed) -> Tutorial | None:
    tutorial = plain.tutorial
    band = tutorial.bands.get(swap.band.name)
    try:
        ratio = plain.numbers.at(f"{swap.key}.ratio", 0).ratio
    except _CANNOT:
        return None
    if band is None:
        return None
    place = swap.ratio.place if swap.ratio is not None else swap.place
    text = swap.ratio.text if swap.ratio is not None else ""
    other = replace(band, fabric=swap.fabric, ratio=Share(ratio, text, place))
    return replace(tutorial, bands={**tutorial.bands, band.key: other}, swaps={}, claims=())


def _name_what_moved(key: str, old: Numbers, new: Numbers, tutorial: Tutorial) -> None:
    own = {*tutorial.changes, *tutorial.swaps}
    for name in list(new):
        if name.partition(".")[0] in own or name not in old:
            continue
        try:
            before, after = old.by_size(name), new.by_size(name)
        except _CANNOT:
            continue
        if [each.value for each in before] != [each.value for each in after]:
            old.define(f"{key}.then.{name}", lambda size, name=name: new.at(name, size))  # type: ignore[misc]
