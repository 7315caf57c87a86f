"""Ways of speaking that ask for a length, a width, a girth, or what a change adds."""

from __future__ import annotations

from sitegen.checks.asked import LENGTHS, NARROW, NOT_AMOUNTS, QUARTERS, RINGS, WIDTHS, Asked, any_of

SIZES = (
    Asked(
        "a length",
        after=r"(?:long|in length)\b",
        never=any_of(NARROW - {"casing", "casing_depth", "ease"}, WIDTHS - {"finished_width", "width"}),
        instead=("cut_length", "finished_length"),
    ),
    Asked(
        "a width",
        after=r"(?:wide|in width)\b",
        never=any_of(LENGTHS, RINGS - {"edge_length"}, {"part_above", "part_below", "trued_edge", "wanted"}),
        instead=("cut_width", "finished_width"),
    ),
    Asked(
        "what is added or taken out",
        after=r"(?:further|longer|shorter|wider|narrower)\b",
        never=NOT_AMOUNTS,
        instead=("amount",),
    ),
    Asked(
        "what is added or taken out",
        before=r"\b(?:longer|shorter|lengthened|shortened|spread\b[^¤.]{0,24}) by ",
        never=NOT_AMOUNTS,
        instead=("amount",),
    ),
    Asked("what is added", before=r"\bwe add ", never=NOT_AMOUNTS, instead=("amount",)),
    Asked(
        "the part below the line",
        after=r"(?:above|from|up from) (?:the|its) (?:lower|bottom)\b",
        never=any_of(
            {"part_above", "trued_edge", "new_cut_length", "new_finished_length", "taper_step", "fold", "wanted"}
        ),
        instead=("part_below",),
    ),
    Asked(
        "the part above the line",
        after=r"(?:lies?|is|are|remains?) above\b",
        never=any_of(
            {
                "part_below",
                "trued_edge",
                "new_cut_length",
                "new_finished_length",
                "taper_step",
                "fold",
                "wanted",
                "amount",
            }
        ),
        instead=("part_above",),
    ),
    Asked(
        "the step of a slanting edge",
        before=r"\bmiss(?:es)?(?: itself| each other)?(?: now)? by ",
        never=any_of(
            {
                "part_above",
                "part_below",
                "trued_edge",
                "new_cut_length",
                "new_finished_length",
                "amount",
                "fold",
                "wanted",
            }
        ),
        instead=("taper_step",),
    ),
    Asked(
        "the new length",
        before=r"\b(?:now|then) ",
        after=r"long\b",
        never=any_of({"part_above", "part_below", "trued_edge", "taper_step", "fold", "amount"}),
        instead=("new_cut_length",),
    ),
    Asked(
        "the wanted length",
        before=r"\b(?:we|you) want ",
        never=any_of({"part_above", "part_below", "trued_edge", "taper_step", "fold", "amount"}),
        instead=("wanted",),
    ),
    Asked(
        "the ease",
        after=r"(?:of ease|more than|larger than)\b",
        never=any_of({"finished_girth", "edge_length"}, LENGTHS - {"sewn_length"}),
        instead=("ease",),
    ),
    Asked(
        "a girth",
        after=r"(?:all )?(?:a)?round\b",
        never=any_of(NARROW, {"amount", "fold"}, WIDTHS, QUARTERS),
        instead=("finished_girth", "edge_length", "finished_length"),
    ),
    Asked(
        "a cut length",
        before=r"\bcut length of [^¤.;,]*(?:is|measures|:) ",
        only=frozenset({"cut_length", "new_cut_length"}),
        instead=("cut_length",),
    ),
    Asked(
        "a cut length",
        before=r"\bcut length(?: is| measures|:)? ",
        only=frozenset({"cut_length", "new_cut_length"}),
        instead=("cut_length",),
    ),
    Asked(
        "a cut width",
        before=r"\bcut width(?: of [^¤.;,]*)?(?: is| measures|:)? ",
        only=frozenset({"cut_width", "new_cut_width"}),
        instead=("cut_width",),
    ),
    Asked(
        "a finished width",
        before=r"\bfinished width(?: of [^¤.;,]*)?(?: is| measures|:)? ",
        only=frozenset({"finished_width"}),
        instead=("finished_width",),
    ),
    Asked(
        "a finished length",
        before=r"\bfinished length(?: of [^¤.;,]*)?(?: is| measures|:)? ",
        only=frozenset({"finished_length", "new_finished_length"}),
        instead=("finished_length",),
    ),
    Asked(
        "a size to cut",
        before=r"(?:^|[.;:] |\d[.)] |[-*] |\bthen |\bso )cut (?:out )?(?:[^¤.;]* \w+, )?(?:each |of )?",
        after=r"(?:long|wide|\.|of (?:the )?\w*elastic)",
        never=frozenset({"finished_length", "finished_width", "width", "room", "ratio"}),
        instead=("cut_length",),
    ),
    Asked(
        "a size when cut",
        after=r"(?:long|wide)(?: and ¤ (?:long|wide))? when cut\b",
        never=frozenset({"finished_length", "finished_width"}),
        instead=("cut_length",),
    ),
    Asked(
        "the opening",
        before=r"\bopening (?:of the \w+ )?(?:is|measures) ",
        never=frozenset({"front_opening", "back_opening", "finished_length", "reach", "cut_length"}),
        instead=("opening_length",),
    ),
    Asked(
        "the whole opening",
        before=r"\b(?:length|other|another) than ",
        never=frozenset({"reach", "front_opening", "back_opening"}),
        instead=("opening_length",),
    ),
    Asked(
        "a depth",
        after=r"(?:deep|in depth)\b",
        never=any_of(LENGTHS, RINGS, QUARTERS, {"taper_step", "trued_edge", "part_above", "part_below"}),
    ),
    Asked(
        "the length after the change",
        before=r"\bif you (?:changed|lengthened|shortened|made)\b[^.;]{0,40}(?:is|measures) (?:¤ or )?",
        never=NOT_AMOUNTS - {"new_cut_length", "new_finished_length"} | {"amount"},
        instead=("new_finished_length",),
    ),
    Asked(
        "the length after the change",
        after=r"if you (?:changed|lengthened|shortened|made|have)\b",
        never=NOT_AMOUNTS - {"new_cut_length", "new_finished_length"} | {"amount"},
        instead=("new_finished_length",),
    ),
    Asked(
        "a finished length",
        before=r"\bfinished (?:side|length|leg|sleeve|part|piece|hem|garment) (?:is |measures )?",
        never=NOT_AMOUNTS - {"new_finished_length"} | {"amount"},
        instead=("new_finished_length",),
    ),
    Asked("a girth", before=r"\b(?:opens|stretches) to ", never=frozenset({"ease"}), instead=("finished_girth",)),
)
