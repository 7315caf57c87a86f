"""A number of a text with what is known of it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from sitegen.prose.find.numbers import Form
from sitegen.prose.find.tokens import Tokens
from sitegen.prose.measurement import Kind
from sitegen.prose.words import MONEY
from sitegen.quantities import Unit

CIRCLE_NUMBERS = frozenset(map(Fraction, ("3.14", "3.141", "3.142", "3.1416", "6.28", "6.283")))
"""π and its double as print gives them; without a unit they are never lengths."""


@dataclass(frozen=True, slots=True)
class Measured:
    """A number or a range with its kind, before its place in the text is cut out.

    ``kind`` is None for a bare number.
    """

    first: int
    behind: int
    value: Fraction
    kind: Kind | None
    unit: Unit | None
    form: Form
    high: Fraction | None = None
    carried: bool = False
    supplied: bool = False
    decimals: int | None = None
    wrong_way: bool = False
    spoken: bool = False
    counted: bool = False
    """Whether a word before it says that it only counts or names: ``size 12``."""


def between(tokens: Tokens, one: Measured, other: Measured) -> tuple[str, ...]:
    """The words between two numbers; more than three are not worth looking at."""
    if other.first - one.behind > 3:
        return ("…",)
    return tuple(tokens.words[one.behind : other.first])


def word_at(tokens: Tokens, index: int) -> str:
    """The text of a token; empty before the first and behind the last one."""
    return tokens.words[index] if 0 <= index < len(tokens) else ""


def is_priced(tokens: Tokens, one: Measured) -> bool:
    """Whether the text speaks of a price by the metre just before."""
    near = tokens.words[max(0, one.first - 15) : one.first]
    return any(pair in (("per", "metre"), ("per", "meter"), ("per", "yard"), ("a", "metre")) for pair in pairwise(near))


def says_money(near: Sequence[str]) -> bool:
    """Whether any of the tokens is a sum of money or a word for it."""
    return any(word[0] in "$£€" or word.rpartition(" ")[2] in MONEY for word in near)
