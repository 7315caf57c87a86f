"""References in a text right behind the name of another number."""

from __future__ import annotations

import re
from collections.abc import Iterator

from sitegen.checks.part_words import PLACE, about
from sitegen.checks.registry import COMMON_PRACTICE, check
from sitegen.checks.spoken import OTHER, Spoken, differs, spoken, tokens, values_of
from sitegen.findings import Finding, Severity
from sitegen.quantities import ZERO
from sitegen.tutorial import Computed, Tutorial

_ORDINALS = ("first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth")
_IS = (
    r"(?: (?:seam|edge|line|measurement))?"
    r"(?: (?:is|are|be|of|measures|should be|will be|may be|takes|now|about|exactly|only"
    r"|(?:larger|smaller|bigger|more|less) than)|:)*,?"
)
_ORDINAL = re.compile(rf"\b(?P<which>{'|'.join(_ORDINALS)}|last)\b[^{OTHER}.;]{{0,24}}$")
_AT = re.compile(r"(?:of ease |all )?(?:round|at|of|for) (?:the|your|a) (?P<noun>[a-z]+)\b")
_BODY = (
    "body: {bust: 36 in, hip: 38 in}\nfabrics: {main: {name: linen, structure: woven, buy: 1 yd}}\n"
    "pieces: {panel: {called: panel, cut: 2, fabric: main, edges: {side: 15 in, lower: 12 in}}}\n"
    "seam_allowance: 1/2 in\n--- steps/01.yaml\ntitle: Measure\ntext: "
)


@check(
    id="reference-noun",
    area="references",
    severity=Severity.DOUBTFUL,
    looks_at=Tutorial,
    title="A number that stands behind the name of another",
    why="Who reads “the hip is” and then the length round the head cuts a garment for nobody.",
    source="The word before a number says what it is: " + COMMON_PRACTICE,
    trips=_BODY + "The bust is {body.hip}.",
    passes=_BODY + "The bust is {body.bust}.",
)
def reference_noun(tutorial: Tutorial, computed: Computed) -> Iterator[Finding]:
    """The word right before a reference (“the hip is”, “a waist of”, “the armhole”) or right behind it (“at the bust”)
    that names a number of the same part, or a measurement of the body, must be in the name of what is referred to. The
    fourth mark is the fourth position."""
    for each in spoken(tutorial):
        right = _behind_noun(each, tutorial, computed) or _before_place(each, tutorial, computed)
        right = right or _in_order(each, computed)
        if right and right != each.name and differs(each.name, right, computed):
            yield Finding(
                "reference-noun",
                Severity.DOUBTFUL,
                each.place,
                f"The words beside it speak of {right}, not of {each.name}.",
                each.name,
                right,
            )


def _behind_noun(each: Spoken, tutorial: Tutorial, computed: Computed) -> str:
    """The number that the noun before it names, if that is another."""
    before = each.before.rpartition(OTHER)[2]
    worn = re.search(r"\ba (?P<noun>[a-z]+) of(?: about)? ?$", before)
    if worn and worn["noun"] in tutorial.body and each.part in tutorial.pieces:
        return f"body.{worn['noun']}"
    found: list[tuple[int, str]] = []
    for noun, name in _nouns(each, tutorial):
        match = re.search(rf"\b{re.escape(noun)}s?{_IS}$", before)
        if match and PLACE.search(before, 0, match.start()):
            continue
        if match and not tokens(noun) & (tokens(each.name.replace(".", " ")) | _girth_words(each, tutorial)):
            found.append((-len(noun), name))
    known = [name for _, name in sorted(found) if computed.by_size(name) is not None]
    return known[0] if known else ""


def _girth_words(each: Spoken, tutorial: Tutorial) -> frozenset[str]:
    worn = each.part in tutorial.girths or each.part in tutorial.elastics or each.part in tutorial.bands
    words = about(each.part, tutorial) if worn or each.part in tutorial.hems else frozenset()
    return words | ({"hem"} if each.part in tutorial.hems else frozenset())


def _nouns(each: Spoken, tutorial: Tutorial) -> Iterator[tuple[str, str]]:
    """The words that name numbers of the same part, each with its number."""
    if each.part == "body":
        yield from ((name.replace("_", " "), f"body.{name}") for name in tutorial.body)
    piece = tutorial.pieces.get(each.part)
    if piece is not None:
        yield from ((name.replace("_", " "), f"{piece.key}.{name}") for name in piece.edges)
        yield from (
            (side, f"{piece.key}.{piece.sides[side].name}")
            for side in ("top", "bottom")
            if side in piece.sides and piece.sides[side].name in piece.edges and piece.sides[side].name != each.field
            and each.field in piece.edges
        )  # fmt: skip


def _before_place(each: Spoken, tutorial: Tutorial, computed: Computed) -> str:
    """The girth or measurement that the words behind it name: “at the bust”."""
    match = _AT.match(each.after)
    if match is None or each.part not in {*tutorial.girths, "body"}:
        return ""
    noun = match["noun"]
    if each.part == "body":
        return f"body.{noun}" if noun in tutorial.body and not each.after.startswith("of") else ""
    if noun in about(each.part, tutorial):
        return ""
    fitting = [key for key in tutorial.girths if noun in about(key, tutorial)]
    names = [f"{key}.{each.field}" for key in fitting if computed.by_size(f"{key}.{each.field}") is not None]
    return names[0] if len(names) == 1 else ""


def _in_order(each: Spoken, computed: Computed) -> str:
    """The position of the mark that is counted: “the fourth at”."""
    match = _ORDINAL.search(each.before)
    if match is None or not re.fullmatch(r"position_\d+", each.field):
        return ""
    count = 1
    while computed.by_size(f"{each.part}.position_{count + 1}") is not None:
        count += 1
    number = count if match["which"] == "last" else _ORDINALS.index(match["which"]) + 1
    return f"{each.part}.position_{number}"


@check(
    id="reference-nothing",
    area="references",
    severity=Severity.DOUBTFUL,
    looks_at=Tutorial,
    title="A number in a text that is nothing",
    why="The student reads that a seam takes 0 in, and looks for what is missing.",
    source="Who has nothing to add says so in words: " + COMMON_PRACTICE,
    trips=_BODY.replace("lower: 12 in", "lower: {length: 12 in, seam_allowance: 0 in}")
    + "The seam allowance is {panel.lower.seam_allowance}.",
    passes=_BODY.replace("lower: 12 in", "lower: {length: 12 in, seam_allowance: 0 in}")
    + "The seam allowance is {panel.side.seam_allowance}.",
)
def reference_nothing(tutorial: Tutorial, computed: Computed) -> Iterator[Finding]:
    """A reference in a text is to a number that is more than nothing in some size."""
    for each in spoken(tutorial):
        values = values_of(each.name, computed)
        if values and all(value == ZERO for value in values):
            yield Finding(
                "reference-nothing",
                Severity.DOUBTFUL,
                each.place,
                f"{each.name} is nothing in every size, so the text would say 0.",
                each.name,
                "seam_allowance" if each.field == "seam_allowance" else "",
            )
