"""What the steps of a tutorial tell of the making, in the words of findings."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from sitegen.tutorial import Reference, Step, Tutorial


def tells(tutorial: Tutorial) -> bool:
    """Whether the author says in any step what is sewn, turned or finished; if not, nothing can be said of it."""
    return any(step.joins or step.hems or step.finishes or step.darts or step.boxes for step in tutorial.steps)


def by_title(step: Step) -> str:
    """The step as findings name it. Numbers of steps differ from view to view, titles do not."""
    return f"the step “{step.title}”"


def listed(names: Iterable[str]) -> str:
    """``front.side``, ``front.side and back.side``, ``a, b and c``."""
    *most, last = dict.fromkeys(names)
    return f"{', '.join(most)} and {last}" if most else last


def handled(step: Step, tutorial: Tutorial) -> Iterator[Reference]:
    """Every name of an edge, band, elastic or trim that a step works on, where it stands; a hem stands for its edges,
    a zip for those of its opening too, boxed corners for the pieces of their panel."""
    yield from step.stabilises
    yield from (name for join in step.joins for name in join.names())
    yield from (name for chain in step.finishes for name in chain)
    for name in step.inserts:
        yield name
        trim = tutorial.trims.get(name.name)
        edges = trim.edges if trim is not None and trim.is_zip else ()
        yield from (Reference(edge.name, name.place) for edge in edges)
    yield from step.darts
    for boxed in step.boxes:
        pieces = tutorial.boxed[boxed.name].pieces if boxed.name in tutorial.boxed else ()
        yield from (Reference(piece.name, boxed.place) for piece in pieces)
    for hem in step.hems:
        edges = tutorial.hems[hem.name].edges if hem.name in tutorial.hems else ()
        yield from (Reference(edge.name, hem.place) for edge in edges)
