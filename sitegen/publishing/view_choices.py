"""What can be chosen about a garment, each choice a page of its own."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class ViewOption:
    """One choice of a view, and the page that shows it."""

    name: str
    href: str
    """Relative to the page."""
    current: bool


@dataclass(frozen=True, slots=True)
class ViewChoice:
    """Something to choose about the garment: neckband or hood."""

    name: str
    options: tuple[ViewOption, ...]


def chosen_views(views: Iterable[ViewChoice]) -> str:
    """What is chosen on this page: ``neck: hood; pocket: without``. Empty where there is nothing to choose."""
    return "; ".join(f"{view.name}: {option.name}" for view in views for option in view.options if option.current)
