"""All checks. Importing the package of rules is what registers them."""

from __future__ import annotations

import sitegen.checks.rules  # noqa: F401 - registers every check
from sitegen.checks.registry import Check, registered


def all_checks() -> tuple[Check, ...]:
    """Every check there is, by area and id."""
    return registered()
