"""Lengths that an author typed in a text, held against the number that their words name."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from itertools import groupby

from sitegen.checks.held import instead
from sitegen.checks.registry import check
from sitegen.checks.said_lengths import names_that_fit, said_lengths, values_of
from sitegen.findings import Finding, Severity
from sitegen.prose import Bound, Measurement
from sitegen.quantities import Length, NotUnderstood, Typed, parse_length, show_in_unit, show_working
from sitegen.tutorial import Computed, Prose, Tutorial, words_of

_HEAD = (
    "seam_allowance: 3/8 in\nfabrics: {rib: {name: rib, structure: knit, stretch_across: 80%}}\n"
    "bands: {cuff: {opening: [arm.wrist], ratio: 80%, finished_width: 2 in, fabric: rib}}\n"
    "pieces: {arm: {cut: 2, fabric: rib, edges: {wrist: 10 in}}}\n--- steps/01.yaml\ntitle: Sew\ntext: "
)
_PAIR = re.compile(r"\s*\([^()\n]{1,20}\)")
_WHOLE_PIECE = 10
"""So many times an allowance, it is a piece that is trimmed to its size."""
_SEAM = (
    "seam_allowance: 6 mm\nfabrics: {main: {name: cotton, structure: woven}}\n"
    "pieces: {bag: {cut: 2, fabric: main, edges: {side: 30 cm}}}\n--- steps/01.yaml\ntitle: Sew\n"
    "join: [{edges: [bag.side, bag.side]}]\ntext: "
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
        if bound.less or names_that_fit(bound, computed):
            continue
        by_name = {name: values_of(bound, name, computed) for name in bound.names}
        if bound.sure or len({value for values in by_name.values() for value in values}) == 1:
            yield _said_otherwise(prose, bound, by_name, computed)


def _said_otherwise(prose: Prose, bound: Bound, by_name: Mapping[str, list[Length]], computed: Computed) -> Finding:
    name, found = bound.names[0], bound.measurement
    typed, end = _with_its_pair(prose.text, found)
    said = prose.text[found.start : end]
    distinct = {value for values in by_name.values() for value in values}
    working: tuple[str, ...] = ()
    if len(distinct) == 1:
        value = distinct.pop()
        right = put = instead(typed, value) if typed is not None else _shown(value, found)
        worked = computed.number(name, bound.size or 0)
        working = tuple(show_working(worked, computed.tutorial.first_system)) if worked is not None else ()
        message = (
            f"The {words_of(name)} is {right}, not {said}."
            if bound.sure
            else f"If {said} is meant to be the {words_of(name)}, it should be {right}."
        )
    elif len(bound.names) == 1:
        put = f"{{{name}}}"
        each = ", ".join(_shown(value, found) for value in by_name[name])
        message = f"The {words_of(name)} is not the same in every size, and {said} is not right for all: {each}."
    else:
        put = ""
        known = "; ".join(
            f"{words_of(each)} {', '.join(_shown(value, found) for value in dict.fromkeys(values))}"
            for each, values in by_name.items()
        )
        what = "not in every size what" if found.length in distinct else "none of what"
        message = f"{said} is {what} it can be here: {known}."
    severity = Severity.WRONG if bound.sure else Severity.DOUBTFUL
    size = computed.size_name(bound.size) if bound.size is not None else ""
    return Finding("said-otherwise", severity, prose.locate(found.start, end), message, said, put, working, size)


def _with_its_pair(text: str, found: Measurement) -> tuple[Typed | None, int]:
    """A length as it was typed, with the same in the other unit behind it in brackets, and where both end; None where
    it is written in words."""
    pair = _PAIR.match(text, found.end)
    for end in (*((pair.end(),) if pair else ()), found.end):
        try:
            return parse_length(text[found.start : end]), end
        except NotUnderstood:
            continue
    return None, found.end


def _shown(value: Length, found: Measurement) -> str:
    return show_in_unit(value, found.unit) if found.unit is not None else ""


@check(
    id="trimmed-to-more",
    area="sums",
    severity=Severity.WRONG,
    looks_at=Tutorial,
    title="A seam allowance trimmed to more than it is",
    why="There is nothing to trim; one of the two numbers is a slip.",
    source="Arithmetic",
    trips=_SEAM + "Sew the side. Trim the allowances to 1 cm.",
    passes=_SEAM + "Sew the side. Trim the allowances to 3 mm.",
)
def trimmed_to_more(tutorial: Tutorial, computed: Computed) -> Iterator[Finding]:
    """What a text trims the allowances of a step's seams to is less than one of them."""
    for prose, bound in said_lengths(tutorial, computed):
        if not bound.less or names_that_fit(bound, computed):
            continue
        found = bound.measurement
        values = values_of(bound, bound.names[0], computed)
        if not bound.sure and found.length > values[0] * _WHOLE_PIECE:
            continue
        yield Finding(
            "trimmed-to-more",
            Severity.WRONG if bound.sure else Severity.DOUBTFUL,
            prose.locate(found.start, found.end),
            f"The {words_of(bound.names[0])} is {_shown(values[0], found)}: it cannot be trimmed to {found.text}.",
            found.text,
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
    held = ((prose, bound) for prose, bound in said_lengths(tutorial, computed) if not bound.less)
    for (prose, (start, end)), bounds in groupby(held, lambda each: (each[0], each[1].row)):
        fits = [names_that_fit(bound, computed) for _, bound in bounds]
        if not all(fits):
            continue
        said = prose.text[start:end]
        yield Finding(
            "literal-number",
            Severity.HINT,
            prose.locate(start, end),
            f"{said} is the {words_of(fits[0][0])}. A reference keeps it right when a number changes.",
            said,
            f"{{{fits[0][0]}}}",
        )
