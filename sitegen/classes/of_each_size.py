"""What one student of each size of a class needs of what follows from her size."""

from __future__ import annotations

from collections.abc import Callable

from sitegen.classes.model import ComputedClass
from sitegen.quantities import Worked, given
from sitegen.tutorial import Supply, Trim, is_cut, length_from, trim_supplies

ForOne = tuple[tuple[int, Worked], ...]
"""What one student of each size needs, by the size's index."""


def number_of_each_size(name: str, cls: ComputedClass) -> ForOne | None:
    """A number of the tutorial in each size of the class; None where one is not known."""
    return _of_each_size(lambda size: cls.computed.length(name, size), cls)


def cut_for_each(supply: Supply, cls: ComputedClass) -> ForOne | None:
    """What is cut from a cord or tape for a student of each size; None for other supplies, zips, and what is not
    known."""
    trims = _made_of(supply, cls)
    if not trims or not is_cut(trims):
        return None
    return _of_each_size(lambda size: length_from(trims, size, cls.computed), cls)


def zips_for_one(supply: Supply, cls: ComputedClass) -> Worked | None:
    """How many zips one student sews in, for which the tutorial need not give an amount; None for other supplies."""
    trims = _made_of(supply, cls)
    return given(f"{supply.item.text} for one", len(trims)) if any(trim.is_zip for trim in trims) else None


def _made_of(supply: Supply, cls: ComputedClass) -> tuple[Trim, ...]:
    return next((trims for each, trims in trim_supplies(cls.computed.tutorial) if each is supply), ())


def _of_each_size(length: Callable[[int], Worked | None], cls: ComputedClass) -> ForOne | None:
    """A length in each size of the class, named after it; None where one is not known."""
    found = []
    for each in cls.written.students:
        number = length(each.size)
        if number is None:
            return None
        size = cls.computed.size_name(each.size)
        found.append((each.size, number.named(f"{number.name} of size {size}" if size else number.name)))
    return tuple(found)
