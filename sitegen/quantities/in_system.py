"""What somebody typed, in the system of units that a reader chose."""

from __future__ import annotations

import re

from sitegen.quantities.length import System
from sitegen.quantities.number import NotUnderstood
from sitegen.quantities.parse import Typed, parse_length
from sitegen.quantities.ruler import RULER, Rounding

_DIRECTION = re.compile(r"(\s+(?:wide|long|thick|across))\Z")


def in_system(text: str, system: System, *, enough: bool = False) -> str:
    """A typed length in one system: as it was typed where it was typed in it, else on a mark of the ruler.

    What must be ``enough``, as the amount of a supply, is rounded up, never down. A range and what is no length, such
    as the size of a needle, stay as they were typed.
    """
    measure, direction, _ = _DIRECTION.split(text, maxsplit=1) if _DIRECTION.search(text) else (text, "", "")
    try:
        typed = parse_length(measure)
    except NotUnderstood:
        return text
    return text if typed.high is not None else f"{_told(typed, system, enough)}{direction}"


def _told(typed: Typed, system: System, enough: bool) -> str:
    if typed.unit.system is system:
        own = typed.text if typed.pair is None else typed.text[: typed.pair.start - typed.start].rstrip(" ([/=")
        return own.strip()
    if typed.pair is not None and typed.pair.unit.system is system:
        return typed.pair.text.strip()
    return RULER.show(typed.value, system, Rounding.ENOUGH if enough else Rounding.NEAREST)
