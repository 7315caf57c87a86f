"""The forms in which people write sums, as patterns of symbols.

Each form names its result ``r``. What a form takes for the parts of a sum may not be them: where only soft words
tie parts and result together, a result far from what the parts make is taken to be something else.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from enum import Enum

from sitegen.prose.arithmetic import workers
from sitegen.prose.arithmetic.terms import COUNTED, DOUBLED, SHARED, TERM
from sitegen.prose.arithmetic.workers import Worker


class Tie(Enum):
    """How surely the words tie a result to its parts, and so how far a wrong result may lie from the right one."""

    STRONG = "strong"
    CLOSE = "close"
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
_END = r"(?=[_apenShwi,uWctofT]{0,4}(?:[.);\n]|$))"
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
    _form("sum", rf"{_CHAIN},_?(?:w_?)?{_R}(?!\*){_END}", workers.chain, one_of="+-ATB"),
    # add 1 in to 16 in for 17 in
    _form("sum", rf"A_?(?P<b>L)[_paofi]{{0,3}}(?P<s>S?)t?_?(?:o_?)?(?P<a>L){_EQ}{_R}", workers.added, needs="A"),
    # 17 in: 16 in plus 1 in
    _form("sum", rf"{_R}[_apoc]{{0,3}}(?:[:(=k,][_kw=]{{0,3}}){_CHAIN}{_END}", workers.chain, one_of="+-ATB"),
    # take 1 in from 20 in and 19 in is left
    _form("difference", rf"T_?(?P<b>L)[_pao]{{0,3}}f_?(?P<a>L){_EQ}{_R}", workers.difference, needs="T"),
    _form(
        "difference", rf"T_?(?P<b>L)[_pao]{{0,3}}f_?(?P<a>L)[_,&]{{0,3}}{_R}_?k?_?[=v]", workers.difference, needs="T"
    ),
    _form("difference", rf"d_?(?P<a>L)_?&_?(?P<b>L){_EQ}{_R}", workers.difference, needs="d"),
    # 2 in longer than 20 in is 22 in; 22 in, 2 in longer than 20 in
    _form("difference", rf"(?P<b>L)_?[<>]_?(?P<a>L){_EQ}{_R}", workers.added, one_of="<>"),
    _form("difference", rf"{_R}_?(?:[,:(k]|,_?k)_?(?P<b>L)_?[<>]_?(?P<a>L){_END}", workers.added, one_of="<>"),
    # lengthen the 20 in sleeve by 2 in to 22 in; by 2 in, from 20 in to 22 in
    _form("difference", rf"[lmAT][_ap]{{0,3}}(?P<a>L)_?b_?(?P<b>L)[_,]{{0,2}}[tkq=:][_kuq]{{0,3}}{_R}", workers.added),
    _form("difference", rf"b_?{_R}[_,]{{0,2}}f_?(?P<a>L)_?t_?(?P<b>L)", workers.difference),
    _form("difference", rf"f_?(?P<a>L)_?t_?(?P<b>L)[_,&.]{{1,3}}[kq=:AlmTb][_kbuq,]{{0,3}}{_R}", workers.difference),
    _form(
        "difference",
        rf"(?P<a>L)[^L.\n]{{0,7}}[.]?[^L.\n]{{0,6}}y[^L.\n]{{0,4}}(?P<b>L)(?!W?\._?k)[^L\n]{{0,4}}[qkAlmTb=:][_,kbuqAlmT&]{{0,3}}{_R}",
        workers.difference,
        needs="y",
    ),
    # front 20 in and back 21 in make 41 in together
    _form(
        "sum",
        rf"(?P<chain>{_ONE}(?:[_,apefotiuW]{{0,5}}?(?:&|,)[_,w]{{0,2}}{_ONE}){{1,7}})[_,ape:]{{0,3}}(?:=|&?_?(?:=|kt)|i?_?c)[_tcokaiq,:]{{0,4}}{_R}",
        workers.listed,
        Tie.STRONG,
    ),
    _form(
        "sum",
        rf"(?P<chain>{_ONE}(?:[_,apefotiuW]{{0,5}}?(?:&|,)[_,w]{{0,2}}{_ONE}){{1,7}})[_ape]{{0,3}}[,:k.q][_q,k]{{0,2}}{_R}_?i?_?c",
        workers.listed,
    ),
    # crown 62 cm, bow 28 cm, tails 36 cm: 126 cm
    _form(
        "sum",
        rf"(?P<chain>{_ONE}(?:[_ape]{{0,3}},_?{_ONE}){{1,7}})[_ape]{{0,3}}:_?{_R}(?=[_apeW]{{0,3}}(?:[.);\n]|$))",
        workers.listed,
        Tie.CLOSE,
    ),
    # a depth of 3/4 in, being 1/2 in of elastic, 1/8 in of room and 1/8 in to turn under
    _form(
        "sum",
        rf"{_R}[_apo]{{0,2}},?[k:(]_?(?P<chain>{_ONE}(?:[_,apefotiuW]{{0,5}}?(?:&|,)[_,w]{{0,2}}{_ONE}){{1,7}}){_END}",
        workers.listed,
    ),
    # 80% of 20 in is 16 in; twice 3/8 in is 3/4 in; 4 × 5 in = 20 in
    _form("worked", rf"{_WORKED}{_STRONG}{_R}", workers.term, Tie.STRONG, one_of="PRD*"),
    _form("worked", rf"{_WORKED}k{_R}", workers.term, Tie.STRONG, one_of="PRD*"),
    _form("worked", rf"{_WORKED}(?!_?[+\-ATB]){_EQ}{_R}", workers.term, one_of="PRD*"),
    _form("worked", rf"{_WORKED}_?[,:]_?{_R}{_END}", workers.term, one_of="PRD*"),
    # on a 20 in neckline 15% is 3 in
    _form("percent", rf"(?P<a>L)[_,q]{{0,3}}(?P<n>P)[k=]_?{_R}", workers.percentage, Tie.STRONG, needs="P"),
    # 16 in is 80% of 20 in
    _form("worked", rf"{_R}_?(?:[,:(]_?(?:_?k_?)?|k_?){_WORKED}{_END}", workers.term, one_of="PRD*"),
    # two 3/8 in seams make 3/4 in; four strips of 5 in are 20 in in all
    _form(
        "product", rf"(?P<term>{COUNTED})(?:[_ape,]{{0,3}}(?:=|_?i?_?c)[_tcokiq,:]{{0,3}}){_R}", workers.term, needs="N"
    ),
    # 8 students at 1/2 yd each need 4 yd
    _form(
        "class total",
        rf"(?P<n>N)[_wafeut,ik]{{0,5}}(?P<a>L)[_o]{{0,3}}e[_,&:;]{{0,4}}(?:[=kcqu:]|,)[_okticuq=,]{{0,4}}{_R}",
        workers.product,
        needs="Ne",
    ),
    _form(
        "class total",
        rf"(?P<a>L)[_o]{{0,3}}e[_f,]{{0,4}}(?P<n>N)_?[,&:]?_?(?:[=kcqu:])[_okticuq=,]{{0,4}}{_R}",
        workers.product,
        needs="Ne",
    ),
    _form("class total", rf"e_?o?_?(?P<n>N)[_u]{{1,3}}(?P<a>L){_EQ}{_R}", workers.product, needs="Ne"),
    # 20 in divided by 4 is 5 in; 20 in in quarters gives 5 in each
    _form(
        "division",
        rf"[/]_?(?P<a>L)[_]{{0,2}}[bi]?_?(?P<n>N)[_n,&t:]{{0,4}}[=kqet,:uA]?[_ekqu=,n]{{0,3}}{_R}",
        workers.quotient,
        needs="/N",
    ),
    _form(
        "division",
        rf"(?P<a>L)[_,k&t]{{0,4}}/[_bi]{{0,3}}(?P<n>N)[_n,&]{{0,3}}[=kqet,:u][_ekqu=,n]{{0,3}}{_R}",
        workers.quotient,
        needs="/N",
    ),
    _form("division", rf"(?P<a>L)_?i_?(?P<n>N)[_n,]{{0,3}}[=kqe:][_ekqu=,n]{{0,3}}{_R}", workers.quotient, needs="N"),
    _form("division", rf"(?P<a>L)_?i_?(?P<n>N)_?n_?o_?{_R}", workers.quotient, needs="Nn"),
    _form("division", rf"/[_]?(?P<a>L)[_]{{0,2}}[bi]_?(?P<n>N)_?n_?o_?{_R}", workers.quotient, needs="/N"),
    _form("division", rf"(?P<a>L):(?P<n>N)={_R}", workers.quotient, Tie.STRONG, needs="N="),
    # eyelets over 56 cm, eight gaps of 7 cm; 54 in wide, into two halves of 27 in
    _form("division", r"(?P<a>L)[^L~X\n]{0,24}(?P<n>N)_?n{0,2}_?o_?(?P<r>L)", workers.equal_parts, needs="N"),
    # 38 in of your 44 in width, leaving 6 in
    _form("difference", rf"(?P<b>L)[_o]{{1,3}}(?P<a>L)[W_]{{0,2}},?_?&?_?v_?{_R}", workers.difference, needs="v"),
    # six times ninety-two is 552 cm
    _form("product", rf"(?P<a>N)\*(?P<n>N)[_n]?[=k]_?{_R}", workers.bare_product, Tie.STRONG, needs="N*"),
    # 24 ÷ 4 = 6 inches
    _form("division", rf"(?P<a>N)/_?(?P<n>N)={_R}", workers.bare_quotient, Tie.STRONG, needs="N/="),
    _form("halving", rf"H_?(?P<a>L)[_,&tq=:k]{{1,4}}{_R}", workers.quotient, needs="H"),
    _form("halving", rf"(?P<a>L)_?H_?[=kq:,][_kqu=]{{0,2}}{_R}", workers.quotient, needs="H"),
)
"""Tried in this order at each place; the first that fits a result speaks for it."""
