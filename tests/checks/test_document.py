"""The list of checks in the docs is that of the code."""

from sitegen.checks.document import CATALOGUE, REPAIR, catalogue


def test_catalogue_is_up_to_date() -> None:
    assert CATALOGUE.read_text(encoding="utf-8") == catalogue(), f"run {REPAIR}"
