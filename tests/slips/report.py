"""Makes every slip in the example content and tells by kind what share is caught.

PYTHONPATH=tests python -m slips.report                        the tables, on the screen
PYTHONPATH=tests python -m slips.report --uncaught             also every slip that nobody catches
PYTHONPATH=tests python -m slips.report --floors               the floors for the sample that the tests try
PYTHONPATH=tests python -m slips.report --write FILE           the tables, between their markers in a Markdown file
PYTHONPATH=tests python -m slips.report --compare FILE         whether the file has the tables of today
"""

from __future__ import annotations

import argparse
import sys
import time
from collections.abc import Callable, Iterable
from concurrent.futures import ProcessPoolExecutor
from itertools import repeat
from pathlib import Path

from slips.floors import SAMPLE, SEED
from slips.harness import Outcome, Reach, bench
from slips.slip import Pick, Slip, sample

EXAMPLE = Path(__file__).parents[2] / "content_example"
BEGIN, END = "<!-- slips: begin -->", "<!-- slips: end -->"
_COMMAND = "PYTHONPATH=tests python -m slips.report --write"


def outcomes(example: Path, pick: Pick, jobs: int) -> list[Outcome]:
    """What becomes of every slip. Each process makes its slips in a copy of its own."""
    with bench(example) as one:
        slips = one.slips(pick)
    parts = [slips[index::jobs] for index in range(jobs)]
    with ProcessPoolExecutor(jobs) as pool:
        done = list(pool.map(_outcomes_of, repeat(example), parts))
    found = {outcome.slip: outcome for part in done for outcome in part}
    return [found[slip] for slip in slips]


def _outcomes_of(example: Path, slips: tuple[Slip, ...]) -> list[Outcome]:
    with bench(example) as one:
        return [one.outcome(slip) for slip in slips]


def tables(found: Iterable[Outcome]) -> str:
    """Three tables in Markdown: by how far a slip reaches, by its kind, by where it was made."""
    found = list(found)
    used = [each for each in found if each.used]
    count = len({each.slip.tutorial for each in found})
    lines = [
        f"{len(found)} slips, one at a time, in the {count} tutorials of the example. {_share(used, _caught)} of those that"
        " change a number which the student would use are caught.",
        "",
        *_table("what the slip reaches", found, lambda each: each.reach.value, [reach.value for reach in Reach]),
        "",
        "By kind, for slips that change a number which the student would use:",
        "",
        *_table("kind of slip", used, lambda each: each.slip.kind),
        "",
        "By place, for the same slips:",
        "",
        *_table("where", used, lambda each: each.slip.where),
    ]
    return "\n".join(lines)


def _table(title: str, found: list[Outcome], group: Callable[[Outcome], str], order: Iterable[str] = ()) -> list[str]:
    groups: dict[str, list[Outcome]] = {name: [] for name in order}
    for each in found:
        groups.setdefault(group(each), []).append(each)
    rows = groups if order else dict(sorted(groups.items()))
    lines = [
        f"| {title} | slips | caught | stops a release | points at the line | correction restores the text |",
        "| --- | ---: | ---: | ---: | ---: | ---: |",
    ]
    lines += [_row(name, each) for name, each in rows.items()]
    return [*lines, _row("**all**", found)]


def _row(name: str, found: list[Outcome]) -> str:
    caught = [each for each in found if each.caught]
    shares = [
        _share(found, _caught),
        _share(found, lambda each: any(finding.severity.value == "wrong" for finding in each.findings)),
        _share(caught, lambda each: each.points),
        _share(caught, lambda each: each.restores),
    ]
    return f"| {name} | {len(found)} | {' | '.join(shares)} |"


def percent(found: list[Outcome]) -> int:
    """What share is caught, in whole percent, rounded down so that 100 means all."""
    return 100 * sum(each.caught for each in found) // len(found)


def _one_below(found: list[Outcome]) -> int:
    return 100 * max(0, sum(each.caught for each in found) - 1) // len(found)


def _caught(outcome: Outcome) -> bool:
    return outcome.caught


def _share(found: list[Outcome], has: Callable[[Outcome], bool]) -> str:
    return f"{100 * sum(map(has, found)) // len(found)}%" if found else "–"


def floors(example: Path) -> str:
    """The floors for the sample that the tests try: of each kind one slip less than are caught today."""
    by_kind: dict[str, list[Outcome]] = {}
    with bench(example) as one:
        for each in sample(one.slips(Pick(SEED)), SAMPLE, SEED):
            by_kind.setdefault(each.kind, []).append(one.outcome(each))
    lines = [f'    "{kind}": {_one_below(found)},' for kind, found in sorted(by_kind.items())]
    return "\n".join(["FLOORS: dict[str, int] = {", *lines, "}"])


def put_between(text: str, new: str) -> str | None:
    """The text with something new between the markers, None when it does not have them."""
    before, begin, rest = text.partition(BEGIN)
    _, end, behind = rest.partition(END)
    return f"{before}{BEGIN}\n{new}\n{END}{behind}" if begin and end else None


def main(arguments: list[str] | None = None) -> int:
    """0 when all is well, 1 when the file is not up to date, 2 when it has no markers."""
    parser = argparse.ArgumentParser(prog="slips.report", description="What share of slips the checks catch.")
    parser.add_argument("--content", type=Path, default=EXAMPLE)
    parser.add_argument("--write", type=Path, metavar="FILE")
    parser.add_argument("--compare", type=Path, metavar="FILE")
    parser.add_argument("--uncaught", action="store_true", help="list every slip that is not caught")
    parser.add_argument("--floors", action="store_true", help="print the floors for the sample that the tests try")
    parser.add_argument("--every", action="store_true", help="slip every size of every list in every way")
    parser.add_argument("--jobs", type=int, default=2)
    asked = parser.parse_args(arguments)
    if asked.floors:
        print(floors(asked.content))
        return 0
    begun = time.monotonic()
    found = outcomes(asked.content, Pick(SEED, asked.every), asked.jobs)
    text = tables(found)
    print(f"{len(found)} slips in {time.monotonic() - begun:.0f} s", file=sys.stderr)
    for each in found:
        if each.broke:
            print(f"{each.slip}: {each.broke}", file=sys.stderr)
    file = asked.write or asked.compare
    if file is None:
        print(text)
        if asked.uncaught:
            print("\n".join(f"{each.reach.name.lower()}\t{each.slip}" for each in found if not each.caught))
        return 0
    return _write_or_compare(file, text, write=asked.write is not None)


def _write_or_compare(file: Path, text: str, *, write: bool) -> int:
    before = file.read_text(encoding="utf-8") if file.exists() else ""
    after = put_between(before, text)
    if after is None:
        print(f"{file} has no lines {BEGIN} and {END} between which the tables belong.", file=sys.stderr)
        return 2
    if write:
        file.write_text(after, encoding="utf-8")
    elif after != before:
        print(f"The tables in {file} are not those of today. Repair them with: {_COMMAND} {file}", file=sys.stderr)
        return 1
    return 0


if __name__ == "__main__":
    sys.exit(main())
