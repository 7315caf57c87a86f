"""Places in files, and the collector that keeps each finding once and in reading order."""

from __future__ import annotations

from itertools import permutations

import pytest

from sitegen.findings import Collector, Finding, Place, Severity

STEP = "tutorials/lantern-tee/steps/01-cut.yaml"


def finding(place: Place, severity: Severity = Severity.WRONG, check: str = "sum-wrong", **more: str) -> Finding:
    return Finding(check, severity, place, more.pop("message", "The sum is wrong."), **more)


def test_a_place_reads_as_file_line_and_column() -> None:
    assert str(Place(STEP, 12, 7, 15)) == f"{STEP}:12:7"
    assert str(Place(STEP)) == f"{STEP}:1:1"


def test_places_are_in_order_of_file_line_and_column() -> None:
    in_order = [Place("a.yaml", 2, 1), Place("a.yaml", 10, 3), Place("a.yaml", 10, 12), Place("b.yaml", 1, 1)]
    for shuffled in permutations(in_order):
        assert sorted(shuffled) == in_order


def test_severities_are_in_order_from_the_worst() -> None:
    assert [severity.rank for severity in (Severity.WRONG, Severity.DOUBTFUL, Severity.HINT)] == [0, 1, 2]


def test_findings_come_back_in_reading_order_the_worst_first_at_one_place() -> None:
    in_order = [
        finding(Place("a.yaml", 2), Severity.HINT),
        finding(Place("a.yaml", 10, 3), Severity.WRONG, "a-check"),
        finding(Place("a.yaml", 10, 3), Severity.WRONG, "b-check", size="L"),
        finding(Place("a.yaml", 10, 3), Severity.WRONG, "b-check", size="M", message="A."),
        finding(Place("a.yaml", 10, 3), Severity.WRONG, "b-check", size="M", message="B."),
        finding(Place("a.yaml", 10, 3), Severity.DOUBTFUL, "a-check"),
        finding(Place("a.yaml", 10, 3), Severity.HINT, "a-check"),
        finding(Place("b.yaml"), Severity.WRONG),
    ]
    for start in range(len(in_order)):
        collector = Collector()
        collector.extend(reversed(in_order[start:] + in_order[:start]))
        assert collector.findings == tuple(in_order)


def test_the_same_finding_is_kept_once() -> None:
    collector = Collector()
    for _ in range(3):
        collector.add(finding(Place(STEP, 3)))
    assert collector.findings == (finding(Place(STEP, 3)),)
    assert collector.count(Severity.WRONG) == 1


def test_findings_that_differ_in_anything_are_kept_apart() -> None:
    collector = Collector()
    collector.extend([finding(Place(STEP, 3)), finding(Place(STEP, 3), size="M"), finding(Place(STEP, 4))])
    assert len(collector.findings) == 3


def test_findings_are_counted_by_severity() -> None:
    collector = Collector()
    collector.extend(finding(Place(STEP, line), Severity.HINT) for line in range(1, 4))
    collector.add(finding(Place(STEP), Severity.DOUBTFUL))
    assert [collector.count(severity) for severity in Severity] == [0, 1, 3]


def test_only_what_is_wrong_stops_a_release() -> None:
    collector = Collector()
    assert not collector.any_wrong
    collector.add(finding(Place(STEP), Severity.DOUBTFUL))
    collector.add(finding(Place(STEP), Severity.HINT))
    assert not collector.any_wrong
    collector.add(finding(Place(STEP)))
    assert collector.any_wrong


def test_a_wrong_finding_can_be_added_in_one_breath() -> None:
    collector = Collector()
    collector.wrong(
        "sum-wrong",
        Place(STEP, 3, 7, 16),
        "The sum is wrong.",
        said="17 1/2 in",
        should_be="17 3/4 in",
        working=("17 in + 3/4 in = 17 3/4 in",),
        size="M",
    )
    assert collector.findings == (
        Finding(
            check="sum-wrong",
            severity=Severity.WRONG,
            place=Place(STEP, 3, 7, 16),
            message="The sum is wrong.",
            said="17 1/2 in",
            should_be="17 3/4 in",
            working=("17 in + 3/4 in = 17 3/4 in",),
            size="M",
            unread=False,
        ),
    )
    assert not collector.any_unread


def test_a_file_that_was_not_read_is_remembered() -> None:
    collector = Collector()
    collector.wrong("file-unreadable", Place(STEP), "This file is not text.", unread=True)
    assert collector.any_unread
    assert collector.any_wrong


def test_a_finding_cannot_be_changed_afterwards() -> None:
    with pytest.raises(AttributeError):
        finding(Place(STEP)).message = "Another."  # type: ignore[misc]
