"""A picture as it stands in a page, and what is said of one that cannot."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Rendition:
    """One file of a picture: one width in one format."""

    name: str
    """File name, such as ``band-pinned-1a2b3c4d-800.webp``; another content has another name."""
    width: int
    """Pixels."""
    height: int
    """Pixels."""
    mime: str
    """``image/avif``, ``image/webp``, ``image/jpeg`` or ``image/png``."""
    content: bytes


@dataclass(frozen=True, slots=True)
class Prepared:
    """A picture in all its renditions."""

    width: int
    """Pixels of the widest rendition."""
    height: int
    """Pixels of the widest rendition."""
    sources: tuple[Rendition, ...]
    """Each format from narrow to wide, the best first: AVIF if it is smaller, WebP, then JPEG or PNG."""


@dataclass(frozen=True, slots=True)
class Trouble:
    """Why a file cannot be used as a picture."""

    message: str
    """Plain words: what is wrong, and what would serve."""


class UnusableError(Exception):
    """A file that cannot be used, in the words of ``Trouble``; it does not leave this room."""
