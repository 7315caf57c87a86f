"""Commas without brackets where a list may stand: read as one thing by YAML, told by the author's program."""

from __future__ import annotations

from pathlib import Path

import pytest
from content import computed, reviewed

from sitegen.findings import Finding, Severity

PIECES = (
    "seam_allowance: 3/8 in\nfabrics: {main: {name: linen, structure: woven}}\n"
    "pieces:\n  front: {cut: 1, fabric: main, edges: {side: 14 in}}\n"
    "  back: {cut: 1, fabric: main, edges: {side: 14 in}}\n"
)
STEP = "title: Sew\ntext: Sew.\n"
DOUBTFUL, WRONG = Severity.DOUBTFUL, Severity.WRONG


def told(findings: tuple[Finding, ...], check: str) -> list[tuple[Severity, str, str]]:
    return [(each.severity, each.said, each.should_be) for each in findings if each.check == check]


@pytest.mark.parametrize(("key", "read"), [("tools", ["scissors", "pins", "iron"]), ("needs", ["scissors,pins, iron"])])
def test_words_with_commas_are_doubtful_and_only_tools_are_parted(tmp_path: Path, key: str, read: list[str]) -> None:
    found, findings = computed(tmp_path, "", steps__01_dot_yaml=f"{STEP}{key}: scissors,pins, iron\n")
    assert told(findings, "list-without-brackets") == [(DOUBTFUL, "scissors,pins, iron", "[scissors, pins, iron]")]
    assert [each.text for each in getattr(found.tutorial.steps[0], key)] == read
    (said,) = (each.message for each in findings if each.check == "list-without-brackets")
    assert said.endswith("in square brackets: [scissors, pins, iron]. If it is one, put it into brackets alone.")


@pytest.mark.parametrize("text", ["tools: scissors, pins\n", "supplies: thread, pins\n"])
def test_those_of_the_tutorial_too(tmp_path: Path, text: str) -> None:
    assert len(told(computed(tmp_path, text)[1], "list-without-brackets")) == 1


def test_tools_in_a_sentence_are_found_where_steps_ask_for_them(tmp_path: Path) -> None:
    found = reviewed(tmp_path, "tools: scissors, pins, iron\n", steps__01_dot_yaml=f"{STEP}tools: [pins, iron]\n")
    assert "tool-unlisted" not in {each.check for each in found.findings}


@pytest.mark.parametrize(
    "value",
    [
        "[scissors, pins]", "scissors", '["the band, pinned in quarters"]', "elastic 1,5 cm wide",
        "pins (long, with heads)", "{en: [pins, iron]}",
    ],
)  # fmt: skip
def test_what_is_a_list_or_one_thing_is_not_told(tmp_path: Path, value: str) -> None:
    findings = computed(tmp_path, "", steps__01_dot_yaml=f"{STEP}needs: {value}\n")[1]
    assert told(findings, "list-without-brackets") == []


def test_what_needs_quotation_marks_in_a_list_gets_them(tmp_path: Path) -> None:
    findings = computed(tmp_path, "", steps__01_dot_yaml=STEP + "needs: a 'top', the rib [cut]\n")[1]
    assert told(findings, "list-without-brackets") == [
        (DOUBTFUL, "a 'top', the rib [cut]", "[a 'top', 'the rib [cut]']")
    ]


def test_no_text_is_put_where_it_would_land_inside_of_quotation_marks(tmp_path: Path) -> None:
    findings = computed(tmp_path, "", steps__01_dot_yaml=STEP + 'tools: "scissors, pins"\n')[1]
    assert told(findings, "list-without-brackets") == [(DOUBTFUL, "", "")]


def test_each_language_is_looked_at(tmp_path: Path) -> None:
    home = tmp_path / "folder"
    text = STEP + "tools: {en: 'pins, iron', es: 'alfileres, plancha'}\n"
    found = reviewed(home, "", steps__01_dot_yaml=text).findings
    assert [each.place.column for each in found if each.check == "list-without-brackets"] == [14, 32]


@pytest.mark.parametrize(
    ("key", "value", "listed"),
    [
        ("cut", "front, back", "[front, back]"),
        ("finish", "front.side, back.side", "[front.side, back.side]"),
        ("join", "[{edges: 'front.side, back.side', stitch: straight}]", ""),
        ("cautions", "pins, iron", "[pins, iron]"),
    ],
)
def test_names_with_commas_are_wrong_and_read_as_the_list_that_they_are(
    tmp_path: Path, key: str, value: str, listed: str
) -> None:
    found, findings = computed(tmp_path, PIECES, steps__01_dot_yaml=f"{STEP}{key}: {value}\n")
    assert [(each.check, each.severity, each.should_be) for each in findings] == [("wrong-kind", WRONG, listed)]
    step = found.tutorial.steps[0]
    assert len({"cut": step.cuts, "finish": step.finishes, "join": step.joins, "cautions": step.cautions}[key]) == (
        1 if key == "join" else 2
    )
    assert [len(each.chains) for each in step.joins] == ([2] if key == "join" else [])


def test_edges_of_an_opening_too(tmp_path: Path) -> None:
    band = "bands: {band: {opening: 'front.side, back.side', ratio: 80%, finished_width: 1 in, fabric: main}}\n"
    found, findings = computed(tmp_path, PIECES + band)
    assert [each.check for each in findings if each.severity is WRONG] == ["wrong-kind"]
    assert len(found.tutorial.bands["band"].front) == 1
