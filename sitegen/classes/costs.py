"""What the kit costs, and each student's share of it. Money is exact, and rounded only where it is shown."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from math import floor

from sitegen.classes.kit import Kit, KitLine
from sitegen.classes.model import ComputedClass
from sitegen.quantities import Length, Unit, decimal

_UNIT_WORDS = {Unit.M: ("m", "a metre"), Unit.YD: ("yd", "a yard")}


@dataclass(frozen=True, slots=True)
class Cost:
    """An amount of money with the line that says how it was got; ``key`` is that of its line of the kit, if it has
    one."""

    key: str
    name: str
    amount: Fraction
    line: str


@dataclass(frozen=True, slots=True)
class StudentCost:
    """What one student of a size pays for each thing, and together."""

    size: int
    count: int
    parts: tuple[Cost, ...]
    total: Cost


@dataclass(frozen=True, slots=True)
class Costs:
    """The cost of all that has a price, by thing and by student, and what has none."""

    currency: str
    lines: tuple[Cost, ...]
    total: Cost
    students: tuple[StudentCost, ...]
    without_price: tuple[str, ...]


def costs_of(kit: Kit, cls: ComputedClass) -> Costs | None:
    """The costs of a kit; None when nothing of it has a price, or prices are in several currencies.

    Cloth and elastic are shared out by what a student of each size needs alone, all else in equal parts. The parts of
    all students together are the whole, to the last fraction. Source: common practice, no source.
    """
    currencies = {price.currency for price in cls.written.prices}
    priced = [line for line in kit.lines if line.price is not None]
    if not priced or len(currencies) != 1:
        return None
    currency = currencies.pop()
    lines = [_cost(line, currency) for line in priced]
    total = _added("the kit", lines, currency)
    students = []
    for each in cls.written.students:
        shares = [_share(line, cost, each.size, cls, currency) for line, cost in zip(priced, lines, strict=True)]
        students.append(StudentCost(each.size, each.count, tuple(shares), _added("each student", shares, currency)))
    missing = tuple(line.name for line in kit.lines if line.price is None)
    return Costs(currency, tuple(lines), total, tuple(students), missing)


def money(amount: Fraction, currency: str) -> str:
    """An amount to the cent, ``£9.50`` or ``9.50 EUR``, halves up."""
    text = to_the_cent(amount)
    return f"{text} {currency}" if currency.isalpha() else f"{currency}{text}"


def to_the_cent(amount: Fraction) -> str:
    """An amount with two decimals and no currency, halves up."""
    cents = floor(amount * 100 + Fraction(1, 2))
    return f"{cents // 100}.{cents % 100:02d}"


def _cost(line: KitLine, currency: str) -> Cost:
    price = line.price
    if price is None:
        raise TypeError(f"{line.name} has no price")
    if price.per is not None:
        count = line.buy.length.in_unit(price.per)
        short, long = _UNIT_WORDS[price.per]
        said = f"{decimal(count, 3)} {short} × {money(price.amount, currency)} {long}"
    else:
        count = line.buy.number
        said = f"{line.amount} × {money(price.amount, currency)}"
    amount = count * price.amount
    return Cost(line.key, line.name, amount, f"{line.name}: {said} = {money(amount, currency)}")


def _added(name: str, parts: list[Cost], currency: str) -> Cost:
    total = sum((part.amount for part in parts), Fraction(0))
    shown = " + ".join(f"{part.name} {money(part.amount, currency)}" for part in parts)
    rounded = sum(floor(part.amount * 100 + Fraction(1, 2)) for part in parts)
    note = "" if rounded == floor(total * 100 + Fraction(1, 2)) else " (shown rounded; worked with the exact amounts)"
    return Cost("", name, total, f"{name}: {shown} = {money(total, currency)}{note}")


def _share(line: KitLine, cost: Cost, size: int, cls: ComputedClass, currency: str) -> Cost:
    """One student's part of the cost of a thing."""
    needs = {index: number.length for index, number in line.for_one if isinstance(number.value, Length)}
    counts = {each.size: each.count for each in cls.written.students}
    whole = money(cost.amount, currency)
    if not line.by_length or set(needs) != set(counts):
        amount = cost.amount / cls.student_count
        return Cost(
            line.key, line.name, amount, f"{line.name}: {whole} ÷ {cls.student_count} = {money(amount, currency)}"
        )
    of_all = sum((needs[index].mm * count for index, count in counts.items()), Fraction(0))
    share = needs[size].mm / of_all
    amount = cost.amount * share
    said = f"{line.name}: {whole} × {decimal(share * 100, 1)}% of the length = {money(amount, currency)}"
    return Cost(line.key, line.name, amount, said)
