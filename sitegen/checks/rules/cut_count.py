"""How many of a piece are cut, and how."""

from __future__ import annotations

import re
from collections.abc import Iterator

from sitegen.checks.registry import check
from sitegen.findings import Finding, Severity
from sitegen.tutorial import SIDES, Computed, Piece, Words

_CUT = re.compile(r"(?P<count>\d{1,3})(?:\s*[,\s]\s*(?P<how>on (?:the )?fold|mirrored))?", re.IGNORECASE)
_NUMBERS = ("one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve")
_WORDED = re.compile(rf"(?P<number>{'|'.join(_NUMBERS)}|\d{{1,3}})\b(?P<rest>.*)", re.IGNORECASE)
_PAIRS = re.compile(r"(?P<count>\d{1,2})\s+(?:mirrored\s+)?pairs?", re.IGNORECASE)
_FABRIC = "fabrics: {main: {name: linen, structure: woven, buy: 1 yd}}\n"


@check(
    id="cut-count",
    area="pieces",
    severity=Severity.DOUBTFUL,
    looks_at=Piece,
    title="How many to cut that is not clear",
    why="A piece too few stops the work, and a sleeve that was not mirrored fits one arm only.",
    source="The content format of this program; cut on the fold is one whole piece, mirrored pieces come in pairs, and"
    " there is no allowance at a fold: costume-technology terminology text, and common practice, no source",
    trips=_FABRIC + "pieces: {collar: {cut: two on fold, fabric: main}}",
    passes=_FABRIC + "pieces: {collar: {cut: 2 on fold, fabric: main}}",
)
def cut_count(piece: Piece, computed: Computed) -> Iterator[Finding]:
    """What is cut of a piece is a number, and on fold or mirrored where it applies. It is not nothing, mirrored pieces
    are an even number, and a piece with one of its sides on the fold is cut on the fold."""
    cut = piece.cut
    match = _CUT.fullmatch(cut.text) if cut is not None else None
    if cut is None:
        return
    if match is None:
        yield _finding(
            cut,
            f"How many of the {piece.called} to cut is not clear from “{cut.text}”. Write a number, and on fold or"
            " mirrored where it applies, such as 1 on fold.",
            _understood(cut.text),
        )
        return
    count, how = int(match["count"]), (match["how"] or "").lower()
    if count == 0:
        yield _finding(cut, f"Of the {piece.called} none is cut. Write how many, or take the piece out.")
    elif how == "mirrored" and count % 2:
        yield _finding(cut, f"{count} of the {piece.called} cannot be mirrored: mirrored pieces come in pairs.")
    on_fold = [side for side in SIDES if side in piece.sides and piece.sides[side].name == "fold"]
    if on_fold and count and not how:
        yield _finding(
            cut,
            f"The {on_fold[0]} of the {piece.called} lies on the fold, but it is cut {cut.text}, not on the fold.",
            f"{count} on fold",
        )


def _understood(text: str) -> str:
    """The text with a number in digits and pairs counted, if that makes it clear; else nothing."""
    worded = _WORDED.fullmatch(text.removeprefix("cut ").strip())
    if worded is None:
        return ""
    number = worded["number"].lower()
    plain = f"{_NUMBERS.index(number) + 1 if number in _NUMBERS else number}{worded['rest']}"
    if pairs := _PAIRS.fullmatch(plain):
        return f"{int(pairs['count']) * 2} mirrored"
    return plain if _CUT.fullmatch(plain) else ""


def _finding(cut: Words, message: str, right: str = "") -> Finding:
    return Finding("cut-count", Severity.DOUBTFUL, cut.place, message, cut.text, right)
