"""The page of each technique, the page that lists them, and the ways to them from the step cards."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace

from markupsafe import Markup

from sitegen.publishing.slugs import Slugs
from sitegen.publishing.spoken import speech_of
from sitegen.publishing.techniques.known import Kind, Named, stitch
from sitegen.publishing.techniques.uses import Use, uses_of
from sitegen.publishing.views import (
    GlossaryEntry,
    GlossaryView,
    OtherWay,
    SiteView,
    StepCard,
    Stitching,
    TutorialView,
)
from sitegen.tutorial import Computed

TECHNIQUES_PAGE = "techniques.html"
_FOLDER = "techniques"


@dataclass(frozen=True, slots=True)
class UsedFor:
    """What is made by a technique in a step, and its settings there."""

    what: str
    settings: tuple[tuple[str, Markup], ...]


@dataclass(frozen=True, slots=True)
class UsedIn:
    """A step in which a technique is used."""

    number: int
    title: str
    href: str
    made: tuple[UsedFor, ...]


@dataclass(frozen=True, slots=True)
class UsedBy:
    """A tutorial in which a technique is used."""

    title: str
    href: str
    level: str
    steps: tuple[UsedIn, ...]


@dataclass(frozen=True, slots=True)
class TechniqueView:
    """The page of one technique."""

    site: SiteView
    name: str
    named: str
    """Its name in lists of the program, by which it is known again."""
    address: str
    """From the folder of the site."""
    kind: Kind
    term: GlossaryEntry | None
    """What the glossary says of it."""
    used: tuple[UsedBy, ...]
    root: str = "../"

    @property
    def steps(self) -> int:
        """In how many steps it is used."""
        return sum(len(each.steps) for each in self.used)


@dataclass(frozen=True, slots=True)
class TechniquesView:
    """The page that lists all techniques, group by group."""

    site: SiteView
    groups: tuple[tuple[str, tuple[TechniqueView, ...]], ...]
    root: str = ""


def technique_pages(
    site: SiteView, glossary: GlossaryView, computed: Mapping[str, Computed], pages: Mapping[str, TutorialView]
) -> tuple[TechniqueView, ...]:
    """A page for each technique of any tutorial, in the order of their groups and names.

    A step that several views of a tutorial share counts once, on the first page that has it.
    """
    terms = {name.casefold(): entry for entry in reversed(glossary.entries) for name in _names(entry)}
    found: dict[str, tuple[Named, dict[str, dict[int, list[UsedFor]]]]] = {}
    told: set[tuple[str, str, str]] = set()
    for address, page in pages.items():
        tutorial = computed[address].tutorial
        files = {step.number: step.file for step in tutorial.steps}
        here: set[tuple[str, str, str]] = set()
        for use in uses_of(computed[address], page):
            key = (tutorial.key, files[use.step], use.named.name)
            if key not in told:
                here.add(key)
                _, by_page = found.setdefault(use.named.name, (use.named, {}))
                _add(by_page.setdefault(address, {}).setdefault(use.step, []), use)
        told |= here
    addresses = _addresses(named for named, _ in found.values())
    views = (
        TechniqueView(
            site=site,
            name=_capital(speech_of(site).own(named.name)),
            named=named.name,
            address=addresses[named.name],
            kind=named.kind,
            term=next((terms[term.casefold()] for term in named.terms if term.casefold() in terms), None),
            used=tuple(_used_by(address, pages[address], steps) for address, steps in by_page.items()),
        )
        for named, by_page in found.values()
    )
    order = list(Kind)
    return tuple(sorted(views, key=lambda view: (order.index(view.kind), view.name)))


def techniques_view(site: SiteView, techniques: Iterable[TechniqueView]) -> TechniquesView:
    """The page that leads to all of them."""
    each = tuple(techniques)
    groups = ((speech_of(site).say(kind.value), tuple(view for view in each if view.kind is kind)) for kind in Kind)
    return TechniquesView(site, tuple((name, views) for name, views in groups if views))


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]


def _addresses(techniques: Iterable[Named]) -> dict[str, str]:
    """Where the page of each technique lies in the site, by its name. What the program names itself keeps its address,
    whatever authors call their stitches; of these the first in the alphabet."""
    order = sorted(techniques, key=lambda each: (each.kind is Kind.STITCHES, each.name))
    slugs = Slugs()
    return {each.name: f"{_FOLDER}/{slugs.of(each.name)}.html" for each in order}


def with_links(page: TutorialView, techniques: Iterable[TechniqueView]) -> TutorialView:
    """The page with a link from the stitch of each seam to the page of that stitch."""
    hrefs = {each.named: f"{page.root}{each.address}" for each in techniques}
    return replace(page, cards=tuple(_card(card, hrefs) for card in page.cards))


def _card(card: StepCard, hrefs: Mapping[str, str]) -> StepCard:
    other = card.other_way
    linked: OtherWay | None = None
    if other is not None:
        linked = replace(other, stitching=_linked(other.stitching, hrefs))
    return replace(card, stitching=_linked(card.stitching, hrefs), other_way=linked)


def _linked(seams: tuple[Stitching, ...], hrefs: Mapping[str, str]) -> tuple[Stitching, ...]:
    named = ((seam, stitch(seam.named or seam.stitch)) for seam in seams)
    return tuple(seam if name is None else replace(seam, href=hrefs[name.name]) for seam, name in named)


def _names(entry: GlossaryEntry) -> set[str]:
    each = (entry.term, *entry.us.split(","), *entry.uk.split(","))
    return {name.strip() for name in each if name.strip()}


def _add(made: list[UsedFor], use: Use) -> None:
    """Note what a step makes, once for each thing that is made with other settings."""
    this = UsedFor(use.what, use.settings)
    if this not in made:
        made.append(this)


def _used_by(address: str, page: TutorialView, steps: Mapping[int, list[UsedFor]]) -> UsedBy:
    cards = {card.number: card for card in page.cards}
    return UsedBy(
        title=page.title,
        href=address,
        level=page.level,
        steps=tuple(
            UsedIn(number, cards[number].title, f"{address}#{cards[number].anchor}", tuple(made))
            for number, made in sorted(steps.items())
        ),
    )
