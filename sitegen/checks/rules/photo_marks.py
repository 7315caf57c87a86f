"""Marks on photos: what reading finds wrong with one, and how they go together."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from sitegen.checks.registry import COMMON_PRACTICE, check, found_while_reading
from sitegen.findings import Finding, Severity
from sitegen.tutorial import Computed, NumberMark, Photo

MOST_MARKS = 9
MOST_LETTERS = 28

_STEP = (
    "--- photos/band.jpg (a picture)\n"
    "--- steps/01.yaml\ntitle: Pin the band\ntext: Match the quarter marks.\n"
    "photo: {file: band.jpg, shows: The band pinned at its quarter marks, marks: [%s]}"
)
_ARROW = "{arrow: notch, from: [20%, 30%], to: [45%, 50%]}"
_FORMAT = "The content format of this program"
_SEEN = "Measured on a picture 280 CSS pixels wide, that of a phone 350 wide: " + COMMON_PRACTICE


def _with(*marks: str) -> str:
    return _STEP.replace("%s", ", ".join(marks))


found_while_reading(
    id="mark-kind",
    area="pictures",
    title="A mark of an unknown kind",
    what="A mark on a photo that is neither an arrow nor a circle nor a number, or is two of them at once.",
    why="The program would have to guess what to draw.",
    source=_FORMAT,
    trips=_with("{arow: notch, from: [20%, 30%], to: [45%, 50%]}"),
    passes=_with(_ARROW),
)
found_while_reading(
    id="mark-outside",
    area="pictures",
    title="A mark outside of its picture",
    what="A place or a width of a mark that is less than 0% or more than 100% of the picture.",
    why="The mark would not be seen, or point at nothing.",
    source=_FORMAT,
    trips=_with("{arrow: notch, from: [20%, 30%], to: [145%, 50%]}"),
    passes=_with(_ARROW),
)
found_while_reading(
    id="mark-reference",
    area="pictures",
    title="A computed number in the words of an arrow or a circle",
    what="A reference in words that stand in the picture itself, which is one file for every size and unit.",
    why="The picture would show the number of another size.",
    source=_FORMAT,
    trips=_with("{arrow: '{seam_allowance}', from: [20%, 30%], to: [45%, 50%]}"),
    passes=_with(_ARROW),
)
found_while_reading(
    id="mark-unseen",
    area="publishing",
    title="A mark that cannot be seen",
    what="An arrow or a circle that is too small on a phone, a mark that the edge of the picture cuts off, or words"
    " for which the picture has no room.",
    why="The student looks for what the text speaks of and finds nothing.",
    source=_SEEN,
    trips=_with("{arrow: notch, from: [20%, 30%], to: [22%, 31%]}"),
    passes=_with(_ARROW),
)
found_while_reading(
    id="mark-covered",
    area="publishing",
    title="A mark that lies on another",
    what="Two numbers, heads of arrows or circles so close together on a phone that one hides the other.",
    why="Only one of the two can be read.",
    source=_SEEN,
    trips=_with("{number: 1, at: [30%, 70%], text: Seam}", "{number: 2, at: [31%, 70%], text: Hem}"),
    passes=_with("{number: 1, at: [30%, 70%], text: Seam}", "{number: 2, at: [61%, 70%], text: Hem}"),
)


@check(
    id="marks-too-many",
    area="pictures",
    severity=Severity.DOUBTFUL,
    looks_at=Photo,
    title="More marks than can be taken in",
    why="A picture full of marks shows the marks, not the cloth.",
    source=COMMON_PRACTICE,
    trips=_with(*(f"{{number: {n}, at: [{9 * n}%, {20 if n % 2 else 60}%], text: A seam}}" for n in range(1, 11))),
    passes=_with(*(f"{{number: {n}, at: [{9 * n}%, {20 if n % 2 else 60}%], text: A seam}}" for n in range(1, 10))),
)
def marks_too_many(photo: Photo, computed: Computed) -> Iterator[Finding]:
    """A photo has no more than 9 marks."""
    if len(photo.marks) > MOST_MARKS:
        yield Finding(
            "marks-too-many",
            Severity.DOUBTFUL,
            photo.marks[MOST_MARKS].place,
            f"Picture {photo.file} has {len(photo.marks)} marks, more than the {MOST_MARKS} that can be taken in."
            " Make two pictures of it.",
        )


@check(
    id="mark-numbers",
    area="pictures",
    severity=Severity.WRONG,
    looks_at=Photo,
    title="Numbers on a photo that do not run from 1",
    why="The student looks for the number that is missing, or does not know which of two is meant.",
    source="Arithmetic: 1, 2, 3 and so on, each once",
    trips=_with("{number: 1, at: [30%, 70%], text: Seam}", "{number: 3, at: [60%, 70%], text: Hem}"),
    passes=_with("{number: 2, at: [30%, 70%], text: Seam}", "{number: 1, at: [60%, 70%], text: Hem}"),
)
def mark_numbers(photo: Photo, computed: Computed) -> Iterator[Finding]:
    """The numbers on a photo are 1, 2, 3 and so on, in any order, each once."""
    numbered = [mark for mark in photo.marks if isinstance(mark, NumberMark)]
    often = Counter(mark.number for mark in numbered)
    found = ", ".join(str(number) for number in sorted(often.elements()))
    for mark in numbered:
        if not 1 <= mark.number <= len(numbered) or (often[mark.number] > 1 and mark is _last(numbered, mark.number)):
            yield Finding(
                "mark-numbers",
                Severity.WRONG,
                mark.place,
                f"The numbers on a picture run from 1 to as many as there are, each once; expected 1 to"
                f" {len(numbered)}, found {found}.",
            )


def _last(marks: list[NumberMark], number: int) -> NumberMark:
    return [mark for mark in marks if mark.number == number][-1]


@check(
    id="mark-text-long",
    area="pictures",
    severity=Severity.WRONG,
    looks_at=Photo,
    title="Too many words beside an arrow or a circle",
    why="Words that fill the picture hide what it shows.",
    source="What has room beside a mark on a phone in two lines: " + COMMON_PRACTICE,
    trips=_with("{arrow: 'the notch at the top of the sleeve cap', from: [20%, 30%], to: [45%, 50%]}"),
    passes=_with(_ARROW, "{number: 1, at: [30%, 70%], text: The notch at the top of the sleeve cap}"),
)
def mark_text_long(photo: Photo, computed: Computed) -> Iterator[Finding]:
    """The words beside an arrow or a circle have no more than 28 letters; a number may say more, below the picture."""
    for mark in photo.marks:
        words = " ".join(mark.text.text.split())
        if not isinstance(mark, NumberMark) and len(words) > MOST_LETTERS:
            yield Finding(
                "mark-text-long",
                Severity.WRONG,
                mark.text.place,
                f"Expected at most {MOST_LETTERS} letters in the picture, found {len(words)}. Say it in fewer words, or"
                " use a number, whose text stands below the picture. Example:"
                " {number: 1, at: [30%, 70%], text: The notch at the top of the sleeve}",
                words,
            )
