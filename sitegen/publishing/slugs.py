"""Slugs: an author's names as parts of paths and anchors, of small ASCII letters, digits and hyphens.

A name in ASCII loses its capitals and signs, other Latin letters their accents. What can only be said in other letters
is told apart by a digest, as are long names, and names that some systems keep for devices.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterable, Iterator
from hashlib import blake2b

from sitegen.publishing.site_place import is_device

LONGEST = 80
"""No slug has more signs."""

_BETWEEN = re.compile(r"[^a-z0-9]+")
_LIKE = str.maketrans({"æ": "ae", "ð": "d", "ø": "o", "þ": "th", "đ": "d", "ħ": "h", "ı": "i", "ł": "l", "œ": "oe"})
"""Latin letters that Unicode does not take apart into one of ASCII and an accent."""


def slug(text: str) -> str:
    """The slug of a name, always the same; never empty, and other names may have the same one."""
    letters = unicodedata.normalize("NFKD", text.casefold().translate(_LIKE))
    found = _BETWEEN.sub("-", "".join(each for each in letters if not unicodedata.combining(each))).strip("-")
    unsaid = any(each.isalnum() and not each.isascii() for each in letters)
    if found and not unsaid and len(found) <= LONGEST and not is_device(found):
        return found
    return _with_digest(found, unicodedata.normalize("NFC", text), 4)


class Slugs:
    """The slugs of one namespace, such as a folder or the anchors of a page: each name has its own.

    Of names that have the same slug the first one asked for keeps it, and a digest stands behind that of the others.
    ``taken`` are those that no name may have.
    """

    def __init__(self, taken: Iterable[str] = ()) -> None:
        self._taken = set(taken)
        self._found: dict[str, str] = {}

    def of(self, name: str) -> str:
        """The slug of a name, the same whenever it is asked for."""
        if name not in self._found:
            self._found[name] = next(each for each in _ways(name) if each not in self._taken)
            self._taken.add(self._found[name])
        return self._found[name]


def _ways(name: str) -> Iterator[str]:
    """The slugs that a name may have, the best first; the last ones are long enough to be its own."""
    plain = slug(name)
    yield plain
    for size in (4, 8, 16):
        yield _with_digest(plain, name, size)


def _with_digest(head: str, text: str, size: int) -> str:
    """The beginning of a slug, and a digest of the whole name in so many bytes."""
    code = blake2b(text.encode("utf-8", "surrogatepass"), digest_size=size).hexdigest()
    return f"{head[: LONGEST - len(code) - 1].rstrip('-')}-{code}".strip("-")
