"""What a release held: every published number by name, and what moved in the releases before. Plain data."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from enum import Enum

from sitegen.publishing.views import Both


@dataclass(frozen=True, slots=True)
class PublishedNumber:
    """A number as it was read: its name in words, and one value that serves all sizes, or one for each in order."""

    words: str
    values: tuple[Both, ...]


@dataclass(frozen=True, slots=True)
class PublishedPage:
    """The page of a tutorial in one of its views, as it was released."""

    tutorial: str
    """The name of its folder."""
    view: str
    """What is chosen on this page: ``with pocket``; empty when there is nothing to choose."""
    title: str
    sizes: tuple[str, ...]
    numbers: Mapping[str, PublishedNumber]
    """By the name in a reference: ``neckband.cut_length``."""
    mark: str
    """A digest of all that the page tells in words and numbers."""
    published: date
    """The day of its first release."""
    updated: date
    """The day of the release that last changed what it tells."""


class Status(Enum):
    """What became of a page."""

    NEW = "new"
    GONE = "gone"
    CHANGED = "changed"


@dataclass(frozen=True, slots=True)
class SizeChange:
    """What one size read before and reads now; None where it had or has no such number."""

    size: str
    """Empty when it holds for every size."""
    before: Both | None
    after: Both | None


@dataclass(frozen=True, slots=True)
class NumberChange:
    """A number that moved, came or went, with the sizes in which it did."""

    name: str
    words: str
    sizes: tuple[SizeChange, ...]

    @property
    def status(self) -> Status:
        """Whether it moved, is new, or is gone."""
        if all(each.before is None for each in self.sizes):
            return Status.NEW
        return Status.GONE if all(each.after is None for each in self.sizes) else Status.CHANGED


@dataclass(frozen=True, slots=True)
class PageChanges:
    """What differs on one page between two releases."""

    address: str
    """From the folder of the site: ``tutorials/boxy-tee/index.html``."""
    tutorial: str
    view: str
    title: str
    status: Status
    numbers: tuple[NumberChange, ...] = ()
    """In the order of their names; empty for a page that is new or gone."""
    new_sizes: tuple[str, ...] = ()
    gone_sizes: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Release:
    """A release in which numbers moved, sizes or pages came or went."""

    day: date
    since: date
    """The day of the release with which it was compared."""
    pages: tuple[PageChanges, ...]


@dataclass(frozen=True, slots=True)
class Record:
    """The last release, and what changed in it and in the few before."""

    released: date
    """The day of the last release that changed anything."""
    pages: Mapping[str, PublishedPage]
    """By their addresses."""
    releases: tuple[Release, ...] = ()
    """The newest first."""
