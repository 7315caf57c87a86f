"""A text as a line of symbols, one character an item, on which the forms of written sums are matched.

``Cut 16 in plus two 1/2 in seam allowances: 17 in.`` becomes ``_L+NLp:L.``
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from sitegen.prose.arithmetic.vocabulary import CLASSES
from sitegen.prose.find import Measured, Reading, Token, TokenKind
from sitegen.prose.measurement import Kind
from sitegen.prose.words import words
from sitegen.quantities import Unit

_SYMBOL_OF = {word: symbol for symbol, words in CLASSES.items() for word in words.split()}
_SYMBOL_OF.update({",": ",", ";": ";", ":": ":", "(": "(", ")": ")", "[": "(", "]": ")", "—": ":", "…": ".", "|": "."})
_SIDE = words("side end edge")
_BOTH = words("sides ends edges")
_ALL_SIDES = words("both each either every two 2 all per")
_WHICH_SIDES = words("of the two four short long raw cut its open narrow outer")
_COUNTED = {"both": 2, "dozen": 12, "triple": 3, "tripled": 3}
_EQUAL_PARTS = {"quarters": 4, "halves": 2, "thirds": 3, "fifths": 5, "sixths": 6, "eighths": 8}
_AWAY = words("off away out from")
_FOLDS = words("crease creased fold folded folding folds")
_TURNS = _FOLDS | words("turn turned turning turns")
_OPPOSITE = {"top": "bottom", "left": "right", "above": "below"}
_ALL_ROUND = (["the", "way", "round"], ["the", "way", "around"])
_HALFWAY = frozenset(("halfway", "midpoint"))
_TURNED = words("over under up back down in")
_IN_TWO = words("half middle lengthwise centre center two")
_HEDGES = words(
    "about around approximately roughly nearly almost approx circa say ish just slightly under scant"
    " generous ~ ≈ some maybe hair bit"
)
_HEDGE_PAIRS = frozenset((("up", "to"), ("at", "least"), ("at", "most"), ("no", "more"), ("well", "over")))
_SURE_BEHIND_OVER = frozenset(("just", "slightly", "little", "bit", "hair", "fraction"))


@dataclass(frozen=True, slots=True)
class Item:
    """One symbol: its character, the number it stands for, its unit, and the tokens it covers."""

    symbol: str
    first: int
    behind: int
    value: Fraction = Fraction(0)
    number: Measured | None = None
    other: Measured | None = None
    """The same length in the other unit, where one is given beside it."""
    hedged: bool = False

    @property
    def unit(self) -> Unit | None:
        """The unit of a length."""
        return self.number.unit if self.number is not None else None


def items_of(reading: Reading, pairs: dict[int, Measured], skipped: frozenset[int]) -> list[Item]:
    """The items of a text in order.

    ``pairs`` gives, by the first token of a length, the same length in the other unit; ``skipped`` are the tokens
    that only give that other length, brackets included.
    """
    return _merged(list(_items(reading, pairs, skipped)))


def _items(reading: Reading, pairs: dict[int, Measured], skipped: frozenset[int]) -> Iterator[Item]:
    tokens = reading.tokens
    number_at = {one.first: one for one in reading.numbers}
    index = 0
    while index < len(tokens):
        if index in skipped:
            index += 1
            continue
        one = number_at.get(index)
        if one is not None and not (tokens[index].word in ("two", "2") and _sides_end(tokens, index)):
            yield _number(tokens, one, pairs.get(index))
            index = one.behind
            continue
        item = _word(reading, index, number_at)
        yield item
        index = item.behind


def _number(tokens: Sequence[Token], one: Measured, other: Measured | None) -> Item:
    hedged = _is_hedged(tokens, one)
    if one.counted:
        return Item("_", one.first, one.behind)
    if one.kind is Kind.LENGTH and one.unit is not None:
        if one.high is not None:
            return Item("~", one.first, one.behind)
        return Item("L", one.first, one.behind, one.value * one.unit.mm, one, other, hedged)
    if one.high is not None:
        return Item("~", one.first, one.behind)
    if one.kind is Kind.PERCENT:
        return Item("P", one.first, one.behind, one.value / 100, one, hedged=hedged)
    if one.kind is None or one.kind in (Kind.RATIO, Kind.COUNT):
        whole = one.value.denominator == 1
        if not whole and one.behind < len(tokens) and tokens[one.behind].word == "-":
            return Item("_", one.first, one.behind)  # half-term, quarter-final
        return Item("N" if whole or one.value > 1 else "R", one.first, one.behind, one.value, one, hedged=hedged)
    return Item("X", one.first, one.behind)


def _is_hedged(tokens: Sequence[Token], one: Measured) -> bool:
    before = [token.word for token in tokens[max(0, one.first - 3) : one.first]]
    if not before:
        return False
    if before[-1] in ("over", "under"):
        return len(before) > 1 and before[-2] in _SURE_BEHIND_OVER
    if tuple(before[-2:]) in _HEDGE_PAIRS:
        return before[:1] not in (["add"], ["adds"], ["adding"])
    after = [token.word for token in tokens[one.behind : one.behind + 2]]
    if after == ["or", "so"] or after[:1] in (["ish"], ["approximately"], ["roughly"]):
        return True
    return before[-1] in _HEDGES or (
        before[-1] in ("than", "of", "at", "a", "an", "the")
        and before[-2:-1]
        in (["less"], ["more"], ["least"], ["most"], ["shy"], ["scant"], ["generous"], ["about"], ["just"])
    )


def _word(reading: Reading, index: int, number_at: Mapping[int, Measured]) -> Item:
    tokens, token = reading.tokens, reading.tokens[index]
    following = tokens[index + 1].word if index + 1 < len(tokens) else ""
    word = token.word
    if token.kind is TokenKind.BREAK:
        return Item("\n", index, index + 1)
    if token.kind is TokenKind.SKIPPED:
        return Item("k" if word.startswith("i") and word.endswith("e.") else "_", index, index + 1)
    if word in _ALL_SIDES and (behind := _sides_end(tokens, index)):
        return Item("S", index, behind)
    if word in ("take", "takes", "taking", "taken", "took"):
        off = any(token.word in _AWAY for token in tokens[index + 1 : index + 9])
        return Item("T" if off else "u", index, index + (2 if following in ("off", "away", "out") else 1))
    if word in _OPPOSITE and any(token.word == _OPPOSITE[word] for token in tokens[index + 1 : index + 7]):
        return Item("S", index, index + 1)
    if word == "all" and (
        following in ("round", "around") or [token.word for token in tokens[index + 1 : index + 4]] in _ALL_ROUND
    ):
        return Item("S", index, index + (2 if following in ("round", "around") else 4))
    if word in _HALFWAY:
        return Item("H", index, index + 1)
    if word in _TURNS and following in ("out", "up", "under", "away", "off"):
        return Item("T", index, index + 2)
    if word in _TURNS and _turns_a_length(tokens, index, number_at):
        return Item("T", index, index + 1)
    if word == "left" and index and tokens[index - 1].word in ("the", "on"):
        return Item("_", index, index + 1)
    if word in _FOLDS and any(token.word in _IN_TWO for token in tokens[index + 1 : index + 8]):
        return Item("H", index, index + 1)
    if word == "pair" and following == "of" and index + 2 < len(tokens) and tokens[index + 2].word == "them":
        return Item("D", index, index + 3)
    if word in ("less", "more") and following == "than":
        return Item("<" if word == "less" else ">", index, index + 2)
    if word in ("end", "side") and [token.word for token in tokens[index + 1 : index + 3]] in (
        ["to", word],
        ["by", word],
    ):
        return Item("c", index, index + 3)
    if (word, following) in (("in", "all"), ("all", "told"), ("all", "together"), ("all", "in")):
        return Item("c", index, index + 2)
    if word == "?":
        return Item(":", index, index + 1)  # a question and its answer are one statement
    if word in (".", "!"):
        return Item(".", index, index + 1)
    if word in ("-", "–", "*", "/", "x", "‐"):
        return _sign(reading, index)
    if word in _COUNTED:
        return Item("N", index, index + 1, Fraction(_COUNTED[word]))
    if word in _EQUAL_PARTS:
        return Item("N", index, index + 1, Fraction(_EQUAL_PARTS[word]))
    return Item(_SYMBOL_OF.get(word, "_"), index, index + 1)


def _turns_a_length(tokens: Sequence[Token], index: int, number_at: Mapping[int, Measured]) -> bool:
    """Whether cloth is turned under by so much: ``fold 1 1/4 in over``, ``turn up 2 in``."""
    for at in range(index + 1, min(index + 4, len(tokens))):
        one = number_at.get(at)
        if one is not None and one.kind is Kind.LENGTH:
            around = [token.word for token in (*tokens[index + 1 : at], *tokens[one.behind : one.behind + 2])]
            return any(word in _TURNED for word in around)
    return False


def _sides_end(tokens: Sequence[Token], index: int) -> int:
    """The token behind ``both ends``, ``each of the two short sides``, ``all four edges``; 0 if nothing of the kind."""
    at = index + 1
    while at < len(tokens) and at < index + 5 and tokens[at].word in _WHICH_SIDES:
        at += 1
    if at >= len(tokens):
        return 0
    several = tokens[index].word in ("both", "two", "2", "all") or "of" in (token.word for token in tokens[index:at])
    return at + 1 if tokens[at].word in (_BOTH if several else _SIDE) else 0


def _sign(reading: Reading, index: int) -> Item:
    """A dash, star, stroke or x: a sign of a sum between two blanks, the head of a list at the start of a line."""
    tokens, token = reading.tokens, reading.tokens[index]
    if token.opens_line or index == 0:
        return Item(".", index, index + 1)
    spaced = (
        token.end < len(reading.text) and reading.text[token.end].isspace() and reading.text[token.start - 1].isspace()
    )
    numbers = index + 1 < len(tokens) and (
        tokens[index + 1].kind is TokenKind.NUMBER or tokens[index - 1].kind is TokenKind.NUMBER
    )
    if token.word in ("-", "–", "‐"):
        return Item("-" if spaced and token.word == "-" and numbers else ":" if spaced else "_", index, index + 1)
    if token.word == "/":
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
