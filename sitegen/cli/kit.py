"""``sitegen kit CLASS [--working] [--samples] [--csv FILE] [--html FILE]``"""

from __future__ import annotations

import argparse
from collections.abc import Iterator
from textwrap import fill

from sitegen.classes import as_csv, kit_of, kit_rows, sealed_page, sealed_table
from sitegen.cli.one_class import Found, add_class, heading, one_class, say_written, units_of, write
from sitegen.cli.screen import SOMETHING_WRONG
from sitegen.findings import Collector
from sitegen.publishing import BagView, KitItem, KitView, SamplesView, kit_view, samples_view, teacher_page
from sitegen.quantities import System
from sitegen.tutorial.build import site

_WIDTH = 100


def set_up(command: argparse.ArgumentParser) -> None:
    """Tell the parser of this command what it takes."""
    command.description = (
        "Lists what to buy for a class, what to cut before it, and what goes into each student's bag, all"
        " from the numbers of its tutorial."
    )
    command.epilog = "Exit code: 0 nothing wrong, 1 something wrong, 2 something could not be read or written."
    add_class(command)
    command.add_argument("--working", action="store_true", help="show how every total was got")
    command.add_argument("--samples", action="store_true", help="list the samples and swatches to prepare instead")
    command.add_argument("--csv", metavar="FILE", help="write the list as a table for a spreadsheet")
    command.add_argument("--html", metavar="FILE", help="write kit, sessions and samples as a page for the teacher")


def run(options: argparse.Namespace) -> int:
    """Work the kit out, print it, write the table."""
    found = one_class(options)
    if isinstance(found, int):
        return found
    system = units_of(options, found.cls)
    written = [
        make(found, file, system) for make, file in ((_table, options.csv), (_page, options.html)) if file is not None
    ]
    if options.samples:
        lines = _samples(samples_view(found.cls, system), working=options.working)
    else:
        lines = _told(kit_view(found.cls, system), working=options.working)
    print("\n".join(lines))
    return max([found.code, *(say_written(*each) for each in written)])


def _table(found: Found, file: str, system: System) -> tuple[int, str]:
    """Write the table; the exit code, and what to say of it."""
    rows = kit_rows(kit_of(found.cls, system), found.cls, system)
    return write(file, sealed_table(as_csv(rows)), found, "The kit as a table")


def _page(found: Found, file: str, system: System) -> tuple[int, str]:
    """Write the page for the teacher; the exit code, and what to say of it."""
    what = "The page for the teacher"
    if found.any_wrong:
        return write(file, b"", found, what)
    page = teacher_page(found.cls, site(found.folder, Collector()), found.folder, system)
    if page is None:
        return SOMETHING_WRONG, "sitegen: nothing was written. The theme cannot be used; sitegen check tells why."
    return write(file, sealed_page(page), found, what)


def _samples(view: SamplesView, *, working: bool) -> Iterator[str]:
    yield heading(view.head)
    for group in view.groups:
        yield from ("", group.head)
        for sample in group.samples:
            many = "" if sample.count.text == "1" else f"{sample.count.text} × "
            steps = ", ".join(f"“{step.title}”" for step in sample.steps)
            yield _indented(f"{many}{sample.name}{f', for {steps}' if steps else ''}", 2)
            for cloth in sample.cloth:
                yield f"      {cloth.pieces} × {cloth.fabric}, {cloth.size.text}"
            yield _indented(" ".join(sample.how), 6)
            if working:
                yield from (f"        {line}" for line in sample.working)
    if view.totals:
        yield from ("", "Cloth and supplies for the samples, besides the kit")
    for total in view.totals:
        amount = total.amount.text if total.amount is not None else f"not known, {total.reason}"
        yield f"  {total.fabric}, {total.what}: {amount}"
        if working and total.amount is not None:
            yield from (f"        {line}" for line in total.amount.working)


def _indented(text: str, by: int) -> str:
    return fill(text, _WIDTH, initial_indent=" " * by, subsequent_indent=" " * (by + 2))


def _told(kit: KitView, *, working: bool) -> Iterator[str]:
    yield heading(kit.head)
    yield from _to_buy(kit, working=working)
    yield from _cut_before(kit)
    for bag in kit.bags:
        yield from _packed(bag)
    for head, names in (("For all to share", kit.shared), ("Each student brings", kit.brought)):
        if names:
            yield from ("", fill(f"{head}: {', '.join(names)}", _WIDTH, subsequent_indent="  "))
    yield from _cost_by_student(kit, working=working)


def _to_buy(kit: KitView, *, working: bool) -> Iterator[str]:
    items = [item for group in kit.groups for item in group.items]
    wide = max((len(item.called) for item in items), default=0)
    amounts = max((len(item.buy.text) for item in items), default=0)
    yield from ("", "To buy")
    for group in kit.groups:
        yield f"  {group.head}"
        for item in group.items:
            cost = f"  {item.cost.text}" if item.cost is not None else ""
            yield f"    {item.called:<{wide}}  {item.buy.text:>{amounts}}{cost}"
            for words in (*item.notes, *item.other_widths):
                yield _indented(words, 6)
            if working:
                yield from _working_of(item)
    for words in kit.unknown:
        yield f"    not known: {words}"
    if kit.total is not None:
        yield f"  Together {kit.total.text}"
    if kit.without_price:
        yield f"  without the price of {', '.join(kit.without_price)}"


def _working_of(item: KitItem) -> Iterator[str]:
    for line in (*item.buy.working, *(item.cost.working if item.cost is not None else ())):
        yield f"        {line}"


def _cut_before(kit: KitView) -> Iterator[str]:
    """The table of parts, a row each, a column for each size: how many of all, and how large."""
    if not kit.parts:
        return
    yield from ("", "To cut before class (how many for all, length × width)")
    rows = [["", *(size or "all" for size in kit.sizes)]]
    rows += [[f"{part.name}, {part.how} each", *part.cells] for part in kit.parts]
    widths = [max(len(row[column]) for row in rows) for column in range(len(rows[0]))]
    for row in rows:
        yield "  " + "   ".join(f"{cell:<{width}}" for cell, width in zip(row, widths, strict=True)).rstrip()


def _packed(bag: BagView) -> Iterator[str]:
    yield from ("", f"{bag.head}, in each")
    if bag.cut:
        yield _indented(f"cut: {', '.join(bag.cut)}", 2)
    for thing in bag.things:
        yield f"  {thing.name}: {thing.amount}"


def _cost_by_student(kit: KitView, *, working: bool) -> Iterator[str]:
    if not kit.costs:
        return
    yield from ("", "Cost by student")
    for size, cost in kit.costs:
        yield f"  {f'size {size}' if size else 'each'}: {cost.text}"
        for line in cost.working if working else ():
            yield _indented(line, 6)
