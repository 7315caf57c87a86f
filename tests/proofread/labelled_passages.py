"""Reads the labelled passages and counts how well they are read: by kind, by style, with every miss."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from pathlib import Path
from typing import Any

import yaml

HERE = Path(__file__).parent
_MM = {"in": Fraction(127, 5), "cm": Fraction(10), "mm": Fraction(1), "m": Fraction(1000), "yd": Fraction(4572, 5)}
_MM["ft"] = _MM["in"] * 12


@dataclass(frozen=True)
class Labelled:
    """A measurement as a person labelled it: its place, and for a length its exact millimetres."""

    text: str
    start: int
    end: int
    kind: str
    low: Fraction = Fraction(0)
    high: Fraction | None = None


@dataclass(frozen=True)
class Slip:
    """What is wrong in a passage: the reported place must touch ``start`` to ``end``."""

    kind: str
    start: int
    end: int
    should_be: str


@dataclass(frozen=True)
class Passage:
    """A text with everything that a person found in it."""

    id: str
    style: str
    text: str
    lengths: tuple[Labelled, ...]
    others: tuple[Labelled, ...]
    slips: tuple[Slip, ...]


def passages(name: str) -> list[Passage]:
    """The passages of one file of this folder."""
    return [_passage(entry) for entry in yaml.safe_load((HERE / f"{name}.yaml").read_text(encoding="utf-8"))]


def _passage(entry: dict[str, Any]) -> Passage:
    text = entry["text"]
    lengths = tuple(_placed(text, entry.get("lengths") or [], "length"))
    others = tuple(_placed(text, entry.get("others") or [], ""))
    slips = []
    for slip in entry.get("errors") or []:
        start = text.index(slip["near"])
        slips.append(Slip(slip["kind"], start, start + len(slip["near"]), str(slip.get("should_be", ""))))
    return Passage(entry["id"], entry["style"], text, lengths, others, tuple(slips))


def _placed(text: str, entries: list[dict[str, str]], kind: str) -> Iterator[Labelled]:
    position = 0
    for entry in entries:
        start = text.index(entry["text"], position)
        position = start + len(entry["text"])
        low, high = _exact(entry["is"]) if kind == "length" else (Fraction(0), None)
        yield Labelled(entry["text"], start, position, kind or entry["kind"], low, high)


def _exact(written: str) -> tuple[Fraction, Fraction | None]:
    low, _, high = written.partition(" to ")
    if not high:
        return _millimetres(low), None
    ends = sorted((_millimetres(low), _millimetres(high)))  # a range the wrong way round is still these two lengths
    return ends[0], ends[1]


def _millimetres(written: str) -> Fraction:
    number, _, unit = written.rpartition(" ")
    return sum((Fraction(part) for part in number.split()), Fraction(0)) * _MM[unit]
