"""The list of checks in the docs is that of the code."""

from sitegen.checks.calculations import calculations
from sitegen.checks.document import CATALOGUE, REPAIR, catalogue


def test_catalogue_is_up_to_date() -> None:
    assert CATALOGUE.read_text(encoding="utf-8") == catalogue(), f"run {REPAIR}"


def test_every_calculation_says_what_it_gives_and_from_where() -> None:
    found = calculations()
    assert len(found) > 60
    assert [each for each in found if not each.gives or not each.source] == []
