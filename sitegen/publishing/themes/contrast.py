"""The contrast of two colours, as the Web Content Accessibility Guidelines (WCAG) 2.2 define it.

Source: W3C Recommendation "WCAG 2.2", "relative luminance" and "contrast ratio" in the glossary, success criteria 1.4.3
(text 4.5 to 1, large text 3 to 1) and 1.4.11 (what is seen of controls and graphics, 3 to 1).
"""

from __future__ import annotations

from collections.abc import Callable, Iterator

_STEPS = 256
_RGB = tuple[int, int, int]


def contrast(one: str, other: str) -> float:
    """The contrast ratio of two opaque colours such as ``#1b4a80``, from 1 to 21, whichever is the lighter."""
    darker, lighter = sorted((luminance(one), luminance(other)))
    return (lighter + 0.05) / (darker + 0.05)


def luminance(colour: str) -> float:
    """The relative luminance of an opaque sRGB colour: 0 for black, 1 for white."""
    red, green, blue = (_linear(part / 255) for part in _parts(colour))
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def nearest_that_does(colour: str, does: Callable[[str], bool]) -> str:
    """The colour on the way to black or to white that is nearest to this one and does; empty when none does."""
    found = (next(filter(does, _towards(colour, end)), "") for end in (0, 255))
    return min((each for each in found if each), key=lambda each: _apart(colour, each), default="")


def _towards(colour: str, end: int) -> Iterator[str]:
    for step in range(_STEPS + 1):
        mixed = (round(part + (end - part) * step / _STEPS) for part in _parts(colour))
        yield "#" + "".join(f"{part:02x}" for part in mixed)


def _apart(one: str, other: str) -> int:
    return sum((first - second) ** 2 for first, second in zip(_parts(one), _parts(other), strict=True))


def _parts(colour: str) -> _RGB:
    return int(colour[1:3], 16), int(colour[3:5], 16), int(colour[5:7], 16)


def _linear(part: float) -> float:
    return part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4
