"""How well the labelled passages are read: measurements found, errors caught, false alarms; by style and by kind.

``python tests/proofread/scores.py`` prints the tables, ``--write DEVELOPERS.md`` puts them into that file.
"""

from __future__ import annotations

import sys
from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parent))

from labelled_passages import Labelled, Passage, passages
from long_texts import ASIDE as LONG_ASIDE
from long_texts import SEEN as LONG_SEEN
from long_texts import counted
from severities import BySeverity, severities

from sitegen.findings import Severity
from sitegen.prose import Kind, Measurement, TextFinding, proofread, read

HERE = Path(__file__).parent
SEEN = (*sorted(path.stem for path in HERE.glob("seen*.yaml")), "fresh")
"""The passages that were read while the grammar was written."""
ASIDE = tuple(sorted(path.stem for path in HERE.glob("aside*.yaml")))
"""The passages that whoever writes the grammar has not read: only what is counted of them is known."""
FREE_SEEN = tuple(sorted(path.stem for path in HERE.glob("free_seen*.yaml")))
"""Passages whose writers were told to write as people do, about prices and counts as well as lengths."""
FREE_ASIDE = tuple(sorted(path.stem for path in HERE.glob("free_aside*.yaml")))
"""Such passages that whoever writes the grammar has not read."""
_BEGIN, _END = "<!-- proofread: begin -->", "<!-- proofread: end -->"


@dataclass
class Lengths:
    """Lengths found rightly, found wrongly, and not found."""

    right: int = 0
    false: int = 0
    missed: int = 0

    @property
    def precision(self) -> float:
        """The share of what was found that is right."""
        return self.right / max(1, self.right + self.false)

    @property
    def recall(self) -> float:
        """The share of what is there that was found."""
        return self.right / max(1, self.right + self.missed)


@dataclass
class Score:
    """What was counted over some passages."""

    lengths: Counter[str] = field(default_factory=Counter)
    by_style: dict[str, Lengths] = field(default_factory=dict)
    slips: Counter[str] = field(default_factory=Counter)
    caught: Counter[str] = field(default_factory=Counter)
    at_place: Counter[str] = field(default_factory=Counter)
    put_right: Counter[str] = field(default_factory=Counter)
    correctable: Counter[str] = field(default_factory=Counter)
    right_passages: int = 0
    false_alarms: list[str] = field(default_factory=list)
    sure_alarms: list[str] = field(default_factory=list)
    """The false alarms of which one is told as wrong, not only as doubtful."""
    surely_caught: int = 0

    @property
    def all_lengths(self) -> Lengths:
        """The lengths of all styles together."""
        each = self.by_style.values()
        return Lengths(sum(one.right for one in each), sum(one.false for one in each), sum(one.missed for one in each))

    @property
    def share_caught(self) -> float:
        """The share of wrong passages in which something was found."""
        return sum(self.caught.values()) / max(1, sum(self.slips.values()))

    @property
    def by_severity(self) -> BySeverity:
        """The same by how sure the proofreader was."""
        slips, caught = sum(self.slips.values()), sum(self.caught.values())
        return BySeverity(
            self.right_passages, len(self.sure_alarms), len(self.false_alarms), slips, self.surely_caught, caught
        )

    @property
    def share_of_false_alarms(self) -> float:
        """The share of right passages in which something was found."""
        return len(self.false_alarms) / max(1, self.right_passages)


def score(names: Iterable[str]) -> Score:
    """Read and proofread every passage of these files."""
    total = Score()
    for name in names:
        for passage in passages(name):
            _count_lengths(total.by_style.setdefault(passage.style, Lengths()), passage, read(passage.text))
            _count_slips(total, passage, proofread(passage.text), f"{name} {passage.id}")
    return total


def _count_lengths(count: Lengths, passage: Passage, found: Sequence[Measurement]) -> None:
    left = list(passage.lengths)
    for each in found:
        if each.kind is not Kind.LENGTH:
            continue
        match = next((label for label in left if _same(label, each)), None)
        if match is None:
            count.false += 1
        else:
            left.remove(match)
            count.right += 1
    count.missed += len(left)


def _same(label: Labelled, found: Measurement) -> bool:
    """Whether they overlap and say the same; a range written the wrong way has the same ends."""
    overlap = label.start < found.end and found.start < label.end
    return overlap and {label.low, label.high} == {found.low_mm, found.high_mm}


def _count_slips(total: Score, passage: Passage, found: Sequence[TextFinding], name: str) -> None:
    sure = any(each.severity is Severity.WRONG for each in found)
    if not passage.slips:
        total.right_passages += 1
        if found:
            total.false_alarms.append(name)
        if sure:
            total.sure_alarms.append(name)
    else:
        total.surely_caught += sure
    for slip in passage.slips:
        total.slips[slip.kind] += 1
        total.caught[slip.kind] += bool(found)
        there = [each for each in found if each.start <= slip.end and slip.start <= each.end]
        total.at_place[slip.kind] += bool(there)
        if slip.should_be:
            total.correctable[slip.kind] += 1
            total.put_right[slip.kind] += any(slip.should_be in each.should_be for each in there)


def tables(seen: Score, aside: Score) -> str:
    """All sets as Markdown."""
    lines = [
        f"{sum(seen.slips.values()) + seen.right_passages} passages that were read while the grammar was written,"
        f" {sum(aside.slips.values()) + aside.right_passages} that were kept aside; half of each carry one slip.",
        "",
        "| lengths | seen: precision | recall | aside: precision | recall |",
        "| --- | ---: | ---: | ---: | ---: |",
    ]
    for style in sorted(seen.by_style):
        lines.append(_length_row(style, seen.by_style[style], aside.by_style.get(style, Lengths())))
    lines.append(_length_row("**all**", seen.all_lengths, aside.all_lengths))
    lines += [
        "",
        "| wrong passages | seen | caught | at the place | put right | aside | caught | at the place | put right |",
        "| --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: |",
    ]
    kinds = sorted(seen.slips | aside.slips)
    lines += [f"| {kind} | {_slip_cells(seen, [kind])} | {_slip_cells(aside, [kind])} |" for kind in kinds]
    lines.append(f"| **all** | {_slip_cells(seen, kinds)} | {_slip_cells(aside, kinds)} |")
    return "\n".join(lines)


def free_table(seen: Score, aside: Score) -> str:
    """The lengths of the freely written sets as Markdown."""
    lines = ["| freely written | passages | lengths: precision | recall |", "| --- | ---: | ---: | ---: |"]
    for name, one in (("seen", seen), ("kept aside", aside)):
        passages, lengths = sum(one.slips.values()) + one.right_passages, one.all_lengths
        lines.append(f"| {name} | {passages} | {lengths.precision:.1%} | {lengths.recall:.1%} |")
    return "\n".join(lines)


def _length_row(name: str, seen: Lengths, aside: Lengths) -> str:
    shares = (seen.precision, seen.recall, aside.precision, aside.recall)
    return f"| {name} | " + " | ".join(f"{share:.1%}" for share in shares) + " |"


def _slip_cells(of: Score, kinds: Sequence[str]) -> str:
    slips = sum(of.slips[kind] for kind in kinds)
    parts = [str(slips), _share(sum(of.caught[kind] for kind in kinds), slips)]
    parts.append(_share(sum(of.at_place[kind] for kind in kinds), slips))
    parts.append(_share(sum(of.put_right[kind] for kind in kinds), sum(of.correctable[kind] for kind in kinds)))
    return " | ".join(parts)


def _share(part: int, whole: int) -> str:
    return f"{part / whole:.0%}" if whole else "–"


def main() -> None:
    """Print the tables, or write them between the marks of a file."""
    seen, aside, free_seen, free_aside = map(score, (SEEN, ASIDE, FREE_SEEN, FREE_ASIDE))
    text = "\n\n".join(
        (
            tables(seen, aside),
            free_table(free_seen, free_aside),
            severities(
                {
                    "short, seen": seen.by_severity,
                    "short, kept aside": aside.by_severity,
                    "freely written, seen": free_seen.by_severity,
                    "freely written, kept aside": free_aside.by_severity,
                    "whole texts, seen": counted(LONG_SEEN).by_severity,
                    "whole texts, kept aside": counted(LONG_ASIDE).by_severity,
                }
            ),
        )
    )
    if len(sys.argv) == 3 and sys.argv[1] == "--write":
        path = Path(sys.argv[2])
        before, _, rest = path.read_text(encoding="utf-8").partition(_BEGIN)
        _, _, behind = rest.partition(_END)
        path.write_text(f"{before}{_BEGIN}\n{text}\n{_END}{behind}", encoding="utf-8")
    else:
        print(text)


if __name__ == "__main__":
    main()
