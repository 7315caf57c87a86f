"""Findings that an author accepts with a reason: listed and counted, never silent, and only where they were accepted."""

from __future__ import annotations

from pathlib import Path

from content import reviewed

from sitegen.findings import Severity

QUOTED = (
    "before_you_start: The rule says at most 25.75 in (64.8 cm) long.\n"
    "accept: [{check: unit-pair, said: 25.75 in (64.8 cm), reason: quoted from 16 CFR 1615.1}]\n"
)


def test_accepted_finding_is_listed_as_a_hint_with_its_reason(tmp_path: Path) -> None:
    """16 CFR 1615.1(c) prints 64.8 cm with 25.75 in, which is 65.4 cm."""
    found = reviewed(tmp_path, QUOTED)
    (finding,) = found.findings
    assert finding.severity is Severity.HINT
    assert finding.message.startswith("Accepted (quoted from 16 CFR 1615.1): 25.75 in is 65.5 cm, not 64.8 cm")
    assert not found.any_wrong


def test_same_slip_elsewhere_is_not_accepted(tmp_path: Path) -> None:
    found = reviewed(tmp_path, QUOTED, steps__01_dot_yaml="title: A\ntext: Cut 25.75 in (64.8 cm) long.\n")
    assert [each.severity for each in found.findings] == [Severity.WRONG, Severity.HINT]


def test_accepting_without_a_reason_is_refused(tmp_path: Path) -> None:
    found = reviewed(tmp_path, QUOTED.replace(", reason: quoted from 16 CFR 1615.1", ""))
    assert {each.check for each in found.findings} == {"key-missing", "unit-pair"}
