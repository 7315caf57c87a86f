"""Finds measurements in running text, by grammar and context alone."""

from sitegen.prose.find.measured import CIRCLE_NUMBERS, Measured
from sitegen.prose.find.read import Reading, read, reading_of
from sitegen.prose.find.tokens import Token, TokenKind, Tokens

__all__ = [
    "CIRCLE_NUMBERS",
    "Measured",
    "Reading",
    "Token",
    "TokenKind",
    "Tokens",
    "read",
    "reading_of",
]
