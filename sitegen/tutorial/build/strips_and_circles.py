"""Builds bindings, circle skirts, edges that are arcs, and swatches."""

from __future__ import annotations

import re
from fractions import Fraction

from sitegen.quantities import NotUnderstood, parse_ratio
from sitegen.reading import Node, Scalar
from sitegen.sewing import bias
from sitegen.tutorial.build.fields import Fields
from sitegen.tutorial.build.named import amount, inner, is_name, lengths_or_name, name, names, word_of
from sitegen.tutorial.model import Arc, Binding, CircleSkirt, Claim, Lengths, Reference, Swatch, Turn, Washed

BINDING_EXAMPLE = (
    "neck_binding: {edges: [front.neckline, back.neckline], kind: double fold, finished_width: 3/8 in, overlap: 1 in}"
)
CIRCLE_EXAMPLE = "skirt: {waist: body.waist, share: half, length: 20 in}"
ARC_EXAMPLE = "hem: {shape: quarter circle outward, radius: 30 in}"
_FOLDS = {
    "single fold": bias.Binding.SINGLE_FOLD,
    "double fold": bias.Binding.DOUBLE_FOLD,
    "french": bias.Binding.FRENCH,
}
_SHARES = {
    "full": Fraction(1),
    "three quarters": Fraction(3, 4),
    "half": Fraction(1, 2),
    "quarter": Fraction(1, 4),
}
_SHAPE = re.compile(r"(full|three quarters|half|quarter)(?: of a)? circle(?:\s+(inward|outward))?")


def binding(key: str, fields: Fields) -> Binding | None:
    """One binding; None when what it cannot do without is missing (reported)."""
    edges = names(fields, "edges", BINDING_EXAMPLE, required=True)
    kind = word_of(fields, "kind", _FOLDS, "kind: double fold", required=True)
    finished_width = fields.lengths("finished_width", "finished_width: 3/8 in", required=True)
    overlap = fields.lengths("overlap", "overlap: 1 in", required=True)
    turn_of_cloth = fields.lengths("turn_of_cloth")
    allowance = amount(fields, "join_allowance")
    square, strip = fields.lengths("square"), fields.lengths("strip")
    if square and strip:
        fields.builder.wrong(
            "given-twice", strip.place, f"Binding {key} has square and strip. Keep the one out of which it is cut."
        )
    fabric = name(fields, "fabric", "fabric: main")
    claims = ("strip_width", "edge_length", "length", "square_side")
    fields.claims("binding", (*claims, *(("sewn_length",) if square else ())))
    fields.finish()
    if not (edges and kind and finished_width and overlap):
        return None
    return Binding(
        key,
        fields.node.place,
        edges,
        _FOLDS[kind],
        finished_width,
        overlap,
        turn_of_cloth,
        allowance,
        square,
        None if square else strip,
        fabric,
    )


def circle(key: str, fields: Fields) -> CircleSkirt | None:
    """One circle skirt; None when what it cannot do without is missing (reported)."""
    waist = lengths_or_name(fields, "waist", "waist: body.waist", required=True)
    ease = fields.lengths("ease")
    share = _share(fields, fields.required("share", "share: half"))
    length = fields.lengths("length", "length: 20 in", required=True)
    allowance = amount(fields, "seam_allowance")
    hem, hem_allowance = _hem(fields)
    fabric = name(fields, "fabric", "fabric: main")
    fields.claims("circle", ("radius", "cut_radius", "hem_radius", "hem_edge"))
    fields.finish()
    if not (waist and share and length):
        return None
    return CircleSkirt(key, fields.node.place, waist, ease, share, length, allowance, hem, hem_allowance, fabric)


def _share(fields: Fields, node: Node | None) -> Fraction | None:
    """How much of a full circle: ``half``, ``3/4``, ``75%``."""
    if node is None:
        return None
    if isinstance(node, Scalar):
        word = node.text.strip()
        if word in _SHARES:
            return _SHARES[word]
        try:
            share = parse_ratio(word).value
        except NotUnderstood:
            share = Fraction(0)
        if 0 < share <= 4:
            return share
    fields.builder.not_this(node, "full, three quarters, half, quarter, or a share of a circle", "share: half")
    return None


def _hem(fields: Fields) -> tuple[Reference | None, Lengths | None]:
    """The hem of a circle: the name of one, or how much is turned."""
    entry = fields.node.get("hem")
    if entry is None or not isinstance(entry.value, Scalar) or not is_name(entry.value):
        return None, fields.lengths("hem")
    fields.get("hem")
    return Reference(entry.value.text.strip(), entry.value.place), None


def arc(fields: Fields, turn: Turn | None) -> tuple[Arc | None, Turn | None]:
    """The arc that an edge is, by its radius and its turn or shape, and the turn; no arc where none is written."""
    radius_node, shape_node = fields.get("radius"), fields.get("shape")
    if radius_node is None and shape_node is None:
        return None, turn
    if radius_node is None:
        fields.required("radius", ARC_EXAMPLE)
    radius = fields.lengths("radius")
    degrees = turn.degrees if turn is not None else None
    if shape_node is not None:
        if fields.node.get("turn") is not None:
            fields.builder.wrong(
                "given-twice", shape_node.place, f"{fields.what.capitalize()} has shape and turn. Keep one of them."
            )
        shape = _shape(fields, shape_node)
        degrees = 360 * shape[0] if shape is not None else None
        if shape is not None and shape[1]:
            turn = Turn(360 * shape[0], shape[1] == "inward", shape_node.place)
    elif fields.node.get("turn") is None:
        fields.builder.wrong(
            "key-missing",
            fields.node.place,
            f"{fields.what.capitalize()} has a radius and needs its turn or shape. Example: {ARC_EXAMPLE}",
        )
    return (Arc(radius, degrees) if radius is not None and degrees is not None else None), turn


def _shape(fields: Fields, node: Node) -> tuple[Fraction, str] | None:
    expected = "a full, half or quarter circle, inward or outward"
    words = fields.builder.words(node, expected, ARC_EXAMPLE)
    match = _SHAPE.fullmatch(words.text) if words is not None else None
    if match is None:
        if words is not None:
            fields.builder.not_this(node, expected, ARC_EXAMPLE)
        return None
    return _SHARES[match.group(1)], match.group(2) or ""


def claim_of_arc(lengths: Lengths | None, fields: Fields) -> None:
    """Keep the written length of an edge whose length follows from its radius."""
    if lengths is not None:
        fields.builder.claims.append(Claim(lengths, "edge"))


def washed(fields: Fields) -> Washed | None:
    """A swatch of the fabric, before it was washed and after."""
    example = "washed: {before: 10 in, after: 9 1/2 in}"
    own = inner(fields, "washed", example)
    if own is None:
        return None
    for key in ("before", "after"):
        own.required(key, example)
    before, after = amount(own, "before"), amount(own, "after")
    own.finish()
    return Washed(before, after) if before and after else None


def swatch(fields: Fields) -> Swatch | None:
    """A swatch of the fabric, at rest and stretched."""
    example = "swatch: {rest: 4 in, stretched: 5 1/2 in}"
    own = inner(fields, "swatch", example)
    if own is None:
        return None
    for key in ("rest", "stretched"):
        own.required(key, example)
    rest, stretched = amount(own, "rest"), amount(own, "stretched")
    own.finish()
    return Swatch(rest, stretched) if rest and stretched else None
