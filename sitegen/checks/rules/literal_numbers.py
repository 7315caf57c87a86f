"""Lengths that an author typed in a text, held against the number that their words name."""

from __future__ import annotations

from collections.abc import Iterator

from sitegen.checks.registry import check
from sitegen.checks.said_lengths import names_that_fit, said_lengths, values_of
from sitegen.findings import Finding, Severity
from sitegen.quantities import show_in_unit, show_working
from sitegen.tutorial import Computed, Tutorial, words_of

_HEAD = (
    "seam_allowance: 3/8 in\nfabrics: {rib: {name: rib, structure: knit, stretch_across: 80%}}\n"
    "bands: {cuff: {opening: [arm.wrist], ratio: 80%, finished_width: 2 in, fabric: rib}}\n"
    "pieces: {arm: {cut: 2, fabric: rib, edges: {wrist: 10 in}}}\n--- steps/01.yaml\ntitle: Sew\ntext: "
)


@check(
    id="said-otherwise",
    area="sums",
    severity=Severity.WRONG,
    looks_at=Tutorial,
    title="A number in a text that is another in the tutorial",
    why="The text says one thing, the table and the picture beside it another, and the student follows the text.",
    source="Arithmetic; the words for allowances, hems and cut lengths are common practice, no source",
    trips=_HEAD + "Cut the cuff 8 in long and sew it on with a 3/8 in seam allowance.",
    passes=_HEAD + "Cut the cuff 8 3/4 in long and sew it on with a 3/8 in seam allowance.",
)
def said_otherwise(tutorial: Tutorial, computed: Computed) -> Iterator[Finding]:
    """A length typed in a text whose words name a number of the tutorial (“3/8 in seam allowance”, “hem allowance of
    1 in”, “cut the band 16 in long”) must be that number, in the sizes of which the sentence speaks."""
    for prose, bound in said_lengths(tutorial, computed):
        if names_that_fit(bound, computed):
            continue
        found = bound.measurement
        name = bound.names[0]
        values = values_of(bound, name, computed)
        single = len(bound.names) == 1 and len(set(values)) == 1
        right = show_in_unit(values[0], found.unit) if values and found.unit is not None else ""
        what = words_of(name)
        message = (
            f"The {what} is {right}, not {found.text}."
            if len(set(values)) == 1
            else f"The {what} differs from size to size, and {found.text} is not right for all of them."
        )
        worked = computed.number(name, bound.size or 0)
        yield Finding(
            "said-otherwise",
            Severity.WRONG,
            prose.locate(found.start, found.end),
            message,
            found.text,
            right if single else "",
            tuple(show_working(worked, tutorial.first_system)) if worked is not None and single else (),
        )


@check(
    id="literal-number",
    area="references",
    severity=Severity.HINT,
    looks_at=Tutorial,
    title="A number typed where a reference could stand",
    why="A typed number stays as it is when the tutorial changes; a reference follows, in both units and every size.",
    source="common practice, no source",
    trips=_HEAD + "Cut the cuff 8 3/4 in long.",
    passes=_HEAD + "Cut the cuff {cuff.cut_length} long.",
)
def literal_number(tutorial: Tutorial, computed: Computed) -> Iterator[Finding]:
    """A length typed in a text that is, by its words and its value, exactly one number of the tutorial."""
    for prose, bound in said_lengths(tutorial, computed):
        fits = names_that_fit(bound, computed)
        if not fits:
            continue
        found = bound.measurement
        yield Finding(
            "literal-number",
            Severity.HINT,
            prose.locate(found.start, found.end),
            f"{found.text} is the {words_of(fits[0])}. A reference keeps it right when a number changes.",
            found.text,
            f"{{{fits[0]}}}",
        )
