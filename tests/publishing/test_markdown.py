"""Prose to HTML: references become numbers, and nothing that an author types can act on the page."""

import pytest
from bs4 import BeautifulSoup
from markupsafe import Markup

from sitegen.publishing.amounts import Filled
from sitegen.publishing.markdown import link_allowed, render, render_inline

BAND = Filled(Markup('<a class="n" href="#w-band">17 in</a>'), Markup('<span class="n">17 in</span>'))


def numbers(name: str) -> Filled | None:
    return BAND if name == "band.cut_length" else None


def soup(text: str, heading_level: int = 3) -> BeautifulSoup:
    return BeautifulSoup(render(text, numbers, heading_level), "html.parser")


def test_reference_becomes_the_linked_number() -> None:
    assert render("Cut it {band.cut_length} long.", numbers) == f"<p>Cut it {BAND.linked} long.</p>\n"


def test_weight_of_cloth_is_printed_with_a_raised_2() -> None:
    assert "from 150 g/m² up" in render("Take jersey from 150 g/m2 up.")


def test_underscores_of_two_references_make_no_emphasis() -> None:
    assert render("{band.cut_length}_{band.cut_length}", numbers).count("<a") == 2
    assert "<em>" not in render("{band.cut_length}_{band.cut_length}", numbers)


def test_reference_may_stand_inside_emphasis() -> None:
    assert f"<strong>{BAND.linked}</strong>" in render("**{band.cut_length}**", numbers)


def test_reference_inside_a_link_brings_no_second_link() -> None:
    page = soup("[the band, {band.cut_length}](cutting.html)")
    assert [link["href"] for link in page.find_all("a")] == ["cutting.html"]
    assert page.a is not None
    assert page.a.get_text() == "the band, 17 in"


def test_reference_inside_code_stays_as_typed() -> None:
    assert soup("`{band.cut_length}`").code.get_text() == "{band.cut_length}"
    assert "{band.cut_length}" in soup("```\n{band.cut_length}\n```").pre.get_text()


def test_reference_that_names_nothing_stays_as_typed_and_escaped() -> None:
    assert render("{no.such} {<b>}", numbers) == "<p>{no.such} {&lt;b&gt;}</p>\n"


def test_two_braces_are_one_brace_and_no_template_is_run() -> None:
    assert soup("{{ 7*7 }} and {{band.cut_length}").get_text().strip() == "{ 7*7 }} and {band.cut_length}"


def test_brace_that_is_never_closed_is_text() -> None:
    assert soup("a { b").get_text().strip() == "a { b"


@pytest.mark.parametrize(
    "text",
    [
        "<script>alert(1)</script>",
        "Sew <img src=x onerror=alert(1)> on.",
        "<div onclick='x'>",
        "<!-- c -->",
        "<style>*{display:none}</style>",
    ],
)
def test_raw_html_is_shown_and_not_passed_on(text: str) -> None:
    page = soup(text)
    assert {tag.name for tag in page.find_all(True)} <= {"p"}
    assert page.get_text().strip() == text


@pytest.mark.parametrize(
    "url",
    [
        "javascript:alert(1)",
        "JaVaScRiPt:alert(1)",
        "java&#115;cript:alert(1)",
        "<java\tscript:alert(1)>",
        "&#1;javascript:alert(1)",
        "data:text/html,x",
        "file:///etc/passwd",
        "vbscript:x",
        "ftp://host/x",
        "/etc/passwd",
        "//elsewhere.example/x",
        "/\\elsewhere.example/x",
        "C:/x",
    ],
)
def test_link_that_could_act_or_leave_the_site_unseen_is_not_made(url: str) -> None:
    page = soup(f"[press]({url})")
    assert page.find("a") is None or not page.a["href"].lower().startswith(
        ("java", "data", "file", "vb", "ftp", "/", "c:")
    )
    assert "press" in page.get_text()


@pytest.mark.parametrize("url", ["#card", "other.html", "../x/index.html#y", "photos/a b.jpg", "?page=2:3", "a/b:c"])
def test_path_from_the_page_itself_may_be_linked(url: str) -> None:
    assert link_allowed(url)


def test_link_to_elsewhere_tells_nothing_of_where_it_came_from() -> None:
    page = soup("[a](https://e.example/?a=1&b=2) <http://e.example> [m](mailto:a@e.example) [r](x.html)")
    found = {link["href"]: link.get("rel") for link in page.find_all("a")}
    assert found["https://e.example/?a=1&b=2"] == ["noopener", "noreferrer"]
    assert found["http://e.example"] == ["noopener", "noreferrer"]
    assert found["x.html"] is None


def test_picture_gives_only_its_description() -> None:
    page = soup("![a *blue* band, {band.cut_length} [x](y.html)](https://elsewhere.example/a.png)")
    assert page.find(["img", "a", "em"]) is None
    assert page.get_text().strip() == "a blue band, 17 in x"


def test_picture_inside_a_link_leaves_one_link() -> None:
    assert len(soup("[![band {band.cut_length}](a.png)](b.html)").find_all("a")) == 1


def test_headings_start_at_the_level_asked_and_leave_none_out() -> None:
    page = soup("# A\n\n### B\n\n# C", heading_level=4)
    assert [(tag.name, tag.get_text()) for tag in page.find_all(["h4", "h5"])] == [
        ("h4", "A"),
        ("h5", "B"),
        ("h4", "C"),
    ]


def test_heading_is_never_deeper_than_the_sixth_level() -> None:
    page = soup("# A\n\n## B\n\n### C\n\n#### D", heading_level=5)
    assert [tag.name for tag in page.find_all(True)] == ["h5", "h6", "h6", "h6"]


def test_table_aligns_by_class_and_scrolls_in_its_own_box() -> None:
    page = soup("| a | b | c |\n|:-:|--:|---|\n| 1 | 2 | 3 |")
    assert [cell.get("class") for cell in page.find_all("td")] == [["align-center"], ["align-right"], None]
    assert page.find(style=True) is None
    assert page.table.parent["class"] == ["scroll"]


def test_one_line_comes_without_a_paragraph() -> None:
    assert render_inline("*so*, {band.cut_length}", numbers) == f"<em>so</em>, {BAND.linked}"


def test_prose_of_no_tutorial_keeps_braces() -> None:
    assert render_inline("{band.cut_length}") == "{band.cut_length}"


def test_a_typed_number_stays_with_its_unit() -> None:
    """Also where the author's own line ends between them; words that only look like a unit do no harm."""
    shown = str(render("Cut it 2 1/2 in (6.5\ncm) long, then 5 mm more; put 4\nin all."))
    assert "2\xa01/2\xa0in (6.5\xa0cm)" in shown
    assert "5\xa0mm" in shown
    assert "\n" not in shown.strip().removeprefix("<p>")
