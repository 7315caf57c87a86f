"""The numbers of a tutorial in the words of a few of its sizes, in one unit or in both."""

from __future__ import annotations

from collections.abc import Sequence

from sitegen.publishing.amounts import BY_SIZE, kept_together, spread
from sitegen.publishing.number_views import number_view
from sitegen.publishing.views import Both, NumberView
from sitegen.quantities import RULER, BySize, English, Length, Rounding, System, show_value
from sitegen.tutorial import Computed, words_of


class PrintedNumbers:
    """Numbers as a sheet prints them: ``sizes`` are places in the run of sizes, ``units`` the systems in order."""

    def __init__(self, computed: Computed, sizes: Sequence[int], units: Sequence[System], language: English) -> None:
        self.language = language
        self.units = tuple(units)
        """The systems in which lengths are told, the first one first."""
        self.asked: dict[str, None] = {}
        """The names of all numbers that were asked for, in the order in which they were."""
        self._computed = computed
        self._sizes = tuple(sizes)

    def view(self, name: str) -> NumberView | None:
        """A number in the sizes of the sheet alone; None when it cannot be worked out."""
        worked = self._computed.by_size(name)
        if worked is None:
            return None
        self.asked[name] = None
        own = BySize(tuple(worked.at(size) for size in self._sizes))
        return number_view(name, self.language.say(words_of(name)), own, language=self.language)

    def both(self, value: Both) -> str:
        """An amount in the units of the sheet: ``17 3/4 in (45 cm)``."""
        texts = list(dict.fromkeys(kept_together(value.text(system)) for system in self.units))
        return f"{texts[0]} ({texts[1]})" if len(texts) > 1 else texts[0]

    def length(self, length: Length) -> str:
        """A length in the units of the sheet: ``3/8 in (1 cm)``."""
        return self.both(self._both(length))

    def words(self, view: NumberView) -> str:
        """A number in a sentence: ``16 to 18 in (41 to 46 cm, by size)`` where the sizes of the sheet differ."""
        if not view.by_size:
            return self.both(view.values[0])
        remark = self.language.say(BY_SIZE)
        first, *more = self._spans(view.values[view.low], view.values[view.high])
        return f"{first} ({more[0]}{remark})" if more else f"{first} ({remark.lstrip(', ')})"

    def between(self, low: Length, high: Length) -> str:
        """From one length to another, on the marks of a ruler that lie between them: ``5/16 to 7/16 in (8 to 11 mm)``.

        Neither end is rounded outward, since what lies beyond it would not do.
        """
        ends = {system: (self._up(low, system), -self._up(-high, system)) for system in System}
        lows, highs = (
            Both(*(self.language.amount(show_value(ends[system][at], system)) for system in System)) for at in (0, 1)
        )
        first, *more = self._spans(lows, highs)
        return f"{first} ({more[0]})" if more else first

    def _spans(self, low: Both, high: Both) -> list[str]:
        spans = (spread(low.text(unit), high.text(unit), self.language) for unit in self.units)
        return list(dict.fromkeys(kept_together(span) for span in spans))

    def _both(self, length: Length) -> Both:
        return Both(*(self.language.amount(show_value(length, system)) for system in System))

    @staticmethod
    def _up(length: Length, system: System) -> Length:
        return RULER.shown(length, system, Rounding.ENOUGH)

    def each(self, view: NumberView) -> tuple[str, ...]:
        """A number in each size of the sheet."""
        return tuple(self.both(value) for value in view.values)

    def __call__(self, name: str) -> str | None:
        """What stands in prose for a reference."""
        if name == "size":
            return self.size_names()
        view = self.view(name)
        return self.words(view) if view is not None else None

    def size_names(self) -> str:
        """The size of the sheet, or from which size to which."""
        names = [self._computed.size_name(size) for size in self._sizes]
        if not names[0]:
            return self.language.say("one size")
        return self.language.span(names[0], names[-1]) if len(names) > 1 else names[0]
