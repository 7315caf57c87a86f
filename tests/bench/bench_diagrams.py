"""Prints how long the diagrams of the example take, beside a bare baseline: ``python tests/bench/bench_diagrams.py``.

The baseline formats as many short strings as the pictures hold numbers, in the same run, so that the ratio says the
same on a slow machine as on a fast one. Every round starts without remembered words; the quickest round counts.
"""

from __future__ import annotations

import re
from pathlib import Path
from statistics import median
from time import process_time

from sitegen.checks import review
from sitegen.diagrams import diagram_of
from sitegen.diagrams.words import in_both_units
from sitegen.quantities import System
from sitegen.reading import ContentFolder
from sitegen.tutorial import Computed

EXAMPLE = Path(__file__).parents[2] / "content_example"
ROUNDS = 5
_NUMBER = re.compile(r"\d+(?:\.\d+)?")


def jobs() -> list[tuple[Computed, str, int]]:
    """Every band, hem and change of every tutorial of the example, in every size."""
    return [
        (computed, name, size)
        for computed in review(ContentFolder(EXAMPLE, "content_example")).tutorials
        for part in (computed.tutorial.bands, computed.tutorial.hems, computed.tutorial.changes)
        for name in part
        for size in range(computed.tutorial.size_count)
    ]


def drawing_times(job: tuple[Computed, str, int]) -> tuple[float, int]:
    """Milliseconds for one picture, and how many numbers it holds; nothing of both where nothing can be drawn."""
    computed, name, size = job
    in_both_units.cache_clear()
    start = process_time()
    drawn = diagram_of(name, computed, size, "d", System.INCHES)
    taken = (process_time() - start) * 1000
    return (taken, len(_NUMBER.findall(drawn.svg))) if drawn else (0.0, 0)


def baseline(count: int) -> float:
    """Milliseconds for formatting so many short strings."""
    start = process_time()
    for number in range(count):
        f"{number // 1000}.{number % 1000:03d}"
    return (process_time() - start) * 1000


def main() -> None:
    """One line for the pictures, one for the baseline, one for the ratio."""
    todo = jobs()
    rounds = [[drawing_times(job) for job in todo] for _ in range(ROUNDS)]
    best = [min(times) for times in zip(*rounds, strict=True)]
    drawn = [(taken, numbers) for taken, numbers in best if numbers]
    times, numbers = [taken for taken, _ in drawn], sum(count for _, count in drawn)
    bare = min(baseline(numbers) for _ in range(ROUNDS)) / len(drawn)
    mean = sum(times) / len(drawn)
    print(f"{len(drawn)} drawings: mean {mean:.2f} ms, median {median(times):.2f} ms, worst {max(times):.2f} ms")
    print(f"baseline, {numbers} short strings: {bare:.3f} ms per drawing")
    print(f"ratio: mean {mean / bare:.0f}, worst {max(times) / bare:.0f}")


if __name__ == "__main__":
    main()
