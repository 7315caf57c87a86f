"""Builds cords, tapes and zips whose length follows from edges."""

from __future__ import annotations

from sitegen.tutorial.build.fields import Fields
from sitegen.tutorial.build.named import name, names, word_of
from sitegen.tutorial.model import Trim

TRIM_EXAMPLE = "bag_cord: {kind: cord, edges: [front.casing, back.casing], each_end: 10 in, supply: cotton cord}"
_KINDS = ("cord", "tape", "ribbon", "lace", "piping", "zip")


def trim(key: str, fields: Fields) -> Trim | None:
    """One trim; None when what it cannot do without is missing (reported)."""
    kind = word_of(fields, "kind", _KINDS, "kind: cord", required=True)
    edges = names(fields, "edges", "edges: [hood.casing]", required=True)
    each_end = fields.lengths("each_end")
    fields.required("supply", "supply: cotton cord")
    supply = name(fields, "supply", "supply: cotton cord")
    fields.claims("trim", ("edge_length", "length"))
    fields.finish()
    if not (kind and edges and supply):
        return None
    return Trim(key, fields.node.place, kind, edges, each_end, supply)
