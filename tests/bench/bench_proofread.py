"""How fast texts are read and proofread, as a ratio to merely cutting them into words in the same run.

Run it by hand: ``.venv/bin/python tests/bench/bench_proofread.py``. Nothing is asserted.
"""

from __future__ import annotations

import random
import re
import sys
import time
import tracemalloc
from collections.abc import Callable
from pathlib import Path

from sitegen.prose import proofread, read

ROOT = Path(__file__).parents[2]
_WORDS = re.compile(r"\w+|[^\w\s]")


def seconds(action: Callable[[str], object], text: str) -> float:
    """The shortest of three runs."""
    taken = []
    for _ in range(3):
        began = time.process_time()
        action(text)
        taken.append(time.process_time() - began)
    return min(taken)


def texts() -> dict[str, str]:
    """A megabyte of instructions, of plain prose with few measurements, of nothing but measurements, and of made-up
    words and numbers of which no paragraph comes twice."""
    steps = "\n\n".join(
        path.read_text(encoding="utf-8") for path in sorted(ROOT.glob("content_example/**/steps/*.yaml"))
    )
    prose = "\n\n".join((ROOT / name).read_text(encoding="utf-8") for name in ("README.md", "DEVELOPERS.md"))
    dense = "Cut 16 in plus two 1/2 in seam allowances, so 17 in (43 cm).\n\n"
    return {name: (text * (1 + 1_000_000 // len(text)))[:1_000_000] for name, text in
            (("steps", steps), ("prose", prose), ("dense", dense), ("varied", _varied()))}  # fmt: skip


def _varied() -> str:
    """A megabyte of paragraphs that are all different: nothing that was kept of one can serve another."""
    chance = random.Random(1)

    def words(count: int) -> str:
        return " ".join("".join(chance.choices("aeioulnrstdm", k=chance.randint(2, 9))) for _ in range(count))

    def paragraph() -> str:
        one, other = chance.randint(10, 999), chance.randint(1, 99)
        told = f"Cut {one} in plus {other} {chance.choice(('1/8', '3/8', '1/2', '5/8'))} in, so {one + other} in"
        return f"{words(30)}, {words(20)}. {told} ({chance.randint(10, 999)} cm). {words(40)}."

    return "\n\n".join(paragraph() for _ in range(2000))


def main() -> int:
    """Measure and print."""
    for name, text in texts().items():
        bare = seconds(lambda each: sum(1 for _ in _WORDS.finditer(each)), text)
        print(f"{name}: cut into words {bare:.2f} s")
        for what, action in (("read", read), ("proofread", proofread)):
            taken = seconds(action, text)
            print(f"  {what:<10} {taken:6.2f} s  {taken / bare:5.1f} times  {1 / taken:.2f} MB/s")
    tracemalloc.start()
    proofread(texts()["steps"])
    print(f"most memory for a megabyte of steps: {tracemalloc.get_traced_memory()[1] / 1e6:.0f} MB")
    return 0


if __name__ == "__main__":
    sys.exit(main())
