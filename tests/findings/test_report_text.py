"""Findings as text for a person: the whole printed text, and the carets under what was said."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import pytest

from sitegen.findings import Finding, Place, Severity, as_text

TUTORIAL = "tutorials/lantern-tee/tutorial.yaml"
LINES = {
    (TUTORIAL, 21): "  neckband: {opening: [front.neckline], ratio: 100%}",
    (TUTORIAL, 30): "    turn: 3/4 in",
    ("site.yaml", 1): "titel: Sewing with Ada",
}
FINDINGS = (
    Finding(
        "key-unknown",
        Severity.WRONG,
        Place("site.yaml", 1, 1, 6),
        "Unknown key “titel”; the nearest known one is “title”.",
        said="titel",
        should_be="title",
    ),
    Finding("address-missing", Severity.HINT, Place("site.yaml", 9), "Without an address there is no feed."),
    Finding(
        "band-not-shorter",
        Severity.WRONG,
        Place(TUTORIAL, 21, 48, 52),
        "The band is as long as its opening.",
        said="100%",
        should_be="85%",
        working=("opening 20 in × ratio 85% = 17 in", "shorter by 3 in"),
        size="M",
    ),
    Finding("hem-deep", Severity.DOUBTFUL, Place(TUTORIAL, 30, 11, 17), "The turn is deep for so flared an edge."),
)


def source(file: str, line: int) -> str:
    return LINES.get((file, line), "")


PLAIN = """\
site.yaml
  1:1  wrong  key-unknown
      Unknown key “titel”; the nearest known one is “title”.
      said: titel: Sewing with Ada
            ^^^^^
      put:  title
  9:1  hint  address-missing
      Without an address there is no feed.

tutorials/lantern-tee/tutorial.yaml
  21:48  wrong  band-not-shorter, size M
      The band is as long as its opening.
      said: neckband: {opening: [front.neckline], ratio: 100%}
                                                         ^^^^
      put:  85%
      how:  opening 20 in × ratio 85% = 17 in
            shorter by 3 in
  30:11  doubtful  hem-deep
      The turn is deep for so flared an edge.
      said: turn: 3/4 in
                  ^^^^^^
"""
COLOURED = """\
\x1b[1msite.yaml\x1b[0m
  1:1  \x1b[31mwrong\x1b[0m  key-unknown
      Unknown key “titel”; the nearest known one is “title”.
      said: titel: Sewing with Ada
            ^^^^^
      put:  \x1b[32mtitle\x1b[0m
  9:1  \x1b[36mhint\x1b[0m  address-missing
      Without an address there is no feed.

\x1b[1mtutorials/lantern-tee/tutorial.yaml\x1b[0m
  21:48  \x1b[31mwrong\x1b[0m  band-not-shorter, size M
      The band is as long as its opening.
      said: neckband: {opening: [front.neckline], ratio: 100%}
                                                         ^^^^
      put:  \x1b[32m85%\x1b[0m
      how:  opening 20 in × ratio 85% = 17 in
            shorter by 3 in
  30:11  \x1b[33mdoubtful\x1b[0m  hem-deep
      The turn is deep for so flared an edge.
      said: turn: 3/4 in
                  ^^^^^^
"""


def test_the_whole_report_in_plain_text() -> None:
    assert as_text(FINDINGS, source) == PLAIN


def test_the_whole_report_in_colour() -> None:
    assert as_text(FINDINGS, source, colour=True) == COLOURED


def test_no_findings_make_no_text() -> None:
    assert as_text((), source) == ""


def untranslated(file: str, line: int) -> Finding:
    return Finding("translation-missing", Severity.DOUBTFUL, Place(file, line, 8), "It has no translation into es.")


def test_what_is_said_of_many_places_is_said_once_behind_the_rest_with_every_line() -> None:
    """Four texts of one file and three of another lack a translation: seven alike, told after all else."""
    many = [
        *(untranslated("site.yaml", line) for line in (2, 3, 3, 7)),
        *(untranslated(TUTORIAL, line) for line in (1, 2, 30)),
    ]
    report = as_text(sorted((*FINDINGS, *many), key=lambda each: each.place), source)
    assert report == PLAIN + (
        "\ndoubtful  translation-missing, 7 times\n"
        "      It has no translation into es.\n"
        "  site.yaml, 4 times\n"
        "      lines 2, 3, 7\n"
        "  tutorials/lantern-tee/tutorial.yaml, 3 times\n"
        "      lines 1, 2, 30\n"
    )


def test_a_long_list_of_lines_is_wrapped() -> None:
    report = as_text([untranslated("site.yaml", line) for line in range(100, 160)], source)
    assert "\n      lines 100, 101, " in report
    assert max(map(len, report.split("\n"))) <= 100
    assert all(f"{line}" in report for line in range(100, 160))


def test_a_few_places_and_all_that_is_wrong_or_can_be_put_right_are_told_singly() -> None:
    few = [untranslated("site.yaml", line) for line in range(1, 7)]
    assert as_text(few, source).count("It has no translation") == 6
    wrong = [replace(each, severity=Severity.WRONG) for each in (*few, untranslated("site.yaml", 9))]
    assert as_text(wrong, source).count("It has no translation") == 7
    mended = [replace(each, should_be="this") for each in (*few, untranslated("site.yaml", 9))]
    assert as_text(mended, source).count("It has no translation") == 7


def marked(text: str, column: int, end_column: int = 0) -> tuple[str, str]:
    """The source line and the carets of one finding, as printed."""
    place = Place("draft.md", 1, column, end_column)
    found = Finding("check", Severity.WRONG, place, "Message.", should_be="put this")
    lines = as_text([found], lambda _file, _line: text).splitlines()
    assert lines[:3] == ["draft.md", f"  1:{column}  wrong  check", "      Message."]
    assert lines[5:] == ["      put:  put this"]
    assert lines[3].startswith("      said: ")
    return lines[3], lines[4]


def under(text: str, said: str) -> str:
    """What stands above the carets when the finding is about this part of the text; one column a letter."""
    start = text.index(said)
    line, carets = marked(text, start + 1, start + len(said) + 1)
    return "".join(char for char, caret in zip(line, carets, strict=False) if caret == "^")


LONG = "word " * 30 + "cut 17 1/2 in long " + "more " * 30


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("cut 17 1/2 in long", "17 1/2 in"),
        ("cut", "cut"),
        ("    cut 17 1/2 in long", "17 1/2 in"),
        ("    cut 17 1/2 in long", "cut"),
        ("⅜ in and ½ in ×", "½ in"),
        ("a" * 99 + "b", "b"),
        ("a" * 120 + "b", "b"),
        ("b" + "a" * 120, "b"),
        (LONG, "17 1/2 in"),
        (LONG, "word"),
        (" " * 300 + LONG, "17 1/2 in"),
        (" " * 300 + LONG, "word"),
        ("short " + "e" * 94, "e" * 94),
    ],
)
def test_the_carets_stand_under_what_was_said(text: str, said: str) -> None:
    assert under(text, said) == said


def test_a_line_longer_than_a_hundred_is_cut_around_the_place_and_says_so() -> None:
    line, _ = marked(LONG, LONG.index("17") + 1)
    shown = line.removeprefix("      said: ")
    assert shown.startswith("… ")
    assert shown.endswith(" …")
    assert len(shown) == 104
    assert shown.strip("… ") in LONG


def test_a_line_is_cut_only_where_there_is_more() -> None:
    assert marked("a" * 120, 1)[0] == "      said: " + "a" * 100 + " …"
    assert marked("a" * 120, 120)[0] == "      said: … " + "a" * 67
    assert marked("a" * 100, 100)[0] == "      said: " + "a" * 100
    assert marked("    " + "a" * 100, 104)[0] == "      said: " + "a" * 100


def test_the_carets_end_where_the_shown_line_ends() -> None:
    line, carets = marked("a" * 300, 1, 301)
    assert carets == "      " + " " * 6 + "^" * 100
    assert line.endswith("a …")


def test_a_tab_counts_as_one_column_and_shows_as_one_blank() -> None:
    line, carets = marked("\tcut\t3/8 in", 6, 12)
    assert line == "      said: cut 3/8 in"
    assert carets == "                ^^^^^^"


@pytest.mark.parametrize("char", ["\x1b", "\x00", "\x07", "\u200b", "\u202e", "\u2028", "\ud800", "\u00a0"])
def test_what_a_terminal_might_obey_is_shown_as_a_blank(char: str) -> None:
    line, carets = marked(f"a{char}b 3/8 in", 5, 11)
    assert line == "      said: a b 3/8 in"
    assert carets == "                ^^^^^^"


def test_no_text_of_a_finding_reaches_the_terminal_unseen() -> None:
    evil = "a\x1b[2Jb"
    found = Finding("check", Severity.HINT, Place(evil), evil, evil, evil, (evil,), evil)
    assert as_text([found], lambda _file, _line: evil) == (
        "a [2Jb\n"
        "  1:1  hint  check, size a [2Jb\n"
        "      a [2Jb\n"
        "      said: a [2Jb\n"
        "            ^\n"
        "      put:  a [2Jb\n"
        "      how:  a [2Jb\n"
    )


def test_several_lines_stay_under_their_labels() -> None:
    found = Finding("check", Severity.HINT, Place("a.md"), "One.\nTwo.", should_be="three\nfour", working=("5", "6"))
    assert as_text([found], lambda _file, _line: "") == (
        "a.md\n"
        "  1:1  hint  check\n"
        "      One.\n"
        "      Two.\n"
        "      put:  three\n"
        "            four\n"
        "      how:  5\n"
        "            6\n"
    )


def columns_of(carets: str) -> range:
    return range(len(carets) - len(carets.lstrip()), len(carets))


def test_wide_letters_take_two_columns() -> None:
    line, carets = marked("布布 3/8 in", 4, 10)
    assert line == "      said: 布布 3/8 in"
    assert columns_of(carets) == range(12 + 5, 12 + 11)
    _, carets = marked("in 布布 cut", 4, 6)
    assert columns_of(carets) == range(12 + 3, 12 + 7)
    _, carets = marked("🧵 cut", 3, 6)
    assert columns_of(carets) == range(12 + 3, 12 + 6)


def test_a_mark_on_a_letter_takes_no_column() -> None:
    _, carets = marked("cafe\u0301 3/8 in", 7, 13)
    assert columns_of(carets) == range(12 + 5, 12 + 11)
    _, carets = marked("\u0301", 1, 2)
    assert columns_of(carets) == range(12, 13)


@pytest.mark.parametrize("column", [1, 5, 6, 40, 100_000])
def test_a_place_behind_the_end_of_its_line_is_marked_at_the_end(column: int) -> None:
    _, carets = marked("abcd", column, column + 3)
    assert columns_of(carets) == (range(12, 15) if column == 1 else range(16, 17))


def test_a_place_in_the_indentation_keeps_the_indentation() -> None:
    line, carets = marked("    cut", 2)
    assert line == "      said:    cut"
    assert columns_of(carets) == range(12, 13)


@pytest.mark.parametrize("text", ["", "   ", "\t", "\n"])
def test_an_empty_line_is_not_shown(text: str) -> None:
    found = Finding("check", Severity.HINT, Place("a.md", 3), "Message.")
    assert as_text([found], lambda _file, _line: text) == "a.md\n  3:1  hint  check\n      Message.\n"


def test_a_line_end_is_not_shown() -> None:
    assert marked("cut 3/8 in\r\n", 5, 11)[0] == "      said: cut 3/8 in"


def test_the_line_is_asked_for_by_its_file_and_number() -> None:
    asked: list[tuple[str, int]] = []

    def asking(file: str, line: int) -> str:
        asked.append((file, line))
        return ""

    reader: Callable[[str, int], str] = asking
    as_text(FINDINGS, reader)
    assert asked == [("site.yaml", 1), ("site.yaml", 9), (TUTORIAL, 21), (TUTORIAL, 30)]


def test_place_that_goes_on_in_the_next_line_is_marked_to_the_end_of_its_own() -> None:
    line = "  half plus 4, so 31 and a half  "
    said = "31 and a half\ninches"
    finding = Finding("told-sum", Severity.DOUBTFUL, Place("step.yaml", 3, 19), "It makes 30.", said=said)
    shown = as_text([finding], lambda *_: line).splitlines()
    assert shown[3] == "      said: half plus 4, so 31 and a half"
    assert shown[4] == "                            ^^^^^^^^^^^^^"
    other = as_text([replace(finding, said="another text")], lambda *_: line).splitlines()
    assert other[4].strip() == "^"


def test_another_line_may_be_shown_than_that_of_the_file() -> None:
    finding = Finding("unit-pair", Severity.WRONG, Place("talk.vtt", 5, 40, 44), "It is 1 in.", said="2 cm")
    shown = as_text([finding], lambda *_: "<c> 2 cm</c>", shown=lambda _: ("cut 2 cm off", 4, 8)).splitlines()
    assert shown[1:] == [
        "  5:40  wrong  unit-pair",
        "      It is 1 in.",
        "      said: cut 2 cm off",
        "                ^^^^",
    ]
