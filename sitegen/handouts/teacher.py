"""What stands in the teacher's copy alone: the plan of the sessions, what to buy and to pack, samples to prepare."""

from __future__ import annotations

from collections.abc import Iterator

from sitegen.classes import without_minutes
from sitegen.handouts.model import Part, PartGroup, Table, Working
from sitegen.handouts.pictures import IDS, drawing
from sitegen.handouts.source import Source
from sitegen.handouts.words import SheetWords
from sitegen.publishing import (
    KitItem,
    KitView,
    SampleView,
    SessionView,
    StepName,
    kept_together,
    kit_view,
    layout_drawing,
    plan_view,
    samples_view,
)


def parts_of(source: Source) -> tuple[Part, ...]:
    """Every part of which something is known."""
    words = source.words
    found = (
        Part(words("plan"), tuple(_plan(source))),
        Part(words("kit"), tuple(_kit(source))),
        Part(words("samples"), tuple(_samples(source))),
    )
    return tuple(part for part in found if part.groups)


def _plan(source: Source) -> Iterator[PartGroup]:
    if without_minutes(source.cls):
        return
    plan = plan_view(source.cls, source.numbers.units[0], source.page.language)
    words = source.words
    for head, steps in ((words("before_by_teacher"), plan.before), (words("home_first"), plan.homework_before)):
        if steps:
            yield PartGroup(head, (_titles(steps),))
    for session in plan.sessions:
        yield _session(session, source)
    if plan.left:
        yield PartGroup(words("left_over"), (_titles(plan.left),))
    yield PartGroup("", plan.rule)


def _session(session: SessionView, source: Source) -> PartGroup:
    words, rows = source.words, []
    for placed in session.steps:
        notes = [placed.turns]
        if placed.meanwhile:
            notes.append(words("meanwhile", steps=_titles(placed.meanwhile)))
        if not placed.may_stop:
            notes.append(words("go_on"))
        told = "; ".join(each for each in notes if each)
        rows.append((placed.begins, str(placed.minutes), f"{placed.step.number} {placed.step.title}", told))
        if placed.pause:
            rows.append((placed.pause_begins, str(placed.pause), words("break"), ""))
    lines = [words("minutes_left", count=session.free, minutes=session.free)]
    if session.homework:
        lines.append(words("homework", steps=_titles(session.homework)))
    head = f"{words('session', number=session.number)}: {session.when}"
    return PartGroup(head, tuple(lines), Table((words("begins"), words("min"), words("step"), ""), tuple(rows)))


def _titles(steps: tuple[StepName, ...]) -> str:
    return ", ".join(f"{step.number} {step.title}" for step in steps)


def _kit(source: Source) -> Iterator[PartGroup]:
    system, words = source.numbers.units[0], source.words
    kit = kit_view(source.cls, system, source.page.language)
    for group in kit.groups:
        rows = tuple(_to_buy(item) for item in group.items)
        notes = tuple(
            kept_together(f"{item.name}: {note}") for item in group.items for note in (*item.notes, *item.other_widths)
        )
        yield PartGroup(
            group.head,
            notes,
            Table(("", words("buy"), words("needed"), words("spare"), words("cost")), rows),
        )
    pictures = tuple(drawing(layout_drawing(layout, system, IDS)[0]) for layout in kit.layouts)
    if pictures:
        yield PartGroup(words("layouts_for_class"), pictures=pictures)
    yield from _to_prepare(kit, source)
    lines = [*kit.unknown]
    if kit.total is not None:
        lines.append(words("total", amount=kit.total.text))
    if kit.without_price:
        lines.append(words("without_price", things=", ".join(kit.without_price)))
    rows = tuple((size or words("each"), cost.text) for size, cost in kit.costs)
    if lines or rows:
        yield PartGroup(words("costs"), tuple(lines), Table((words("size"), words("cost")), rows) if rows else None)
    workings = tuple(_workings(kit, words))
    if workings:
        yield PartGroup(words("workings"), workings=workings)


def _workings(kit: KitView, words: SheetWords) -> Iterator[Working]:
    """The sums behind everything that is bought and paid; once for all sizes that cost the same."""
    for item in (item for group in kit.groups for item in group.items):
        yield Working(item.called, (*item.buy.working, *(item.cost.working if item.cost is not None else ())))
    if kit.total is not None and kit.total.working:
        yield Working(words("together"), kit.total.working)
    sizes: dict[tuple[str, ...], list[str]] = {}
    for size, cost_of_one in kit.costs:
        if cost_of_one.working:
            sizes.setdefault(cost_of_one.working, []).append(size)
    for lines, names in sizes.items():
        yield Working(", ".join(filter(None, names)) or words("each"), lines)


def _to_buy(item: KitItem) -> tuple[str, ...]:
    shared = f" ({item.shared})" if item.shared else ""
    cells = (f"{item.called}{shared}", item.buy.text, item.needed, item.spare, item.cost.text if item.cost else "")
    return tuple(map(kept_together, cells))


def _to_prepare(kit: KitView, source: Source) -> Iterator[PartGroup]:
    words = source.words
    if kit.parts:
        rows = tuple((f"{part.name}, {part.how}", *map(_on_one_line, part.cells)) for part in kit.parts)
        yield PartGroup(
            words("to_cut"), table=Table(("", *(size or words("each") for size in kit.sizes)), rows, by_size=True)
        )
    for bag in kit.bags:
        things = tuple(kept_together(f"{thing.name}: {thing.amount}") for thing in bag.things)
        cut = (words("cut_in_bag", parts=", ".join(bag.cut)),) if bag.cut else ()
        yield PartGroup(bag.head, (*cut, "; ".join(things)) if things else cut)
    for head, names in ((words("shared"), kit.shared), (words("brought"), kit.brought)):
        if names:
            yield PartGroup(head, (", ".join(names),))


def _on_one_line(cell: str) -> str:
    """How many and how large, ``2: 64 cm × 50 cm``: a line may end behind the count alone."""
    return kept_together(cell).replace(" × ", "\N{NO-BREAK SPACE}×\N{NO-BREAK SPACE}")


def _samples(source: Source) -> Iterator[PartGroup]:
    samples = samples_view(source.cls, source.numbers.units[0], source.page.language)
    for group in samples.groups:
        yield PartGroup(group.head, tuple(_sample(sample, source) for sample in group.samples))
    lines = tuple(
        f"{total.fabric}, {total.what}: {total.amount.text if total.amount is not None else total.reason}"
        for total in samples.totals
    )
    if lines:
        yield PartGroup(source.words("cloth_of_samples"), lines)


def _sample(sample: SampleView, source: Source) -> str:
    """``Seam sample: 2, from cotton jersey 10 cm across, 20 cm along. For 8 Sew the shoulders. …``"""
    cloth = "; ".join(f"{each.pieces} × {each.fabric}, {each.size.text}" for each in sample.cloth)
    parts = [f"{sample.name}: {sample.count.text}" + (f" ({cloth})" if cloth else "")]
    if sample.steps:
        parts.append(source.words("for_steps", steps=_titles(sample.steps)))
    return kept_together(". ".join((*parts, " ".join(sample.how))).rstrip(" .") + ".")
