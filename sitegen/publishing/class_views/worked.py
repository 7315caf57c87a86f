"""The working of a number as lines of words in one system of units."""

from __future__ import annotations

from sitegen.quantities import RULER, SHOWN_ROUNDED, English, System, Worked, lines_of, show_line

_ROUNDED = SHOWN_ROUNDED.strip("()")
"""Said in the language of the list; a working leaves it in English for pages that say once what it means."""


def working_of(number: Worked, system: System, language: English) -> tuple[str, ...]:
    """The lines, each once; none for a number that was merely given."""
    if not number.terms and not number.note:
        return ()
    rounded = f"({language.say(_ROUNDED)})"
    shown = (show_line(line, system, RULER, language).replace(SHOWN_ROUNDED, rounded) for line in lines_of(number))
    return tuple(dict.fromkeys(shown))
