"""Sums in texts whose terms are references and typed lengths."""

from __future__ import annotations

import time
from pathlib import Path

import pytest
from content import reviewed

from sitegen.findings import Finding
from sitegen.prose import find_mixed_sums

TOP = (
    "sizes: [S, M]\nseam_allowance: 1/2 in\n"
    "fabrics: {main: {name: linen, structure: woven}}\n"
    "pieces:\n"
    "  a: {cut: 1, fabric: main, edges: {x: 5 in, third: 3.33 in, far: 85 mm, thin: 8 mm, by_size: '5, 6 in'}}\n"
    "  b: {cut: 1, fabric: main, edges: {y: 6 in}}\n"
)


def told(root: Path, text: str) -> list[Finding]:
    found = reviewed(root, TOP, steps__01_dot_yaml=f"title: Cut\ntext: |\n  {text}\n").findings
    sums = ("sum-with-references", "told-sum", "written-sum", "sum-before-number")
    return [each for each in found if each.check in sums]


@pytest.mark.parametrize(
    ("text", "said", "right"),
    [
        ("{a.x} + 1/2 in + {b.y} = 12 in.", "12 in", "11 1/2 in"),
        ("The strip is {a.x} − 1/2 in = 5 in long.", "5 in", "4 1/2 in"),
        ("Cut 1/2 in + {a.x} + 1/2 in = 7 in.", "7 in", "6 in"),
        ("{a.x} + 2 × 1/2 in = 6 1/2 in", "6 1/2 in", "6 in"),
        ("{a.x} + 2 × {seam_allowance} + {b.y} = 13 in", "13 in", "12 in"),
        ("{a.x} + {b.y} = 30 cm", "30 cm", "28 cm"),
        ("{a.x} plus 1/2 in plus {b.y} makes 12 in", "12 in", "11 1/2 in"),
        ("{a.x} + {b.y}, which is 12 in", "12 in", "11 in"),
        ("{a.x} + {b.y} - 1/2 in = 12 in", "12 in", "10 1/2 in"),
        ("{a.x} + 1/2 in = {b.y}", "", ""),
        ("{a.thin} × 100 = 1 m", "1 m", "0.8 m"),
        ("{a.far} × 40 = 134 in", "134 in", "133 7/8 in"),
        ("{a.far} + 5 mm = 9.5 cm", "9.5 cm", "9 cm"),
    ],
)
def test_one_that_does_not_add_up_is_wrong_at_its_result(tmp_path: Path, text: str, said: str, right: str) -> None:
    (one,) = told(tmp_path, text)
    assert (one.check, one.said, one.should_be) == ("sum-with-references", said, right)


@pytest.mark.parametrize(
    "text",
    [
        "{a.x} + 1/2 in + {b.y} = 11 1/2 in.",
        "{a.x} + 2 × 1/2 in = {b.y}",
        "{a.x} + {b.y} = 28 cm",
        "{a.third} + 1/2 in = 3 7/8 in",
        "{a.thin} × 100 = 0.8 m",
        "{a.far} + 1/2 in = 3 7/8 in",
        "{a.far} × 3 = 25.5 cm",
        "{a.x} × 2 = 10 in",
        "Twice {a.x} + {nowhere.at_all} = 7 in",
        "- {a.x}\n  - 1/2 in = 12 in",
        "The seam (3 in + {a.x} more) is 1/2 in + {b.y} = 6 1/2 in",
        "Of the hem + {a.x} + 1/2 in = 9 in",
        "Half of {a.x} + 1 in is 3 1/2 in.",
        "Twice {a.x} + 1 in = 11 in.",
        "{a.x} plus 1/2 in is 1/4 in too much, {a.x} minus 1 in is 1 in short.",
        "In size M, {a.by_size} + 1/2 in = 6 1/2 in.",
        "{a.by_size} + 1/2 in is 5 1/2 in in size S and 6 1/2 in in size M.",
        "{a.by_size} + 1/2 in is 5 1/2 in or 6 1/2 in.",
        "{a.by_size} + 1 in = 6/7 in.",
        "{a.by_size} + 1 in = 6 in (7 in in size M).",
    ],
)
def test_one_that_adds_up_or_is_not_read_whole_is_silent(tmp_path: Path, text: str) -> None:
    assert told(tmp_path, text) == []


def test_the_size_that_its_sentence_names_is_meant(tmp_path: Path) -> None:
    (one,) = told(tmp_path, "Take {a.by_size}. In size S, {a.by_size} + 1/2 in = 6 1/2 in. In size M it is more.")
    assert (one.said, one.size, one.working) == ("6 1/2 in", "S", ("size S: 5 in + 1/2 in = 5 1/2 in",))


def test_a_size_in_which_it_does_not_add_up_is_named(tmp_path: Path) -> None:
    (one,) = told(tmp_path, "{a.by_size} + 1/2 in = 5 1/2 in")
    assert one.message == (
        "{a.by_size} + 1/2 in makes 6 1/2 in in size M, not 5 1/2 in. Mend the result, or the term that slipped."
    )
    assert (one.size, one.should_be, one.working) == ("M", "", ("size M: 6 in + 1/2 in = 6 1/2 in",))


@pytest.mark.parametrize("piece", ["1+", "{a.x} + ", "1 plus ", "{a.x} + 1 in is ", "{a.x}+1, "])
def test_time_grows_with_the_text_and_no_faster(piece: str) -> None:
    """Sixteen times the text may take about sixteen times as long: forty would show a square in it."""

    def seconds(times: int) -> float:
        best = 1e9
        for _ in range(2):
            start = time.process_time()
            list(find_mixed_sums(piece * times))
            best = min(best, time.process_time() - start)
        return best

    few = seconds(500)
    assert seconds(8000) < 40 * few + 0.05
