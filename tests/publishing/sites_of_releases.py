"""Releases of one small tutorial into one folder, a day each, for tests of what is told about them."""

from __future__ import annotations

import json
import re
from datetime import date
from pathlib import Path
from typing import Any

from bs4 import BeautifulSoup, Tag
from content import folder

from sitegen.publishing import Outcome, publish

FIRST, SECOND, THIRD = date(2026, 5, 3), date(2026, 6, 14), date(2026, 11, 29)
ADDRESS = "https://example.org"
TEE = (
    "sizes: [S, M]\nseam_allowance: 3/8 in\n"
    "fabrics: {rib: {name: rib, structure: knit, stretch_across: 80%, width: 40 in, buy: 1/2 yd}}\n"
    "pieces: {front: {cut: 1, fabric: rib, edges: {neckline: '20, 22 in', hem: 30 in}}}\n"
    "bands: {neckband: {opening: [front.neckline], ratio: RATIO, finished_width: 1 in, fabric: rib}}\n"
)
STEP = (
    "title: Cut the band\nminutes: 20\ntext: |\n  Cut the neckband {neckband.cut_length} long, {neckband.ratio} of the neckline, sew it on "
    "and hem WORD.\ncut: [front, neckband]\njoin: [{edges: [neckband, front.neckline], stitch: zigzag}]\n"
    "finish: [front.hem]\n"
)


def release(
    root: Path,
    day: date,
    *,
    ratio: str = "80%",
    word: str = "it",
    text: str = "",
    address: str = ADDRESS,
    draft: bool = False,
    theme: str = "workroom",
) -> Outcome:
    """Publish the tutorial, as it is with these words, into ``root/site`` on this day."""
    content = folder(
        root / "content", text or TEE.replace("RATIO", ratio), steps__01_dot_yaml=STEP.replace("WORD", word)
    )
    named = f"address: {address}\n" if address else ""
    (root / "content" / "site.yaml").write_text(
        f"title: Test site\nauthor: Nobody\ntheme: {theme}\n{named}", encoding="utf-8"
    )
    done = publish(content, root / "site", draft=draft, progress=lambda *_: None, today=lambda: day)
    assert done.front is not None, [each.message for each in done.findings]
    return done


def soup(root: Path, path: str) -> BeautifulSoup:
    """A page of the site."""
    return BeautifulSoup((root / "site" / path).read_text(encoding="utf-8"), "html.parser")


def words(tag: Tag | None) -> str:
    """What can be read in an element, in one line."""
    assert tag is not None
    return re.sub(r" (?=[:,.)])|(?<=\() ", "", " ".join(tag.get_text(" ").split()))


def stored(root: Path) -> dict[str, Any]:
    """The record of the site as plain JSON."""
    data: dict[str, Any] = json.loads((root / "site" / "numbers.json").read_text(encoding="utf-8"))
    return data


def files(root: Path) -> dict[str, bytes]:
    """Every file of the site."""
    site = root / "site"
    return {path.relative_to(site).as_posix(): path.read_bytes() for path in site.rglob("*") if path.is_file()}
