"""Stitches by their plain names, whether they stretch, and their length.

Source: classes and numbers of ISO 4915 (as taught in an Indian agricultural-university e-course,
ecoursesonline.iasri.res.in); that knit seams want a zigzag, a stretch stitch or an overlock: New Mexico
State Univ. Guide C-210.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum
from fractions import Fraction

from sitegen.quantities import Worked, decimal, given


class Give(Enum):
    """How much a row of stitches gives before its thread breaks."""

    LITTLE = "little"
    SOME = "some"
    GOOD = "good"


@dataclass(frozen=True, slots=True)
class Stitch:
    """A stitch: its plain name, its give, its number in ISO 4915 (empty where it has none of its own)."""

    name: str
    give: Give
    number: str = ""


STITCHES: dict[str, Stitch] = {
    stitch.name: stitch
    for stitch in (
        Stitch("straight", Give.LITTLE, "301"),
        Stitch("backstitch", Give.LITTLE),
        Stitch("basting", Give.LITTLE),
        Stitch("topstitch", Give.LITTLE, "301"),
        Stitch("zigzag", Give.SOME, "304"),
        Stitch("narrow zigzag", Give.SOME, "304"),
        Stitch("three-step zigzag", Give.GOOD),
        Stitch("twin needle", Give.SOME),
        Stitch("stretch stitch", Give.GOOD),
        Stitch("chain", Give.GOOD, "401"),
        Stitch("overlock", Give.GOOD, "514"),
        Stitch("three-thread overlock", Give.GOOD, "504"),
        Stitch("four-thread overlock", Give.GOOD, "514"),
        Stitch("cover stitch", Give.GOOD, "406"),
        Stitch("blind hem", Give.SOME, "103"),
        Stitch("slip stitch", Give.SOME),
    )
}


def known_name(said: str) -> str:
    """The plain name of a stitch that is called otherwise, ``Straight stitch`` for straight; else what was said."""
    plain = " ".join(said.lower().split())
    plain = plain.replace("zig-zag", "zigzag").replace("zig zag", "zigzag")
    names = (plain, plain.replace(" ", ""), plain.removesuffix(" stitch"))
    return next((name for name in names if name in STITCHES), said)


def stitches_per_inch(name: str, length_mm: Fraction) -> Worked:
    """How many stitches of this length, in millimetres, go to an inch: 25.4 ÷ length. Source: arithmetic."""
    return given(name, Fraction(127, 5) / length_mm, f"25.4 mm ÷ {decimal(length_mm)} mm")
