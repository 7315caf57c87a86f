"""Pages of small tutorials with everything that belongs to a tutorial as a whole, laid into a folder for a browser."""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from content import computed

from sitegen.publishing.drawings import DrawingFiles
from sitegen.publishing.packed import packed_page
from sitegen.publishing.render import render_tutorial
from sitegen.publishing.terms import Terms
from sitegen.publishing.themes import shipped_theme
from sitegen.publishing.tutorial_page import tutorial_page
from sitegen.publishing.views import SiteView, TutorialView
from sitegen.quantities import System
from sitegen.tutorial import Computed

CHROMIUM = shutil.which("chromium") or shutil.which("chromium-browser")
TEE = (
    "sizes: [S, M, L]\n"
    "body: {bust: '34, 36, 38 in', waist: '26, 28, 30 in'}\n"
    "fabrics: {main: {name: jersey, structure: knit, stretch_across: 40%, width: 60 in, buy: 2 yd},"
    " spare: {name: linen, structure: woven, width: 50 in}}\n"
    "pieces: {front: {cut: 1 on fold, fabric: main, length: 20 in, width: '17, 18, 19 in',"
    " edges: {chest: '19, 20, 21 in', side: 15 in}},"
    " back: {cut: 1 on fold, fabric: main, length: 20 in, width: '17, 18, 19 in',"
    " edges: {chest: '19, 20, 21 in', side: 15 in}},"
    " pocket: {cut: 1, fabric: main, length: 6 in, width: 6 in, edges: {top: 6 in}}}\n"
    "girths: {round: {edges: [front.chest, back.chest], body: bust}}\n"
    "seam_allowance: 3/8 in\n"
)
STEPS = {
    "steps__01_dot_yaml": "title: Cut out\nminutes: 20\ntext: Cut.\ncut: [front, back, pocket]\n",
    "steps__02_dot_yaml": "title: Sew the sides\nminutes: 30\ntext: Sew.\n"
    "join: [{edges: [front.side, back.side], stitch: zigzag}]\n",
    "steps__03_dot_yaml": "title: Neaten the pocket\nminutes: 10\ntext: Press.\nfinish: [pocket.top]\n",
}


def view_of(found: Computed, files: DrawingFiles, first: System = System.INCHES, language: str = "en") -> TutorialView:
    """The page of a tutorial in a site without anything else."""
    site = SiteView(title="Test site", author="Nobody", glossary=False, units_first=first, language=language)
    return tutorial_page(found, site, "../../", lambda photo: None, files, Terms(()))


def lay_out(
    root: Path, text: str = TEE, first: System = System.INCHES, steps: dict[str, str] = STEPS, language: str = "en"
) -> tuple[Path, Computed]:
    """The page of a tutorial in a folder, with its drawings and its theme."""
    found, _ = computed(root / "content", text, **steps)
    theme = shipped_theme()
    files = DrawingFiles(theme.drawing_rules())
    html = packed_page(render_tutorial(view_of(found, files, first, language)))
    site = root / "site"
    page = site / "tutorials" / "tee" / "index.html"
    for path, content in {
        page: html.encode("utf-8"),
        **{site / path: content for path, content in files.files().items()},
        **{site / "theme" / path: content for path, content in theme.files().items()},
    }.items():
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(content)
    return page, found


@contextmanager
def chromium(browsers: Any) -> Iterator[Any]:
    """A running browser without a window."""
    with browsers.sync_playwright() as playwright:
        running = playwright.chromium.launch(
            executable_path=CHROMIUM, args=["--no-sandbox", "--disable-gpu", "--disable-background-networking"]
        )
        yield running
        running.close()
