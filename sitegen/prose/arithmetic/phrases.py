"""Words that say what they say in a sum only together with others: ``both ends``, ``take off``, ``fold in half``."""

from __future__ import annotations

from collections.abc import Mapping

from sitegen.prose.find import Measured, TokenKind, Tokens
from sitegen.prose.measurement import Kind
from sitegen.prose.words import words

_SIDE = words("side end edge selvage selvedge front")
_BOTH = words("sides ends edges selvages selvedges")
_PAIRED = words("armhole sleeve ankle wrist shoulder")
"""What a garment has two of."""
_TWO_OF = _PAIRED | words("wrist hip ankle sleeve leg knee thigh arm elbow cuff")
_AT_EACH = words("at for round around on over to")
_ALL_SIDES = words("both each either every two 2 all per")
_MIDDLES = words("middle center centre")
_LIES = words("is falls comes lies sits at mark")
_FOLDED = words("band binding cuff collar edge waistband strip and , . ; :")
_FOLDED_OVER = words(", . ; and with along")
_SELVAGES = words("selvage selvedge")
_PAIR_TAKES = words(", is : takes needs makes")
_STOPS = words(". , ; : ! ? ) - – —")
_SAYS_SO = words("that's thats so makes comes is")
_APIECE = words("pop piece go head")
_WHICH_SIDES = words("of the two four short long raw cut its open narrow outer outside")
_AWAY = words("off away out from")
_FOLDS = words("crease creased fold folded folding folds")
_TURNS = _FOLDS | words("turn turned turning turns")
_OPPOSITE = {"top": "bottom", "left": "right", "above": "below"}
_ALL_ROUND = (["the", "way", "round"], ["the", "way", "around"])
_HALFWAY = frozenset(("halfway", "midpoint"))
_TURNED = words("over under up back down in")
_IN_TWO = words("half middle lengthwise lengthways centre center two length")
_ITS = {"two": ("in", "into"), "length": ("its", "their")}
_TAKES = words("take takes taking taken took")
_CUTS = words("cut cuts cutting trim trims trimmed trimming")
_GOES = words("go goes going went")
_STARTS = words("start starts started starting begin begins began")
_HANGS = words("hang hangs hanging hung dangles dangling")
_WHOLE = words("all in end side pair less more left")
TRIGGERS = (
    _ALL_SIDES
    | _TAKES
    | _GOES
    | _CUTS
    | frozenset(_OPPOSITE)
    | _HALFWAY
    | _TURNS
    | _WHOLE
    | _MIDDLES
    | {"middle's", "centre's", "center's"}
    | _SELVAGES
    | frozenset(("pair",))
    | _STARTS
    | frozenset(("draw", "draws", "drew", "drawn", "between", "short", "a", "to", "edge", "on", "off", "for"))
)
"""The words with which such a phrase may begin."""


def phrase_at(tokens: Tokens, index: int, number_at: Mapping[int, Measured]) -> tuple[str, int] | None:
    """The symbol of the phrase that begins here and the token behind it, or None."""
    words = tokens.words
    word, following = words[index], words[index + 1] if index + 1 < len(words) else ""
    if word in _ALL_SIDES and (behind := sides_end(tokens, index)):
        return "S", behind
    if word == "each" and following in _PAIRED and index + 2 in number_at:
        return "S", index + 2  # “each armhole 46 cm” are two
    if word == "each" and following in _TWO_OF and index and words[index - 1] in _AT_EACH:
        return "S", index + 2  # “11 in for each wrist”
    if word == "between" and following == "the" and words[index + 2 : index + 3] == ["two"]:
        return "d", index + 3
    if word in _STARTS and following in ("from", "with", "out"):
        return "u", index + 2
    if word == "for" and "stretch" in words[index + 1 : index + 3]:
        return "_", words.index("stretch", index) + 1  # what a length is taken off for
    if word == "short" and following in (".", ",", ";", "of"):
        return "<", index + 1
    if word == "a" and following == "whole" and index + 2 in number_at:
        return "c", index + 2
    if word in ("draw", "draws", "drew", "drawn") and following == "up":
        return "T", index + 2
    if word in _GOES and following in ("with", "for"):
        return "u", index + 2  # “I went with 75%”
    if word in _TAKES and following in ("in", "up"):
        return "T", index + 2
    if word in _TAKES:
        off = not _AWAY.isdisjoint(words[index + 1 : index + 9])
        return "T" if off else "u", index + (2 if following in ("off", "away", "out") else 1)
    if (
        word in _OPPOSITE
        and not _each_its_own(tokens, index, number_at)
        and _OPPOSITE[word] in words[index + 1 : index + 7]
    ):
        return "S", index + 1
    if word == "all" and (following in ("round", "around") or words[index + 1 : index + 4] in _ALL_ROUND):
        return "S", index + (2 if following in ("round", "around") else 4)
    if word in _HALFWAY:
        return "H", index + 1
    if word in _FOLDS and (doubled := _doubled(tokens, index)):
        return "H", doubled
    if word in _FOLDS and (two := _in_two(tokens, index)):
        length = any(at in number_at for at in range(index, two))
        return "H", two + 1 if two <= index + 4 and not length else index + 1
    if word == "folded" and following == "over" and index + 2 < len(tokens) and words[index + 2] in _FOLDED_OVER:
        return "H", index + 2
    if word == "folded" and following in _FOLDED:
        return "H", index + 1
    if word == "off" and index and words[index - 1] in _HANGS:
        return "_", index + 1
    if word in _CUTS and following in ("back", "away", "down", "off"):
        return "T", index + 2
    if word in _TURNS and following == "-":
        return "_", min(index + 3, len(words))  # a turn-up is a thing
    if word in _TURNS and following in ("out", "up", "under", "away", "off"):
        return "T", index + 2
    if word in _TURNS and _turns_a_length(tokens, index, number_at):
        return "T", index + 1
    if word == "left" and index and words[index - 1] in ("the", "on"):
        return "_", index + 1
    if word in _SELVAGES and words[index + 1 : index + 3] == ["to", word]:
        return "H", index + 3
    if word == "pair" and index and words[index - 1] == "the" and following in _PAIR_TAKES:
        return "D", index + 1
    if word == "a" and _per_thing(tokens, index, number_at):
        return "e", index + 2
    if word == "to" and following == "a" and index + 1 not in number_at and _per_thing(tokens, index + 1, number_at):
        return "e", index + 3
    if word == "on" and following == "top" and index + 2 < len(tokens) and words[index + 2] == "of":
        return "A", index + 3
    if word == "a" and following in _APIECE and (index == 0 or words[index - 1] != "in"):
        return "e", index + 2
    if word == "pair" and following == "of" and index + 2 < len(tokens) and words[index + 2] == "them":
        return "D", index + 3
    if word in ("less", "more") and following == "than":
        return "<" if word == "less" else ">", index + 2
    if word in ("middle's", "centre's", "center's") and following == "at":
        return "H", index + 1
    if word in _MIDDLES and following == "," and index + 2 in number_at:
        return "H", index + 1  # “right in the middle, 6 in from the top”
    if word in _MIDDLES and following in _LIES:
        return "H", index + 1
    if word in ("end", "side", "edge") and words[index + 1 : index + 3] in (
        ["to", word],
        ["by", word],
    ):
        return "c", index + 3
    if (word, following) in (("in", "all"), ("all", "told"), ("all", "together"), ("all", "in")):
        return "c", index + 2
    return None


def _per_thing(tokens: Tokens, index: int, number_at: Mapping[int, Measured]) -> bool:
    """Whether ``a`` means each: ``6 in a flag.``"""
    ends = index + 2 >= len(tokens) or tokens.words[index + 2] in _STOPS | _SAYS_SO or tokens.opens_line(index + 2)
    if not ends or index + 1 >= len(tokens) or tokens.kinds[index + 1] is not TokenKind.WORD:
        return False
    to = tokens.words[index - 1] == "to"  # “2/3 yd of vinyl to a guard”
    return any(
        (one := number_at.get(at)) is not None and (one.behind == index or to) and one.kind is Kind.LENGTH
        for at in range(max(0, index - 8), index)
    )


def _each_its_own(tokens: Tokens, index: int, number_at: Mapping[int, Measured]) -> bool:
    """Whether top and bottom have a length each, so that neither is meant of both."""
    opposite = _OPPOSITE[tokens.words[index]]
    places = [at for at in range(index + 1, min(index + 8, len(tokens))) if tokens.words[at] == opposite]
    if not places:
        return False
    between = any(at in number_at for at in range(index, places[0]))
    behind = any(at in number_at for at in range(places[0], min(places[0] + 4, len(tokens))))
    before = any(one.behind > index - 4 for at in range(max(0, index - 8), index) if (one := number_at.get(at)))
    after = tokens[places[0] + 1] if places[0] + 1 < len(tokens) else None
    named = after is not None and after.kind is TokenKind.WORD and after.word not in _SAYS_SO | {"it's", "gives"}
    beside = places[0] + 1 in number_at or (places[0] + 2 in number_at and named)
    return (between and (behind or before)) or (before and beside)


def _in_two(tokens: Tokens, index: int) -> int:
    """The token that says that something is folded in half; 0 if none does, as before a half inch."""
    for at in range(index + 1, min(index + 8, len(tokens))):
        word = tokens.words[at]
        if word in _IN_TWO and (word not in _ITS or tokens.words[at - 1] in _ITS[word]):
            following = tokens.words[at + 1] if at + 1 < len(tokens) else ""
            return 0 if following in ("an", "a", "inch", "inches", "yard") else at
    return 0


def _doubled(tokens: Tokens, index: int) -> int:
    """The token behind ``folded double``; 0 if nothing of the kind."""
    at = index + 2 if index + 1 < len(tokens) and tokens.words[index + 1] in ("it", "them", "this") else index + 1
    return at + 1 if at < len(tokens) and tokens.words[at] == "double" else 0


def _turns_a_length(tokens: Tokens, index: int, number_at: Mapping[int, Measured]) -> bool:
    """Whether cloth is turned under by so much: ``fold 1 1/4 in over``, ``turn up 2 in``."""
    for at in range(index + 1, min(index + 4, len(tokens))):
        one = number_at.get(at)
        if one is not None and one.kind is Kind.LENGTH:
            around = (*tokens.words[index + 1 : at], *tokens.words[one.behind : one.behind + 2])
            return any(word in _TURNED for word in around)
    return False


def sides_end(tokens: Tokens, index: int) -> int:
    """The token behind ``both ends``, ``each of the two short sides``, ``all four edges``; 0 if nothing of the kind."""
    words, at = tokens.words, index + 1
    while at < len(words) and at < index + 5 and words[at] in _WHICH_SIDES:
        at += 1
    if at >= len(words):
        return 0
    several = words[index] in ("both", "two", "2", "all") or "of" in words[index:at]
    if words[index] == "both" and words[at : at + 2] in (["side", "seams"], ["side", "edges"]):
        return at + 2
    return at + 1 if words[at] in (_BOTH if several else _SIDE) else 0
