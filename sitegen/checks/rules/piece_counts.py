"""How many of a piece are cut, against what the texts count."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import partial

from sitegen.checks.registry import check
from sitegen.findings import Finding, Place, Severity
from sitegen.tutorial import Computed, Piece, Step, Tutorial, Words

_WORDS = ("one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve")
_COUNT = rf"(?P<count>\d{{1,2}}|both|{'|'.join(_WORDS)})"
_NO_MORE = r"(?![\w-])(?!\s+(?:edges?|seams?|sides?|ends?|corners?|lines?|marks?|hems?|allowances?|widths?|lengths?)\b)"
_EVERYWHERE = frozenset({"end", "side", "edge", "corner", "top", "bottom", "strip", "half"})
"""Names of pieces that are words for a place of any piece too: “both ends”."""
_INVENTORY = re.compile(r"\byou (?:now )?have (?:[^.]*)\.", re.IGNORECASE)
"""A sentence that counts everything that was cut."""
_PIECES = re.compile(rf"{_COUNT}\s+pieces\b", re.IGNORECASE)
_HOW_MANY = re.compile(r"\b(?:how many|number|cut|pieces|count)\b", re.IGNORECASE)
_PANELS = (
    "fabrics: {main: {name: linen, structure: woven, buy: 1 yd}}\n"
    "pieces: {pocket: {called: pocket, cut: CUT, fabric: main}}\n--- steps/01.yaml\ntitle: Cut\n"
    "text: Cut the pockets.\ncut: [pocket]\nlook_for: You have two pockets.\n"
)


@dataclass(frozen=True, slots=True)
class _Said:
    """How many of a piece a text counts, and where."""

    count: int
    place: Place
    text: str
    number: str
    row: bool


@check(
    id="count-in-text",
    area="pieces",
    severity=Severity.DOUBTFUL,
    looks_at=Tutorial,
    title="Another number of pieces in a text than is cut",
    why="A piece too few stops the work in the middle.",
    source="Follows from the pieces: what is counted in a text is what was cut",
    trips=_PANELS.replace("CUT", "1"),
    passes=_PANELS.replace("CUT", "2"),
)
def count_in_text(tutorial: Tutorial, computed: Computed) -> Iterator[Finding]:
    """No card counts more of a piece or band than are cut (“two sleeves”, “both straps”), and a table of how many to
    cut, or a sentence “you have …”, counts them all. Elsewhere fewer may be some of them."""
    for step in tutorial.steps:
        yield from _all_pieces(step, tutorial)
    for name, count, cut in _counted(tutorial):
        said = list(_mentions(tutorial, name))
        several = [each for each in said if each.count > 1 or each.row]
        odd = [each for each in several if each.count > count or (each.row and each.count != count)]
        if len(odd) < len(several) or len({each.count for each in odd}) > 1:
            yield from (_in_text(each, name, count) for each in odd)
        elif odd:
            most = odd[0]
            yield Finding(
                "count-in-text",
                Severity.DOUBTFUL,
                cut.place,
                f"Of the {name} {count} {'is' if count == 1 else 'are'} cut, but the texts count {most.text}.",
                cut.text,
                re.sub(r"^\d+", str(most.count), cut.text),
            )


def _all_pieces(step: Step, tutorial: Tutorial) -> Iterator[Finding]:
    """“You have six pieces” on a card that cuts only pieces, against how many it cuts in all."""
    pieces = [tutorial.pieces.get(name.name) for name in step.cuts]
    counts = [_cut(piece) for piece in pieces if piece is not None]
    for text in (text for text in (step.text, step.look_for) if text is not None):
        for kept in _INVENTORY.finditer(text.text):
            match = _PIECES.search(text.text, *kept.span())
            if match is None or not pieces or len(counts) != len(pieces) or not all(counts):
                continue
            said = _number(match["count"])
            if said != sum(counts):
                yield Finding(
                    "count-in-text",
                    Severity.DOUBTFUL,
                    text.locate(*match.span("count")),
                    f"The text counts {match['count']} pieces, but the card cuts {sum(counts)}.",
                )


def _number(text: str) -> int:
    lower = text.lower()
    return 2 if lower == "both" else _WORDS.index(lower) + 1 if lower in _WORDS else int(lower)


def _in_text(each: _Said, name: str, count: int) -> Finding:
    return Finding(
        "count-in-text",
        Severity.DOUBTFUL,
        each.place,
        f"The text counts {each.text}, but of the {name} {count} {'is' if count == 1 else 'are'} cut.",
        each.number if each.row else "",
        str(count) if each.row else "",
    )


def _counted(tutorial: Tutorial) -> Iterator[tuple[str, int, Words]]:
    """The pieces and bands by the name that texts use, how many are cut, and where that is said."""
    for piece in tutorial.pieces.values():
        count = _cut(piece)
        if piece.cut is not None and count and piece.called not in _EVERYWHERE and not _shared(piece, tutorial):
            yield piece.called, count, piece.cut
    for band in tutorial.bands.values():
        yield band.key.replace("_", " "), band.make, Words(str(band.make), band.place)


def _cut(piece: Piece) -> int:
    match = re.match(r"\d+", piece.cut.text) if piece.cut is not None else None
    return int(match.group()) if match else 0


def _shared(piece: Piece, tutorial: Tutorial) -> bool:
    """Whether two pieces have one name."""
    return sum(other.called == piece.called for other in tutorial.pieces.values()) > 1


def _mentions(tutorial: Tutorial, name: str) -> Iterator[_Said]:
    single = name.lower().removesuffix("s")
    spoken = re.compile(rf"\b{_COUNT} (?:\w+ )?{re.escape(single)}(?P<more>s|es)?{_NO_MORE}", re.IGNORECASE)
    row = re.compile(
        rf"^[ ]*\|[^|\n]*\b{re.escape(single)}s?[^|\n]*\|(?:[^|\n]*\|)*?\s*(?P<count>\d{{1,2}})\s*\|", re.I | re.M
    )
    for step in tutorial.steps:
        texts = [text for text in (step.text, step.look_for) if text is not None]
        for text in texts:
            yield from _found(spoken, text.text, text.locate, row=False)
            for kept in _INVENTORY.finditer(text.text):
                yield from _found(spoken, text.text, text.locate, row=True, within=kept.span())
            if _HOW_MANY.search(text.text):
                yield from _found(row, text.text, text.locate, row=True)
        for need in step.needs:
            yield from _found(spoken, need.text, partial(_at, need.place), row=False)


def _at(place: Place, start: int, end: int) -> Place:
    """The place of a short text, wherever something stands in it."""
    return place


def _found(
    pattern: re.Pattern[str],
    text: str,
    locate: Callable[[int, int], Place],
    *,
    row: bool,
    within: tuple[int, int] | None = None,
) -> Iterator[_Said]:
    for match in pattern.finditer(text, *(within or (0, len(text)))):
        number, count = match["count"].lower(), _number(match["count"])
        plural = row or bool(match["more"]) or match.group().lower().endswith("s")
        if plural or count == 1:
            yield _Said(
                count,
                locate(*match.span("count")),
                " ".join(match.group().split()) if not row else number,
                match["count"],
                row,
            )


@check(
    id="mirrored-missing",
    area="pieces",
    severity=Severity.DOUBTFUL,
    looks_at=Piece,
    title="Two pieces with a left and a right that are not mirrored",
    why="Two equal front legs fit one side of the body only.",
    source="Pieces that differ at left and right are cut in mirrored pairs: costume-technology terminology text",
    trips="fabrics: {main: {name: linen, structure: woven, buy: 1 yd}}\npieces: {leg: {cut: 2, fabric: main,"
    " sides: {top: waist, bottom: hem, left: side, right: inseam}, edges: {waist: 9 in, hem: 8 in, side: 30 in,"
    " inseam: 24 in}}}",
    passes="fabrics: {main: {name: linen, structure: woven, buy: 1 yd}}\npieces: {leg: {cut: 2 mirrored, fabric: main,"
    " sides: {top: waist, bottom: hem, left: side, right: inseam}, edges: {waist: 9 in, hem: 8 in, side: 30 in,"
    " inseam: 24 in}}}",
)
def mirrored_missing(piece: Piece, computed: Computed) -> Iterator[Finding]:
    """An even number of a piece whose left and right sides are different edges, and its top and bottom too, is cut
    mirrored. A piece that looks the same turned round or over needs no mirror."""
    cut = piece.cut
    if cut is None or not re.fullmatch(r"\d*[2468]", cut.text.strip()) or len(piece.sides) < 4:
        return
    top, bottom, left, right = (piece.sides[side].name for side in ("top", "bottom", "left", "right"))
    if top != bottom and left in piece.edges and right in piece.edges and left != right:
        yield Finding(
            "mirrored-missing",
            Severity.DOUBTFUL,
            cut.place,
            f"The {piece.called} has {left} at its left and {right} at its right. Cut {cut.text} mirrored, or two equal"
            " ones lie the same way.",
            cut.text,
            f"{cut.text.strip()} mirrored",
        )
