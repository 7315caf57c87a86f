"""Builds what is sewn to and done with the pieces: bands, hems, elastics, joined lengths, girths, swaps."""

from __future__ import annotations

from sitegen.reading import Mapping, Node, Scalar
from sitegen.tutorial.build.fields import Fields
from sitegen.tutorial.model import Band, Elastic, Girth, Hem, Joined, Reference, Swap, Words

BAND_EXAMPLE = "neckband: {opening: [front.neckline, back.neckline], ratio: 80%, finished_width: 1 in, fabric: rib}"
HEM_EXAMPLE = "lower: {edges: [front.hem, back.hem], turn: 3/4 in, stitch: twin needle, needle_gap: 4 mm}"
ELASTIC_EXAMPLE = "waist: {around: body.waist, ratio: 90%, overlap: 1 in, width: 3/4 in, room: 1/8 in}"
JOINED_EXAMPLE = "whole_front: {pieces: [yoke, lower_front]}"
GIRTH_EXAMPLE = "bust: {edges: [front.chest, back.chest], body: bust}"
BAND_CLAIMS = (
    "opening_length",
    "finished_length",
    "cut_length",
    "cut_width",
    "band_quarter",
    "opening_quarter",
    "quarter_from_shoulder",
)
SWAP_EXAMPLE = "self_band: {band: neckband, fabric: main, ratio: 90%}"


def band(key: str, fields: Fields) -> Band | None:
    """One band; None when what it cannot do without is missing (reported)."""
    builder = fields.builder
    opening = fields.required_names("opening", BAND_EXAMPLE)
    ratio_node = fields.required("ratio", "ratio: 80%")
    fabric_node = fields.required("fabric", "fabric: rib")
    fabric = builder.words(fabric_node, "a fabric", "fabric: rib") if fabric_node is not None else None
    ratio = builder.share(ratio_node, above_nothing=True) if ratio_node is not None else None
    finished_width = fields.lengths("finished_width", "finished_width: 1 in", required=True)
    allowance = fields.get("seam_allowance")
    over = fields.get("goes_over")
    make = fields.get("make")
    folded = fields.get("folded")
    front, back, around = _opening(fields, opening)
    seam_allowance = builder.amount(allowance, f"{key}.seam_allowance") if allowance is not None else None
    goes_over = _goes_over(over, fields) if over is not None else None
    count = builder.whole_number(make, "make: 2", most=20) if make is not None else 1
    is_folded = builder.yes_or_no(folded, "folded: true") if folded is not None else True
    fields.claims("band", BAND_CLAIMS)
    fields.finish()
    if not (around and ratio and finished_width and fabric):
        return None
    return Band(
        key,
        fields.node.place,
        front,
        back,
        around,
        ratio,
        finished_width,
        Reference(fabric.text, fabric.place),
        seam_allowance,
        goes_over,
        count or 1,
        is_folded is not False,
    )


def _goes_over(node: Node, fields: Fields) -> Words | None:
    """Head, hand, foot or nothing, or a measurement of the body by its full name, ``body.hip``."""
    if isinstance(node, Scalar) and node.text.strip().startswith("body."):
        return fields.builder.words(node, "a body measurement", "goes_over: body.hip")
    return fields.builder.choice(node, ("head", "hand", "foot", "nothing", "body.hip"), "goes_over: head")


Names = tuple[Reference, ...]


def _opening(fields: Fields, node: Node | None) -> tuple[Names, Names, Names]:
    """Front half, back half and the whole of an opening. Halves are known by keys or by the pieces' names."""
    if node is None:
        return (), (), ()
    example = "opening: [front.neckline, back.neckline]"
    if isinstance(node, Mapping):
        inner = Fields(fields.builder, node, f"opening of {fields.what}")
        halves = []
        for half in ("front", "back"):
            value = inner.required_names(half, "opening: {front: [left.neckline], back: [back.neckline]}")
            halves.append(fields.builder.references(value, example) if value is not None else ())
        inner.finish()
        return halves[0], halves[1], (*halves[0], *halves[1])
    around = fields.builder.references(node, example)
    front = tuple(edge for edge in around if edge.name.startswith("front"))
    back = tuple(edge for edge in around if edge.name.startswith("back"))
    if front and back and len(front) + len(back) == len(around):
        return front, back, around
    return (), (), around


def hem(key: str, fields: Fields) -> Hem | None:
    """One hem."""
    builder = fields.builder
    edges_node = fields.required_names("edges", HEM_EXAMPLE)
    edges = builder.references(edges_node, "edges: [front.hem, back.hem]") if edges_node is not None else ()
    turn = fields.lengths("turn", "turn: 3/4 in", required=True)
    found = {name: fields.lengths(name) for name in ("fold_under", "needle_gap", "stitch_line")}
    fields.claims("hem", ("allowance", "edge_length"))
    words = fields.stitch("stitch: twin needle")
    fields.finish()
    if not (edges and turn):
        return None
    return Hem(
        key, fields.node.place, edges, turn, found["fold_under"], words, found["needle_gap"], found["stitch_line"]
    )


def elastic(key: str, fields: Fields) -> Elastic | None:
    """One elastic."""
    builder = fields.builder
    around_node = fields.required("around", "around: body.waist")
    ratio_node = fields.required("ratio", "ratio: 90%")
    around = builder.words(around_node, "a body measurement", "around: body.waist") if around_node else None
    ratio = builder.share(ratio_node, above_nothing=True) if ratio_node is not None else None
    overlap, width, room = (
        fields.lengths(name, example, required=True)
        for name, example in (("overlap", "overlap: 1 in"), ("width", "width: 3/4 in"), ("room", "room: 1/8 in"))
    )
    fold_under = fields.lengths("fold_under")
    fields.claims("elastic", ("cut_length", "finished_length", "casing", "casing_depth"))
    fields.finish()
    if not (around and ratio and overlap and width and room):
        return None
    reference = Reference(around.text.strip("{}"), around.place)
    return Elastic(key, fields.node.place, reference, ratio, overlap, width, room, fold_under)


def joined(key: str, fields: Fields) -> Joined | None:
    """Pieces whose length is measured over their seams."""
    node = fields.required("pieces", JOINED_EXAMPLE)
    pieces = fields.builder.references(node, "pieces: [yoke, lower_front]") if node is not None else ()
    fields.claims("joined", ("joined_length",))
    fields.finish()
    if len(pieces) < 2:
        if node is not None:
            fields.builder.not_this(node, "two pieces or more", "pieces: [yoke, lower_front]")
        return None
    return Joined(key, fields.node.place, pieces)


def girth(key: str, fields: Fields) -> Girth | None:
    """A measurement round the garment."""
    node = fields.required_names("edges", GIRTH_EXAMPLE)
    edges = fields.builder.references(node, "edges: [front.chest, back.chest]") if node is not None else ()
    body_node = fields.get("body")
    body = fields.builder.words(body_node, "a body measurement", "body: bust") if body_node is not None else None
    fields.claims("girth", ("finished_girth", "ease"))
    fields.finish()
    if not edges:
        return None
    reference = Reference(f"body.{body.text.removeprefix('body.')}", body.place) if body else None
    return Girth(key, fields.node.place, edges, reference)


def swap(key: str, fields: Fields) -> Swap | None:
    """A band made from another fabric."""
    found: dict[str, Reference] = {}
    for name in ("band", "fabric"):
        node = fields.required(name, SWAP_EXAMPLE)
        words = fields.builder.words(node, "a name", SWAP_EXAMPLE) if node is not None else None
        if words is not None:
            found[name] = Reference(words.text, words.place)
    ratio_node = fields.get("ratio")
    ratio = fields.builder.share(ratio_node, above_nothing=True) if ratio_node is not None else None
    fields.finish()
    if len(found) < 2:
        return None
    return Swap(key, fields.node.place, found["band"], found["fabric"], ratio)
