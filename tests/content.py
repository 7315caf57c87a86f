"""Small content folders for tests, and what was found in them."""

from __future__ import annotations

from pathlib import Path

from sitegen.checks import Review, review
from sitegen.findings import Collector, Finding
from sitegen.reading import ContentFolder
from sitegen.tutorial import Computed, compute
from sitegen.tutorial.build import tutorial

EXAMPLE = Path(__file__).parent.parent / "content_example"
HEAD = "title: Test tee\nsummary: A tee for tests.\nmeasured_in: inches\n"


def folder(root: Path, text: str, *, head: str = HEAD, **files: str) -> ContentFolder:
    """A content folder with one tutorial ``tee``; further files by their name with ``__`` for ``/``."""
    home = root / "tutorials" / "tee"
    home.mkdir(parents=True, exist_ok=True)
    (root / "site.yaml").write_text("title: Test site\nauthor: Nobody\n", encoding="utf-8")
    (home / "tutorial.yaml").write_text(head + text, encoding="utf-8")
    for name, content in files.items():
        path = home / name.replace("__", "/").replace("_dot_", ".")
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(content, encoding="utf-8")
    return ContentFolder(root, "folder")


def computed(root: Path, text: str, **files: str) -> tuple[Computed, tuple[Finding, ...]]:
    """The numbers of a tutorial and what reading and computing had to say."""
    collector = Collector()
    found = tutorial(folder(root, text, **files), "tutorials/tee", collector)
    assert found is not None, [each.message for each in collector.findings]
    return compute(found, collector), collector.findings


def reviewed(root: Path, text: str, **files: str) -> Review:
    """Everything that a check of the folder finds."""
    return review(folder(root, text, **files))


def messages(findings: tuple[Finding, ...]) -> list[str]:
    """Place, check and message of each finding, to be compared as text."""
    return [f"{each.place.line}:{each.place.column} {each.check}: {each.message}" for each in findings]
