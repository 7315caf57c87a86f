"""Lays sheets out as PDF: tagged for screen readers (PDF/UA-1), to be kept (PDF/A-3a), its fonts in it."""

from __future__ import annotations

import json
import re
from collections.abc import Mapping
from dataclasses import asdict, is_dataclass
from datetime import date
from enum import Enum
from fractions import Fraction
from importlib.resources import files
from typing import Any

from sitegen.classes import OPEN_SEAL
from sitegen.handouts.needed import NoPdf
from sitegen.publishing import unmarked

_LETTER = re.compile(r'the text `"(.+?)"` could not be displayed')


def laid_out(sheet: str, data: Mapping[str, Any], day: date) -> bytes:
    """A sheet with its data as a PDF. The same data of the same day give the same bytes.

    Raises NoPdf when the package typst is not installed, or a letter stands in a text for which there is no font.
    """
    try:
        import typst
    except ImportError:
        raise NoPdf.without("typst") from None
    below = files("sitegen.handouts").joinpath("sheets")
    source = b"\n".join(below.joinpath(name).read_bytes() for name in ("common.typ", sheet))
    # Words in another language are not told apart on paper.
    plain = unmarked(json.dumps(_plain({**data, "seal": OPEN_SEAL.decode("ascii")}), ensure_ascii=False))

    def compiled(*, own_fonts_alone: bool) -> bytes:
        return typst.compile(
            source,
            sys_inputs={"data": plain},
            pdf_standards=["ua-1", "a-3a"],
            ignore_system_fonts=own_fonts_alone,
            timestamp=_noon(day),
        )

    try:
        return compiled(own_fonts_alone=True)
    except typst.TypstError as trouble:
        if _LETTER.search(str(trouble)) is None:
            raise
    # Latin, Greek and Cyrillic look the same everywhere; for another script the fonts of this computer are asked too.
    try:
        return compiled(own_fonts_alone=False)
    except typst.TypstError as trouble:
        letter = _LETTER.search(str(trouble))
        if letter is None:
            raise
        raise NoPdf(
            f"A text of the tutorial or of the class holds “{letter[1]}”, for which there is no font."
        ) from None


def _noon(day: date) -> int:
    """Noon of a day in seconds since 1970, the time that the PDF says it was made."""
    return (day - date(1970, 1, 1)).days * 86_400 + 43_200


def _plain(value: Any) -> Any:
    """The same data with nothing in it that JSON does not know."""
    if is_dataclass(value) and not isinstance(value, type):
        return _plain(asdict(value))
    if isinstance(value, dict):
        return {key: _plain(each) for key, each in value.items()}
    if isinstance(value, (tuple, list)):
        return [_plain(each) for each in value]
    if isinstance(value, Enum):
        return value.value
    return float(value) if isinstance(value, Fraction) else value
