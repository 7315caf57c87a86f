"""What a Markdown text says, read at the places of its file."""

from __future__ import annotations

import time

import pytest

from sitegen.prose import Kind, proofread, read, said_in_markdown


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("hem of 1 1/4&quot; (3.2 cm)", ["1 1/4&quot;", "3.2 cm"]),
        ('3 &frac12;" of &frac14;&Prime; elastic', ['3 &frac12;"', "&frac14;&Prime;"]),
        ("1&nbsp;1/2&nbsp;in (3.8&nbsp;cm)", ["1&nbsp;1/2&nbsp;in", "3.8&nbsp;cm"]),
        ("sew 5/8&#34; (1.5 cm)", ["5/8&#34;", "1.5 cm"]),
        ("sew 5/8&#x22; &ndash; 1 in", ["5/8&#x22; &ndash; 1 in"]),
        ('`5/8"` (1.5 cm)', ['5/8"', "1.5 cm"]),
        ('[5/8"](x.html) (1.5 cm)', ['5/8"', "1.5 cm"]),
        ('<b class="w-3 in">5/8"</b> (<i>1.5 cm</i>)', ['5/8"', "1.5 cm"]),
        ("see `cut(3 in)`, `12` and [page](4in.html)", []),
        ("a &copy;; b &nothing; &#10; 3&#10;in", []),
    ],
)
def test_lengths_are_cut_out_of_the_file(text: str, found: list[str]) -> None:
    said = said_in_markdown(text)
    assert len(said) == len(text)
    lengths = [one for one in read(said, lines_of=text) if one.kind is Kind.LENGTH]
    assert [one.text for one in lengths] == found
    assert [text[one.start : one.end] for one in lengths] == found
    assert [one.column - 1 for one in lengths] == [one.start for one in lengths]


@pytest.mark.parametrize(
    "text",
    [
        "5/8&quot; (2 cm)",
        '`5/8"` (2 cm)',
        '[5/8"](x.html) (2 cm)',
        '[5/8"](#seam) ([2 cm](x.html))',
        '5/8" <b>(2 cm)</b>',
        '<a href="x.html">5/8"</a> (2 cm)',
        '**5/8"** (**2 cm**)',
    ],
)
def test_a_wrong_pair_is_told_whatever_marks_stand_in_it(text: str) -> None:
    (found,) = proofread(said_in_markdown("Press.\n\n&nbsp;Sew " + text))
    assert (found.check, found.line) == ("unit-pair", 3)
    assert "1.6 cm" in found.should_be


def test_a_finding_behind_an_entity_stands_at_its_place_of_the_file() -> None:
    text = "Cut 10&quot; plus\n2&quot; and 1&quot;,\nso 14&quot; in all."
    (found,) = proofread(said_in_markdown(text), lines_of=text)
    assert (found.line, found.column, found.said) == (3, 4, "14&quot;")
    assert text[found.start : found.end] == found.said


@pytest.mark.parametrize("piece", ["&quot;", "&", "`5", "[5 in](", "<b ", "5 &frac12;", "[5", "</i>", "&#9999999;"])
def test_time_grows_with_the_text_and_no_faster(piece: str) -> None:
    """Sixteen times the text may take about sixteen times as long: forty would show a square in it."""

    def seconds(times: int) -> float:
        text = piece * times
        runs = []
        for _ in range(2):  # the tidying up of a long run of tests may fall into one
            begun = time.process_time()
            read(said_in_markdown(text), lines_of=text)
            runs.append(time.process_time() - begun)
        return min(runs)

    assert seconds(16 * 2000) < 40 * max(seconds(2000), 0.01)
