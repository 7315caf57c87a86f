"""Defines the numbers of widths of cloth side by side: how many, how long, and how much cloth."""

from __future__ import annotations

from sitegen.quantities import Rounding, Worked, given, plus, work
from sitegen.sewing import fabric_need, gather
from sitegen.tutorial.compute.given import allowance_or_own, lengths_maker
from sitegen.tutorial.compute.naming import words_of
from sitegen.tutorial.compute.numbers import Missing, Numbers
from sitegen.tutorial.model import Drops, Tutorial


def define_drops(tutorial: Tutorial, numbers: Numbers) -> None:
    """Drops: the width to make up, the drops that it takes, the length of each, and the cloth for all."""
    for each in tutorial.drops.values():
        _define_width(each, tutorial, numbers)
        _define_length(each, numbers)
        _define_cloth(each, tutorial, numbers)


def _define_width(each: Drops, tutorial: Tutorial, numbers: Numbers) -> None:
    key = each.key
    width, full, usable = (f"{key}.{field}" for field in ("width", "full_width", "usable_width"))
    for field, lengths in (("width", each.width), ("length", each.length)):
        numbers.define(f"{key}.{field}", lengths_maker(lengths, numbers))
    for field, turned in (("top", each.top), ("hem", each.hem), ("side", each.side)):
        if turned is not None:
            numbers.define(f"{key}.{field}", lengths_maker(turned, numbers))
    allowance_or_own(f"{key}.seam_allowance", each.seam_allowance, numbers)
    if each.ratio is not None:
        chosen = gather.fullness(words_of(f"{key}.ratio"), each.ratio.number)
        numbers.define(f"{key}.ratio", lambda size: chosen)

    def made_up(size: int) -> Worked:
        flat = numbers.at(width, size)
        if each.ratio is not None:
            name = words_of(full) if each.side is None else "width with its fullness"
            flat = gather.cut_length(name, flat, numbers.at(f"{key}.ratio", size))
        return work(words_of(full), flat, plus(numbers.at(f"{key}.side", size), 2)) if each.side is not None else flat

    numbers.define(full, made_up)
    fabric = tutorial.fabrics.get(each.fabric.name)

    def between_selvages(size: int) -> Worked:
        cloth = numbers.length_at(f"{each.fabric.name}.width", size)
        if fabric is None or fabric.selvage is None:
            return cloth.named(words_of(usable))
        return fabric_need.usable_width(words_of(usable), cloth, numbers.at(f"{fabric.key}.selvage", size))

    numbers.define(usable, between_selvages)
    if fabric is not None and fabric.selvage is not None:
        numbers.define(f"{fabric.key}.selvage", lengths_maker(fabric.selvage, numbers))
    needed = f"{key}.drops_needed"
    numbers.define(
        needed,
        lambda size: fabric_need.joined_drops(
            words_of(needed),
            numbers.at(full, size),
            numbers.at(usable, size),
            numbers.at(f"{key}.seam_allowance", size),
        ),
    )
    drops = f"{key}.drops"
    if each.count is not None:
        said = given(words_of(drops), each.count)
        numbers.define(drops, lambda size: said)
    else:
        numbers.define(drops, lambda size: numbers.at(needed, size).named(words_of(drops)))


def _define_length(each: Drops, numbers: Numbers) -> None:
    key = each.key
    cut, repeat = f"{key}.cut_length", f"{each.fabric.name}.repeat"
    turned = [f"{key}.{field}" for field in ("top", "hem") if f"{key}.{field}" in numbers]

    def cut_length(size: int) -> Worked:
        return work(
            words_of(cut), numbers.at(f"{key}.length", size), *(plus(numbers.at(name, size)) for name in turned)
        )

    numbers.define(cut, cut_length)
    if repeat not in numbers:
        return
    for field, result in (
        ("repeat_length", fabric_need.whole_repeats),
        ("for_repeat", fabric_need.added_for_repeat),
    ):
        name = f"{key}.{field}"
        numbers.define(
            name,
            lambda size, name=name, result=result: result(  # type: ignore[misc]
                words_of(name), numbers.at(cut, size), numbers.at(repeat, size)
            ),
        )


def _define_cloth(each: Drops, tutorial: Tutorial, numbers: Numbers) -> None:
    key = each.key
    name = f"{key}.cloth"
    each_length = f"{key}.repeat_length" if f"{key}.repeat_length" in numbers else f"{key}.cut_length"
    fabric = tutorial.fabrics.get(each.fabric.name)

    def cloth(size: int) -> Worked:
        if fabric is None:
            raise Missing(name)
        washed = fabric.shrinkage is not None
        words = words_of(name)
        found = fabric_need.length_for_drops(
            f"{words} after washing" if washed else words,
            numbers.at(each_length, size),
            numbers.at(f"{key}.drops", size),
        )
        if washed:
            found = fabric_need.before_washing(words, found, numbers.at(f"{fabric.key}.shrinkage", size))
        return found.rounded(Rounding.SOLD)

    numbers.define(name, cloth)
