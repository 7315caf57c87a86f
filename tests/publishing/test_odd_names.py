"""Names that authors give to photos, stitches, terms, views and parts: each becomes a path or an anchor of its own."""

from __future__ import annotations

import posixpath
from pathlib import Path
from urllib.parse import unquote, urlsplit

import pytest
from bs4 import BeautifulSoup
from content import folder
from pictures.made_pictures import corners, file_of

from sitegen.publishing import publish

SEWN = (
    "seam_allowance: 1/2 in\nfabrics: {main: {name: cotton, structure: woven, width: 45 in, buy: 2 yd}}\n"
    "pieces: {p: {cut: '2', fabric: main, length: 30 in, width: 20 in,"
    " edges: {side: 9 in, top: 9 in, low: 9 in, end: 9 in}}}\n"
)
PHOTOS = (
    "step #2.png",
    "IMG 1234.png",
    "50%25 done.png",
    "a, b.png",
    "x:y?.png",
    "a\\b.png",
    "\"q'<b>.png",
    "ü.png",
    "縫い目.png",
    "con.png",
    f"{'n' * 240}.png",
)


def site_of(root: Path, text: str = SEWN, *, glossary: str = "", **files: str) -> Path:
    """The site of a tutorial, which must be published."""
    content = folder(root / "content", text, **files)
    (root / "content" / "site.yaml").write_text(
        "title: Test site\nauthor: Nobody\naddress: https://example.org/s\n", encoding="utf-8"
    )
    if glossary:
        (root / "content" / "glossary.yaml").write_text(glossary, encoding="utf-8")
    done = publish(content, root / "site", draft=False, progress=lambda *_: None)
    assert done.front is not None, [each.message for each in done.findings]
    return root / "site"


def soup(site: Path, path: str) -> BeautifulSoup:
    return BeautifulSoup((site / path).read_text(encoding="utf-8"), "html.parser")


def target(site: Path, page: str, href: str) -> tuple[Path, str]:
    """The file to which a link of a page leads, and the anchor in it."""
    parts = urlsplit(href)
    path = posixpath.normpath(posixpath.join(posixpath.dirname(page), unquote(parts.path)))
    return site / (path if parts.path else page), unquote(parts.fragment)


def joined(*stitches: str) -> dict[str, str]:
    """A step for each stitch."""
    edges = ("[p.side, p.top]", "[p.low, p.end]")
    return {
        f"steps__0{number}_dot_yaml": f"title: Sew {number}\nminutes: 5\ntext: Sew.\n"
        f"join: [{{edges: {edges[number]}, stitch: {name}}}]\n"
        for number, name in enumerate(stitches)
    }


@pytest.mark.parametrize("name", PHOTOS, ids=range(len(PHOTOS)))
def test_photo_of_any_name_is_shown(tmp_path: Path, name: str) -> None:
    photos = tmp_path / "content" / "tutorials" / "tee" / "photos"
    photos.mkdir(parents=True)
    (photos / name).write_bytes(file_of(corners(900, 600), "PNG"))
    quoted = name.replace("'", "''")
    marks = "marks: [{number: 1, at: [30%, 30%], text: It}]"
    site = site_of(
        tmp_path,
        steps__01_dot_yaml=f"title: Look\nminutes: 5\ntext: Look.\n"
        f"photo: {{file: '{quoted}', shows: A thing, {marks}}}\n",
    )
    page = "tutorials/tee/index.html"
    shown = soup(site, page)
    addresses = [str(image["src"]) for image in shown.select("main img")]
    for source in shown.select("main source[srcset], main img[srcset]"):
        addresses += [each.rsplit(" ", 1)[0] for each in str(source["srcset"]).split(", ")]
    found = [target(site, page, each) for each in addresses]
    assert len(found) >= 5
    assert all(file.is_file() and not anchor for file, anchor in found), addresses
    assert all(len(file.name) <= 120 for file, _ in found)


@pytest.mark.parametrize("names", [("hand stitch", "hand-stitch"), ("шов", "петля"), ("double fold hem", "шов")])
def test_every_stitch_has_a_page_of_its_own(tmp_path: Path, names: tuple[str, str]) -> None:
    hem = "hems: {hem: {edges: [p.end], turn: 3/4 in, fold_under: 1/4 in}}\n"
    hemmed = {"steps__05_dot_yaml": "title: Hem\nminutes: 5\ntext: Turn it.\nhem: [hem]\n"}
    site = site_of(tmp_path, SEWN + hem, **joined(*names), **hemmed)
    page = "tutorials/tee/index.html"
    links = {str(link["href"]) for link in soup(site, page).select('a[href*="techniques/"]')}
    found = {target(site, page, link)[0] for link in links}
    assert len(found) == 2
    titles = {BeautifulSoup(file.read_text(encoding="utf-8"), "html.parser").h1.get_text() for file in found}  # type: ignore[union-attr]
    assert {title.lower().removesuffix(" stitch") for title in titles} == {
        name.removesuffix(" stitch") for name in names
    }
    assert (site / "techniques" / "double-fold-hem.html").is_file()
    assert "Double-fold hem" in soup(site, "techniques/double-fold-hem.html").get_text()


def test_every_term_has_an_anchor_of_its_own(tmp_path: Path) -> None:
    glossary = "top-stitch: One.\ntop stitch: Two.\nшов: Three.\nнить: Four.\nmain: Five.\n"
    said = "title: Sew\nminutes: 5\ntext: A top-stitch, a top stitch, a шов, a нить, a main.\n"
    site = site_of(tmp_path, glossary=glossary, steps__01_dot_yaml=said)
    terms = soup(site, "glossary.html")
    ids = [str(each["id"]) for each in terms.select("[id]")]
    assert len(ids) == len(set(ids))
    assert terms.find(id="top-stitch").get_text().strip().startswith("top-stitch")  # type: ignore[union-attr]
    page = soup(site, "tutorials/tee/index.html")
    opened = {
        button.get_text(): page.find(id=str(button["popovertarget"])).get_text()  # type: ignore[union-attr]
        for button in page.select("main button[popovertarget^=t-]")
    }
    assert {word: next(n for n in ("One", "Two", "Three", "Four", "Five") if n in said) for word, said in opened.items()} == {
        "top-stitch": "One", "top stitch": "Two", "шов": "Three", "нить": "Four", "main": "Five",
    }  # fmt: skip


@pytest.mark.parametrize(
    "choices",
    ["[plain, with pocket, with-pocket]", "[без, с карманом]", "[sin, con]", "[plain, '!', '?']"],
)
def test_every_view_has_a_page_of_its_own(tmp_path: Path, choices: str) -> None:
    site = site_of(
        tmp_path, f"views: {{pocket: {choices}}}\n", steps__01_dot_yaml="title: Sew\nminutes: 5\ntext: Sew.\n"
    )
    page = "tutorials/tee/index.html"
    links = [str(link["href"]) for link in soup(site, page).select("a.choice")]
    found = {target(site, page, link)[0] for link in links}
    pages = set((site / "tutorials").rglob("*.html"))
    assert len(pages) == choices.count(",") + 1
    assert found == pages


def test_every_drawing_of_a_page_has_an_id_of_its_own(tmp_path: Path) -> None:
    """A dart is called after its piece, ``p.front``, and a hem may be called p_front."""
    text = SEWN.replace("edges: {side", "darts: {front: {edge: side, width: 1 in, length: 3 in}}, edges: {side")
    text += "hems: {p_front: {edges: [p.end], turn: 3/4 in, fold_under: 1/4 in}}\n"
    said = "title: Sew\nminutes: 5\ntext: Sew.\ndarts: [p.front]\nhem: [p_front]\ndiagrams: [p.front, p_front]\n"
    shown = soup(site_of(tmp_path, text, steps__01_dot_yaml=said), "tutorials/tee/index.html")
    ids = [str(each["id"]) for each in shown.select("[id]")]
    assert {"d-p-front"} < {each for each in ids if each.startswith("d-p-front")}
    assert sorted(ids) == sorted(set(ids))
