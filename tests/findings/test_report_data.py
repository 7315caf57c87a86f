"""Findings as data for a program, and the line that counts them."""

from __future__ import annotations

import json

import pytest

from sitegen.findings import Finding, Place, Severity, as_data, count_line

FULL = Finding(
    "band-not-shorter",
    Severity.WRONG,
    Place("tutorials/lantern-tee/tutorial.yaml", 21, 35, 39),
    "The band is as long as its opening.",
    said="100%",
    should_be="85%",
    working=("opening 20 in × ratio 85% = 17 in", "a knit band is shorter than its opening"),
    size="M",
)
BARE = Finding("title-missing", Severity.HINT, Place("site.yaml"), "There is no title.")


def test_a_finding_as_data_has_these_keys_and_no_others() -> None:
    assert as_data([FULL]) == [
        {
            "check": "band-not-shorter",
            "severity": "wrong",
            "file": "tutorials/lantern-tee/tutorial.yaml",
            "line": 21,
            "column": 35,
            "size": "M",
            "said": "100%",
            "should_be": "85%",
            "working": ["opening 20 in × ratio 85% = 17 in", "a knit band is shorter than its opening"],
            "message": "The band is as long as its opening.",
        }
    ]


def test_the_keys_are_always_there_and_in_the_same_order() -> None:
    keys = ["check", "severity", "file", "line", "column", "size", "said", "should_be", "working", "message"]
    assert [list(one) for one in as_data([FULL, BARE])] == [keys, keys]


def test_what_is_not_known_is_null_and_no_working_is_an_empty_list() -> None:
    (data,) = as_data([BARE])
    assert (data["size"], data["said"], data["should_be"], data["working"]) == (None, None, None, [])


def test_the_data_can_be_written_as_json() -> None:
    assert json.loads(json.dumps(as_data([FULL, BARE]))) == as_data([FULL, BARE])


def test_findings_keep_their_order_as_data() -> None:
    assert [one["check"] for one in as_data([BARE, FULL, BARE])] == [
        "title-missing",
        "band-not-shorter",
        "title-missing",
    ]


def of(*severities: Severity) -> list[Finding]:
    return [Finding("check", severity, Place("site.yaml"), "Message.") for severity in severities]


@pytest.mark.parametrize(
    ("severities", "line"),
    [
        ((), "2 tutorials: nothing wrong"),
        ((Severity.WRONG,), "2 tutorials: 1 wrong"),
        ((Severity.HINT,), "2 tutorials: 1 hint"),
        ((Severity.HINT, Severity.HINT), "2 tutorials: 2 hints"),
        ((Severity.DOUBTFUL, Severity.DOUBTFUL), "2 tutorials: 2 doubtful"),
        (
            (Severity.HINT, Severity.WRONG, Severity.DOUBTFUL, Severity.WRONG),
            "2 tutorials: 2 wrong, 1 doubtful, 1 hint",
        ),
    ],
)
def test_the_last_line_counts_by_severity_from_the_worst(severities: tuple[Severity, ...], line: str) -> None:
    assert count_line(of(*severities), looked_at="2 tutorials") == line
