"""References in running text with the words around them, and the words by which a text calls a part."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

from sitegen.findings import Place
from sitegen.tutorial import Computed, Prose, Step, Tutorial

_REFERENCE = re.compile(r"(?<!\{)\{\s*(?P<name>[a-z][A-Za-z0-9_.]*)\s*\}")
_ITEM = re.compile(r"\n\s*\n|\n\s*(?=[-*]\s)|\n\s*(?=\d{1,2}[.)]\s)|\n\s*(?=\|)|\A")
_SENTENCE = re.compile(r"(?<!\d)[.!?](?=\s)|(?<=\d)[.!?](?=\s+[A-Z])")
_TOKEN = re.compile(r"[a-z]+")
_SHORT = 3
OTHER = "¤"
"""Stands for a reference in the words around another one."""


@dataclass(frozen=True, slots=True)
class Spoken:
    """A reference in a text: its name, its place, and what is said around it, in small letters.

    ``before`` and ``after`` reach to the ends of the sentence, ``previous`` is the sentence before, ``item`` the whole
    paragraph, point of a list or row of a table. ``heading`` is what stands at the head of its column in a table.
    """

    name: str
    place: Place
    prose: Prose
    step: Step | None
    before: str
    after: str
    previous: str
    item: str
    heading: str
    others: tuple[str, ...]
    """The names of all references of the sentence, in their order, this one among them."""
    index: int
    """Which of them this one is."""
    position: int
    """Where it begins in the text."""

    @property
    def sentence(self) -> str:
        """The words of the sentence without its references."""
        return f"{self.before} {OTHER} {self.after}"

    @property
    def part(self) -> str:
        """The key of the part whose number it is; empty for a number of the whole tutorial."""
        return self.name.partition(".")[0] if "." in self.name else ""

    @property
    def field(self) -> str:
        """The last word of its name."""
        return self.name.rpartition(".")[2]


def spoken(tutorial: Tutorial) -> Iterator[Spoken]:
    """Every reference in every text of a tutorial, with what is said around it; notes to the teacher too."""
    cards = {id(prose): step for step in tutorial.steps for prose in step.prose()}
    for prose in tutorial.prose():
        yield from _in(prose, cards.get(id(prose)))


def _in(prose: Prose, step: Step | None) -> Iterator[Spoken]:
    text = prose.text
    starts = [*sorted({match.end() for match in _ITEM.finditer(text)}), len(text)]
    for start, end in pairwise(starts):
        item = text[start:end]
        cuts = [start, *(start + match.end() for match in _SENTENCE.finditer(item)), end]
        if item.lstrip().startswith("|"):
            cuts = [start, end]
        for number, (first, last) in enumerate(pairwise(cuts)):
            matches = list(_REFERENCE.finditer(text, first, last))
            previous = plain(text[cuts[number - 1] : first]) if number else ""
            for index, match in enumerate(matches):
                yield Spoken(
                    match["name"],
                    prose.locate(*match.span("name")),
                    prose,
                    step,
                    plain(text[first : match.start()]),
                    plain(text[match.end() : last]),
                    previous,
                    plain(item),
                    _heading(text, match.start()),
                    tuple(each["name"] for each in matches),
                    index,
                    match.start(),
                )


def plain(text: str) -> str:
    """The words of a text in small letters, on one line, without references and marks of bold print."""
    return " ".join(_REFERENCE.sub(OTHER, text).replace("**", "").lower().split())


def _heading(text: str, position: int) -> str:
    """What stands at the head of the column, if this is a cell of a table."""
    begin = text.rfind("\n", 0, position) + 1
    line = text[begin:position].lstrip()
    if not line.startswith("|"):
        return ""
    rows = text[:begin].rstrip("\n").split("\n")
    first = len(rows)
    while first and rows[first - 1].lstrip().startswith("|"):
        first -= 1
    head = rows[first].strip().strip("|").split("|") if first < len(rows) else []
    column = line.count("|") - 1
    return head[column].strip().lower() if column < len(head) else ""


def values_of(name: str, computed: Computed) -> tuple[object, ...] | None:
    """The number in every size, None when there is no such number."""
    worked = computed.by_size(name)
    return None if worked is None else tuple(each.value for each in worked)


def differs(name: str, other: str, computed: Computed) -> bool:
    """Whether both numbers exist, are of one sort, and are not the same in every size."""
    one, two = values_of(name, computed), values_of(other, computed)
    if one is None or two is None:
        return False
    return type(one[0]) is type(two[0]) and one != two


def equals(name: str, other: str, computed: Computed) -> bool:
    """Whether both numbers exist and are the same in every size."""
    one = values_of(name, computed)
    return one is not None and one == values_of(other, computed)


def tokens(text: str) -> frozenset[str]:
    """The words of a text or key, without the s of a plural."""
    return frozenset(word.removesuffix("s") for word in _TOKEN.findall(text.lower().replace("_", " ")))


def hints(words: frozenset[str], text: str) -> bool:
    """Whether a text has any of these words, or one of the same root: ``cuff``, ``cuffs``; ``band``, ``neckband``."""
    said = tokens(text)
    return any(_alike(word, other) for word in words for other in said)


def _alike(word: str, other: str) -> bool:
    if word == other:
        return True
    if min(len(word), len(other)) <= _SHORT:
        return False
    return word[:4] == other[:4] or word in other or other in word


def phrase(words: str) -> re.Pattern[str]:
    """Finds a name in a text, in the singular or plural."""
    return re.compile(rf"(?<![\w-]){re.escape(words.lower())}(?:e?s)?(?![\w-])")
