"""What the words right beside a number ask for.

All of it is the plain language of the trade, common practice without a source. What is not listed is never asked for.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

LENGTHS = frozenset({"cut_length", "finished_length", "new_cut_length", "new_finished_length", "sewn_length"})
WIDTHS = frozenset({"cut_width", "finished_width", "new_cut_width", "strip_width", "width"})
ALLOWANCES = frozenset({"seam_allowance", "join_allowance", "allowance"})
HEM_PARTS = frozenset({"turn", "fold_under", "stitch_line", "far_row", "catch", "needle_gap"})
NARROW = (
    ALLOWANCES
    | HEM_PARTS
    | {"room", "overlap", "casing", "casing_depth", "taper_step", "ease", "turn_of_cloth", "first_margin"}
)
NOT_AMOUNTS = frozenset(
    {"part_above", "part_below", "trued_edge", "new_cut_length", "new_finished_length", "taper_step", "fold"}
)
QUARTERS = frozenset({"band_quarter", "opening_quarter", "quarter_from_shoulder", "gap"})
SHARES = frozenset({"ratio", "stretch_across", "stretch_down", "shrinkage", "stretch_to_sew", "stretch_to_wear"})
RINGS = frozenset(
    {"opening_length", "finished_girth", "edge_length", "reach", "front_opening", "back_opening", "before", "after"}
)


@dataclass(frozen=True, slots=True)
class Asked:
    """A way of speaking that asks for some numbers: the words before and behind, the fields that may stand there.

    ``never`` holds the fields that cannot stand there, where it is plainer to say so.
    """

    asks: str
    before: str = ""
    after: str = ""
    only: frozenset[str] = frozenset()
    never: frozenset[str] = frozenset()
    instead: tuple[str, ...] = ()
    """The fields to propose, the likeliest first."""

    def speaks(self, before: str, after: str) -> bool:
        """Whether these words stand right before and right behind a reference."""
        return bool(re.search(rf"(?:{self.before})$", before) and re.match(self.after, after))

    def refuses(self, field: str) -> bool:
        """Whether a number with this last word cannot stand there."""
        return field in self.never or bool(self.only and field not in self.only)


def any_of(*groups: frozenset[str] | set[str]) -> frozenset[str]:
    return frozenset().union(*groups)
