"""Builds what is sewn to and done with the pieces: bands, hems, elastics, joined lengths, girths, changes."""

from __future__ import annotations

import re
from collections.abc import Sequence as Seq

from sitegen.quantities import NotUnderstood, parse_ratio
from sitegen.reading import Mapping, Node, Scalar
from sitegen.tutorial.build.fields import Fields
from sitegen.tutorial.model import (
    Band,
    Change,
    Elastic,
    Girth,
    Hem,
    Joined,
    Lengths,
    LineAt,
    Reference,
    Share,
    Swap,
)

BAND_EXAMPLE = "neckband: {opening: [front.neckline, back.neckline], ratio: 80%, finished_width: 1 in, fabric: rib}"
HEM_EXAMPLE = "lower: {edges: [front.hem, back.hem], turn: 3/4 in, stitch: twin needle, needle_gap: 4 mm}"
ELASTIC_EXAMPLE = "waist: {around: body.waist, ratio: 90%, overlap: 1 in, width: 3/4 in, room: 1/8 in}"
CHANGE_EXAMPLE = "longer_sleeve: {piece: sleeve, line_at: 2/3 from the top, wanted: 25 in finished}"
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
CHANGE_CLAIMS = (
    "each_edge",
    "new_cut_width",
    "part_above",
    "part_below",
    "new_cut_length",
    "new_finished_length",
    "taper_step",
)


def band(key: str, fields: Fields) -> Band | None:
    """One band; None when what it cannot do without is missing (reported)."""
    builder = fields.builder
    opening = fields.required("opening", BAND_EXAMPLE)
    ratio_node = fields.required("ratio", "ratio: 80%")
    fabric_node = fields.required("fabric", "fabric: rib")
    fabric = builder.words(fabric_node, "a fabric", "fabric: rib") if fabric_node is not None else None
    ratio = builder.share(ratio_node) if ratio_node is not None else None
    finished_width = fields.lengths("finished_width", "finished_width: 1 in", required=True)
    allowance = fields.get("seam_allowance")
    over = fields.get("goes_over")
    make = fields.get("make")
    folded = fields.get("folded")
    front, back, around = _opening(fields, opening)
    seam_allowance = builder.amount(allowance, f"{key}.seam_allowance") if allowance is not None else None
    goes_over = (
        builder.choice(over, ("head", "hand", "foot", "nothing"), "goes_over: head") if over is not None else None
    )
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
            value = inner.required(half, "opening: {front: [left.neckline], back: [back.neckline]}")
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
    edges_node = fields.required("edges", HEM_EXAMPLE)
    edges = builder.references(edges_node, "edges: [front.hem, back.hem]") if edges_node is not None else ()
    turn = fields.lengths("turn", "turn: 3/4 in", required=True)
    stitch = fields.get("stitch")
    found = {name: fields.lengths(name) for name in ("fold_under", "needle_gap", "stitch_line")}
    fields.claims("hem", ("allowance", "edge_length"))
    words = builder.words(stitch, "a stitch", "stitch: twin needle") if stitch is not None else None
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
    ratio = builder.share(ratio_node) if ratio_node is not None else None
    overlap, width, room = (
        fields.lengths(name, example, required=True)
        for name, example in (("overlap", "overlap: 1 in"), ("width", "width: 3/4 in"), ("room", "room: 1/8 in"))
    )
    fold_under = fields.lengths("fold_under")
    fields.claims("elastic", ("cut_length", "finished_length", "casing"))
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
    node = fields.required("edges", GIRTH_EXAMPLE)
    edges = fields.builder.references(node, "edges: [front.chest, back.chest]") if node is not None else ()
    body_node = fields.get("body")
    body = fields.builder.words(body_node, "a body measurement", "body: bust") if body_node is not None else None
    fields.claims("girth", ("finished_girth", "ease"))
    fields.finish()
    if not edges:
        return None
    reference = Reference(f"body.{body.text.removeprefix('body.')}", body.place) if body else None
    return Girth(key, fields.node.place, edges, reference)


def change(key: str, fields: Fields) -> Change | None:
    """A lengthening or shortening."""
    builder = fields.builder
    names: Seq[Reference] = ()
    for name in ("piece", "pieces"):
        node = fields.get(name)
        if node is not None:
            names = builder.references(node, "piece: sleeve")
    if not names:
        builder.wrong("key-missing", fields.node.place, f"Change {key} lacks piece. Example: piece: sleeve")
    line = _line_at(key, fields)
    wanted, finished = _wanted(key, fields)
    words = ("lengthen_by", "shorten_by", "widen_by")
    amounts = {word: fields.lengths_of(fields.get(word), f"{key}.amount") for word in words}
    edges_node = fields.get("seam_edges")
    seam_edges = builder.whole_number(edges_node, "seam_edges: 4", most=40) if edges_node is not None else None
    crosses_node = fields.get("crosses")
    crosses = builder.references(crosses_node, "crosses: [side]") if crosses_node is not None else ()
    given = [word for word in amounts if amounts[word]]
    if wanted is not None:
        fields.claims("change", ("amount",))
    if (wanted is not None) + len(given) != 1:
        builder.wrong(
            "key-missing" if wanted is None and not given else "given-twice",
            fields.node.place,
            f"Change {key} needs one of wanted, lengthen_by, shorten_by or widen_by. Example: wanted: 25 in finished",
        )
    fields.claims("change", CHANGE_CLAIMS)
    fields.finish()
    amount = next((amounts[word] for word in words if amounts[word]), None)
    if not names or (wanted is None and amount is None):
        return None
    return Change(
        key,
        fields.node.place,
        tuple(names),
        line,
        wanted,
        finished,
        amount,
        amounts["shorten_by"] is not None,
        tuple(crosses),
        (seam_edges or 2 * len(names)) if amounts["widen_by"] is not None else 0,
    )


def swap(key: str, fields: Fields) -> Swap | None:
    """A band made from another fabric."""
    found: dict[str, Reference] = {}
    for name in ("band", "fabric"):
        node = fields.required(name, SWAP_EXAMPLE)
        words = fields.builder.words(node, "a name", SWAP_EXAMPLE) if node is not None else None
        if words is not None:
            found[name] = Reference(words.text, words.place)
    ratio_node = fields.get("ratio")
    ratio = fields.builder.share(ratio_node) if ratio_node is not None else None
    fields.finish()
    if len(found) < 2:
        return None
    return Swap(key, fields.node.place, found["band"], found["fabric"], ratio)


def _wanted(key: str, fields: Fields) -> tuple[Lengths | None, bool]:
    """The length to reach, and whether it is meant finished (else cut)."""
    node = fields.get("wanted")
    if node is None:
        return None, True
    example = "wanted: 25 in finished"
    if not isinstance(node, Scalar):
        return fields.builder.lengths(node, f"{key}.wanted"), True
    match = re.search(r"\s+(finished|cut)\s*$", node.text)
    if match is None:
        fields.builder.not_this(node, "a length and the word finished or cut", example)
        return None, True
    length = node.part(0, match.start())
    return fields.builder.lengths(length, f"{key}.wanted"), match.group(1) == "finished"


def _line_at(key: str, fields: Fields) -> LineAt | None:
    node = fields.get("line_at")
    if node is None:
        return None
    example = "line_at: 2/3 from the top, or 5 in from the bottom"
    pattern = r"\s*(.+?)\s+from\s+(?:the\s+)?(top|bottom)\s*"
    match = re.fullmatch(pattern, node.text) if isinstance(node, Scalar) else None
    if not isinstance(node, Scalar) or match is None:
        fields.builder.not_this(node, "a share or a length from the top or the bottom", example)
        return None
    text, from_top = match.group(1), match.group(2) == "top"
    try:
        ratio = parse_ratio(text)
    except NotUnderstood:
        lengths = fields.builder.lengths(node.part(match.start(1), match.end(1)), f"{key}.line_at")
        return LineAt(None, lengths, from_top, node.place) if lengths else None
    if not 0 < ratio.value < 1:
        fields.builder.not_this(node, "a share between 0 and 1", example)
        return None
    return LineAt(Share(ratio, text, node.at(match.start(1), match.end(1))), None, from_top, node.place)
