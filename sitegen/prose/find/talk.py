"""Lengths in talk that are said without a unit: ``so 81.5 one way``, ``leave a gap of 12``, ``half of 44``.

In captions a speaker names the unit once and then only says numbers. A bare number is read as a length where the words
before or behind it measure, add or repeat one, and where nothing near it makes it a count, a price, an age, a needle,
a setting, a time or a temperature. Where both are silent it stays a bare number.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from sitegen.prose.find.cued import cued, is_named, is_of_a_thing, is_said_again
from sitegen.prose.find.measured import Measured, between, word_at
from sitegen.prose.find.numbers import Form
from sitegen.prose.find.other_things import SIDES, is_something_else
from sitegen.prose.find.taken import is_taken_for_a_length
from sitegen.prose.find.tokens import TokenKind, Tokens
from sitegen.prose.measurement import Kind
from sitegen.prose.words import words
from sitegen.quantities import System, Unit

_NEAR = 60
"""Tokens between a length and a number that speaks of lengths too."""
_AMONG = 6
"""Numbers before and behind among which a length must be."""
_LONG_AGO = 20
"""Numbers before among which a large one may have been said as a length."""
_JUST_SAID = 3
_RANGES = words("from add adds sew goes go went gather gathered down divide take")
"""Words before two numbers by which they are no range: something is brought from the one to the other."""
_LARGE = 10
"""From here on a number said a second time is hardly another thing."""
_SIDES = SIDES | {"finished"}
_WAYS = (
    ("one", "way"), ("the", "other"), ("each", "side"), ("on", "each"), ("at", "either"), ("at", "each"),
    ("either", "side"), ("top", "and"), ("from", "the"), ("left", "over"), ("left", "for"), ("turned", "up"),
    ("turned", "twice"), ("left", "to"), ("on", "top"), ("in", "each"), ("each", "end"), ("in", "from"),
    ("smaller", "than"), ("on", "both"), ("on", "either"), ("gone", "so"), ("to", "wrap"), ("down", "from"),
    ("up", "from"),
)  # fmt: skip
"""Words behind a number that tell where or which way it is measured."""
_MEASURES = words(
    "measures measure measured measuring finish finishes overlap overlaps lose loses losing waste wastes add adds"
    " eats takes took used bought minus plus less gap trim trims shorten lengthen wants height drop cut"
    " cutting overhang turn"
)
"""Words shortly before a number that measure it."""
_LINKS = words(
    "a at to by of the it it's that that's is so be about roughly only just i i'm i've you you've we we've and then"
    " off another in on up down your my for extra them got goes there's was which want are come comes out have need"
    " needs total totals would with each these those he's she's from width"
)
"""Words that may stand between such a word and the number."""
_FREE_BEHIND = _SIDES | words(
    "for so and but now which then that before after because or if you we i at by is in plus minus add take subtract"
    " to from on left right more total altogether when okay ok not this till until all gone each apiece"
    " would be are gives"
    " makes it's that's less off as again overlap turned one top goes smaller here there it um uh lovely with both"
    " either leave leaves or over my . the she he they how what don't i'm i've we're you're let's put mark write pin"
    " stick got see once right more she's he's was becomes call up . , ; : ! ? ) thick laid folded"
    " fold cut press sew chalk divide split done perfect easy down"
)
"""What may stand behind a length without a unit; a thing would make it a count."""
_SIGNS = words("plus minus less and add is are over by =")
_SIGNS_OF_TWO = (("take", "off"), ("take", "away"), ("and", "add"), ("goes", "to"), ("up", "to"), ("and", "then"))
_BEHIND_AND = _SIDES | words("that's makes is gives and plus")
"""What stands behind a number that ``and`` adds to a length; else ``and`` begins another statement."""
_POINTING = words("the those that your my another this")
_BODY = words("waist bust hip hips chest neck inseam")
"""What a body is called by: ``a thirty one waist``, ``i'm a ninety two bust``."""
_FRONT_AND_BACK = words("front back")
_EDGES = words("side sides edge edges end ends")
_NO_STUFF = words(
    "you both people the a an them these those that this it us my your mine his her which what each every"
)
_RESULTS = words("so that's it's is there's need another got get leaves makes")


def with_lengths_of_talk(
    tokens: Tokens, numbers: Sequence[Measured], author: Unit, *, in_words: bool
) -> list[Measured]:
    """The numbers of a talk: those that can only be lengths in the author's unit, those that cannot be any bare again.

    ``in_words`` says that the text is one with stops, in which only a number in words may lack its unit. Takes
    time in proportion to the text.
    """
    found = list(numbers)
    for index, one in enumerate(found):
        if _unit_unsaid(one) and not _beside(found, index) and is_something_else(tokens, found, index):
            found[index] = replace(one, kind=None, unit=None, carried=False, supplied=False)
    systems = [one.unit.system for one in found if one.unit is not None and not _unit_unsaid(one)]
    if not systems:
        found = _with_named(tokens, found, author)
    if 2 * systems.count(author.system) > len(systems) > 0:
        found = [_in_unit_of(found, index, author) for index in range(len(found))]
    measures = systems or any(one.kind is Kind.LENGTH and one.form is not Form.FRACTION for one in found)
    bare = [
        index
        for index, one in enumerate(found)
        if (one.spoken or not in_words) and (measures or one.form is Form.FRACTION) and _may_be(tokens, found, index)
    ]
    for order in (bare, bare[::-1], bare):
        for index in order:
            if found[index].kind is None and any(_cues(tokens, found, index)):
                unit = _own_unit(found, index) or _unit_just_said(found, index) or author
                found[index] = replace(found[index], kind=Kind.LENGTH, unit=unit, supplied=True)
    return list(_in_ranges(tokens, found))


def _in_ranges(tokens: Tokens, found: Sequence[Measured]) -> Iterator[Measured]:
    """The numbers, two of them put together where words make them one length: ``a 34 to 36 waist``."""
    held: Measured | None = None
    for one in found:
        if held is not None and _are_one_range(tokens, held, one):
            yield replace(one, first=held.first, value=held.value, high=one.value)
            held = None
            continue
        if held is not None:
            yield held
        held = one
    if held is not None:
        yield held


def _are_one_range(tokens: Tokens, one: Measured, other: Measured) -> bool:
    if not _unit_unsaid(other) or one.form is not Form.WHOLE or other.form is not Form.WHOLE or one.counted:
        return False
    if one.kind is not None and not (_unit_unsaid(one) and one.unit is other.unit):
        return False
    rising = one.high is other.high is None and one.value < other.value <= 2 * one.value
    before = tokens.words[max(0, one.first - 6) : one.first]
    return rising and between(tokens, one, other) == ("to",) and _RANGES.isdisjoint(before)


def _with_named(tokens: Tokens, found: Sequence[Measured], author: Unit) -> list[Measured]:
    """The numbers of a talk that says no unit at all: those that words call the measure of something given one."""
    return [
        replace(one, kind=Kind.LENGTH, unit=author, supplied=True)
        if (is_of_a_thing(tokens, one) or (is_named(tokens, one) and _is_free_behind(tokens, one)))
        and _may_be(tokens, found, index)
        else one
        for index, one in enumerate(found)
    ]


def _unit_just_said(found: Sequence[Measured], index: int) -> Unit | None:
    """The unit said a word or two before: ``40 inches long and 16 deep``."""
    for other in found[max(0, index - 1) : index]:
        if (
            not _unit_unsaid(other)
            and found[index].first - other.behind <= _JUST_SAID
            and other.unit in (Unit.IN, Unit.CM)
        ):
            return other.unit
    return None


def _own_unit(found: Sequence[Measured], index: int) -> Unit | None:
    """The unit that the form of the number tells: inches have quarters, and of cloth that was told in metres or yards
    a decimal is left, or used: ``I bought three meters, the dress took 1.8``."""
    one = found[index]
    if one.form is Form.FRACTION:
        return Unit.IN
    lately = [other for other in found[max(0, index - _JUST_SAID) : index] if other.kind is Kind.LENGTH]
    bought = bool(lately) and lately[-1].unit in (Unit.M, Unit.YD) and one.value <= 2 * lately[-1].value
    return lately[-1].unit if bought and one.form is Form.DECIMAL else None


def _unit_unsaid(one: Measured) -> bool:
    return one.kind is Kind.LENGTH and (one.supplied or one.carried)


def _in_unit_of(found: Sequence[Measured], index: int, author: Unit) -> Measured:
    """The number, in the author's unit where it took that of a length told aside: ``that's about 71 inches``."""
    one = found[index]
    aside = one.unit is not None and (one.unit.system is not author.system or one.unit is Unit.MM)
    inches = (
        author.system is System.CENTIMETRES and one.value.denominator in (4, 8, 16) and one.form is not Form.DECIMAL
    )
    if not _unit_unsaid(one) or not aside or _beside(found, index) or inches or one.high is not None:
        return one
    return replace(one, unit=author)


def _beside(found: Sequence[Measured], index: int) -> bool:
    """Whether its unit is said right before or behind it: ``two or three millimetres``."""
    one = found[index]
    return any(
        other.unit is one.unit
        and not _unit_unsaid(other)
        and max(one.first - other.behind, other.first - one.behind) < 2
        for other in (*found[max(0, index - 1) : index], *found[index + 1 : index + 2])
    )


def _may_be(tokens: Tokens, found: Sequence[Measured], index: int) -> bool:
    """Whether nothing near the number makes it something else than a length."""
    one = found[index]
    if one.kind is not None or one.counted or one.high is not None or one.value <= 0:
        return False
    if one.form is Form.FRACTION and (one.value.denominator not in (2, 4, 8, 16) or one.behind == one.first + 1):
        return False
    if is_said_again(found, index, tokens.words[one.behind : one.behind + 2]):
        return True
    if word_at(tokens, one.first - 1) in ("a", "an") and one.form is Form.WHOLE and not is_of_a_thing(tokens, one):
        return False  # “back to about a three”
    if word_at(tokens, one.first - 1) == "times":
        return False  # “eight times five”: which of the two is the length is told by the text before
    if any(_touches(tokens, found, index)) or tokens.words[one.behind : one.behind + 2] == ["to", "be"]:
        return False
    return not is_something_else(tokens, found, index)


def _touches(tokens: Tokens, found: Sequence[Measured], index: int) -> Iterator[bool]:
    """Whether another bare number stands right beside: ``sixteen fifty``, ``a ninety fourteen``, ``2-8``."""
    one = found[index]
    yield word_at(tokens, one.first - 1) == "-" and tokens.touch(one.first)
    if index > 0:
        before = found[index - 1]
        yield before.behind == one.first and before.kind is None and before.value > 4
    if index + 1 < len(found):
        behind = found[index + 1]
        yield behind.first == one.behind and behind.kind is None and behind.value != 1


def _cues(tokens: Tokens, found: Sequence[Measured], index: int) -> Iterator[bool]:
    """What makes the number a length, one after the other."""
    one = found[index]
    near = _near(found, index)
    if not near:
        return
    before = ["", "", "", *tokens.words[max(0, one.first - 6) : one.first]]
    after = [*tokens.words[one.behind : one.behind + 3], "", ""]
    again = one.value >= 3 and any(other.value == one.value for other in near)
    if one.value >= _LARGE:
        again = again or any(
            other.value == one.value and other.kind is Kind.LENGTH for other in found[max(0, index - _LONG_AGO) : index]
        )
    yield again and one.value >= _LARGE and (after[0] in _EDGES or (after[0] == "s" and tokens.touch(one.behind)))
    large = one.value >= _LARGE and before[-1] in _RESULTS
    yield large and after[0] == "of" and after[1] not in _NO_STUFF and not after[1].endswith("s")
    yield one.value.denominator in (8, 16) and after[0] == "of" and after[1] not in _NO_STUFF | {"yard"}
    yield from cued(tokens, found, index)
    yield one.value >= _LARGE and after[0] in _BODY
    yield one.value >= _LARGE and before[-1] in _BODY and before[-2] in _FRONT_AND_BACK
    if not _is_free_behind(tokens, one):
        return
    yield after[0] in _SIDES and one.value >= 2 and before[-1] != "to"
    yield (after[0], after[1]) in _WAYS and one.value != 1
    yield again
    yield any(_joined(tokens, found, index))
    yield _measured(tokens, one)
    yield before[-2] in ("twice", "take", "trim", "goes") and before[-1] in ("that", "off", "to")
    yield (
        before[-1] == "at"
        and len(before[-2]) > 3
        and before[-2].endswith("s")
        and one.value >= 3
        and after[0] != "each"
    )
    yield before[-3] in ("cut", "cutting") and before[-2] in _POINTING and one.value >= 5
    yield before[-1] == "there's" and after[0] == "left" and one.form is Form.DECIMAL
    yield "half" in before[-4:-1] and "in" in before[-5:-2] and before[-1] in _RESULTS
    yield large and after[0] in ("each", "apiece") and one.value >= 20
    yield is_taken_for_a_length(tokens, found, index)


def _is_free_behind(tokens: Tokens, one: Measured) -> bool:
    behind = one.behind
    if behind >= len(tokens) or tokens.kinds[behind] is TokenKind.BREAK or tokens.words[behind] in _FREE_BEHIND:
        return True
    thing = tokens.words[behind : behind + 2]  # “two / seam allowances”
    counts = any(word.endswith("s") for word in thing)
    return tokens.opens_line(behind) and not counts and tokens.kinds[behind] is TokenKind.WORD


def _near(found: Sequence[Measured], index: int) -> list[Measured]:
    """The lengths near a number."""
    one = found[index]
    return [
        other
        for other in found[max(0, index - _AMONG) : index + _AMONG + 1]
        if other.kind is Kind.LENGTH and abs(one.first - other.first) <= _NEAR
    ]


def _joined(tokens: Tokens, found: Sequence[Measured], index: int) -> Iterator[bool]:
    """Whether it is added to a length right before or behind it."""
    one = found[index]
    if index > 0 and found[index - 1].kind is Kind.LENGTH:
        link = tokens.words[found[index - 1].behind : one.first][:4]
        yield _adds(link) and (link != ["and"] or word_at(tokens, one.behind) in _BEHIND_AND)
    if index + 1 < len(found) and found[index + 1].kind is Kind.LENGTH and one.value >= 3:
        yield _adds(tokens.words[one.behind : found[index + 1].first][:4])


def _adds(link: list[str]) -> bool:
    """Whether words between two numbers add one to the other: ``plus``, ``take away the``, ``less those``."""
    while link and link[-1] in _POINTING:
        link = link[:-1]
    return (len(link) == 1 and link[0] in _SIGNS) or tuple(link) in _SIGNS_OF_TWO


def _measured(tokens: Tokens, one: Measured) -> bool:
    """Whether a word shortly before measures it: ``cut it at 21``, ``a gap of 12``, ``so they overlap by 13``."""
    for at in range(one.first - 1, max(-1, one.first - 7), -1):
        word = tokens.words[at]
        if word in _MEASURES:
            small = one.form is Form.WHOLE and one.value <= 4 and at == one.first - 1
            return not (small and word in ("cut", "cutting"))  # “cut two and”
        if word not in _LINKS:
            return False
    return False
