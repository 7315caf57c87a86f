"""What the page needs to find a size by the rule of ``sewing.size_choice``: the tables of ``size_rule`` as JSON.

Every number is exact, in inches or in centimetres, whole or as a fraction (``75/2``), so that the page decides as the
program does. The contract with the script of a theme:

``first``: the system in which bare numbers are read while none is chosen. ``stretches``: whether the cloth does.
``tolerance``: by system. ``measures``: words. ``runs``: one for each run of sizes, with ``sizes`` (a list) and
``rows``; a row has ``measure`` (its place in ``measures``), ``body``, and where known ``garment`` and ``least`` (the
least ease), each by system as numbers with a space between them, a number for each size.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable

from sitegen.publishing.json_attribute import json_in_attribute
from sitegen.publishing.whole_views import SizeFinder
from sitegen.quantities import ENGLISH, RULER, English, System, Unit, Worked
from sitegen.sewing import size_choice
from sitegen.tutorial import Computed, SizeTable, body_words, size_rule, words_of

_UNITS = {System.INCHES: Unit.IN, System.CENTIMETRES: Unit.CM}


def size_finder(computed: Computed, first: System, language: English = ENGLISH) -> SizeFinder | None:
    """The finder of a tutorial; None where there is no size to choose or nothing to choose it by."""
    try:
        rules = {system: size_rule(computed, system) for system in System}
    except ValueError:
        return None
    rule = rules[first]
    names = [name for name in computed.tutorial.body if any(name == row.measure for row in _rows(rule.tables))]
    if not names or not all(table.rows for table in rule.tables):
        return None
    runs = []
    for place, table in enumerate(rule.tables):
        both = zip(*(rules[system].tables[place].rows for system in System), strict=True)
        rows = [_row(names.index(row[0].measure), dict(zip(System, row, strict=True))) for row in both]
        runs.append({"sizes": table.sizes, "rows": rows})
    data = {
        "first": _UNITS[first].symbol,
        "stretches": rule.stretches,
        "tolerance": {_UNITS[system].symbol: _exact([rule.tolerance], system) for system in System},
        "measures": [measure_words(name, language) for name in names],
        "runs": runs,
    }
    return SizeFinder(
        measures=tuple(measure_words(name, language) for name in names),
        data=json_in_attribute(data),
        over=language.amount(RULER.show_both(rule.tolerance.length, first)),
        stretches=rule.stretches,
        eased=any(row.finished for row in _rows(rule.tables)),
    )


def measure_words(name: str, language: English) -> str:
    """What a body measurement is called where all around it are others; languages have it under the whole name of its
    number."""
    return body_words(name) if language.as_made else language.own(words_of(f"body.{name}"))


def _rows(tables: Iterable[SizeTable]) -> list[size_choice.Row]:
    return [row for table in tables for row in table.rows]


def _row(measure: int, rows: dict[System, size_choice.Row]) -> dict[str, object]:
    found: dict[str, object] = {"measure": measure, "body": _by_system(rows, lambda row: row.bodies)}
    if rows[System.INCHES].finished:
        found["garment"] = _by_system(rows, lambda row: row.finished)
    if rows[System.INCHES].least_ease is not None:
        found["least"] = _by_system(rows, lambda row: (row.least_ease,) if row.least_ease is not None else ())
    return found


def _by_system(
    rows: dict[System, size_choice.Row], take: Callable[[size_choice.Row], tuple[Worked, ...]]
) -> dict[str, str]:
    return {_UNITS[system].symbol: _exact(take(row), system) for system, row in rows.items()}


def _exact(numbers: Iterable[Worked], system: System) -> str:
    return " ".join(str(each.length.in_unit(_UNITS[system])) for each in numbers)
