"""How much is found and how much falsely told, by how sure the proofreader is of it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class BySeverity:
    """Right texts and how many false alarms they raise; slips and how many are caught. ``sure`` ones are told as wrong,
    the others only as doubtful."""

    right: int
    sure_alarms: int
    alarms: int
    slips: int
    surely_caught: int
    caught: int


def severities(sets: Mapping[str, BySeverity]) -> str:
    """Sets of texts by name, as Markdown."""
    lines = [
        "| told | right texts | false: wrong | doubtful | slips | caught: wrong | doubtful | in all |",
        "| --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: |",
    ]
    for name, each in sets.items():
        doubtful = each.alarms - each.sure_alarms
        shares = (each.surely_caught, each.caught - each.surely_caught, each.caught)
        cells = " | ".join(f"{share / each.slips:.0%}" for share in shares)
        lines.append(f"| {name} | {each.right} | {each.sure_alarms} | {doubtful} | {each.slips} | {cells} |")
    return "\n".join(lines)
