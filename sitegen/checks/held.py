"""Holds what an author wrote against what was computed."""

from __future__ import annotations

from collections.abc import Iterator

from sitegen.findings import Finding, Severity
from sitegen.quantities import (
    RULER,
    Length,
    Rounding,
    System,
    Typed,
    Unit,
    Worked,
    decimal,
    show_in_unit,
    show_working,
    to_buy,
    vulgar,
)
from sitegen.tutorial import Amount, Claim, Computed, Reference, words_of


def system_of(typed: Typed) -> System:
    """The system of units in which something was typed."""
    return typed.unit.system


def instead(typed: Typed, exact: Length, rounding: Rounding = Rounding.NEAREST) -> str:
    """The text to put instead of a typed length, in its own unit, with or without unit and pair as it was.

    Where the number is right and only its unit is not, the unit is what changes: ``3.5 mm`` becomes ``3.5 cm``.
    """
    text = in_words(typed, exact, rounding)
    if typed.is_bare:
        return show_in_unit(exact, typed.unit, rounding=rounding).removesuffix(f" {typed.unit.symbol}")
    if typed.pair is not None:
        return f"{text} ({in_words(typed.pair, exact, rounding)})"
    return text


def in_size(name: str) -> str:
    """In which size, for the end of a sentence; nothing when there is only one."""
    return f" in size {name}" if name else ""


def in_words(typed: Typed, exact: Length, rounding: Rounding = Rounding.NEAREST) -> str:
    """The exact length in the unit that was typed, or in the one in which the typed number would be right."""
    if rounding is Rounding.SOLD:  # shops sell in steps so long that the same number in another unit says nothing
        return show_in_unit(exact, typed.unit, rounding=rounding)
    shown = (show_in_unit(exact, unit, rounding=rounding) for unit in Unit)
    same_number = (text for text in shown if text.rpartition(" ")[0] == typed.number)
    return next(same_number, show_in_unit(exact, typed.unit, rounding=rounding))


def show_bought(typed: Typed, need: Length) -> str:
    """What to ask for in a shop, rounded up, in yards or metres as it was typed; a number without a unit stays one, of
    the unit that it had."""
    metric = typed.unit.system is System.CENTIMETRES
    bought = to_buy(need, typed.unit.system)
    if typed.is_bare:
        number = bought.in_unit(typed.unit)
        return decimal(number) if metric else vulgar(number)
    unit = Unit.YD if not metric else Unit.M if typed.unit is Unit.M else Unit.CM
    return f"{decimal(bought.in_unit(unit)) if metric else vulgar(bought.in_unit(unit))} {unit.symbol}"


def alone(typed: Typed) -> str:
    """A typed length as it stands before its pair in brackets."""
    if typed.pair is None:
        return typed.text.strip()
    return typed.text[: typed.pair.start - typed.start].rstrip(" ([/=")


def disagreements(check_id: str, claim: Claim, computed: Computed) -> Iterator[Finding]:
    """A finding for the size in which a claim disagrees, or one for all such sizes when there are several."""
    source = claim.lengths.source
    if isinstance(source, Reference):
        return
    off = off_in(claim, computed)
    if len(off) == 1 and source.differs:
        yield _one(check_id, claim, computed, *off[0])
    elif off:
        yield _several(check_id, claim, computed, off)


def off_in(claim: Claim, computed: Computed) -> list[tuple[int, Amount, Worked]]:
    """The sizes in which a claim disagrees, by index, with what was written and the number as it is computed."""
    off: list[tuple[int, Amount, Worked]] = []
    for size in range(computed.tutorial.size_count):
        amount = claim.lengths.amount_at(size)
        exact = computed.length(claim.lengths.name, size) if amount is not None else None
        if amount is None or exact is None:
            continue
        # A distance is written without its sign: in front of the shoulder or behind it, added or taken out.
        if not RULER.agrees(amount.typed.value, abs(exact.length), system_of(amount.typed), exact.rounding):
            off.append((size, amount, exact))
    return off


def _one(check_id: str, claim: Claim, computed: Computed, size: int, amount: Amount, exact: Worked) -> Finding:
    right = instead(amount.typed, abs(exact.length), exact.rounding)
    size_name = computed.size_name(size)
    of_size = f" of size {size_name}" if size_name else ""
    return Finding(
        check_id,
        Severity.WRONG,
        amount.place,
        f"The {words_of(claim.lengths.name)}{of_size} is given as {amount.typed.text.strip()}, computed it is {right}.",
        amount.typed.text.strip(),
        right,
        show_working(exact, system_of(amount.typed)),
        size_name,
    )


def _several(check_id: str, claim: Claim, computed: Computed, off: list[tuple[int, Amount, Worked]]) -> Finding:
    source = claim.lengths.source
    if isinstance(source, Reference):
        raise TypeError("a claim by reference has nothing to disagree with")
    size, amount, first = off[0]
    unit, rounding = amount.typed.unit, first.rounding
    values = [computed.number(claim.lengths.name, index) for index in range(computed.tutorial.size_count)]
    exact = [abs(value.length) for value in values if value is not None]
    if all(value == exact[0] for value in exact):
        one = show_in_unit(exact[0], unit, RULER, rounding)
        right = one if source.differs else instead(source.at(0).typed, exact[0], rounding)
    else:
        symbol = f" {unit.symbol}"
        each = (show_in_unit(value, unit, RULER, rounding) for value in exact)
        right = ", ".join(text.removesuffix(symbol) for text in each) + symbol
    said = source.at(0).typed.text.strip() if not source.differs else ", ".join(a.typed.text.strip() for a in source)
    same_in_all = not source.differs and all(value == exact[0] for value in exact)
    names = "" if same_in_all else ", ".join(computed.size_name(index) for index, _, _ in off)
    in_sizes = f" in {'size' if len(off) == 1 else 'sizes'} {names}" if names else ""
    working = show_working(first, unit.system)
    if names:
        working = (f"size {computed.size_name(size)}:", *working)
    return Finding(
        check_id,
        Severity.WRONG,
        claim.lengths.place if source.differs else amount.place,
        f"The {words_of(claim.lengths.name)} does not agree{in_sizes}: given {said}, computed {right}.",
        said,
        right,
        working,
        names,
    )
