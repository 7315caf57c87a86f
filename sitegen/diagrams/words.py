"""Lengths as they are set in print: true fractions, and spaces at which no line may break."""

from __future__ import annotations

import re
from fractions import Fraction
from functools import lru_cache

from sitegen.quantities import FRACTION_SIGNS, RULER, Length, Rounding, System, show_to_buy, show_told_to_buy

NO_BREAK = "\u00a0"
_FRACTION = re.compile(r"(?:(?P<whole>\d+) )?(?P<top>\d+)/(?P<bottom>\d+)")
_SIGNS = {value: sign for sign, value in FRACTION_SIGNS.items()}
_RAISED = str.maketrans("0123456789", "⁰¹²³⁴⁵⁶⁷⁸⁹")
_LOWERED = str.maketrans("0123456789", "₀₁₂₃₄₅₆₇₈₉")


def plain_both_units(value: Length, first: System, rounding: Rounding = Rounding.NEAREST) -> str:
    """A length in both systems as it is typed: ``17 3/4 in (45 cm)``."""
    return in_both_units(value, value.fine, first, rounding)


@lru_cache(maxsize=1024)
def in_both_units(value: Length, _fine: bool, first: System, rounding: Rounding) -> str:
    """The words of a length, kept since a picture says each twice or more. Lengths that are the same, and of which one
    is shown to the millimetre, are kept apart."""
    return RULER.show_both(value, first, rounding)


def one_unit(value: Length, system: System) -> str:
    """A length in one system with true fractions: ``17¾ in``."""
    return _set(RULER.show(value, system))


def both_units(value: Length, first: System, rounding: Rounding = Rounding.NEAREST) -> str:
    """A length in both systems with true fractions: ``17¾ in (45 cm)``. Lines may break before the bracket only."""
    one, other = plain_both_units(value, first, rounding).split(" (")
    return f"{_set(one)} ({_set(other)}"


def in_the_shop(value: Length, first: System, *, told: bool = False) -> str:
    """A length of cloth as a shop sells it, rounded up: ``1⅜ yd``; what an author tells to buy as it is ``told``."""
    return _set(show_told_to_buy(value, first) if told else show_to_buy(value, first))


def capital(text: str) -> str:
    """The words with a capital at their start."""
    return text[:1].upper() + text[1:]


def _set(text: str) -> str:
    return _FRACTION.sub(_fraction, text).replace(" ", NO_BREAK)


def _fraction(found: re.Match[str]) -> str:
    """The sign for a fraction, or one made of raised and lowered figures, which every font sets as a fraction."""
    whole, top, bottom = found["whole"] or "", found["top"], found["bottom"]
    sign = _SIGNS.get(Fraction(int(top), int(bottom)))
    return whole + (sign or f"{top.translate(_RAISED)}⁄{bottom.translate(_LOWERED)}")
