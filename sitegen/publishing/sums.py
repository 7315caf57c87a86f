"""The workings of a number as rows of a table: a term a row, sizes as columns, as a sum is written on paper."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from markupsafe import Markup, escape

from sitegen.publishing.aligned import Aligned, aligned
from sitegen.publishing.amounts import amount, unit_of_all
from sitegen.publishing.views import Both, NumberView, SumRow, WorkingLine
from sitegen.quantities import ENGLISH, SHOWN_ROUNDED, English, System

_ROUNDED = f" {SHOWN_ROUNDED}"
_STAR = "*"
"""Stands behind an amount for ``SHOWN_ROUNDED``; the page says once what it means."""
_RESULT = re.compile(r"(.*?)\s*=\s*")
_SIGN = re.compile(r"([+−×÷] )?(.*)", re.DOTALL)


def sum_rows(view: NumberView, first: System, language: English = ENGLISH) -> tuple[SumRow, ...] | None:
    """The rows of all lines of a working; None when its sizes were worked out by different sums.

    A row without cells holds what is the same for every size, or names what a row above has said.
    """
    rows = _Rows(view, first, language)
    for line in view.working:
        together = None if line.told else _together(line)
        if together is not None:
            rows.add(line, together)
        elif not line.told:
            return None
    return rows.all()


def terms_of(view: NumberView, first: System, language: English = ENGLISH) -> tuple[SumRow, ...]:
    """The rows of a working but the last, which is the number itself; none where no row of a table can tell its sum.

    As on paper, the unit stands with the result: the terms above it say theirs only where it is another.
    """
    by_size = view.by_size or any(len(line.texts) > 1 for line in view.working)
    rows = sum_rows(view, first, language) if by_size else None
    if not rows or view.by_size is _reads_alike(rows[-1]):
        return ()
    units = [unit_of_all([value.text(system) for value in view.values]) for system in System]
    return tuple(replace(row, cells=_without(units, row.cells)) for row in rows[:-1])


def _reads_alike(row: SumRow) -> bool:
    """Whether a result is the same for every size; in some of them it may have been rounded to that."""
    return len({(cell.inches.rstrip(_STAR), cell.metric.rstrip(_STAR)) for cell in row.cells}) <= 1


def summed(rows: Sequence[NumberView], here: Sequence[NumberView]) -> tuple[NumberView, ...]:
    """Those rows of a table that tell their sums, when the numbers ``here`` are worked out with the table."""
    return tuple(view for view in rows if view in here and terms_of(view, System.INCHES))


def has_star(views: Sequence[NumberView]) -> bool:
    """Whether any amount of these workings bears the star."""
    return any(
        SHOWN_ROUNDED in text.inches + text.metric for view in views for line in view.working for text in line.texts
    )


def starred(text: str) -> str:
    """A line with the star for the words that it stands for."""
    return text.replace(_ROUNDED, _STAR)


def _without(units: list[str], cells: tuple[Both, ...]) -> tuple[Both, ...]:
    inches, metric = units
    return tuple(Both(_bare(cell.inches, inches), _bare(cell.metric, metric)) for cell in cells)


def _bare(text: str, unit: str) -> str:
    star = _STAR if text.endswith(_STAR) else ""
    return text.removesuffix(star).removesuffix(unit) + star


def _together(line: WorkingLine) -> Aligned | None:
    """All sizes of a line in both systems laid upon each other, inches and centimetres in turn."""
    found = aligned([starred(text) for both in line.texts for text in (both.inches, both.metric)])
    return None if found is None or any(";" in words for words in found.words) else found


def _both(inches: str, metric: str) -> Both:
    """An amount in both systems; one without a unit bears the star in both if it does in one."""
    bare = inches.rstrip(_STAR)
    if inches != metric and metric.rstrip(_STAR) == bare:
        inches = metric = bare + _STAR
    return Both(inches, metric)


class _Rows:
    """Rows in the making: words are gathered until an amount comes that differs by size."""

    def __init__(self, view: NumberView, first: System, language: English) -> None:
        self._language = language
        self._owner = view.words
        self._first = first
        self._told = {line.gives: line for line in view.working if line.told}
        self._linked = False
        self._said: dict[str, tuple[Both, ...]] = {}
        """What rows have said so far, by the name of the number."""
        self._last = ""
        self._rows: list[SumRow] = []
        self._words = Markup()

    def all(self) -> tuple[SumRow, ...]:
        """Every row. What another working has told is named where no row leads there."""
        if self._linked:
            return tuple(self._rows)
        link = Markup('{}, <a href="#{}">{}</a>')
        told = (
            SumRow(link.format(line.gives, line.told, self._language.say(f"worked out {line.place or 'above'}")))
            for line in self._told.values()
        )
        return (*told, *self._rows)

    def add(self, line: WorkingLine, together: Aligned) -> None:
        """The rows of one line: its terms, then its result."""
        own = line.gives == self._owner
        other_name = not own and not any(_RESULT.fullmatch(words) for words in together.words)
        if other_name:
            self._words = escape(f"{line.gives} = ")
        for words, amounts in zip(together.words, together.amounts, strict=False):
            values = tuple(_both(*pair) for pair in zip(amounts[::2], amounts[1::2], strict=True))
            result = _RESULT.fullmatch(words)
            if result is not None:
                self._close(result[1])
                self._words = escape("= " if own else f"= {line.gives} ")
                self._amount(line.gives, values)
            else:
                self._term(words, values)
        self._close(together.words[-1])
        if other_name:
            self._said[line.gives], self._last = self._said.get(self._last, ()), line.gives

    def _term(self, words: str, values: tuple[Both, ...]) -> None:
        sign, name = _SIGN.fullmatch(words.strip()).groups(default="")  # type: ignore[union-attr]
        told = self._told.get(name)
        if values == self._said.get(name):
            begins = name == self._last and not sign and not self._words
            self._words += escape("" if begins else f"{words.lstrip() if not self._words else words} ")
            return
        if told is not None:
            self._linked = True
            link = Markup('{}<a href="#{}">{}</a> ').format(sign, told.told, name)
            self._words += (" " if self._words and not self._words.endswith(" ") else "") + link
        else:
            self._words += escape(words)
        self._amount(name, values)

    def _amount(self, name: str, values: tuple[Both, ...]) -> None:
        self._last = name
        if len(set(values)) == 1:
            self._words += amount(values[0], self._first)
            return
        self._said[name] = tuple(Both(value.inches.rstrip(_STAR), value.metric.rstrip(_STAR)) for value in values)
        self._rows.append(SumRow(Markup(self._words.strip()), values))
        self._words = Markup()

    def _close(self, words: str) -> None:
        """What has been gathered, with these words behind it, becomes a row of its own."""
        whole = Markup((self._words + words).strip())
        self._words = Markup()
        if whole:
            self._rows.append(SumRow(whole))
