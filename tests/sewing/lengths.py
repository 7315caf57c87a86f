"""Lengths for the tests of the sums: named, in inches, or drawn at random on the marks of a ruler."""

from __future__ import annotations

from hypothesis import strategies as st

from sitegen.quantities import Length, Ratio, System, Worked, given, inches, show_working


def worked(number: int | str, name: str = "length") -> Worked:
    """So many inches."""
    return given(name, inches(number))


def percent(number: int | str, name: str = "share") -> Worked:
    """So many hundredths."""
    return given(name, Ratio.percent(number))


def drawn(least: int = 1, most: int = 1600) -> st.SearchStrategy[Worked]:
    """A length of so many sixteenths of an inch."""
    return st.integers(least, most).map(lambda marks: given("length", inches(1) * marks / 16))


def drawn_percent(least: int, most: int) -> st.SearchStrategy[Worked]:
    """A whole number of hundredths."""
    return st.integers(least, most).map(percent)


def in_lengths(numbers: str) -> list[Length]:
    """A row of a table in inches."""
    return [inches(number) for number in numbers.split()]


def told(number: Worked) -> list[str]:
    """The working in both systems of units."""
    return [line for system in System for line in show_working(number, system)]
