"""The refusal to write a site, in words for the person who publishes."""

from __future__ import annotations

import errno
from collections.abc import Sequence

_NAMED_AT_MOST = 5

_WORDS = {
    errno.ENOSPC: "there is no room left on the disk",
    errno.EDQUOT: "there is no room left on the disk",
    errno.EFBIG: "the file is larger than this disk or this account allows",
    errno.EACCES: "there is no permission to do so",
    errno.EPERM: "there is no permission to do so",
    errno.EROFS: "the disk can only be read, not written",
    errno.ENAMETOOLONG: "the name is too long for this disk",
    errno.EBUSY: "it is in use, perhaps as the place where a disk is attached",
    errno.ENOENT: "it is no longer there",
    errno.ENOTDIR: "a part of the path is a file, not a folder",
    errno.ELOOP: "a link stands in the way",
    errno.EXDEV: "this disk cannot move the folder",
}


class NotReplaced(Exception):  # noqa: N818  (an outcome that a person reads, not a fault of the program)
    """Why the site was not written. Whatever stood at the place before stands there unchanged."""

    def __init__(self, reason: str) -> None:
        super().__init__(reason)
        self.reason = reason


def plain_words(error: OSError) -> str:
    """What the operating system complains of, in words without numbers or function names."""
    if error.errno in _WORDS:
        return _WORDS[error.errno]
    return (error.strerror or str(error) or "the system gives no reason").rstrip(".")


def shown(path: object) -> str:
    """A path as it can be printed anywhere; what is no valid text in it becomes a question mark."""
    text = str(path).encode("utf-8", "replace").decode("utf-8")
    return "".join(char if char.isprintable() else "?" for char in text)


def named(paths: Sequence[str]) -> str:
    """Up to five paths in a row, and how many more there are."""
    first = ", ".join(shown(path) for path in paths[:_NAMED_AT_MOST])
    more = len(paths) - _NAMED_AT_MOST
    return f"{first} and {more} more" if more > 0 else first
