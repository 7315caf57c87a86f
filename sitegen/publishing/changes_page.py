"""What moved since the last releases, as pages show it: on the page of the tutorial and on the page of all changes."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import date

from sitegen.publishing.releases import NumberChange, PageChanges, Record, Release, SizeChange, Status
from sitegen.publishing.views import SiteView, TutorialView

CHANGES_PAGE = "changes.html"
_MONTHS = (
    *("January", "February", "March", "April", "May", "June"),
    *("July", "August", "September", "October", "November", "December"),
)


@dataclass(frozen=True, slots=True)
class ChangedNumber:
    """A number that moved."""

    words: str
    href: str
    """Where it is worked out now; empty when no page shows that."""
    sizes: tuple[SizeChange, ...]


@dataclass(frozen=True, slots=True)
class ChangedPart:
    """What one release changed on one page, or on several pages of a tutorial alike."""

    title: str
    href: str
    """The page, relative to the one that is read; empty when it is gone."""
    views: tuple[str, ...] = ()
    """What is chosen on these pages; empty when there is nothing to choose or it holds for all."""
    whole: str = ""
    """``new`` or ``gone`` when the whole page is."""
    moved: tuple[ChangedNumber, ...] = ()
    new: tuple[str, ...] = ()
    """Names in words of the numbers that were not there before."""
    gone: tuple[str, ...] = ()
    new_sizes: tuple[str, ...] = ()
    gone_sizes: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class ChangedRelease:
    """What one release changed."""

    day: date
    since: date
    parts: tuple[ChangedPart, ...]


@dataclass(frozen=True, slots=True)
class ChangedView:
    """What moved on the page of a tutorial, the newest release first."""

    since: date
    """The day of the release up to which the page looks back."""
    count: int
    """How many numbers moved, came or went."""
    releases: tuple[ChangedRelease, ...]


@dataclass(frozen=True, slots=True)
class ChangesView:
    """The page of all changes."""

    site: SiteView
    releases: tuple[ChangedRelease, ...]
    released: date | None
    """The day of the last release; None when no record of it is kept."""
    root: str = ""


def changed_view(address: str, page: TutorialView, record: Record) -> ChangedView | None:
    """What moved on one page in the releases that are kept; None when nothing did."""
    anchors = _anchors(page, "")
    releases = tuple(
        ChangedRelease(release.day, release.since, (_part(changes, "", anchors),))
        for release in record.releases
        for changes in release.pages
        if changes.address == address and changes.status is Status.CHANGED
    )
    if not releases:
        return None
    count = sum(len(part.moved) + len(part.new) + len(part.gone) for each in releases for part in each.parts)
    return ChangedView(releases[-1].since, count, releases)


def changes_view(site: SiteView, record: Record | None, pages: Mapping[str, TutorialView]) -> ChangesView:
    """Everything that moved in the releases that are kept."""
    if record is None:
        return ChangesView(site, (), None)
    releases = tuple(
        ChangedRelease(release.day, release.since, tuple(_parts(release, pages))) for release in record.releases
    )
    return ChangesView(site, releases, record.released)


def day_in_words(day: date) -> str:
    """``29 November 2026``"""
    return f"{day.day}\N{NO-BREAK SPACE}{_MONTHS[day.month - 1]} {day.year}"


def _parts(release: Release, pages: Mapping[str, TutorialView]) -> Iterable[ChangedPart]:
    """Pages of one tutorial that changed alike are one part, which names its views if there are others."""
    alike: dict[tuple[object, ...], list[PageChanges]] = {}
    for page in release.pages:
        what = (page.tutorial, page.status, page.numbers, page.new_sizes, page.gone_sizes)
        alike.setdefault(what, []).append(page)
    groups = [(key[0], group) for key, group in alike.items()]
    for tutorial, group in groups:
        alone = sum(other == tutorial for other, _ in groups) == 1 and len(group) > 1
        views = () if alone else tuple(page.view for page in group if page.view)
        first = group[0]
        shown = pages.get(first.address)
        href = first.address if shown is not None else ""
        yield _part(first, href, _anchors(shown, href) if shown is not None else {}, views)


def _part(page: PageChanges, href: str, anchors: Mapping[str, str], views: tuple[str, ...] = ()) -> ChangedPart:
    def named(status: Status) -> tuple[NumberChange, ...]:
        return tuple(number for number in page.numbers if number.status is status)

    return ChangedPart(
        title=page.title,
        href=href,
        views=views,
        whole="" if page.status is Status.CHANGED else page.status.value,
        moved=tuple(
            ChangedNumber(number.words, anchors.get(number.name, ""), number.sizes) for number in named(Status.CHANGED)
        ),
        new=tuple(number.words for number in named(Status.NEW)),
        gone=tuple(number.words for number in named(Status.GONE)),
        new_sizes=page.new_sizes,
        gone_sizes=page.gone_sizes,
    )


def _anchors(page: TutorialView, href: str) -> dict[str, str]:
    """Where each number of a page is worked out."""
    return {number.name: f"{href}#{number.anchor}" for number in page.numbers if number.anchor}
