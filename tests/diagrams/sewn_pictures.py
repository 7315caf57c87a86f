"""Pictures of seams, meeting edges, plans, layouts and orders: any that can be, and some of usual and odd proportions."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from diagrams.reading_svg import lengths, systems
from hypothesis import strategies as st

from sitegen.diagrams import (
    CannotDraw,
    Drawing,
    Edge,
    TaperedPiece,
    cutting_layout,
    edges_meeting,
    order_of_making,
    piece_plan,
    seam_section,
)
from sitegen.diagrams.kinds.edges_meeting import EdgeChain, EdgePart, Way
from sitegen.diagrams.kinds.piece_plan import CutOff, Ends, PlanSide
from sitegen.diagrams.kinds.seam_section import Closed, Layer, Pressed, Row
from sitegen.diagrams.order_map import Arrow
from sitegen.quantities import ZERO, Length, System, inches, mm
from sitegen.sewing import layout

CALLED = ("front", "front panel and back panel", "upper panel and base", "half waistband")
TITLES = ("Cut out the cloth", "Sew the sides and the underarms in one long seam", "Hem", "Make the straps")


@st.composite
def seams(draw: st.DrawFn) -> Drawing:
    while True:
        allowance = draw(lengths(3, 40))
        other = draw(st.one_of(st.just(allowance), lengths(3, 40)))
        done = draw(st.booleans())
        one, two = (
            Layer(draw(st.sampled_from(CALLED)), edge, width, done)
            for edge, width in (("front.side", allowance), ("back.side", other))
        )
        pressed = draw(st.sampled_from(Pressed))
        press = (
            "" if pressed is Pressed.NOT else draw(st.sampled_from(("to one side", "up, into the waistband", "open")))
        )
        try:
            seam = seam_section.SeamSection(
                "seam of the front side", one, two, draw(st.sampled_from(("", "narrow zigzag", "four-thread overlock"))),
                draw(st.sampled_from(Row)), pressed, press, "", draw(st.sampled_from((None, None, *Closed))),
            )  # fmt: skip
        except CannotDraw:
            continue
        return seam_section.draw(seam, first=draw(systems))


@st.composite
def meetings(draw: st.DrawFn) -> Drawing:
    while True:
        sides = []
        for side in ("a", "b"):
            parts = draw(st.lists(lengths(20, 900), min_size=1, max_size=4))
            called = draw(st.sampled_from(("sleeve cap", "waistband lower", "front shoulder blade")))
            sides.append(EdgeChain(tuple(EdgePart(called, f"{side}{count}", part) for count, part in enumerate(parts))))
        longer, shorter = sorted(sides, key=lambda side: side.length, reverse=True)
        try:
            edges = edges_meeting.EdgesMeeting(longer, shorter, draw(st.sampled_from(Way)))
        except CannotDraw:
            continue
        return edges_meeting.draw(edges, first=draw(systems))


@st.composite
def plans(draw: st.DrawFn) -> Drawing:
    while True:
        widths = draw(lengths(60, 900)), draw(lengths(60, 900)), draw(lengths(60, 900)), draw(lengths(40, 1500))
        sides = {
            side: PlanSide(
                draw(st.sampled_from(("side", "shoulder blade", "waist elastic"))),
                draw(st.sampled_from((Ends.SEAM, Ends.TURNED))),
                draw(st.one_of(st.just(ZERO), lengths(5, 45))),
                draw(st.sampled_from(("", "double"))),
            )
            for side in draw(st.sets(st.sampled_from(("top", "bottom", "left", "right"))))
        }
        try:
            plan = piece_plan.PiecePlan(
                name="piece", called=draw(st.sampled_from(CALLED)), cut=draw(st.sampled_from(("", "1 on fold"))),
                shape=TaperedPiece(*widths, draw(st.sampled_from(Edge)), draw(st.booleans())), sides=sides,
                bias=draw(st.booleans()), outer_only=draw(st.booleans()),
            )  # fmt: skip
        except CannotDraw:
            continue
        return piece_plan.draw(plan, first=draw(systems))


@st.composite
def layouts(draw: st.DrawFn) -> Drawing:
    names = draw(st.lists(st.sampled_from((*CALLED, "pocket")), min_size=1, max_size=4, unique=True))
    pieces = [
        layout.LayoutPiece(
            name, draw(lengths(40, 300)), draw(lengths(40, 900)), draw(st.integers(1, 3)), on_fold=draw(st.booleans())
        )
        for name in names
    ]
    cloth = layout.Cloth(draw(lengths(900, 1500)), draw(st.sampled_from((None, *layout.Fold))), draw(st.booleans()))
    laid = layout.lay_out(pieces, cloth, tries=20)
    if not isinstance(laid, layout.Layout):
        laid = layout.lay_out(pieces, layout.Cloth(cloth.width), tries=20)
    assert isinstance(laid, layout.Layout)
    known = laid.length * Fraction(20, 19) if draw(st.booleans()) else None
    cutting = cutting_layout.CuttingLayout(
        "main", "cotton poplin", laid, cloth.width, {name: name for name in names}, known, known
    )
    return cutting_layout.draw(cutting, first=draw(systems))


@st.composite
def orders(draw: st.DrawFn) -> Drawing:
    count = draw(st.integers(2, 25))
    titles = {step: draw(st.sampled_from(TITLES)) for step in range(1, count + 1)}
    pairs = draw(st.sets(st.tuples(st.integers(1, count), st.integers(1, count)), max_size=40))
    arrows = tuple(Arrow(one, other, draw(st.booleans())) for one, other in sorted(pairs) if one < other)
    return order_of_making.draw(order_of_making.OrderOfMaking(titles, arrows))


to_scale = st.one_of(seams(), meetings(), plans(), layouts())


def fixed(first: System) -> Iterator[Drawing]:
    """Usual and extreme proportions."""
    yield from _seams(first)
    for lengths_of in (("17", "8", "17/2"), ("57", "19", "19"), ("15", "7", "63/8"), ("90", "5", "5")):
        whole, *parts = (inches(each) for each in lengths_of)
        longer = EdgeChain((EdgePart("sleeve cap", "sleeve.cap", whole),))
        shorter = EdgeChain(
            tuple(EdgePart(f"{n} armhole", n, part) for n, part in zip(("front", "back"), parts, strict=True))
        )
        for way in Way:
            yield edges_meeting.draw(edges_meeting.EdgesMeeting(longer, shorter, way), first=first)
    yield from _plans(first)
    for fold in layout.Fold:
        pieces = [
            layout.LayoutPiece("upper panel", inches(16), inches("49/4"), 2),
            layout.LayoutPiece("strap", inches("9/4"), inches("57/2"), 4),
            layout.LayoutPiece("front", inches("37/4"), inches(25), 1, on_fold=True),
        ]
        laid = layout.lay_out(pieces, layout.Cloth(inches(72), fold))
        assert isinstance(laid, layout.Layout)
        called = {piece.name: piece.name for piece in pieces}
        need = laid.length + inches(3)
        cutting = cutting_layout.CuttingLayout("main", "canvas", laid, inches(72), called, need, need)
        yield cutting_layout.draw(cutting, first=first)
    chain = {step: TITLES[step % 4] for step in range(1, 26)}
    links = [Arrow(step, step + 1, sure=step % 3 > 0) for step in range(1, 25)]
    links += [Arrow(2, 9, sure=True), Arrow(2, 20, sure=True), Arrow(7, 24, sure=False)]
    yield order_of_making.draw(order_of_making.OrderOfMaking(chain, tuple(links)))
    yield order_of_making.draw(
        order_of_making.OrderOfMaking(chain, (Arrow(1, 25, sure=True), Arrow(3, 25, sure=False)))
    )


def _seams(first: System) -> Iterator[Drawing]:
    for pressed, press in ((Pressed.NOT, ""), (Pressed.OPEN, "open"), (Pressed.ASIDE, "up, into the waistband")):
        for row in Row:
            for closed in (None, *Closed):
                for other in (mm(10), mm(25)):
                    layers = (
                        Layer("front and back", "front.side", mm(10), True),
                        Layer("sleeve", "sleeve.cap", other, True),
                    )
                    seam = seam_section.SeamSection("seam", *layers, row.value, row, pressed, press, "", closed)
                    yield seam_section.draw(seam, first=first)


def _plans(first: System) -> Iterator[Drawing]:
    seam, hem = PlanSide("side", Ends.SEAM, inches("3/8"), "single"), PlanSide("hem", Ends.TURNED, inches("5/2"))
    sides = {"top": PlanSide("shoulder", Ends.SEAM, inches("3/8")), "bottom": hem, "left": seam, "right": seam}
    shapes = (
        TaperedPiece(inches(17), inches("37/4"), inches("35/2"), inches("73/4")),
        TaperedPiece(inches(20), inches(40), inches(20), inches(20), Edge.FOLD),
        TaperedPiece(inches(12), inches(8), inches(30), inches(44), Edge.STRAIGHT),
        TaperedPiece(inches(12), inches(8), inches(12), inches(20), cap=True),
    )
    for shape in shapes:
        yield piece_plan.draw(piece_plan.PiecePlan("p", "front leg", "2 mirrored", shape, sides), first=first)
    corners = piece_plan.PiecePlan(
        "base", "base", "2", TaperedPiece(inches(16), inches(16), inches(7), inches(7), Edge.STRAIGHT),
        dict.fromkeys(("top", "bottom", "left", "right"), PlanSide("seam", Ends.SEAM, inches("1/2"))),
        cut_off=CutOff(inches(2), inches(2)), outer_only=True,
    )  # fmt: skip
    yield piece_plan.draw(corners, first=first)
    for long, wide in ((inches("65/4"), inches("9/4")), (inches("53/8"), inches("23/4"))):
        yield piece_plan.draw(band(long, wide), first=first)


def band(long: Length, wide: Length) -> piece_plan.PiecePlan:
    """A folded band with its quarter marks."""
    seam = PlanSide("seam", Ends.SEAM, inches("3/8"))
    return piece_plan.PiecePlan(
        "neckband", "neckband", "1", TaperedPiece(long, long, wide, wide, Edge.STRAIGHT),
        dict.fromkeys(("top", "bottom", "left", "right"), seam),
        lengthwise=True, folded=True, quarter=(long - inches("3/4")) / 4,
    )  # fmt: skip
