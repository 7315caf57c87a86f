"""Whatever stands in an author's files: findings, never a traceback, and never a half-read verdict of nothing wrong."""

from __future__ import annotations

import random
import shutil
from pathlib import Path

import pytest
from content import EXAMPLE
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from sitegen.checks import review
from sitegen.findings import as_data, as_text
from sitegen.reading import ContentFolder

FILES = sorted(
    path.relative_to(EXAMPLE).as_posix()
    for path in EXAMPLE.rglob("*")
    if path.suffix in (".yaml", ".csv") and "two-cloth-tote" in path.as_posix()
)
FILES += ["site.yaml", "glossary.yaml", "tutorials/boxy-tee/tutorial.yaml", "tutorials/boxy-tee/sizes.csv"]


@pytest.fixture(scope="module")
def copy(tmp_path_factory: pytest.TempPathFactory) -> Path:
    root = tmp_path_factory.mktemp("copy") / "content"
    shutil.copytree(EXAMPLE, root, ignore=shutil.ignore_patterns("*.png", "pull-on-trousers"))
    return root


def looked_at(root: Path) -> None:
    folder = ContentFolder(root, "content")
    found = review(folder).findings
    as_text(found, folder.source_line)
    as_data(found)
    assert all(finding.message.strip() and finding.place.line >= 1 for finding in found)


@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(file=st.sampled_from(FILES), seed=st.integers(0, 10**9))
def test_file_with_pieces_cut_out_moved_or_replaced(file: str, seed: int, copy: Path) -> None:
    path = copy / file
    before = path.read_text(encoding="utf-8")
    chance = random.Random(seed)
    text = before
    for _ in range(chance.randint(1, 4)):
        start = chance.randrange(len(text) + 1)
        end = min(len(text), start + chance.choice([0, 1, 1, 3, 10, 80]))
        pool = ["", "{", "}", "[", "]", ":", ": ", "- ", "'", '"', "\t", "0", "-1", "1/0", "½", "\n", "#", "&a", "*a",
                "\x00", "é", "🧵", "{a.b}", "9" * 30, before[chance.randrange(len(before)) :][:20]]  # fmt: skip
        text = text[:start] + chance.choice(pool) + text[end:]
    try:
        path.write_text(text, encoding="utf-8")
        looked_at(copy)
    finally:
        path.write_text(before, encoding="utf-8")


VALUES = ["", "0 in", "-1 in", "1/0 in", "99999 in", "x", "[]", "{}", "[[1]]", "{a: 1}", "null", "~", "1e9 in", "0%",
          "100%", "-5%", "{self.self}", "'{neckband.ratio}'", "'{seam_allowance}'", "1 in (1 cm)", "true", "2026-01-01",
          "'{main.stretch_across}'", "'{bust_round.ease}'"]  # fmt: skip


@settings(max_examples=80, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(line=st.integers(0, 200), value=st.sampled_from(VALUES))
def test_any_value_replaced_by_an_odd_one(line: int, value: str, copy: Path) -> None:
    path = copy / "tutorials/boxy-tee/tutorial.yaml"
    before = path.read_text(encoding="utf-8")
    lines = before.split("\n")
    at = line % len(lines)
    key, colon, _ = lines[at].partition(":")
    if not colon:
        return
    lines[at] = f"{key}: {value}"
    try:
        path.write_text("\n".join(lines), encoding="utf-8")
        looked_at(copy)
    finally:
        path.write_text(before, encoding="utf-8")


@pytest.mark.parametrize("missing", ["site.yaml", "glossary.yaml", "tutorials", "tutorials/boxy-tee/steps"])
def test_whatever_is_missing(missing: str, copy: Path, tmp_path: Path) -> None:
    root = tmp_path / "content"
    shutil.copytree(copy, root)
    path = root / missing
    shutil.rmtree(path) if path.is_dir() else path.unlink()
    looked_at(root)
