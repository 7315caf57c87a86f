"""What is bought for a class, and what it costs."""

from __future__ import annotations

from collections.abc import Iterator

from sitegen.checks.registry import COMMON_PRACTICE, check
from sitegen.classes import ComputedClass, bought_fabrics, shared_in_vain, unknown_cloth, unpriced
from sitegen.findings import Finding, Severity
from sitegen.tutorial import Computed

_TOTE = (
    "fabrics: {main: {name: canvas, structure: woven, width: 45 in, buy: 1 yd}}\n"
    "pieces: {panel: {cut: 2, fabric: main, length: 12 in, width: 16 in}}\n"
    "supplies: [{item: polyester thread, amount: 1 spool}]\n"
)
_CLASS = "--- classes/evening.yaml\ntitle: Evening class\ntutorial: example\nstudents: 4\nsessions: [{minutes: 120}]\n"


@check(
    id="class-cloth",
    area="classes",
    severity=Severity.WRONG,
    looks_at=ComputedClass,
    title="A fabric that cannot be bought for the class",
    why="The kit list would lack its largest part.",
    source="Follows from the cutting layout",
    trips=_TOTE + _CLASS + "widths: {main: 12 in}\n",
    passes=_TOTE + _CLASS + "widths: {main: 60 in}\n",
)
def class_cloth(cls: ComputedClass, computed: Computed) -> Iterator[Finding]:
    """The pieces of every fabric fit its width in each size of the class, or the tutorial says how much to buy."""
    for fabric in bought_fabrics(cls):
        reason = unknown_cloth(fabric, cls)
        if not reason:
            continue
        amounts = cls.written.widths.get(fabric.key)
        yield Finding(
            "class-cloth",
            Severity.WRONG,
            amounts[0].place if amounts else cls.written.tutorial.place,
            f"Nobody can tell how much {fabric.name} the class needs: {reason}.",
            amounts[0].typed.text.strip() if amounts else cls.written.tutorial.text,
        )


@check(
    id="class-shared",
    area="classes",
    severity=Severity.DOUBTFUL,
    looks_at=ComputedClass,
    title="Something shared of which nothing is bought to share",
    why="The teacher counts on fewer than are bought, or on some that are not bought at all.",
    source=COMMON_PRACTICE,
    trips=_TOTE + _CLASS + "shared: {polyester thread: 2}\nbrings: [polyester thread]\n",
    passes=_TOTE + _CLASS + "shared: {polyester thread: 2}\n",
)
def class_shared(cls: ComputedClass, computed: Computed) -> Iterator[Finding]:
    """Every supply that is shared is bought for the class, by its count, for two students or more."""
    for name, count, reason in shared_in_vain(cls):
        message = f"That {count.number} share the {name} changes nothing. {reason}"
        yield Finding("class-shared", Severity.DOUBTFUL, count.place, message, str(count.number))


@check(
    id="price-currencies",
    area="classes",
    severity=Severity.WRONG,
    looks_at=ComputedClass,
    title="Prices in several currencies",
    why="They cannot be added up.",
    source="Arithmetic",
    trips=_TOTE + _CLASS + "prices: {main: £9.50 a metre, polyester thread: 2.80 EUR}\n",
    passes=_TOTE + _CLASS + "prices: {main: £9.50 a metre, polyester thread: £2.80}\n",
)
def price_currencies(cls: ComputedClass, computed: Computed) -> Iterator[Finding]:
    """All prices of a class are in the currency of the first."""
    first, *others = cls.written.prices or (None,)
    for price in others:
        if first is not None and price is not None and price.currency != first.currency:
            yield Finding(
                "price-currencies",
                Severity.WRONG,
                price.place,
                f"The price of {price.item.text} is in {price.currency}, that of {first.item.text} in"
                f" {first.currency}. Keep to one currency.",
            )


@check(
    id="price-missing",
    area="classes",
    severity=Severity.HINT,
    looks_at=ComputedClass,
    title="Something to buy that has no price",
    why="The cost by student comes out too low.",
    source=COMMON_PRACTICE,
    trips=_TOTE + _CLASS + "prices: {main: £9.50 a metre}\n",
    passes=_TOTE + _CLASS + "prices: {main: £9.50 a metre, polyester thread: £2.80}\n",
)
def price_missing(cls: ComputedClass, computed: Computed) -> Iterator[Finding]:
    """Once anything has a price, everything that is bought has one."""
    if not cls.written.prices:
        return
    missing = unpriced(cls)
    if missing:
        yield Finding(
            "price-missing",
            Severity.HINT,
            cls.written.prices_place or cls.written.place,
            f"These have no price, so the cost by student is too low: {', '.join(missing)}.",
        )
