"""Bare numbers in talk that single words beside them make lengths: ``a thirty one waist``, ``trim a quarter off``."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from sitegen.prose.find.measured import Measured, word_at
from sitegen.prose.find.numbers import Form
from sitegen.prose.find.tokens import Tokens
from sitegen.prose.measurement import Kind
from sitegen.prose.words import words
from sitegen.quantities import Unit

_LATELY = 3
"""Numbers before among which a length that is multiplied or divided was said."""
_SMALLEST_GIRTH = 12
_GIRTHS = words("waist hip hips bust chest head inseam neckline collar neck")
_MEASURED = _GIRTHS | words(
    "edge width length height drop opening rise hem circumference depth curtain bag bed panel skirt band strip sleeve"
    " bodice yoke thing measurement quilt rail window pole"
)
"""What has a length, so that ``the edge is forty`` needs no unit."""
_IS = words("is was are measures")
_JUST = words("about just only roughly around exactly like nearly")
_USING = words("used took takes take uses using needs")
_CUTTING = words("trim trimming trimmed lose losing lost off away under")
_REACH_OF_CUTTING = 4
_PLACES = words(
    "top bottom hem neck back front side sides ends end waist seam seams overlap heading casing fold shoulder knots"
    " tail loop hook join knot turn turning facing left right"
)
_LARGEST_DIAL = 20
_THINGS = words("insert pad zip zipper cushion square border opening circle hoop ring pillow strip ruler")
_REACH_OF_COUNTS = 12
_COUNTED = words("blocks rows squares patches hexagons across down set layout grid")
_BEFORE_SIDES = words("at is it them cut it's measures finished about")
_SUMMING = words("that's altogether got plus then is")
_MOST_OF_A_KIND = 5
PIECES = words(
    "strip strips piece pieces panel panels length lengths square squares seam seams gap gaps hem band turn turning"
    " turnings edge drop width depth edges ends pocket ease allowance overlap cuff casing"
)
"""Words before ``of`` and a length: ``three strips of forty``."""
_AT = words("at up for on in down")
_DETERMINERS = words("the each your my both either")
_RULER = (2, 4, 8, 16)


def cued(tokens: Tokens, found: Sequence[Measured], index: int) -> Iterator[bool]:
    """What makes a number a length whatever stands behind it, among other lengths."""
    one = found[index]
    before = ["", "", "", "", *tokens.words[max(0, one.first - 6) : one.first]]
    after = [*tokens.words[one.behind : one.behind + 3], "", "", ""]
    if one.form is Form.FRACTION:
        yield _is_a_cut(one, before, after) or _sums_up(found, index, before, after)
        return
    yield is_said_again(found, index, after[:2])
    yield is_of_a_thing(tokens, one)
    yield _is_side(tokens, found, index)
    yield before[-1] == "of" and before[-2] in PIECES and one.value >= _MOST_OF_A_KIND and not after[0].endswith("s")
    yield before[-1] in _USING and one.form is Form.DECIMAL and is_of_cloth(found, index)
    yield _goes_on_places(tokens, found, index, before, after)
    yield (
        before[-1] == "and" and after[0] == "of" and after[1] in ("the", "everything") and _shared(tokens, found, index)
    )
    yield before[-1] in ("add", "adds", "adding") and after[0] == "more" and one.value >= 2
    yield after[:2] in (["down", "to"], ["up", "to"]) and _is_length(found, index + 1) and one.value >= 2
    yield after[0] == "becomes" and one.value >= 2
    yield before[-1] == "of" and before[-2] == "instead" and one.value >= 2 and after[0] in ("you", "it", "that", "so")
    yield after[:2] in (["laid", "flat"], ["folded", "in"], ["down", "from"], ["up", "top"]) and one.value >= 2


def is_a_girth(tokens: Tokens, one: Measured) -> bool:
    """Whether it tells how large a person is: ``a thirty one waist``, ``chest forty eight``, ``38 in the bust``."""
    if one.form is Form.FRACTION or one.value < _SMALLEST_GIRTH:
        return False
    behind = tokens.words[one.behind : one.behind + 3]
    if behind[:1] and behind[0] in _GIRTHS and word_at(tokens, one.behind + 1) not in ("darts", "ties", "sizes"):
        return word_at(tokens, one.first - 1) in ("a", "an", "i'm", "the", "her", "his", "my", "to")
    if behind[:2] == ["in", "the"] and behind[2:] and behind[2] in _GIRTHS:
        return True
    return word_at(tokens, one.first - 1) in _GIRTHS


def is_of_a_thing(tokens: Tokens, one: Measured) -> bool:
    """Whether it is the size of a thing that is named behind: ``a thirty one waist``, ``a fifty five insert``."""
    if is_a_girth(tokens, one):
        return True
    article = word_at(tokens, one.first - 1) in ("a", "an")
    return article and one.value > _LARGEST_DIAL and word_at(tokens, one.behind) in _THINGS


def _is_side(tokens: Tokens, found: Sequence[Measured], index: int) -> bool:
    """Whether it is one of two sides: ``it finishes at two by four``."""
    one = found[index]
    lately = tokens.words[max(0, one.first - _REACH_OF_COUNTS) : one.first]
    if one.form is Form.FRACTION or one.value < 2 or not _COUNTED.isdisjoint(lately):
        return False
    if word_at(tokens, one.first - 1) == "by" and index and found[index - 1].behind == one.first - 1:
        return found[index - 1].kind is Kind.LENGTH and not any(word.startswith("divid") for word in lately)
    follows = index + 1 < len(found) and found[index + 1].first == one.behind + 1
    if word_at(tokens, one.behind) != "by" or not follows or word_at(tokens, found[index + 1].behind).endswith("s"):
        return False
    return word_at(tokens, one.first - 1) in _BEFORE_SIDES


def _is_length(found: Sequence[Measured], index: int) -> bool:
    return index < len(found) and found[index].kind is Kind.LENGTH


def _sums_up(found: Sequence[Measured], index: int, before: list[str], after: list[str]) -> bool:
    """Whether a fraction is put together with others of an inch: ``3-8 and 3-8 so that's three quarters total``."""
    one = found[index]
    if one.behind == one.first + 1 or before[-1] not in _SUMMING or one.value.denominator not in _RULER:
        return False
    if after[0] == "of" and after[1] in _DETERMINERS | {"this", "that", "it"}:
        return False
    return any(
        other.kind is Kind.LENGTH and other.unit is Unit.IN and other.form is Form.FRACTION
        for other in found[max(0, index - _LATELY) : index]
    ) or (before[-1] == "plus" and one.value.denominator > 4)


def is_of_cloth(found: Sequence[Measured], index: int) -> bool:
    """Whether metres or yards of cloth were told just before."""
    return any(
        other.kind is Kind.LENGTH and other.unit in (Unit.M, Unit.YD)
        for other in found[max(0, index - _LATELY) : index]
    )


def is_named(tokens: Tokens, one: Measured) -> bool:
    """Whether it is said to be the measure of something: ``the edge is forty``, ``the width's 14``."""
    at = one.first - 1
    while at > 0 and tokens.words[at] in _JUST:
        at -= 1
    word = word_at(tokens, at)
    if word == "at" and not {"cut", "cutting"}.isdisjoint(tokens.words[max(0, at - 2) : at]):
        return one.form is not Form.FRACTION and one.value >= 2
    noun = word_at(tokens, at - 1) if word in _IS else word[:-2] if word.endswith("'s") else ""
    stitch = word_at(tokens, at - 2 if word in _IS else at - 1) == "stitch"
    return noun in _MEASURED and not stitch and one.form is not Form.FRACTION and one.value >= 2


def is_said_again(found: Sequence[Measured], index: int, after: list[str]) -> bool:
    """Whether a length said just before is now multiplied or divided: ``so eighteen times four``."""
    one = found[index]
    if not (after[:1] == ["times"] or after[:2] == ["divided", "by"]) or one.value < 3:
        return False
    return any(
        other.kind is Kind.LENGTH and other.value == one.value for other in found[max(0, index - _LATELY) : index]
    )


def _is_a_cut(one: Measured, before: list[str], after: list[str]) -> bool:
    """Whether a fraction of an inch is cut off or lost, or written as only rulers are read: ``1-4 from the first``."""
    if one.value.denominator not in _RULER or after[0] == "of":
        return False
    if not one.spoken:
        return one.value.denominator > 2 or after[:2] == ["on", "this"]
    if one.behind == one.first + 1:
        return False
    lately = before[-_REACH_OF_CUTTING:]
    return not _CUTTING.isdisjoint(lately) or (after[0] == "off" and "trim" in lately)


def _goes_on_places(tokens: Tokens, found: Sequence[Measured], index: int, before: list[str], after: list[str]) -> bool:
    """Whether it is one of several lengths, each at its place: ``three at the top three at the bottom``."""
    if after[0] not in _AT or after[1] not in _DETERMINERS or after[2] not in _PLACES:
        return False
    if before[-1] in ("adding", "add"):
        return True
    if index == 0 or found[index - 1].kind is not Kind.LENGTH:
        return before[-2:] == ["go", "in"]
    link = tokens.words[found[index - 1].behind : found[index].first]
    return len(link) <= 4 and link[:1] != [] and link[0] in _AT


def _shared(tokens: Tokens, found: Sequence[Measured], index: int) -> bool:
    """Whether the length before was of something too: ``22 inches of grey and 44 of everything else``."""
    if index == 0 or found[index - 1].kind is not Kind.LENGTH or found[index].value < _SMALLEST_GIRTH:
        return False
    return word_at(tokens, found[index - 1].behind) == "of"
