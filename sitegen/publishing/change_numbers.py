"""Which numbers of a change a page lists: at each of its lines, and of each of its pieces where they differ."""

from __future__ import annotations

from collections.abc import Iterator

from sitegen.publishing.number_book import NumberBook
from sitegen.publishing.number_views import number_view
from sitegen.publishing.views import NumberView
from sitegen.quantities import BySize
from sitegen.tutorial import Change, Computed, words_of

_AT_A_LINE = ("amount", "part_above", "part_below", "fold", "taper_step")
_NEW = ("new_cut_length", "new_finished_length", "each_edge", "new_cut_width")


def change_names(change: Change, computed: Computed) -> tuple[str, ...]:
    """The names of its numbers in the order of the work: the amount, line for line, and what it comes to.

    Where a change is made to several pieces, a number that is the same for all stands once, and one that differs stands
    for each piece by its own name.
    """
    return tuple(name for field in _fields(change) for name in _of_each(field, change, computed))


def bought_after(change: str, fabric: str, computed: Computed, book: NumberBook) -> NumberView | None:
    """How much of a fabric to buy for a change in every size: what it needs, in steps of a shop, and never less than is
    bought without it. It leads to the working of the need. None when either is not known in some size."""
    name = f"{change}.then.{fabric}.need"
    need, _ = book.take(name, "with the changes")
    sizes = range(computed.tutorial.size_count)
    pairs = [(computed.length(name, size), computed.length(f"{fabric}.buy", size)) for size in sizes]
    most = tuple(max(one, other, key=lambda each: each.length.mm) for one, other in pairs if one and other)
    if need is None or len(most) < len(pairs):
        return None
    shown = most[:1] if all(each.value == most[0].value for each in most) else most
    return number_view(
        name,
        book.language.say(words_of(f"{fabric}.buy")),
        BySize(shown),
        anchor=need.anchor,
        place=need.place,
        language=book.language,
    )


def _fields(change: Change) -> Iterator[str]:
    if not change.lines:
        yield from (*_AT_A_LINE, *_NEW)
        return
    yield "amount"
    for number in range(1, len(change.lines) + 1):
        amount, above, *others = _AT_A_LINE
        distance = (f"from_line_{number - 1}",) if number > 1 else ()
        yield from (f"line_{number}.{field}" for field in (amount, above, *distance, *others))
    yield from _NEW


def _of_each(field: str, change: Change, computed: Computed) -> list[str]:
    """The plain name, or those of the pieces where their numbers differ. What is not known is left out."""
    plain, *own = (f"{owner}.{field}" for owner, _ in change.owners)
    values = [
        tuple(number.value for number in worked) for name in own if (worked := computed.by_size(name)) is not None
    ]
    known = own if len(values) == len(own) and len(set(values)) > 1 else [plain]
    return [name for name in known if computed.by_size(name) is not None]
