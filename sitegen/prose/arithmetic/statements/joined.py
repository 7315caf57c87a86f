"""The terms of a statement, sought backwards from the last one as long as plain words join them."""

from __future__ import annotations

import re
from collections.abc import Sequence
from enum import Enum

from sitegen.prose.arithmetic.statements.terms import Term, counts_before, how_often, own_sign
from sitegen.prose.arithmetic.symbols import Item
from sitegen.prose.arithmetic.terms import Said

MOST_TERMS = 6
_LONGEST = 40
"""Items before a term in which another is sought."""
_FARTHEST = 8
"""Tokens between two lengths of one list."""
_OTHERS = frozenset("NP/*hQydzElmX~=vq\n")
"""What may not stand between two terms."""
_LIST = re.compile(r"(?P<sign>[AT])_?(?:L[^L.;:]{0,6}[&,][^L.;:]{0,4})+$")
_REMARK = re.compile(r"(?<=_)\([^()LN.]*\)(?=,)")
"""Words in brackets without any number: ``4 in for the depth (half of it lands on each side), add a seam``."""
_BESIDE_EACH_OTHER = re.compile(r"^(?:side by side|(?:end|edge|side) to (?:end|edge|side)|next to)")
_WITH = re.compile(r"\bwith(?: both| the| the two| both the)?$")
_PLUS, _MINUS = frozenset("+AB>"), frozenset("-T<m")


class _Link(Enum):
    """How a length is joined to the one before it."""

    PLUS = 1
    MINUS = -1
    LISTED = 0
    AGAIN = 2
    """The same length told in another unit."""


def quantity_before(items: Sequence[Item], symbols: str, at: int, said: Said) -> int | None:
    """The length before an item, or a bare number that a sum takes for one."""
    for place in range(at - 1, max(-1, at - _LONGEST), -1):
        if symbols[place] == "L" or (symbols[place] == "N" and _is_a_term(items, symbols, place, said)):
            return place
        if symbols[place] in "X~\n":
            return None
    return None


def _is_a_term(items: Sequence[Item], symbols: str, at: int, said: Said) -> bool:
    """Whether a bare number is added or has something added to it: ``15, plus 2 for the base``."""
    if re.match(r"N,?_?[+A]", symbols[at : at + 4]):
        return True
    alone = symbols[at + 1 : at + 2] in tuple(",.;:&+=kq") or said(items[at + 1]).lower().startswith("for ")
    return re.search(r"[+&][_o]{0,3}$", symbols[max(0, at - 4) : at]) is not None and alone


def terms_to(items: Sequence[Item], symbols: str, last: int, said: Said) -> list[Term]:
    """The terms up to the last one, in order."""
    terms: list[Term] = []
    at, post = last, 0
    while len(terms) <= MOST_TERMS:
        before = quantity_before(items, symbols, at, said)
        link, ahead = _link(items, symbols, before, at, said) if before is not None else (None, 0)
        often = how_often(items, symbols, at, said)
        if before is None or link is None:
            terms.append(Term(at, post or own_sign(symbols, at), often))
            break
        if link is _Link.AGAIN:
            at = before
            continue
        if link is _Link.LISTED and terms and ";" in symbols[before:at] and ";" not in symbols[at:last]:
            terms.append(Term(at, own_sign(symbols, at), often))  # “four at 24 in; 110 in and 96 in, 206 in together”
            break
        terms.append(Term(at, post or link.value, often))
        if ahead and set(",;&.").isdisjoint(symbols[before:at]):  # “add 1 cm to the 70 cm” is all of a sum
            return [*_list_to(items, symbols, before, ahead, said), *terms[::-1]]
        at, post = before, ahead
    return terms[::-1]


def _list_to(items: Sequence[Item], symbols: str, last: int, sign: int, said: Said) -> list[Term]:
    """What is added to a length behind it, or taken off: the list that ends in ``last``."""
    terms = [Term(last, sign, how_often(items, symbols, last, said))]
    while not own_sign(symbols, terms[0].at) and len(terms) < MOST_TERMS:
        before = symbols.rfind("L", max(0, terms[0].at - _LONGEST), terms[0].at)
        if before < 0:
            break
        terms.insert(0, Term(before, sign, how_often(items, symbols, before, said)))
    return terms


def _link(items: Sequence[Item], symbols: str, before: int, at: int, said: Said) -> tuple[_Link | None, int]:
    """How two lengths are joined, None where something else stands between them; and the sign behind the first."""
    gap = _REMARK.sub(lambda remark: "_" * len(remark.group()), symbols[before + 1 : at])
    counted = counts_before(gap, len(gap))
    gap = gap.removesuffix(counted)
    if items[before].value == items[at].value and items[before].unit is not items[at].unit and "." not in gap:
        return _Link.AGAIN, 0
    gap = _without_side_by_side(items, gap, before, said)
    if "." in gap:
        tail = gap.rpartition(".")[2]
        smaller = items[at].value < items[before].value
        brought = items[at].times > 0 and re.match(r"_?S?_?B", symbols[at + 1 : at + 5]) is not None
        added = smaller and gap.count(".") == 1 and (brought or re.fullmatch(r"_?q?_?[A+][_apS]*", tail) is not None)
        return (_Link.PLUS, 0) if added else (None, 0)
    for place, symbol in enumerate(gap, before + 1):
        if symbol in "RHD" and not _describes(symbols, place):
            return None, 0
        if symbol == "c" and not said(items[place + 1]).lower().startswith("with"):
            return None, 0
    gap = gap.replace("c", "+")  # together with
    if re.fullmatch(r"[^q]*q_?o_?", gap) and not counted:
        return (_Link.LISTED, 0) if "," in gap else (None, 0)  # “3 cm, so of the 24 cm there remain”
    if not _OTHERS.isdisjoint(gap):
        return None, 0
    words = " ".join(said(item) for item in items[before + 1 : at]).lower()
    if gap.endswith(("b", "b_")) and "overlap" in words:
        return (_Link.PLUS if items[before].times else _Link.MINUS), 0  # “once around the mouth and overlaps by 3 cm”
    return _by_words(items, symbols, (before, at), gap, words, said)


def _without_side_by_side(items: Sequence[Item], gap: str, before: int, said: Said) -> str:
    """The gap without what tells how things lie that one length measures: ``both sleeves side by side 19 in``."""
    found = re.search(r"(?:N_?)?c_?$", gap)
    if found is None or not _BESIDE_EACH_OTHER.match(said(items[before + 1 + gap.rindex("c")]).lower()):
        return gap
    return gap[: found.start()] + "_" * len(found.group())


def _by_words(
    items: Sequence[Item], symbols: str, places: tuple[int, int], gap: str, words: str, said: Said
) -> tuple[_Link | None, int]:
    """The link by the words between two lengths, behind a comma or ``and`` those of the second."""
    before, at = places
    pre, *rest = re.split(r"[,;&]", gap, maxsplit=1)
    post = "".join(rest) if rest else pre
    own = 0 if not rest else -1 if set("T<") & set(pre) else 1 if ">" in pre else 0
    if re.fullmatch(r"_?<_?", gap):
        return _Link.PLUS, -1  # “3 cm shorter than the 205 cm”
    if not _MINUS.isdisjoint(post):
        return (_Link.MINUS if set("+AB").isdisjoint(post) else None), own
    if not _PLUS.isdisjoint(post):
        return _Link.PLUS, own
    if rest:
        if items[at].times and _WITH.search(words):
            return _Link.PLUS, own  # “118 cm wide at the bottom; with both seam allowances 121 cm”
        at_ends = words.endswith("with") and how_often(items, symbols, at, said)[0] > 1
        far = items[at].first - items[before].behind > _FARTHEST
        if far or not set("uWg").isdisjoint(_without_across(gap, words)):
            return None, own
        return (_Link.PLUS if items[at].times or at_ends else _Link.LISTED), own
    if re.fullmatch(r"_k_?", gap) and re.search(r"k_?$", symbols[max(0, before - 3) : before]):
        return _Link.LISTED, own  # “front yoke is 10 in back yoke is 11 in”
    added = own_sign(symbols, before) or _sign_of_the_list(symbols, before)
    joined = re.fullmatch(r"[_apSE]*[otf]_?", gap)
    return (_Link.LISTED, added) if added and joined else (None, 0)  # “allow 1 cm at either end of the 70 cm”


def _without_across(gap: str, words: str) -> str:
    """The gap without ``across`` right behind the first length: ``14 in across, panniers 9 in``."""
    return gap[1:] if gap.startswith("W,") and words.startswith("across ,") else gap


def _sign_of_the_list(symbols: str, at: int) -> int:
    """The sign of the list that a length ends: ``add 1/2 in for the seam and 3 in for a hem to the 18 in``."""
    found = _LIST.search(symbols[max(0, at - _LONGEST) : at])
    return 0 if found is None else 1 if found["sign"] == "A" else -1


def _describes(symbols: str, at: int) -> bool:
    """Whether a half or a double only tells what a length is for: ``2 in for half the bottom``."""
    before = symbols[max(0, at - 3) : at]
    behind = re.match(r".[_apW]*(?:[,;&.+:=]|$)", symbols[at : at + 6])
    return re.search(r"L[_aof]{1,2}$", before) is not None and behind is not None
