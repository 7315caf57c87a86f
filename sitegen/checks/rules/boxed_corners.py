"""Boxed corners: the square that is cut out, and the bag that the panel makes."""

from __future__ import annotations

from collections.abc import Iterator

from sitegen.checks.held import disagreements, in_size
from sitegen.checks.registry import check
from sitegen.findings import Finding, Place, Severity
from sitegen.quantities import RULER, ZERO, Length, show_working
from sitegen.tutorial import Boxed, Claim, Computed, Tutorial, words_of

_BAG = (
    "seam_allowance: 1/2 in\nfabrics: {main: {name: canvas, structure: woven, buy: 1 yd}}\n"
    "pieces: {bag: {cut: 2, fabric: main, finished: {length: 16 in, width: 15 in},"
    " sides: {top: raw, bottom: BOTTOM, left: seam, right: seam}}}\nboxed: {bottom: {panel: bag, CORNER}}"
)


def _bag(corner: str, bottom: str = "seam") -> str:
    return _BAG.replace("CORNER", corner).replace("BOTTOM", bottom)


@check(
    id="boxed-sum",
    area="bags",
    severity=Severity.WRONG,
    looks_at=(Claim, Tutorial),
    title="A boxed bag whose sizes do not follow from its panel",
    why="A bag that comes out lower or flatter than it is said to be does not hold what it is made for.",
    source="The seam across takes half of the depth off the height and all of it off the width: geometry of the folded"
    " corner",
    trips=_bag("square: 2 in, width: 13 in"),
    passes=_bag("square: 2 in, width: 11 in, height: 14 in, from_tip: 2 in"),
)
def boxed_sum(part: Claim | Tutorial, computed: Computed) -> Iterator[Finding]:
    """The written width and height of a bag with boxed corners, its depth, what is cut out of the corners, and the
    panel to cut for it must be as computed; the corners leave some of the panel."""
    if isinstance(part, Claim):
        if part.part == "boxed":
            yield from disagreements("boxed-sum", part, computed)
        return
    for boxed in part.boxed.values():
        for size in range(part.size_count):
            off = next(
                (
                    number
                    for field in ("width", "height")
                    if (number := computed.length(f"{boxed.key}.{field}", size)) and number.length <= ZERO
                ),
                None,
            )
            if off is not None:
                size_name = computed.size_name(size)
                yield Finding(
                    "boxed-sum",
                    Severity.WRONG,
                    boxed.place,
                    f"The corners of {words_of(boxed.key)} take more than the panel has{in_size(size_name)}.",
                    "",
                    "",
                    show_working(off, part.first_system),
                    size_name,
                )
                break


@check(
    id="boxed-square",
    area="bags",
    severity=Severity.WRONG,
    looks_at=Tutorial,
    title="A square cut out of a corner whose two sides do not meet",
    why="The side seam takes another allowance than the seam or fold below, so that the two raw edges that are sewn"
    " across are not equally long.",
    source="Each side of the cut-out is half of the depth, and its own allowance less that of the seam across: geometry"
    " of the folded corner",
    trips=_bag("square: 2 in", "fold").replace("cut: 2", "cut: 1 on fold"),
    passes=_bag("depth: 4 in, cut_out_width: 2 in, cut_out_height: 1 1/2 in", "fold").replace(
        "cut: 2", "cut: 1 on fold"
    ),
)
def boxed_square(tutorial: Tutorial, computed: Computed) -> Iterator[Finding]:
    """Where one square is written for a corner, what is cut out is as high as it is wide, in every size."""
    claimed = {claim.lengths.name: claim.lengths.place for claim in tutorial.claims if claim.part == "boxed"}
    for boxed in tutorial.boxed.values():
        place = boxed.square.place if boxed.square is not None else claimed.get(f"{boxed.key}.square")
        if place is None:
            continue
        for size in range(tutorial.size_count):
            finding = _not_square(boxed, place, size, computed)
            if finding is not None:
                yield finding
                break


def _not_square(boxed: Boxed, place: Place, size: int, computed: Computed) -> Finding | None:
    width, height = (computed.length(f"{boxed.key}.{field}", size) for field in ("cut_out_width", "cut_out_height"))
    if width is None or height is None or width.value == height.value:
        return None
    system, size_name = computed.tutorial.first_system, computed.size_name(size)

    def show(value: Length) -> str:
        return RULER.show(value, system)

    depth = computed.length(f"{boxed.key}.depth", size)
    keys = f"cut_out_width: {show(width.length)}, cut_out_height: {show(height.length)}"
    instead = f" Write depth: {show(depth.length)}, {keys} instead of the square." if depth is not None else ""
    return Finding(
        "boxed-square",
        Severity.WRONG,
        place,
        f"No square fits the corners of {words_of(boxed.key)}{in_size(size_name)}: {show(width.length)} is cut out in"
        f" from the side and {show(height.length)} up from the lower edge, since they take different allowances."
        f"{instead}",
        "",
        "",
        (*show_working(width, system), *show_working(height, system)),
        size_name,
    )
