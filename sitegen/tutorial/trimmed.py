"""Which of the supplies cords, tapes and zips are cut from, and how much."""

from __future__ import annotations

from sitegen.quantities import Rounding, Worked, plus, work
from sitegen.tutorial.compute import Computed
from sitegen.tutorial.model import Supply, Trim, Tutorial


def trim_supplies(tutorial: Tutorial) -> tuple[tuple[Supply, tuple[Trim, ...]], ...]:
    """The supplies that cords, tapes and zips of the garment are cut from, each with these."""
    found = []
    for supply in tutorial.supplies:
        trims = tuple(
            trim
            for trim in tutorial.trims.values()
            if supply.item.text in (trim.supply.name, tutorial.translated.get(trim.supply.name))
        )
        if trims:
            found.append((supply, trims))
    return tuple(found)


def is_cut(trims: tuple[Trim, ...]) -> bool:
    """Whether what is made of one supply is cut from it, as no zip is."""
    return not any(trim.is_zip for trim in trims)


def length_from(trims: tuple[Trim, ...], size: int, computed: Computed) -> Worked | None:
    """How long what is cut from one supply must be in a size: of cords and tapes all together, of zips the longest.
    None where one of them is not known."""
    lengths = [computed.number(f"{trim.key}.length", size) for trim in trims]
    known = [each for each in lengths if each is not None]
    if not known or len(known) < len(lengths):
        return None
    if all(trim.is_zip for trim in trims):
        return max(known, key=lambda each: each.length)
    first, *more = known
    return work("length to cut", first, *(plus(each) for each in more)).rounded(Rounding.ENOUGH) if more else first
