"""What may stand between a length and the same length in another unit, said in the plainest words."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from sitegen.prose.words import words

RULERS = words("ruler rulers tape marked marking markings")
"""Words that tell of what is measured with, in one system or the other."""
PLACES = words(
    "metric imperial inches centimetres centimeters millimetres millimeters europe america states uk canada australia"
    " overseas abroad european europeans american americans british"
)
"""Words that tell of readers elsewhere: ``or 6 mm if you're over in europe`` is no choice."""
HEDGES = words("quite about roughly approximately approx around nearly just ~ ≈ say almost")
NOUNS = words(
    "this one it altogether total seam seams allowance hem wide long of it across deep thick tall round bolt"
    " fabric cloth high apart -"
)
"""Words that may follow a length before it is said again."""
_FILLERS = words("uh um er well like okay")
_ASIDES = (
    "by the way",
    "as you may know",
    "as you know",
    "remember",
    "near enough",
    "roughly speaking",
    "if you're metric",
    "if you are metric",
    "if you think in metric",
    "or so",
    "or thereabouts",
    "more or less",
    "you know",
    "i think",
    "probably",
    "exactly",
    "basically",
    "put another way",
)
"""What is thrown in between a length and its partner and changes nothing."""
_FROM_THE = tuple(
    f"{way}from the {part}"
    for way in ("", "up ", "down ", "in ", "away ")
    for part in ("hem", "edge", "fold", "top", "bottom", "side", "seam", "selvedge", "selvage", "raw edge", "waist")
)
_PARTS = words("top bottom back front middle base waist hem edge")
_ALL_ROUND = ("all the way around", "all the way round", "all around", "all round", "all over")
_ACROSS = (
    *(f"across the {part}" for part in sorted(_PARTS)),
    *(f"{way} the {point} point" for way in ("at", "across") for point in ("widest", "narrowest")),
    "from side to side",
    "from top to bottom",
    "square",
)
_THATS = (
    "that is",
    "that will be",
    "that'll be",
    "that would be",
    "that'd be",
    "that's what",
    "what's that",
    "give or take that's",
    "give or take that is",
    "that would make it",
    "that makes it",
    "so you're looking at",
    "which i've converted to",
)
_ABOUT = (
    *(f"{little} {way}" for little in ("just", "a hair", "a touch") for way in ("over", "under")),
    *("pretty much", "something", "close to", "not quite", "ca .", "c .", "circa", "a generous", "a scant", "a full"),
)
_A_BIT = tuple(
    f"{little} {way}"
    for little in ("a bit", "a little", "slightly")
    for way in ("over", "under", "more than", "less than")
)
_SAID_OTHERWISE = (
    ("that's", _THATS),
    ("that's about", ("call it", "we'll call it", "let's call it", "call that")),
    (",", ("give or take ,",)),
    ("is", ("equivalent to", "the equivalent of", "the same as", "same as")),
    ("i.e.", tuple(f"{way} is to say{of}" for way in ("that", "which") for of in ("", " every"))),
    ("which is", ("here which is", "which would be", "which will be", "which makes it", "which my ruler says is")),
    ("so", tuple(f"so your {usual}" for usual in ("normal", "standard", "usual", "regular"))),
    ("=", ("- >", "→")),
    ("/", ("slash", "< br >")),
    ("about", _ABOUT),
    *((f"{said} about", tuple(f"{said} {way}" for way in _A_BIT)) for said in ("is", "that's", "it's", "(")),
    ("", (*_ASIDES, *_ALL_ROUND, *_ACROSS, *_FROM_THE)),
)
"""What one or no plain word says as well: ``8 in, give or take, that'll be 20 cm`` is ``8 in, that's 20 cm``."""
_COMES_TO = ("comes to", "comes out at", "comes out to", "works out at", "works out to", "converts to", "translates to")
_FACTORS = tuple(
    f"{times} {factor}"
    for times in ("times", "×", "x", "multiplied by", "divided by", "÷", "/")
    for factor in ("2.54", "25.4")
)
"""What makes inches centimetres or millimetres, and back."""
_ON_SIDES = tuple(f"on {which}" for which in ("every side", "all sides", "each side", "either side", "this one"))
_IN_TWO_SYSTEMS = (
    ("is", (*_COMES_TO, "is going to be", "is gonna be")),
    ("that's", (*(f"that {said}" for said in (*_COMES_TO, "makes")), "that's every")),
    ("", (*_FACTORS, *_ON_SIDES)),
)
"""In one system the same words tell the result of a sum: ``four of 25 cm, that comes to 1 m``."""


def _phrases(*tables: tuple[tuple[str, tuple[str, ...]], ...]) -> Mapping[tuple[str, ...], list[str]]:
    return {tuple(said.split()): plain.split() for table in tables for plain, others in table for said in others}


_PHRASES = _phrases(_SAID_OTHERWISE)
_PHRASES_OF_TWO_SYSTEMS = _phrases(_SAID_OTHERWISE, _IN_TWO_SYSTEMS)
_LONGEST = max(map(len, _PHRASES_OF_TWO_SYSTEMS))


def plain_words(between: Sequence[str], *, one_system: bool) -> list[str]:
    """The words between two lengths with each longer phrase said in one word: ``comes to`` as ``is``."""
    phrases = _PHRASES if one_system else _PHRASES_OF_TWO_SYSTEMS
    said = [word for word in between if word not in _FILLERS]
    if said != ["*"]:
        said = [word for word in said if word != "*"]
    plain: list[str] = []
    at = 0
    while at < len(said):
        sizes = range(min(_LONGEST, len(said) - at), 0, -1)
        size = next((size for size in sizes if tuple(said[at : at + size]) in phrases), 0)
        plain += phrases[tuple(said[at : at + size])] if size else said[at : at + 1]
        at += size or 1
    return plain


def without_nouns(between: list[str]) -> list[str]:
    """The words between two lengths without what the first is called: ``seam (``, ``of elastic (``."""
    words = list(between)
    while words and words[0] in NOUNS:
        words = words[1:]
    named = words[-1:] == ["("] and len(words) <= 4 and between[0] == "of"
    return ["("] if named and all(word.isalpha() for word in words[:-1]) else words
