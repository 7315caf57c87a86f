"""What stands at each place of a content folder: which keys hold lengths, ratios, names, counts or running text.

A place is the keys that lead to a value, with a dot between; ``*`` stands for any one of them.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum


class Sort(Enum):
    """What a value is, so how it can slip."""

    LENGTHS = "one length, or one for each size"
    SHARE = "a percentage"
    COUNT = "a number without a unit"
    NAME = "one name"
    NAMES = "a list or a chain of names"
    WORD = "one of a few words"
    SIZES = "the names of the sizes"
    LINE = "where a piece is cut across"
    PROSE = "running text"
    NOTE = "a short text with numbers in it"


@dataclass(frozen=True, slots=True)
class Field:
    """What stands at a place, in which part of the table it is counted, and what names it may hold."""

    sort: Sort
    group: str
    names: str = ""
    """edge, piece, fabric, hem, band, ring, cut, body, side or row, for names."""
    claim: bool = False
    """Whether it is known here that pages show a computed number instead; for other numbers the program is asked."""


_EDGE, _PIECE, _CLAIM = "edge of a piece", "size of a piece", "claim"
_BAND, _HEM, _ELASTIC, _CHANGE, _CLOTH = "band", "hem", "elastic", "change of length", "fabric"
_SEAM, NAMES = "seam of a step", "name of an edge or piece"
PROSE, NEEDS, TEACHER, MINUTES = "running text", "supplies and needs", "note to the teacher", "minutes"
SIZES = "list of sizes"
OTHER = "other part"

_CLAIMS = {
    "pieces": ("cut_length", "finished_length", "cut_width", "finished_width"),
    "bands": (
        "opening_length", "finished_length", "cut_length", "cut_width", "band_quarter", "opening_quarter",
        "quarter_from_shoulder",
    ),
    "hems": ("allowance", "edge_length"),
    "elastics": ("cut_length", "finished_length", "casing"),
    "joined": ("joined_length",),
    "girths": ("finished_girth", "ease"),
    "boxed": ("width", "height", "from_tip"),
    "changes": ("amount", "part_above", "part_below", "new_cut_length", "new_finished_length", "taper_step"),
}  # fmt: skip

TUTORIAL: tuple[tuple[str, Field], ...] = (
    ("measured_in", Field(Sort.WORD, "seam allowance and unit")),
    *((key, Field(Sort.SIZES, SIZES)) for key in ("sizes", "sizes.*")),
    ("body.*", Field(Sort.LENGTHS, "body measurement")),
    ("seam_allowance", Field(Sort.LENGTHS, "seam allowance and unit")),
    *((f"fabrics.*.{key}", Field(Sort.LENGTHS, _CLOTH)) for key in ("width", "buy")),
    *((f"fabrics.*.{key}", Field(Sort.SHARE, _CLOTH)) for key in ("stretch_across", "stretch_down", "shrinkage")),
    ("fabrics.*.structure", Field(Sort.WORD, _CLOTH)),
    ("pieces.*.seam_allowance", Field(Sort.LENGTHS, "seam allowance and unit")),
    *((f"pieces.*.{key}", Field(Sort.LENGTHS, _PIECE)) for key in ("length", "width")),
    *((f"pieces.*.finished.{key}", Field(Sort.LENGTHS, _PIECE)) for key in ("length", "width")),
    *((f"pieces.*.{key}", Field(Sort.LENGTHS, _EDGE)) for key in ("edges.*", "edges.*.length")),
    *((f"pieces.*.{key}", Field(Sort.WORD, _EDGE)) for key in ("measured_on", "edges.*.measured_on")),
    ("pieces.*.edges.*.turn", Field(Sort.WORD, _EDGE)),
    *((f"pieces.*.taper.{key}", Field(Sort.LENGTHS, "taper of a piece")) for key in ("top", "bottom", "over")),
    ("pieces.*.taper.edges", Field(Sort.COUNT, "taper of a piece")),
    ("pieces.*.sides.*", Field(Sort.NAME, NAMES, "side")),
    ("pieces.*.fabric", Field(Sort.NAME, NAMES, "fabric")),
    ("pieces.*.cut", Field(Sort.WORD, "how many to cut")),
    ("pieces.*.notches.*", Field(Sort.WORD, "notches")),
    ("bands.*.opening", Field(Sort.NAMES, NAMES, "edge")),
    ("bands.*.ratio", Field(Sort.SHARE, _BAND)),
    ("bands.*.finished_width", Field(Sort.LENGTHS, _BAND)),
    ("bands.*.seam_allowance", Field(Sort.LENGTHS, "seam allowance and unit")),
    ("bands.*.fabric", Field(Sort.NAME, NAMES, "fabric")),
    ("bands.*.goes_over", Field(Sort.WORD, _BAND)),
    ("bands.*.make", Field(Sort.COUNT, "how many to cut")),
    *((f"hems.*.{key}", Field(Sort.LENGTHS, _HEM)) for key in ("turn", "fold_under", "needle_gap", "stitch_line")),
    ("hems.*.edges", Field(Sort.NAMES, NAMES, "edge")),
    ("hems.*.stitch", Field(Sort.WORD, _HEM)),
    ("elastics.*.around", Field(Sort.NAME, NAMES, "body")),
    ("elastics.*.ratio", Field(Sort.SHARE, _ELASTIC)),
    *((f"elastics.*.{key}", Field(Sort.LENGTHS, _ELASTIC)) for key in ("overlap", "width", "room", "fold_under")),
    ("joined.*.pieces", Field(Sort.NAMES, NAMES, "piece")),
    ("girths.*.edges", Field(Sort.NAMES, NAMES, "edge")),
    ("girths.*.body", Field(Sort.NAME, NAMES, "body")),
    ("changes.*.piece", Field(Sort.NAMES, NAMES, "piece")),
    ("changes.*.pieces", Field(Sort.NAMES, NAMES, "piece")),
    ("changes.*.crosses", Field(Sort.NAMES, NAMES, "edge")),
    *((f"changes.*.{key}", Field(Sort.LINE, _CHANGE)) for key in ("line_at", "wanted")),
    *((f"changes.*.{key}", Field(Sort.LENGTHS, _CHANGE)) for key in ("lengthen_by", "shorten_by", "widen_by")),
    ("changes.*.seam_edges", Field(Sort.COUNT, _CHANGE)),
    ("changes.*.lines.*.line_at", Field(Sort.LINE, _CHANGE)),
    *(
        (f"changes.*.{where}.*.{key}", Field(Sort.LENGTHS, _CLAIM, claim=True))
        for where in ("lines", "each")
        for key in _CLAIMS["changes"]
    ),
    ("boxed.*.panel", Field(Sort.NAMES, NAMES, "piece")),
    ("boxed.*.square", Field(Sort.LENGTHS, OTHER)),
    ("swaps.*.band", Field(Sort.NAME, NAMES, "band")),
    ("swaps.*.fabric", Field(Sort.NAME, NAMES, "fabric")),
    ("swaps.*.ratio", Field(Sort.SHARE, _BAND)),
    *((f"{part}.*.{key}", Field(Sort.LENGTHS, _CLAIM, claim=True)) for part, keys in _CLAIMS.items() for key in keys),
    *((f"{part}.*.edges", Field(Sort.NAMES, NAMES, "edge")) for part in ("gathers", "pleats", "bindings")),
    ("gathers.*.onto", Field(Sort.NAMES, NAMES, "edge")),
    ("spacings.*.along", Field(Sort.NAMES, NAMES, "edge")),
    *(
        (key, Field(Sort.COUNT, OTHER))
        for key in ("gathers.*.ratio", "gathers.*.rows.count", "spacings.*.marks", "pleats.*.count")
    ),
    *((f"supplies.*.{key}", Field(Sort.NOTE, NEEDS)) for key in ("size", "amount")),
    *((key, Field(Sort.PROSE, PROSE)) for key in ("summary", "before_you_start", "learn.*", "fabrics.*.advice")),
)

_JOIN: tuple[tuple[str, Field], ...] = (
    ("edges", Field(Sort.NAMES, NAMES, "edge")),
    ("stitch", Field(Sort.WORD, _SEAM)),
    *((key, Field(Sort.COUNT, _SEAM)) for key in ("stitch_width", "stitch_length")),
    ("stitches_per_inch", Field(Sort.COUNT, _SEAM, claim=True)),
    ("seam_allowance", Field(Sort.LENGTHS, _SEAM, claim=True)),
    ("ease", Field(Sort.LENGTHS, _SEAM)),
)
_WORK: tuple[tuple[str, Field], ...] = (
    ("text", Field(Sort.PROSE, PROSE)),
    *((f"join.*.{key}", field) for key, field in _JOIN),
    ("hem", Field(Sort.NAMES, NAMES, "hem")),
    ("finish", Field(Sort.NAMES, NAMES, "edge")),
)
STEP: tuple[tuple[str, Field], ...] = (
    *_WORK,
    *((f"other_way.{key}", field) for key, field in (*_WORK, ("when", Field(Sort.PROSE, PROSE)))),
    *((key, Field(Sort.PROSE, PROSE)) for key in ("look_for", "if_wrong")),
    ("needs.*", Field(Sort.PROSE, NEEDS)),
    ("teacher", Field(Sort.PROSE, TEACHER)),
    ("minutes", Field(Sort.COUNT, MINUTES)),
    ("cut", Field(Sort.NAMES, NAMES, "cut")),
    ("stabilise", Field(Sort.NAMES, NAMES, "edge")),
    ("insert", Field(Sort.NAMES, NAMES, "ring")),
    ("darts", Field(Sort.NAMES, NAMES, "dart")),
    ("box", Field(Sort.NAMES, NAMES, "box")),
)
NOTHING_TO_SLIP = (
    "title", "level", "photo.*", "photo.*.*", "weight", "fabrics.*.weight", "fabrics.*.name", "pieces.*.called", "tools.*",
    "supplies.*.item", "supplies.*.for", "join.*.press", "join.*.stabilised", "join.*.enclosed", "video", "cautions.*",
)  # fmt: skip
"""Places with texts that are no numbers, although digits may stand in them. A video time is not one for sewing."""


PLACES_ON_A_PICTURE = ("photo.marks.*.*", "photo.marks.*.*.*", "photo.*.marks.*.*", "photo.*.marks.*.*.*")
"""Where the marks of a photo stand: seen at once where they are wrong, and no number for sewing."""


def field_at(path: str, table: tuple[tuple[str, Field], ...]) -> Field | None:
    """What stands at a place, None where nothing can slip."""
    return next((field for pattern, field in table if fits(path, pattern)), None)


def fits(path: str, pattern: str) -> bool:
    """Whether a place is one of those that a pattern means."""
    keys, wanted = path.split("."), pattern.split(".")
    return len(wanted) == len(keys) and all(want in ("*", key) for want, key in zip(wanted, keys, strict=True))


def row_field(name: str) -> Field:
    """What a row of the size table holds, by the name in its first column."""
    if name.startswith("body."):
        return Field(Sort.LENGTHS, "body measurement")
    last = name.rpartition(".")[2]
    if any(last in keys for keys in _CLAIMS.values()):
        return Field(Sort.LENGTHS, _CLAIM, claim=True)
    return Field(Sort.LENGTHS, _PIECE if last in ("length", "width") else _EDGE)
