"""Builds the darts of a piece."""

from __future__ import annotations

from sitegen.reading import Mapping
from sitegen.tutorial.build.builder import NAME, as_name
from sitegen.tutorial.build.fields import Fields
from sitegen.tutorial.build.named import name, names
from sitegen.tutorial.model import Claim, Dart

DARTS_EXAMPLE = "darts: {bust: {edge: side, width: 1 in, length: 3 in}}"
MOST_DARTS = 20


def darts(key: str, fields: Fields) -> dict[str, Dart]:
    """The darts of a piece by their names; one that lacks what it cannot do without is reported and left out."""
    node = fields.get("darts")
    if node is None:
        return {}
    if not isinstance(node, Mapping):
        fields.builder.not_this(node, "names of darts with their keys", DARTS_EXAMPLE)
        return {}
    found: dict[str, Dart] = {}
    for entry in node.entries:
        own_name = entry.key.text
        if not NAME.fullmatch(own_name):
            fields.builder.wrong(
                "bad-name",
                entry.key.place,
                f"“{own_name}” cannot be the name of a dart. Example: bust",
                said=own_name,
                should_be=as_name(own_name),
            )
            own_name = fields.meant(own_name, node)
        if not isinstance(entry.value, Mapping):
            fields.builder.not_this(entry.value, f"the keys of {own_name}", DARTS_EXAMPLE)
            continue
        own = Fields(fields.builder, entry.value, f"dart {own_name} of {fields.what}", f"{key}.{own_name}.")
        dart = _dart(key, own_name, own)
        if dart is not None:
            found[own_name] = dart
    return _one_follows(fields, found)


def _dart(piece: str, key: str, fields: Fields) -> Dart | None:
    fields.required("edge", "edge: side")
    edge = name(fields, "edge", "edge: side")
    count_node = fields.get("count")
    count = fields.builder.whole_number(count_node, "count: 2", most=MOST_DARTS) if count_node is not None else 1
    if count == 0 and count_node is not None:
        fields.builder.not_this(count_node, "1 dart or more", "count: 2")
    meets = names(fields, "meets", "meets: back.side")
    width = fields.lengths("width")
    if width is None and not meets and fields.node.get("width") is None:
        fields.builder.wrong(
            "key-missing",
            fields.node.place,
            f"{fields.what.capitalize()} needs its width, or the edge that the sewn edge meets, from which it follows."
            " Example: width: 1 in, or meets: back.side",
        )
    length = fields.lengths("length", "length: 3 in", required=True)
    fields.claims("dart", ("leg", "other_leg", "taken"))
    fields.finish()
    if not edge or not count or not length or not (width or meets):
        return None
    if width is not None and meets:
        fields.builder.claims.append(Claim(width, "dart"))
        width = None
    return Dart(key, piece, fields.node.place, edge, count, width, meets, length)


def _one_follows(fields: Fields, found: dict[str, Dart]) -> dict[str, Dart]:
    """The darts without a second one of one edge whose width would follow from what they meet, which is reported."""
    following: dict[str, str] = {}
    kept = dict(found)
    for dart in found.values():
        if not dart.meets:
            continue
        first = following.setdefault(dart.edge.name, dart.key)
        if first != dart.key:
            del kept[dart.key]
            fields.builder.wrong(
                "given-twice",
                dart.place,
                f"The widths of {first} and {dart.key} cannot both follow from the edge that {dart.edge_name} meets."
                " Give one of them its width, or write alike darts as one with a count.",
            )
    return kept
