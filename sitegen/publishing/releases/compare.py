"""Which published numbers differ between two records."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from sitegen.publishing.releases.record import (
    NumberChange,
    PageChanges,
    PublishedNumber,
    PublishedPage,
    Record,
    SizeChange,
    Status,
)
from sitegen.publishing.views import Both


def compare_records(old: Record, new: Record) -> tuple[PageChanges, ...]:
    """Every page that differs in its numbers or sizes, is new or is gone, in the order of the addresses.

    Numbers are compared as they are read, in both units and size by size; sizes are matched by their names.
    """
    found: list[PageChanges] = []
    for address in sorted({*old.pages, *new.pages}):
        before, after = old.pages.get(address), new.pages.get(address)
        page = after or before
        assert page is not None  # the address came from one of them
        status = Status.NEW if before is None else Status.GONE if after is None else Status.CHANGED
        changes = PageChanges(address, page.tutorial, page.view, page.title, status)
        if before is not None and after is not None:
            changes = replace(
                changes,
                numbers=tuple(_numbers(before, after)),
                new_sizes=tuple(size for size in after.sizes if size not in before.sizes),
                gone_sizes=tuple(size for size in before.sizes if size not in after.sizes),
            )
            if not (changes.numbers or changes.new_sizes or changes.gone_sizes):
                continue
        found.append(changes)
    return tuple(found)


def _numbers(before: PublishedPage, after: PublishedPage) -> Iterator[NumberChange]:
    """Every number that differs in a size that both pages have, or that only one of them has."""
    for name in sorted({*before.numbers, *after.numbers}):
        old, new = before.numbers.get(name), after.numbers.get(name)
        shown = new or old
        assert shown is not None  # the name came from one of them
        changes = tuple(_sizes(before, old, after, new))
        if changes:
            yield NumberChange(name, shown.words, changes)


def _sizes(
    before: PublishedPage, old: PublishedNumber | None, after: PublishedPage, new: PublishedNumber | None
) -> Iterator[SizeChange]:
    """What differs size by size; once without a size where it is the same change for all of them."""
    was, now = _by_size(before, old), _by_size(after, new)
    shared = [size for size in now or was if (size in was or old is None) and (size in now or new is None)]
    changes = [SizeChange(size, was.get(size), now.get(size)) for size in shared]
    differing = [each for each in changes if each.before != each.after]
    alike = len({(each.before, each.after) for each in changes}) == 1
    if alike and differing:
        yield replace(differing[0], size="")
    else:
        yield from differing


def _by_size(page: PublishedPage, number: PublishedNumber | None) -> dict[str, Both]:
    """The value of each size by its name; a project without sizes has one, which has no name."""
    if number is None:
        return {}
    sizes = page.sizes or ("",)
    values = number.values * len(sizes) if len(number.values) == 1 else number.values
    return dict(zip(sizes, values, strict=True))
