"""Binds a length that an author typed in a text to the number of the tutorial that its words name.

``3/8 in seam allowance`` is the seam allowance, ``hem allowance of 1 in`` the allowance of the hem that the step turns,
``cut the neckband 16 in long`` the cut length of the neckband. Where the words could name nothing or several parts, a
length is bound to nothing.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache

from sitegen.prose.find import read
from sitegen.prose.measurement import Kind, Measurement
from sitegen.tutorial import Computed, Prose, Step, Tutorial

_SENTENCE_END = re.compile(r"[.!?](?=\s)|\n\s*\n|\n\s*(?=[-*|]\s|\d{1,2}[.)]\s)")
_TAKEN_BACK = re.compile(r"\b(?:trim|grade|clip|layer|cut (?:back|down|away)|notch)", re.IGNORECASE)
_ALLOWANCE_BEHIND = re.compile(r"[\s-]*(?:\([^()]{1,30}\)\s*)?seam[\s-]+allowances?\b", re.IGNORECASE)
_ALLOWANCE_AHEAD = re.compile(r"\bseam allowances?(?: \w+){0,3}? (?:of|is|are)(?: about)?\s*$", re.IGNORECASE)
_HEM_BEHIND = re.compile(r"[\s-]*(?:\([^()]{1,30}\)\s*)?hem(?: allowance)?\b(?!\s*(?:tape|line))", re.IGNORECASE)
_HEM_AHEAD = re.compile(r"\bhem allowance (?:of|is)(?: about)?\s*$", re.IGNORECASE)
_LONG = re.compile(r"\s*(?:\([^()]{1,30}\)\s*)?(?P<way>long|wide)\b", re.IGNORECASE)
_FINISHED = re.compile(r"\bfinish(?:ed|es)?\b", re.IGNORECASE)
_CUT = re.compile(r"\bcut(?:s|ting)?\b", re.IGNORECASE)
_NO_LENGTH_OF_IT = re.compile(
    r"\b(?:slit|opening|snip|strip|cord|tail|thread|apart|from|of)\b[^.]{0,20}$", re.IGNORECASE
)


@dataclass(frozen=True, slots=True)
class Bound:
    """A typed length and the names of the numbers that its words can mean: it must be one of them."""

    measurement: Measurement
    names: tuple[str, ...]
    size: int | None = None
    """The size of which the sentence speaks, None for all."""


@lru_cache(maxsize=2048)
def _measurements(text: str) -> tuple[Measurement, ...]:
    """The measurements of a text; kept, since more than one check asks for them, in every view."""
    return read(text)


def bind(prose: Prose, step: Step | None, computed: Computed) -> Iterator[Bound]:
    """Every length of a text that its words bind to a number of the tutorial."""
    text = prose.text
    ends = [0, *(match.end() for match in _SENTENCE_END.finditer(text)), len(text)]
    for found in _measurements(text):
        if found.kind is not Kind.LENGTH or found.high is not None or found.supplied or found.carried:
            continue
        start = max(end for end in ends if end <= found.start)
        end = min(end for end in ends if end >= found.end)
        ahead, behind = text[start : found.start], text[found.end : end]
        names = tuple(
            name for name in _names(ahead, behind, step, computed.tutorial) if computed.by_size(name) is not None
        )
        if names:
            yield Bound(found, names, _size(ahead + behind, computed.tutorial))


def _names(ahead: str, behind: str, step: Step | None, tutorial: Tutorial) -> Iterator[str]:
    sentence = f"{ahead} {behind}"
    if _ALLOWANCE_BEHIND.match(behind) or _ALLOWANCE_AHEAD.search(ahead):
        if not _TAKEN_BACK.search(sentence):
            yield from _allowances(sentence, step, tutorial)
    elif _HEM_BEHIND.match(behind) or _HEM_AHEAD.search(ahead):
        if not _TAKEN_BACK.search(sentence):
            hems = [hem.name for hem in step.hems] if step is not None and step.hems else list(tutorial.hems)
            yield from (
                f"{hem}.{field}" for hem in hems for field in ("allowance", "turn", "fold_under", "stitch_line")
            )
    elif (way := _LONG.match(behind)) and not _NO_LENGTH_OF_IT.search(ahead):
        named = [key for key in (*tutorial.bands, *tutorial.elastics, *tutorial.pieces) if _says(key, ahead, tutorial)]
        if len(named) == 1 and (_CUT.search(ahead) or _FINISHED.search(sentence)):
            kind = "finished" if _FINISHED.search(sentence) else "cut"
            yield f"{named[0]}.{kind}_{'length' if way['way'].lower() == 'long' else 'width'}"


def _allowances(sentence: str, step: Step | None, tutorial: Tutorial) -> Iterator[str]:
    """The allowances of the parts that the sentence names; without such a part every allowance of the tutorial."""
    parts = [key for key in (*tutorial.bands, *tutorial.pieces) if _says(key, sentence, tutorial)]
    if len(parts) == 1:
        yield f"{parts[0]}.seam_allowance"
    yield "seam_allowance"
    if not parts:
        yield from (f"{key}.seam_allowance" for key in (*tutorial.bands, *tutorial.pieces))


def _says(key: str, words: str, tutorial: Tutorial) -> bool:
    names = {key.replace("_", " ")}
    if key in tutorial.pieces:
        names.add(tutorial.pieces[key].called)
    return any(re.search(rf"(?<![\w-]){re.escape(name)}s?(?![\w-])", words, re.IGNORECASE) for name in names if name)


def _size(sentence: str, tutorial: Tutorial) -> int | None:
    named = [
        index
        for index, size in enumerate(tutorial.sizes)
        if re.search(rf"\bsize {re.escape(size)}(?![\w-])", sentence, re.IGNORECASE)
    ]
    return named[0] if len(named) == 1 else None
