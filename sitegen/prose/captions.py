"""Captions, WebVTT and SubRip: what is said, at its own offsets, and when.

Formats: WebVTT, W3C Candidate Recommendation of 2019, sections 4 and 6; SubRip as players read it (no standard; times
with a comma, a line with a number before them). Broken files are read as far as they go: a time that cannot be read
loses no words.
"""

from __future__ import annotations

import re
from bisect import bisect_right
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from html import unescape

_TIME = r"(?:(\d{1,4}):)?(\d{1,2}):(\d{1,2})(?:[.,](\d{1,3}))?"
_TIMING = re.compile(rf"[ \t]*{_TIME}[ \t]*-->[ \t]*{_TIME}[^\r\n]*")
_LOOKS_LIKE_A_TIME = re.compile(r"\d[:.,]\d")
_LINE = re.compile(r"([^\r\n]*)(\r\n|\r|\n|\Z)")
_HEADER = re.compile(r"WEBVTT(?=[ \t\r\n]|\Z)")
_NUMBER = re.compile(r"[ \t]*\d{1,9}[ \t]*")
_NO_WIDTH = "\ufdd0"
"""Stands where a tag stood: nothing in the words, a blank in ``said``. Unicode will never give it to a letter."""

_EDGE = "\ufdd1"
"""Stands where what is pointed at begins and ends; the noncharacter beside the other one."""
_WIDEST = 2000
"""Characters of the file that are looked at on either side of a place, so that long captions take no long time."""

_MARK = re.compile(
    r"(?P<tag><(?:[/A-Za-z.][^<>]*|\d+:[^<>]*|)>|\{\\[^{}]*\}|♪|^[ \t]*(?:>>|&gt;&gt;)+)"
    r"|(?P<sound>\[[^\[\]0-9]*\])"
    r"|(?P<sign>&(?:\#\d{1,7}|\#[xX][0-9A-Fa-f]{1,6}|[A-Za-z][A-Za-z0-9]{1,31});)"
)
_SIGN = re.compile(r"&[^&;]{2,32};")
_ROLLING = Fraction(1, 4)
"""From this share of cues on that begin with what the cue before ended with, a file is one of rolling captions."""
_TOUCHES = 1
"""Seconds that may lie between two cues of which the second still shows the line of the first."""


@dataclass(frozen=True, slots=True)
class Cue:
    """One caption: seconds from the beginning, the offsets of its lines in the file, and its words.

    ``text`` has a line for each line of the cue, without tags, and without a line that the cue before showed already.
    """

    begins: Fraction
    ends: Fraction
    start: int
    end: int
    text: str = ""


@dataclass(frozen=True, slots=True)
class Captions:
    """A file of captions. ``said`` is as long as the file, blank wherever nothing is said, so that offsets agree.

    A line that is shown again by the next cue is said once, where it first stands. ``unclear`` holds the offsets of
    the lines with times that could not be read; the words behind them follow upon the cue before. ``bare`` is ``said``
    with a noncharacter wherever a tag stood, which parts no word; ``text`` the whole file.
    """

    said: str
    cues: tuple[Cue, ...]
    unclear: tuple[int, ...] = ()
    bare: str = ""
    text: str = ""

    def words(self, start: int, end: int) -> str:
        """What a person reads between two offsets of the file: no tags, and one space for any run of blanks."""
        return " ".join(self.bare[start:end].replace(_NO_WIDTH, "").split())

    def behind_letter(self, end: int) -> int:
        """The offset in the file behind a letter of ``said`` that ends at ``end``: it may stand there as ``&quot;``."""
        sign = _SIGN.match(self.text, end - 1) if end > 0 and self.bare[end : end + 1] == _NO_WIDTH else None
        return sign.end() if sign is not None else end

    def line_around(self, start: int, end: int) -> tuple[str, int, int]:
        """The words of the captions that hold two offsets, in one line, and where in it those between them stand."""
        first, last = self.cue_at(start), self.cue_at(max(start, end - 1))
        opens = max(first.start if first is not None else start, start - _WIDEST)
        closes = min(max(end, last.end if last is not None else end), end + _WIDEST)
        stretches = (self.bare[opens:start], self.bare[start:end], self.bare[end:closes])
        marked = _EDGE.join(each.replace(_EDGE, "").replace(_NO_WIDTH, "") for each in stretches)
        before, within, behind = " ".join(marked.split()).split(_EDGE)
        return before + within + behind, len(before), len(before) + len(within)

    def cue_at(self, offset: int) -> Cue | None:
        """The cue in which an offset lies, or the last one before it."""
        at = bisect_right(self.cues, offset, key=lambda cue: cue.start)
        return self.cues[at - 1] if at else None


@dataclass(slots=True)
class _Open:
    """A cue while its lines are read: offsets of the lines, each as long as it stands in the file."""

    begins: Fraction
    ends: Fraction
    behind: int
    lines: list[tuple[int, str]]

    def words(self) -> list[str]:
        return [" ".join(line.replace(_NO_WIDTH, "").split()) for _, line in self.lines]


def is_captions(text: str) -> bool:
    """Whether a text is a file of captions, by its head or its first timing line."""
    bare = text.lstrip("\ufeff")
    if _HEADER.match(bare):
        return True
    lines = (body for _, body in _lines(bare) if body.strip())
    first = next(lines, "")
    return _times(next(lines, "") if _NUMBER.fullmatch(first) else first) is not None


def captions_of(text: str) -> Captions:
    """The cues of a WebVTT or SubRip file. Lines that belong to no cue are nothing said; none is an error.

    >>> captions_of("WEBVTT\\n\\n00:01.000 --> 00:02.500\\nHalf an inch").cues[0].begins
    Fraction(1, 1)
    """
    opened, unclear = _read(text)
    repeated = _repeated([cue.words() for cue in opened], opened)
    bare = [" "] * len(text)
    cues = []
    for cue, again in zip(opened, repeated, strict=True):
        for start, line in cue.lines[again:]:
            bare[start : start + len(line)] = line
            behind = start + len(line)
            if line.replace(_NO_WIDTH, " ").strip() and behind < len(text):
                bare[behind] = "\n"  # a line of captions ends a breath, and the reader of numbers listens to it
        start, end = (cue.lines[0][0], cue.lines[-1][0] + len(cue.lines[-1][1])) if cue.lines else (cue.behind,) * 2
        words = "\n".join(line for line in cue.words()[again:] if line)
        cues.append(Cue(cue.begins, cue.ends, start, end, words))
    whole = "".join(bare)
    return Captions(whole.replace(_NO_WIDTH, " "), tuple(cues), tuple(unclear), whole, text)


def clock(seconds: Fraction) -> str:
    """A time as people read it: ``1:05``, ``1:02:03``."""
    whole = int(seconds)
    hours, minutes, rest = whole // 3600, whole // 60 % 60, whole % 60
    return f"{hours}:{minutes:02}:{rest:02}" if hours else f"{minutes}:{rest:02}"


def _read(text: str) -> tuple[list[_Open], list[int]]:
    """The cues with their lines, and the offsets of timing lines that could not be read.

    An empty line ends a cue of WebVTT. In SubRip it need not, since many files have some between the lines of a cue:
    there, all is said until the next timing line but the number before it.
    """
    first = len(text) - len(text.lstrip("\ufeff"))
    ends_at_gap = _HEADER.match(text, first) is not None
    cues: list[_Open] = []
    unclear: list[int] = []
    inside = gap = stray = False
    for start, body in _lines(text):
        times = _times(body)
        if times is not None or ("-->" in body and _LOOKS_LIKE_A_TIME.search(body)):
            if inside:
                _drop_number(cues[-1])
            if times is None:
                unclear.append(start)
                last = cues[-1].ends if cues else Fraction(0)
                times = last, last
            cues.append(_Open(*times, start + len(body), []))
            inside, gap, stray = True, False, False
        elif not body.strip(" \t"):
            inside = inside and not (ends_at_gap and not body)
            gap = True
        elif inside:
            cues[-1].lines.append((start, _cleaned(body)))
            gap, stray = False, gap
    if stray:  # the number of a cue that is missing from the end of the file
        _drop_number(cues[-1])
    return cues, unclear


def _lines(text: str) -> Iterator[tuple[int, str]]:
    """Each line without its end, and its offset. Only these three ends count; others may stand in a line."""
    for match in _LINE.finditer(text):
        if match.group():
            yield match.start(), match[1]


def _times(body: str) -> tuple[Fraction, Fraction] | None:
    """The times of a timing line, None for another line or one with a minute of more than 60 seconds.

    An end before its beginning is taken to be at it.
    """
    match = _TIMING.fullmatch(body)
    if match is None or any(int(match[group]) > 59 for group in (2, 3, 6, 7)):
        return None
    begins, ends = _seconds(*match.groups()[:4]), _seconds(*match.groups()[4:])
    return begins, max(begins, ends)


def _seconds(hours: str | None, minutes: str, seconds: str, parts: str | None) -> Fraction:
    return int(hours or 0) * 3600 + int(minutes) * 60 + int(seconds) + Fraction(int((parts or "0").ljust(3, "0")), 1000)


def _drop_number(cue: _Open) -> None:
    """Take off the number of the next cue, which stands before its times with no empty line between or with one."""
    if cue.lines and _NUMBER.fullmatch(cue.lines[-1][1]):
        cue.lines.pop()


def _cleaned(body: str) -> str:
    """A line as long as it was, with nothing in it but what is said."""
    return _MARK.sub(_unmarked, body) if _MARK.search(body) else body


def _unmarked(mark: re.Match[str]) -> str:
    if mark["sign"] is None:
        return _NO_WIDTH * len(mark.group())
    letter = "".join(each if each.isprintable() else " " if each.isspace() else "" for each in unescape(mark.group()))
    return letter.replace("\u2060", "").ljust(len(mark.group()), _NO_WIDTH)[: len(mark.group())]


def _repeated(words: Sequence[Sequence[str]], cues: Sequence[_Open]) -> list[int]:
    """How many lines at the top of each cue the cue before has shown already.

    Live and automatic captions roll up: the last line stays while the next one appears below it, so each is in two
    cues or more, and comes back even behind a silence in which nothing was shown. A cue that is nothing but such a
    line is taken for one only in a file that rolls all through, since a person may say a thing twice.
    """
    found, rolled, rolled_on = [0] * len(cues), 0, 0
    touches = [False] * len(cues)
    for at in range(1, len(cues)):
        if cues[at].begins >= cues[at - 1].begins:
            found[at] = _overlap(words[at - 1], words[at])
            touches[at] = cues[at].begins - cues[at - 1].ends <= _TOUCHES
            rolled += touches[at] and found[at] > 0
            rolled_on += touches[at] and found[at] > 0 and any(words[at][found[at] :])
    many = (len(cues) - 1) * _ROLLING
    all_through, in_part = rolled >= max(Fraction(2), many), rolled_on >= max(Fraction(1), many)
    return [
        count if all_through or (any(lines[count:]) and (close or in_part)) else 0
        for count, lines, close in zip(found, words, touches, strict=True)
    ]


def _overlap(before: Sequence[str], after: Sequence[str]) -> int:
    """How many lines at the top of the second are the last ones of the first, empty ones not counted as lines."""
    shown = [line for line in before if line]
    filled = [index for index, line in enumerate(after) if line]
    for count in range(min(len(shown), len(filled), 4), 0, -1):
        if shown[-count:] == [after[index] for index in filled[:count]]:
            return filled[count - 1] + 1
    return 0
