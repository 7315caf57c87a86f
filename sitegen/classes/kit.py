"""What to buy for a class: cloth, elastic and all else, each with its working.

Every number comes from the tutorial: a length from its numbers by size, a count from its supplies.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace
from enum import Enum

from sitegen.classes.amounts import amount_of
from sitegen.classes.cloth import FOR_CLASS, ClassCloth, class_cloth, spare_of, to_ask_for
from sitegen.classes.model import ComputedClass, Count, Price
from sitegen.classes.of_each_size import ForOne, cut_for_each, number_of_each_size, zips_for_one
from sitegen.quantities import (
    Length,
    Rounding,
    System,
    Worked,
    given,
    in_system,
    plural,
    plus,
    show_number,
    show_value,
    times,
    work,
)
from sitegen.sewing import class_sums
from sitegen.tutorial import Elastic, Fabric, Supply, elastics_from, stated_width

_MACHINE = re.compile(r"\bsewing machines?\b", re.IGNORECASE)


class Kind(Enum):
    """What a line of the kit is. The value is the head of its part of the list."""

    CLOTH = "Cloth"
    ELASTIC = "Elastic"
    NEEDLES = "Needles"
    THREAD = "Thread"
    NOTIONS = "Other things"


@dataclass(frozen=True, slots=True)
class KitLine:
    """One thing to buy. ``key`` is its name in the class file. ``size`` is a width, or the size of a needle.

    ``needed`` is for all students, ``buy`` with the spare and in what shops sell, lengths in the units of ``system``.
    ``for_one`` is what one student of each size needs, by the size's index; of what is shared, nothing. ``shared_by``
    tells how many share one amount, 0 that there is one for all, or one for each machine.
    ``cloth`` holds every width of a fabric, the one that is bought first.
    """

    kind: Kind
    key: str
    name: str
    size: str
    needed: Worked
    spare: Worked
    buy: Worked
    system: System
    unit: str
    for_one: ForOne
    shared_by: int
    price: Price | None
    cloth: tuple[ClassCloth, ...] = ()
    for_machine: bool = False
    """Whether there is one for each machine at work, whoever sits at it."""

    @property
    def by_length(self) -> bool:
        """Whether it is sold by its length."""
        return isinstance(self.buy.value, Length)

    @property
    def amount(self) -> str:
        """What to ask for: ``6.8 m``, ``9 spools``, ``9``."""
        if self.by_length:
            return show_number(self.buy, self.system)
        return counted(int(self.buy.number), self.unit)


@dataclass(frozen=True, slots=True)
class NotKnown:
    """A fabric of which nobody can tell how much the class needs, and why."""

    cloth: ClassCloth
    reason: str


@dataclass(frozen=True, slots=True)
class Kit:
    """Everything to buy for a class, and what it cannot tell."""

    lines: tuple[KitLine, ...]
    unknown: tuple[NotKnown, ...]
    brought: tuple[str, ...]
    """What each student brings, in the words of the file."""


def kit_of(cls: ComputedClass, system: System) -> Kit:
    """The kit of a class, lengths in these units; what has a price is bought in the units of its price."""
    brought = tuple(words.text for words in cls.written.brings)
    unknown: list[NotKnown] = []
    lines = [
        *_cloth_lines(cls, system, unknown),
        *(_elastic_line(elastic, for_one, cls, system) for elastic, for_one in _elastics(cls)),
        *(_supply_line(supply, cls, system) for supply in _supplies(cls)),
    ]
    order = tuple(Kind)
    return Kit(tuple(sorted(lines, key=lambda line: order.index(line.kind))), tuple(unknown), brought)


def unpriced(cls: ComputedClass) -> tuple[str, ...]:
    """What is bought for the class and has no price, not even one that was not understood."""
    fabrics = [(fabric.name, fabric.key) for fabric in bought_fabrics(cls)]
    elastics = [(_name_of(elastic, cls), elastic.key) for elastic, _ in _elastics(cls)]
    supplies = [(supply.item.text, supply.item.text) for supply in _supplies(cls)]
    named = [*fabrics, *elastics, *supplies]
    priced = {price.item.text for price in cls.written.prices} | cls.written.prices_unread
    return tuple(name for name, key in named if not {key, name} & priced)


def shared_in_vain(cls: ComputedClass) -> Iterator[tuple[str, Count, str]]:
    """What is said to be shared without any effect on the kit, with the reason as a sentence."""
    bought = {supply.item.text for supply in _supplies(cls) if cut_for_each(supply, cls) is None}
    for name, count in cls.written.shared.items():
        if name in _brought(cls):
            yield name, count, "Each student brings it, so none is bought to be shared."
        elif name not in bought:
            yield name, count, "How much of it each student needs follows from her size, so nobody shares it."
        elif count.number == 1:
            yield name, count, "One amount for 1 student is one each. Say how many share it, such as 2."


def bought_fabrics(cls: ComputedClass) -> tuple[Fabric, ...]:
    """The fabrics that are bought for the class: those of its garment that students do not bring."""
    fabrics = cls.computed.tutorial.fabrics.values()
    return tuple(each for each in fabrics if each.key not in _brought(cls) and _is_used(each.key, cls))


def _elastics(cls: ComputedClass) -> Iterator[tuple[Elastic, ForOne]]:
    """The elastics that are bought for the class and whose lengths are known, with the length for each size."""
    for elastic in cls.computed.tutorial.elastics.values():
        for_one = number_of_each_size(f"{elastic.key}.cut_length", cls)
        if for_one is not None and not {elastic.key, _name_of(elastic, cls)} & _brought(cls):
            yield elastic, for_one


def _supplies(cls: ComputedClass) -> tuple[Supply, ...]:
    """The supplies that are bought for the class, without elastics whose lengths are known."""
    tutorial = cls.computed.tutorial
    known = {elastic.key for elastic, _ in _elastics(cls)} | (_brought(cls) & set(tutorial.elastics))
    return tuple(
        supply
        for supply in tutorial.supplies
        if supply.item.text
        and supply.item.text not in _brought(cls)
        and not known & {elastic.key for elastic in elastics_from(supply, tutorial)}
    )


def _brought(cls: ComputedClass) -> set[str]:
    return {words.text for words in cls.written.brings}


def counted(number: int, unit: str) -> str:
    """A count with its unit, if it has one, which may stand in the plural: ``9 spools``, ``1 spool``, ``9``."""
    if not unit:
        return str(number)
    one = next((each for each in (unit[:-2], unit[:-1]) if each and plural(each) == unit), unit)
    return f"{number} {one if number == 1 else unit if unit.endswith('s') else plural(unit)}"


def students_of(cls: ComputedClass) -> Worked:
    """How many students there are, from those of each size."""
    groups = [
        given(f"students of size {name}" if (name := cls.computed.size_name(each.size)) else "students", each.count)
        for each in cls.written.students
    ]
    first, *more = groups
    return work("students", first, *(plus(group) for group in more)) if more else first.named("students")


def _price(key: str, cls: ComputedClass) -> Price | None:
    return next((price for price in cls.written.prices if price.item.text == key), None)


def _system(price: Price | None, system: System) -> System:
    return price.per.system if price is not None and price.per is not None else system


def _share(cls: ComputedClass, *, lengths: bool) -> Worked:
    written = cls.written
    return given("share to spare", written.spare_lengths if lengths else written.spare_counted)


def _cloth_lines(cls: ComputedClass, system: System, unknown: list[NotKnown]) -> Iterator[KitLine]:
    for fabric in bought_fabrics(cls):
        found = class_cloth(fabric, cls)
        first = found[0]
        if first.needed is None:
            unknown.append(NotKnown(first, first.reason))
            continue
        price = _price(fabric.key, cls)
        own = _system(price, system)
        spare = spare_of(first.needed, _share(cls, lengths=True))
        yield KitLine(
            kind=Kind.CLOTH,
            key=fabric.key,
            name=fabric.name,
            size=_wide(first.width, own, system),
            needed=first.needed,
            spare=spare,
            buy=to_ask_for(first.needed, spare, own),
            system=own,
            unit="",
            for_one=first.lengths,
            shared_by=1,
            price=price,
            cloth=found,
        )


def _wide(width: Worked | None, own: System, system: System) -> str:
    """How wide it is in the units of the shop, and in those of the class where they are others."""
    if width is None:
        return ""
    other = "" if own is system else f" ({show_value(width.value, system)})"
    return f"{show_value(width.value, own)}{other} wide"


def _is_used(fabric: str, cls: ComputedClass) -> bool:
    """Whether anything of the garment is cut from a fabric; where nothing says so, whether it is to be bought."""
    tutorial = cls.computed.tutorial
    used = {piece.fabric.name for piece in tutorial.pieces.values() if piece.fabric is not None}
    used |= {band.fabric.name for band in tutorial.bands.values()}
    used |= {drops.fabric.name for drops in tutorial.drops.values()}
    used |= {binding.fabric.name for binding in tutorial.bindings.values() if binding.fabric is not None}
    used |= {circle.fabric.name for circle in tutorial.circles.values() if circle.fabric is not None}
    swapped = {swap.fabric.name for swap in tutorial.swaps.values()}
    return fabric in used or (fabric not in swapped and tutorial.fabrics[fabric].buy is not None)


def _elastic_line(elastic: Elastic, for_one: ForOne, cls: ComputedClass, system: System) -> KitLine:
    name, supply = _name_of(elastic, cls), _supply_of(elastic, cls)
    price = _price(elastic.key, cls) or _price(name, cls)
    own = _system(price, system)
    width = cls.computed.length(f"{elastic.key}.width", cls.written.students[0].size)
    size = "" if supply is not None and _named_by_width(supply) else _wide(width, own, system)
    return replace(_line_by_size(Kind.ELASTIC, name, size, for_one, price, own, cls), key=elastic.key)


def _line_by_size(
    kind: Kind, name: str, size: str, for_one: ForOne, price: Price | None, own: System, cls: ComputedClass
) -> KitLine:
    """What is sold by its length, and of which a student of each size needs her own."""
    needed = _added_up(for_one, cls)
    spare = spare_of(needed, _share(cls, lengths=True))
    return KitLine(
        kind=kind,
        key=name,
        name=name,
        size=size,
        needed=needed,
        spare=spare,
        buy=to_ask_for(needed, spare, own),
        system=own,
        unit="",
        for_one=for_one,
        shared_by=1,
        price=price,
    )


def _name_of(elastic: Elastic, cls: ComputedClass) -> str:
    """What the supplies call an elastic; its own name when they do not have it."""
    supply = _supply_of(elastic, cls)
    return supply.item.text if supply is not None else elastic.key.replace("_", " ")


def _supply_of(elastic: Elastic, cls: ComputedClass) -> Supply | None:
    """The supply that an elastic is cut from; none when the supplies do not have it."""
    tutorial = cls.computed.tutorial
    return next((each for each in tutorial.supplies if elastic in elastics_from(each, tutorial)), None)


def _named_by_width(supply: Supply) -> bool:
    """Whether its name says how wide it is, as ``elastic 2.5 cm wide`` does."""
    return supply.size is None and stated_width(supply) is not None


def _added_up(for_one: ForOne, cls: ComputedClass) -> Worked:
    counts = {each.size: each.count for each in cls.written.students}
    first, *more = (plus(number, counts[size]) for size, number in for_one)
    return work(FOR_CLASS, first, *more).rounded(Rounding.ENOUGH)


def _supply_line(supply: Supply, cls: ComputedClass, system: System) -> KitLine:
    """One supply. What is written as a length, ``20 in`` of tape, is sold by its length."""
    name = supply.item.text
    price = _price(name, cls)
    own = _system(price, system)
    by_size = cut_for_each(supply, cls)
    if by_size is not None:
        return _line_by_size(_kind(name), name, _size_of(supply, own, system), by_size, price, own, cls)
    shared = cls.written.shared.get(name)
    shared_by = shared.number if shared is not None else 1
    amount, unit = amount_of(supply)
    amount = amount or zips_for_one(supply, cls)
    groups = students_of(cls)
    at_work = _machines_at_work(cls) if amount is None and shared is None and _kind(name) is Kind.NEEDLES else None
    if shared_by > 1:
        groups = class_sums.groups("groups", groups, given("students who share", shared_by))
    elif at_work is not None:
        groups, amount, shared_by = at_work, given(f"{name} for each machine", 1), 0
    elif amount is None and shared is None and _kind(name) is not Kind.NEEDLES:
        groups, amount, shared_by = given("for the whole class", 1), given(f"{name} that all share", 1), 0
    amount = amount or given(f"{name} for one", 1)
    needed = work(FOR_CLASS, amount, times(groups)).rounded(Rounding.ENOUGH)
    if isinstance(needed.value, Length):
        spare = spare_of(needed, _share(cls, lengths=True))
        buy = to_ask_for(needed, spare, own)
    else:
        spare = class_sums.spare_counted("spare", needed, _share(cls, lengths=False))
        buy = work("to buy", needed, plus(spare))
    return KitLine(
        kind=_kind(name),
        key=name,
        name=name,
        size=_size_of(supply, own, system),
        needed=needed,
        spare=spare,
        buy=buy,
        system=own,
        unit=unit,
        for_one=tuple((each.size, amount) for each in cls.written.students) if shared_by == 1 else (),
        shared_by=shared_by,
        price=price,
        for_machine=at_work is not None,
    )


def _size_of(supply: Supply, own: System, system: System) -> str:
    """Its size; a length in the units of the shop, and in those of the class where they are others."""
    if supply.size is None:
        return ""
    shown, other = in_system(supply.size.text, own), in_system(supply.size.text, system)
    return shown if shown == other else f"{shown} ({other})"


def _machines_at_work(cls: ComputedClass) -> Worked | None:
    """How many sewing machines of the room are at work at a time; None where each student has one for herself."""
    count = next((count.number for tool, count in cls.written.room.items() if _MACHINE.search(tool)), 0)
    if not count or any(_MACHINE.search(name) for name in _brought(cls)):
        return None
    students = students_of(cls)
    if students.number <= count:
        return students
    return given("sewing machines at work at a time", count)


def _kind(name: str) -> Kind:
    if re.search(r"\bneedles?\b", name, re.IGNORECASE):
        return Kind.NEEDLES
    return Kind.THREAD if re.search(r"\bthreads?\b", name, re.IGNORECASE) else Kind.NOTIONS
