"""The numbers of one page: each is worked out in the first place that shows it, every other place leads there."""

from __future__ import annotations

from sitegen.publishing.amounts import Filled, number, size_name
from sitegen.publishing.number_views import number_view, without_repeats
from sitegen.publishing.views import NumberTable, NumberView, WorkingLine
from sitegen.quantities import ENGLISH, BySize, English, System, Worked
from sitegen.tutorial import Computed, words_of


class NumberBook:
    """Hands out the numbers of a tutorial as views and remembers where each is worked out."""

    def __init__(self, computed: Computed, first: System, language: English = ENGLISH) -> None:
        self.language = language
        """In which the numbers are told."""
        self._computed = computed
        self._first = first
        self._views: dict[str, NumberView] = {}
        self._told: dict[WorkingLine, NumberView] = {}

    def take(self, name: str, place: str) -> tuple[NumberView | None, bool]:
        """The number, and whether this place is the first to show it. None when it cannot be worked out."""
        if name in self._views:
            return self._views[name], False
        worked = self._computed.by_size(name)
        if worked is None:
            return None, False
        sum_behind = any(each.terms or each.note for each in worked)
        anchor = f"w-{name}" if sum_behind else ""
        view = number_view(
            name,
            self.language.say(words_of(name)),
            worked,
            anchor=anchor,
            place=self.language.say(place),
            language=self.language,
            every=self._in_every_size(name),
        )
        for line in view.working:
            self._told.setdefault(line, view)
        view = without_repeats(view, {line: by for line, by in self._told.items() if by.anchor != anchor})
        self._views[name] = view
        return view, bool(anchor)

    def _in_every_size(self, name: str) -> BySize[Worked] | None:
        each = [self._computed.number(name, size) for size in range(self._computed.tutorial.size_count)]
        known = tuple(number for number in each if number is not None)
        return BySize(known) if known and len(known) == len(each) else None

    @property
    def taken(self) -> tuple[NumberView, ...]:
        """Every number that was asked for, in the order in which it was."""
        return tuple(self._views.values())

    def table(self, names: tuple[str, ...], place: str) -> NumberTable:
        """Numbers as the rows of a table, and those of them that are worked out below it."""
        taken = [self.take(name, place) for name in names]
        rows = tuple(view for view, _ in taken if view is not None)
        return NumberTable(rows, tuple(view for view, first in taken if view is not None and first))


class CardNumbers:
    """The numbers that the prose of one card asks for, in the order in which it does."""

    def __init__(self, book: NumberBook, place: str, sizes: tuple[str, ...], first: System) -> None:
        self._book = book
        self._place = place
        self._sizes = sizes
        self.first = first
        """The system that is told first."""
        self._used: dict[str, NumberView] = {}
        self._told: dict[str, NumberView] = {}

    def __call__(self, name: str) -> Filled | None:
        """What stands in prose for a reference."""
        if name == "size":
            return size_name(self._sizes, self._book.language)
        view = self.use(name)
        return number(view, self.first, self._book.language) if view is not None else None

    def use(self, name: str) -> NumberView | None:
        """The number, noted as used on this card."""
        view, first = self._book.take(name, self._place)
        if view is not None:
            self._used.setdefault(name, view)
            if first:
                self._told[name] = view
        return view

    @property
    def used(self) -> tuple[NumberView, ...]:
        """Every number of the card."""
        return tuple(self._used.values())

    @property
    def told(self) -> tuple[NumberView, ...]:
        """The numbers that are worked out on this card."""
        return tuple(self._told.values())
