"""``sitegen explain TUTORIAL [NUMBER] [--size SIZE]``"""

from __future__ import annotations

import argparse
import sys

from sitegen.cli.one_tutorial import add_tutorial, one_tutorial
from sitegen.findings import nearest
from sitegen.quantities import BySize, System, Worked, show_number, show_working
from sitegen.tutorial import Computed

_MOST_NEAR = 6
"""So many numbers are told of those whose names end alike, as ``cut_length`` of every piece."""


def set_up(command: argparse.ArgumentParser) -> None:
    """Tell the parser of this command what it takes."""
    command.description = "Lists every number of a tutorial, or shows how one was got, in each size."
    command.epilog = "Exit code: 0 shown, 2 something could not be read."
    add_tutorial(command)
    command.add_argument(
        "number", metavar="NUMBER", nargs="?", help="a number such as neckband.cut_length; without it, all are listed"
    )
    command.add_argument("--size", metavar="SIZE", help="one size only")
    command.add_argument("--units", choices=[each.value for each in System], help="the units to show it in")


def run(options: argparse.Namespace) -> int:
    """Find the tutorial, work the number out, print its working."""
    computed = one_tutorial(options.tutorial, options.view)
    if computed is None:
        return 2
    system = System(options.units) if options.units else computed.tutorial.first_system
    if options.number is None:
        print(_all_numbers(computed, system))
        return 0
    return _explain(computed, options.number, options.size, system)


def _explain(computed: Computed, name: str, size_name: str | None, system: System) -> int:
    number = computed.by_size(name)
    sizes = computed.tutorial.sizes
    if number is None:
        within = [each for each in computed.names() if each.startswith(f"{name}.")]
        ending = [each for each in computed.names() if each.endswith(f".{name}")]
        near = within or ending[:_MOST_NEAR] or nearest(name, computed.names())
        hint = f" Nearest: {', '.join(near)}." if near else " Without a name, all numbers are listed."
        print(f"sitegen: there is no number “{name}” in this tutorial.{hint}", file=sys.stderr)
        return 2
    if size_name is not None and size_name not in sizes:
        known = f"Its sizes are {', '.join(sizes)}." if sizes else "It has no sizes."
        print(f"sitegen: this tutorial has no size “{size_name}”. {known}", file=sys.stderr)
        return 2
    # A number that is alike in all sizes may still come from sums that are not.
    each = [computed.number(name, index) for index in range(computed.tutorial.size_count)]
    sums = {tuple(show_working(worked, system)) for worked in each if worked is not None}
    alike = not number.differs and len(sums) == 1
    for index, size in enumerate(sizes or ("",)):
        if size_name in (None, size):
            _print_one(name, "" if alike and not size_name else size, computed, index, system)
            if alike:
                break
    return 0


def _print_one(name: str, size: str, computed: Computed, index: int, system: System) -> None:
    worked = computed.number(name, index)
    if worked is None:
        return
    other = System.CENTIMETRES if system is System.INCHES else System.INCHES
    shown, also = show_number(worked, system), show_number(worked, other)
    both = shown if shown == also else f"{shown} ({also})"
    print(f"{name}{f', size {size}' if size else ''}: {both}")
    for line in show_working(worked, system):
        print(f"    {line}")


def _all_numbers(computed: Computed, system: System) -> str:
    found = [(name, number) for name in computed.names() if (number := computed.by_size(name)) is not None]
    width = max((len(name) for name, _ in found), default=0)
    return "\n".join(f"{name:<{width}}  {_values(number, system)}" for name, number in found)


def _values(number: BySize[Worked], system: System) -> str:
    return ", ".join(show_number(each, system) for each in number)
