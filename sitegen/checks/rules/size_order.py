"""The order of sizes, by their names and by the body."""

from __future__ import annotations

from collections.abc import Iterator

from sitegen.checks.registry import check
from sitegen.checks.size_steps import odd_bodies, runs_of, turned_bodies, turned_names
from sitegen.findings import Finding, Place, Severity
from sitegen.tutorial import Computed, Tutorial

_LONG_RUN = 4
"""From here on the check of each row finds a value that turns back."""


@check(
    id="size-order",
    area="sizes",
    severity=Severity.DOUBTFUL,
    looks_at=Tutorial,
    title="Sizes out of order",
    why="Every value by size stands under a wrong size then, and whoever takes it cuts another garment.",
    source="Sizes run one way, and the body with them (ASTM D5585-11e1)",
    trips="sizes: [S, M, L]\nbody: {bust: '33, 37, 35 in', hip: '35, 39, 37 in'}",
    passes="sizes: [S, M, L]\nbody: {bust: '33, 35, 37 in', hip: '35, 37, 39 in'}",
)
def size_order(tutorial: Tutorial, computed: Computed) -> Iterator[Finding]:
    """The names of sizes run one way, and so do the measurements of the body: not all of them turn back at one size,
    and in a run of up to three sizes not one alone."""
    names, bodies = turned_names(tutorial), turned_bodies(computed)
    for size, rises in names.items():
        yield _finding(
            tutorial.size_places[size],
            f"Size {tutorial.sizes[size]} stands behind size {tutorial.sizes[size - 1]}, although the sizes run from"
            f" {_way(rises)}. Put them in order, and every value by size with them.",
            tutorial.sizes[size],
        )
    for size, rises in bodies.items():
        if size in names:
            continue
        place, said = _where(next(iter(tutorial.body)), size, tutorial)
        yield _finding(
            place,
            f"From size {tutorial.sizes[size - 1]} to size {tutorial.sizes[size]} the whole body becomes"
            f" {'smaller' if rises else 'larger'}, although the sizes run from {_way(rises)}. Are two columns swapped?",
            said,
        )
    for run in runs_of(tutorial):
        if len(run) < _LONG_RUN:
            for name, size, rises in odd_bodies(run, computed):
                if size not in bodies:
                    yield _one_alone(name, size, rises, tutorial)


def _one_alone(name: str, size: int, rises: bool, tutorial: Tutorial) -> Finding:
    place, said = _where(name, size, tutorial)
    return _finding(
        place,
        f"From size {tutorial.sizes[size - 1]} to size {tutorial.sizes[size]} the body {name.replace('_', ' ')}"
        f" {'falls' if rises else 'rises'}, while the rest of the body {'rises' if rises else 'falls'}.",
        said,
    )


def _finding(place: Place, message: str, said: str) -> Finding:
    return Finding("size-order", Severity.DOUBTFUL, place, message, said)


def _where(name: str, size: int, tutorial: Tutorial) -> tuple[Place, str]:
    """Where a body measurement of a size is written, and its text."""
    lengths = tutorial.body[name]
    amount = lengths.amount_at(size)
    return (amount.place, amount.typed.text.strip()) if amount is not None else (lengths.place, "")


def _way(rises: bool) -> str:
    return "small to large" if rises else "large to small"
