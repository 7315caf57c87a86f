"""Builds boxed corners, and widths of cloth side by side."""

from __future__ import annotations

from sitegen.tutorial.build.fields import Fields
from sitegen.tutorial.build.marks_and_folds import fullness
from sitegen.tutorial.build.named import amount, inner, lengths_or_name, name, names
from sitegen.tutorial.model import Boxed, Claim, Drops, Lengths

BOXED_EXAMPLE = "bottom: {panel: bag, square: 2 in}"
DROPS_EXAMPLE = "curtain: {width: 60 in, ratio: 2 to 1, length: 84 in, top: 3 in, hem: 6 in, fabric: main}"
_CUT_FOR_EXAMPLE = "cut_for: {width: 12 in, height: 14 in}"
MOST_DROPS = 200
_CUT_OUT = frozenset({"square", "cut_out_width", "cut_out_height"})
"""Keys that say that the corner is cut out."""


def boxed(key: str, fields: Fields) -> Boxed | None:
    """Boxed corners; None when the panel, or both the square and the depth, are missing (reported)."""
    panel = names(fields, "panel", BOXED_EXAMPLE, required=True)
    square, depth = fields.lengths("square"), fields.lengths("depth")
    if not (square or depth) and not {"square", "depth"} & set(fields.node.keys):
        fields.builder.wrong(
            "key-missing",
            fields.node.place,
            f"{fields.what.capitalize()} needs the square that is cut out, or the depth. Example: {BOXED_EXAMPLE}",
        )
    corner_allowance = amount(fields, "corner_allowance")
    width, height = _cut_for(fields)
    cut_for = fields.node.get("cut_for") is not None
    cut_out = not _CUT_OUT.isdisjoint(fields.node.keys)
    fields.claims("boxed", ("cut_out_width", "cut_out_height", "from_tip"))
    fields.claims("boxed", ("panel_width", "panel_length") if cut_for else ("width", "height"))
    fields.finish()
    if square is not None and depth is not None:
        fields.builder.claims.append(Claim(square, "boxed"))
        square = None
    if not panel or not (square or depth):
        return None
    return Boxed(key, fields.node.place, panel, square, depth, corner_allowance, width, height, cut_out)


def _cut_for(fields: Fields) -> tuple[Lengths | None, Lengths | None]:
    """The finished size for which the panel is to be cut."""
    own = inner(fields, "cut_for", _CUT_FOR_EXAMPLE)
    if own is None:
        return None, None
    found = [
        own.lengths_of(own.required(side, _CUT_FOR_EXAMPLE), f"{fields.prefix}{side}") for side in ("width", "height")
    ]
    own.finish()
    return found[0], found[1]


def drops(key: str, fields: Fields) -> Drops | None:
    """Widths of cloth side by side; None when what they cannot do without is missing (reported)."""
    width = lengths_or_name(fields, "width", "width: 60 in", required=True)
    ratio_node = fields.get("ratio")
    ratio = fullness(fields, ratio_node) if ratio_node is not None else None
    length = lengths_or_name(fields, "length", "length: 84 in", required=True)
    top, hem, side = (fields.lengths(where) for where in ("top", "hem", "side"))
    allowance = amount(fields, "seam_allowance")
    fields.required("fabric", "fabric: main")
    fabric = name(fields, "fabric", "fabric: main")
    count_node = fields.get("drops")
    count = fields.builder.whole_number(count_node, "drops: 3", most=MOST_DROPS) if count_node is not None else None
    if count == 0 and count_node is not None:
        fields.builder.not_this(count_node, "1 drop or more", "drops: 3")
    fields.claims("drops", ("full_width", "usable_width", "cut_length", "repeat_length", "for_repeat", "cloth"))
    fields.finish()
    if not (width and length and fabric) or (ratio_node is not None and ratio is None) or count == 0:
        return None
    place = count_node.place if count_node is not None else fields.node.place
    return Drops(key, fields.node.place, width, ratio, length, top, hem, side, allowance, fabric, count, place)
