"""What the map of the steps costs: it grows as the links between steps do, and is nothing where no map is shown."""

from __future__ import annotations

import sys
from itertools import combinations
from pathlib import Path
from types import FrameType
from typing import Any

import pytest
from content import computed

from sitegen.diagrams import arrows_of, of_whole, order_of
from sitegen.tutorial import Link, Making


def cost(count: int) -> int:
    """How many instructions of Python the arrows between so many steps take, each of which waits for all before it."""
    making = Making((), tuple(Link(one, other, ()) for one, other in combinations(range(count), 2)))
    done = 0

    def trace(frame: FrameType, event: str, _: Any) -> Any:
        nonlocal done
        frame.f_trace_opcodes, frame.f_trace_lines = True, False
        done += event == "opcode"
        return trace

    before = sys.gettrace()
    sys.settrace(trace)
    try:
        arrows = arrows_of(making)
    finally:
        sys.settrace(before)
    assert len(arrows) == count - 1
    return done


def test_arrows_of_twice_the_steps_cost_as_much_more_as_there_are_links() -> None:
    few, many = cost(15), cost(30)
    links = (30 * 29) / (15 * 14)
    assert few < many < 1.2 * links * few


def test_nothing_is_worked_out_for_a_map_that_is_not_shown(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def steps(count: int) -> dict[str, str]:
        return {f"steps__{n:02}_dot_yaml": f"title: Step {n}\ntext: Sew.\n" for n in range(1, count + 1)}

    shown, _ = computed(tmp_path / "shown", "", **steps(40))
    many, _ = computed(tmp_path / "many", "", **steps(41))
    one, _ = computed(tmp_path / "one", "", **steps(1))
    assert order_of(shown, "p") is not None
    monkeypatch.delattr(of_whole, "making_of")
    assert order_of(many, "p") is None
    assert order_of(one, "p") is None
