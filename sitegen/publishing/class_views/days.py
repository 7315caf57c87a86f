"""The day of a session in words."""

from __future__ import annotations

from datetime import date

from sitegen.publishing.changes_page import day_in_words
from sitegen.quantities import English

_WEEKDAYS = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")


def day_of_week(day: date, language: English) -> str:
    """``Tuesday 12 January 2027``"""
    weekday = _WEEKDAYS[day.weekday()]
    said = weekday if language.as_made else language.say(weekday.lower())
    return f"{said} {language.say(day_in_words(day))}".replace("\N{NO-BREAK SPACE}", " ")
