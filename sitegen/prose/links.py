"""What joins a length to the next one: a bracket, a stroke, or words that say that both are one length."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache

from sitegen.prose.find import Measured, Reading, TokenKind
from sitegen.prose.link_words import HEDGES, PLACES, RULERS, plain_words, without_nouns
from sitegen.prose.words import words

FAR = Fraction(12)
"""How many times as long one may be as the other where ``or`` and ``which is`` join them."""
LOOSE = Fraction(5, 2)
BESIDE = Fraction(7, 4)
"""The same where no word joins them."""
EQUALS = frozenset(("is", "that's", "equals", "=", "i.e", "i.e."))
LINKS = words(
    "under over which is that that's equals = about roughly or approximately approx in metric equal to your"
    " other words regular usual the our good old i.e i.e. ie aka approx. a.k.a around nearly just so , ~ ≈ are"
    " be say it's makes works out reads almost normal standard typical common my money meaning"
)
"""Words of which none between two lengths makes the second a length of its own."""
_OPERATORS = words("of x × * + plus - minus less by times twice double ÷ /")
"""Words before a length that make it a part of a sum, whose result is no other name of it."""
_SHARES = words("half third thirds quarter quarters fifth fifths tenth tenths percent cent twice double eighths")
_BRACKET_ENDS = words(
    ", ! ? ) ] for if in to on by with at each wide long deep metric imperial or approx approximately"
)
_APPOSITION_ENDS = words(", . ; : – — - ! ?") | frozenset(("", "for", "if", "all", "throughout", "\n"))
_READERS = words(
    "the my our your you guys folks folk people friends friend readers viewers users sewists sewers quilters in across"
    " over on of those all everyone everybody anyone anybody there"
)
_OF_READERS = words("the your my our a")
_CALLS = words("call calls being becomes")
_USERS = words("you you're are use using work think prefer like measure sew in with the")
"""Words that may stand between ``for`` or ``if`` and the name of a place or a system."""
_ANSWERS = words("call it it's that's is about yes well say so ,") | HEDGES
_TELLS = EQUALS | {"say", "or", "makes", "call"}
_ASKS = words("what what's whats how")

_SYMBOLS = (
    dict.fromkeys(LINKS, "l")
    | {"to": "b", "be": "b", "like": "g", "gonna": "g", "going": "g"}
    | dict.fromkeys(("and", "plus", "minus", "less", "with", "add"), "+")
    | {"for": "f"}
    | dict.fromkeys(PLACES | {"money"}, "m")
    | dict.fromkeys(HEDGES, "~")
    | {"is": "i", "are": "i", "which": "w", "or": "o", "so": "s", ",": ",", "equals": "e", "=": "e", "it's": "t"}
    | dict.fromkeys(("that's", "i.e", "i.e.", "ie"), "=")
    | {"in": "n", "thats": "t", "words": "a", "aka": "a", "meaning": "a"}
    | {":": ":", ";": ";", "(": "(", "[": "(", "/": "/", "|": "/", "–": "-", "—": "-", "-": "-"}
)
"""One symbol for each word that may join two lengths; any other is ``x``, any other sign ``?``."""


@dataclass(frozen=True, slots=True)
class Link:
    """What joins a length to the next one: how many times apart the two may be, and the token behind both."""

    farthest: Fraction | None
    """None where a bracket or a stroke joins them, whatever the two are."""
    behind: int
    words: tuple[str, ...]
    bracket: bool


@dataclass(frozen=True, slots=True)
class _Joint:
    """Two lengths with the plain words between them, and the word behind both."""

    reading: Reading
    one: Measured
    other: Measured
    words: tuple[str, ...]
    symbols: str
    after: str


@dataclass(frozen=True, slots=True)
class Way:
    """A way of joining two lengths: the symbols between them, what else must be, and an example."""

    pattern: re.Pattern[str]
    farthest: Fraction | None
    example: str
    fits: Callable[[_Joint], bool]


@dataclass(frozen=True, slots=True)
class _Between:
    """The plain words between two lengths, whether a bracket opens behind them, and the ways that they may join."""

    words: tuple[str, ...]
    symbols: str
    opens: bool
    signs: tuple[Way, ...]
    ways: tuple[Way, ...]


def link_between(reading: Reading, one: Measured, other: Measured) -> Link | None:
    """The link between two lengths that follow each other; None where they are two lengths and not one."""
    tokens = reading.tokens
    between = _between(tuple(tokens.words[one.behind : other.first]), of_one_system(one, other))
    behind = other.behind
    while between.opens and tokens.words[behind : behind + 1] == ["*"]:
        behind += 1
    after = tokens.words[behind] if behind < len(tokens) else ""
    joint = _Joint(reading, one, other, between.words, between.symbols, after)
    bracket = "(" in between.symbols
    end = behind + 1 if bracket and after in (")", "]") else other.behind
    for way in between.signs:
        if way.fits(joint):
            return Link(way.farthest, end, between.words, bracket and way.farthest is None)
    if _is_worked(reading, one):
        return None
    for way in between.ways:
        if way.fits(joint):
            said = tuple(word for word in between.words if _symbol(word) not in "gb")
            return Link(way.farthest, other.behind, said, False)
    return None


@lru_cache(maxsize=4096)
def _between(between: tuple[str, ...], one_system: bool) -> _Between:
    """What stands between two lengths. Kept, since most lengths are parted by the same few words."""
    plain = plain_words(between, one_system=one_system)
    said = without_nouns(plain)
    symbols = "".join(map(_symbol, said))
    signs, ways = (tuple(way for way in table if way.pattern.fullmatch(symbols)) for table in (BY_SIGNS, IN_WORDS))
    return _Between(tuple(said), symbols, plain[-1:] == ["("], signs, ways)


def _symbol(word: str) -> str:
    return _SYMBOLS.get(word, "x" if word.isalpha() else "?")


def of_one_system(one: Measured, other: Measured) -> bool:
    """Whether both lengths are metric, or both in inches, feet or yards."""
    return one.unit is not None and other.unit is not None and one.unit.system is other.unit.system


def _bracket_ends(joint: _Joint) -> bool:
    return joint.after in _BRACKET_ENDS


def _tells_in_bracket(joint: _Joint) -> bool:
    """Whether a bracket opens right before a length, or says in it that it is the one before: ``(in metric: 3 cm)``.

    ``22 in (cut 60 cm)`` and ``5 in (was 12 cm)`` are two lengths.
    """
    words = joint.words
    if joint.after != ")" or words[-1] == "(":
        return joint.after == ")" and all(word.isalpha() for word in words[:-1])
    said = [word for word in words[1:] if word not in HEDGES]
    plain = all(word.isalpha() or word in ",:" for word in said)
    return words[0] == "(" and plain and (words[-1] in _TELLS or not PLACES.isdisjoint(said))


def _is_answer(joint: _Joint) -> bool:
    return asked(joint.reading, joint.one, joint.other)


def _is_told_elsewhere(joint: _Joint) -> bool:
    return told_elsewhere(joint.reading, joint.one, joint.other)


def _is_for_readers(joint: _Joint) -> bool:
    """Whether the words tell who reads the length that follows: ``for the metric people``, ``if you use metric``."""
    said = [word for word in joint.words if word != "," and word not in HEDGES]
    told = said[1:] if said[:1] in (["or"], ["so"], ["and"]) else said
    told = told[:-1] if told[-1:] == ["or"] else told
    you = told[:1] == ["if"] and told[1:2] in (["you"], ["you're"])
    whom = _READERS if told[:1] == ["for"] else _USERS if you else frozenset[str]()
    return not PLACES.isdisjoint(told) and all(word in whom or word in PLACES for word in told[1:])


def _is_for_others(joint: _Joint) -> bool:
    """Whether the words behind tell who measures so: ``if your machine is marked in metric``, ``for the americans``."""
    following = joint.reading.tokens.words[joint.other.behind : joint.other.behind + 8]
    return joint.after in ("if", "for", "on") and not (PLACES | RULERS).isdisjoint(following)


def _is_apposition(joint: _Joint) -> bool:
    following = joint.reading.tokens.words[joint.other.behind : joint.other.behind + 3]
    elsewhere = following[:1] == ["in"] and not (PLACES | {"money"}).isdisjoint(following)
    elsewhere = elsewhere or following[:2] == ["to", "you"]
    return joint.after in _APPOSITION_ENDS or elsewhere


def _is_said_beside(joint: _Joint) -> bool:
    """Whether some word stands between, or a stop behind what has none: ``eight inches twenty centimetres``."""
    one, other = joint.one, joint.other
    spoken = joint.after in _APPOSITION_ENDS and not one.supplied and not other.carried
    return other.first > one.behind or spoken


def _adds_nothing(joint: _Joint) -> bool:
    """Whether the words between add nothing to the first length: ``10 in and the hems, call it 30 cm`` are two."""
    ending = re.sub("[~gb]", "", joint.symbols)
    return re.search(r"\+[^=twsfn]", ending) is None or not PLACES.isdisjoint(joint.words)


def _always(_: _Joint) -> bool:
    return True


def _way(pattern: str, farthest: Fraction | None, example: str, fits: Callable[[_Joint], bool] = _always) -> Way:
    return Way(re.compile(pattern.replace("L", "[~,soiwet=albnm]")), farthest, example, fits)


BY_SIGNS = (
    _way(r"\(L*", None, "5/8 in (about 1.5 cm)", _bracket_ends),
    _way(r"/", None, "1.5 cm / 5/8 in"),
    _way(r"\(.*|.*\(", BESIDE, "3 in (in metric: 7.5 cm)", _tells_in_bracket),
)
IN_WORDS = (
    _way(r".*", LOOSE, "What is half an inch? Call it 1.3 cm.", _is_answer),
    _way(r"(?=.*[aow=ei])L{1,6}", FAR, "8 in, which is about 20 cm"),
    _way(r";?L*m,?", FAR, "64 cm; in old money, 25 in"),
    _way(r".*", FAR, "8 in, and for my metric friends that's 20 cm", _is_told_elsewhere),
    _way(r".*", LOOSE, "8 in, or for metric people 20 cm", _is_for_readers),
    _way(r"[,~]*[so][,~]*", FAR, "5/8 in, so 15 mm if your tape is metric", _is_for_others),
    _way(r"-~+", BESIDE, "8 in – about 20 cm –"),
    _way(r"[,-]", BESIDE, "8 in, 20 cm, from the top", _is_apposition),
    _way(r"(?!,$)[,~]*s?[,~]*", BESIDE, "8 in, so about 20 cm", _is_said_beside),
    _way(r".*[=t][~gb]*", LOOSE, "8 in down the side, that's 20 cm", _adds_nothing),
    _way(r"[~gb]*[^,(/?:~gb-][~gb]*[iso][gb]*", LOOSE, "the 8 in strap is 20 cm", _adds_nothing),
    _way(r"[,~gb]*w.*i[~gbl]*", LOOSE, "8 in, which on your ruler is the 20 cm mark", _adds_nothing),
)
"""Ways of joining two lengths, the first that fits before the others. ``L`` is any word of ``LINKS``."""


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


def told_elsewhere(reading: Reading, one: Measured, other: Measured) -> bool:
    """Whether the words between say that the length follows in the other system: ``and for my metric friends``."""
    between = reading.tokens.words[one.behind : min(other.first, one.behind + 12)]
    while between and between[-1] in HEDGES | _OF_READERS:
        between.pop()
    return (
        between[-1:] in ([word] for word in EQUALS | _CALLS) and not PLACES.isdisjoint(between) and "." not in between
    )


def _is_worked(reading: Reading, one: Measured) -> bool:
    """Whether a length is a part of a sum, ``half of 10 in``, and not only named, ``a seam of 5/8 in``."""
    first = max(0, one.first - 2)
    before = reading.tokens.words[first : one.first]
    if not before or before[-1] not in _OPERATORS:
        return False
    names = reading.tokens.kinds[first] is TokenKind.WORD and before[0] not in _SHARES
    return not (before[-1] == "of" and len(before) == 2 and names)
