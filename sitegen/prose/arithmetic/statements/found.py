"""Finds the results of plain statements."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from fractions import Fraction

from sitegen.prose.arithmetic.statements.joined import MOST_TERMS, quantity_before, terms_to
from sitegen.prose.arithmetic.statements.judge import Stated, Statement, judged
from sitegen.prose.arithmetic.statements.terms import Term
from sitegen.prose.arithmetic.symbols import Item
from sitegen.prose.arithmetic.terms import Said

_LEAD = re.compile(r"[=vcqB]|[,&]_?&?_?u_?(?:e_?)?$|:[_u]{0,2}$|&_g")
"""Between the last term and the result: words that call it one."""
_IS = re.compile(r"[_apSegt]{0,6}k_?$")
_OR = re.compile(r"(?:^|,) ?(?:or|that is|i\.e\.|or just|in other words)$")
_SIDE_BY_SIDE = re.compile(r"\b(?:lay|put|place|set|sew|lie) .*\bnext to (?:each other|one another)\b")
_IN_ALL = re.compile(r"W?_?i?_?c")
_NO_RESULT = re.compile(r"_?[+\-/]|\*N|_?&_?[LN]|_?t_?L")
"""Behind a length that is a part of another sum."""
_OF_TWO = re.compile(r"W?_?[b*]_?L")
"""Behind the first of two sides."""
_SIDE = re.compile(r"L_?[b*]_?$")
_JOINED = re.compile(
    r"\b(?:(?<!the )(?<!for )(?<!a )join|join\w+|seamed|sewn|row|overlapp\w*|pieced|each \w+ after"
    r"|(?:sew|stitch)(?: [^ ]+){0,6} together)\b"
)
"""Pieces that are joined are shorter together, by seams that are counted in many ways."""
_TIMES = re.compile(r"[_,;&]{0,3}(?:\*(?P<count>N)|(?P<half>H)|D(?!_?[ap]))(?=[_,&kv]{0,6}[:=kq,])")
_BESIDE = 5
"""Items behind a result that tell what it is."""
_BEFORE = 4
"""Items before the first term that do."""


def stated_results(items: Sequence[Item], symbols: str, said: Said) -> Iterator[Stated]:
    """Every result of a plain statement."""
    for at, symbol in enumerate(symbols):
        if symbol == "L" and not items[at].times and (statement := _statement(items, symbols, at, said)):
            stated = judged(statement)
            if stated is not None:
                yield stated


def _statement(items: Sequence[Item], symbols: str, at: int, said: Said) -> Statement | None:
    """The statement whose result may stand at ``at``, where words call it one."""
    last, following = quantity_before(items, symbols, at, said), symbols[at + 1 : at + 1 + _BESIDE]
    if last is None or _NO_RESULT.match(following):
        return None
    *_, stop, words = symbols[last + 1 : at].rpartition(".")
    factor, lead = _factor_of(items, at, words)
    apart = stop and not re.match(r"[_:*]*[=cqu]", words)  # “42 cm plus 1 cm at each end. Each ribbon is 45 cm long”
    others = not set("NPRDH").isdisjoint(re.sub(r"N_?[ap]", "", lead))
    if apart or others or lead.startswith(")"):
        return None
    terms = terms_to(items, symbols, last, said)
    if len(terms) > MOST_TERMS or _is_of_a_rectangle(symbols, terms, following, lead):
        return None
    lead = _lead(items, symbols, at, terms, lead, said)
    behind = following.partition(".")[0]
    around = items[max(0, terms[0].at - _BEFORE) : at + 1 + len(behind)]
    if not lead or _JOINED.search(" ".join(said(item) for item in around).lower()):
        return None
    return Statement(items, symbols, said, at, tuple(terms), lead, factor)


def _factor_of(items: Sequence[Item], at: int, lead: str) -> tuple[Fraction, str]:
    """By what the whole sum is multiplied before the result, and the words behind that: ``41 + 46, times two: 174``."""
    found = _TIMES.match(lead)
    if found is None:
        return Fraction(1), lead
    rest = lead[found.end() :]
    if found["count"]:
        return items[at - len(lead) + found.start("count")].value, rest
    return Fraction(1, 2) if found["half"] else Fraction(2), rest


def _is_of_a_rectangle(symbols: str, terms: Sequence[Term], following: str, lead: str) -> bool:
    """Whether the first term or the result is a side of a rectangle, and no plain sum is told of it."""
    side = _SIDE.search(symbols[max(0, terms[0].at - _BEFORE) : terms[0].at]) is not None
    if side and not (len(terms) > 1 and terms[1].sign > 0):
        return True
    return _OF_TWO.match(following) is not None and not ("u" in lead and any(term.sign for term in terms[1:]))


def _lead(items: Sequence[Item], symbols: str, at: int, terms: Sequence[Term], lead: str, said: Said) -> str:
    """The symbols that call the length a result; nothing where none do."""
    if _OR.search(" ".join(said(item) for item in items[at - len(lead) : at]).lower()):
        return "="
    if _SIDE_BY_SIDE.search(" ".join(said(item) for item in items[at - len(lead) : at]).lower()):
        return f"{lead}c"
    if _IN_ALL.match(symbols[at + 1 : at + 1 + _BESIDE]):
        return f"{lead}c"
    sure = len(terms) > 1 and all(term.sign for term in terms[1:])
    if sure and not lead and items[terms[-1].at].times:
        return "="  # “with both seam allowances 121 cm”
    if _IS.fullmatch(lead) and (sure or _is_plain_list(symbols, terms)):
        return f"{lead}="
    return lead if _LEAD.search(lead) else ""


def _is_plain_list(symbols: str, terms: Sequence[Term]) -> bool:
    """Whether nothing but ``and`` stands between the terms: ``38 and 38 and 57``."""
    between = symbols[terms[0].at : terms[-1].at]
    return len(terms) > 1 and re.fullmatch(r"(?:L[&+]_?)+", between) is not None
