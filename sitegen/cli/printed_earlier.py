"""Handouts that were printed before: how one was wanted, and what is lost when another is written over it."""

from __future__ import annotations

from datetime import date
from pathlib import Path

from sitegen.classes import ComputedClass
from sitegen.cli.in_language import NoSuchLanguage, in_language
from sitegen.cli.one_class import Found
from sitegen.findings import Collector
from sitegen.handouts import NoPdf, NotPrintedHere, Printed, Wanted, handout_of, read_printed, slip_for
from sitegen.publishing import PaperPage, paper_page
from sitegen.quantities import System
from sitegen.tutorial.build import site

_NAMED = 3


def page_of(found: Found, first: System) -> PaperPage | None:
    """The page of the tutorial of a class, with one system of units first; None when the site has no usable theme."""
    return paper_page(
        found.cls.computed, site(found.folder, Collector(), found.language), found.folder, first, date.today()
    )


def wanted_of(old: Printed, cls: ComputedClass) -> Wanted:
    """The handout as it was wanted. Raises NotPrintedHere for one of another class or of sizes that are gone."""
    if old.class_key != cls.written.key:
        raise NotPrintedHere(f"it was printed for the class {old.class_key}")
    names = cls.computed.tutorial.sizes
    gone = [name for name in old.page.sizes if name not in names]
    if gone:
        raise NotPrintedHere(f"it has size {', '.join(gone)}, which the tutorial has no more. Print it anew")
    sizes = tuple(names.index(name) for name in old.page.sizes) or (0,)
    return Wanted(sizes, old.units, old.paper, old.copy)


def in_its_language(old: Printed, found: Found, *, say: bool) -> Found:
    """The class in the language of a print. Raises NotPrintedHere for one that the site has no more."""
    try:
        return in_language(found, old.language, say=say)
    except NoSuchLanguage:
        raise NotPrintedHere(f"it is in the language {old.language}, which the site has no more") from None


def lost_over(file: str, found: Found) -> str:
    """What would be lost if a handout of this class were written over a file: the only record of numbers that moved
    since, in words. Empty where there is no such record there, or it could be printed again."""
    try:
        old = read_printed(Path(file).read_bytes())
    except (OSError, NoPdf, NotPrintedHere):
        return ""
    try:
        moved = _moved(old, in_its_language(old, found, say=False))
    except NotPrintedHere as reason:
        return f"It is a handout of {old.day}, and {reason}."
    if not moved:
        return ""
    more = f" and {len(moved) - _NAMED} more" if len(moved) > _NAMED else ""
    return f"It is the handout of {old.day}, and its numbers have moved since: {', '.join(moved[:_NAMED])}{more}."


def is_printed(file: str) -> bool:
    """Whether a file is a handout, which holds the record of its numbers."""
    try:
        read_printed(Path(file).read_bytes())
    except (OSError, NoPdf, NotPrintedHere):
        return False
    return True


def _moved(old: Printed, found: Found) -> tuple[str, ...]:
    wanted = wanted_of(old, found.cls)
    page = page_of(found, wanted.units[0])
    if page is None:
        return ()
    try:
        made = handout_of(found.cls, page, found.folder, wanted, date.today())
    except NoPdf:
        return ()
    return tuple(each.what for each in slip_for(old, made).corrections)
