"""What joins a length to the next one: a bracket, a stroke, or words that say that both are one length."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from itertools import count, pairwise, takewhile

from sitegen.prose.find import Measured, Reading, TokenKind
from sitegen.prose.words import words
from sitegen.quantities import Unit

LINKS = words(
    "under over which is that that's equals = about roughly or approximately approx in metric equal to your"
    " other words regular usual the our good old i.e i.e. ie aka approx. a.k.a around nearly just so , ~ ≈ are"
    " be say it's makes works out reads almost normal standard typical common my money meaning"
)
_SAME = words("words or which that's equals = i.e i.e. ie aka is are meaning")
NOUNS = words(
    "this one it altogether total seam seams allowance hem wide long of it across deep thick tall round bolt"
    " fabric cloth high apart -"
)
"""Words that may follow a length before it is said again."""
_OPERATORS = words("of x × * + plus - minus less by times twice double ÷ /")
"""Words before a length that make it a part of a sum, whose result is no other name of it."""
_BRACKET_ENDS = words(
    ", ! ? ) ] for if in to on by with at each wide long deep metric imperial or approx approximately"
)
_APPOSITION_ENDS = words(", . ; : – — - ! ?") | frozenset(("", "for", "if", "all", "throughout", "\n"))
_MORE = words(
    "more less longer shorter wider narrower deeper bigger larger smaller higher lower extra too over under above below"
    " apart away left short further after once before with without including plus minus altogether now"
)
"""Words behind a length that make it a difference, or a length of its own: ``2.8 m, which is 50 cm more``."""
_NEEDED = words("is are will would should does do makes make gives give leaves of")
"""Words behind ``so 2 m`` that tell how much of a width is needed: ``it is 60 in wide, so 2 m is enough``."""
_DIMENSIONS = {
    word: name
    for name, said in {
        "width": "wide across width",
        "length": "long length",
        "height": "high tall height",
        "depth": "deep depth",
        "thickness": "thick thickness",
    }.items()
    for word in said.split()
}
_ENOUGH = words("enough plenty ample fine too do be not")
_NEVER = words("won't isn't wouldn't can't")
_OF_PART = (["at"], ["for"], ["on"], ["with"])
"""Words behind a length in a bracket that give another length of one part: ``5/8 in (1 cm at the neck)``."""
_SCALES = words("scale drawing plan sketch map paper")
_SOLD_IN = (Unit.YD, Unit.M, Unit.FT)
_RULERS = words("ruler rulers tape")
_CHANGED = words("now wait sorry no was")
_DIRECTIONS = words("down in up along") | _DIMENSIONS.keys()
_IN_ALL = (["in", "all"], ["in", "total"], ["all", "told"])
_WISHES = words("want need like have prefer plan add can count include")
PLACES = words(
    "metric imperial inches centimetres centimeters millimetres millimeters europe america states uk canada australia"
    " overseas abroad european europeans american americans british"
)
"""Words that tell of readers elsewhere: ``or 6 mm if you're over in europe`` is no choice."""
_OTHER_SYSTEM = PLACES | {"money"}
"""``5/8 in, in metric 1.5 cm``, ``64 cm, 25 in in old money``."""
_READERS = words(
    "the my our your you guys folks folk people friends friend readers viewers users sewists sewers quilters in across"
    " over on of those all everyone everybody anyone anybody there"
)
_USERS = words("you you're are use using work think prefer like measure sew in with the")
"""Words that may stand between ``for`` or ``if`` and the name of a place or a system."""
_OF_UNITS = PLACES | words("in inch cm mm m metre metres meter meters yd yds yard yards ft feet foot us eu")
"""Words in the heading of a column that tell its unit."""
FAR = Fraction(12)
"""How many times as long one may be as the other where ``or`` and ``which is`` join them."""
LOOSE = Fraction(5, 2)
BESIDE = Fraction(7, 4)
"""The same where no word joins them."""
_SAYS = (["that's"], ["thats"], ["it's"], ["i.e"], ["i.e."], ["ie"])
_IS_OR = words("is or so")
_GOING = words("gonna going be like to")
_FILLERS = words("uh um er well like okay")
_JOINS = words("and plus minus less with add")
_GOES_ON = words("that's thats it's which so for in")
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
)
"""What is thrown in between a length and its partner and changes nothing."""
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
    ("which is", ("which would be", "which will be", "which makes it", "which my ruler says is")),
    ("so", tuple(f"so your {usual}" for usual in ("normal", "standard", "usual", "regular"))),
    ("=", ("- >", "→")),
    ("/", ("slash", "< br >")),
    ("about", _ABOUT),
    *((f"{said} about", tuple(f"{said} {way}" for way in _A_BIT)) for said in ("is", "that's", "it's", "(")),
    ("", (*_ASIDES, *_ALL_ROUND, *_ACROSS)),
)
_COMES_TO = ("comes to", "comes out at", "comes out to", "works out at", "works out to", "converts to", "translates to")
_PHRASES = {tuple(said.split()): plain.split() for plain, others in _SAID_OTHERWISE for said in others}
"""Ways of saying with several words what one of ``LINKS`` says."""
_PHRASES_OF_TWO_SYSTEMS = (
    _PHRASES
    | {tuple(said.split()): ["is"] for said in _COMES_TO}
    | {("that", *said.split()): ["that's"] for said in (*_COMES_TO, "makes")}
)
"""In one system the same words tell the result of a sum: ``four of 25 cm, that comes to 1 m``."""
_LONGEST = max(map(len, _PHRASES_OF_TWO_SYSTEMS))
_SIGNS = words("+ − - × * plus minus times")
_HEDGED_PAIRS = tuple((word, way) for word in ("just", "slightly", "bit", "little") for way in ("under", "over"))
_ANSWERS = words("call it it's that's is about yes well say so ,") | HEDGES
_TELLS = EQUALS | {"say", "or", "makes", "call"}
_ASKS = words("what what's whats how")


def link_between(reading: Reading, one: Measured, other: Measured) -> Link | None:
    """The link between two lengths that follow each other; None where they are two lengths and not one."""
    tokens = reading.tokens
    phrases = _PHRASES if _of_one_system(one, other) else _PHRASES_OF_TWO_SYSTEMS
    said = [word for word in tokens.words[one.behind : other.first] if word not in _FILLERS]
    between = _in_plain_words(said if said == ["*"] else [word for word in said if word != "*"], phrases)
    behind = (
        next(at for at in count(other.behind) if tokens.words[at : at + 1] != ["*"])
        if between[-1:] == ["("]
        else other.behind
    )
    after = tokens.words[behind] if behind < len(tokens) else ""
    closed = behind + 1 if after in (")", "]") else other.behind
    words = _without_nouns(between)
    plain = [word for word in words if word != "," and word not in HEDGES]
    if words[:1] in (["("], ["["]) and after in _BRACKET_ENDS and all(word in LINKS for word in words[1:]):
        return Link(None, closed, tuple(words), True)
    if words in (["/"], ["|"]):
        return Link(None, other.behind, tuple(words), False)
    if after == ")" and _is_in_bracket(words):
        return Link(BESIDE, closed, tuple(words), False)
    if _is_worked(reading, one):
        return None
    if asked(reading, one, other):
        return Link(LOOSE, other.behind, tuple(words), False)
    joined = 0 < len(words) <= 6 and all(word in LINKS for word in words) and bool(_SAME & set(words))
    joined = joined or (words[-1:] != [] and words[-1] in _OTHER_SYSTEM and all(word in LINKS for word in words[:-1]))
    if joined or told_elsewhere(reading, one, other):
        return Link(FAR, other.behind, tuple(words), False)
    if _is_for_readers(words):
        return Link(LOOSE, other.behind, tuple(words), False)
    following = tokens.words[other.behind : other.behind + 3]
    elsewhere = following[:1] == ["in"] and not _OTHER_SYSTEM.isdisjoint(following)
    apposition = words in ([","], ["–"], ["—"], ["-"]) and (after in _APPOSITION_ENDS or elsewhere)
    spoken = other.first == one.behind and after in _APPOSITION_ENDS and not one.supplied and not other.carried
    so = plain in ([], ["so"]) and words != [","] and (other.first > one.behind or spoken)
    if apposition or so:
        return Link(BESIDE, other.behind, tuple(words), False)
    ending = [word for word in words if word not in HEDGES and word not in _GOING]
    adds = any(word in _JOINS and next_word not in _GOES_ON for word, next_word in pairwise(ending))
    if adds and PLACES.isdisjoint(ending):
        return None  # “10 in and the hems, call it 30 cm”
    named = len(ending) == 2 and ending[0].isalpha() and ending[1] in _IS_OR and words[-1] not in HEDGES
    if ending[-1:] in _SAYS or named or (ending[:1] == ["which"] and ending[-1:] == ["is"]):
        return Link(LOOSE, other.behind, tuple(word for word in words if word not in _GOING), False)
    return None


def _of_one_system(one: Measured, other: Measured) -> bool:
    return one.unit is not None and other.unit is not None and one.unit.system is other.unit.system


def is_another(reading: Reading, one: Measured, other: Measured, link: Link) -> bool:
    """Whether the words around the second length make it a length of its own: ``2 in wide (40 cm long)``."""
    words = reading.tokens.words
    after = words[link.behind : link.behind + 3]
    named, measured = (_DIMENSIONS.get(word) for word in (words[one.behind], after[0] if after else ""))
    if named and measured and named != measured:
        return True
    if link.words == ("|",):
        return _under_other_headings(reading, one, other)
    if one.first and words[one.first - 1] == "or" and any(each.behind == one.first - 1 for each in reading.numbers):
        return True  # “a quarter or half an inch, so about a centimetre”
    if link.bracket:
        elsewhere = not (PLACES | _RULERS).isdisjoint(words[other.behind : other.behind + 6])
        of_part = len(link.words) == 1 and words[other.behind : other.behind + 1] in _OF_PART and not elsewhere
        return of_part or other.carried  # “hip 37 in (87, 69, 94 cm)” tells a row of lengths
    if not _CHANGED.isdisjoint(words[one.behind : other.first]):
        return True
    before = words[max(0, one.first - 8) : one.first]
    if not _SCALES.isdisjoint(before) or (before[-1:] == [":"] and after[:1] == [":"]):
        return True  # “28 in: 65 cm, 30 in: 70 cm”
    if after[:1] == ["of"] and one.unit not in _SOLD_IN and not _of_one_system(one, other):
        return True  # “the waist is 28 in, that's 65 cm of elastic”
    if after[:2] == ["and", "a"] and one.unit and other.unit:  # “an inch, so 2 cm and a bit”
        more = (one.value * one.unit.mm) / other.unit.mm - other.value
        return 0 <= more <= 1
    return bool(after) and _goes_on_otherwise(after, words[one.behind], other, link)


def _goes_on_otherwise(after: list[str], before: str, other: Measured, link: Link) -> bool:
    """Whether the words behind the second length tell another thing of it, with the word behind the first one."""
    if after[0] == "from" and before in _DIRECTIONS:
        return True  # “2 inches down and it's 3 cm from the notch”
    if after[0] in _MORE:
        return after != ["more", "or", "less"]
    if other.carried and after[0] in ("or", "to", "and", ","):
        return True  # “an inch or so, about 2 or 3 centimetres”
    if after[:2] == ["if", "you"]:
        return after[2:] != [] and after[2] in _WISHES
    if after[:2] in _IN_ALL or (after[:2] == ["off", "the"] and after[2:] and after[2] in _DIMENSIONS):
        return True
    if "so" in link.words and (after[0] in _NEVER or (after[0] in _NEEDED and not _ENOUGH.isdisjoint(after[1:2]))):
        return True
    return _DIMENSIONS.get(before) == "width" and "so" in link.words and after[0] in _NEEDED


def _under_other_headings(reading: Reading, one: Measured, other: Measured) -> bool:
    """Whether the columns of a table in which two lengths stand tell two measures, such as width and length."""
    text = reading.text
    first, second = reading.tokens.starts[one.first], reading.tokens.starts[other.first]
    begins = text.rfind("\n", 0, first) + 1
    rows = text[:begins].splitlines()
    above = list(takewhile(lambda row: "|" in row, reversed(rows)))
    if not above:
        return False
    cells = above[-1].lower().split("|")
    places = (text.count("|", begins, place) for place in (first, second))
    headings = [cells[place].strip() if place < len(cells) else "" for place in places]
    named = all(headings) and headings[0] != headings[1]
    return named and _OF_UNITS.isdisjoint(re.findall(r"[a-z]+", " ".join(headings))) and '"' not in "".join(headings)


def is_term(reading: Reading, one: Measured) -> bool:
    """Whether a sign joins a length to the number before it; else it is the mark of a list or of bold print."""
    before = reading.tokens.words[max(0, one.first - 2) : one.first]
    if not before or before[-1] not in _SIGNS:
        return False
    return before[-1].isalpha() or any(number.behind == one.first - 1 for number in reading.numbers)


def is_hedged(reading: Reading, one: Measured, link: Link) -> bool:
    """Whether words say that the one length is only about the other."""
    before = reading.tokens.words[max(0, one.first - 2) : one.first]
    return (
        bool(HEDGES & set(link.words))
        or before[-1:] in ([word] for word in HEDGES)
        or tuple(before) in _HEDGED_PAIRS
        or ("just" in link.words and bool({"under", "over"} & set(link.words)))
    )


def asked(reading: Reading, one: Measured, other: Measured) -> bool:
    """Whether a length is asked for and then told: ``What is half an inch? Call it 1.3 cm.``"""
    words = reading.tokens.words
    before, between = words[max(0, one.first - 6) : one.first], words[one.behind : min(other.first, one.behind + 14)]
    if "?" not in between or _ASKS.isdisjoint(before):
        return False
    mark = between.index("?")
    answer = [word for word in between[mark + 1 :] if word not in ('"', "“", "”", "\n")]
    if ":" in answer[:2]:
        answer = answer[answer.index(":") + 1 :]  # who speaks: “TEACHER: Call it …”
    return all(word in PLACES or word == "in" for word in between[:mark]) and all(word in _ANSWERS for word in answer)


def _is_in_bracket(words: list[str]) -> bool:
    """Whether a bracket opens right before a length, or says in it that it is the one before: ``(in metric: 3 cm)``.

    ``22 in (cut 60 cm)`` and ``5 in (was 12 cm)`` are two lengths.
    """
    if words[-1:] == ["("]:
        return all(word.isalpha() for word in words[:-1])
    said = [word for word in words[1:] if word not in HEDGES]
    plain = all(word.isalpha() or word in ",:" for word in said)
    return words[:1] == ["("] and plain and (words[-1] in _TELLS or not PLACES.isdisjoint(said))


def _in_plain_words(between: list[str], phrases: Mapping[tuple[str, ...], list[str]]) -> list[str]:
    """The words between two lengths with each longer phrase said in one word: ``comes to`` as ``is``."""
    plain: list[str] = []
    at = 0
    while at < len(between):
        sizes = range(min(_LONGEST, len(between) - at), 0, -1)
        size = next((size for size in sizes if tuple(between[at : at + size]) in phrases), 0)
        plain += phrases[tuple(between[at : at + size])] if size else between[at : at + 1]
        at += size or 1
    return plain


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


def _is_for_readers(words: list[str]) -> bool:
    """Whether the words tell who reads the length that follows: ``for the metric people``, ``if you use metric``."""
    said = [word for word in words if word != "," and word not in HEDGES]
    told = said[1:] if said[:1] in (["or"], ["so"], ["and"]) else said
    told = told[:-1] if told[-1:] == ["or"] else told
    you = told[:1] == ["if"] and told[1:2] in (["you"], ["you're"])
    whom = _READERS if told[:1] == ["for"] else _USERS if you else frozenset[str]()
    return not PLACES.isdisjoint(told) and all(word in whom or word in PLACES for word in told[1:])


def _is_worked(reading: Reading, one: Measured) -> bool:
    """Whether a length is a part of a sum, ``half of 10 in``, and not only named, ``a seam of 5/8 in``."""
    first = max(0, one.first - 2)
    before = reading.tokens.words[first : one.first]
    if not before or before[-1] not in _OPERATORS:
        return False
    names = reading.tokens.kinds[first] is TokenKind.WORD and before[0] not in _SHARES
    return not (before[-1] == "of" and len(before) == 2 and names)
