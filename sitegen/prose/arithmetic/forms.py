"""The forms in which people write sums, as patterns of symbols.

Each form names its result ``r``. What a form takes for the parts of a sum may not be them: where only soft words
tie parts and result together, a result far from what the parts make is taken to be something else.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from enum import Enum

from sitegen.prose.arithmetic import workers
from sitegen.prose.arithmetic.terms import DOUBLED, SHARED, TERM
from sitegen.prose.arithmetic.workers import Worker


class Tie(Enum):
    """How surely the words tie a result to its parts, and so how far a wrong result may lie from the right one."""

    STRONG = "strong"
    SOFT = "soft"


@dataclass(frozen=True, slots=True)
class Form:
    """One way to write a sum."""

    kind: str
    pattern: re.Pattern[str]
    work: Worker
    tie: Tie = Tie.SOFT
    needs: frozenset[str] = frozenset()
    """Symbols that all must be there for the form to match, to look nowhere else for it."""
    one_of: frozenset[str] = frozenset()
    """Symbols of which one must be there."""

    def may_match(self, present: frozenset[str]) -> bool:
        """Whether a text with these symbols has what the form needs."""
        return self.needs <= present and (not self.one_of or not self.one_of.isdisjoint(present))


_OP = r"[_,;&ofawutW)]{0,6}[+\-ATB][_,topwf]{0,3}"
_EQ = r"[_,pao&)tieW]{0,3}(?:[=kqucv:]|\((?!L\)))[_tocokq=:eau,&iw]{0,5}?"
"""Anything that may stand between the parts and their result, with at least one word that ties them."""
_STRONG = r"[_,pao&)tieW]{0,3}(?:[=v]|kt)[_tocikq=:ea,u]{0,4}?"
_ONE = rf"(?>{TERM})"
"""One term, taken whole: no part of it is given back, so that no text takes more than linear time."""
_CHAIN = rf"(?P<chain>{_ONE}(?:{_OP}{_ONE}){{1,7}})"


def _form(kind: str, pattern: str, work: Worker, tie: Tie = Tie.SOFT, needs: str = "", one_of: str = "") -> Form:
    return Form(kind, re.compile(pattern), work, tie, frozenset(needs), frozenset(one_of))


_WORKED = rf"(?P<term>{SHARED}|{DOUBLED}|L\*N|N\*L)"
_R = r"(?P<r>L)"
FORMS: tuple[Form, ...] = (
    # 16 in plus two 1/2 in seam allowances makes 17 in
    _form("sum", rf"{_CHAIN}{_STRONG}{_R}(?!\*)", workers.chain, Tie.STRONG, one_of="+-ATB"),
    _form("sum", rf"{_CHAIN}{_EQ}{_R}(?!\*)", workers.chain, one_of="+-ATB"),
    # front 20 in and back 21 in make 41 in together
    _form(
        "sum",
        rf"(?P<chain>{_ONE}(?:[_,apefotiuW]{{0,5}}?(?:&|,)[_,w]{{0,2}}{_ONE}){{1,7}})[_,ape:]{{0,3}}(?:=|&?_?(?:=|kt)|i?_?c)[_tcokaiq,:]{{0,4}}{_R}",
        workers.listed,
        Tie.STRONG,
    ),
    # trim it from 44 in to 41 in, taking off 3 in
    _form("difference", rf"f_?(?P<a>L)_?t_?(?P<b>L)[_,&.]{{1,3}}[kq=:AlmTb][_kbuq,]{{0,3}}{_R}", workers.difference),
    # 38 in of your 44 in width, leaving 6 in
    _form("difference", rf"(?P<b>L)[_o]{{1,3}}(?P<a>L)[W_]{{0,2}},?_?&?_?v_?{_R}", workers.difference, needs="v"),
    # 80% of 20 in is 16 in; twice 3/8 in is 3/4 in; 4 × 5 in = 20 in
    _form("worked", rf"{_WORKED}{_STRONG}{_R}", workers.term, Tie.STRONG, one_of="PRD*"),
    _form("worked", rf"{_WORKED}k{_R}", workers.term, Tie.STRONG, one_of="PRD*"),
    _form("worked", rf"{_WORKED}(?!_?[+\-ATB]){_EQ}{_R}", workers.term, one_of="PRD*"),
    # six times ninety-two is 552 cm
    _form("product", rf"(?P<a>N)\*(?P<n>N)[_n]?[=k]_?{_R}", workers.bare_product, Tie.STRONG, needs="N*"),
    # 8 students at 1/2 yd each need 4 yd
    _form(
        "class total",
        rf"(?P<n>N)[_wafeut,ik]{{0,5}}(?P<a>L)[_o]{{0,3}}e[_,&:;]{{0,4}}(?:[=kcqu:]|,)[_okticuq=,]{{0,4}}{_R}",
        workers.product,
        needs="Ne",
    ),
    # 20 in divided by 4 is 5 in
    _form(
        "division",
        rf"(?P<a>L)[_,k&t]{{0,4}}/[_bi]{{0,3}}(?P<n>N)[_n,&]{{0,3}}[=kqet,:u][_ekqu=,n]{{0,3}}{_R}",
        workers.quotient,
        needs="/N",
    ),
    # eyelets over 56 cm, eight gaps of 7 cm; 54 in wide, into two halves of 27 in
    _form("division", r"(?P<a>L)[^L~X\n]{0,24}(?P<n>N)_?n{0,2}_?o_?(?P<r>L)", workers.equal_parts, needs="N"),
    # 24 ÷ 4 = 6 inches
    _form("division", rf"(?P<a>N)/_?b?_?(?P<n>N)[=k]_?{_R}", workers.bare_quotient, Tie.STRONG, needs="N/"),
)
"""Tried in this order at each place; the first that fits a result speaks for it."""
