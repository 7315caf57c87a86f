"""Sizes that are named by a height, against the heights that are given."""

from __future__ import annotations

from collections.abc import Iterator

from sitegen.checks.registry import check
from sitegen.findings import Finding, Severity
from sitegen.quantities import cm, show_in_unit
from sitegen.tutorial import Amount, Computed, Reference, Tutorial

_SHORTEST, _TALLEST = 45, 210
_CHILD = "sizes: ['92', '98', '104']\nbody: {height: 'HEIGHTS cm'}"


@check(
    id="size-height",
    area="sizes",
    severity=Severity.DOUBTFUL,
    looks_at=Tutorial,
    title="A size named by a height that is not its own",
    why="The size is chosen by the height, so a child gets the trousers of another.",
    source="Size designation by height in centimetres: ISO 8559-2",
    trips=_CHILD.replace("HEIGHTS", "92, 98, 140"),
    passes=_CHILD.replace("HEIGHTS", "92, 98, 104"),
)
def size_height(tutorial: Tutorial, computed: Computed) -> Iterator[Finding]:
    """Where every size is named by a number of centimetres and the heights of the body are given, the height of a size
    is the number in its name, give or take three centimetres, since a name may also be the end of a range."""
    heights = tutorial.body.get("height")
    names = [int(name) if name.isdigit() else 0 for name in tutorial.sizes]
    if heights is None or isinstance(heights.source, Reference) or not heights.source.differs:
        return
    if not names or not all(_SHORTEST <= name <= _TALLEST for name in names):
        return
    for size, name in enumerate(names):
        amount = heights.amount_at(size)
        if amount is not None and abs(amount.typed.value.mm - cm(name).mm) > cm(3).mm:
            yield _finding(amount, name)
            return


def _finding(amount: Amount, name: int) -> Finding:
    right = show_in_unit(cm(name), amount.typed.unit)
    said = amount.typed.text.strip()
    return Finding(
        "size-height",
        Severity.DOUBTFUL,
        amount.place,
        f"Size {name} is given a height of {show_in_unit(amount.typed.value, amount.typed.unit)}.",
        said,
        right.removesuffix(f" {amount.typed.unit.symbol}") if amount.typed.is_bare else right,
        (),
        str(name),
    )
