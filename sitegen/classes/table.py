"""The kit as rows of a spreadsheet. Amounts are numbers in the units that stand beside them."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterator
from fractions import Fraction

from sitegen.classes.bags import bags_of
from sitegen.classes.costs import Costs, costs_of, to_the_cent
from sitegen.classes.kit import Kit, KitLine
from sitegen.classes.model import ComputedClass
from sitegen.quantities import (
    RULER,
    Length,
    Rounding,
    System,
    Unit,
    Worked,
    decimal,
    show_value,
    show_working,
)

HEAD = ("list", "size", "item", "detail", "amount", "unit", "each", "cost", "working")
"""The columns; ``cost`` is in the currency of the prices, which stands in ``unit`` where the amount is money."""
Row = tuple[str, ...]
_TRIGGERS = ("=", "+", "-", "@", "\t", "\r", "\n")
"""What a spreadsheet takes for the begin of a formula (OWASP, CSV Injection; from memory)."""


def kit_rows(kit: Kit, cls: ComputedClass, system: System) -> tuple[Row, ...]:
    """The rows of a kit below ``HEAD``: to buy, to cut, the bags, what students bring, and the costs."""
    costs = costs_of(kit, cls)
    paid = {cost.key: cost.amount for cost in costs.lines} if costs else {}
    return (
        *(_bought(line, paid.get(line.key)) for line in kit.lines),
        *_cut_and_packed(kit, cls, system),
        *(_row("each student brings", item=name) for name in kit.brought),
        *(_cost_rows(costs, cls) if costs else ()),
    )


def as_csv(rows: tuple[Row, ...]) -> str:
    """Rows below their head as CSV (RFC 4180), in which no cell is a formula to a spreadsheet."""
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\r\n")
    writer.writerow(HEAD)
    writer.writerows([safe(cell) for cell in row] for row in rows)
    return out.getvalue()


def safe(cell: str) -> str:
    """A cell that no spreadsheet works out: what begins like a formula gets an apostrophe before it."""
    return f"'{cell}" if cell.startswith(_TRIGGERS) else cell


def _row(
    what: str,
    *,
    size: str = "",
    item: str = "",
    detail: str = "",
    amount: str = "",
    unit: str = "",
    each: str = "",
    cost: str = "",
    working: str = "",
) -> Row:
    return what, size, item, detail, amount, unit, each, cost, working


def _bought(line: KitLine, cost: Fraction | None) -> Row:
    amount, unit = _number(line.buy, line.system, line.unit, to_buy=True)
    price = line.price
    return _row(
        "to buy",
        item=line.name,
        detail=line.size,
        amount=amount,
        unit=unit,
        each=to_the_cent(price.amount) if price is not None else "",
        cost=to_the_cent(cost) if cost is not None else "",
        working="; ".join(show_working(line.buy, line.system)),
    )


def _number(number: Worked, system: System, unit: str, *, to_buy: bool = False) -> tuple[str, str]:
    """A number as a spreadsheet reads it, and its unit; what is bought by its length in yards or metres.

    A length comes as finely as three decimals tell it, what must be enough on the next mark of a ruler.
    """
    if not isinstance(number.value, Length):
        return decimal(number.number), unit
    inches = system is System.INCHES
    shown = (Unit.YD if inches else Unit.M) if to_buy else (Unit.IN if inches else Unit.CM)
    exact = number.rounding is Rounding.NEAREST
    length = number.length if exact or to_buy else RULER.shown(number.length, system, number.rounding)
    return decimal(length.in_unit(shown), 3), shown.symbol


def _cut_and_packed(kit: Kit, cls: ComputedClass, system: System) -> Iterator[Row]:
    for bag in bags_of(kit, cls):
        size = cls.computed.size_name(bag.size)
        for part in bag.cut:
            measures = [show_value(each.value, system) for each in (part.length, part.width) if each is not None]
            many, total = str(part.how_many), str(part.how_many * bag.count)
            yield _row(
                "cut before class",
                size=size,
                item=part.name,
                detail=" × ".join(measures),
                amount=total,
                unit=part.how,
                each=many,
            )
        yield _row("bags", size=size, item="bag", amount=str(bag.count))
        for line, number in (*bag.lengths, *bag.things):
            amount, unit = _number(number, system, line.unit)
            yield _row("in each bag", size=size, item=line.name, detail=line.size, amount=amount, unit=unit)


def _cost_rows(costs: Costs, cls: ComputedClass) -> Iterator[Row]:
    yield _row("cost of the kit", cost=to_the_cent(costs.total.amount), unit=costs.currency, working=costs.total.line)
    for student in costs.students:
        size = cls.computed.size_name(student.size)
        lines = "; ".join((*(part.line for part in student.parts), student.total.line))
        yield _row(
            "cost by student",
            size=size,
            amount=str(student.count),
            unit=costs.currency,
            cost=to_the_cent(student.total.amount),
            working=lines,
        )
