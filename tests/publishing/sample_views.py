"""Invented pages that use every part of the view model, for the tests of this room."""

from __future__ import annotations

from dataclasses import replace

from markupsafe import Markup

from sitegen.publishing.amounts import Filled, number, sentences, size_name
from sitegen.publishing.markdown import render, render_inline
from sitegen.publishing.number_views import number_view
from sitegen.publishing.picture_views import Diagram, DrawnPicture, Picture, PictureSource
from sitegen.publishing.views import (
    Both,
    Caution,
    Change,
    CutPiece,
    Fabric,
    FrontView,
    GlossaryEntry,
    GlossaryView,
    NumberTable,
    NumberView,
    OtherWay,
    SiteView,
    StepCard,
    Stitching,
    Supply,
    TutorialCard,
    TutorialView,
    Video,
)
from sitegen.quantities import (
    BySize,
    Ratio,
    Rounding,
    System,
    Term,
    Worked,
    given,
    inches,
    mm,
    parse_lengths,
    plus,
    times,
    work,
)

SIZES = ("XS", "S", "M", "L", "XL", "XXL")

_ALLOWANCE = given("seam allowance", inches("3/8"))
_RATIO = given("neckband ratio", Ratio.percent(80))
_WIDTH = given("neckband finished width", inches("3/4"))


def _by_size(name: str, lengths: str) -> BySize[Worked]:
    return parse_lengths(lengths).map(lambda typed: given(name, typed.value))


_FRONT = _by_size("front neckline", "11 3/4, 12 1/4, 12 3/4, 13 1/4, 13 7/8, 14 1/2 in")
_BACK = _by_size("back neckline", "7 1/4, 7 1/2, 7 3/4, 8, 8 3/8, 8 3/4 in")


def _band(size: int) -> Worked:
    opening = work("neckband opening", _FRONT.at(size), plus(_BACK.at(size)))
    finished = work("neckband finished length", opening, times(_RATIO))
    return work("neckband cut length", finished, plus(_ALLOWANCE, 2))


_CUT = BySize(tuple(_band(size) for size in range(len(SIZES))))
_BUY = BySize(tuple(each.rounded(Rounding.SOLD) for each in _by_size("main fabric", "44, 46, 48, 56, 63, 66 in")))

NUMBERS: dict[str, NumberView] = {
    view.name: view
    for view in (
        number_view(
            "neckband.cut_length",
            "neckband cut length",
            _CUT,
            anchor="w-neckband.cut_length",
            place="with the cutting list",
        ),
        number_view(
            "neckband.cut_width",
            "neckband cut width",
            BySize((work("neckband cut width", Term("", 2, _WIDTH), plus(_ALLOWANCE, 2)),)),
            anchor="w-neckband.cut_width",
            place="with the cutting list",
        ),
        number_view(
            "neckband.band_quarter",
            "quarter of the neckband",
            _CUT.map(
                lambda worked: work("quarter of the neckband", worked, times(given("a quarter", Ratio.percent(25))))
            ),
            anchor="w-neckband.band_quarter",
            place="on card 2",
        ),
        number_view(
            "lower.turn",
            "lower hem turn",
            BySize((given("lower hem turn", inches("3/4"), "as the author chose it"),)),
            anchor="w-lower.turn",
            place="on card 3",
        ),
        number_view("body.bust", "bust", _by_size("bust", "31, 33, 35 1/2, 38, 41, 44 in")),
        number_view("body.height", "height", BySize((given("height", mm(1680)),))),
        number_view("girth.chest", "chest", _by_size("chest", "34, 36, 38 1/2, 41, 44, 47 in"), anchor="w-chest"),
        number_view("front.cut_length", "length", _by_size("front", "25, 25 1/2, 26, 26 1/2, 27, 27 1/2 in")),
        number_view("front.cut_width", "width", _by_size("front", "9 1/4, 9 3/4, 10 3/8, 11, 11 3/4, 12 1/2 in")),
        number_view("long.amount", "lengthen by", _by_size("amount", "2, 2 1/8, 2 1/4, 2 1/4, 2 3/8, 2 1/2 in")),
        number_view("main.buy", "main fabric", _BUY, anchor="w-buy"),
        number_view("neckband.ratio", "neckband ratio", BySize((_RATIO,))),
    )
}


def filled(name: str, first: System = System.INCHES) -> Filled | None:
    """What stands for a reference in the sample prose."""
    if name == "size":
        return size_name(SIZES)
    view = NUMBERS.get(name)
    return number(view, first) if view else None


def prose(text: str, heading_level: int = 4) -> Markup:
    """Sample prose as HTML, references filled in."""
    return render(text, filled, heading_level)


SITE = SiteView(
    title="The Sewing Table",
    author="Robin Example",
    about=render("Garments for a **first summer of sewing**. Everything here is invented to show the pages."),
    note="Invented sample content. Measure your own body before you cut.",
    generator="sitegen 0.1.0",
)

PIN = Caution("Pins", "Count them out and back in; sew over none.")
IRON = Caution("Iron", "Rest it on its heel, keep fingers off the steam, unplug it when you leave the table.")
CUTTER = Caution("Rotary cutter", "Cut away from the body; close the guard whenever it is put down.")

SCALE_DRAWING = DrawnPicture("drawings/band.svg", 340, 210)

PHOTO = Picture(
    src="pictures/band-960.jpg",
    srcset="pictures/band-480.jpg 480w, pictures/band-960.jpg 960w",
    sources=(PictureSource("image/webp", "pictures/band-480.webp 480w, pictures/band-960.webp 960w"),),
    width=960,
    height=640,
    alt="The band pinned to the neckline at its four quarter marks",
    caption="The band is shorter than the neckline, so the neckline lies in small waves between the pins.",
    illustration=True,
)


def _card(number: int, title: str, text: str) -> StepCard:
    return StepCard(number=number, anchor=f"step-{number}", title=title, prose=prose(text), minutes=20)


CARDS: tuple[StepCard, ...] = (
    replace(
        _card(
            1,
            "Cut the pieces",
            "Wash and press the cloth, then fold it along the grain, right sides together. Lay the pieces for size "
            "{size} as the cutting list says.\n\nCut the band {neckband.cut_length} long and "
            "{neckband.cut_width} wide, its **long side along the stretch**.\n\n"
            "- Mark both notches of the armhole.\n- Leave the fold uncut.",
        ),
        needs=("main fabric, washed", "1×1 rib"),
        tools=("shears or rotary cutter", "clear ruler", "chalk"),
        cautions=(CUTTER, PIN),
        minutes=45,
        numbers=(NUMBERS["neckband.cut_length"], NUMBERS["neckband.cut_width"]),
    ),
    replace(
        _card(
            2,
            "Sew on the neckband",
            "Join the short ends of the band. Fold it lengthwise, wrong sides together, and mark its quarters: "
            "{neckband.band_quarter} apart.\n\nMark the quarters of the neckline as well. They do **not** fall on the "
            "shoulder seams, because the front is longer than the back.\n\n#### Pin and stretch\n\n1. Pin mark "
            "to mark, the band on the right side of the top.\n2. Sew with the band on top, stretching it until it is "
            "as long as the neckline. Let the top lie flat.\n\n"
            "| Where | Stretch |\n|:--|--:|\n| front curve | most |\n| back | least |",
        ),
        needs=("the neckband from card 1", "the top, shoulders sewn"),
        tools=("sewing machine", "ballpoint needle 80/12", "pins", "iron"),
        cautions=(PIN, IRON),
        stitching=(
            Stitching(
                what="Neckband to front and back neckline",
                stitch="narrow zigzag",
                stitch_width="1 mm",
                stitch_length="2.5 mm, about 10 to the inch",
                allowance=number_view("seam_allowance", "seam allowance", BySize((_ALLOWANCE,))),
                press="down, towards the top",
                notes=("The band is stretched to the neckline, evenly between the marks.",),
            ),
        ),
        minutes=80,
        numbers=(NUMBERS["neckband.band_quarter"], NUMBERS["neckband.cut_length"]),
        working=(NUMBERS["neckband.band_quarter"],),
        pictures=(PHOTO,),
        diagrams=(
            Diagram(
                "The neckband and its quarter marks, to scale",
                tuple(DrawnPicture(f"drawings/band-{size}.svg", 340, 210) for size in SIZES),
                sentences([f"The band lies flat, {length} in long." for length in (16, 17, 18, 18, 19, 19)], 2),
                shown=2,
                anchor="d-band",
            ),
        ),
        look_for=prose(
            "The band lies flat against the body, and its seam meets a quarter mark, not the middle of the front."
        ),
        if_wrong=prose(
            "Ripples: the band was stretched too little, or not evenly. Unpick between two marks and sew again."
        ),
        video=Video("14:20", "https://video.example/lesson?t=860"),
    ),
    replace(
        _card(
            3,
            "Hem the lower edge",
            "Turn the edge up by {lower.turn} and press. Sew from the right side, {size} or not.",
        ),
        tools=("sewing machine", "twin needle 4.0/80", "iron"),
        cautions=(IRON,),
        stitching=(Stitching(what="Lower hem", stitch="twin needle, 4 mm apart", stitch_length="3 mm"),),
        numbers=(NUMBERS["lower.turn"],),
        working=(NUMBERS["lower.turn"],),
        look_for=prose("Both rows catch the turned edge on the wrong side."),
        other_way=OtherWay(
            when=prose("If you have no twin needle."),
            prose=prose("Sew {lower.turn} from the fold with a **zigzag**.\n\n1. Sew slowly.\n2. Press."),
            stitching=(Stitching(what="Lower hem", stitch="zigzag", press="flat"),),
        ),
        video=Video("21:05"),
    ),
    replace(_card(4, "Press and try on", "Press on the wrong side. Then try it on."), minutes=None),
)

TUTORIAL = TutorialView(
    site=SITE,
    root="../../",
    title="Tidewater tee",
    summary=prose("A loose knit top with a rib neckband and a twin-needle hem, to sew in **one long afternoon**."),
    cards=CARDS,
    level="Beginner",
    wearer="adult",
    minutes=145,
    learn=("Cut jersey on the fold without stretching it.", "Sew a band that lies flat.", "Hem with a twin needle."),
    before=prose("Wash the cloth as you will wash the garment. Read every card once before you cut.", 3),
    picture=replace(
        PHOTO, src="pictures/cover.jpg", srcset="", sources=(), caption="", illustration=False, alt="The finished top"
    ),
    sizes=SIZES,
    chart=NumberTable((NUMBERS["body.bust"], NUMBERS["body.height"])),
    finished=NumberTable((NUMBERS["girth.chest"],), (NUMBERS["girth.chest"],)),
    fabrics=(
        Fabric(
            name="Cotton jersey",
            called="main",
            structure="knit",
            stretch="40% across, 15% down",
            width=Both("60 in", "152.5 cm"),
            weight="180 g/m²",
            shrinkage="5%",
            advice=render_inline("Choose one that springs back when it is *stretched and let go*."),
            buy=NUMBERS["main.buy"],
        ),
        Fabric(name="1×1 rib", called="rib", structure="knit", stretch="80% across"),
    ),
    supplies=(
        Supply("Ballpoint needle", Both("80/12", "80/12"), Both("1", "1"), "sewing the jersey"),
        Supply("Twin stretch needle", Both("4.0/80", "4.0/80"), Both("1", "1"), "the hem"),
        Supply("Polyester thread", amount=Both("1 reel", "1 reel")),
    ),
    tools=("sewing machine with a zigzag", "iron and board", "shears", "tape measure"),
    cautions=(replace(PIN, cards=(1, 2)), replace(IRON, cards=(2, 3)), replace(CUTTER, cards=(1,))),
    cutting=(
        CutPiece("Front", "1 on fold", "main", (NUMBERS["front.cut_length"], NUMBERS["front.cut_width"])),
        CutPiece("Neckband", "1", "rib", (NUMBERS["neckband.cut_length"], NUMBERS["neckband.cut_width"])),
    ),
    cutting_working=(NUMBERS["neckband.cut_length"], NUMBERS["neckband.cut_width"]),
    buying_working=(NUMBERS["main.buy"],),
    changes=(
        Change(
            title="A longer front",
            anchor="change-long",
            text=prose("Cut across the front and spread it by {long.amount}. Redraw the side as one straight line."),
            numbers=NumberTable((NUMBERS["long.amount"],)),
            diagrams=(Diagram("Where the front is cut across", (SCALE_DRAWING,)),),
        ),
    ),
)

FRONT = FrontView(
    site=SITE,
    tutorials=(
        TutorialCard(
            key="tidewater-tee",
            title="Tidewater tee",
            href="tutorials/tidewater-tee/index.html",
            summary=TUTORIAL.summary,
            level="Beginner",
            wearer="adult",
            minutes=145,
            sizes=SIZES,
            cards=4,
            picture=TUTORIAL.picture,
        ),
        TutorialCard(
            key="harvest-bag",
            title="Harvest bag",
            href="tutorials/harvest-bag/index.html",
            summary=prose("A woven tote with one pocket: straight seams, two handles, nothing to fit."),
            minutes=60,
            cards=1,
        ),
    ),
)

GLOSSARY = GlossaryView(
    site=SITE,
    entries=(
        GlossaryEntry(
            "Calico", "term-calico", "Plain unbleached cotton, used to try out a garment.", "muslin", "calico"
        ),
        GlossaryEntry("Ease", "term-ease", "The difference between the garment and the body it goes round."),
        GlossaryEntry("Seam allowance", "term-seam-allowance", "The cloth between the seam line and the cut edge."),
    ),
)

SINGLE = replace(
    TUTORIAL,
    title="Harvest bag",
    sizes=(),
    chart=NumberTable(),
    finished=NumberTable(),
    fabrics=(),
    cautions=(),
    supplies=(),
    tools=(),
    learn=(),
    before=Markup(),
    cutting=(),
    cutting_working=(),
    changes=(),
    picture=None,
    cards=(StepCard(1, "step-1", "Sew", Markup("<p>Sew.</p>")),),
)
