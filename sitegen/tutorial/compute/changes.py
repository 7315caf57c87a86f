"""Defines the numbers of lengthening and shortening."""

from __future__ import annotations

from sitegen.quantities import Worked, given
from sitegen.sewing import ease, lengthen
from sitegen.tutorial.compute.given import lengths_maker, words_of
from sitegen.tutorial.compute.numbers import Numbers
from sitegen.tutorial.model import Change, Piece, Tutorial


def define_changes(tutorial: Tutorial, numbers: Numbers) -> None:
    """Changes: amount, both parts, new lengths, and the step at each tapered edge."""
    for change in tutorial.changes.values():
        piece = tutorial.pieces.get(change.pieces[0].name)
        if piece is not None:
            _define_change(change, piece, numbers)


def _define_change(change: Change, piece: Piece, numbers: Numbers) -> None:
    key = change.key
    cut, finished = f"{piece.key}.cut_length", f"{piece.key}.finished_length"
    _define_amount(change, cut if not change.wanted_finished else finished, numbers)
    amount = f"{key}.amount"
    if change.widens:
        _define_widening(change, piece, numbers)
        return
    if change.line_at is not None:
        _define_parts(change, cut, numbers)
    for name, present in (("new_cut_length", cut), ("new_finished_length", finished)):
        if present in numbers:
            numbers.define(
                f"{key}.{name}",
                lambda size, name=name, present=present: lengthen.new_length(  # type: ignore[misc]
                    words_of(f"{key}.{name}"), numbers.at(present, size), numbers.at(amount, size)
                ),
            )
    if change.shortens:
        numbers.define(
            f"{key}.fold", lambda size: lengthen.fold_depth(words_of(f"{key}.fold"), numbers.at(amount, size))
        )
    _define_taper(change, piece, numbers)


def _define_widening(change: Change, piece: Piece, numbers: Numbers) -> None:
    """What is added at each seam edge, and the new width of the first piece."""
    key = change.key
    each, width, present = f"{key}.each_edge", f"{key}.new_cut_width", f"{piece.key}.cut_width"

    def at_each_edge(size: int) -> Worked:
        return ease.per_edge(words_of(each), numbers.at(f"{key}.amount", size), change.seam_edges)

    numbers.define(each, at_each_edge)
    if present in numbers:

        def new_width(size: int) -> Worked:
            more = lengthen.share_of_each(numbers.at(f"{key}.amount", size), len(change.pieces))
            return lengthen.new_length(words_of(width), numbers.at(present, size), more)

        numbers.define(width, new_width)


def _define_amount(change: Change, present: str, numbers: Numbers) -> None:
    key = change.key
    name = f"{key}.amount"
    if change.wanted is not None:
        kind = "finished" if change.wanted_finished else "cut"
        wanted = lengths_maker(change.wanted, numbers, f"wanted {kind} length")
        numbers.define(f"{key}.wanted", wanted)
        if present in numbers:
            numbers.define(name, lambda size: lengthen.amount(words_of(name), wanted(size), numbers.at(present, size)))
        return
    if change.amount is None:
        return
    typed = lengths_maker(change.amount, numbers, words_of(name))
    sign = -1 if change.shortens else 1

    def amount(size: int) -> Worked:
        value = typed(size)
        return given(value.name, value.length * sign) if sign < 0 else value

    numbers.define(name, amount)


def _define_parts(change: Change, cut: str, numbers: Numbers) -> None:
    """The parts above and below the line, as the uncut piece lies on the table."""
    key, line = change.key, change.line_at
    if line is None or cut not in numbers:
        return
    near, far = ("part_above", "part_below") if line.from_top else ("part_below", "part_above")
    share, distance = line.share, line.distance

    def near_part(size: int) -> Worked:
        name = words_of(f"{key}.{near}")
        if share is not None:
            side = "top" if line.from_top else "bottom"
            return lengthen.part_above(name, numbers.at(cut, size), given(f"share from the {side}", share.ratio))
        if distance is None:
            raise AssertionError("a line lies at a share or at a distance")
        return lengths_maker(distance, numbers, name)(size)

    numbers.define(f"{key}.{near}", near_part)
    numbers.define(
        f"{key}.{far}",
        lambda size: lengthen.other_part(
            words_of(f"{key}.{far}"), numbers.at(cut, size), numbers.at(f"{key}.{near}", size)
        ),
    )


def _define_taper(change: Change, piece: Piece, numbers: Numbers) -> None:
    taper = piece.taper
    if taper is None:
        return
    key = change.key
    slope, step = f"{piece.key}.slope", f"{key}.taper_step"
    top, bottom, over = (lengths_maker(each, numbers) for each in (taper.top, taper.bottom, taper.over))
    for field, maker in (("taper_top", top), ("taper_bottom", bottom), ("taper_over", over)):
        numbers.define(f"{piece.key}.{field}", maker)
    numbers.define(
        slope, lambda size: lengthen.slope(words_of(slope), top(size), bottom(size), over(size), taper.edges)
    )
    numbers.define(
        step,
        lambda size: lengthen.taper_step(words_of(step), numbers.at(f"{key}.amount", size), numbers.at(slope, size)),
    )
    trued = f"{key}.trued_edge"

    def edge(size: int) -> Worked:
        amount = numbers.at(f"{key}.amount", size)
        return lengthen.trued_edge(words_of(trued), top(size), bottom(size), over(size), taper.edges, amount)

    numbers.define(trued, edge)
