"""Ways of speaking that ask for an allowance, a hem, a row of stitches, a mark, a share."""

from __future__ import annotations

from sitegen.checks.asked import ALLOWANCES, LENGTHS, NARROW, QUARTERS, RINGS, SHARES, WIDTHS, Asked, any_of

SEWING = (
    Asked("an allowance", after=r"(?:(?:seam|hem) )?allowances?\b", only=ALLOWANCES, instead=("seam_allowance",)),
    Asked(
        "an allowance",
        before=r"\b(?:seam )?allowances? of(?: about)? ",
        only=ALLOWANCES,
        instead=("seam_allowance",),
    ),
    Asked(
        "what a hem takes", before=r"\bhem (?:takes|needs|uses) ", only=any_of({"allowance"}), instead=("allowance",)
    ),
    Asked(
        "an overlap",
        before=r"\boverlap(?:s|ped)?(?: each other)? (?:by|takes|of|is) ",
        only=any_of({"overlap", "join"}),
        instead=("overlap",),
    ),
    Asked("an overlap", before=r"\bends on each other by ", only=any_of({"overlap"}), instead=("overlap",)),
    Asked(
        "an allowance or a turn",
        before=r"\b(?:press|turn|fold) ",
        after=r"(?:.{0,60}\b)?to the wrong side",
        only=any_of(ALLOWANCES, {"turn", "fold_under", "casing", "casing_depth", "hem_allowance"}),
        instead=("seam_allowance", "turn"),
    ),
    Asked(
        "an allowance",
        before=r"\bpress ",
        after=r"(?:of )?(?:both|the|each|its|two)\b.{0,30}\b(?:edges?|sides?)\b",
        only=any_of(ALLOWANCES, {"turn", "fold_under", "casing", "casing_depth"}),
        instead=("seam_allowance",),
    ),
    Asked(
        "a line of stitches",
        before=r"\b(?:sew|stitch|stitches|runs?|lies|row)\b[^¤.]{0,24} ",
        after=r"(?:away )?from (?:the|its) (?:\w+ )?fold\b",
        only=any_of({"stitch_line", "far_row"}),
        instead=("stitch_line",),
    ),
    Asked(
        "a line of stitches",
        before=r"\b(?:sew|stitch|straight stitch|seam|ends|stitches)\b[^¤.]{0,40} ",
        after=r"(?:away )?from (?:the|its|their)(?: \w+)? edges?\b",
        only=any_of(ALLOWANCES, {"stitch_line", "far_row", "finished_width", "turn_of_cloth", "strip"}),
        instead=("seam_allowance",),
    ),
    Asked(
        "a part of an opening or band",
        before=r"\b(?:mark to mark|pin to pin|line to line)\b[^¤.]{0,14} ",
        only=any_of(QUARTERS),
        instead=("gap", "band_quarter"),
    ),
    Asked(
        "a quarter",
        before=r"\bquarters? (?:is|are|measures?) ",
        only=any_of(QUARTERS, {"length"}),
        instead=("opening_quarter",),
    ),
    Asked(
        "a ratio",
        before=r"\bmultipl(?:y|ied)\b[^¤.]{0,14} by ",
        only=any_of({"ratio", "least_ratio"}),
        instead=("ratio",),
    ),
    Asked(
        "a ratio",
        after=r"of (?:this|that|it|the (?:opening|neckline|waist|wrist|edge|measure\w*|round))\b",
        never=any_of(SHARES - {"ratio", "shrinkage"}),
        instead=("ratio",),
    ),
    Asked(
        "a stretch",
        before=r"\bstretch(?:es|ed)?(?: by| of| about)? ",
        never=any_of({"ratio", "shrinkage", "least_ratio"}),
    ),
    Asked(
        "shrinkage", before=r"\bshrinks?\b[^¤.]{0,20} by ", never=any_of(SHARES - {"shrinkage"}), instead=("shrinkage",)
    ),
    Asked("shrinkage", before=r"\ballows? for ", never=any_of(SHARES - {"shrinkage"}), instead=("shrinkage",)),
    Asked(
        "the cloth beyond the stitches",
        after=r"(?:of cloth )?(?:lies?|is|are|remains?|stands?|of cloth)? ?beyond\b",
        only=frozenset({"catch"}),
        instead=("catch",),
    ),
    Asked(
        "the cloth beyond the stitches",
        before=r"\bbeyond (?:it|them) (?:lies?|is|are|remains?) ",
        only=frozenset({"catch"}),
        instead=("catch",),
    ),
    Asked(
        "what is folded under",
        before=r"\bfold(?:ed)? under by ",
        only=any_of(ALLOWANCES, {"fold_under"}),
        instead=("fold_under",),
    ),
    Asked("the room in a casing", after=r"of room\b", only=frozenset({"room", "ease"}), instead=("room",)),
    Asked(
        "what is drawn in",
        before=r"\b(?:draw|gather|ease) in ",
        never=any_of(LENGTHS, WIDTHS, RINGS),
        instead=("drawn_in",),
    ),
    Asked(
        "a gap between marks",
        before=r"\bbetween (?:two|the|every two) (?:pins|marks)\b[^¤.;]{0,24} ",
        only=any_of(QUARTERS),
        instead=("gap",),
    ),
    Asked(
        "a measurement of the body",
        before=r"\ba (?:head|hand|foot) of ",
        never=any_of(LENGTHS, WIDTHS, NARROW, QUARTERS),
        instead=("reach",),
    ),
    Asked(
        "the gap of a needle",
        before=r"\bgap between (?:its|the|both) (?:points|needles) is ",
        only=frozenset({"needle_gap"}),
        instead=("needle_gap",),
    ),
    Asked(
        "a number of strips", after=r"strips\b", never=any_of({"joins", "marks"}), instead=("whole_strips", "strips")
    ),
    Asked(
        "what is left over",
        after=r"(?:is|are) left(?: over)?\b",
        never=any_of({"strip_width", "length", "join", "join_allowance", "strip"}),
        instead=("left_over",),
    ),
    Asked(
        "what goes under",
        after=r"(?:will go |goes |go )?under the\b",
        never=LENGTHS | WIDTHS | RINGS,
        instead=("seam_allowance",),
    ),
    Asked(
        "what is added at every side",
        after=r"on (?:every|each|both|all) sides?\b",
        never=LENGTHS | WIDTHS,
        instead=("seam_allowance",),
    ),
    Asked(
        "a size",
        before=r"^(?!.*\b(?:allowances?|seams?)\b).*\b(?:is|are|be|measures|half of|sides of) ",
        after=r"(?!.{0,20}\b(?:wide|deep|from|inside|outside|more|less|larger|further|under|allowances?)\b)",
        never=frozenset({"seam_allowance"}),
    ),
)
