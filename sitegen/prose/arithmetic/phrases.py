"""Words that say what they say in a sum only together with others: ``both ends``, ``take off``, ``fold in half``."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from sitegen.prose.find import Measured, Token
from sitegen.prose.measurement import Kind
from sitegen.prose.words import words

_SIDE = words("side end edge")
_BOTH = words("sides ends edges")
_ALL_SIDES = words("both each either every two 2 all per")
_WHICH_SIDES = words("of the two four short long raw cut its open narrow outer")
_AWAY = words("off away out from")
_FOLDS = words("crease creased fold folded folding folds")
_TURNS = _FOLDS | words("turn turned turning turns")
_OPPOSITE = {"top": "bottom", "left": "right", "above": "below"}
_ALL_ROUND = (["the", "way", "round"], ["the", "way", "around"])
_HALFWAY = frozenset(("halfway", "midpoint"))
_TURNED = words("over under up back down in")
_IN_TWO = words("half middle lengthwise centre center two")
_TAKES = words("take takes taking taken took")
_WHOLE = words("all in end side pair less more left")
TRIGGERS = _ALL_SIDES | _TAKES | frozenset(_OPPOSITE) | _HALFWAY | _TURNS | _WHOLE
"""The words with which such a phrase may begin."""


def phrase_at(tokens: Sequence[Token], index: int, number_at: Mapping[int, Measured]) -> tuple[str, int] | None:
    """The symbol of the phrase that begins here and the token behind it, or None."""
    word = tokens[index].word
    following = tokens[index + 1].word if index + 1 < len(tokens) else ""
    if word in _ALL_SIDES and (behind := sides_end(tokens, index)):
        return "S", behind
    if word in _TAKES:
        off = any(token.word in _AWAY for token in tokens[index + 1 : index + 9])
        return "T" if off else "u", index + (2 if following in ("off", "away", "out") else 1)
    if word in _OPPOSITE and any(token.word == _OPPOSITE[word] for token in tokens[index + 1 : index + 7]):
        return "S", index + 1
    if word == "all" and (
        following in ("round", "around") or [token.word for token in tokens[index + 1 : index + 4]] in _ALL_ROUND
    ):
        return "S", index + (2 if following in ("round", "around") else 4)
    if word in _HALFWAY:
        return "H", index + 1
    if word in _TURNS and following in ("out", "up", "under", "away", "off"):
        return "T", index + 2
    if word in _TURNS and _turns_a_length(tokens, index, number_at):
        return "T", index + 1
    if word == "left" and index and tokens[index - 1].word in ("the", "on"):
        return "_", index + 1
    if word in _FOLDS and any(token.word in _IN_TWO for token in tokens[index + 1 : index + 8]):
        return "H", index + 1
    if word == "pair" and following == "of" and index + 2 < len(tokens) and tokens[index + 2].word == "them":
        return "D", index + 3
    if word in ("less", "more") and following == "than":
        return "<" if word == "less" else ">", index + 2
    if word in ("end", "side") and [token.word for token in tokens[index + 1 : index + 3]] in (
        ["to", word],
        ["by", word],
    ):
        return "c", index + 3
    if (word, following) in (("in", "all"), ("all", "told"), ("all", "together"), ("all", "in")):
        return "c", index + 2
    return None


def _turns_a_length(tokens: Sequence[Token], index: int, number_at: Mapping[int, Measured]) -> bool:
    """Whether cloth is turned under by so much: ``fold 1 1/4 in over``, ``turn up 2 in``."""
    for at in range(index + 1, min(index + 4, len(tokens))):
        one = number_at.get(at)
        if one is not None and one.kind is Kind.LENGTH:
            around = [token.word for token in (*tokens[index + 1 : at], *tokens[one.behind : one.behind + 2])]
            return any(word in _TURNED for word in around)
    return False


def sides_end(tokens: Sequence[Token], index: int) -> int:
    """The token behind ``both ends``, ``each of the two short sides``, ``all four edges``; 0 if nothing of the kind."""
    at = index + 1
    while at < len(tokens) and at < index + 5 and tokens[at].word in _WHICH_SIDES:
        at += 1
    if at >= len(tokens):
        return 0
    several = tokens[index].word in ("both", "two", "2", "all") or "of" in (token.word for token in tokens[index:at])
    return at + 1 if tokens[at].word in (_BOTH if several else _SIDE) else 0
