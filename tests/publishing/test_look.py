"""The author's own colours, fonts and logo, and the contrast that they must have."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from bs4 import BeautifulSoup
from content import folder, messages
from PIL import Image, PngImagePlugin

from sitegen.checks import review
from sitegen.findings import Collector, Finding
from sitegen.publishing import look_findings, publish
from sitegen.publishing.site_look import SiteLook, site_look
from sitegen.publishing.themes import contrast, shipped_theme
from sitegen.publishing.themes.contrast import luminance, nearest_that_does

STEP = "title: Pin\nminutes: 5\ntext: Match the marks.\n"


def site(root: Path, look: str, theme: str = "workroom") -> tuple[SiteLook | None, tuple[Finding, ...]]:
    """The look of a small site, and what is to be said of it."""
    content = folder(root, "sizes: [S]\n", steps__01_dot_yaml=STEP)
    (root / "site.yaml").write_text(f"title: Test\nauthor: Nobody\ntheme: {theme}\n{look}", encoding="utf-8")
    found = review(content)
    collector = Collector()
    collector.extend(each for each in found.findings if each.place.file.endswith("site.yaml"))
    return site_look(found.site, content, collector), collector.findings


# Contrast. Besides black on white (21) these are worked examples that W3C and its authors publish: #767676 is the
# lightest grey that can be read on white ("Understanding SC 1.4.3"), 4.54; #777777 falls short with 4.48 (from memory).
@pytest.mark.parametrize(
    ("one", "other", "ratio"),
    [
        ("#000000", "#ffffff", 21.0),
        ("#ffffff", "#ffffff", 1.0),
        ("#767676", "#ffffff", 4.54),
        ("#777777", "#ffffff", 4.48),
        ("#949494", "#ffffff", 3.03),
        ("#ff0000", "#ffffff", 4.0),
        ("#0000ff", "#ffffff", 8.59),
        ("#008000", "#ffffff", 5.14),
    ],
)
def test_contrast_is_that_of_wcag(one: str, other: str, ratio: float) -> None:
    assert round(contrast(one, other), 2) == ratio
    assert contrast(other, one) == contrast(one, other)


def test_luminance_runs_from_black_to_white_and_weighs_the_three_lights() -> None:
    assert (luminance("#000000"), luminance("#ffffff")) == (0.0, pytest.approx(1.0))
    assert [round(luminance(each), 4) for each in ("#ff0000", "#00ff00", "#0000ff")] == [0.2126, 0.7152, 0.0722]


def test_nearest_colour_does_and_the_one_before_it_does_not() -> None:
    def does(colour: str) -> bool:
        return contrast(colour, "#ffffff") >= 4.5

    assert nearest_that_does("#d9a441", does) == "#94702c"
    assert does("#94702c")
    assert not does("#95712d")
    assert nearest_that_does("#000000", does) == "#000000"
    assert nearest_that_does("#808080", lambda colour: False) == ""


# The author's colours


def test_colour_that_cannot_be_read_is_told_with_its_contrast_and_the_nearest_that_can(tmp_path: Path) -> None:
    _, found = site(tmp_path, 'look: {colours: {light: {accent: "#d9a441"}}}\n')
    (one,) = found
    assert (one.check, one.place.line, one.place.column, one.said) == ("look-contrast", 4, 35, "#d9a441")
    assert one.message.startswith(
        "The contrast of accent #d9a441 on paper #f6f1e7 on a light screen is 1.99 to 1; text needs 4.5 to 1 at least (WCAG 2.2)."
    )
    assert "accent on wash: 1.84 to 1, needed 3 to 1" in one.working
    again, none = site(tmp_path, f'look: {{colours: {{light: {{accent: "{one.should_be}"}}}}}}\n')
    assert none == ()
    assert again is not None
    assert contrast(one.should_be, "#f6f1e7") >= 4.5


def test_ground_on_which_ink_cannot_be_read_is_told_as_the_fault_of_the_ground(tmp_path: Path) -> None:
    _, found = site(tmp_path, 'look: {colours: {dark: {paper: "#9a9a9a"}}}\n')
    (one,) = found
    assert "on paper #9a9a9a on a dark screen is" in one.message
    assert "The nearest paper that would do is #" in one.message


def test_colour_is_read_in_the_scheme_for_which_it_is_meant(tmp_path: Path) -> None:
    look, found = site(tmp_path, 'look: {colours: {light: {accent: "#7A2F5B"}, dark: {accent: "#ebc"}}}\n')
    assert found == ()
    assert look is not None
    sheet = look.theme.files()["style.css"].decode()
    assert re.findall(r"--accent:(#\w+)", sheet) == ["#7a2f5b", "#eebbcc", "#000000"]
    assert sheet.index("#eebbcc") > sheet.index("prefers-color-scheme:dark")


def test_drawings_follow_the_colours_of_the_author(tmp_path: Path) -> None:
    look, found = site(tmp_path, 'look: {colours: {light: {ink: "#331100", cloth: "#ffeedd"}}}\n')
    assert found == ()
    assert look is not None
    assert "--ink:#331100" in look.theme.drawing_rules()
    assert "--cloth:#ffeedd" in look.theme.drawing_rules()
    assert "--ink:#221d17" in shipped_theme().drawing_rules()


@pytest.mark.parametrize(
    ("look", "said"),
    [
        (
            "look: {colours: {light: {accent: }}}",
            "4:26 empty-value: accent has no colour. Behind a space, # begins a remark, so a colour stands in quotes. "
            'Example: accent: "#1b4a80"',
        ),
        (
            "look: {colours: {light: {accent: red}}}",
            "4:34 wrong-kind: Expected a colour in quotes, # and six digits from 0 to 9 and a to f, found “red”. "
            'Example: accent: "#1b4a80"',
        ),
        (
            'look: {colours: {light: {accent: "#1b4a8"}}}',
            "4:35 wrong-kind: Expected a colour in quotes, # and six digits from 0 to 9 and a to f, found “#1b4a8”. "
            'Example: accent: "#1b4a80"',
        ),
        (
            'look: {colours: {light: {papr: "#ffffff"}}}',
            "4:33 look-unknown: The theme workroom has no colour “papr”. Did you mean paper?",
        ),
        (
            'look: {colours: {night: {paper: "#000000"}}}',
            "4:18 unknown-key: The part colours has no key “night”. Did you mean light?",
        ),
        (
            "look: {fonts: {headings: slap}}",
            "4:26 wrong-kind: Expected serif, old-style, slab, sans, humanist, rounded or mono, found “slap”. Example: headings: serif",
        ),
        (
            "look: {font: {headings: slab}}",
            "4:8 unknown-key: The look has no key “font”. Did you mean fonts?",
        ),
        (
            'look: {colours: {light: {ink: "#1b4a8000"}}}',
            "4:32 look-contrast: ink is read on others, or others on it, so that nothing may show through it: write six digits.",
        ),
        (
            "look: blue",
            "4:7 wrong-kind: Expected colours, fonts and a logo, found “blue”. Example: "
            'look: {colours: {light: {accent: "#1b4a80"}}, fonts: {headings: slab}}',
        ),
    ],
)  # fmt: skip
def test_slip_in_the_look_is_told_with_its_place_and_an_example(tmp_path: Path, look: str, said: str) -> None:
    assert messages(site(tmp_path, look + "\n")[1]) == [said]


def test_fonts_are_written_into_the_style_sheet(tmp_path: Path) -> None:
    look, found = site(tmp_path, "look: {fonts: {headings: slab, text: humanist}}\n")
    assert found == ()
    assert look is not None
    sheet = look.theme.files()["style.css"].decode()
    assert "--headings:Rockwell," in sheet
    assert "--text:Seravek," in sheet
    assert "--labels:system-ui," in sheet
    assert "--d-font:var(--labels)" in look.theme.drawing_rules()


# The logo


def picture(path: Path, width: int = 1200) -> None:
    hidden = PngImagePlugin.PngInfo()
    hidden.add_text("Comment", "taken at home")
    Image.new("RGB", (width, width // 3), "#7a2f5b").save(path, pnginfo=hidden)


def test_logo_stands_at_the_head_of_every_page_without_what_was_hidden_in_it(tmp_path: Path) -> None:
    root = tmp_path / "content"
    site(root, "look: {logo: {file: logo.png, shows: A reel of thread}}\n")
    picture(root / "logo.png")
    content = folder(root, "sizes: [S]\n", steps__01_dot_yaml=STEP)
    (root / "site.yaml").write_text(
        "title: Test\nauthor: Nobody\nlook: {logo: {file: logo.png, shows: A reel of thread}}\n", encoding="utf-8"
    )
    done = publish(content, tmp_path / "site", draft=False, progress=lambda *_: None)
    assert done.front is not None, messages(done.findings)
    for page in ("index.html", "tutorials/tee/index.html"):
        path = tmp_path / "site" / page
        (shown,) = BeautifulSoup(path.read_text(encoding="utf-8"), "html.parser").select(".site img")
        assert shown["alt"] == "A reel of thread"
        assert (shown["width"], shown["height"]) == ("480", "160")
        written = (path.parent / str(shown["src"])).read_bytes()
        assert b"taken at home" not in written
        assert b"taken at home" in (root / "logo.png").read_bytes()
    assert sorted(path.suffix for path in (tmp_path / "site" / "pictures").glob("logo-*")) in (
        [".jpg", ".webp"], [".png", ".webp"],
    )  # fmt: skip


@pytest.mark.parametrize(
    ("name", "content", "check", "says"),
    [
        ("logo.svg", b"<svg/>", "picture-broken", "SVG drawing, which is not taken as a logo: it may hold scripts"),
        ("logo.png", b"<svg xmlns='a'/>", "picture-broken", "is an SVG drawing"),
        ("logo.png", b"\x89PNG\r\n\x1a\ncut", "picture-broken", "is damaged"),
        ("logo.png", b"", "picture-broken", "is empty"),
        ("none.png", None, "picture-missing", "There is no file none.png in the content folder."),
        ("../logo.png", None, "picture-missing", "There is no file ../logo.png in the content folder."),
        ("/etc/hostname", None, "picture-missing", "There is no file /etc/hostname in the content folder."),
    ],
)
def test_logo_that_cannot_be_taken_is_told(
    tmp_path: Path, name: str, content: bytes | None, check: str, says: str
) -> None:
    root = tmp_path / "content"
    root.mkdir()
    picture(tmp_path / "logo.png")
    if content is not None:
        (root / name).write_bytes(content)
    look, found = site(root, f"look: {{logo: {{file: {name}, shows: A reel}}}}\n")
    (one,) = found
    assert (one.check, one.place.line, one.said) == (check, 4, name)
    assert says in one.message
    assert look is not None
    assert look.logo is None
    assert look.files == {}


def test_logo_needs_words_for_who_cannot_see_it(tmp_path: Path) -> None:
    _, found = site(tmp_path, "look: {logo: {file: logo.png}}\n")
    assert messages(found) == ["4:14 key-missing: The logo lacks shows. Example: shows: A reel of thread"]


def test_look_is_checked_before_anything_is_published(tmp_path: Path) -> None:
    site(tmp_path / "content", 'look: {colours: {light: {accent: "#d9a441"}}}\n')
    content = folder(tmp_path / "content", "sizes: [S]\n", steps__01_dot_yaml=STEP)
    (tmp_path / "content" / "site.yaml").write_text(
        'title: Test\nauthor: Nobody\nlook: {colours: {light: {accent: "#d9a441"}}}\n', encoding="utf-8"
    )
    assert [each.check for each in look_findings(review(content), content)] == ["look-contrast"]
    done = publish(content, tmp_path / "site", draft=False, progress=lambda *_: None)
    assert done.front is None
    assert [each.check for each in done.findings] == ["look-contrast"]
    assert publish(content, tmp_path / "site", draft=True, progress=lambda *_: None).front is not None
