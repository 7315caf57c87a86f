"""Defines the numbers of lengthening, shortening and widening, for each piece that changes."""

from __future__ import annotations

from functools import partial

from sitegen.quantities import Worked, given
from sitegen.sewing import ease, lengthen
from sitegen.tutorial.compute.given import lengths_maker
from sitegen.tutorial.compute.lines_of_change import define_lines, define_parts, on_slope
from sitegen.tutorial.compute.naming import words_of
from sitegen.tutorial.compute.numbers import Maker, Numbers
from sitegen.tutorial.model import Change, Piece, Tutorial


def define_changes(tutorial: Tutorial, numbers: Numbers) -> None:
    """Changes: amount, both parts at each line, new lengths, and the step at each tapered edge.

    The names of a change stand for its first piece. Where it changes several, each has names of its own besides:
    ``longer.back.part_above``.
    """
    for change in tutorial.changes.values():
        first = tutorial.pieces.get(change.pieces[0].name)
        if first is None:
            continue
        present = f"{first.key}.{'finished' if change.wanted_finished else 'cut'}_length"
        _define_amount(change, present, numbers)
        for owner, name in change.owners:
            if name in tutorial.pieces:
                _define_for_piece(change, owner, tutorial.pieces[name], tutorial, numbers)


def _define_for_piece(change: Change, owner: str, piece: Piece, tutorial: Tutorial, numbers: Numbers) -> None:
    if change.widens:
        _define_widening(change, owner, piece, numbers)
        return
    cut, finished, amount = f"{piece.key}.cut_length", f"{piece.key}.finished_length", f"{change.key}.amount"
    if change.line_at is not None:
        define_parts(change.line_at, owner, cut, numbers)
    for field, present in (("new_cut_length", cut), ("new_finished_length", finished)):
        name = f"{owner}.{field}"
        if present in numbers:
            numbers.define(
                name,
                lambda size, name=name, present=present: lengthen.new_length(  # type: ignore[misc]
                    words_of(name), numbers.at(present, size), numbers.at(amount, size)
                ),
            )
    if change.shortens and owner == change.key and not change.lines:
        numbers.define(
            f"{owner}.fold", lambda size: lengthen.fold_depth(words_of(f"{owner}.fold"), numbers.at(amount, size))
        )
    _define_taper(change, owner, piece, tutorial, numbers)
    if change.lines:
        define_lines(change, owner, piece, tutorial, numbers)


def _define_widening(change: Change, owner: str, piece: Piece, numbers: Numbers) -> None:
    """What is added at each seam edge, and the new width of the piece."""
    each, width, present = f"{change.key}.each_edge", f"{owner}.new_cut_width", f"{piece.key}.cut_width"
    amount = f"{change.key}.amount"

    def at_each_edge(size: int) -> Worked:
        return ease.per_edge(words_of(each), numbers.at(amount, size), change.seam_edges)

    numbers.define(each, at_each_edge)
    if present in numbers:

        def new_width(size: int) -> Worked:
            more = lengthen.share_of_each(numbers.at(amount, size), len(change.pieces))
            return lengthen.new_length(words_of(width), numbers.at(present, size), more)

        numbers.define(width, new_width)


def _define_amount(change: Change, present: str, numbers: Numbers) -> None:
    key = change.key
    name = f"{key}.amount"
    own = [line.amount for line in change.lines]
    if change.wanted is not None:
        kind = "finished" if change.wanted_finished else "cut"
        wanted = lengths_maker(change.wanted, numbers, f"wanted {kind} length")
        numbers.define(f"{key}.wanted", wanted)
        if present in numbers:
            numbers.define(name, lambda size: lengthen.amount(words_of(name), wanted(size), numbers.at(present, size)))
    elif change.amount is not None:
        typed = lengths_maker(change.amount, numbers, words_of(name))
        numbers.define(name, partial(_signed, typed, shortens=change.shortens))
    elif own and all(own):
        at_lines = [f"{key}.line_{number}.amount" for number in range(1, len(own) + 1)]
        numbers.define(
            name, lambda size: lengthen.together(words_of(name), [numbers.at(each, size) for each in at_lines])
        )
    for number, line in enumerate(change.lines, 1):
        at_line = f"{key}.line_{number}.amount"
        if line.amount is not None:
            typed = lengths_maker(line.amount, numbers, words_of(at_line))
            numbers.define(at_line, partial(_signed, typed, shortens=line.shortens))
        elif line.share is not None:
            share = given(f"share of line {number}", line.share.ratio)
            numbers.define(
                at_line,
                lambda size, at_line=at_line, share=share: lengthen.shared(  # type: ignore[misc]
                    words_of(at_line), numbers.at(name, size), share
                ),
            )
        else:
            numbers.define(
                at_line,
                lambda size, at_line=at_line: lengthen.shared_equally(  # type: ignore[misc]
                    words_of(at_line), numbers.at(name, size), len(own)
                ),
            )
        if line.shortens or change.shortens:
            fold = f"{key}.line_{number}.fold"
            numbers.define(
                fold,
                lambda size, fold=fold, at_line=at_line: lengthen.fold_depth(  # type: ignore[misc]
                    words_of(fold), numbers.at(at_line, size)
                ),
            )


def _signed(typed: Maker, size: int, *, shortens: bool) -> Worked:
    """What was typed, below nothing where it is taken out."""
    value = typed(size)
    return given(value.name, value.length * -1) if shortens else value


def _define_taper(change: Change, owner: str, piece: Piece, tutorial: Tutorial, numbers: Numbers) -> None:
    taper = piece.taper
    if taper is None:
        return
    slope, step = f"{piece.key}.slope", f"{owner}.taper_step"
    top, bottom, over = (lengths_maker(each, numbers) for each in (taper.top, taper.bottom, taper.over))
    for field, maker in (("taper_top", top), ("taper_bottom", bottom), ("taper_over", over)):
        numbers.define(f"{piece.key}.{field}", maker)
    numbers.define(
        slope, lambda size: lengthen.slope(words_of(slope), top(size), bottom(size), over(size), taper.edges)
    )
    amount = f"{change.key}.amount"
    if not change.lines:
        numbers.define(
            step,
            lambda size: lengthen.taper_step(words_of(step), numbers.at(amount, size), numbers.at(slope, size)),
        )
    trued = f"{owner}.trued_edge"

    def edge(size: int) -> Worked:
        if not change.lines:
            more = numbers.at(amount, size)
        else:
            sloping, _ = on_slope(change, change.lines, piece, tutorial, numbers, size)
            more = lengthen.together("added where it slopes", sloping)
        return lengthen.trued_edge(words_of(trued), top(size), bottom(size), over(size), taper.edges, more)

    numbers.define(trued, edge)
