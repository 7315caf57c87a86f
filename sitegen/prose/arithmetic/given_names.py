"""The names that a text gives to its lengths: ``finished width 52 cm``, ``a 28 in waist``, ``25 cm wide``."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from sitegen.prose.find import Measured, Reading, Tokens
from sitegen.prose.measurement import Kind
from sitegen.prose.nominal import CLOTHS, is_sold_so_wide
from sitegen.prose.words import words
from sitegen.quantities import UNIT_NAMES

_DIMENSION_OF = {
    "long": "length", "wide": "width", "deep": "depth", "high": "height", "tall": "height", "thick": "thickness",
}  # fmt: skip
MEASURES = words(
    "length width depth height thickness diameter radius circumference waist hip hips chest bust head neck neckline"
    " wrist ankle thigh inseam drop brim crown"
)
"""Names that may stand right beside their length: ``finished width 52 cm``, ``a 28 in waist``."""
DETERMINERS = words("the my your his her its our their")
_JOINING = (
    DETERMINERS
    | _DIMENSION_OF.keys()
    | words("a an this that and or but of to from for with in on at by as is are be was so then than when which if")
    | words("you i we each plus minus less half twice double times add take every all both any same it they one two no")
    | words("not about")
)
"""Words that are no part of a name."""
_NO_NAMES = (
    _JOINING
    | UNIT_NAMES.keys()
    | words(
        "seam seams allowance allowances turning turnings hem hems half total rest remainder other these those piece"
    )
    | words("pieces side sides edge edges end ends top bottom front back middle centre center line")
)
"""What no length is the name of: seams and hems are taken more than once, sides have none of their own."""
_SAYS = words("is was measures measured are of = : ( be to should must needs comes")
"""Between a name and its length."""
MEASURED = words("measurement measure")
"""Behind a name: ``your waist measurement``."""
_HEDGES = words("about around roughly approximately nearly almost ~ up")
SUMS = words("plus minus less + − × x twice double doubled half halve add adding subtract deduct times")
"""Before a name: words of a sum."""
SHARES = words("half quarter third thirds quarters fifth eighth twice times % percent")
"""Before ``of`` and a name."""
GO_ON = words("plus minus + − × x * times ÷ divided")
"""Behind a name: words of a sum."""
STOPS = words(". ; : ! ?")
ROUND = words("around round")
KINDS_OF_SIZE = words("finished cut")
_LONGEST_WAY = 4
"""Words between a name and its length."""
_SENTENCE = 14
"""Tokens before a length in which its owner is named."""


@dataclass(frozen=True, slots=True)
class Given:
    """A name with its length; None where the length is the first part of a sum, and nobody knows which one is meant."""

    noun: str
    quality: str
    """What kind of it: ``finished``, ``shoulder``; nothing for the plain name."""
    place: int
    length: Measured | None
    owners: frozenset[str]
    """The words of the sentence before, one of which may own the measure."""


def given_names(reading: Reading) -> tuple[dict[str, list[Given]], frozenset[int]]:
    """The lengths that a text gives, in order, by their names; and the tokens at which it names them so."""
    given: dict[str, list[Given]] = {}
    places: set[int] = set()
    number_at = {one.first: one for one in reading.numbers}
    for one in reading.numbers:
        if one.kind is Kind.LENGTH and one.unit is not None and not one.counted:
            for at, each in _names_of(reading.tokens, one, number_at):
                places.add(at)
                given.setdefault(each.noun, []).append(each)
    return given, frozenset(places)


def _names_of(tokens: Tokens, one: Measured, number_at: Mapping[int, Measured]) -> Iterator[tuple[int, Given]]:
    """The names that the text gives to a length, each with the token at which it stands."""
    said = tokens.words
    if one.first and said[one.first - 1] in _HEDGES:
        return
    behind = one.behind + (said[one.behind : one.behind + 1] == ["-"])
    following = tokens.word(behind)
    sum_begins = one.high is not None or bool(GO_ON.intersection(said[one.behind : one.behind + 1]))
    length = None if sum_begins else one
    dimension = _DIMENSION_OF.get(following)
    named_behind = dimension is not None or following in MEASURES or following in ROUND
    owners = _sentence_before(tokens, one.first) if named_behind else frozenset[str]()
    if dimension is not None and not _is_of_cloth(dimension, owners, one):
        quality = next((kind for kind in KINDS_OF_SIZE if any(word.startswith(kind) for word in owners)), "")
        yield behind, Given(dimension, quality, one.first, length, owners)
    elif following in MEASURES:
        yield behind, Given(following, quality_of(tokens, one.first), one.first, length, owners)
    if following in ROUND and tokens.word(behind + 1) in DETERMINERS and tokens.word(behind + 2):
        at = behind + 2  # “30 in around the mouth”
        yield at, Given(tokens.words[at], "", one.first, length, owners)
    at = one.first - 1
    while at >= max(0, one.first - _LONGEST_WAY) and said[at] in _SAYS:
        at -= 1
    says = at < one.first - 1
    if dimension is not None and not says and said[at : at + 1] == [","]:
        at -= 1
    at -= tokens.word(at) in MEASURED
    noun = tokens.word(at)
    told = says or noun in MEASURES or dimension is not None
    if not noun or not told or noun in _NO_NAMES:
        return
    at, noun = _owned(tokens, at, noun)
    if _is_a_term(tokens, at):
        return
    owners = owners if named_behind else _sentence_before(tokens, one.first)
    several = dimension is not None and noun not in MEASURES and _has_another(tokens, behind + 1, number_at)
    yield at, Given(noun, quality_of(tokens, at), one.first, None if several else length, owners)


def _owned(tokens: Tokens, at: int, noun: str) -> tuple[int, str]:
    """The measure of what is named: the length in ``the length of the cape is 75 cm``."""
    if tokens.words[max(0, at - 2) : at] in (["of", "the"], ["of", "your"], ["of", "my"]):
        measure = tokens.word(at - 3)
        if measure in MEASURES:
            return at - 3, measure
    return at, noun


def quality_of(tokens: Tokens, at: int) -> str:
    """The word before a name that says which of its kind it is."""
    before = tokens.word(at - 1)
    return "" if before in _JOINING or before.endswith("'s") else before


def _is_a_term(tokens: Tokens, at: int) -> bool:
    """Whether what is given is no length of the name but a sum with it: ``half the height is 4 cm``."""
    first = first_of(tokens, at)
    before = tokens.words[first - 1] if first else ""
    return before in SUMS | SHARES or before in ("from", "to", "off", "than") or (before == "of" and first < at)


def first_of(tokens: Tokens, at: int) -> int:
    """The first token of a name, its determiner included."""
    first = at - (1 if quality_of(tokens, at) and tokens.word(at - 2) in DETERMINERS else 0)
    return first - 1 if tokens.word(first - 1) in DETERMINERS else first


def _has_another(tokens: Tokens, at: int, number_at: Mapping[int, Measured]) -> bool:
    """Whether another measure of the same thing follows: ``35 cm long, 25 cm wide``."""
    return any(place in number_at for place in range(at, at + 3)) and tokens.words[at : at + 1] in (
        [","], ["and"], ["by"], ["x"], ["×"],
    )  # fmt: skip


def _is_of_cloth(dimension: str, owners: frozenset[str], one: Measured) -> bool:
    """Whether it is the width in which cloth is sold."""
    return dimension == "width" and is_sold_so_wide(one) and not CLOTHS.isdisjoint(owners)


def _sentence_before(tokens: Tokens, at: int) -> frozenset[str]:
    """The words of the sentence before a place."""
    first = at
    while first > max(0, at - _SENTENCE) and tokens.words[first - 1] not in STOPS and not tokens.opens_line(first):
        first -= 1
    return frozenset(tokens.words[first:at])
