"""Makes one slip at a time in a copy of a content folder, runs the checks, and says what they made of it."""

from __future__ import annotations

import shutil
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from enum import Enum
from pathlib import Path

from slips.fields import TEACHER
from slips.find import Value, values
from slips.kinds import columns_of_table, order_of_steps, slips_of
from slips.names import Known
from slips.shown import Shown, shown
from slips.slip import Edit, Pick, Slip

from sitegen.checks import review_tutorial
from sitegen.findings import Collector, Finding, Severity
from sitegen.reading import ContentFolder, Mapping
from sitegen.tutorial import Computed

SHOWN = "content"


class Reach(Enum):
    """How far a slip reaches that nobody catches."""

    PAGE = "a number that the student reads, cuts, sews or buys"
    CLAIM = "a number of the file that is computed for the page"
    WORK = "what the hands do, but no number"
    NOTHING = "nothing that the student sees"


@dataclass(frozen=True, slots=True)
class Outcome:
    """What the checks made of a slip."""

    slip: Slip
    reach: Reach
    findings: tuple[Finding, ...]
    """Those that are wrong or doubtful and were not there before."""
    points: bool
    """Whether one of them stands at a slipped line."""
    restores: bool
    """Whether putting what one of them proposes gives back the file as it was."""
    broke: str = ""
    """What the checks raised, which they never should."""

    @property
    def caught(self) -> bool:
        """Whether there is any finding."""
        return bool(self.findings)

    @property
    def used(self) -> bool:
        """Whether a number changes that the student would use."""
        return self.reach in (Reach.PAGE, Reach.CLAIM)


class Bench:
    """A copy of a content folder in which slips are made and taken back."""

    def __init__(self, example: Path, copy: Path) -> None:
        shutil.copytree(example, copy)
        self._root = copy
        self._kept: dict[str, tuple[bytes, Mapping | None, tuple[Finding, ...]]] = {}
        self.tutorials = sorted(path.name for path in (copy / "tutorials").iterdir() if path.is_dir())
        self._before: dict[str, tuple[frozenset[Finding], Shown]] = {}
        self._known: dict[str, Known] = {}
        self._claims: dict[str, frozenset[str]] = {}
        for name in self.tutorials:
            views, findings = self._reviewed(name)
            if not views:
                raise ValueError(f"{name} cannot be read")
            self._before[name] = (frozenset(findings), shown(views))
            self._known[name] = Known(views[0])
            self._claims[name] = frozenset(claim.lengths.name for view in views for claim in view.tutorial.claims)

    def false_alarms(self) -> tuple[Finding, ...]:
        """What the checks find in the untouched folder."""
        return tuple(finding for name in self.tutorials for finding in self._before[name][0])

    def slips(self, pick: Pick) -> tuple[Slip, ...]:
        """Every slip of every tutorial, each once, in the order of the files."""
        found = [each for name in self.tutorials for each in self._slips_in(name, pick)]
        return tuple(dict.fromkeys(found))

    def _slips_in(self, name: str, pick: Pick) -> Iterator[Slip]:
        found: tuple[Value, ...] = values(self._root, name)
        for value in found:
            yield from slips_of(value, self._known[name], pick)
        yield from columns_of_table(tuple(value for value in found if value.cells), pick)
        home = self._root / "tutorials" / name
        steps = tuple(sorted(path.name for path in (home / "steps").glob("*.yaml")))
        yield from order_of_steps(f"tutorials/{name}", steps)

    def outcome(self, slip: Slip) -> Outcome:
        """What the checks say when this slip is made; the copy is as before afterwards."""
        before, seen = self._before[slip.tutorial]
        text = self._text(slip.file)
        try:
            with self._made(slip, text):
                views, findings = self._reviewed(slip.tutorial)
        except Exception as error:  # whatever a check raises is a result, not the end of the run
            return Outcome(slip, Reach.PAGE, (), False, False, f"{type(error).__name__}: {error}")
        new = tuple(each for each in findings if each not in before and each.severity is not Severity.HINT)
        claim = slip.claim or slip.number in self._claims[slip.tutorial]
        reach = _reach(slip, claim, seen, shown(views)) if views else Reach.PAGE
        at = [each for each in new if _file(each) == slip.file]
        moved = {f"{slip.file.rpartition('/')[0]}/{name}" for _, name in slip.renamed}
        points = any(each.place.line in slip.lines for each in at) or any(_file(each) in moved for each in new)
        slipped = edited(text, slip.edits)
        restores = bool(slip.edits) and any(mended(slipped, each) == text for each in at)
        return Outcome(slip, reach, new, points, restores)

    def _text(self, file: str) -> str:
        return (self._root / file).read_bytes().decode("utf-8")

    @contextmanager
    def _made(self, slip: Slip, text: str) -> Iterator[None]:
        path = self._root / slip.file
        names = [(path.parent / old, path.parent / new) for old, new in slip.renamed]
        if slip.edits:
            path.write_bytes(edited(text, slip.edits).encode("utf-8"))
        for old, new in names:
            old.rename(new)
        try:
            yield
        finally:
            for old, new in names:
                new.rename(old)
            if slip.edits:
                path.write_bytes(text.encode("utf-8"))

    def _reviewed(self, name: str) -> tuple[tuple[Computed, ...], tuple[Finding, ...]]:
        """The tutorial in each of its views, none when it cannot be read, and what the checks find."""
        folder = _KeptFolder(self._root, SHOWN, self._kept)
        views, collector = review_tutorial(folder, f"tutorials/{name}")
        return views, collector.findings


class _KeptFolder(ContentFolder):
    """A content folder that reads a file again only when its bytes have changed."""

    def __init__(
        self, root: Path, said: str, kept: dict[str, tuple[bytes, Mapping | None, tuple[Finding, ...]]]
    ) -> None:
        super().__init__(root, said)
        self._by_name = kept

    def yaml(self, relative: str, collector: Collector, *, may_be_empty: bool = False) -> Mapping | None:
        """The keys and values of a file, as they were read when it last changed."""
        data = (self.root / relative).read_bytes()
        kept = self._by_name.get(relative)
        if kept is None or kept[0] != data:
            own = Collector()
            kept = (data, super().yaml(relative, own, may_be_empty=may_be_empty), own.findings)
            self._by_name[relative] = kept
        collector.extend(kept[2])
        return kept[1]


@contextmanager
def bench(example: Path) -> Iterator[Bench]:
    """A bench with a copy of a content folder that is thrown away afterwards."""
    with tempfile.TemporaryDirectory() as folder:
        yield Bench(example, Path(folder) / "copy")


def edited(text: str, edits: tuple[Edit, ...]) -> str:
    """The text with all edits made, which do not overlap."""
    for edit in sorted(edits, key=lambda each: each.start, reverse=True):
        text = text[: edit.start] + edit.new + text[edit.end :]
    return text


def mended(text: str, finding: Finding) -> str:
    """The text with what a finding proposes put in the place of what it found; unchanged when it proposes nothing."""
    if not finding.said or not finding.should_be:
        return text
    lines = text.splitlines(keepends=True)
    before = "".join(lines[: finding.place.line - 1])
    start = len(before) + finding.place.column - 1
    if not text.startswith(finding.said, start):
        return text
    return text[:start] + finding.should_be + text[start + len(finding.said) :]


def _file(finding: Finding) -> str:
    return finding.place.file.removeprefix(f"{SHOWN}/")


def _reach(slip: Slip, claim: bool, before: Shown, after: Shown) -> Reach:
    if claim:
        return Reach.CLAIM
    if after.numbers != before.numbers:
        return Reach.PAGE
    if slip.where == TEACHER or after.work == before.work:
        return Reach.NOTHING
    return Reach.WORK
