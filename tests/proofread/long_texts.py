"""Whole texts, invented, with every number right: blog posts, handouts, letters, talks.

In ``{27 in|26 in}`` the first is right, the second a slip; each of them alone must be found. Most numbers of such a text
have nothing to do with any sum, as in real ones.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path

from severities import BySeverity

from sitegen.findings import Severity
from sitegen.prose import proofread

HERE = Path(__file__).parent / "long"
SEEN = tuple(sorted(path.name for path in HERE.glob("seen_*")))
"""The texts that were read while the grammar was written."""
ASIDE = tuple(sorted(path.name for path in HERE.glob("aside_*")))
"""The texts that whoever writes the grammar has not read: only what is counted of them is known."""
_MARK = re.compile(r"\{([^|{}]*)\|([^{}|]*)\}")


@dataclass(frozen=True, slots=True)
class LongText:
    """A text with all its numbers right, and once for each of its marks with that one wrong."""

    name: str
    right: str
    slipped: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Counted:
    """What was found in some texts: false alarms by the name of their text, how many slips of all, and how surely."""

    texts: int
    false_alarms: tuple[str, ...]
    sure_alarms: int
    slips: int
    caught: int
    surely_caught: int

    @property
    def share_caught(self) -> float:
        """The share of the slips that was found."""
        return self.caught / max(1, self.slips)

    @property
    def by_severity(self) -> BySeverity:
        """The same by how sure the proofreader was."""
        return BySeverity(
            self.texts, self.sure_alarms, len(self.false_alarms), self.slips, self.surely_caught, self.caught
        )


def long_texts(names: Sequence[str]) -> Iterator[LongText]:
    """Every text of these folders."""
    for name in names:
        for path in sorted((HERE / name).glob("*.*")):
            raw = path.read_text(encoding="utf-8")
            slipped = (
                _MARK.sub(r"\1", f"{raw[: mark.start()]}{mark.group(2)}{raw[mark.end() :]}")
                for mark in _MARK.finditer(raw)
            )
            yield LongText(f"{name} {path.name}", _MARK.sub(r"\1", raw), tuple(slipped))


def counted(names: Sequence[str]) -> Counted:
    """What is found in the texts of these folders."""
    texts = list(long_texts(names))
    false_alarms = list[str]()
    sure_alarms = caught = surely_caught = 0
    for text in texts:
        known = {(found.said, found.working): found.severity for found in proofread(text.right)}
        false_alarms += [text.name] * len(known)
        sure_alarms += sum(1 for severity in known.values() if severity is Severity.WRONG)
        for slipped in text.slipped:
            new = [found for found in proofread(slipped) if (found.said, found.working) not in known]
            caught += bool(new)
            surely_caught += any(found.severity is Severity.WRONG for found in new)
    slips = sum(len(text.slipped) for text in texts)
    return Counted(len(texts), tuple(false_alarms), sure_alarms, slips, caught, surely_caught)
