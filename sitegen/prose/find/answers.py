"""Numbers without a unit that a sum told in words makes lengths: ``we double that and get four and a half``.

Such a number takes the unit of the length before it; where a sum names no unit at all (``a third of 27 is 9``) it is
the author's.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise

from sitegen.prose.find.measured import Measured, between, is_priced, word_at
from sitegen.prose.find.numbers import Form
from sitegen.prose.find.tokens import Token, TokenKind
from sitegen.prose.measurement import Kind
from sitegen.prose.words import words
from sitegen.quantities import Unit

_REACH = 45
"""Tokens: how far before a result the length may stand that gives it its unit."""
_GIVES = words(
    "gives give giving get gets makes make made leaves leave leaving equals equal = that's thats it's got have is are"
    " comes come becomes work works total totals down up"
)
_BETWEEN = words("us me you we i with to at out it it's that's is a about just only exactly have got the")
"""What may stand between ``gives`` and its result."""
_ENDS = words(
    "left for so and but right total altogether in across wide long on now then which when to as i we you that because"
    " extra all around from here there's there ladies okay ok if or before after not this exactly even till until total"
    " . , ; : ! ? ) - – — …"
)
"""What may stand behind a result; a thing would make it a count."""
_SUM_WORDS = words(
    "plus minus add adding added subtract half halve double doubled twice times divide divided third quarter"
    " thirds quarters percent % off away less more take taking difference each multiply multiplied share split"
    " total altogether"
)
_SHARES_OF = words("half third quarter thirds quarters fifth fifths percent % twice double")
_TAKING = words("take takes took taking")
_ADDS = words("plus minus +")
_PLUS = (("plus",), ("minus",), ("+",))
_TAKES = words("take minus plus subtract add less")
_THINGS = words("times minute hour minutes seconds hours days weeks people students girls boys dollars sizes years")


def with_answers(tokens: Sequence[Token], numbers: Sequence[Measured], author: Unit) -> list[Measured]:
    """The numbers, those that words of a sum make its parts or its result given a unit."""
    found = list(numbers)
    for index, one in enumerate(found):
        if one.kind is None and not one.counted and one.high is None and _is_operand(tokens, found, index):
            found[index] = _length(one, _unit_before(found, index) or _unit_behind(found, index) or author)
    for index, one in enumerate(found):
        if one.kind is None and not one.counted and one.high is None and _is_result(tokens, one):
            unit = _unit_before(found, index)
            if unit is not None and _sum_before(tokens, found, index):
                found[index] = _length(one, unit)
    return found


def _length(one: Measured, unit: Unit) -> Measured:
    return replace(one, kind=Kind.LENGTH, unit=unit, supplied=True)


def _unit_before(found: Sequence[Measured], index: int) -> Unit | None:
    """The unit of the nearest length before, if one is near."""
    for other in reversed(found[max(0, index - 6) : index]):
        if other.kind is Kind.LENGTH and found[index].first - other.behind <= _REACH:
            return other.unit
    return None


def _unit_behind(found: Sequence[Measured], index: int) -> Unit | None:
    for other in found[index + 1 : index + 3]:
        if other.kind is Kind.LENGTH and other.first - found[index].behind <= _REACH:
            return other.unit
    return None


def _is_operand(tokens: Sequence[Token], found: Sequence[Measured], index: int) -> bool:
    """Whether it is a part of a sum: ``from 41 take away five inches``, ``a third of 27 is``."""
    one = found[index]
    after = [token.word for token in tokens[one.behind : one.behind + 3]] + ["", "", ""]
    before = ["", "", *(token.word for token in tokens[max(0, one.first - 3) : one.first])]
    follows = index + 1 < len(found) and found[index + 1].first - one.behind <= 5
    length_follows = follows and found[index + 1].kind is Kind.LENGTH
    if before[-1] == "from" and after[0] in _TAKES and length_follows:
        return True
    if _in_a_chain(tokens, found, index):
        return True
    taken = before[-1] in _TAKING and after[0] in ("off", "out", "away")
    if (taken or (before[-1] == "at" and one.form is Form.MIXED)) and _unit_before(found, index) is not None:
        return True
    told = index > 0 and _unit_before(found, index) is not None
    if before[-1] in ("add", "plus") and after[0] in ("for", "to") and told:
        return True
    ends = _ends_here(tokens, one)
    if before[-1] in ("plus", "minus") and index > 0 and found[index - 1].behind == one.first - 1 and told and ends:
        return found[index - 1].kind is Kind.LENGTH
    if before[-1] in ("plus", "minus") and one.form in (Form.MIXED, Form.FRACTION) and _unit_before(found, index):
        return True
    if before[-1] in ("twice", "double") and _answered(after[0]) and follows:
        return True
    share = before[-1] == "of" and before[-2] in _SHARES_OF
    answered = follows and _answered(after[0])
    return share and (answered or _ends_here(tokens, one)) and one.value > 2


def _in_a_chain(tokens: Sequence[Token], found: Sequence[Measured], index: int) -> bool:
    """Whether it is added to its neighbours, and a length is told near: ``14 plus 6 plus 2, so 22 inches``."""
    near = found[max(0, index - 4) : index + 5]
    if not any(other.kind is Kind.LENGTH and not other.supplied for other in near):
        return False
    if not _ends_here(tokens, found[index]) and word_at(tokens, found[index].behind) not in _ADDS:
        return False  # “plus two 1/2 in seams”
    return any(between(tokens, *pair) in _PLUS for pair in pairwise(found[max(0, index - 1) : index + 2]))


def _answered(word: str) -> bool:
    return word in ("is", "it's", "that's", "=", "makes", "gives", "equals")


def _is_result(tokens: Sequence[Token], one: Measured) -> bool:
    """Whether words call it a result, and no thing behind it a count."""
    if not _ends_here(tokens, one) or (one.form is Form.DECIMAL and is_priced(tokens, one)):
        return False
    before = [token.word for token in tokens[max(0, one.first - 4) : one.first]]
    if (before[-1:] == ["at"] and "cut" in before) or (before[-1:] in (["it"], ["them"]) and before[-2:-1] == ["cut"]):
        return True
    at = one.first - 1
    steps = 0
    while at >= 0 and steps < 4 and tokens[at].word in _BETWEEN and tokens[at].word not in _GIVES:
        at -= 1
        steps += 1
    return at >= 0 and tokens[at].word in _GIVES


def _ends_here(tokens: Sequence[Token], one: Measured) -> bool:
    if one.behind >= len(tokens):
        return True
    if one.form is Form.MIXED:
        return tokens[one.behind].word not in _THINGS
    token = tokens[one.behind]
    if token.kind in (TokenKind.BREAK, TokenKind.NUMBER):
        return token.kind is TokenKind.BREAK
    return token.word in _ENDS or (token.opens_line and token.word not in _THINGS and one.form is not Form.WHOLE)


def _sum_before(tokens: Sequence[Token], found: Sequence[Measured], index: int) -> bool:
    """Whether words of a sum stand between the lengths before the result and it."""
    one = found[index]
    lengths = [other for other in found[max(0, index - 6) : index] if other.kind is Kind.LENGTH]
    near = [other for other in lengths if one.first - other.behind <= _REACH]
    if not near:
        return False
    first = max(0, near[0].first - 6)
    return any(token.word in _SUM_WORDS for token in tokens[first : one.first])
