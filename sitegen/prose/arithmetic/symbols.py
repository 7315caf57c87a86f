"""A text as a line of symbols, one character an item, on which the forms of written sums are matched.

``Cut 16 in plus two 1/2 in seam allowances: 17 in.`` becomes ``_L+NLp:L.``
"""

from __future__ import annotations

import re
from bisect import bisect_left
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import replace
from fractions import Fraction
from itertools import pairwise
from typing import NamedTuple

from sitegen.prose.arithmetic.allowance import named_allowance, seam_allowance
from sitegen.prose.arithmetic.named import Named, named_lengths
from sitegen.prose.arithmetic.phrases import TRIGGERS, phrase_at, sides_end
from sitegen.prose.arithmetic.vocabulary import CLASSES
from sitegen.prose.find import Measured, Reading, TokenKind, Tokens
from sitegen.prose.measurement import Kind
from sitegen.prose.nominal import CLOTHS, is_sold_so_wide
from sitegen.prose.words import words
from sitegen.quantities import Unit

_SYMBOL_OF = {word: symbol for symbol, words in CLASSES.items() for word in words.split()}
_SYMBOL_OF |= {",": ",", ";": ";", ":": ":", "(": "(", ")": ")", "[": "(", "]": ")", "—": ":"}
_SYMBOL_OF |= {".": ".", "!": ".", "…": ".", "|": "."}
_SYMBOL_OF["?"] = ":"  # a question and its answer are one statement
_PI = Fraction("3.1416")
_COUNTED = {"both": Fraction(2), "dozen": Fraction(12), "triple": Fraction(3), "tripled": Fraction(3)}
_COUNTED |= {"pi": _PI, "π": _PI}
_EQUAL_PARTS = {
    "quarters": 4, "halves": 2, "thirds": 3, "fifths": 5, "sixths": 6, "sevenths": 7, "eighths": 8, "ninths": 9,
    "tenths": 10, "twelfths": 12, "sixteenths": 16,
}  # fmt: skip
_PARTS_NAMED = {"third": 3, "quarter": 4, "fourth": 4, "fifth": 5}
_WHICH_PART = words("bottom top upper lower lowest highest middle outer inner")
_WHICH_HALF = words("front back left right upper lower top bottom other first second")
_OFTEN = words("at over back along through across around round there here before")
"""Words behind ``ten times`` by which something is done so often, and nothing multiplied."""
_MARKS = words("mark marks marked marking points")
_LEAVES = words("leave leaving")
_OPEN = words("open unsewn unstitched unsecured opening gap")
_DOES = words("fold folded stitch stitched sew sewn topstitch wash washed press pressed steam steamed check measure")
_PARTS_OF_CLOTH = words("quarter quarters eighth eighths")
_SIGNS = words("- – * / x ‐")
_BY_NEIGHBOURS = (
    TRIGGERS | _SIGNS | _LEAVES | _PARTS_OF_CLOTH | _PARTS_NAMED.keys() | words("half twice double doubled")
)
"""The words that mean one thing or another by the words beside them."""
_TELLING = _BY_NEIGHBOURS | _SYMBOL_OF.keys() | _COUNTED.keys() | _EQUAL_PARTS.keys()
"""The words that may mean something here, apart from those that end in ``'s`` and stand before a number."""
_ALONE = {
    word: symbol
    for word, symbol in _SYMBOL_OF.items()
    if word not in _BY_NEIGHBOURS | _EQUAL_PARTS.keys() and not word.endswith("'s")
}
"""The symbols of those that mean the same whatever stands beside them."""
_HEDGES = words(
    "about around approximately roughly nearly almost approx circa ish slightly under scant generous ~ ≈ maybe hair bit"
)
_GO_UP = words("add adds adding it them took taken")
"""Before ``up to`` where it is no hedge: a hem is taken up to a length."""
_HEDGE_PAIRS = frozenset((("up", "to"), ("at", "least"), ("at", "most"), ("no", "more"), ("well", "over")))
_RUN = re.compile(r"L(?:,L){3,}(?![^L.\n]{0,6}[c=])")
_NUMBERS = frozenset("LNPRDHX~")
_CLOTH_ITEMS = 4
"""Items before a width among which cloth is named."""
_TALK = 60
"""So many words to a stop, and a text is talk and no print."""
_LONGEST_WAY = 14
"""Words between two numbers that may still belong together in talk."""
_SURE_BEHIND_OVER = words("just slightly little bit hair fraction shade touch whisker smidge smidgen tad hint")


class Item(NamedTuple):
    """One symbol: its character, the number it stands for, its unit, and the tokens it covers."""

    symbol: str
    first: int
    behind: int
    value: Fraction = Fraction(0)
    number: Measured | None = None
    other: Measured | None = None
    """The same length in the other unit, where one is given beside it."""
    hedged: bool = False
    times: int = 0
    """How often a length is taken that is only named here, as the seam allowance of the text; 0 for a written one."""

    @property
    def unit(self) -> Unit | None:
        """The unit of a length."""
        return self.number.unit if self.number is not None else None

    @property
    def written(self) -> tuple[tuple[Fraction, Unit], ...]:
        """A length as it is written, and in the other unit where one is given too: millimetres, and the unit."""
        one, other = self.number, self.other
        written = []
        if one is not None and one.high is None and one.unit is not None:
            written.append((self.value, one.unit))
        if other is not None and other.high is None and other.unit is not None:
            written.append((other.value * other.unit.mm, other.unit))
        return tuple(written)

    def beside(self, unit: Unit | None) -> Fraction:
        """Millimetres of a length; where it is given in two units, of the one in the system of ``unit``."""
        if self.other is None or unit is None:
            return self.value
        other = self.other.unit
        if other is None or self.unit is None:
            return self.value
        fits = other.system is unit.system is not self.unit.system
        return self.other.value * other.mm if fits else self.value


def is_cloth_width(items: Sequence[Item], at: int, said: Callable[[Item], str]) -> bool:
    """Whether a length tells how wide the cloth is that is bought: ``1.2 m of calico, 150 cm wide``."""
    number = items[at].number
    behind = said(items[at + 1]).lower() if at + 1 < len(items) else ""
    before = " ".join(said(item) for item in items[max(0, at - _CLOTH_ITEMS) : at]).lower()
    wide = behind.startswith(("wide", "- wide", "-wide")) or before.endswith(("width of", "width is"))
    if not wide or CLOTHS.isdisjoint(before.split()):
        return False
    return number is not None and is_sold_so_wide(number)


def paragraphs_of(reading: Reading, pairs: dict[int, Measured], skipped: frozenset[int]) -> Iterator[list[Item]]:
    """The items of each paragraph in order, for those paragraphs that hold two lengths or more.

    ``pairs`` gives, by the first token of a length, the same length in the other unit; ``skipped`` are the tokens
    that only give that other length, brackets included.
    """
    number_at = {one.first: one for one in reading.numbers}
    named = named_lengths(reading)
    lengths = sorted((*(one.first for one in reading.numbers if one.kind is Kind.LENGTH), *named))
    allowance = seam_allowance(reading)
    first = 0
    for behind in sorted((*reading.tokens.breaks, *_cell_borders(reading.tokens), len(reading.tokens))):
        if bisect_left(lengths, behind) - bisect_left(lengths, first) > 1:
            found = _items(reading, first, behind, number_at, pairs, skipped, named, allowance)
            yield _with_pauses([*_sizes(_merged(list(found)))])
        first = behind + 1


def _cell_borders(tokens: Tokens) -> list[int]:
    """The strokes between the cells of tables: a sum never reaches over one."""
    return [at for at, word in enumerate(tokens.words) if word == "|"] if "|" in tokens.words else []


def _sizes(items: list[Item]) -> Iterator[Item]:
    """The items, a run of lengths that only grow and have nothing but commas between them as one item.

    So one length is told for each of several sizes, and they make no sum: ``15 1/2, 16, 16 1/2, 17 in``.
    """
    symbols = "".join(item.symbol for item in items)
    last = 0
    for run in _RUN.finditer(symbols):
        values = [item.value for item in items[run.start() : run.end()] if item.symbol == "L"]
        if all(one <= other for one, other in pairwise(values)):
            yield from items[last : run.start()]
            yield Item("~", items[run.start()].first, items[run.end() - 1].behind)
            last = run.end()
    yield from items[last:]


def _with_pauses(items: list[Item]) -> list[Item]:
    """The items of a paragraph; in talk without stops, a long way without a number ends what belongs together."""
    tokens = items[-1].behind - items[0].first if items else 0
    if tokens < _TALK * sum(1 for item in items if item.symbol == "."):
        return items
    paused = list(items)
    last: int | None = None
    for at, item in enumerate(items):
        if item.symbol not in _NUMBERS:
            continue
        if last is not None and item.first - items[last].behind > _LONGEST_WAY:
            words = [each for each in range(last + 1, at) if items[each].symbol == "_"]
            pause = max(words, key=lambda each: items[each].behind - items[each].first, default=None)
            if pause is not None:
                paused[pause] = items[pause]._replace(symbol="\n")
        last = at
    return paused


def _items(
    reading: Reading,
    first: int,
    behind: int,
    number_at: Mapping[int, Measured],
    pairs: dict[int, Measured],
    skipped: frozenset[int],
    named: Mapping[int, Named],
    allowance: Measured | None,
) -> Iterator[Item]:
    tokens, words, kinds = reading.tokens, reading.tokens.words, reading.tokens.kinds
    # Most words mean nothing here: those between two that may mean something are passed over at once.
    telling = (
        at
        for at in range(first, behind)
        if words[at] in _TELLING
        or kinds[at] is TokenKind.SKIPPED
        or at in number_at
        or at in skipped
        or at in named
        or (at + 1 in number_at and words[at].endswith("'s"))
    )
    index = first
    for at in telling:
        if at < index:
            continue
        if index < at:
            yield Item("_", index, at)
        one = number_at.get(at)
        if at in skipped:
            index = at + 1
        elif seam := named_allowance(tokens, at):
            index, times = seam
            if allowance is None:
                yield Item("X", at, index)  # nobody knows here how much it is
            else:
                yield _only_named(allowance, pairs.get(allowance.first), at, index, times)
        elif at in named:
            index, length = named[at]
            yield _only_named(length, pairs.get(length.first), at, index, 1)
        elif part := _named_part(tokens, at):
            yield part
            index = part.behind
        elif one is not None and not (words[at] in ("two", "2") and sides_end(tokens, at)):
            number = _number(tokens, one, pairs.get(at))
            yield number
            index = number.behind
        elif words[at] in _ALONE:
            yield Item(_ALONE[words[at]], at, at + 1)
            index = at + 1
        else:
            item = _word(reading, at, number_at)
            yield item
            index = item.behind
    if index < behind:
        yield Item("_", index, behind)


def _only_named(one: Measured, other: Measured | None, first: int, behind: int, times: int) -> Item:
    """A length of the text where it is only named, taken so often."""
    unit = one.unit.mm if one.unit is not None else Fraction(1)
    taken = replace(one, value=one.value * times)
    again = None if other is None else replace(other, value=other.value * times)
    return Item("L", first, behind, taken.value * unit, taken, again, times=times)


def _number(tokens: Tokens, one: Measured, other: Measured | None) -> Item:
    hedged = _is_hedged(tokens, one)
    if one.counted:
        return Item("_", one.first, one.behind)
    if one.kind is None and tokens.word(one.behind) == "times" and tokens.word(one.behind + 1) in _OFTEN:
        return Item("_", one.first, one.behind + 1)  # “sew over it ten times at the mark”
    if one.kind is Kind.LENGTH and one.unit is not None:
        if one.high is not None:
            return Item("~", one.first, one.behind)
        return Item("L", one.first, one.behind, one.value * one.unit.mm, one, other, hedged)
    if one.high is not None or _begins_a_range(tokens, one):
        return Item("~", one.first, one.behind)
    if one.kind is Kind.PERCENT:
        return Item("P", one.first, one.behind, one.value / 100, one, hedged=hedged)
    if one.value == Fraction(1, 2) and one.first > 0 and tokens.words[one.first - 1] == "in":
        return Item("H", one.first, one.behind)  # “and then in half again”
    if one.kind is None or one.kind in (Kind.RATIO, Kind.COUNT):
        whole = one.value.denominator == 1
        if one.value == 1 and tokens.words[one.behind : one.behind + 1] == ["at"]:
            return Item("N", one.first, one.behind, one.value, one)  # “3 at 9 cm and 1 at 20 cm”
        if one.value == 1:  # “one strip” counts nothing, but “of one strip” tells of each
            of_each = one.first > 0 and tokens.words[one.first - 1] in ("of", "for")
            return Item("e" if of_each else "_", one.first, one.behind)
        if not whole and one.behind < len(tokens) and tokens.words[one.behind] == "-":
            return Item("_", one.first, one.behind)  # half-term, quarter-final
        return Item("N" if whole or one.value > 1 else "R", one.first, one.behind, one.value, one, hedged=hedged)
    return Item("X", one.first, one.behind)


def _begins_a_range(tokens: Tokens, one: Measured) -> bool:
    """Whether it is the first end of a range that measures nothing: ``10 to 12 stitches``."""
    if one.kind is not None or tokens.words[one.behind : one.behind + 1] not in (["to"], ["-"], ["–"]):
        return False
    last = tokens.value(one.behind + 1)
    return last is not None and last > one.value


def _is_hedged(tokens: Tokens, one: Measured) -> bool:
    before = tokens.words[max(0, one.first - 3) : one.first]
    if not before:
        return False
    if before[-1] in ("over", "under"):
        return len(before) > 1 and before[-2] in _SURE_BEHIND_OVER
    if tuple(before[-2:]) in _HEDGE_PAIRS:
        return before[0] not in _GO_UP
    after = tokens.words[one.behind : one.behind + 2]
    if after == ["or", "so"] or after[:1] in (["ish"], ["approximately"], ["roughly"]):
        return True
    return before[-1] in _HEDGES or (
        before[-1] in ("than", "of", "at", "a", "an", "the")
        and before[-2:-1]
        in (["less"], ["more"], ["least"], ["most"], ["shy"], ["scant"], ["generous"], ["about"], ["just"])
    )


def _word(reading: Reading, index: int, number_at: Mapping[int, Measured]) -> Item:
    tokens, kind, word = reading.tokens, reading.tokens.kinds[index], reading.tokens.words[index]
    if kind is TokenKind.SKIPPED and word.startswith("{"):
        return Item("X", index, index + 1)  # a reference stands for a number that nobody knows here
    if kind is TokenKind.SKIPPED:
        return Item("k" if word.startswith("i") and word.endswith("e.") else "_", index, index + 1)
    if word in TRIGGERS and (phrase := phrase_at(tokens, index, number_at)):
        return Item(phrase[0], index, phrase[1])
    if word in _SIGNS:
        return _sign(reading, index)
    if word.endswith("'s") and index + 1 in number_at:
        return Item("=" if word in ("that's", "thats") else "k", index, index + 1)  # “the panel's 12 in”
    if word in _PARTS_NAMED and index and tokens.words[index - 1] in _WHICH_PART:
        return Item("R", index, index + 1, Fraction(1, _PARTS_NAMED[word]))  # “the bottom third of the panel”
    if word in _LEAVES and not _OPEN.isdisjoint(tokens.words[index + 1 : index + 12]):
        return Item("_", index, index + 1)  # “leave 2 in open” leaves nothing over
    if word == "double" and tokens.words[index + 1 : index + 3] == ["-", "fold"]:
        return Item("_", index, index + 1)  # a double-fold hem doubles nothing that is told
    if word in ("double", "doubled") and _is_what_for(tokens, index):
        return Item("_", index, index + 1)  # “8 in for a double hem” is all of it
    if word in ("twice", "double") and index and tokens.words[index - 1] in _DOES:
        return Item("_", index, index + 1)  # “stitch twice”
    if word in _PARTS_OF_CLOTH and index and tokens.words[index - 1] == "fat":
        return Item("_", index, index + 1)  # a fat quarter is a piece of cloth
    if word in _COUNTED:
        return Item("N", index, index + 1, _COUNTED[word])
    if word in _EQUAL_PARTS:
        return Item("N", index, index + 1, Fraction(_EQUAL_PARTS[word]))
    return Item(_SYMBOL_OF.get(word, "_"), index, index + 1)


def _is_what_for(tokens: Tokens, index: int) -> bool:
    """Whether a double hem is what the length before it is for."""
    before, behind = tokens.words[max(0, index - 2) : index], tokens.words[index + 1 : index + 3]
    return "for" in before and behind[:1] in (["hem"], ["hems"])


def _named_part(tokens: Tokens, index: int) -> Item | None:
    """Quarter marks, which part a length in four; and a half that is only a thing, as the front half of a neckline."""
    word = tokens.words[index]
    if word == "quarter" and (behind := _marks_end(tokens, index)):
        return Item("N", index, behind, Fraction(4))
    if word == "half" and index and tokens.words[index - 1] in _WHICH_HALF:
        return Item("_", index, index + 1)
    return None


def _marks_end(tokens: Tokens, index: int) -> int:
    """The token behind ``quarter-mark`` or ``quarter marks``; 0 if nothing of the kind."""
    at = index + 2 if index + 2 < len(tokens) and tokens.words[index + 1] == "-" else index + 1
    return at + 1 if at < len(tokens) and tokens.words[at] in _MARKS else 0


def _sign(reading: Reading, index: int) -> Item:
    """A dash, star, stroke or x: a sign of a sum between two blanks, the head of a list at the start of a line."""
    tokens, text, word = reading.tokens, reading.text, reading.tokens.words[index]
    if index == 0 or tokens.opens_line(index):
        return Item(".", index, index + 1)
    start, end = tokens.starts[index], tokens.ends[index]
    spaced = end < len(text) and text[end].isspace() and text[start - 1].isspace()
    numbers = index + 1 < len(tokens) and (
        tokens.kinds[index + 1] is TokenKind.NUMBER or tokens.kinds[index - 1] is TokenKind.NUMBER
    )
    if word in ("-", "–", "‐"):
        return Item("-" if spaced and word == "-" and numbers else ":" if spaced else "_", index, index + 1)
    if word == "/":
        return Item("/" if spaced else "_", index, index + 1)
    return Item("*", index, index + 1)


def _merged(items: list[Item]) -> list[Item]:
    """Runs of words that mean nothing here as one item."""
    merged: list[Item] = []
    for item in items:
        if item.symbol == "_" and merged and merged[-1].symbol == "_":
            merged[-1] = Item("_", merged[-1].first, item.behind)
        else:
            merged.append(item)
    return merged
