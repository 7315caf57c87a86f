"""Cautions where a tool or a garment can hurt."""

from __future__ import annotations

import re
from collections.abc import Iterator

from sitegen.checks.registry import check
from sitegen.findings import Finding, Place, Severity
from sitegen.tutorial import Computed, Prose, Step, Tutorial

_TOOLS = {
    "rotary cutter": re.compile(r"\brotary cutters?\b", re.IGNORECASE),
    "iron": re.compile(r"\b(?:iron(?:s|ed|ing)?|press(?:es|ed|ing)?)\b", re.IGNORECASE),
    "pins": re.compile(r"\b(?:pins?|pinned|pinning)\b", re.IGNORECASE),
    "scissors": re.compile(r"\b(?:scissors|shears|snips)\b", re.IGNORECASE),
}
_CHILD = {
    "small parts": re.compile(r"\b(?:buttons?|snaps?|beads?|pompoms?|eyelets?|toggles?|press studs?)\b", re.IGNORECASE),
    "cords": re.compile(r"\b(?:drawstrings?|cords?)\b", re.IGNORECASE),
}
_STEP = "--- steps/01.yaml\ntitle: Press the seam\ntext: Press the seam open with a hot iron.\n"


@check(
    id="caution-missing",
    area="safety",
    severity=Severity.DOUBTFUL,
    looks_at=Step,
    title="A tool that can hurt, without its caution",
    why="Beginners do not know what experienced hands avoid without thinking.",
    source="4-H sewing-contest safety guide: cutter guarded, iron on its heel, pins never in the mouth, shears closed",
    trips=_STEP,
    passes=_STEP + "cautions: [iron]",
)
def caution_missing(step: Step, computed: Computed) -> Iterator[Finding]:
    """A step whose tools or text name an iron, pins, scissors or a rotary cutter carries the caution for it."""
    has = {caution.text for caution in step.cautions}
    for tool, pattern in _TOOLS.items():
        if tool in has:
            continue
        place, said = _first_mention(step, pattern)
        if place is not None:
            yield Finding(
                "caution-missing",
                Severity.DOUBTFUL,
                place,
                f"This step uses {'an iron' if tool == 'iron' else tool} but has no caution for it."
                f" Add to the step: cautions: [{', '.join([*sorted(has), tool])}]",
                said,
            )


def _first_mention(step: Step, pattern: re.Pattern[str]) -> tuple[Place | None, str]:
    for tool in step.tools:
        if match := pattern.search(tool.text):
            return tool.place, match.group()
    for text in (step.text, step.other_way.text if step.other_way else None):
        if text is not None and (match := pattern.search(text.text)):
            return text.locate(match.start(), match.end()), match.group()
    return None, ""


@check(
    id="child-caution-missing",
    area="safety",
    severity=Severity.DOUBTFUL,
    looks_at=Tutorial,
    title="Small parts or cords on a child's garment, without a caution",
    why="Small children swallow loose parts, and cords at neck and hood have killed.",
    source="Small parts: 16 CFR 1501; drawstrings: 16 CFR 1120 and 76 FR 42502 (2011), EN 14682 as explained by Tukes",
    trips="wearer: child\nsupplies: [{item: drawstring, for: the waist}]",
    passes="wearer: child\nsupplies: [{item: drawstring, for: the waist}]\n--- steps/01.yaml\ntitle: Thread the cord\n"
    "text: Thread it through the casing.\ncautions: [cords]",
)
def child_caution_missing(tutorial: Tutorial, computed: Computed) -> Iterator[Finding]:
    """A child's garment whose supplies or steps name buttons, snaps, beads or cords carries the caution for them."""
    if not tutorial.child:
        return
    has = {caution.text for step in tutorial.steps for caution in step.cautions}
    for caution, pattern in _CHILD.items():
        if caution in has:
            continue
        mentions = [
            (match.group(), supply.place) for supply in tutorial.supplies if (match := pattern.search(supply.item.text))
        ]
        mentions += [
            (match.group(), text.locate(match.start(), match.end()))
            for text in _texts(tutorial)
            if (match := pattern.search(text.text))
        ]
        if mentions:
            said, place = mentions[0]
            yield Finding(
                "child-caution-missing",
                Severity.DOUBTFUL,
                place,
                f"This garment is for a child and uses {said}, but no step has the caution “{caution}”."
                f" Add to the step: cautions: [{caution}]. What the law of the place asks comes first.",
                said,
            )


def _texts(tutorial: Tutorial) -> Iterator[Prose]:
    yield from (step.text for step in tutorial.steps if step.text is not None)
