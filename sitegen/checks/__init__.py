"""Rules that a tutorial must keep. A rule compares; every formula lives in ``sewing``."""

from sitegen.checks.catalogue import all_checks
from sitegen.checks.registry import Check
from sitegen.checks.review import (
    OF_THE_PLAN,
    Review,
    Translation,
    review,
    review_class,
    review_class_in,
    review_tutorial,
)
from sitegen.checks.run import run_checks

__all__ = [
    "OF_THE_PLAN",
    "Check",
    "Review",
    "Translation",
    "all_checks",
    "review",
    "review_class",
    "review_class_in",
    "review_tutorial",
    "run_checks",
]
