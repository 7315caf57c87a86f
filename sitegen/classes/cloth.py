"""The cloth of a class: laid for all students at once where it is cut before class, else a length for each student."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from sitegen.classes.model import ComputedClass
from sitegen.quantities import SHOP_STEPS, Length, Rounding, System, Worked, given, plus, work
from sitegen.sewing import class_sums, fabric_need, layout
from sitegen.tutorial import Computed, Fabric, words_of

FOR_CLASS = "for the class"
"""What the need of the whole class is called in every working."""
STEPS_OF_SHOP = {System.INCHES: "steps of 1/8 yd", System.CENTIMETRES: "steps of 10 cm"}


@dataclass(frozen=True, slots=True)
class ClassPiece:
    """A piece or band in one size, and its paper as often as the class needs it.

    The paper has a name of its own in the layout of the class; what it is called is made where it is shown.
    """

    key: str
    size: int
    paper: layout.LayoutPiece


@dataclass(frozen=True, slots=True)
class ClassCloth:
    """One fabric in one width: what the class needs of it, with its working.

    ``laid`` is the layout for the whole class, None where each student gets a length of her own. ``needed`` is None
    where it cannot be known, and ``reason`` says why. ``lengths`` is what one student of each size needs alone.
    """

    fabric: Fabric
    width: Worked | None
    needed: Worked | None
    laid: layout.Layout | None
    lengths: tuple[tuple[int, Worked], ...]
    one_by_one: Worked | None = None
    """What a length for each student, cut by herself, comes to; the need itself where there is no layout for all."""
    reason: str = ""
    pieces: tuple[ClassPiece, ...] = ()
    """What lies in ``laid``."""


def cut_before(fabric: str, cls: ComputedClass) -> bool:
    """Whether all that is cut from a fabric is cut before class, as far as its steps say what they cut."""
    tutorial = cls.computed.tutorial
    own = {key for key, piece in tutorial.pieces.items() if piece.fabric and piece.fabric.name == fabric}
    own |= {key for key, band in tutorial.bands.items() if band.fabric.name == fabric}
    cutting = [step.number for step in tutorial.steps if own & {name.name for name in step.cuts}]
    return bool(cutting) and all(number in cls.before_class for number in cutting)


def class_cloth(fabric: Fabric, cls: ComputedClass) -> tuple[ClassCloth, ...]:
    """What the class needs of one fabric, in each width in which it can be had; the one to buy first."""
    return tuple(_for_all(_for_each(fabric, width, cls), cls) for width in widths_of(fabric, cls))


def unknown_cloth(fabric: Fabric, cls: ComputedClass) -> str:
    """Why nobody can tell how much of a fabric the class needs, in words; empty when it can be told."""
    return _for_each(fabric, widths_of(fabric, cls)[0], cls).reason


def widths_of(fabric: Fabric, cls: ComputedClass) -> tuple[Worked | None, ...]:
    """The widths in which a fabric can be had, the one to buy first; None for the only one where it is not known."""
    offered = cls.written.widths.get(fabric.key, ())
    wanted = tuple(given(f"{fabric.name} width", each.typed.value) for each in offered)
    return wanted or (cls.computed.length(f"{fabric.key}.width", _first_size(cls)),)


def _first_size(cls: ComputedClass) -> int:
    return cls.written.students[0].size


def _for_each(fabric: Fabric, width: Worked | None, cls: ComputedClass) -> ClassCloth:
    """A length for each student."""
    if width is None or (fabric.buy is not None and _also_cut(fabric.key, cls)):
        return _as_bought(fabric, cls)
    alone = [_layout_alone(fabric.key, each.size, width.length, cls.computed) for each in cls.written.students]
    for laid in alone:
        if isinstance(laid, layout.CannotLay):
            reason = laid.in_words(cls.first_system)
            return ClassCloth(fabric, width, None, None, (), reason=reason)
    layouts = [laid for laid in alone if isinstance(laid, layout.Layout)]
    if len(layouts) < len(alone):
        return _as_bought(fabric, cls)
    matched = _matched(fabric, cls)
    needs = (
        (each.size, _need(_name_of_length(fabric, each.size, cls), fabric, laid, matched, cls))
        for each, laid in zip(cls.written.students, layouts, strict=True)
    )
    lengths = tuple((size, need.rounded(Rounding.SOLD)) for size, need in needs)
    one_by_one = _one_by_one(lengths, cls)
    return ClassCloth(fabric, width, one_by_one, None, lengths, one_by_one)


def _also_cut(fabric: str, cls: ComputedClass) -> bool:
    """Whether more than pieces and bands is cut from a fabric, of which the cutting layout knows nothing."""
    tutorial = cls.computed.tutorial
    names = {drops.fabric.name for drops in tutorial.drops.values()}
    names |= {binding.fabric.name for binding in tutorial.bindings.values() if binding.fabric is not None}
    names |= {circle.fabric.name for circle in tutorial.circles.values() if circle.fabric is not None}
    return fabric in names


def _for_all(each: ClassCloth, cls: ComputedClass) -> ClassCloth:
    """The same cloth laid for the whole class at once, where it is cut before class."""
    fabric = each.fabric
    if each.width is None or each.needed is None or not cut_before(fabric.key, cls):
        return each
    pieces = pieces_of_class(fabric.key, cls)
    together = _layout_together(fabric.key, pieces, each.width.length, cls)
    matched = _matched(fabric, cls)
    papers = {piece.paper.name for piece in pieces if piece.key in matched}
    return replace(each, needed=_need(FOR_CLASS, fabric, together, papers, cls), laid=together, pieces=pieces)


def _as_bought(fabric: Fabric, cls: ComputedClass) -> ClassCloth:
    """Where there is no layout: what the tutorial tells each student to buy."""
    found = []
    for each in cls.written.students:
        bought = cls.computed.length(f"{fabric.key}.buy", each.size)
        if bought is None:
            reason = "its pieces cannot be laid, and the tutorial does not say how much to buy"
            return ClassCloth(fabric, None, None, None, (), reason=reason)
        found.append((each.size, bought.named(_name_of_length(fabric, each.size, cls))))
    lengths = tuple(found)
    one_by_one = _one_by_one(lengths, cls)
    return ClassCloth(fabric, None, one_by_one, None, lengths, one_by_one)


def _name_of_length(fabric: Fabric, size: int, cls: ComputedClass) -> str:
    name = cls.computed.size_name(size)
    return f"length of {fabric.name} for {f'size {name}' if name else 'one student'}"


def _one_by_one(lengths: Sequence[tuple[int, Worked]], cls: ComputedClass) -> Worked:
    """A length for each student, added up."""
    counts = {each.size: each.count for each in cls.written.students}
    first, *more = (plus(length, counts[size]) for size, length in lengths)
    return work(FOR_CLASS, first, *more).rounded(Rounding.ENOUGH)


def _layout_alone(fabric: str, size: int, width: Length, computed: Computed) -> layout.Layout | layout.CannotLay | None:
    to_lay = computed.to_lay(fabric, size)
    if to_lay is None:
        return None
    pieces, cloth = to_lay
    if cloth.width == width:
        return computed.laid(fabric, size)
    return layout.kept_layout(pieces, replace(cloth, width=width))


def pieces_of_class(fabric: str, cls: ComputedClass) -> tuple[ClassPiece, ...]:
    """The paper pieces of a fabric for all students: each piece in each size, so often as the class needs it."""
    found = []
    for each in cls.written.students:
        to_lay = cls.computed.to_lay(fabric, each.size)
        size = cls.computed.size_name(each.size)
        for piece in to_lay[0] if to_lay else ():
            name = f"{piece.name} {size}" if size else piece.name
            paper = replace(piece, name=name, count=piece.count * each.count)
            found.append(ClassPiece(piece.name, each.size, paper))
    return tuple(found)


def _layout_together(fabric: str, pieces: tuple[ClassPiece, ...], width: Length, cls: ComputedClass) -> layout.Layout:
    """The layout for the whole class. Every piece is known to fit the width."""
    to_lay = cls.computed.to_lay(fabric, _first_size(cls))
    papers = tuple(piece.paper for piece in pieces)
    laid = layout.kept_layout(papers, replace(to_lay[1], width=width)) if to_lay is not None else None
    if not isinstance(laid, layout.Layout):
        raise TypeError(f"{fabric}: what fits a width alone fits it together")
    return laid


def _matched(fabric: Fabric, cls: ComputedClass) -> set[str]:
    """The pieces at which the print of a fabric is matched, by their keys."""
    return {piece.name for piece in fabric.matched} or set(cls.computed.tutorial.pieces)


def _need(name: str, fabric: Fabric, laid: layout.Layout, matched: set[str], cls: ComputedClass) -> Worked:
    """The cloth to ask for: as without a print, and repeats where one is matched.

    ``matched`` holds the pieces at which it is, by their names in the layout.
    """
    size, computed = _first_size(cls), cls.computed
    repeat = computed.length(f"{fabric.key}.repeat", size) if fabric.repeat else None
    if repeat is None:
        return unmatched_need(name, fabric, laid, cls)
    plain = unmatched_need(f"{name} without matching", fabric, laid, cls)
    rows = len({placed.y for placed in laid.placements if placed.piece in matched})
    added = fabric_need.matched_rows(
        words_of(f"{fabric.key}.for_repeat"), repeat, given("rows of matched pieces in the cutting layout", rows)
    )
    return work(name, plain, plus(added)).rounded(Rounding.ENOUGH)


def unmatched_need(name: str, fabric: Fabric, laid: layout.Layout, cls: ComputedClass) -> Worked:
    """The cloth for a layout on which no print is matched: before washing, and with the ends to straighten."""
    size, computed = _first_size(cls), cls.computed
    shrinkage = computed.number(f"{fabric.key}.shrinkage", size) if fabric.shrinkage else None
    ends = computed.length(f"{fabric.key}.straighten", size) if fabric.straighten else None
    return layout.cloth_needed(name, laid, shrinkage=shrinkage, straightening=ends)


def to_ask_for(needed: Worked, spare: Worked, system: System) -> Worked:
    """What to ask for in a shop: the need and its spare, in whole steps of what shops sell."""
    return in_shop_steps(work("with spare", needed, plus(spare)).rounded(Rounding.ENOUGH), system)


def in_shop_steps(total: Worked, system: System) -> Worked:
    """A length in whole steps of what shops sell, rounded up."""
    step = given("one step", SHOP_STEPS[system])
    return class_sums.in_whole_steps("to buy", total, step, STEPS_OF_SHOP[system])


def spare_of(needed: Worked, share: Worked) -> Worked:
    """The spare of a length, with its working."""
    return class_sums.spare_length("spare", needed, share)
