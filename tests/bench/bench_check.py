"""How long checking and publishing the example takes, as a ratio to merely parsing its YAML in the same run.

Run it by hand: ``.venv/bin/python tests/bench/bench_check.py``. Nothing is asserted.
"""

from __future__ import annotations

import statistics
import sys
import tempfile
import time
import tracemalloc
from collections.abc import Callable
from pathlib import Path

import yaml

from sitegen.checks import review
from sitegen.publishing import publish
from sitegen.reading import ContentFolder

EXAMPLE = Path(__file__).parents[2] / "content_example"
LOADER = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
ROUNDS = 7


def median_seconds(action: Callable[[], object], rounds: int = ROUNDS) -> float:
    """The median time of an action."""
    taken = []
    for _ in range(rounds):
        began = time.perf_counter()
        action()
        taken.append(time.perf_counter() - began)
    return statistics.median(taken)


def bare() -> None:
    """The baseline: every YAML file of the example parsed to nodes, nothing else."""
    for path in EXAMPLE.rglob("*.yaml"):
        yaml.compose(path.read_text(encoding="utf-8"), Loader=LOADER)


def main() -> int:
    """Measure and print."""
    baseline = median_seconds(bare)
    checked = median_seconds(lambda: review(ContentFolder(EXAMPLE, "content_example")))
    with tempfile.TemporaryDirectory() as folder:
        site = Path(folder) / "site"

        def published() -> None:
            publish(ContentFolder(EXAMPLE, "content_example"), site, draft=True, progress=lambda *_: None)

        first = median_seconds(published, 1)
        again = median_seconds(published, 3)
    tracemalloc.start()
    review(ContentFolder(EXAMPLE, "content_example"))
    peak = tracemalloc.get_traced_memory()[1]
    print(f"bare YAML        {baseline * 1000:8.1f} ms   1.0")
    for name, taken in (("check", checked), ("publish, first", first), ("publish, again", again)):
        print(f"{name:<15}  {taken * 1000:8.1f} ms   {taken / baseline:.1f}")
    print(f"check, peak memory of Python objects {peak / 1e6:.1f} MB")
    return 0


if __name__ == "__main__":
    sys.exit(main())
