"""One amount of a text, as a price, a time, a weight or a count, and how a text would write another of its kind."""

from __future__ import annotations

import re
from fractions import Fraction
from typing import NamedTuple

from sitegen.prose.amounts.vocabulary import MINUTES_IN
from sitegen.quantities import decimal, vulgar

MONEY, RATE, TIME, WEIGHT, LENGTH, COUNT, PERCENT, OPAQUE = "MUTGLNPX"
"""The symbols of what numbers tell: a price, a price for each of something, a time, a weight or volume, a length, a
count, a percentage, and what cannot be reckoned with, as a range."""
NUMBERS = MONEY + RATE + TIME + WEIGHT + LENGTH + COUNT + PERCENT + OPAQUE

_WRITTEN = re.compile(r"\d+(?:[.,]\d+)*")
_IN_TWO = re.compile(r"(?P<whole>\d+)(?P<between>\D{0,12}\s)(?P<part>\d\d)(?!\d)")
_CENTS = 2


class Item(NamedTuple):
    """A word, a sign or an amount of a text, from token ``first`` up to, not including, ``behind``.

    ``value`` is in the main unit of the currency, in minutes, in the unit of a weight or length as written, or the
    bare number. ``unit`` is that unit, ``noun`` what a count counts, ``per`` of what a price is the price of one.
    """

    symbol: str
    first: int
    behind: int
    value: Fraction = Fraction(0)
    unit: str = ""
    noun: str = ""
    per: str = ""
    hedged: bool = False
    decimals: int = 0
    exact: bool = False
    """Whether a time is told to the minute: ``2 hours 15 minutes``."""


def shown(item: Item, said: str, value: Fraction) -> str:
    """Another value in the notation of an amount: ``$16.80``, ``17,70 €``, ``10 pounds 80``, ``100 minutes``."""
    if item.symbol == TIME:
        return _time(value, item.unit)
    in_two = _IN_TWO.fullmatch(said.strip())
    if item.unit == "money" and in_two is not None:
        cents = round(value * 100)
        return f"{cents // 100}{in_two['between']}{cents % 100:02d}"
    number = _WRITTEN.search(said)
    if number is None:
        return _in_figures(item, said, value)
    figures = _like(number.group(), value, money=item.unit in ("money", "cents"), cents=item.unit == "cents")
    return said[: number.start()] + figures + said[number.end() :]


def with_cents(value: Fraction) -> str:
    """A sum of money, with its cents where it has any: ``6``, ``20.50``."""
    whole, cents = divmod(round(value * 100), 100)
    return f"{whole}.{cents:02d}" if cents else str(whole)


def _in_figures(item: Item, said: str, value: Fraction) -> str:
    """In figures what was said in words: ``6 dollars``, ``72``."""
    if item.unit == "money":
        figures = with_cents(value)
        last = said.split()[-1]
        return f"{figures} {last}" if last in ("dollars", "euros", "pounds", "bucks", "quid") else figures
    return decimal(value, 2)


def _like(written: str, value: Fraction, *, money: bool, cents: bool) -> str:
    """A number with the separators and the figures behind the point of another one."""
    if cents:
        return decimal(value * 100, 0)
    comma = re.fullmatch(r"\d+,\d{1,2}", written) is not None
    behind = re.search(r"[.,](\d{1,2})$", written)
    places = len(behind[1]) if behind else 0
    whole = (value * 10**places).denominator == 1
    if not whole:
        places = _CENTS
    if not money and not whole:
        return decimal(value, _CENTS)
    units, rest = divmod(round(value * 10**places), 10**places)
    grouped = f"{units:,}" if "," in written and not comma else str(units)
    return grouped + (f"{',' if comma else '.'}{rest:0{places}d}" if places else "")


def _time(minutes: Fraction, unit: str) -> str:
    number = minutes / MINUTES_IN[unit]
    if unit != "hour" or number.denominator in (1, 2, 4):
        shown_number = vulgar(number) if unit == "hour" else decimal(number, 1)
        return f"{shown_number} {unit}{'' if number <= 1 else 's'}"
    whole, rest = divmod(round(minutes), int(MINUTES_IN["hour"]))
    return f"{whole} h {rest} min" if whole else f"{rest} minutes"
