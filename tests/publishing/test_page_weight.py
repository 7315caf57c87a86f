"""What a page weighs before it is packed and before its pictures: bytes, so that a phone on a slow line opens it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest
from bs4 import BeautifulSoup
from content import EXAMPLE
from publishing import sample_views as sample

from sitegen.checks import Review, review
from sitegen.publishing.drawings import DrawingFiles
from sitegen.publishing.packed import packed_page
from sitegen.publishing.render import render_tutorial
from sitegen.publishing.terms import Terms
from sitegen.publishing.themes import Theme, shipped_theme, shipped_themes
from sitegen.publishing.tutorial_page import tutorial_page
from sitegen.publishing.views import GlossaryEntry
from sitegen.publishing.whole_site import site_view
from sitegen.reading import ContentFolder
from sitegen.tutorial import Computed

MOST = 250_000


@pytest.fixture(scope="module")
def example() -> Review:
    return review(ContentFolder(EXAMPLE, "content_example"))


@pytest.fixture(scope="module", params=shipped_themes())
def theme(request: pytest.FixtureRequest) -> Theme:
    return shipped_theme(request.param)


@pytest.fixture(scope="module")
def page(example: Review, theme: Theme) -> Callable[[Computed], str]:
    """Makes the page of a tutorial, every photo shown with two formats in two widths."""
    site = site_view(example.site, draft=False)
    terms = Terms(
        GlossaryEntry(term.term, term.term.replace(" ", "-"), sample.prose(term.means.text), term.us, term.uk)
        for term in example.site.glossary
    )

    def made(computed: Computed) -> str:
        files = DrawingFiles(theme.drawing_rules())
        view = tutorial_page(computed, site, "../../", lambda photo: sample.PHOTO, files, terms)
        return render_tutorial(view, theme)

    return made


def weight(html: str, theme: Theme) -> int:
    """The page as it is written, with the style sheets and scripts that it asks for."""
    soup, assets = BeautifulSoup(html, "html.parser"), theme.files()
    asked = [link["href"] for link in soup.select('link[rel="stylesheet"]')] + [
        one["src"] for one in soup.select("script")
    ]
    assert asked, "no page goes without"
    files = (assets[str(path).removeprefix("../../theme/")] for path in asked)
    return sum(map(len, (packed_page(html).encode("utf-8"), *files)))


def of_twenty_cards(example: Review, key: str = "boxy-tee") -> Computed:
    """A tutorial of the example, every third of its cards once more, twice more where it has few."""
    tutorial = next(each for each in example.tutorials if each.tutorial.key == key)
    steps = tutorial.tutorial.steps
    wanted = 20 - len(steps)
    again = [step for first in (1, 2, 0) for step in steps[first::3]][:wanted]
    more = (replace(step, number=len(steps) + place) for place, step in enumerate(again, start=1))
    return replace(tutorial, tutorial=replace(tutorial.tutorial, steps=(*steps, *more)))


@pytest.mark.parametrize(
    ("key", "sizes"),
    [
        ("pull-on-trousers", 6),
        ("gathered-skirt", 7),
        ("boxy-tee", 8),
    ],
)
def test_page_of_twenty_cards_weighs_little(
    example: Review, page: Callable[[Computed], str], theme: Theme, key: str, sizes: int
) -> None:
    computed = of_twenty_cards(example, key)
    html = page(computed)
    assert len(computed.tutorial.sizes) == sizes
    cards = BeautifulSoup(html, "html.parser").select(".card")
    assert len(cards) == 20
    assert len({card["id"] for card in cards}) == 20
    assert weight(html, theme) < MOST


def test_every_tutorial_of_the_example_weighs_less_than_that(
    example: Review, page: Callable[[Computed], str], theme: Theme
) -> None:
    weights = {each.tutorial.key: weight(page(each), theme) for each in example.tutorials}
    assert len(weights) == 5
    assert {key: size for key, size in weights.items() if size >= MOST} == {}


def test_page_holds_no_drawing_but_a_sign_and_waits_for_one_sheet_only(
    example: Review, page: Callable[[Computed], str]
) -> None:
    soup = BeautifulSoup(page(of_twenty_cards(example)), "html.parser")
    assert soup.select("svg :is(line, text, desc)") == []
    assert [link["href"] for link in soup.select('link[rel="stylesheet"]')] == ["../../theme/style.css"]
    assert [script.has_attr("defer") for script in soup.select("script")] == [True]


def test_sheet_that_is_served_says_all_that_its_parts_say() -> None:
    folder = Path(sample.__file__).parents[2] / "themes" / "workroom" / "style"
    files = shipped_theme("workroom").files()
    inner = [each.name for each in folder.iterdir() if each.is_dir()]
    assert {"around", "changes", "many-sizes"} <= set(inner)
    for name, parts_in in {"style": folder, **{name: folder / name for name in inner}}.items():
        parts = "".join(path.read_text(encoding="utf-8") for path in sorted(parts_in.glob("*.css")))
        sheet = files[f"{name}.css"].decode()
        served = sheet[sheet.index(":root{color-scheme") :] if name == "style" else sheet
        assert "/*" not in served
        assert "  " not in served
        assert served.count("{") == parts.count("{")
        assert len(served) < len(parts)
