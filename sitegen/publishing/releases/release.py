"""From the pages of this run and the record of the last release to the record of this one."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

from sitegen.publishing.releases.compare import compare_records
from sitegen.publishing.releases.record import PublishedPage, Record, Release

KEPT_RELEASES = 5
"""So many releases that moved numbers are kept, so that a student who has cut by an older one can see what moved."""


def next_record(old: Record | None, pages: dict[str, PublishedPage], today: date) -> Record:
    """The record after these pages are released. It is the old one, days included, when nothing in them differs.

    ``pages`` carry today's date wherever one is asked for; a page that the old record has keeps its own days.
    """
    if old is None:
        return Record(today, pages)
    dated = {address: _dated(page, old.pages.get(address)) for address, page in pages.items()}
    if dated == old.pages:
        return old
    new = Record(today, dated, old.releases)
    moved = compare_records(old, new)
    if not moved:
        return new
    releases = (Release(today, old.released, moved), *old.releases)
    return replace(new, releases=releases[:KEPT_RELEASES])


def _dated(page: PublishedPage, before: PublishedPage | None) -> PublishedPage:
    if before is None:
        return page
    same = replace(before, published=page.published, updated=page.updated) == page
    return replace(page, published=before.published, updated=before.updated if same else page.updated)
