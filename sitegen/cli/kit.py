"""``sitegen kit CLASS [--working] [--csv FILE]``"""

from __future__ import annotations

import argparse
from collections.abc import Iterator, Sequence
from itertools import groupby
from textwrap import fill
from typing import Any

from sitegen.classes import (
    Bag,
    ClassCloth,
    ComputedClass,
    Costs,
    CutPart,
    Kit,
    KitLine,
    as_csv,
    bags_of,
    costs_of,
    counted,
    kit_of,
    kit_rows,
    money,
    sealed_table,
)
from sitegen.cli.one_class import add_class, heading, one_class, say_written, units_of, write
from sitegen.cli.screen import NOTHING_WRONG
from sitegen.quantities import Length, System, Worked, decimal, show_to_buy, show_value, show_working

_WIDTH = 100


def add_to(commands: Any) -> None:
    """Add the command to the parser."""
    command = commands.add_parser(
        "kit",
        help="list what to buy, to cut and to pack for a class",
        description="Lists what to buy for a class, what to cut before it, and what goes into each student's bag, all"
        " from the numbers of its tutorial.",
        epilog="Exit code: 0 nothing wrong, 1 something wrong, 2 something could not be read or written.",
    )
    add_class(command)
    command.add_argument("--working", action="store_true", help="show how every total was got")
    command.add_argument("--csv", metavar="FILE", help="write the list as a table for a spreadsheet")
    command.set_defaults(run=run)


def run(options: argparse.Namespace) -> int:
    """Work the kit out, print it, write the table."""
    found = one_class(options)
    if isinstance(found, int):
        return found
    cls = found.cls
    system = units_of(options, cls)
    kit = kit_of(cls, system)
    written = NOTHING_WRONG, ""
    if options.csv is not None:
        table = sealed_table(as_csv(kit_rows(kit, cls, system)))
        written = write(options.csv, table, found, "The kit as a table")
    print("\n".join(_told(kit, cls, system, working=options.working)))
    return say_written(*written) or found.code


def _told(kit: Kit, cls: ComputedClass, system: System, *, working: bool) -> Iterator[str]:
    costs = costs_of(kit, cls)
    yield heading(cls)
    yield from _to_buy(kit, costs, cls, working=working)
    yield from _cut_before(cls, bags_of(kit, cls), system)
    for bag in bags_of(kit, cls):
        yield from _packed(bag, cls, system)
    shared = [line.name for line in kit.lines if not line.for_one]
    for head, names in (("For all to share", shared), ("Each student brings", list(kit.brought))):
        if names:
            yield from ("", fill(f"{head}: {', '.join(names)}", _WIDTH, subsequent_indent="  "))
    if costs is not None:
        yield from _cost_by_student(costs, cls, working=working)


def _to_buy(kit: Kit, costs: Costs | None, cls: ComputedClass, *, working: bool) -> Iterator[str]:
    paid = {cost.key: cost for cost in costs.lines} if costs is not None else {}
    names = [f"{line.name}{f', {line.size}' if line.size else ''}" for line in kit.lines]
    wide = max((len(name) for name in names), default=0)
    amounts = max((len(line.amount) for line in kit.lines), default=0)
    yield from ("", "To buy")
    for kind, lines in groupby(zip(kit.lines, names, strict=True), key=lambda each: each[0].kind):
        yield f"  {kind.value}"
        for line, name in lines:
            cost = paid.get(line.key)
            money_words = f"  {money(cost.amount, costs.currency)}" if cost is not None and costs is not None else ""
            yield f"    {name:<{wide}}  {line.amount:>{amounts}}{money_words}"
            for words in _of_cloth(line, cls):
                yield fill(words, _WIDTH, initial_indent=" " * 6, subsequent_indent=" " * 8)
            if working:
                yield from (f"        {text}" for text in show_working(line.buy, line.system))
                if cost is not None:
                    yield f"        {cost.line}"
    for unknown in kit.unknown:
        yield f"    {unknown.cloth.fabric.name}: not known, {unknown.reason}"
    if costs is not None:
        yield f"  Together {money(costs.total.amount, costs.currency)}"
        if costs.without_price:
            yield f"  without the price of {', '.join(costs.without_price)}"


def _of_cloth(line: KitLine, cls: ComputedClass) -> Iterator[str]:
    """How the cloth is laid, how much less that takes than a length for each, and what another width would need."""
    if not line.cloth:
        return
    first, *others = line.cloth
    if first.laid is not None:
        laid, least = (show_value(value, line.system) for value in (first.laid.length, first.laid.least))
        shorter = "none can be shorter" if first.laid.is_shortest else f"none can be shorter than about {least}"
        yield f"laid for the whole class, the cloth {first.laid.fold.value}: {laid}; {shorter}"
        if first.one_by_one is not None:
            alone = show_value(first.one_by_one.value, line.system)
            yield f"if each student cut her own length, they would need {alone} together"
    elif first.width is not None:
        lengths = ", ".join(
            f"{cls.computed.size_name(size) or 'each'} {show_to_buy(length.length, line.system)}"
            for size, length in first.lengths
        )
        yield f"a length for each student, cut out in class: {lengths}"
    for other in others:
        yield _other_width(other, line.system)


def _other_width(cloth: ClassCloth, system: System) -> str:
    width = show_value(cloth.width.value, system) if cloth.width is not None else "another width"
    if cloth.needed is None:
        return f"{width} wide does not do: {cloth.reason}"
    return f"{width} wide it would need {show_to_buy(cloth.needed.length, system)} before spares"


def _cut_before(cls: ComputedClass, bags: Sequence[Bag], system: System) -> Iterator[str]:
    """The table of parts, a row each, a column for each size: how many of all, and how large."""
    names = list(dict.fromkeys(part.name for bag in bags for part in bag.cut))
    if not names:
        return
    yield from ("", "To cut before class (how many for all, length × width)")
    rows = [["", *(cls.computed.size_name(bag.size) or "all" for bag in bags)]]
    for name in names:
        parts = [next((part for part in bag.cut if part.name == name), None) for bag in bags]
        how = next((part.how for part in parts if part is not None), "")
        cells = [_cut_cell(part, bag.count, system) for part, bag in zip(parts, bags, strict=True)]
        rows.append([f"{name}, {how} each", *cells])
    widths = [max(len(row[column]) for row in rows) for column in range(len(rows[0]))]
    for row in rows:
        yield "  " + "   ".join(f"{cell:<{width}}" for cell, width in zip(row, widths, strict=True)).rstrip()


def _cut_cell(part: CutPart | None, bags: int, system: System) -> str:
    if part is None:
        return ""
    measures = [show_value(each.value, system) for each in (part.length, part.width) if each is not None]
    size = f": {' × '.join(measures)}" if measures else ""
    return f"{part.how_many * bags}{size}"


def _packed(bag: Bag, cls: ComputedClass, system: System) -> Iterator[str]:
    size = cls.computed.size_name(bag.size)
    yield from ("", f"{counted(bag.count, 'bag')}{f' of size {size}' if size else ''}, in each")
    cut = [counted(part.how_many, part.name) for part in bag.cut]
    if cut:
        yield fill(f"cut: {', '.join(cut)}", _WIDTH, initial_indent="  ", subsequent_indent="    ")
    for line, number in (*bag.lengths, *bag.things):
        detail = f", {line.size}" if line.size else ""
        yield f"  {line.name}{detail}: {_amount(number, line, system)}"


def _amount(number: Worked, line: KitLine, system: System) -> str:
    if isinstance(number.value, Length):
        return show_value(number.value, system)
    return counted(int(number.number), line.unit) if line.unit else decimal(number.number)


def _cost_by_student(costs: Costs, cls: ComputedClass, *, working: bool) -> Iterator[str]:
    yield from ("", "Cost by student")
    for student in costs.students:
        size = cls.computed.size_name(student.size)
        yield f"  {f'size {size}' if size else 'each'}: {money(student.total.amount, costs.currency)}"
        if working:
            yield from (f"      {part.line}" for part in student.parts)
            yield from (fill(student.total.line, _WIDTH, initial_indent=" " * 6, subsequent_indent=" " * 8),)
