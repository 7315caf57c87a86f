"""The seam allowance that a text gives once and names from then on: ``18 in plus a seam on both sides``."""

from __future__ import annotations

from fractions import Fraction

from sitegen.prose.find import Measured, Reading, TokenKind, Tokens
from sitegen.prose.measurement import Kind
from sitegen.prose.words import words
from sitegen.quantities import Unit

_SEAMS = words("seam seams turning turnings")
_ALLOWANCES = words("allowance allowances")
_NAMES = _SEAMS | _ALLOWANCES | {"one"}
"""With one of these begins whatever names an allowance."""
_SAYS = words("is are of at : = ( throughout everywhere a an all use using")
_LONGEST_WAY = 4
"""Words between ``seam allowance`` and its length."""
_NEAR = 12
"""Tokens before ``one`` among which an allowance is named."""
_LONGEST_BRACKET = 6
"""Tokens of the same length in another unit, in brackets."""
_WIDEST = {unit: 40 / unit.mm for unit in Unit}
"""In each unit: no seam allowance of a beginner's text is wider than 40 mm (common practice, no source)."""
_ONE = words("a an one another")
_TWO = words("two 2 both")
_MORE = words("more further extra")
_BOTH = words("the your those")
_LINKS = words("plus add adding and with minus less + & adds allow allowing")
_SIDES = words("on at each both either above top all")
_SIGNS = words("plus minus less + − &")
_STOPS = words(". ; : ! ? ) • –")
_SETTLED = words("of is are ( =")
"""Words behind an allowance that go on to give its length there."""
_BEFORE_A_LENGTH = words(": ,")
"""The same, if a number is near."""


def seam_allowance(reading: Reading) -> Measured | None:
    """The one seam allowance that a text gives; None where it gives none, or several."""
    found: dict[Fraction, Measured] = {}
    for one in reading.numbers:
        if one.kind is not Kind.LENGTH or one.unit is None or one.high is not None:
            continue
        named = one.value <= _WIDEST[one.unit]
        if named and (_named_behind(reading.tokens, one) or _named_before(reading.tokens, one)):
            found.setdefault(one.value * one.unit.mm, one)
    return next(iter(found.values())) if len(found) == 1 else None


def _named_behind(tokens: Tokens, one: Measured) -> bool:
    """``a 1/2 in seam allowance``, ``half inch seams``, ``1 cm (3/8 in) seams``, ``half an inch of seam allowance``."""
    at = one.behind + (tokens.words[one.behind : one.behind + 1] == ["-"])
    if tokens.words[at : at + 1] == ["("] and ")" in tokens.words[at : at + _LONGEST_BRACKET]:
        at = tokens.words.index(")", at) + 1
    return tokens.word(at + (tokens.word(at) == "of")) in _SEAMS


def _named_before(tokens: Tokens, one: Measured) -> bool:
    """``Seam allowance everywhere 1.5 cm``, ``Seams are 1/2 in throughout``, ``I sew with 1/2 in``."""
    if tokens.words[max(0, one.first - 2) : one.first] in (["sew", "with"], ["sew", "at"]):
        return True
    if tokens.words[one.behind : one.behind + 1] in (["intervals"], ["from"]):
        return False
    at = one.first - 1
    while at >= max(0, one.first - _LONGEST_WAY) and tokens.words[at] in _SAYS | {"*"}:
        at -= 1
    word, before = tokens.word(at), tokens.word(at - 1)
    if word in _ALLOWANCES:
        return before in _SEAMS | {""}
    return word == "seams" and (at + 1 < one.first or before == "all" or _begins(tokens, at))


def _begins(tokens: Tokens, at: int) -> bool:
    """Whether a sentence or a line begins with a token: ``Seams 1 cm.``"""
    return at == 0 or tokens.words[at - 1] in _STOPS or tokens.opens_line(at)


def _is_one_of_them(tokens: Tokens, at: int) -> bool:
    """Whether ``one`` is a seam allowance that the sentence before gives: ``Seams are 1 cm. Add one at each end``."""
    if tokens.word(at) != "one" or tokens.words[max(0, at - 1) : at] not in (["add"], ["adding"], ["allow"]):
        return False
    near = tokens.words[max(0, at - _NEAR) : at - 1]
    return tokens.word(at + 1) in ("at", "on") and not (_SEAMS | _ALLOWANCES).isdisjoint(near)


def _is_settled(tokens: Tokens, behind: int) -> bool:
    """Whether what stands behind an allowance gives its length there: ``an allowance of 1 cm``, ``one seam, 1 cm``."""
    following = frozenset(tokens.words[behind : behind + 1])
    if not following.isdisjoint(_BEFORE_A_LENGTH):
        return TokenKind.NUMBER in tokens.kinds[behind + 1 : behind + 3]
    return not following.isdisjoint(_SETTLED)


def named_allowance(tokens: Tokens, at: int) -> tuple[int, int] | None:
    """The token behind ``seam allowance`` at ``at``, where the words give no length, and how often it is taken.

    Only where words add it, take it off, or lay it at the ends: ``plus a seam``, ``and the two seam allowances``.
    """
    if tokens.words[at] not in _NAMES:
        return None
    if _is_one_of_them(tokens, at):
        return at + 1, 1
    last, behind = tokens.word(at), at + 1
    at -= tokens.word(at - 1) in _MORE
    article = tokens.words[at - 1] if at else ""
    if last in _SEAMS and tokens.word(behind) in _ALLOWANCES:
        last, behind = tokens.word(behind), behind + 1
    following = tokens.words[behind : behind + 1]
    if last not in _SEAMS | _ALLOWANCES or _is_settled(tokens, behind):
        return None
    laid = bool(following) and following[0] in _SIDES
    ahead = tokens.words[at - 2] if at > 1 else ""
    if ahead in _LINKS and at > 2 and tokens.words[at - 3] == "before":
        return None  # “doubled before adding the seams: 23 cm”
    if article in _ONE and ahead == "for" and at > 3 and tokens.kinds[at - 4] is TokenKind.NUMBER:
        return None  # “5/8 in for a seam” is all of it
    if last.endswith("s"):
        if article in _TWO:
            before = tokens.words[at - 3] if at > 2 else ""
            return (behind, 1) if ahead in _LINKS or (ahead in _BOTH and before in _LINKS) else None
        return (behind, 1 if laid else 2) if article in _BOTH and ahead in _LINKS else None
    if last == "seam" and article == "the" and ahead in _SIGNS:
        return behind, 1  # “less the seam it's 5 in”
    alone = laid and article in _LINKS
    return (behind, 1) if alone or (article in _ONE and (ahead in _LINKS or laid)) else None
