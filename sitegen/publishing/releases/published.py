"""What of a page goes into the record of a release."""

from __future__ import annotations

from datetime import date

from sitegen.publishing.page_words import mark_of
from sitegen.publishing.releases.record import PublishedNumber, PublishedPage
from sitegen.publishing.views import TutorialView
from sitegen.tutorial import Tutorial


def published_page(page: TutorialView, tutorial: Tutorial, today: date) -> PublishedPage:
    """The page with every number on it, as if it were released today for the first time."""
    return PublishedPage(
        tutorial=tutorial.key,
        view=", ".join(f"{view.replace('_', ' ')}: {choice}" for view, choice in tutorial.chosen),
        title=tutorial.title,
        sizes=page.sizes,
        numbers={number.name: PublishedNumber(number.words, number.values) for number in page.numbers},
        mark=mark_of(page),
        published=today,
        updated=today,
    )
