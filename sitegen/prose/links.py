"""What joins a length to the next one: a bracket, a stroke, or words that say that both are one length."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from sitegen.prose.find import Measured, Reading, TokenKind
from sitegen.prose.words import words

LINKS = words(
    "under over which is that that's that equals = about roughly or approximately approx in metric equal to your"
    " other words regular usual the our good old i.e i.e. ie aka approx. a.k.a around nearly just so , ~ ≈ are"
    " be say it's makes works out reads almost"
)
_SAME = words("words or which that's equals = i.e i.e. ie aka is are")
NOUNS = words(
    "this one it altogether total seam seams allowance hem wide long of it across deep thick tall round bolt"
    " fabric cloth -"
)
"""Words that may follow a length before it is said again."""
_OPERATORS = words("of x × * + plus - minus less by times twice double ÷ /")
"""Words before a length that make it a part of a sum, whose result is no other name of it."""
_BRACKET_ENDS = words(", ! ? ) ] for if in to on by with at each wide long deep")
_APPOSITION_ENDS = words(", . ; : – — - ! ?") | frozenset(("", "for", "if", "all", "throughout", "\n"))
PLACES = words(
    "metric imperial inches centimetres centimeters europe america states uk canada australia overseas abroad"
)
"""Words that tell of readers elsewhere: ``or 6 mm if you're over in europe`` is no choice."""
FAR = Fraction(12)
"""How many times as long one may be as the other where ``or`` and ``which is`` join them."""
LOOSE = Fraction(5, 2)
BESIDE = Fraction(7, 4)
"""The same where no word joins them."""
_SAYS = (["that's"], ["thats"], ["it's"])
_IS_OR = words("is or so")
_GOING = words("gonna going be like to")
_FILLERS = words("uh um er well like okay")
_SHARES = words("half third thirds quarter quarters fifth fifths tenth tenths percent cent twice double eighths")
EQUALS = frozenset(("is", "that's", "equals", "=", "i.e", "i.e."))
HEDGES = words("quite about roughly approximately approx around nearly just ~ ≈ say almost")


@dataclass(frozen=True, slots=True)
class Link:
    """What joins a length to the next one: how many times apart the two may be, and the token behind both."""

    farthest: Fraction | None
    """None where a bracket or a stroke joins them, whatever the two are."""
    behind: int
    words: tuple[str, ...]
    bracket: bool


def link_between(reading: Reading, one: Measured, other: Measured) -> Link | None:
    """The link between two lengths that follow each other; None where they are two lengths and not one."""
    tokens = reading.tokens
    between = [word for word in tokens.words[one.behind : other.first] if word not in _FILLERS]
    after = tokens.words[other.behind] if other.behind < len(tokens) else ""
    closed = other.behind + 1 if after in (")", "]") else other.behind
    words = _without_nouns(between)
    plain = [word for word in words if word != "," and word not in HEDGES]
    if words[:1] in (["("], ["["]) and after in _BRACKET_ENDS and all(word in LINKS for word in words[1:]):
        return Link(None, closed, tuple(words), True)
    if words in (["/"], ["|"]):
        return Link(None, other.behind, tuple(words), False)
    if after == ")" and "(" in (words[-1:] + words[:1]) and all(word.isalpha() or word == "(" for word in words):
        return Link(BESIDE, closed, tuple(words), False)
    if _is_worked(reading, one):
        return None
    said = 0 < len(words) <= 6 and all(word in LINKS for word in words) and bool(_SAME & set(words))
    if said or told_elsewhere(reading, one, other):
        return Link(FAR, other.behind, tuple(words), False)
    apposition = words in ([","], ["–"], ["—"], ["-"]) and after in _APPOSITION_ENDS
    so = plain in ([], ["so"]) and words != [","] and other.first > one.behind
    if apposition or so:
        return Link(BESIDE, other.behind, tuple(words), False)
    ending = [word for word in words if word not in HEDGES and word not in _GOING]
    named = len(ending) == 2 and ending[0].isalpha() and ending[1] in _IS_OR and words[-1] not in HEDGES
    if ending[-1:] in _SAYS or named or (ending[:1] == ["which"] and ending[-1:] == ["is"]):
        return Link(LOOSE, other.behind, tuple(ending), False)
    return None


def _without_nouns(between: list[str]) -> list[str]:
    """The words between two lengths without what the first is called: ``seam (``, ``of elastic (``."""
    words = list(between)
    while words and words[0] in NOUNS:
        words = words[1:]
    named = words[-1:] == ["("] and len(words) <= 4 and between[0] == "of"
    return ["("] if named and all(word.isalpha() for word in words[:-1]) else words


def told_elsewhere(reading: Reading, one: Measured, other: Measured) -> bool:
    """Whether the words between say that the length follows in the other system: ``and for my metric friends``."""
    between = reading.tokens.words[one.behind : min(other.first, one.behind + 12)]
    while between and between[-1] in HEDGES:
        between.pop()
    return between[-1:] in ([word] for word in EQUALS) and not PLACES.isdisjoint(between) and "." not in between


def _is_worked(reading: Reading, one: Measured) -> bool:
    """Whether a length is a part of a sum, ``half of 10 in``, and not only named, ``a seam of 5/8 in``."""
    first = max(0, one.first - 2)
    before = reading.tokens.words[first : one.first]
    if not before or before[-1] not in _OPERATORS:
        return False
    names = reading.tokens.kinds[first] is TokenKind.WORD and before[0] not in _SHARES
    return not (before[-1] == "of" and len(before) == 2 and names)
