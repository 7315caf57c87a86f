"""The pages of a class: that of its teacher as one file, and that of its students on the site."""

from __future__ import annotations

import re
from html.parser import HTMLParser
from pathlib import Path
from urllib.parse import unquote, urldefrag

import pytest
from bs4 import BeautifulSoup
from bs4.element import Tag
from classes.class_folders import CLASS, STEPS, TOTE, class_folder
from content import EXAMPLE

from sitegen.checks import review_class
from sitegen.classes import NotWritten, is_own, sealed_page, write_own
from sitegen.cli import main
from sitegen.findings import Collector
from sitegen.publishing import publish, teacher_page
from sitegen.quantities import System
from sitegen.reading import ContentFolder
from sitegen.tutorial.build import site

EVENING = EXAMPLE / "classes" / "evening-tee.yaml"
NOTE = "Whisper this to the teacher."
WITH_NOTE = {
    **STEPS,
    "steps__02-sew_dot_yaml": STEPS["steps__02-sew_dot_yaml"] + f"teacher: {NOTE}\n",
}
ON_SITE = (
    CLASS.replace("sessions: [{minutes: 200}]", 'sessions: [{date: 2027-01-12, begins: "18:30", ends: "21:00"}]')
    + "time_zone: Europe/London\nwhere: the hall in Harbour Street\nbrings: [scissors]\non_site: yes\n"
    + "before_class: [cut]\nhomework: [press]\nprices: {canvas: £9.99 a yard, polyester thread: £1.10}\n"
)


def published(root: Path, text: str = ON_SITE, settings: str = "") -> Path:
    """The site of a folder with one class."""
    folder = class_folder(root / "content", text, tutorial=TOTE, **WITH_NOTE)
    with (root / "content" / "site.yaml").open("a", encoding="utf-8") as file:
        file.write("address: https://class.example\n" + settings)
    publish(folder, root / "site", draft=True, progress=lambda *_: None)
    return root / "site"


def soup_of(path: Path) -> BeautifulSoup:
    return BeautifulSoup(path.read_text(encoding="utf-8"), "html.parser")


def teacher(name: str = "evening-tee", system: System = System.CENTIMETRES) -> str:
    folder = ContentFolder(EXAMPLE, "content_example")
    cls, _ = review_class(folder, f"classes/{name}.yaml")
    assert cls is not None
    page = teacher_page(cls, site(folder, Collector()), folder, system)
    assert page is not None
    return page


def test_page_of_the_teacher_needs_no_other_file() -> None:
    """It asks for nothing: no link but those inside, no picture, no script, and a policy that says so."""
    page = teacher()
    soup = BeautifulSoup(page, "html.parser")
    assert not soup.find_all(["script", "link", "img", "iframe", "object"])
    assert {str(link["href"])[0] for link in soup.find_all("a")} == {"#"}
    ids = [str(each["id"]) for each in soup.find_all(id=True)]
    assert len(ids) == len(set(ids))
    assert {str(link["href"])[1:] for link in soup.find_all("a")} <= set(ids)
    style = soup.style
    assert style is not None
    assert not re.search(r"url\((?!#)|@import|https?:", style.get_text())
    policy = soup.find("meta", attrs={"http-equiv": "Content-Security-Policy"})
    assert isinstance(policy, Tag)
    assert "default-src 'none'" in str(policy["content"])


EMPTY = {"meta", "br", "hr", "img", "link"}


class Balanced(HTMLParser):
    """Every element that is opened is closed in its order."""

    def __init__(self) -> None:
        super().__init__()
        self.open: list[str] = []
        self.elements = 0

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        names = [name for name, _ in attrs]
        assert len(names) == len(set(names)), self.get_starttag_text()
        self.elements += 1
        if tag not in EMPTY:
            self.open.append(tag)

    def handle_endtag(self, tag: str) -> None:
        assert self.open.pop() == tag, self.getpos()


@pytest.mark.parametrize("name", ["evening-tee", "holiday-trousers"])
def test_page_of_the_teacher_closes_what_it_opens(name: str) -> None:
    reader = Balanced()
    reader.feed(teacher(name))
    reader.close()
    assert reader.open == []
    assert reader.elements > 300


def test_every_total_opens_its_working() -> None:
    soup = BeautifulSoup(teacher(), "html.parser")
    totals = [each for each in soup.select(".buy > li, .total") if "£" in each.get_text() or " m" in each.get_text()]
    assert len(totals) > 10
    for total in totals:
        amount = total.select_one(".amount b, p > b")
        assert amount is not None
        lines = [line.get_text() for line in total.select("details > p")]
        assert lines, total.get_text()
        assert any("=" in line for line in lines)
    together = soup.select_one(".total details > p")
    assert together is not None
    assert together.get_text().endswith("= £151.73")


def test_page_of_the_teacher_holds_kit_layouts_plan_notes_and_samples() -> None:
    soup = BeautifulSoup(teacher(), "html.parser")
    text = soup.get_text(" ", strip=True)
    assert len(soup.select(".sheets svg")) == 2
    assert [each.get_text(" ", strip=True) for each in soup.select(".plan .clock")][:3] == ["18:30", "19:00", "19:38"]
    assert "Twin needles break when the stitch width is not at zero." in text
    assert "Bands on their openings" in text
    assert "9 large sheets" in text.replace("\N{NO-BREAK SPACE}", " ")
    assert soup.html is not None
    assert soup.html["lang"] == "en"


def test_command_writes_the_page_and_never_over_a_changed_one(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    file = tmp_path / "kit.html"
    for _ in range(2):
        assert main(["kit", str(EVENING), "--html", str(file)]) == 0
    assert f"The page for the teacher is in {file}." in capsys.readouterr().out
    assert is_own(file.read_bytes())
    file.write_bytes(file.read_bytes().replace(b"polyester", b"silk", 1))
    changed = file.read_bytes()
    assert main(["kit", str(EVENING), "--html", str(file)]) == 2
    assert "was changed since" in capsys.readouterr().err
    assert file.read_bytes() == changed


def test_sealed_page_is_known_again_and_a_foreign_one_is_not(tmp_path: Path) -> None:
    sealed = sealed_page("<!DOCTYPE html>\n<p>é</p>\n")
    assert is_own(sealed)
    assert not is_own(sealed + b" ")
    assert not is_own(b"<!DOCTYPE html>\n<p>mine</p>\n")
    (tmp_path / "mine.html").write_bytes(b"<p>mine</p>")
    with pytest.raises(NotWritten, match=r"was not written by this program"):
        write_own(tmp_path / "mine.html", sealed)


def test_wrong_class_has_no_page(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    class_folder(tmp_path / "content", CLASS.replace("minutes: 200", "minutes: 75"))
    file = tmp_path / "kit.html"
    assert main(["kit", str(tmp_path / "content" / "classes" / "evening.yaml"), "--html", str(file)]) == 1
    assert "was not written. Mend what is wrong first." in capsys.readouterr().err
    assert not file.exists()


def test_author_text_stays_text_on_the_page_of_the_teacher(tmp_path: Path) -> None:
    text = ON_SITE.replace("title: Evening class", "title: '<script>alert(1)</script> & <b>class</b>'")
    folder = class_folder(tmp_path, text, tutorial=TOTE, **WITH_NOTE)
    cls, _ = review_class(folder, "classes/evening.yaml")
    assert cls is not None
    page = teacher_page(cls, site(folder, Collector()), folder, System.INCHES)
    assert page is not None
    soup = BeautifulSoup(page, "html.parser")
    assert not soup.find_all("script")
    assert soup.h1 is not None
    assert soup.h1.get_text() == "<script>alert(1)</script> & <b>class</b>"


def test_page_for_students_tells_what_they_need(tmp_path: Path) -> None:
    page = soup_of(published(tmp_path) / "classes" / "evening" / "index.html")
    text = page.get_text(" ", strip=True)
    for words in (
        "Evening class", "Test tee", "the hall in Harbour Street", "Tuesday 12 January 2027", "18:30 to 21:00", "scissors",
        "sizes S, L", "Sew the sides", "At home, after session 1", "Press the bag",
    ):  # fmt: skip
        assert words in text
    time = page.find("time")
    assert isinstance(time, Tag)
    assert time["datetime"] == "2027-01-12T18:30"


def test_page_for_students_tells_nothing_else(tmp_path: Path) -> None:
    """No price, no count of students, no note for the teacher, no turns, and nothing of what the teacher buys."""
    text = soup_of(published(tmp_path) / "classes" / "evening" / "index.html").get_text(" ", strip=True)
    for words in ("£", "9.99", "3 in size", "5 students", NOTE, "turns", "spools", "spare", "Cut out"):
        assert words not in text


def test_no_note_for_the_teacher_is_on_any_published_page(tmp_path: Path) -> None:
    root = published(tmp_path)
    pages = [path for path in root.rglob("*") if path.suffix in {".html", ".js", ".xml", ".json", ".vtt", ".svg"}]
    assert len(pages) > 8
    assert [path.name for path in pages if NOTE in path.read_text(encoding="utf-8")] == []


def test_no_note_of_the_example_is_published(tmp_path: Path) -> None:
    """Each note by its first words, in every file of the site that holds text."""
    folder = ContentFolder(EXAMPLE, "content_example")
    publish(folder, tmp_path / "site", draft=False, progress=lambda *_: None)
    notes = [
        " ".join(match[1].split())[:40]
        for step in EXAMPLE.rglob("steps/*.yaml")
        if (match := re.search(r"^teacher: \|\n((?:  .*\n?)+)", step.read_text(encoding="utf-8"), re.MULTILINE))
    ]
    assert len(notes) > 8
    for path in (tmp_path / "site").rglob("*"):
        if path.suffix in {".html", ".js", ".xml", ".json", ".vtt"}:
            words = " ".join(path.read_text(encoding="utf-8").split())
            assert [note for note in notes if note in words] == [], path.name
    assert sorted(each.name for each in (tmp_path / "site" / "classes").iterdir()) == ["evening-tee"]


@pytest.mark.parametrize("line", ["", "on_site: no\n"])
def test_class_has_no_page_unless_its_teacher_wants_one(tmp_path: Path, line: str) -> None:
    root = published(tmp_path, ON_SITE.replace("on_site: yes\n", line))
    assert not (root / "classes").exists()
    for path in root.rglob("*"):
        if path.suffix in {".html", ".js", ".xml", ".json"}:
            assert "Harbour Street" not in path.read_text(encoding="utf-8")
            assert "Evening class" not in path.read_text(encoding="utf-8")


def test_class_is_found_from_the_pages_around_it(tmp_path: Path) -> None:
    text = ON_SITE.replace("before_class: [cut]\nhomework: [press]\n", "")
    folder = class_folder(tmp_path / "content", text, tutorial=TOTE, **WITH_NOTE)
    with (tmp_path / "content" / "site.yaml").open("a", encoding="utf-8") as file:
        file.write("address: https://class.example\n")
    root = tmp_path / "site"
    outcome = publish(folder, root, draft=False, progress=lambda *_: None)
    if outcome.front is None:
        pytest.fail("; ".join(each.message for each in outcome.findings))
    address = "classes/evening/index.html"
    front = soup_of(root / "index.html")
    assert address in [str(link["href"]) for link in front.select("main a")]
    tutorial = soup_of(root / "tutorials" / "tee" / "index.html")
    assert f"../../{address}" in [str(link["href"]) for link in tutorial.select(".opening a")]
    assert address in (root / "search-data.js").read_text(encoding="utf-8")
    assert f"https://class.example/{address}" in (root / "sitemap.xml").read_text(encoding="utf-8")
    canonical = soup_of(root / address).find("link", rel="canonical")
    assert isinstance(canonical, Tag)
    assert canonical["href"] == f"https://class.example/{address}"


def test_every_link_of_the_page_leads_somewhere(tmp_path: Path) -> None:
    path = published(tmp_path) / "classes" / "evening" / "index.html"
    soup = soup_of(path)
    targets = [str(each.get("href") or each.get("src")) for each in soup.find_all(["a", "link", "script", "img"])]
    targets = [each for each in targets if each != "None" and not each.startswith("https:")]
    assert any("#step-2" in each for each in targets)
    for target in targets:
        file, anchor = urldefrag(target)
        there = (path.parent / file).resolve() if file else path
        assert there.is_file(), target
        if anchor and there.suffix == ".html":
            assert soup_of(there).find(id=anchor) is not None, target


@pytest.mark.parametrize("name", ["Kurs #2, Donnerstag", "Evening_Class", "con", "вечер", "a?b", "evening!"])
def test_class_of_any_file_name_has_a_page_that_is_found(tmp_path: Path, name: str) -> None:
    folder = class_folder(tmp_path / "content", ON_SITE, tutorial=TOTE, **WITH_NOTE)
    (tmp_path / "content" / "classes" / f"{name}.yaml").write_text(ON_SITE.replace("Evening class", "The other class"))
    done = publish(folder, tmp_path / "site", draft=False, progress=lambda *_: None)
    assert done.front is not None, [each.message for each in done.findings]
    links = {str(link["href"]) for link in soup_of(done.front).select('a[href^="classes/"]')}
    pages = {tmp_path / "site" / urldefrag(unquote(link)).url for link in links}
    assert tmp_path / "site" / "classes" / "evening" / "index.html" in pages
    titles = sorted(page.h1.get_text() for page in map(soup_of, pages) if page.h1 is not None)
    assert titles == ["Evening class", "The other class"]
    assert name != "Evening_Class" or "classes/Evening_Class/index.html" in links, "links of published sites stay"


def test_class_speaks_the_language_of_its_page(tmp_path: Path) -> None:
    root = published(tmp_path, settings="languages: [en, es]\n")
    page = soup_of(root / "es" / "classes" / "evening" / "index.html")
    text = page.get_text(" ", strip=True)
    assert "martes 12 de enero de 2027" in text
    assert "Qué traer" in text
    assert "tijeras" in text
    # What the teacher wrote is in the first language, and is marked as such.
    assert page.h1 is not None
    assert page.h1.find(lang="en") is not None
    other = page.select_one(".languages a")
    assert other is not None
    assert (root / "es" / "classes" / "evening" / str(other["href"])).resolve().is_file()


def test_odd_answer_to_on_site_is_a_finding(tmp_path: Path) -> None:
    folder = class_folder(tmp_path, CLASS + "on_site: perhaps\n")
    _, collector = review_class(folder, "classes/evening.yaml")
    assert [each.message for each in collector.findings if "perhaps" in each.message] == [
        "Expected true, false, yes or no, found “perhaps”. Example: on_site: true"
    ]
