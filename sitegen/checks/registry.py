"""The checks, each with what it looks for, why, from where, and an example that trips it and one that passes.

A check is registered where it is written; nothing else has to be told of it. A second use of an id, an
empty text or a missing source is refused when the program starts.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Any, TypeVar

from sitegen.findings import Finding, Severity
from sitegen.tutorial import Computed

Find = Callable[[Any, Computed], Iterator[Finding]]
F = TypeVar("F", bound=Find)
COMMON_PRACTICE = "common practice, no source"


@dataclass(frozen=True, slots=True)
class Check:
    """One check. ``looks_at`` holds the kinds of part that it is shown; none when reading the files finds it."""

    id: str
    area: str
    severity: Severity
    title: str
    what: str
    why: str
    source: str
    trips: str
    passes: str
    looks_at: tuple[type, ...] = ()
    find: Find | None = None


_CHECKS: dict[str, Check] = {}


def check(
    *,
    id: str,
    area: str,
    severity: Severity,
    looks_at: type | tuple[type, ...],
    title: str,
    why: str,
    source: str,
    trips: str,
    passes: str,
) -> Callable[[F], F]:
    """Register a check; the docstring of the function says what it looks for."""

    def keep(find: F) -> F:
        what = " ".join((find.__doc__ or "").split())
        kinds = looks_at if isinstance(looks_at, tuple) else (looks_at,)
        _keep(Check(id, area, severity, title, what, why, source, trips, passes, kinds, find))
        return find

    return keep


def found_while_reading(
    *,
    id: str,
    area: str = "reading",
    severity: Severity = Severity.WRONG,
    title: str,
    what: str,
    why: str,
    trips: str,
    passes: str,
    source: str = "",
) -> None:
    """Describe a finding that the reading or the computing of the files makes by itself."""
    source = source or "YAML 1.2 and the content format of this program"
    _keep(Check(id, area, severity, title, what, why, source, trips, passes))


def _keep(new: Check) -> None:
    if new.id in _CHECKS:
        raise ValueError(f"two checks are called {new.id}")
    for field in ("id", "area", "title", "what", "why", "source", "trips", "passes"):
        if not getattr(new, field).strip():
            raise ValueError(f"check {new.id} has no {field}")
    _CHECKS[new.id] = new


def registered() -> tuple[Check, ...]:
    """Every check registered so far, by area and id."""
    return tuple(sorted(_CHECKS.values(), key=lambda each: (each.area, each.id)))
