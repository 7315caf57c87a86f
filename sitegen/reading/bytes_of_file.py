"""Reads the bytes of one ordinary file, or says in plain words why not."""

from __future__ import annotations

import os
import stat
from pathlib import Path


class CouldNotRead(Exception):  # noqa: N818 - reads as what happened, not as a program's fault
    """Why a file could not be read: the id of the finding and its message."""

    def __init__(self, check: str, message: str) -> None:
        super().__init__(message)
        self.check = check
        self.message = message


def bytes_of_file(path: Path, *, named: Path, most: int) -> bytes:
    """All bytes of the file at ``path``, which its user calls ``named``. Raises CouldNotRead."""
    try:
        kind = os.stat(path).st_mode
        if stat.S_ISDIR(kind):
            raise CouldNotRead("file-unreadable", "A file is expected here, but this is a folder.")
        if not stat.S_ISREG(kind):  # a pipe or a device could keep its reader waiting for ever
            raise CouldNotRead("file-unreadable", "This is not an ordinary file.")
        with open(path, "rb") as file:
            data = file.read(most + 1)
    except (FileNotFoundError, NotADirectoryError):
        linked = os.path.islink(named)
        message = "This link leads to nothing. Take it out or mend it." if linked else "There is no such file."
        raise CouldNotRead("file-missing", message) from None
    except OSError as error:
        raise CouldNotRead("file-unreadable", f"This file cannot be opened: {why(error)}.") from None
    if len(data) > most:
        message = f"This file is larger than {most // 1_000_000} MB, too large for text. Split it."
        raise CouldNotRead("file-too-large", message)
    return data


def why(error: OSError) -> str:
    """The reason that the system gives, in plain words."""
    if isinstance(error, PermissionError):
        return "you have no permission to read it"
    return (error.strerror or "the system gives no reason").lower().rstrip(".")
