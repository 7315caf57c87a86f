"""How long the handouts of the example take, as a ratio to typesetting one bare sentence in the same run.

Run it by hand: ``PYTHONPATH=tests .venv/bin/python tests/bench/bench_handout.py``. Nothing is asserted.
"""

from __future__ import annotations

import statistics
import sys
import time
from collections.abc import Callable
from datetime import date

import typst
from content import EXAMPLE

from sitegen.checks import review_class
from sitegen.findings import Collector
from sitegen.handouts import Copy, Wanted, handout_of, handout_pdf
from sitegen.publishing import paper_page
from sitegen.quantities import System
from sitegen.reading import ContentFolder
from sitegen.tutorial.build import site

ROUNDS = 5
DAY = date(2027, 1, 5)


def median_seconds(action: Callable[[], object]) -> float:
    """The median time of an action."""
    taken = []
    for _ in range(ROUNDS):
        began = time.perf_counter()
        action()
        taken.append(time.perf_counter() - began)
    return statistics.median(taken)


def main() -> int:
    """Measure and print."""
    folder = ContentFolder(EXAMPLE, "content_example")
    cls, _ = review_class(folder, "classes/evening-tee.yaml")
    whole = site(folder, Collector())
    if cls is None:
        return 1
    wanted = Wanted(tuple(each.size for each in cls.written.students), tuple(System), copy=Copy.TEACHER)
    page = paper_page(cls.computed, whole, folder, System.CENTIMETRES, DAY)
    if page is None:
        return 1
    made = handout_of(cls, page, folder, wanted, DAY)
    baseline = median_seconds(lambda: typst.compile(b"One bare sentence.", ignore_system_fonts=True))
    print(f"bare sentence    {baseline * 1000:8.1f} ms   1.0")
    for name, action in (
        ("page of tutorial", lambda: paper_page(cls.computed, whole, folder, System.CENTIMETRES, DAY)),
        ("handout as data", lambda: handout_of(cls, page, folder, wanted, DAY)),
        ("handout as PDF", lambda: handout_pdf(made)),
    ):
        taken = median_seconds(action)
        print(f"{name:<16} {taken * 1000:8.1f} ms   {taken / baseline:.1f}")
    print(f"{len(made.handout.cards)} cards, {len(handout_pdf(made)) // 1000} kB")
    return 0


if __name__ == "__main__":
    sys.exit(main())
