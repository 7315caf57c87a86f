"""``sitegen size TUTORIAL bust=36in waist=28in``"""

from __future__ import annotations

import argparse
import sys

from sitegen.cli.one_tutorial import add_tutorial, one_tutorial
from sitegen.findings import nearest
from sitegen.quantities import NotUnderstood, System, Unit, Worked, given, mm, parse_length, show_value, show_working
from sitegen.tutorial import Computed, SizeAdvice, Tutorial, size_advice


def set_up(command: argparse.ArgumentParser) -> None:
    """Tell the parser of this command what it takes."""
    command.description = (
        "Tells which size of a tutorial to make, by measurements and never by age, and how it was chosen."
    )
    command.epilog = "Exit code: 0 a size was chosen, 2 something could not be read."
    add_tutorial(command)
    command.add_argument(
        "measured", metavar="NAME=LENGTH", nargs="+", help="what was measured, such as bust=36in or waist=71.5cm"
    )
    command.add_argument("--by", metavar="NAME", help="the measurement that matters most in this garment")
    command.add_argument(
        "--units", choices=[each.value for each in System], help="the units to show, and those of bare numbers"
    )


def run(options: argparse.Namespace) -> int:
    """Read the measurements, choose, print."""
    computed = one_tutorial(options.tutorial, options.view)
    if computed is None:
        return 2
    tutorial = computed.tutorial
    system = System(options.units) if options.units else tutorial.first_system
    bare = tutorial.unit if system is tutorial.first_system else Unit.CM if system is System.CENTIMETRES else Unit.IN
    person, measured_in, troubles = _person(options.measured, tutorial, bare)
    if options.by is not None and options.by not in person:
        troubles.append(f"--by {options.by}: it is none of the measurements given.")
    if not troubles:
        try:
            advice = size_advice(computed, person, matters_most=options.by, measured_in=measured_in)
        except ValueError as reason:
            troubles.append(f"{reason}.")
    if troubles:
        for trouble in troubles:
            print(f"sitegen: {trouble}", file=sys.stderr)
        return 2
    print("\n\n".join(_told(each, person, system, several=len(advice) > 1) for each in advice))
    print(_closing(computed, person))
    return 0


def _person(
    measured: list[str], tutorial: Tutorial, bare: Unit
) -> tuple[dict[str, Worked], dict[str, System], list[str]]:
    """The measurements by name, the units of each, and what is wrong with the others."""
    person: dict[str, Worked] = {}
    measured_in: dict[str, System] = {}
    troubles = []
    for each in measured:
        name, equals, text = each.partition("=")
        name = name.strip().removeprefix("body.")
        if not equals:
            troubles.append(f"“{each}” is not a measurement. Example: bust=36in")
        elif name not in tutorial.body:
            troubles.append(_unknown(name, tutorial))
        elif name in person:
            troubles.append(f"{name} is given twice.")
        else:
            try:
                typed = parse_length(text, bare)
                if typed.value <= mm(0):
                    raise NotUnderstood("a length of more than nothing", f"{name}=36in")
                person[name] = given(f"{name} of the person", typed.value)
                measured_in[name] = typed.unit.system
            except NotUnderstood as trouble:
                troubles.append(f"{name}: expected {trouble.expected}, found “{text}”. Example: {name}=36in")
    return person, measured_in, troubles


def _unknown(name: str, tutorial: Tutorial) -> str:
    near = nearest(name, tutorial.body)
    if near:
        hint = f"Nearest: {', '.join(near)}."
    elif tutorial.body:
        hint = f"A size is chosen by measuring, never by age. Its size table has {', '.join(tutorial.body)}."
    else:
        hint = "It has none at all."
    return f"there is no body measurement “{name}” in this tutorial. {hint}"


def _told(advice: SizeAdvice, person: dict[str, Worked], system: System, *, several: bool) -> str:
    begin = f"Of sizes {advice.sizes[0]} to {advice.sizes[-1]}: size" if several else "Size"
    lines = [f"{begin} {advice.size}, {advice.found.reason}."]
    for choice in advice.found.choices:
        shown = show_value(person[choice.measure].value, system)
        lines += ["", f"{choice.measure} {shown}: {advice.size_of(choice)}"]
        for worked in (choice.reason, choice.ease):
            if worked is not None:
                lines += [f"    {line}" for line in show_working(worked, system)]
    return "\n".join(lines)


def _closing(computed: Computed, person: dict[str, Worked]) -> str:
    missing = [name for name in computed.tutorial.body if name not in person]
    more = f" Not measured: {', '.join(missing)}." if missing else ""
    return f"\nBy measurement, never by age.{more}"
