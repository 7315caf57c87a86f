"""Cords and nightwear on children's garments."""

from __future__ import annotations

import re
from collections.abc import Iterator

from sitegen.checks.registry import check
from sitegen.findings import Finding, Place, Severity
from sitegen.tutorial import Computed, Prose, Tutorial

_NIGHTWEAR = re.compile(
    r"\b(?:pyjamas?|pajamas?|nightdress(?:es)?|nightgowns?|nightshirts?|nighties?|nightwear|sleepwear|sleepsuits?"
    r"|loungewear|dressing gowns?|bathrobes?)\b",
    re.IGNORECASE,
)
_CORD = re.compile(r"\b(?:drawstrings?|cords?|ties)\b", re.IGNORECASE)
_NECK = re.compile(r"\b(?:necks?|necklines?|necklaces?|hoods?|collars?)\b", re.IGNORECASE)
_DENIED = re.compile(r"\b(?:no|not|never|without|nor|instead of|rather than)\b", re.IGNORECASE)
_SENTENCE = re.compile(r"(?:[^.!?\n]|\.(?=\S)|\n(?!\s*(?:\n|\d+[.)]\s|[-*]\s)))+")
_PYJAMAS = (
    "--- tutorial.yaml\ntitle: Trousers for the night\nsummary: Wide pyjamas of soft cotton.\nmeasured_in: inches\n"
    "wearer: child\n"
)
_STEP = "--- steps/01.yaml\ntitle: Take care\ntext: Take care of this.\n"


@check(
    id="sleepwear-caution",
    area="safety",
    severity=Severity.DOUBTFUL,
    looks_at=Tutorial,
    title="Nightwear for a child, without its caution",
    why="Loose nightwear catches fire at an open flame, so the law of many places has rules for its cloth and cut.",
    source="Children's sleepwear: 16 CFR 1615 and 16 CFR 1616 (US), which count robes and loungewear",
    trips=_PYJAMAS + _STEP,
    passes=_PYJAMAS + _STEP + "cautions: [sleepwear]",
)
def sleepwear_caution(tutorial: Tutorial, computed: Computed) -> Iterator[Finding]:
    """Where the title or the summary calls a child's garment pyjamas, a nightdress, a dressing gown or the like, a step
    carries the caution for sleepwear."""
    if not tutorial.child or any(caution.text == "sleepwear" for step in tutorial.steps for caution in step.cautions):
        return
    found = _named_in_summary(tutorial.summary) if tutorial.summary is not None else None
    if match := _NIGHTWEAR.search(tutorial.title):
        found = (tutorial.title_place, match.group())
    if found is not None:
        place, said = found
        yield Finding(
            "sleepwear-caution",
            Severity.DOUBTFUL,
            place,
            f"This is for a child and called “{said}”, but no step has the caution “sleepwear”. Add to a step:"
            " cautions: [sleepwear]. What the law of the place asks comes first.",
            said,
        )


def _named_in_summary(summary: Prose) -> tuple[Place, str] | None:
    for sentence in _SENTENCE.finditer(summary.text):
        match = _NIGHTWEAR.search(sentence.group())
        if match and not _DENIED.search(sentence.group()):
            start = sentence.start() + match.start()
            return summary.locate(start, start + len(match.group())), match.group()
    return None


@check(
    id="cord-at-neck",
    area="safety",
    severity=Severity.DOUBTFUL,
    looks_at=Tutorial,
    title="A cord at the neck or the hood of a child's garment",
    why="A cord at the neck catches on a slide or a door, and children have died of it.",
    source="No drawstrings at hood and neck of children's outerwear: 16 CFR 1120 (ASTM F1816); no cords there for small"
    " children: EN 14682 as explained by Tukes",
    trips="wearer: child\nsupplies: [{item: cotton cord, amount: 1 yd, for: the hood}, {item: thread}]",
    passes="wearer: child\nsupplies: [{item: cotton cord, amount: 1 yd, for: the bag}, {item: thread}]",
)
def cord_at_neck(tutorial: Tutorial, computed: Computed) -> Iterator[Finding]:
    """In a child's garment no supply, trim or sentence speaks of a cord, drawstring or ties together with the neck, the
    hood or the collar, unless to say that there are none. A caution does not make up for it. It is told once, but of
    every trim."""
    if not tutorial.child:
        return
    for place, said in _cord_trims(tutorial):
        yield _at_neck(place, said, "cord")
    first = next(_cords(tutorial), None)
    if first is not None:
        place, said = first
        yield _at_neck(place, said, said.lower().removesuffix("s"))


def _at_neck(place: Place, said: str, cord: str) -> Finding:
    return Finding(
        "cord-at-neck",
        Severity.DOUBTFUL,
        place,
        f"This garment is for a child, and a {cord} at its neck or hood can strangle."
        " Rules in the US and in Europe ask for none there. Close it in another way.",
        said,
    )


def _cord_trims(tutorial: Tutorial) -> Iterator[tuple[Place, str]]:
    """Trims that are cords, or called so, at an edge of the neck, or called after it."""
    for trim in tutorial.trims.values():
        if trim.kind != "cord" and not _CORD.search(f"{_words(trim.key)} {trim.supply.name}"):
            continue
        edge = next((edge for edge in trim.edges if _NECK.search(_words(edge.name))), None)
        if edge is not None:
            yield edge.place, edge.name
        elif _NECK.search(_words(trim.key)):
            yield trim.supply.place, trim.supply.name


def _words(name: str) -> str:
    return re.sub(r"[._]", " ", name)


def _cords(tutorial: Tutorial) -> Iterator[tuple[Place, str]]:
    for supply in tutorial.supplies:
        match = _CORD.search(supply.item.text)
        if match and _NECK.search(f"{supply.item.text} {supply.purpose}"):
            yield supply.item.place, supply.item.text
    for text in tutorial.prose():
        for sentence in _SENTENCE.finditer(text.text):
            match = _CORD.search(sentence.group())
            if match and _NECK.search(sentence.group()) and not _DENIED.search(sentence.group()):
                start = sentence.start() + match.start()
                yield text.locate(start, start + len(match.group())), match.group()
