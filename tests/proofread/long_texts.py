"""Whole texts, invented, with every number right: blog posts, handouts, letters, talks.

In ``{27 in|26 in}`` the first is right, the second a slip; each of them alone must be found. Most numbers of such a text
have nothing to do with any sum, as in real ones.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path

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
    """What was found in some texts: false alarms by the name of their text, and how many slips of all."""

    texts: int
    false_alarms: tuple[str, ...]
    slips: int
    caught: int

    @property
    def share_caught(self) -> float:
        """The share of the slips that was found."""
        return self.caught / max(1, self.slips)


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
    false_alarms, caught = list[str](), 0
    for text in texts:
        known = {(found.said, found.working) for found in proofread(text.right)}
        false_alarms += [text.name] * len(known)
        caught += sum(
            any((found.said, found.working) not in known for found in proofread(slipped)) for slipped in text.slipped
        )
    return Counted(len(texts), tuple(false_alarms), sum(len(text.slipped) for text in texts), caught)


def table(seen: Counted, aside: Counted) -> str:
    """Both as Markdown."""
    rows = [
        f"| {name} | {each.texts} | {len(each.false_alarms)} | {each.slips} | {each.share_caught:.0%} |"
        for name, each in (("seen", seen), ("kept aside", aside))
    ]
    head = ["| long texts | texts | false alarms | slips, each alone | caught |", "| --- | ---: | ---: | ---: | ---: |"]
    return "\n".join([*head, *rows])
