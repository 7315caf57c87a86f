"""Builds fabrics and pieces with their edges."""

from __future__ import annotations

import re
from dataclasses import replace
from fractions import Fraction

from sitegen.quantities import NotUnderstood, parse_number
from sitegen.reading import Mapping, Node
from sitegen.tutorial.build.builder import NAME, as_name, capital
from sitegen.tutorial.build.darts import darts
from sitegen.tutorial.build.fields import Fields
from sitegen.tutorial.build.named import names
from sitegen.tutorial.build.strips_and_circles import arc, claim_of_arc, swatch, washed
from sitegen.tutorial.model import (
    AXES,
    SIDES,
    SIZES_FILE,
    Claim,
    Edge,
    Fabric,
    Lengths,
    MeasuredOn,
    Notch,
    Piece,
    Reference,
    Taper,
    Turn,
)

LAID = ("folded", "to the middle", "open")
PIECE_CLAIMS = ("cut_length", "finished_length", "cut_width", "finished_width")
"""The sizes of a piece that may be written although they follow from its length and width."""
_PIECE_EXAMPLE = "front: {cut: 1 on fold, fabric: main}"


def fabric(key: str, fields: Fields) -> Fabric:
    """One cloth."""
    builder = fields.builder
    structure = fields.required("structure", "structure: knit")
    kind = builder.choice(structure, ("knit", "woven"), "structure: knit") if structure else None
    shares = {
        name: builder.share(node, f"{name}: {usual}", below_whole=name == "shrinkage")
        if (node := fields.get(name)) is not None
        else None
        for name, usual in (("stretch_across", "40%"), ("stretch_down", "20%"), ("shrinkage", "5%"))
    }
    found = Fabric(
        key=key,
        place=fields.node.place,
        name=fields.text("name", "name: cotton jersey", required=True),
        structure=kind.text if kind else "woven",
        stretch_across=shares["stretch_across"],
        stretch_down=shares["stretch_down"],
        width=fields.lengths("width", bolt=True),
        shrinkage=shares["shrinkage"],
        weight=fields.text("weight", "weight: 180 g/m2"),
        buy=fields.lengths("buy"),
        advice=fields.prose("advice"),
        one_way=fields.flag("one_way"),
        laid=fields.choice("laid", LAID, "laid: folded"),
        selvage=fields.lengths("selvage"),
        straighten=fields.lengths("straighten"),
        swatch=swatch(fields),
        repeat=fields.lengths("repeat"),
        washed=washed(fields),
        matched=names(fields, "match", "match: [front, back]"),
    )
    if found.matched and found.repeat is None and fields.node.get("repeat") is None:
        fields.required("repeat", "repeat: 6 in")
    fields.claims("fabric", ("for_repeat",) if found.repeat is not None else ())
    fields.finish()
    return found


def piece(key: str, fields: Fields) -> Piece:
    """One piece with its edges, its length and width, and what becomes of its sides."""
    builder = fields.builder
    cut_node = fields.required("cut", "cut: 1 on fold")
    fabric_node = fields.required("fabric", "fabric: main")
    allowance = fields.get("seam_allowance")
    measured_on = _measured_on(fields) or MeasuredOn.SEAM_LINE
    finished = fields.get("finished")
    own_darts = darts(key, fields)
    darted = {dart.edge.name for dart in own_darts.values()}
    size = fields
    if finished is not None:
        if isinstance(finished, Mapping):
            size = Fields(builder, finished, f"finished of piece {key}", f"{key}.finished_")
        else:
            builder.not_this(finished, "length and width", "finished: {length: 16 in, width: 15 in}")
    written = {name: lengths for name in PIECE_CLAIMS if (lengths := fields.lengths(name)) is not None}
    found = Piece(
        key=key,
        place=fields.node.place,
        called=fields.text("called", "called: front bodice") or key.replace("_", " "),
        cut=builder.words(cut_node, "how many to cut", "cut: 1 on fold") if cut_node else None,
        fabric=_reference(fields, fabric_node, "fabric: main"),
        seam_allowance=builder.amount(allowance, f"{key}.seam_allowance") if allowance is not None else None,
        length=size.lengths("length"),
        width=size.lengths("width"),
        finished_given=finished is not None,
        sides=_sides(fields),
        edges=_edges(key, fields, measured_on, darted),
        taper=_taper(key, fields),
        notches=_notches(fields),
        bias=fields.flag("bias"),
        crosswise=fields.flag("crosswise"),
        darts=own_darts,
    )
    if not fields.unknown and not size.unknown:
        found = _with_sizes_by_other_names(found, written, fields, size)
    if size is not fields:
        size.finish()
    builder.claims += (Claim(lengths, "piece") for lengths in written.values())
    fields.finish()
    return found


def _with_sizes_by_other_names(found: Piece, written: dict[str, Lengths], fields: Fields, size: Fields) -> Piece:
    """The piece with the length and width that it says under the names of what follows from them. Both are cut ones, or
    both are finished."""
    absent = [axis for axis in AXES if found.given_along(axis) is None and size.node.get(axis) is None]
    as_finished = found.finished_given or (
        len(absent) == len(AXES) and bool(written) and not any(name.startswith("cut_") for name in written)
    )
    taken = {axis: _taken_from_claim(axis, written, fields, as_finished=as_finished) for axis in absent}
    return replace(
        found,
        length=found.length or taken.get("length"),
        width=found.width or taken.get("width"),
        finished_given=as_finished,
    )


def _taken_from_claim(axis: str, written: dict[str, Lengths], fields: Fields, *, as_finished: bool) -> Lengths | None:
    """The length or width of a piece that says it under the name of what follows from it: that is reported, and the
    length read from there, since else all that follows from it would be reported too."""
    kind = "finished" if as_finished else "cut"
    name = f"{kind}_{axis}"
    lengths = written.pop(name, None)
    if lengths is None:
        return None
    entry = next((each for each in fields.node.entries if each.key.text == name), None)
    key = f"finished: {{{axis}: …}}" if as_finished else axis
    fields.builder.wrong(
        "key-missing",
        entry.key.place if entry is not None else lengths.place,
        f"{capital(fields.what)} has {name}, which is held against what follows from its {axis}, and no {axis}. It is"
        f" read as {key}, which is how the {kind} {axis} is written.",
        said=name,
        should_be="" if as_finished else axis,
    )
    return replace(lengths, name=f"{lengths.name.partition('.')[0]}.{axis}")


def _reference(fields: Fields, node: Node | None, example: str) -> Reference | None:
    words = fields.builder.words(node, "a name", example) if node is not None else None
    return Reference(words.text, words.place) if words else None


def _measured_on(fields: Fields) -> MeasuredOn | None:
    node = fields.get("measured_on")
    if node is None:
        return None
    words = fields.builder.choice(node, [each.value for each in MeasuredOn], "measured_on: seam line")
    return MeasuredOn(words.text) if words else None


def _sides(fields: Fields) -> dict[str, Reference]:
    node = fields.get("sides")
    if node is None:
        return {}
    example = "sides: {top: hem_top, bottom: seam, left: seam, right: seam}"
    if not isinstance(node, Mapping):
        fields.builder.not_this(node, "top, bottom, left and right", example)
        return {}
    inner = Fields(fields.builder, node, f"sides of {fields.what}")
    found = {}
    for side in SIDES:
        reference = _reference(inner, inner.get(side), example)
        if reference is not None:
            found[side] = reference
    inner.finish()
    return found


def _edges(key: str, fields: Fields, measured_on: MeasuredOn, darted: set[str]) -> dict[str, Edge]:
    """The edges written in the file, and those that only the size table gives."""
    node = fields.get("edges")
    found: dict[str, Edge] = {}
    if node is not None and not isinstance(node, Mapping):
        fields.builder.not_this(node, "names of edges with their lengths", "edges: {side: 15 in, hem: 18 in}")
    elif node is not None:
        for entry in node.entries:
            name = entry.key.text
            if not NAME.fullmatch(name):
                fields.builder.wrong(
                    "bad-name",
                    entry.key.place,
                    f"“{name}” cannot be the name of an edge. Example: side",
                    said=name,
                    should_be=as_name(name),
                )
                name = fields.meant(name, node)
            found[name] = _edge(key, name, entry.value, fields, measured_on, name in darted)
    own = {"length", "width", "buy", "seam_allowance", *PIECE_CLAIMS}
    for name in list(fields.builder.table.names_under(f"{key}.")):
        if name not in found and name not in own and NAME.fullmatch(name):
            place = fields.node.place
            lengths = fields.lengths_of(None, f"{key}.{name}")
            found[name] = Edge(name, key, lengths.place if lengths else place, lengths, measured_on, None, None)
    return found


def _edge(piece_key: str, name: str, node: Node, fields: Fields, measured_on: MeasuredOn, darted: bool) -> Edge:
    builder = fields.builder
    full = f"{piece_key}.{name}"
    if not isinstance(node, Mapping) or builder_reference(node) or builder.has_sizes(node):
        lengths = fields.lengths_of(node, full)
        return Edge(name, piece_key, node.place, lengths, measured_on, None, None)
    inner = Fields(builder, node, f"edge {full}", f"{full}.")
    length_node = inner.get("length")
    own_arc, turn = arc(inner, _turn(inner))
    is_elsewhere = full in builder.table or SIZES_FILE in builder.gaps
    if length_node is None and not is_elsewhere and not {"radius", "shape"} & set(node.keys):
        inner.required("length", "length: 12 1/2 in")
    where = _measured_on(inner) or measured_on
    on_cut_edge = own_arc is not None and where is MeasuredOn.CUT_EDGE
    lengths = fields.lengths_of(length_node, f"{full}.cut_edge" if on_cut_edge else full)
    if own_arc is not None:
        claim_of_arc(lengths, inner)
        lengths = None
    allowance = inner.get("seam_allowance")
    found = Edge(
        key=name,
        piece=piece_key,
        place=node.place,
        lengths=lengths,
        measured_on=where,
        turn=turn,
        seam_allowance=builder.amount(allowance, f"{full}.seam_allowance") if allowance is not None else None,
        arc=own_arc,
    )
    if darted:
        inner.claims("darted edge", ("sewn",))
    if on_cut_edge and turn is None:
        inner.builder.wrong(
            "key-missing",
            node.place,
            f"The shape of edge {full} is measured on the cut edge: say whether it curves inward or outward."
            " Example: shape: quarter circle outward",
        )
    inner.finish()
    return found


def builder_reference(node: Mapping) -> bool:
    """Whether a mapping is really a reference whose quotes were forgotten: ``{back.side}``."""
    return len(node.entries) == 1 and "." in node.entries[0].key.text


def _turn(fields: Fields) -> Turn | None:
    node = fields.get("turn")
    if node is None:
        return None
    example = "turn: 180 inward"
    words = fields.builder.words(node, "a turn in degrees and inward or outward", example)
    match = re.fullmatch(r"([\d.,/ ]+?)\s*(?:°|degrees)?\s+(inward|outward)", words.text) if words else None
    degrees: Fraction | None = None
    if match:
        try:
            degrees = parse_number(match.group(1))
        except NotUnderstood:
            degrees = None
    if match is None or degrees is None or not 0 < degrees <= 720:
        if words:
            fields.builder.not_this(node, "a turn of up to 720 degrees, inward or outward", example)
        return None
    return Turn(degrees, match.group(2) == "inward", node.place)


def _taper(key: str, fields: Fields) -> Taper | None:
    node = fields.get("taper")
    if node is None:
        return None
    example = "taper: {top: 13 in, bottom: 8 in, over: 16 in, edges: 2}"
    if not isinstance(node, Mapping):
        fields.builder.not_this(node, "the widths at two levels", example)
        return None
    inner = Fields(fields.builder, node, f"taper of {key}", f"{key}.taper_")
    top, bottom, over = (inner.lengths(name, example, required=True) for name in ("top", "bottom", "over"))
    edges_node = inner.required("edges", "edges: 2")
    edges = fields.builder.whole_number(edges_node, "edges: 2", most=2) if edges_node else None
    inner.finish()
    if top and bottom and over and edges:
        return Taper(top, bottom, over, edges, node.place)
    return None


def _notches(fields: Fields) -> dict[str, Notch]:
    node = fields.get("notches")
    if node is None:
        return {}
    if not isinstance(node, Mapping):
        fields.builder.not_this(node, "edges with single or double", "notches: {armhole: single}")
        return {}
    found = {}
    for entry in node.entries:
        words = fields.builder.choice(entry.value, ("single", "double", "triple"), "notches: {armhole: single}")
        if words:
            found[entry.key.text] = Notch(Reference(entry.key.text, entry.key.place), words)
    return found
