"""The kit of a class as it is read."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from itertools import groupby

from sitegen.classes import (
    Bag,
    ClassCloth,
    ComputedClass,
    Cost,
    Costs,
    CutPart,
    KitLine,
    bags_of,
    costs_of,
    counted,
    kit_of,
    money,
)
from sitegen.publishing.class_views.head import class_head
from sitegen.publishing.class_views.layouts import class_layout
from sitegen.publishing.class_views.parts import (
    BagView,
    KitGroup,
    KitItem,
    KitView,
    OneSize,
    Packed,
    PartRow,
    WorkedText,
)
from sitegen.publishing.class_views.worked import working_of
from sitegen.quantities import (
    ENGLISH,
    RULER,
    English,
    Length,
    Rounding,
    System,
    Worked,
    decimal,
    show_measured,
    show_number,
    show_to_buy,
    show_value,
)


def kit_view(cls: ComputedClass, system: System, language: English = ENGLISH) -> KitView:
    """The kit of a class, lengths in these units; what has a price is bought in the units of its price."""
    kit = kit_of(cls, system)
    costs = costs_of(kit, cls)
    paid = {cost.key: cost for cost in costs.lines} if costs is not None else {}
    currency = costs.currency if costs is not None else ""
    groups = tuple(
        KitGroup(language.say(kind.value), tuple(_item(line, paid, currency, cls, language) for line in lines))
        for kind, lines in groupby(kit.lines, key=lambda line: line.kind)
    )
    bags = bags_of(kit, cls)
    layouts = (class_layout(line, cls, language) for line in kit.lines)
    return KitView(
        head=class_head(cls, language),
        sizes=tuple(cls.computed.size_name(each.size) for each in cls.written.students),
        groups=groups,
        unknown=tuple(f"{language.own(each.cloth.fabric.name)}: {language.say(each.reason)}" for each in kit.unknown),
        total=_paid(costs.total, currency, (), language) if costs is not None else None,
        without_price=tuple(language.own(name) for name in costs.without_price) if costs is not None else (),
        parts=tuple(_parts(bags, system, language)),
        bags=tuple(_bag(bag, cls, system, language) for bag in bags),
        shared=tuple(language.own(line.name) for line in kit.lines if not line.for_one),
        brought=tuple(language.own(name) for name in kit.brought),
        costs=tuple(_student_costs(costs, cls, language)) if costs is not None else (),
        layouts=tuple(layout for layout in layouts if layout is not None),
    )


def _item(line: KitLine, paid: Mapping[str, Cost], currency: str, cls: ComputedClass, language: English) -> KitItem:
    first, *others = line.cloth or (None,)
    cost = paid.get(line.key)
    for_all = "one for each machine at work" if line.for_machine else "all share it"
    shared = for_all if line.shared_by == 0 else f"shared by {line.shared_by}" if line.shared_by > 1 else ""
    return KitItem(
        key=line.key,
        name=language.own(line.name),
        detail=language.say(line.size),
        buy=WorkedText(language.own(line.amount), working_of(line.buy, line.system, language)),
        needed=_amount(line.needed, line, line.system, language),
        spare=_amount(line.spare, line, line.system, language),
        cost=_paid(cost, currency, (), language) if cost is not None else None,
        for_one=tuple(
            OneSize(cls.computed.size_name(size), _amount(number, line, line.system, language))
            for size, number in line.for_one
        ),
        shared=language.say(shared),
        notes=tuple(_of_cloth(first, line.system, cls, language)) if first is not None else (),
        other_widths=tuple(_other_width(each, line.system, language) for each in others if each is not None),
    )


def _amount(number: Worked, line: KitLine, system: System, language: English) -> str:
    if isinstance(number.value, Length):
        return show_number(number, system, language=language)
    return language.own(counted(int(number.number), line.unit) if line.unit else decimal(number.number))


def _paid(cost: Cost, currency: str, before: Sequence[str], language: English) -> WorkedText:
    return WorkedText(language.amount(money(cost.amount, currency)), (*before, _money_line(cost, language)))


def _money_line(cost: Cost, language: English) -> str:
    """A sum of money with the decimal mark of the language, which no table of phrases knows in a price."""
    return language.amount(language.say(cost.line))


def _of_cloth(cloth: ClassCloth, system: System, cls: ComputedClass, language: English) -> Iterator[str]:
    """How the cloth is laid, how much less that takes than a length for each."""
    if cloth.laid is not None:
        laid, least = RULER.show(cloth.laid.length, system, Rounding.ENOUGH), show_value(cloth.laid.least, system)
        shorter = "none can be shorter" if cloth.laid.is_shortest else f"none can be shorter than about {least}"
        yield language.say(f"laid for the whole class, the cloth {cloth.laid.fold.value}: {laid}; {shorter}")
        if cloth.one_by_one is not None:
            alone = show_number(cloth.one_by_one, system)
            yield language.say(f"if each student cut her own length, they would need {alone} together")
    elif cloth.width is not None:
        lengths = ", ".join(
            f"{cls.computed.size_name(size) or 'each'} {show_number(length, system)}" for size, length in cloth.lengths
        )
        yield language.say(f"a length for each student, cut out in class: {lengths}")


def _other_width(cloth: ClassCloth, system: System, language: English) -> str:
    width = show_value(cloth.width.value, system) if cloth.width is not None else "another width"
    if cloth.needed is None:
        return language.say(f"{width} wide does not do: {cloth.reason}")
    return language.say(f"{width} wide it would need {show_to_buy(cloth.needed.length, system)} before spares")


def _parts(bags: Sequence[Bag], system: System, language: English) -> Iterator[PartRow]:
    for name in dict.fromkeys(part.name for bag in bags for part in bag.cut):
        parts = [next((part for part in bag.cut if part.name == name), None) for bag in bags]
        how = next((part.how for part in parts if part is not None), "")
        cells = tuple(_cut_cell(part, bag.count, system, language) for part, bag in zip(parts, bags, strict=True))
        yield PartRow(language.own(name), language.say(how), cells)


def _cut_cell(part: CutPart | None, bags: int, system: System, language: English) -> str:
    if part is None:
        return ""
    measures = [
        show_value(each.value, system, language=language) for each in (part.length, part.width) if each is not None
    ]
    size = f": {' × '.join(measures)}" if measures else ""
    return f"{part.how_many * bags}{size}"


def _bag(bag: Bag, cls: ComputedClass, system: System, language: English) -> BagView:
    size = cls.computed.size_name(bag.size)
    things = (
        Packed(
            f"{language.own(line.name)}, {language.say(line.size)}" if line.size else language.own(line.name),
            _packed(number, line, system, language),
        )
        for line, number in (*bag.lengths, *bag.things)
    )
    return BagView(
        head=language.say(f"{counted(bag.count, 'bag')}{f' of size {size}' if size else ''}"),
        cut=tuple(_counted(part, language) for part in bag.cut),
        things=tuple(things),
    )


def _packed(number: Worked, line: KitLine, system: System, language: English) -> str:
    """How much is in a bag, a length as it is cut off what was bought for all; also in the units in which it is bought,
    so that both lists can be compared."""
    if not isinstance(number.value, Length):
        return _amount(number, line, system, language)
    told, *others = (show_measured(number, each, language=language) for each in dict.fromkeys((system, line.system)))
    return f"{told} ({others[0]})" if others else told


def _counted(part: CutPart, language: English) -> str:
    """``2 sleeves``; without the plural of a name that only its author knows."""
    if language.as_made:
        return counted(part.how_many, part.name)
    return f"{part.how_many} × {language.own(part.name)}"


def _student_costs(costs: Costs, cls: ComputedClass, language: English) -> Iterator[tuple[str, WorkedText]]:
    for student in costs.students:
        parts = [_money_line(part, language) for part in student.parts]
        yield cls.computed.size_name(student.size), _paid(student.total, costs.currency, parts, language)
