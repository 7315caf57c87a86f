"""Defines the numbers of bands, hems and elastics."""

from __future__ import annotations

from fractions import Fraction

from sitegen.quantities import Worked
from sitegen.sewing import ADULT_REACH, band, elastic, hem
from sitegen.tutorial.compute.given import amount_maker, edge_number, lengths_maker, share_maker
from sitegen.tutorial.compute.naming import words_of
from sitegen.tutorial.compute.numbers import Numbers
from sitegen.tutorial.model import Band, Edge, Elastic, Hem, Reference, Tutorial


def define_bands(tutorial: Tutorial, numbers: Numbers) -> None:
    """Bands: lengths, widths, quarters, and the stretch that they need."""
    for each in tutorial.bands.values():
        _define_band(each, tutorial, numbers)
        _define_band_marks(each, tutorial, numbers)
        _define_reach(each, tutorial, numbers)


def _define_band(each: Band, tutorial: Tutorial, numbers: Numbers) -> None:
    key = each.key
    own = f"{key}.seam_allowance"
    if each.seam_allowance:
        numbers.define(own, amount_maker(each.seam_allowance, "seam allowance"))
    else:
        numbers.define(own, lambda size: numbers.at("seam_allowance", size))
    numbers.define(f"{key}.ratio", share_maker(each.ratio, "ratio"))
    numbers.define(f"{key}.finished_width", lengths_maker(each.finished_width, numbers))

    def opening(size: int) -> Worked:
        return _sum_of(f"{key}.opening_length", each.around, tutorial, numbers, size)

    def finished(size: int) -> Worked:
        ratio = numbers.at(f"{key}.ratio", size)
        return band.finished_length(
            words_of(f"{key}.finished_length"), numbers.at(f"{key}.opening_length", size), ratio
        )

    def cut_length(size: int) -> Worked:
        return band.cut_length(
            words_of(f"{key}.cut_length"), numbers.at(f"{key}.finished_length", size), numbers.at(own, size)
        )

    def cut_width(size: int) -> Worked:
        width = numbers.at(f"{key}.finished_width", size)
        return band.cut_width(words_of(f"{key}.cut_width"), width, numbers.at(own, size), folded=each.folded)

    numbers.define(f"{key}.opening_length", opening)
    numbers.define(f"{key}.finished_length", finished)
    numbers.define(f"{key}.cut_length", cut_length)
    numbers.define(f"{key}.cut_width", cut_width)


def _sum_of(name: str, edges: tuple[Reference, ...], tutorial: Tutorial, numbers: Numbers, size: int) -> Worked:
    return band.opening_length(words_of(name), [numbers.length_at(edge_number(edge, tutorial), size) for edge in edges])


def _define_band_marks(each: Band, tutorial: Tutorial, numbers: Numbers) -> None:
    key = each.key
    for name, whole in (("band_quarter", "finished_length"), ("opening_quarter", "opening_length")):
        numbers.define(
            f"{key}.{name}",
            lambda size, name=name, whole=whole: band.quarter(  # type: ignore[misc]
                words_of(f"{key}.{name}"), numbers.at(f"{key}.{whole}", size)
            ),
        )
    if not (each.front and each.back):
        return
    for half, edges in (("front_opening", each.front), ("back_opening", each.back)):
        numbers.define(
            f"{key}.{half}",
            lambda size, half=half, edges=edges: _sum_of(f"{key}.{half}", edges, tutorial, numbers, size),  # type: ignore[misc]
        )
    if not each.on_neck:
        return
    numbers.define(
        f"{key}.quarter_from_shoulder",
        lambda size: band.quarter_from_shoulder(
            words_of(f"{key}.quarter_from_shoulder"),
            numbers.at(f"{key}.front_opening", size),
            numbers.at(f"{key}.back_opening", size),
        ),
    )


def _define_reach(each: Band, tutorial: Tutorial, numbers: Numbers) -> None:
    """How far the band must stretch to be sewn on, and to be put on."""
    key = each.key
    numbers.define(
        f"{key}.stretch_to_sew",
        lambda size: band.stretch_needed(
            words_of(f"{key}.stretch_to_sew"),
            numbers.at(f"{key}.opening_length", size),
            numbers.at(f"{key}.finished_length", size),
        ),
    )
    over = each.goes_over.text.removeprefix("body.") if each.goes_over else "nothing"
    if over == "nothing":
        return
    if over in tutorial.body:
        numbers.define(f"{key}.reach", lambda size: numbers.at(f"body.{over}", size))
    elif over in ADULT_REACH and not tutorial.child:
        numbers.define(f"{key}.reach", lambda size: ADULT_REACH[over])
    else:
        return
    numbers.define(
        f"{key}.stretch_to_wear",
        lambda size: band.stretch_needed(
            words_of(f"{key}.stretch_to_wear"),
            numbers.at(f"{key}.reach", size),
            numbers.at(f"{key}.finished_length", size),
        ),
    )


def define_hems(tutorial: Tutorial, numbers: Numbers) -> None:
    """Hems: allowance, rows of stitches, what lies beyond them, the length of the edge."""
    for each in tutorial.hems.values():
        _define_hem(each, tutorial, numbers)


def _define_hem(each: Hem, tutorial: Tutorial, numbers: Numbers) -> None:
    key = each.key
    for field, lengths in (
        ("turn", each.turn),
        ("fold_under", each.fold_under),
        ("needle_gap", each.needle_gap),
        ("stitch_line", each.stitch_line),
    ):
        if lengths:
            numbers.define(f"{key}.{field}", lengths_maker(lengths, numbers))

    def optional(field: str, size: int) -> Worked | None:
        name = f"{key}.{field}"
        return numbers.at(name, size) if name in numbers else None

    def allowance(size: int) -> Worked:
        turn = numbers.at(f"{key}.turn", size)
        return hem.allowance(words_of(f"{key}.allowance"), turn, optional("fold_under", size))

    def stitch_line(size: int) -> Worked:
        turn = numbers.at(f"{key}.turn", size)
        return hem.stitch_line(words_of(f"{key}.stitch_line"), turn, optional("needle_gap", size))

    def far_row(size: int) -> Worked:
        line = numbers.at(f"{key}.stitch_line", size)
        return hem.far_row(words_of(f"{key}.far_row"), line, optional("needle_gap", size))

    def catch(size: int) -> Worked:
        return hem.catch(words_of(f"{key}.catch"), numbers.at(f"{key}.turn", size), numbers.at(f"{key}.far_row", size))

    numbers.define(f"{key}.allowance", allowance)
    numbers.define(f"{key}.stitch_line", stitch_line)
    numbers.define(f"{key}.far_row", far_row)
    numbers.define(f"{key}.catch", catch)
    numbers.define(
        f"{key}.edge_length", lambda size: _sum_of(f"{key}.edge_length", each.edges, tutorial, numbers, size)
    )
    turned = [edge.turn for name in each.edges if (edge := _edge(name, tutorial)) and edge.turn]
    rings = [ring.share * 360 for ring in tutorial.circles.values() if any(ring.hem_edge == e.name for e in each.edges)]
    if (turned or rings) and all(not turn.inward for turn in turned):
        degrees = sum((*rings, *(turn.degrees for turn in turned)), start=Fraction(0))
        numbers.define(
            f"{key}.fullness",
            lambda size: hem.fullness(words_of(f"{key}.fullness"), numbers.at(f"{key}.turn", size), degrees),
        )


def _edge(reference: Reference, tutorial: Tutorial) -> Edge | None:
    piece, _, edge = reference.name.partition(".")
    return tutorial.pieces[piece].edges.get(edge) if piece in tutorial.pieces else None


def define_elastics(tutorial: Tutorial, numbers: Numbers) -> None:
    """Elastics: the ring, what to cut, the casing."""
    for each in tutorial.elastics.values():
        _define_elastic(each, numbers)


def _define_elastic(each: Elastic, numbers: Numbers) -> None:
    key = each.key
    numbers.define(f"{key}.ratio", share_maker(each.ratio, "ratio"))
    for field, lengths in (
        ("overlap", each.overlap),
        ("width", each.width),
        ("room", each.room),
        ("fold_under", each.fold_under),
    ):
        if lengths:
            numbers.define(f"{key}.{field}", lengths_maker(lengths, numbers))

    def finished(size: int) -> Worked:
        return elastic.finished_length(
            words_of(f"{key}.finished_length"),
            numbers.length_at(each.around.name, size),
            numbers.at(f"{key}.ratio", size),
        )

    def cut(size: int) -> Worked:
        return elastic.cut_length(
            words_of(f"{key}.cut_length"),
            numbers.at(f"{key}.finished_length", size),
            numbers.at(f"{key}.overlap", size),
        )

    def casing(size: int) -> Worked:
        under = numbers.at(f"{key}.fold_under", size) if each.fold_under else None
        return elastic.casing(
            words_of(f"{key}.casing"), numbers.at(f"{key}.width", size), numbers.at(f"{key}.room", size), under
        )

    numbers.define(f"{key}.finished_length", finished)
    numbers.define(f"{key}.cut_length", cut)
    numbers.define(f"{key}.casing", casing)
    numbers.define(
        f"{key}.casing_depth",
        lambda size: elastic.casing_depth(
            words_of(f"{key}.casing_depth"), numbers.at(f"{key}.width", size), numbers.at(f"{key}.room", size)
        ),
    )
