"""Numbers that an author wrote although they can be computed, held against the computed ones."""

from __future__ import annotations

from collections.abc import Iterator

from sitegen.checks.held import disagreements, system_of
from sitegen.checks.registry import COMMON_PRACTICE, check
from sitegen.findings import Finding, Severity
from sitegen.quantities import ZERO, Worked, show_number, show_working
from sitegen.tutorial import Claim, Computed, words_of

_YOKE = "pieces:\n  yoke: {cut: 2, fabric: main, length: 6 in}\n  skirt: {cut: 2, fabric: main, length: 20 in}\n"
_WAIST = (
    "sizes: [S, M]\nbody: {waist: '20, 21 in'}\n"
    "elastics: {waistband: {around: body.waist, ratio: 90%, overlap: 1 in, width: 3/4 in, room: 1/8 in, CLAIM}}"
)
_WOVEN = "seam_allowance: 1/2 in\nfabrics: {main: {name: cotton, structure: woven}}\n"
_KNIT = (
    "seam_allowance: 3/8 in\n"
    "fabrics:\n"
    "  main: {name: jersey, structure: knit, stretch_across: 40%}\n"
    "  rib: {name: rib, structure: knit, stretch_across: 80%}\n"
    "pieces:\n"
    "  front: {cut: 1 on fold, fabric: main, edges: {neckline: 12 1/2 in}}\n"
    "  back: {cut: 1 on fold, fabric: main, edges: {neckline: 7 1/2 in}}\n"
)
_BAND = "opening: [front.neckline, back.neckline], ratio: 80%, finished_width: 1 in, fabric: rib"
_SLEEVE = "sleeve: {cut: 2, fabric: main, length: 24 in, sides: {top: seam, bottom: seam}}"
_LONGER = f"pieces: {{{_SLEEVE}}}\nchanges: {{longer: {{piece: sleeve, wanted: 25 in finished, CLAIM}}}}"


def _held(check_id: str, part: str, fields: tuple[str, ...], claim: Claim, computed: Computed) -> Iterator[Finding]:
    if claim.part == part and claim.field in fields:
        yield from disagreements(check_id, claim, computed)


@check(
    id="band-cut",
    area="bands",
    severity=Severity.WRONG,
    looks_at=Claim,
    title="A band cut to the wrong size",
    why="A band that is cut too long flutes, one that is too short puckers or will not go over the head.",
    source="Finished length and allowances: sewing.org, Using ribbing for a cuff or neckline opening; cut width:"
    " sewing handbook, ribbed edges",
    trips=_KNIT + f"bands: {{neckband: {{{_BAND}, cut_length: 16 in}}}}",
    passes=_KNIT + f"bands: {{neckband: {{{_BAND}, cut_length: 16 3/4 in, cut_width: 2 3/4 in}}}}",
)
def band_cut(claim: Claim, computed: Computed) -> Iterator[Finding]:
    """A band's written opening, finished length, cut length and cut width must be the computed ones."""
    fields = ("opening_length", "finished_length", "cut_length", "cut_width")
    yield from _held("band-cut", "band", fields, claim, computed)


@check(
    id="quarter-marks",
    area="marks",
    severity=Severity.WRONG,
    looks_at=Claim,
    title="Quarter marks at the wrong distance",
    why="Marks that do not meet spread the stretch of the band unevenly, and the neckline twists.",
    source="Derived: a quarter is the whole divided by 4; the side quarter falls (front − back) ÷ 4 from the shoulder",
    trips=_KNIT + f"bands: {{neckband: {{{_BAND}, quarter_from_shoulder: 2 1/2 in}}}}",
    passes=_KNIT + f"bands: {{neckband: {{{_BAND}, quarter_from_shoulder: 1 1/4 in, band_quarter: 4 in}}}}",
)
def quarter_marks(claim: Claim, computed: Computed) -> Iterator[Finding]:
    """Written quarters of a band and its opening, and how far they fall from the shoulder seam, must be as computed."""
    fields = ("band_quarter", "opening_quarter", "quarter_from_shoulder")
    yield from _held("quarter-marks", "band", fields, claim, computed)


@check(
    id="finished-length",
    area="sums",
    severity=Severity.WRONG,
    looks_at=Claim,
    title="A finished size that the cut size does not give",
    why="The finished length is what the student chooses by; it is wrong when an allowance was forgotten.",
    source=COMMON_PRACTICE,
    trips=_WOVEN + "pieces: {panel: {cut: 2, fabric: main, length: 16 in, sides: {top: seam, bottom: seam},"
    " finished_length: 15 1/2 in}}",
    passes=_WOVEN + "pieces: {panel: {cut: 2, fabric: main, length: 16 in, sides: {top: seam, bottom: seam},"
    " finished_length: 15 in}}",
)
def finished_length(claim: Claim, computed: Computed) -> Iterator[Finding]:
    """A piece's written finished size must be its cut size, less what its ends take, plus the bands sewn to them."""
    yield from _held("finished-length", "piece", ("finished_length", "finished_width"), claim, computed)


@check(
    id="cut-size",
    area="sums",
    severity=Severity.WRONG,
    looks_at=Claim,
    title="A cut size that does not give the finished one",
    why="Cloth that is cut too small cannot be put back.",
    source=COMMON_PRACTICE,
    trips=_WOVEN + "pieces: {panel: {cut: 2, fabric: main, finished: {width: 15 in},"
    " sides: {left: seam, right: seam}, cut_width: 15 1/2 in}}",
    passes=_WOVEN + "pieces: {panel: {cut: 2, fabric: main, finished: {width: 15 in},"
    " sides: {left: seam, right: seam}, cut_width: 16 in}}",
)
def cut_size(claim: Claim, computed: Computed) -> Iterator[Finding]:
    """A piece's written cut size must be its finished size plus what seams, hems and casings take."""
    yield from _held("cut-size", "piece", ("cut_length", "cut_width"), claim, computed)


@check(
    id="allowance-sum",
    area="sums",
    severity=Severity.WRONG,
    looks_at=Claim,
    title="Joined pieces whose allowances do not add up",
    why="Pieces laid seam line over seam line overlap by both allowances; taking off one is the commonest slip.",
    source=COMMON_PRACTICE,
    trips=_WOVEN + _YOKE + "joined: {whole: {pieces: [yoke, skirt], joined_length: 25 1/2 in}}",
    passes=_WOVEN + _YOKE + "joined: {whole: {pieces: [yoke, skirt], joined_length: 25 in}}",
)
def allowance_sum(claim: Claim, computed: Computed) -> Iterator[Finding]:
    """The written length over joined pieces must be A + B less both allowances of each seam between them."""
    yield from _held("allowance-sum", "joined", ("joined_length",), claim, computed)


@check(
    id="hem-allowance",
    area="hems",
    severity=Severity.WRONG,
    looks_at=Claim,
    title="A hem allowance that the folds do not make",
    why="A garment comes out shorter or longer by the difference, all the way round.",
    source="Depth and turn-in, as New Mexico State Univ. and 4-H leaflets give double hems",
    trips=_WOVEN + "pieces: {panel: {cut: 2, fabric: main, edges: {hem: 15 in}}}\n"
    "hems: {top: {edges: [panel.hem], turn: 1 in, fold_under: 1/2 in, allowance: 1 in}}",
    passes=_WOVEN + "pieces: {panel: {cut: 2, fabric: main, edges: {hem: 15 in}}}\n"
    "hems: {top: {edges: [panel.hem], turn: 1 in, fold_under: 1/2 in, allowance: 1 1/2 in}}",
)
def hem_allowance(claim: Claim, computed: Computed) -> Iterator[Finding]:
    """A written hem allowance must be the turn and what is folded under; a written edge length that of its edges."""
    yield from _held("hem-allowance", "hem", ("allowance", "edge_length"), claim, computed)


@check(
    id="added-length",
    area="changes",
    severity=Severity.WRONG,
    looks_at=Claim,
    title="An added length that does not reach the wanted one",
    why="The sleeve comes out too short or too long after the cloth is cut.",
    source="Need is the wanted less the present measure: US clothing textbook; New Mexico State Univ. Guide C-228",
    trips=_WOVEN + _LONGER.replace("CLAIM", "amount: 1 in"),
    passes=_WOVEN + _LONGER.replace("CLAIM", "amount: 2 in"),
)
def added_length(claim: Claim, computed: Computed) -> Iterator[Finding]:
    """A written amount must be the wanted less the present length, and the new lengths must follow from it."""
    yield from _held("added-length", "change", ("amount", "new_cut_length", "new_finished_length"), claim, computed)


@check(
    id="line-place",
    area="changes",
    severity=Severity.WRONG,
    looks_at=Claim,
    title="A lengthening line that is not where it is said to be",
    why="Both parts of the cut piece must make the whole piece, and mating pieces must be cut at one level.",
    source="At two thirds of a sleeve from the top: " + COMMON_PRACTICE,
    trips=_WOVEN + f"pieces: {{{_SLEEVE}}}\nchanges: {{longer: {{piece: sleeve, line_at: 2/3 from the top,"
    " lengthen_by: 1 in, part_above: 15 in}}",
    passes=_WOVEN + f"pieces: {{{_SLEEVE}}}\nchanges: {{longer: {{piece: sleeve, line_at: 2/3 from the top,"
    " lengthen_by: 1 in, part_above: 16 in, part_below: 8 in}}",
)
def line_place(claim: Claim, computed: Computed) -> Iterator[Finding]:
    """The written parts above and below a line must be those that the line's place makes of the cut piece."""
    yield from _held("line-place", "change", ("part_above", "part_below"), claim, computed)


@check(
    id="taper-step",
    area="changes",
    severity=Severity.WRONG,
    looks_at=Claim,
    title="A step at the tapered edge that the slope does not give",
    why="The trued edge is drawn from it; a wrong step bends the seam.",
    source="Truing after spreading: Central Washington Univ., costume construction text, chapter 17; the step itself"
    " is derived: amount × slope",
    trips=_WOVEN + "pieces: {sleeve: {cut: 2, fabric: main, length: 24 in,"
    " taper: {top: 14 in, bottom: 8 in, over: 18 in, edges: 2}}}\n"
    "changes: {longer: {piece: sleeve, lengthen_by: 3 in, taper_step: 1 in}}",
    passes=_WOVEN + "pieces: {sleeve: {cut: 2, fabric: main, length: 24 in,"
    " taper: {top: 14 in, bottom: 8 in, over: 18 in, edges: 2}}}\n"
    "changes: {longer: {piece: sleeve, lengthen_by: 3 in, taper_step: 1/2 in}}",
)
def taper_step(claim: Claim, computed: Computed) -> Iterator[Finding]:
    """The written step at a tapered edge must be the amount times the slope of that edge."""
    yield from _held("taper-step", "change", ("taper_step",), claim, computed)


@check(
    id="elastic-cut",
    area="elastic",
    severity=Severity.WRONG,
    looks_at=Claim,
    title="Elastic or casing of the wrong size",
    why="Elastic that is cut short hurts or breaks, one that is long does not hold; a narrow casing traps it.",
    source=COMMON_PRACTICE,
    trips=_WAIST.replace("CLAIM", "cut_length: '19, 20 in'"),
    passes=_WAIST.replace("CLAIM", "cut_length: '19, 19 7/8 in', casing: 7/8 in"),
)
def elastic_cut(claim: Claim, computed: Computed) -> Iterator[Finding]:
    """Written elastic must be body × ratio + overlap; a written casing the elastic's width, room and fold, its
    depth the first two."""
    yield from _held(
        "elastic-cut", "elastic", ("finished_length", "cut_length", "casing", "casing_depth"), claim, computed
    )


@check(
    id="girth-sum",
    area="sums",
    severity=Severity.WRONG,
    looks_at=Claim,
    title="A finished measurement or its ease that does not add up",
    why="Students choose their size by finished measurement and ease.",
    source="Ease is garment less body: US clothing textbook; New Mexico State Univ. Guide C-228",
    trips="fabrics: {main: {name: linen, structure: woven}}\nbody: {bust: 36 in}\n"
    "pieces: {front: {cut: 1 on fold, fabric: main, edges: {chest: 20 in}}, back: {cut: 1 on fold, fabric: main,"
    " edges: {chest: 20 in}}}\ngirths: {bust: {edges: [front.chest, back.chest], body: bust, ease: 3 in}}",
    passes="fabrics: {main: {name: linen, structure: woven}}\nbody: {bust: 36 in}\n"
    "pieces: {front: {cut: 1 on fold, fabric: main, edges: {chest: 20 in}}, back: {cut: 1 on fold, fabric: main,"
    " edges: {chest: 20 in}}}\ngirths: {bust: {edges: [front.chest, back.chest], body: bust, ease: 4 in}}",
)
def girth_sum(claim: Claim, computed: Computed) -> Iterator[Finding]:
    """A written girth must be the sum of its edges, and a written ease the girth less the body.

    An ease is written without its sign, which only says one thing where the garment is larger than the body in every
    size, or smaller in every size.
    """
    if claim.part == "girth" and claim.field == "ease":
        worked = [computed.number(claim.lengths.name, size) for size in range(computed.tutorial.size_count)]
        eases = [each for each in worked if each is not None]
        smaller = [size for size, each in enumerate(worked) if each is not None and each.length < ZERO]
        if smaller and any(each.length > ZERO for each in eases):
            yield _smaller_than_the_body(claim, computed, smaller, eases)
            return
    yield from _held("girth-sum", "girth", ("finished_girth", "ease"), claim, computed)


def _smaller_than_the_body(claim: Claim, computed: Computed, smaller: list[int], eases: list[Worked]) -> Finding:
    first = computed.number(claim.lengths.name, smaller[0])
    amount = claim.lengths.amount_at(smaller[0])
    system = system_of(amount.typed) if amount else computed.tutorial.first_system
    sizes = ", ".join(computed.size_name(size) for size in smaller)
    shown = ", ".join(show_number(each, system) for each in eases)
    return Finding(
        "girth-sum",
        Severity.WRONG,
        claim.lengths.place,
        f"The {words_of(claim.lengths.name)} comes out at {shown}: in {'size' if len(smaller) == 1 else 'sizes'}"
        f" {sizes} the garment is smaller than the body, in the others larger. Look at the body measurements and the"
        " edges; a written ease cannot say both.",
        working=show_working(first, system) if first else (),
        size=sizes,
    )
