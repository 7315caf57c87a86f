"""Builds marks at even distances, gathers and pleats."""

from __future__ import annotations

import re
from fractions import Fraction

from sitegen.quantities import NotUnderstood, parse_number, parse_ratio
from sitegen.reading import Node, Scalar
from sitegen.sewing import pleats as pleat_sums
from sitegen.sewing import spacing as spacing_sums
from sitegen.tutorial.build.fields import Fields
from sitegen.tutorial.build.named import inner, lengths_or_name, names, word_of
from sitegen.tutorial.model import Button, Claim, Fullness, Gather, GatheringRows, Pleats, Spacing

SPACING_EXAMPLE = "buttons: {along: front.placket, marks: 5, first_margin: 1/2 in, last_margin: 1 in}"
GATHER_EXAMPLE = "skirt_top: {edges: [front_skirt.top, back_skirt.top], onto: [waistband.lower]}"
PLEATS_EXAMPLE = "front_pleats: {kind: knife, count: 6, depth: 1 in, finished: 12 in}"
_BUTTON_EXAMPLE = "button: {diameter: 1/2 in, thickness: 1/8 in}"
_ROWS_EXAMPLE = "rows: {first: 1/4 in, apart: 1/8 in, count: 2}"
MOST_MARKS = 200
MOST_ROWS = 6
_SPREADS = {
    "both ends": spacing_sums.Spread.BOTH_ENDS,
    "inside": spacing_sums.Spread.INSIDE,
    "round": spacing_sums.Spread.ROUND,
}
_KINDS = {
    "knife": pleat_sums.Pleat.KNIFE,
    "box": pleat_sums.Pleat.BOX,
    "inverted": pleat_sums.Pleat.INVERTED,
    "tuck": pleat_sums.Pleat.TUCK,
}
_TO_ONE = re.compile(r"\s*(?:(?:to|:)\s*1|times)\s*$")


def spacing(key: str, fields: Fields) -> Spacing | None:
    """Marks along a length; None when the length or the number of marks is missing (reported)."""
    along = names(fields, "along", "along: front.placket")
    length = fields.lengths("length")
    if bool(along) == (length is not None):
        fields.builder.wrong(
            "given-twice" if along else "key-missing",
            fields.node.place,
            f"Spacing {key} needs one of along or length. Example: {SPACING_EXAMPLE}",
        )
    both = spacing_sums.Spread.BOTH_ENDS
    spread = _SPREADS.get(word_of(fields, "spread", _SPREADS, "spread: both ends"), both)
    marks_node = fields.get("marks")
    marks = _marks(fields, marks_node, spread)
    greatest_gap = fields.lengths("greatest_gap")
    if marks_node is None and greatest_gap is None:
        fields.builder.wrong(
            "key-missing", fields.node.place, f"Spacing {key} needs marks or greatest_gap. Example: marks: 5"
        )
    first, last = (fields.lengths(name) if spread is both else None for name in ("first_margin", "last_margin"))
    start = fields.lengths("start") if spread is spacing_sums.Spread.ROUND else None
    button = _button(fields)
    positions = [entry.key.text for entry in fields.node.entries if re.fullmatch(r"position_\d{1,4}", entry.key.text)]
    fields.claims("spacing", ("gap", "span", "buttonhole", *positions))
    fields.finish()
    if not (along or length) or (marks is None and greatest_gap is None):
        return None
    place = marks_node.place if marks_node is not None else fields.node.place
    return Spacing(
        key, fields.node.place, along, length, marks, place, greatest_gap, spread, first, last, start, button
    )


def _marks(fields: Fields, node: Node | None, spread: spacing_sums.Spread) -> int | None:
    count = fields.builder.whole_number(node, "marks: 5", most=MOST_MARKS) if node is not None else None
    least = 2 if spread is spacing_sums.Spread.BOTH_ENDS else 1
    if node is None or count is None or count >= least:
        return count
    fields.builder.not_this(node, f"{least} marks or more", "marks: 5")
    return None


def _button(fields: Fields) -> Button | None:
    own = inner(fields, "button", _BUTTON_EXAMPLE)
    if own is None:
        return None
    diameter, thickness = (own.lengths(name, _BUTTON_EXAMPLE, required=True) for name in ("diameter", "thickness"))
    own.finish()
    return Button(diameter, thickness) if diameter and thickness else None


def gather(key: str, fields: Fields) -> Gather | None:
    """Edges drawn in; None when the edges, or what they are drawn in to, is missing (reported)."""
    edges = names(fields, "edges", GATHER_EXAMPLE, required=True)
    onto = names(fields, "onto", "onto: [waistband.lower]")
    onto_length = lengths_or_name(fields, "onto_length", "onto_length: 28 in")
    if bool(onto) == (onto_length is not None):
        fields.builder.wrong(
            "given-twice" if onto else "key-missing",
            fields.node.place,
            f"Gather {key} needs one of onto or onto_length. Example: onto: [waistband.lower]",
        )
    ratio_node = fields.get("ratio")
    ratio = fullness(fields, ratio_node) if ratio_node is not None else None
    cut_for = word_of(fields, "cut_for", ("ratio",), "cut_for: ratio")
    if cut_for and ratio_node is None:
        fields.required("ratio", "ratio: 2")
    rows = _rows(fields)
    fields.claims("gather", ("before", "after", "drawn_in", *(("panel",) if cut_for else ())))
    fields.finish()
    if not edges or not (onto or onto_length) or (cut_for and ratio is None):
        return None
    return Gather(key, fields.node.place, edges, onto, onto_length, ratio, bool(cut_for), rows)


def _rows(fields: Fields) -> GatheringRows | None:
    own = inner(fields, "rows", _ROWS_EXAMPLE)
    if own is None:
        return None
    first, apart = (own.lengths(name, _ROWS_EXAMPLE, required=True) for name in ("first", "apart"))
    node = own.required("count", _ROWS_EXAMPLE)
    count = own.builder.whole_number(node, _ROWS_EXAMPLE, most=MOST_ROWS) if node is not None else None
    own.finish()
    if count == 0 and node is not None:
        own.builder.not_this(node, "1 row or more", _ROWS_EXAMPLE)
    return GatheringRows(first, apart, count) if first and apart and count else None


def fullness(fields: Fields, node: Node) -> Fullness | None:
    """A ratio of gathers: ``2``, ``1.5 to 1``, ``3:1``, ``200%``, ``2 times``."""
    number: Fraction | None = None
    if isinstance(node, Scalar):
        text = _TO_ONE.sub("", node.text)
        try:
            number = parse_ratio(text).value if "%" in text or "percent" in text.lower() else parse_number(text)
        except NotUnderstood:
            number = None
    if not isinstance(node, Scalar) or number is None or not 0 < number <= 20:
        fields.builder.not_this(node, "how many times as long the cloth is before it is gathered", "ratio: 1.5 to 1")
        return None
    return Fullness(number, node.text.strip(), node.place)


def pleats(key: str, fields: Fields) -> Pleats | None:
    """Pleats in a row; None when their kind, number or depth cannot be known (reported)."""
    kind = word_of(fields, "kind", _KINDS, "kind: knife", required=True)
    count_node = fields.required("count", "count: 6")
    count = fields.builder.whole_number(count_node, "count: 6", most=MOST_MARKS) if count_node is not None else None
    if count == 0 and count_node is not None:
        fields.builder.not_this(count_node, "1 pleat or more", "count: 6")
    depth = fields.lengths("depth")
    edges = names(fields, "edges", "edges: [front_skirt.top]")
    finished = fields.lengths_of(fields.get("finished"), f"{key}.finished_width")
    can_be_known = depth is not None or (bool(edges) and finished is not None)
    if fields.node.get("depth") is None and not can_be_known:
        fields.builder.wrong(
            "key-missing",
            fields.node.place,
            f"Pleats {key} need depth, or both edges and finished, from which it follows. Example: depth: 1 in",
        )
    fields.claims("pleats", ("take_up", "taken", "cut_width", "visible"))
    fields.finish()
    if not kind or not count or not can_be_known:
        return None
    if finished is not None and edges and depth is not None:
        fields.builder.claims.append(Claim(finished, "pleats"))
        finished = None
    return Pleats(key, fields.node.place, _KINDS[kind], count, depth, edges, finished)
