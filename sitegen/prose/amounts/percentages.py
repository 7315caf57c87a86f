"""So many percent off a price: what is taken off, and what is left to pay."""

from __future__ import annotations

import re
from collections.abc import Iterator

from sitegen.prose.amounts.amount import COUNT, MONEY, PERCENT
from sitegen.prose.amounts.claims import Claim, Paragraph
from sitegen.prose.amounts.vocabulary import AFTER_PERCENT, SAVED, SAVING, TAX

_PERCENT_OFF = re.compile(r"(?P<whole>[MU])[^.MUPXTG]{0,14}(?P<share>P)_{0,2}o[^.MUPXTG]{0,16}?(?P<r>[MUN])")
_LESS_PERCENT = re.compile(r"(?P<whole>[MU])_{0,3}-_{0,3}(?P<share>P)[_,]{0,3}[=is:]_?(?P<r>[MU])")
_SAVING = re.compile(r"(?P<whole>M)[^MUPXTG]{0,24}(?P<share>P)_{0,2}o,?_{1,3}(?P<r>M)")
_PERCENT_ON = re.compile(r"(?P<share>P)[_o]_{0,2}(?P<whole>[MU])[_,]{0,4}[=isp:][_=i]?(?P<r>[MU])")
_DISCOUNT_IS = re.compile(r"(?P<whole>[MU])[^.MUPXTG]{0,14}(?P<share>P)[^MUPXTG]{0,8}?o_?[i=:]_{0,2}(?P<r>[MU])")
_THEN_PAYS = re.compile(
    r"(?P<whole>[MU])[^.MUPXTG]{0,14}(?P<share>P)[^MUPXTG]{0,8}?o_?[i=:]_{0,2}[MU][^.MUPXTG]{0,8}p_?(?P<r>[MU])"
)
_THEY_PAY = re.compile(r"(?P<whole>M)_{0,3}\.[^.MUPXTGN]{0,8}(?P<share>P)_{0,2}o[^.MUPXTGN]{0,6}p_?(?P<r>[MU])")
_SHE_PAYS = re.compile(
    r"(?P<whole>M)[^.MUPXTG]{0,14}P_{0,2}o[^.MUPXTGN]{0,6}[=i]_?(?P<less>M)[^.MUPXTGN]{0,6}p_?(?P<r>[MN])"
)

_TOLD_FIRST = re.compile(
    r"(?P<share>P)(?P<off>_{0,2}o)?[^.MUPXTGN]{0,8}[.,]?[^.MUPXTGN]{0,8}(?P<whole>[MU])[^.MUPXTGN]{1,12}(?P<r>[MU])"
)
_TAX_OF = re.compile(r"(?P<share>P)[^.MUPXTGN]{1,6}(?P<whole>M)(?P<to>_{0,3}(?:[,:=is]{1,2}_?|v_?))(?P<r>M)")
_NEAR = 4
_TAX = re.compile(r"(?P<whole>M)\.?[^.MUPXTG]{0,8}(?P<share>P)[^.MUPXTGN]{0,8}(?:[,:=i]|=_)_?(?P<r>M)")


def percentages(told: Paragraph) -> Iterator[Claim]:
    """Every percentage of a paragraph that words name as taken off a price."""
    if PERCENT in told.symbols:
        yield from _percent_off(told)
        yield from _after_percent(told)
        yield from _told_first(told)
        yield from _taxes(told)


def _after_percent(told: Paragraph) -> Iterator[Claim]:
    """``$43 and 10 percent off, which is $4.30, so she pays 38.70``."""
    for found in _SHE_PAYS.finditer(told.symbols):
        result = found.start("r")
        if told.symbols[result] == MONEY or told.items[result].decimals == 2:
            whole, less = found.start("whole"), found.start("less")
            value = told.items[whole].value - told.items[less].value
            words = f"{told.said(told.items[whole])} − {told.said(told.items[less])}"
            yield Claim(result, (value,), words, "difference", (whole, less), firm=True)


def _percent_off(told: Paragraph) -> Iterator[Claim]:
    """``$17.50 a yard, 20% off, so $14 a yard``; ``10 percent off which is $4.30 so she pays 38.70``."""
    for form in (_PERCENT_OFF, _LESS_PERCENT, _PERCENT_ON, _DISCOUNT_IS, _THEN_PAYS, _THEY_PAY):
        for found in form.finditer(told.symbols):
            whole, at, result = (found.start(name) for name in ("whole", "share", "r"))
            if told.symbols[result] != COUNT and (form is not _PERCENT_OFF or told.tie_before(result)):
                yield _of_percent(told, whole, at, result, paid=form in (_THEN_PAYS, _THEY_PAY))
    for found in _SAVING.finditer(told.symbols):
        whole, at, result = (found.start(name) for name in ("whole", "share", "r"))
        if told.words_behind(result - 3, 1)[0] in SAVING:
            taken = told.items[whole].value * told.items[at].value
            words = f"{told.said(told.items[at])} of {told.said(told.items[whole])}"
            yield Claim(result, (taken,), words, "percent", (whole, at), firm=True)


def _told_first(told: Paragraph) -> Iterator[Claim]:
    """``Trade get 20% off. Cloth at £84.00 is then £67.20``: the percentage is told before the price."""
    for found in _TOLD_FIRST.finditer(told.symbols):
        share, whole, result = (found.start(name) for name in ("share", "whole", "r"))
        between = told.words_behind(whole, result - whole - 1)
        if not found["off"] and SAVED.isdisjoint(told.words_behind(share - 3, 2)):
            continue
        so = "s" in told.symbols[share:whole] and told.symbols[result - 1] == "i"
        if not so and AFTER_PERCENT.isdisjoint(between):
            continue
        left = told.items[whole].value * (1 - told.items[share].value)
        words = f"{told.said(told.items[whole])} less {told.said(told.items[share])}"
        yield Claim(result, (left,), words, "percent", (whole, share))


def _taxes(told: Paragraph) -> Iterator[Claim]:
    """``Subtotal $65. GST at 10 per cent on that: $6.50``."""
    for found in _TAX.finditer(told.symbols):
        whole, share, result = (found.start(name) for name in ("whole", "share", "r"))
        near = (*told.words_behind(whole, share - whole - 1), *told.words_behind(share, result - share - 1))
        if TAX.isdisjoint(near):
            continue
        price, rate = told.items[whole].value, told.items[share].value
        words = f"{told.said(told.items[share])} of {told.said(told.items[whole])}"
        yield Claim(result, (price * rate, price * (1 + rate)), words, "percent", (whole, share))
    for found in _TAX_OF.finditer(told.symbols):
        share, whole, result = (found.start(name) for name in ("share", "whole", "r"))
        if TAX.isdisjoint(told.words_behind(share - _NEAR - 1, _NEAR)):
            continue
        price, part = told.items[whole].value, told.items[whole].value * told.items[share].value
        words = f"{told.said(told.items[share])} of {told.said(told.items[whole])}"
        if found["to"][-1:] == "v" or "v_" in found["to"]:
            words = f"{told.said(told.items[whole])} less {told.said(told.items[share])}"
            yield Claim(result, (price - part,), words, "percent", (whole, share))
        else:
            yield Claim(result, (part, price + part), words, "percent", (whole, share))


def _of_percent(told: Paragraph, whole: int, at: int, result: int, *, paid: bool) -> Claim:
    """What is taken off or what is left, whichever lies nearer; what is ``paid`` is left."""
    share, price = told.items[at].value, told.items[whole].value
    said = told.items[result].value
    taken, left = price * share, price * (1 - share)
    if not paid and abs(said - taken) < abs(said - left):
        words = f"{told.said(told.items[at])} of {told.said(told.items[whole])}"
        return Claim(result, (taken, left), words, "percent", (whole, at), firm=True)
    words = f"{told.said(told.items[whole])} less {told.said(told.items[at])}"
    return Claim(result, (left, taken), words, "percent", (whole, at), firm=True)
