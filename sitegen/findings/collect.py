"""Gathers every finding of a run, so that an author mends all in one go."""

from __future__ import annotations

from collections.abc import Iterable

from sitegen.findings.finding import Finding, Place, Severity


class Collector:
    """Takes findings as they come and gives them back in reading order, each once."""

    def __init__(self) -> None:
        self._found: dict[Finding, None] = {}

    def add(self, finding: Finding) -> None:
        """Keep a finding; the same one a second time changes nothing."""
        self._found.setdefault(finding)

    def extend(self, findings: Iterable[Finding]) -> None:
        """Keep several findings."""
        for finding in findings:
            self.add(finding)

    def wrong(
        self,
        check: str,
        place: Place,
        message: str,
        *,
        said: str = "",
        should_be: str = "",
        working: tuple[str, ...] = (),
        size: str = "",
        unread: bool = False,
    ) -> None:
        """Keep a finding that stops a release."""
        self.add(Finding(check, Severity.WRONG, place, message, said, should_be, working, size, unread))

    @property
    def findings(self) -> tuple[Finding, ...]:
        """All of them by file, line and column, the worst first where places are the same."""
        return tuple(sorted(self._found, key=lambda f: (f.place, f.severity.rank, f.check, f.size, f.message)))

    def count(self, severity: Severity) -> int:
        """How many there are of one severity."""
        return sum(1 for finding in self._found if finding.severity is severity)

    @property
    def any_wrong(self) -> bool:
        """Whether a release must stop."""
        return any(finding.severity is Severity.WRONG for finding in self._found)

    @property
    def any_unread(self) -> bool:
        """Whether some file could not be read at all."""
        return any(finding.unread for finding in self._found)
