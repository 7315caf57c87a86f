"""The page of a class for its students, for classes whose teacher wants one on the site.

It tells what is made, when and where, what to bring and what to do at home, and which sizes are made. Prices, counts of
students and notes for the teacher never reach it.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence

from sitegen.classes import ComputedClass, SessionPlan, plan_of, without_minutes
from sitegen.publishing.class_pages.views import ClassPage, StepLink, StudentSession
from sitegen.publishing.class_views import day_of_week
from sitegen.publishing.languages import foreign
from sitegen.publishing.site_place import is_device
from sitegen.publishing.slugs import Slugs
from sitegen.publishing.spoken import speech_of
from sitegen.publishing.views import SiteView, TutorialCard, TutorialView
from sitegen.quantities import English
from sitegen.tutorial import Computed, Step, words_of

_ROOT = "../../"
_PLAIN_NAME = re.compile(r"[A-Za-z0-9][A-Za-z0-9_-]*")
"""Names of files that can be those of folders of the site as they are."""


def class_pages(
    classes: Sequence[ComputedClass],
    site: SiteView,
    cards: Mapping[str, TutorialCard],
    pages: Mapping[str, TutorialView],
    computed: Mapping[str, Computed],
) -> tuple[ClassPage, ...]:
    """The pages of all classes that are to be on the site. ``pages`` and ``computed`` go by the address of a page."""
    shown = [each for each in classes if each.written.on_site]
    addresses = class_addresses(each.written.key for each in shown)
    return tuple(
        page for each in shown for page in _class_page(each, addresses[each.written.key], site, cards, pages, computed)
    )


def class_addresses(keys: Iterable[str]) -> dict[str, str]:
    """Where the page of each class lies in the site, by the name of its file."""
    every = list(keys)
    plain = {key for key in every if _PLAIN_NAME.fullmatch(key) and not is_device(key)}
    slugs = Slugs(taken=[key.lower() for key in plain])
    return {key: f"classes/{key if key in plain else slugs.of(key)}/index.html" for key in every}


def _class_page(
    cls: ComputedClass,
    address: str,
    site: SiteView,
    cards: Mapping[str, TutorialCard],
    pages: Mapping[str, TutorialView],
    computed: Mapping[str, Computed],
) -> Iterator[ClassPage]:
    """The page of one class, if the site has the tutorial in the view of the class."""
    written = cls.written
    chosen = {(view, choice.text) for view, choice in written.views.items()}
    key = written.tutorial.text
    ways = [
        address
        for address, each in computed.items()
        if each.tutorial.key == key and chosen <= set(each.tutorial.chosen)
    ]
    if not ways:
        return
    tutorial, language = pages[ways[0]], speech_of(site, computed[ways[0]])
    picture = next((pages[way].picture for way in ways if pages[way].root == _ROOT), None)
    titles = {card.number: (card.title, card.anchor) for card in tutorial.cards}

    def links(steps: Sequence[Step]) -> tuple[StepLink, ...]:
        found = ((step.number, *titles[step.number]) for step in steps if step.number in titles)
        return tuple(StepLink(number, title, f"{ways[0]}#{anchor}") for number, title, anchor in found)

    words = {**computed[ways[0]].tutorial.translated, **written.translations.get(site.language, {})}

    def said(text: str) -> str:
        """Words of the teacher in the language of the page; marked as those of the site's first where it has none."""
        if text in words:
            return words[text]
        own = language.own(text)
        return foreign(text, site.first_language) if own == text and site.up else own

    plan = plan_of(cls) if not without_minutes(cls) else None
    planned = plan.sessions if plan is not None else tuple(SessionPlan(each, (), 0, ()) for each in written.sessions)
    yield ClassPage(
        site=site,
        root=_ROOT,
        address=address,
        title=said(written.title),
        tutorial=tutorial.title,
        href=ways[0],
        summary=cards[key].summary,
        picture=picture,
        changes=tuple(said(words_of(change.name)) for change in written.changes),
        sizes=tuple(name for each in written.students if (name := cls.computed.size_name(each.size))),
        where=said(written.where),
        brings=tuple(said(words.text) for words in written.brings),
        homework_before=links(plan.homework_before) if plan is not None else (),
        sessions=tuple(
            _session(each, links([placed.work.step for placed in each.placed]), links(each.homework), language)
            for each in planned
        ),
    )


def _session(
    planned: SessionPlan, steps: tuple[StepLink, ...], homework: tuple[StepLink, ...], language: English
) -> StudentSession:
    session = planned.session
    starts, stops = session.starts, session.stops
    return StudentSession(
        number=session.number,
        day=day_of_week(starts.date(), language) if starts is not None else "",
        begins=f"{starts:%H:%M}" if starts is not None else "",
        ends=f"{stops:%H:%M}" if stops is not None else "",
        starts=f"{starts:%Y-%m-%dT%H:%M}" if starts is not None else "",
        minutes=session.minutes,
        steps=steps,
        homework=homework,
    )
