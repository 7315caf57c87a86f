"""Defines the numbers of marks at even distances, of gathers and of pleats."""

from __future__ import annotations

from sitegen.quantities import Worked, given, times, work
from sitegen.sewing import gather, pleats, spacing
from sitegen.tutorial.compute.given import lengths_maker, together
from sitegen.tutorial.compute.naming import words_of
from sitegen.tutorial.compute.numbers import Circle, Missing, Numbers
from sitegen.tutorial.model import Gather, GatheringRows, Pleats, Spacing, Tutorial

MOST_MARKS = 200


def define_spacings(tutorial: Tutorial, numbers: Numbers) -> None:
    """Marks: how many, how far apart, and how far each lies from the beginning.

    Must come when every other number is defined: how many positions there are may follow from a length.
    """
    for each in tutorial.spacings.values():
        _define_spacing(each, tutorial, numbers)
    for each in tutorial.spacings.values():
        _define_positions(each, numbers)


def _define_spacing(each: Spacing, tutorial: Tutorial, numbers: Numbers) -> None:
    key = each.key
    length = f"{key}.length"
    numbers.define(
        length,
        lengths_maker(each.length, numbers) if each.length else together(length, each.along, tutorial, numbers),
    )
    margins = {"first_margin": each.first_margin, "last_margin": each.last_margin, "start": each.start}
    for field, lengths in (*margins.items(), ("greatest_gap", each.greatest_gap)):
        if lengths:
            numbers.define(f"{key}.{field}", lengths_maker(lengths, numbers))
    if each.spread is spacing.Spread.BOTH_ENDS:
        numbers.define(
            f"{key}.span",
            lambda size: spacing.span(
                words_of(f"{key}.span"),
                numbers.at(length, size),
                _optional(f"{key}.first_margin", numbers, size),
                _optional(f"{key}.last_margin", numbers, size),
            ),
        )
    whole = f"{key}.span" if each.spread is spacing.Spread.BOTH_ENDS else length

    def marks(size: int) -> Worked:
        if each.marks is not None:
            return given(words_of(f"{key}.marks"), each.marks)
        needed = spacing.marks_needed(
            words_of(f"{key}.marks"), numbers.at(whole, size), numbers.at(f"{key}.greatest_gap", size), each.spread
        )
        if needed.number > MOST_MARKS:
            raise ValueError(f"more than {MOST_MARKS} marks would be needed")
        return needed

    def gap(size: int) -> Worked:
        return spacing.gap(words_of(f"{key}.gap"), numbers.at(whole, size), _count(key, numbers, size), each.spread)

    numbers.define(f"{key}.marks", marks)
    numbers.define(f"{key}.gap", gap)
    if each.button is not None:
        for part in ("diameter", "thickness"):
            typed = each.button.diameter if part == "diameter" else each.button.thickness
            numbers.define(f"{key}.button_{part}", lengths_maker(typed, numbers))
        numbers.define(
            f"{key}.buttonhole",
            lambda size: spacing.buttonhole_length(
                words_of(f"{key}.buttonhole"),
                numbers.at(f"{key}.button_diameter", size),
                numbers.at(f"{key}.button_thickness", size),
            ),
        )


def _define_positions(each: Spacing, numbers: Numbers) -> None:
    """A number for every mark that some size has; a size with fewer marks lacks the last ones."""
    key = each.key
    whole = f"{key}.span" if each.spread is spacing.Spread.BOTH_ENDS else f"{key}.length"
    begins = f"{key}.start" if each.spread is spacing.Spread.ROUND else f"{key}.first_margin"

    def position(mark: int, size: int) -> Worked:
        count = _count(key, numbers, size)
        if mark > count:
            raise Missing(f"{key}.position_{mark}")
        length, start = numbers.at(whole, size), _optional(begins, numbers, size)
        return spacing.position(words_of(f"{key}.position"), length, mark, count, each.spread, start)

    for mark in range(1, _most_marks(each, numbers) + 1):
        numbers.define(f"{key}.position_{mark}", lambda size, mark=mark: position(mark, size))  # type: ignore[misc]


def _most_marks(each: Spacing, numbers: Numbers) -> int:
    if each.marks is not None:
        return each.marks
    most = 0
    for size in range(numbers.size_count):
        try:
            most = max(most, _count(each.key, numbers, size))
        except (Missing, Circle, ZeroDivisionError):
            continue
    return most


def _count(key: str, numbers: Numbers, size: int) -> int:
    """How many marks there are. Raises Missing when a short length needs none."""
    count = int(numbers.at(f"{key}.marks", size).number)
    if count == 0:
        raise Missing(f"{key}.gap")
    return count


def _optional(name: str, numbers: Numbers, size: int) -> Worked | None:
    return numbers.at(name, size) if name in numbers else None


def define_gathers(tutorial: Tutorial, numbers: Numbers) -> None:
    """Gathers: the edges before and after, their ratio, and what is drawn in."""
    for each in tutorial.gathers.values():
        _define_gather(each, tutorial, numbers)


def _define_gather(each: Gather, tutorial: Tutorial, numbers: Numbers) -> None:
    key = each.key
    before, after, ratio = (f"{key}.{field}" for field in ("before", "after", "ratio"))
    numbers.define(
        after,
        lengths_maker(each.onto_length, numbers, words_of(after))
        if each.onto_length
        else together(after, each.onto, tutorial, numbers),
    )
    if each.cut_for_ratio and each.ratio is not None:
        chosen = gather.fullness(words_of(ratio), each.ratio.number)
        numbers.define(ratio, lambda size: chosen)
        numbers.define(
            before, lambda size: gather.cut_length(words_of(before), numbers.at(after, size), numbers.at(ratio, size))
        )
        numbers.define(
            f"{key}.panel",
            lambda size: gather.panel(words_of(f"{key}.panel"), numbers.at(before, size), len(each.edges)),
        )
    else:
        numbers.define(before, together(before, each.edges, tutorial, numbers))
        numbers.define(
            ratio, lambda size: gather.ratio(words_of(ratio), numbers.at(before, size), numbers.at(after, size))
        )
    numbers.define(
        f"{key}.drawn_in",
        lambda size: gather.drawn_in(words_of(f"{key}.drawn_in"), numbers.at(before, size), numbers.at(after, size)),
    )
    if each.rows:
        _define_rows(key, each.rows, numbers)


def _define_rows(key: str, rows: GatheringRows, numbers: Numbers) -> None:
    """How far from the raw edge each gathering row runs."""
    first, apart = f"{key}.rows_first", f"{key}.rows_apart"
    numbers.define(first, lengths_maker(rows.first, numbers))
    numbers.define(apart, lengths_maker(rows.apart, numbers))

    def distance(row: int, size: int) -> Worked:
        name = words_of(f"{key}.row")
        return gather.rows(name, numbers.at(first, size), numbers.at(apart, size), rows.count)[row - 1]

    for row in range(1, rows.count + 1):
        numbers.define(f"{key}.row_{row}", lambda size, row=row: distance(row, size))  # type: ignore[misc]


def define_pleats(tutorial: Tutorial, numbers: Numbers) -> None:
    """Pleats: what each takes up and all together, and the widths before and after."""
    for each in tutorial.pleats.values():
        _define_pleats(each, tutorial, numbers)


def _define_pleats(each: Pleats, tutorial: Tutorial, numbers: Numbers) -> None:
    key, count = each.key, each.count
    depth, take_up, cut, finished = (f"{key}.{field}" for field in ("depth", "take_up", "cut_width", "finished_width"))
    numbers.define(take_up, lambda size: pleats.take_up(words_of(take_up), numbers.at(depth, size), each.kind))
    numbers.define(
        f"{key}.taken",
        lambda size: work(words_of(f"{key}.taken"), numbers.at(take_up, size), times(given("pleats", count))),
    )
    if each.edges:
        numbers.define(cut, together(cut, each.edges, tutorial, numbers))
    if each.finished:
        numbers.define(finished, lengths_maker(each.finished, numbers))
    if each.depth:
        numbers.define(depth, lengths_maker(each.depth, numbers))
    else:
        numbers.define(
            depth,
            lambda size: pleats.depth(
                words_of(depth), numbers.at(cut, size), numbers.at(finished, size), count, each.kind
            ),
        )
    if not each.edges and each.finished:
        numbers.define(
            cut,
            lambda size: pleats.cut_width(words_of(cut), numbers.at(finished, size), numbers.at(take_up, size), count),
        )
    if each.edges and not each.finished:
        numbers.define(
            finished,
            lambda size: pleats.finished_width(
                words_of(finished), numbers.at(cut, size), numbers.at(take_up, size), count
            ),
        )
    if not (each.edges or each.finished):
        return
    visible = f"{key}.visible"
    numbers.define(visible, lambda size: pleats.visible(words_of(visible), numbers.at(finished, size), count))
    numbers.define(
        f"{key}.full_depth",
        lambda size: pleats.full_depth(words_of(f"{key}.full_depth"), numbers.at(visible, size), each.kind),
    )
