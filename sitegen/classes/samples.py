"""The samples and swatches that a teacher prepares for a class, and the cloth that they take.

What is prepared follows from the tutorial: from the fabrics that are tested on a swatch, from the seams, hems and bands
that are sewn in class, and from the steps at which sessions end. How large a sample is, where the tutorial does not say
it, is common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from enum import Enum

from sitegen.classes.cloth import class_cloth, in_shop_steps, unmatched_need, widths_of
from sitegen.classes.kit import Kind, KitLine, bought_fabrics, kit_of, students_of
from sitegen.classes.model import ComputedClass
from sitegen.classes.plan import plan_of, without_minutes
from sitegen.quantities import Length, Rounding, System, Worked, cm, given, inches, plus, times, work
from sitegen.sewing import layout
from sitegen.tutorial import Band, Fabric, Hem, Join, Step, Tutorial

STRIP_LENGTH = {System.INCHES: inches(8), System.CENTIMETRES: cm(20)}
"""How long a strip is on which a seam or a hem is shown."""
STRIP_WIDTH = {System.INCHES: inches(4), System.CENTIMETRES: cm(10)}
"""How wide it is, and how much cloth lies beside the hem or the band that is shown on it: a hand's breadth."""
GRIP = {System.INCHES: inches(2), System.CENTIMETRES: cm(5)}
"""What two fingers hold at either end of a swatch while they stretch it."""

_SEWN_IN = (Kind.ELASTIC, Kind.NOTIONS)
"""What a garment takes besides its cloth and thread; needles and tools are there to be used again."""


class SampleKind(Enum):
    """What a sample shows. The value says it in words."""

    STRETCH = "stretch swatch"
    WASHING = "washing swatch"
    SEAM = "seam sample"
    HEM = "hem sample"
    BAND = "band sample"
    STAGE = "made-up sample"


@dataclass(frozen=True, slots=True)
class SampleCloth:
    """Rectangles of one fabric for one sample: how large, across the cloth and along its grain, and how many."""

    fabric: str
    across: Worked
    along: Worked
    pieces: int


@dataclass(frozen=True, slots=True)
class Sample:
    """One sample: what it shows, for which steps, how many of it are prepared, and the cloth of each.

    ``size`` is the index of the size whose numbers it shows. ``joins``, all sewn alike, ``hem`` or ``band`` is what is
    sewn; the garment at a stage is made of what one student of that size has.
    """

    kind: SampleKind
    steps: tuple[Step, ...]
    count: Worked
    size: int
    cloth: tuple[SampleCloth, ...] = ()
    joins: tuple[Join, ...] = ()
    hem: Hem | None = None
    band: Band | None = None
    session: int = 0
    """The number of the session that ends at this stage."""


@dataclass(frozen=True, slots=True)
class SampleNeed:
    """What to buy of one fabric for all swatches and samples, laid on its width, and for the garments at stages.

    Both are in whole steps of what shops sell; None where there are none, or where it cannot be told. ``reason`` says
    why the swatches cannot.
    """

    fabric: Fabric
    width: Worked | None
    swatches: Worked | None
    garments: Worked | None
    reason: str = ""


def samples_of(cls: ComputedClass, system: System) -> tuple[Sample, ...]:
    """Everything to prepare, swatches first, then seams, hems and bands in the order of their steps, then stages.

    Strips have lengths that are round in the units of ``system``.
    """
    return (
        *_swatches(cls, system),
        *_seams(cls, system),
        *_hems(cls, system),
        *_bands(cls, system),
        *_stages(cls),
    )


def sample_needs(samples: tuple[Sample, ...], cls: ComputedClass, system: System) -> tuple[SampleNeed, ...]:
    """The cloth of all samples, by fabric, in what shops of these units sell."""
    fabrics = cls.computed.tutorial.fabrics.values()
    return tuple(need for fabric in fabrics for need in _need(fabric, samples, cls, system))


def sample_supplies(
    samples: tuple[Sample, ...], cls: ComputedClass, system: System
) -> tuple[tuple[KitLine, Worked], ...]:
    """What is sewn into the garments at stages besides cloth and thread, as zips, cords and elastic: how much of each
    they take together."""
    stages = sum(1 for sample in samples if sample.kind is SampleKind.STAGE)
    lines = kit_of(cls, system).lines if stages else ()
    size = shown_size(cls)
    return tuple(
        (line, _bought(one.named(f"{line.name} for one"), stages, system))
        for line in lines
        if line.kind in _SEWN_IN and (one := dict(line.for_one).get(size)) is not None
    )


def _bought(one: Worked, stages: int, system: System) -> Worked:
    """So many of what one garment takes, as shops sell it."""
    count = given("made-up samples", stages)
    if not isinstance(one.value, Length):
        return work("to buy", one, times(count))
    return in_shop_steps(work("for the made-up samples", one, times(count)).rounded(Rounding.ENOUGH), system)


def shown_size(cls: ComputedClass) -> int:
    """The size that most students make, the smaller of two; samples show its numbers."""
    return max(cls.written.students, key=lambda each: (each.count, -each.size)).size


def _one(cls: ComputedClass, *, for_each: bool) -> Worked:
    return students_of(cls) if for_each else given("samples for all", 1)


def _swatches(cls: ComputedClass, system: System) -> Iterator[Sample]:
    size = shown_size(cls)
    for fabric in _used_fabrics(cls):
        rest = cls.computed.length(f"{fabric.key}.swatch_rest", size)
        if rest is not None:
            across = work("swatch across the cloth", rest, plus(given("grip", GRIP[system]), 2))
            # A fold behaves like the middle of the cloth, so the swatch is folded at the line that is stretched.
            beside = given("side of the fold", STRIP_WIDTH[system])
            along = work("swatch along the cloth", plus(beside, 2))
            steps = _telling("stretch", fabric, cls)
            in_class = any(step in cls.in_class() for step in steps)
            cloth = SampleCloth(fabric.key, across, along, 1)
            yield Sample(SampleKind.STRETCH, steps, _one(cls, for_each=in_class), size, (cloth,))
        before = cls.computed.length(f"{fabric.key}.washed_before", size)
        if before is not None:
            cloth = SampleCloth(fabric.key, before, before, 2)
            yield Sample(SampleKind.WASHING, _telling("shrink", fabric, cls), _one(cls, for_each=False), size, (cloth,))


def _used_fabrics(cls: ComputedClass) -> tuple[Fabric, ...]:
    """The fabrics of the garment, bought for the class or brought by its students."""
    brought = {words.text for words in cls.written.brings}
    bought = bought_fabrics(cls)
    return tuple(each for each in cls.computed.tutorial.fabrics.values() if each in bought or each.key in brought)


def _telling(what: str, fabric: Fabric, cls: ComputedClass) -> tuple[Step, ...]:
    """The steps whose text tells a number of this kind of the fabric; where none does, of any fabric."""
    told = {
        step.number: {reference.name for text in step.prose() for reference in text.references}
        for step in cls.computed.tutorial.steps
        if step.number not in cls.left_out
    }
    keys = cls.computed.tutorial.fabrics
    for owners in ((fabric.key,), tuple(keys)):
        names = {f"{key}.{field}" for key in owners for field in _FIELDS[what]}
        found = tuple(step for step in cls.computed.tutorial.steps if names & told.get(step.number, set()))
        if found:
            return found
    return ()


_FIELDS = {
    "stretch": ("stretch_across", "swatch_rest", "swatch_stretched", "swatch_stretch"),
    "shrink": ("shrinkage", "washed_before", "washed_after", "washed_shrinkage"),
}


def _seams(cls: ComputedClass, system: System) -> Iterator[Sample]:
    """One sample of each way of sewing: the stitch, its settings and the fabrics."""
    found: dict[tuple[object, ...], Sample] = {}
    for step in cls.in_class():
        for join in step.joins:
            fabrics = _strips(join, cls.computed.tutorial)
            if join.stitch is None or not fabrics:
                continue
            settings = (join.stitch.text.casefold(), join.stitch_width_mm, join.stitch_length_mm)
            key = (*settings, join.stabilised, is_stretched(join, cls), tuple(sorted(fabrics)))
            before = found.get(key)
            if before is None:
                cloth = tuple(_strip(fabric, fabrics.count(fabric), system) for fabric in dict.fromkeys(fabrics))
                one = _one(cls, for_each=False)
                found[key] = Sample(SampleKind.SEAM, (step,), one, shown_size(cls), cloth, joins=(join,))
            else:
                steps = before.steps if step in before.steps else (*before.steps, step)
                found[key] = replace(before, steps=steps, joins=(*before.joins, join))
    yield from found.values()


def is_stretched(join: Join, cls: ComputedClass) -> bool:
    """Whether one layer of a seam is stretched while it is sewn, as a band always is."""
    return join.stretched or any(name.name in cls.computed.tutorial.bands for name in join.names())


def _strips(join: Join, tutorial: Tutorial) -> list[str]:
    """The fabric of each layer of a seam, two at least; none when one of them is not known."""
    found = [next((key for name in chain if (key := _fabric_of(name.name, tutorial))), "") for chain in join.chains]
    if not found or "" in found:
        return []
    return found if len(found) > 1 else found * 2


def _fabric_of(name: str, tutorial: Tutorial) -> str:
    """The fabric of a piece, band or other part to which an edge belongs; empty when it is not known."""
    owner = name.partition(".")[0]
    for parts in (tutorial.pieces, tutorial.bands, tutorial.drops, tutorial.bindings, tutorial.circles):
        if owner in parts:
            fabric = parts[owner].fabric
            return fabric.name if fabric is not None else ""
    return ""


def _strip(fabric: str, pieces: int, system: System) -> SampleCloth:
    """A strip along the grain."""
    across, along = given("width of a strip", STRIP_WIDTH[system]), given("length of a strip", STRIP_LENGTH[system])
    return SampleCloth(fabric, across, along, pieces)


def _hems(cls: ComputedClass, system: System) -> Iterator[Sample]:
    """One sample of each hem. Most hems run across the cloth, and so does the strip."""
    tutorial, size = cls.computed.tutorial, shown_size(cls)
    done: dict[str, list[Step]] = {}
    for step in cls.in_class():
        for name in step.hems:
            done.setdefault(name.name, []).append(step)
    for key, steps in done.items():
        hem, allowance = tutorial.hems.get(key), cls.computed.length(f"{key}.allowance", size)
        fabric = _fabric_of(hem.edges[0].name, tutorial) if hem is not None and hem.edges else ""
        if hem is None or allowance is None or not fabric:
            continue
        across = given("length of a strip", STRIP_LENGTH[system])
        along = work("depth of the strip", allowance, plus(given("cloth above the hem", STRIP_WIDTH[system])))
        cloth = SampleCloth(fabric, across, along, 1)
        yield Sample(SampleKind.HEM, tuple(steps), _one(cls, for_each=False), size, (cloth,), hem=hem)


def _bands(cls: ComputedClass, system: System) -> Iterator[Sample]:
    """Each band as it is cut, and a strip as long as its opening, both closed to rings and marked in quarters."""
    tutorial, size = cls.computed.tutorial, shown_size(cls)
    for key, band in tutorial.bands.items():
        steps = tuple(
            step for step in cls.in_class() if any(name.name == key for join in step.joins for name in join.names())
        )
        numbers = [cls.computed.length(f"{key}.{field}", size) for field in _BAND_NUMBERS]
        around = next((fabric for edge in band.around if (fabric := _fabric_of(edge.name, tutorial))), "")
        if not steps or not around or any(number is None for number in numbers):
            continue
        cut_length, cut_width, opening, allowance = (number for number in numbers if number is not None)
        strip = work("strip for the opening", opening, plus(allowance.named("seam allowance"), 2))
        cloth = (
            SampleCloth(band.fabric.name, cut_length, cut_width, 1),
            SampleCloth(around, strip, given("width of a strip", STRIP_WIDTH[system]), 1),
        )
        yield Sample(SampleKind.BAND, steps, _one(cls, for_each=False), size, cloth, band=band)


_BAND_NUMBERS = ("cut_length", "cut_width", "opening_length", "seam_allowance")


def _stages(cls: ComputedClass) -> Iterator[Sample]:
    """The garment as it is when a session ends; none for a class of which the minutes are not known."""
    if without_minutes(cls):
        return
    for planned in plan_of(cls).sessions:
        if planned.placed:
            last = planned.placed[-1].work.step
            one, number = _one(cls, for_each=False), planned.session.number
            yield Sample(SampleKind.STAGE, (last,), one, shown_size(cls), session=number)


def _need(fabric: Fabric, samples: tuple[Sample, ...], cls: ComputedClass, system: System) -> Iterator[SampleNeed]:
    pieces = tuple(_pieces(fabric.key, samples))
    stages = sum(1 for sample in samples if sample.kind is SampleKind.STAGE)
    sewn = _garments(fabric, stages, cls) if stages and fabric in bought_fabrics(cls) else None
    garments = in_shop_steps(sewn, system) if sewn is not None else None
    if not pieces and garments is None:
        return
    width = widths_of(fabric, cls)[0]
    laid = layout.lay_out(pieces, _opened(fabric, width.length, cls)) if pieces and width is not None else None
    if isinstance(laid, layout.Layout):
        need = unmatched_need("for all samples", fabric, laid, cls)
        yield SampleNeed(fabric, width, in_shop_steps(need, system), garments)
        return
    reason = laid.in_words(cls.first_system) if laid is not None else "the tutorial does not say how wide it is"
    yield SampleNeed(fabric, width, None, garments, reason if pieces else "")


def _opened(fabric: Fabric, width: Length, cls: ComputedClass) -> layout.Cloth:
    """The cloth in one layer, as for small cuts. Its nap does not matter to a sample."""
    selvage = cls.computed.length(f"{fabric.key}.selvage", shown_size(cls)) if fabric.selvage else None
    plain = layout.Cloth(width, layout.Fold.OPEN)
    usable = selvage is not None and selvage.length * 4 < width
    return replace(plain, selvage=selvage.length) if selvage is not None and usable else plain


def _pieces(fabric: str, samples: tuple[Sample, ...]) -> Iterator[layout.LayoutPiece]:
    for number, sample in enumerate(samples):
        for index, cloth in enumerate(sample.cloth):
            if cloth.fabric == fabric:
                count = work("pieces", given("pieces of each", cloth.pieces), times(sample.count))
                name = f"sample {number}.{index}"
                yield layout.LayoutPiece(name, cloth.across.length, cloth.along.length, int(count.number))


def _garments(fabric: Fabric, stages: int, cls: ComputedClass) -> Worked | None:
    """What one student of the shown size needs alone, for every garment."""
    alone = dict(class_cloth(fabric, cls)[0].lengths).get(shown_size(cls))
    if alone is None:
        return None
    return work("for the made-up samples", plus(alone, stages)).rounded(Rounding.ENOUGH)
