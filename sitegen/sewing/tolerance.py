"""How far a measured length may be from what it should be."""

from __future__ import annotations

from sitegen.quantities import Length, Worked, given, inches

_STEPS: tuple[tuple[Length, Length], ...] = (
    (inches(1), inches("1/16")),
    (inches(12), inches("1/8")),
)
_LONG = inches("1/4")


def of_length(name: str, length: Worked) -> Worked:
    """What a length may be off by, either way, to count as sewn well: 1/16 in up to 1 in, such as an allowance or a
    line of stitches, 1/8 in up to 12 in, 1/4 in beyond that. Raises TypeError for what is no length.

    Source: 1/16 in for rows of stitches and distances of buttonholes, Commercial Item Description A-A-55095A and
    MIL-L-24778; longer lengths common practice, no source.
    """
    allowed = next((step for most, step in _STEPS if length.length <= most), _LONG)
    return given(name, allowed)
