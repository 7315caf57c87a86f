"""Numbers without a unit that talk makes lengths: said again, or parts and results of sums told in words.

``mine's thirty six``, ``we double that and get four and a half``, ``from 41 take away five inches``. Such a number
takes the unit of a length near it; where a sum names no unit at all (``a third of 27 is 9``) it is the author's.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise, zip_longest

from sitegen.prose.find.carried import with_carried_units
from sitegen.prose.find.measured import Measured, between, is_priced, says_money, word_at
from sitegen.prose.find.numbers import ARTICLES, STARTS, Form
from sitegen.prose.find.talk import with_lengths_of_talk
from sitegen.prose.find.tokens import TokenKind, Tokens
from sitegen.prose.measurement import Kind
from sitegen.prose.words import words
from sitegen.quantities import Unit

_NEAR = 30
"""Tokens between a length and a number that speaks of lengths too."""
_REACH = 45
"""Tokens: how far before a result the length may stand that gives it its unit."""
_FOR = ("for", "in", "on", "at")
_LISTED = 6
"""Tokens between two lengths of a list."""
_MOST_YARDS = 8
_EQUALS = words("gives makes making equals = that's it's is")
_CALLS = _EQUALS | words("mine ours them was gets get leaves left now at be to me you it then")
"""Words before a number that call it a length again."""
_GIVES = _EQUALS | words(
    "give giving get gets getting make made leaves leave leaving equal got have are comes come becomes work works total"
    " totals down up"
)
"""Words before a number that call it the result of a sum."""
_BETWEEN = words(
    "be would going gonna us me you we i with to at out it it's that's is a about just only exactly have got the"
)
"""What may stand between such a word and its result."""
_CLAUSE_ENDS = words("for so and but now which then that before after because or if you we i . , ; : ! ? )")
_FREE_BEHIND = _CLAUSE_ENDS | words("by at is in plus minus add take subtract put")
"""What may stand behind a number said again."""
_ENDS = _CLAUSE_ENDS | words(
    "left right total altogether in across wide long on when to as extra all around from here there's there ladies okay"
    " ok not this exactly even till until - – — …"
)
"""What may stand behind a part or a result; a thing would make it a count."""
_PLACES = words(
    "here there square finished each apiece all altogether total to from across down long wide for on off up over deep"
    " high inside around below above"
)
_DIMENSIONS = words("finished across square wide long altogether")
_FACTORS = words("times by x × *")
_SUM_WORDS = words(
    "plus minus add adding added subtract half halve double doubled twice times divide divided third quarter thirds"
    " quarters percent % off away less more take taking difference each multiply multiplied share split total"
    " altogether"
)
_LOSES = words("lose loses losing lost")
_SHARES_OF = words("half third quarter thirds quarters fifth fifths percent % twice double")
_SHARING = words("gather gathered gathers reduce reduced reduces shrink shrinks shrunk")
"""Words before a share: ``gathered to one half``."""
_TAKING = words("take takes took taking")
_TAKES = words("take minus plus subtract add less")
_DOZEN = 12
_OFFERS = (("or",), ("to",), ("plus",), ("and",), ("minus",))
_ANSWERS = words("is it's that's = makes gives equals")
_ADDS = words("plus minus +")
_WANTS = _ADDS | words("need needs add allow keep leave lose off another")
"""Words before what is wanted for a purpose: ``I need eight for the loop``."""
_PLUS = tuple((word,) for word in sorted(_ADDS))
_PRICED = 9
"""Tokens behind money in which a result is money too."""
_WHOLES = words("of the a an its your my this that")
"""Words behind a share that name its whole: ``plus half the depth``."""
_ADDED = 4
"""Numbers behind one in which a sum tells its unit: ``46 plus 1 plus 5-8, that's 47 5/8 inches``."""
_THINGS = words("times minute hour minutes seconds hours days weeks people students girls boys dollars sizes years")
_NO_THINGS = words("that's it's equals plus makes gives")
_PEOPLE = words(
    "kid kids kiddo guy boy boys girl girls son sons daughter daughters child children toddler baby he she he's"
    " age aged nephew niece grandson granddaughter twin twins sister brother turned turns turning birthday old grade"
)


def with_unsaid_units(tokens: Tokens, found: Sequence[Measured], author: Unit) -> list[Measured]:
    """The numbers, those that speak of lengths by the words around them given a unit."""
    talk = _is_talk(tokens)
    worded = talk or _writes_out_lengths(tokens, found)
    onwards = _said_again(tokens, found, talk, worded)
    mixed = [_spoken_mixed(tokens, one) for one in _said_again(tokens, onwards[::-1], talk, worded)[::-1]]
    again = _said_again(tokens, _said_again(tokens, mixed, talk, worded)[::-1], talk, worded)[::-1]
    summed = _in_sums(tokens, with_carried_units(tokens, again), author)
    if worded:
        return with_lengths_of_talk(tokens, summed, author, in_words=not talk)
    return _without_written_words(tokens, summed)


def _without_written_words(tokens: Tokens, found: Sequence[Measured]) -> list[Measured]:
    """The numbers of a text that writes its lengths in figures: what it writes out are counts: ``cut two, 5 wide``."""
    return [
        replace(one, kind=None, unit=None, carried=False, supplied=False)
        if one.spoken
        and one.form is Form.WHOLE
        and one.high is None
        and (one.carried or one.supplied)
        and not (other is not None and other.kind is Kind.LENGTH and between(tokens, one, other) in _OFFERS)
        and (one.value <= _DOZEN or "by" not in (word_at(tokens, one.first - 1), word_at(tokens, one.behind)))
        else one
        for one, other in zip_longest(found, found[1:])
    ]


def _writes_out_lengths(tokens: Tokens, found: Sequence[Measured]) -> bool:
    """Whether a text writes lengths in words, as what was dictated does; ``an inch and a half`` any text may write."""
    return any(
        one.spoken
        and one.value > 1
        and one.kind is Kind.LENGTH
        and not one.supplied
        and not one.carried
        and (one.form is Form.WHOLE or (one.form is Form.MIXED and tokens.words[one.first] not in ARTICLES))
        for one in found
    )


def _is_talk(tokens: Tokens) -> bool:
    """Whether a text is talk rather than print: captions have next to no stops or commas."""
    return tokens.kinds.count(TokenKind.WORD) > 40 * sum(tokens.words.count(mark) for mark in ".,;:")


def _open(one: Measured) -> bool:
    """Whether nothing is known yet of what a number measures."""
    return one.kind is None and not one.counted


def _in_sums(tokens: Tokens, numbers: Sequence[Measured], author: Unit) -> list[Measured]:
    """The numbers, those that words of a sum make its parts or its result given a unit."""
    found = list(numbers)
    for index, one in enumerate(found):
        if _open(one) and one.high is None and _is_operand(tokens, found, index):
            found[index] = _supplied(one, _unit_beside(tokens, found, index) or author)
    for index, one in enumerate(found):
        if _open(one) and one.high is None and _is_result(tokens, one):
            unit = _unit_before(found, index)
            if unit is not None and _sum_before(tokens, found, index):
                converted = one.value > _MOST_YARDS * found[index - 1].value
                found[index] = _supplied(one, _likely_unit(one, unit) if converted else unit)
    return found


def _supplied(one: Measured, unit: Unit | None) -> Measured:
    return replace(one, kind=Kind.LENGTH, unit=unit, supplied=True)


def _unit_beside(tokens: Tokens, found: Sequence[Measured], index: int) -> Unit | None:
    """The unit of the nearest length, of one before it rather than behind it, unless that is in another sentence."""
    before, behind = _unit_before(found, index), _unit_behind(found, index)
    if before is None or behind is None:
        return before or behind
    one = found[index]
    apart = "." in tokens.words[found[index - 1].behind : one.first]
    goes_on = any(
        other.kind is Kind.LENGTH and "." not in tokens.words[one.behind : other.first]
        for other in found[index + 1 : index + 1 + _ADDED]
    )
    return behind if apart and goes_on else before


def _unit_before(found: Sequence[Measured], index: int) -> Unit | None:
    """The unit of the nearest length before, if one is near."""
    for other in reversed(found[max(0, index - 6) : index]):
        if other.kind is Kind.LENGTH and found[index].first - other.behind <= _REACH:
            return other.unit
    return None


def _unit_behind(found: Sequence[Measured], index: int) -> Unit | None:
    for other in found[index + 1 : index + 1 + _ADDED]:
        if other.kind is Kind.LENGTH and other.first - found[index].behind <= _REACH:
            return other.unit
    return None


def _is_operand(tokens: Tokens, found: Sequence[Measured], index: int) -> bool:
    """Whether it is a part of a sum: ``from 41 take away five inches``, ``a third of 27 is``."""
    one = found[index]
    after = [*tokens.words[one.behind : one.behind + 3], "", "", ""]
    before = ["", "", *tokens.words[max(0, one.first - 3) : one.first]]
    follows = index + 1 < len(found) and found[index + 1].first - one.behind <= 5
    length_follows = follows and found[index + 1].kind is Kind.LENGTH
    if before[-1] == "from" and after[0] in _TAKES and length_follows:
        return True
    if _in_a_chain(tokens, found, index) or _goes_on(tokens, found, index):
        return True
    told = _unit_before(found, index) is not None
    taken = before[-1] in _TAKING and after[0] in ("off", "out", "away")
    of_it = one.form is Form.WHOLE and after[0] == "of" and after[1] in ("it", "that", "this")
    measured = before[-1] == "at" and one.form is Form.MIXED and after[0] != "times"
    if told and (taken or of_it or measured):
        return True
    if before[-1] in _WANTS and after[0] in ("for", "to") and told:
        return True
    if told and before[-1] in _LOSES | {"another"} and one.form is Form.FRACTION and after[0] != "of":
        return True
    ends = _ends_here(tokens, one)
    if before[-1] in ("plus", "minus") and index > 0 and found[index - 1].behind == one.first - 1 and told and ends:
        return found[index - 1].kind is Kind.LENGTH
    of_a_thing = one.form is Form.FRACTION and after[0] in _WHOLES  # “plus half the depth”
    if before[-1] in ("plus", "minus") and one.form in (Form.MIXED, Form.FRACTION) and told and not of_a_thing:
        return True
    if before[-1] in ("twice", "double") and after[0] in _ANSWERS and follows:
        return True
    share = before[-1] == "of" and before[-2] in _SHARES_OF
    answered = follows and after[0] in _ANSWERS
    return share and (answered or ends) and one.value > 2


def _in_a_chain(tokens: Tokens, found: Sequence[Measured], index: int) -> bool:
    """Whether it is added to its neighbours, and a length is told near: ``14 plus 6 plus 2, so 22 inches``."""
    near = found[max(0, index - 4) : index + 5]
    if not any(other.kind is Kind.LENGTH and not other.supplied for other in near):
        return False
    if not _ends_here(tokens, found[index]) and word_at(tokens, found[index].behind) not in _ADDS:
        return False  # “plus two 1/2 in seams”
    return any(between(tokens, *pair) in _PLUS for pair in pairwise(found[max(0, index - 1) : index + 2]))


def _goes_on(tokens: Tokens, found: Sequence[Measured], index: int) -> bool:
    """Whether it goes on a list of lengths, each for something: ``six inches for the hem and four for the pocket``."""
    if index == 0 or found[index - 1].kind is not Kind.LENGTH:
        return False
    one, other = found[index], found[index - 1]
    joined = word_at(tokens, one.first - 1) in ("and", "plus", ",") and one.first - other.behind <= _LISTED
    return joined and word_at(tokens, one.behind) == word_at(tokens, other.behind) in _FOR


def _is_result(tokens: Tokens, one: Measured) -> bool:
    """Whether words call it a result, and no thing behind it a count."""
    if not _ends_here(tokens, one) or (one.form is Form.DECIMAL and is_priced(tokens, one)):
        return False
    before = tokens.words[max(0, one.first - 4) : one.first]
    if before[-2:] == ["there", "are"] or says_money(tokens.words[max(0, one.first - _PRICED) : one.first]):
        return False
    if (before[-1:] == ["at"] and "cut" in before) or (before[-1:] in (["it"], ["them"]) and before[-2:-1] == ["cut"]):
        return True
    at = one.first - 1
    steps = 0
    while at >= 0 and steps < 4 and tokens.words[at] in _BETWEEN and tokens.words[at] not in _GIVES:
        at -= 1
        steps += 1
    return at >= 0 and tokens.words[at] in _GIVES


def _ends_here(tokens: Tokens, one: Measured) -> bool:
    if one.behind >= len(tokens):
        return True
    if one.form is Form.MIXED:
        return tokens.words[one.behind] not in _THINGS
    if one.form is Form.FRACTION and tokens.words[one.behind] in _WHOLES and not tokens.opens_line(one.behind):
        return False
    kind, word = tokens.kinds[one.behind], tokens.words[one.behind]
    if kind in (TokenKind.BREAK, TokenKind.NUMBER):
        return kind is TokenKind.BREAK
    return word in _ENDS or (one.form is not Form.WHOLE and word not in _THINGS and tokens.opens_line(one.behind))


def _sum_before(tokens: Tokens, found: Sequence[Measured], index: int) -> bool:
    """Whether words of a sum stand between the lengths before the result and it."""
    one = found[index]
    lengths = [other for other in found[max(0, index - 6) : index] if other.kind is Kind.LENGTH]
    near = [other for other in lengths if one.first - other.behind <= _REACH]
    if not near:
        return False
    first = max(0, near[0].first - 6)
    return not _SUM_WORDS.isdisjoint(tokens.words[first : one.first])


def _spoken_mixed(tokens: Tokens, one: Measured) -> Measured:
    """``two and a half`` with nothing behind it that it could count is inches."""
    if _open(one) and one.form is Form.MIXED and one.spoken and _mixed_alone(tokens, one):
        return _supplied(one, Unit.IN)
    return one


def _mixed_alone(tokens: Tokens, one: Measured) -> bool:
    ahead = word_at(tokens, one.first - 1)
    behind = tokens.words[one.behind : one.behind + 2] or ["."]
    if ahead in _FACTORS or _of_a_person(tokens, one) or (behind[0] in ("to", ":") and behind[1:] in (["1"], ["one"])):
        return False
    if behind[0] in _FREE_BEHIND or behind[0] in _PLACES or _at_line_end(tokens, one):
        return True
    return one.spoken and behind[0].isalpha() and not behind[0].endswith("s") and behind[0] not in _THINGS


def _of_a_person(tokens: Tokens, one: Measured) -> bool:
    """Whether the number may be an age: ``my kiddo is seven and a half``."""
    return any(word.removesuffix("'s") in _PEOPLE for word in tokens.words[max(0, one.first - 9) : one.first])


def _at_line_end(tokens: Tokens, one: Measured) -> bool:
    return one.behind >= len(tokens) or tokens.opens_line(one.behind)


def _said_again(tokens: Tokens, found: Sequence[Measured], talk: bool, worded: bool) -> list[Measured]:
    last: Measured | None = None
    told: list[Measured] = []
    for one in found:
        near = _open(one) and last is not None and _apart(one, last) <= _NEAR
        if near and last is not None and _same_again(tokens, one, told, talk, worded):
            told.append(replace(one, kind=Kind.LENGTH, unit=_likely_unit(one, last.unit), carried=True))
        else:
            told.append(one)
        if told[-1].kind is Kind.LENGTH:
            last = told[-1]
    return told


def _likely_unit(one: Measured, last: Unit | None) -> Unit | None:
    """The last unit said; but ``forty four wide`` behind yards of cloth is inches."""
    if last in (Unit.YD, Unit.FT) and one.value > _MOST_YARDS:
        return Unit.IN
    if last in (Unit.CM, Unit.MM) and one.form is Form.MIXED and not one.spoken:
        return Unit.IN  # “5/8 in, 1.5 cm, and a hem of 2 1/2”: nobody prints vulgar fractions of a centimetre
    return Unit.CM if last is Unit.M and one.value > _MOST_YARDS else last


def _apart(one: Measured, other: Measured) -> int:
    return max(one.first - other.behind, other.first - one.behind)


def _things_behind(tokens: Tokens, one: Measured) -> bool:
    word = word_at(tokens, one.behind)
    return one.value > 1 and len(word) > 3 and word.endswith("s") and word not in _NO_THINGS


def _was_said(one: Measured, before: Sequence[Measured]) -> bool:
    """Whether one of the last lengths has the same number."""
    return any(each.kind is Kind.LENGTH and each.value == one.value and each.high is None for each in before[-4:])


def _same_again(tokens: Tokens, one: Measured, before: Sequence[Measured], talk: bool, worded: bool) -> bool:
    behind = tokens.words[one.behind] if one.behind < len(tokens) else "."
    ahead = word_at(tokens, one.first - 1)
    if one.form is Form.MIXED:
        return (ahead == "times" and _was_said(one, before)) or _mixed_alone(tokens, one)
    line_end = _at_line_end(tokens, one)
    if behind == ":" and word_at(tokens, one.behind + 1) == "1":
        return False  # “a fullness of 2.5:1”
    free = line_end or behind in _FREE_BEHIND or (talk and behind in _DIMENSIONS)
    if one.first and (tokens.kinds[one.first - 1] is TokenKind.NUMBER or ahead in STARTS - ARTICLES):
        return False  # “thirteen fifty”
    if not free or ahead in _FACTORS or _of_a_person(tokens, one):
        return False
    called = ahead in _CALLS or (ahead.endswith("'s") and len(ahead) > 2)
    if one.form is Form.DECIMAL:
        return called and not is_priced(tokens, one)
    if one.form is Form.FRACTION:
        shared = not _SHARING.isdisjoint(tokens.words[max(0, one.first - 5) : one.first])
        return (
            (called or ahead == "plus")
            and not shared
            and (line_end or behind not in _WHOLES)
            and one.value.denominator in (2, 4)
        )
    if one.value < 2:
        return False
    if one.value >= 10 and _was_said(one, before):
        return True
    if not worded or not (talk or one.spoken):
        return False
    if any(_things_behind(tokens, each) for each in before[-2:] if each.kind is None):
        return False
    cutting = line_end and bool({"cut", "cutting", "to", "at"} & set(tokens.words[max(0, one.first - 4) : one.first]))
    likely = called or cutting or (talk and one.value >= 9)
    return one.value >= 3 and behind not in ("by", "times") and likely
