"""Lengths typed in the texts of a tutorial, bound by their words to its numbers."""

from __future__ import annotations

from pathlib import Path

import pytest
from content import folder

from sitegen.checks import review
from sitegen.findings import Finding
from sitegen.reading import ContentFolder

TUTORIAL = (
    "sizes: [S, M]\nseam_allowance: 3/8 in\n"
    "fabrics: {rib: {name: rib, structure: knit, stretch_across: 80%}}\n"
    "pieces: {arm: {cut: 2, fabric: rib, edges: {wrist: '10, 11 in', lower: 20 in}}}\n"
    "bands: {cuff: {opening: [arm.wrist], ratio: 80%, finished_width: 2 in, fabric: rib}}\n"
    "hems: {lower: {edges: [arm.lower], turn: 1 in, stitch: zigzag}}\n"
)


def found(tmp_path: Path, text: str, *checks: str) -> list[Finding]:
    folder(tmp_path, TUTORIAL, **{"steps/01.yaml": f"title: Sew\ntext: {text}\n"})
    result = review(ContentFolder(tmp_path, "mine"))
    return [each for each in result.findings if each.check in (checks or ("said-otherwise", "literal-number"))]


@pytest.mark.parametrize(
    ("text", "said", "should_be"),
    [
        ("Sew it with a 5/8 in seam allowance.", "5/8 in", ""),
        ("The seam allowance is 1/2 in.", "1/2 in", ""),
        ("In size S cut the cuff 8 1/2 in long.", "8 1/2 in", "8 3/4 in"),
        ("Cut the cuff 4 1/2 in wide.", "4 1/2 in", "4 3/4 in"),
        ("Press up a hem allowance of 2 in.", "2 in", ""),
    ],
)  # fmt: skip
def test_length_that_is_another_in_the_tutorial_is_wrong(tmp_path: Path, text: str, said: str, should_be: str) -> None:
    (one,) = found(tmp_path, text, "said-otherwise")
    assert one.said == said
    if should_be:
        assert one.should_be == should_be


@pytest.mark.parametrize(
    ("text", "reference"),
    [
        ("Sew it with a 3/8 in seam allowance.", "{seam_allowance}"),
        ("In size M cut the cuff 9 1/2 in long.", "{cuff.cut_length}"),
        ("Press up a hem allowance of 1 in.", "{lower.allowance}"),
    ],
)
def test_right_length_gets_the_reference_to_put_instead(tmp_path: Path, text: str, reference: str) -> None:
    (one,) = found(tmp_path, text)
    assert (one.check, one.should_be) == ("literal-number", reference)


@pytest.mark.parametrize(
    "text",
    [
        "Trim the seam allowances to 1/8 in.",
        "Sew 1/8 in from the edge, then cut the thread 3 in long.",
        "Cut a strip 12 in long for the loop of the cuff.",
        "Use {seam_allowance} seam allowances.",
    ],
)
def test_words_that_name_nothing_bind_nothing(tmp_path: Path, text: str) -> None:
    assert found(tmp_path, f'"{text}"') == []


def test_length_right_in_one_size_only_is_told_so(tmp_path: Path) -> None:
    (one,) = found(tmp_path, "Cut the cuff 8 3/4 in long.", "said-otherwise")
    assert "differs from size to size" in one.message
