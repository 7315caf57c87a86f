"""``sitegen checks [ID]``"""

from __future__ import annotations

import argparse
import sys
from itertools import groupby
from textwrap import fill, indent

from sitegen.checks import Check, all_checks
from sitegen.findings import nearest


def set_up(command: argparse.ArgumentParser) -> None:
    """Tell the parser of this command what it takes."""
    command.description = "Lists all checks, or explains one with its source and two examples."
    command.epilog = "Exit code: 0 listed, 2 there is no such check."
    command.add_argument("id", metavar="ID", nargs="?", help="the check to explain")


def run(options: argparse.Namespace) -> int:
    """List or explain."""
    checks = all_checks()
    if options.id is None:
        print(listing(checks))
        return 0
    found = {each.id: each for each in checks}.get(options.id)
    if found is None:
        near = nearest(options.id, [each.id for each in checks])
        hint = f" Nearest: {', '.join(near)}." if near else " sitegen checks lists them all."
        print(f"sitegen: there is no check “{options.id}”.{hint}", file=sys.stderr)
        return 2
    print(explanation(found))
    return 0


def listing(checks: tuple[Check, ...]) -> str:
    """All checks by area, a line each."""
    width = max(len(each.id) for each in checks)
    lines = []
    for area, group in groupby(checks, key=lambda each: each.area):
        lines.append(area)
        lines.extend(f"  {each.id:<{width}}  {each.severity.value:<8}  {each.title}" for each in group)
    lines.append(f"{len(checks)} checks")
    return "\n".join(lines)


def explanation(one: Check) -> str:
    """What one check looks for, why, its source, and its two examples."""
    parts = [
        f"{one.id} ({one.area}, {one.severity.value})",
        one.title,
        "",
        *(f"{word}  {fill(text, 92, subsequent_indent=' ' * 8)}" for word, text in _texts(one)),
        "",
        "trips it:",
        indent(one.trips, "    "),
        "",
        "passes:",
        indent(one.passes, "    "),
    ]
    return "\n".join(parts)


def _texts(one: Check) -> tuple[tuple[str, str], ...]:
    return ("what: ", one.what), ("why:  ", one.why), ("from: ", one.source)
