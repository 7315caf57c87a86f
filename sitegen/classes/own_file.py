"""Writes one file, whole or not at all, and never over one that this program did not write, or that was changed since.

A file tells that it is this program's own by a seal in it: a line with the digest of all other lines.
"""

from __future__ import annotations

import hashlib
import os
import re
import secrets
from contextlib import suppress
from pathlib import Path

_SEAL = re.compile(
    rb"^(?:X-SITEGEN-SEAL:|written by sitegen,|<!-- written by sitegen, )([0-9a-f]{32})[^\r\n]*\r?\n", re.MULTILINE
)
_DOCUMENT = b"sitegen-seal-"
_SEAL_OF_DOCUMENT = re.compile(_DOCUMENT + rb"[0-9a-f]{32}")
OPEN_SEAL = _DOCUMENT + b"0" * 32
"""Stands in a PDF where its seal will be."""
_MOST_BYTES = 50_000_000


class NotWritten(Exception):  # noqa: N818  (an outcome that a person reads, not a fault of the program)
    """Why a file was not written. What stood at its place stands there unchanged."""


def sealed_table(text: str) -> bytes:
    """A table as the bytes of its file, with the seal as its last row. The mark before it tells spreadsheets UTF-8."""
    data = text.encode("utf-8-sig")
    return data + b"written by sitegen," + _digest(data) + b"\r\n"


def sealed_calendar(data: bytes) -> bytes:
    """A calendar with the seal as a property of its own, before its first part."""
    begin = data.index(b"BEGIN:V", len(b"BEGIN:VCALENDAR"))
    return data[:begin] + b"X-SITEGEN-SEAL:" + _digest(data) + b"\r\n" + data[begin:]


def sealed_page(html: str) -> bytes:
    """A page as the bytes of its file, with the seal as a comment behind it."""
    data = html.encode("utf-8")
    return data + b"<!-- written by sitegen, " + _digest(data) + b" -->\n"


def sealed_document(data: bytes) -> bytes:
    """A PDF that has ``OPEN_SEAL`` in it as a keyword, with its seal there: nothing may follow the end of a PDF that is
    to be kept (ISO 19005-3, 6.1.3), and its length must stay."""
    return data.replace(OPEN_SEAL, _DOCUMENT + _digest(data))


def is_own(data: bytes) -> bool:
    """Whether a file is as this program wrote it."""
    if data.startswith(b"%PDF-"):
        found = set(_SEAL_OF_DOCUMENT.findall(data))
        return len(found) == 1 and data == sealed_document(_SEAL_OF_DOCUMENT.sub(OPEN_SEAL, data))
    seals = list(_SEAL.finditer(data))
    if len(seals) != 1:
        return False
    seal = seals[0]
    return _digest(data[: seal.start()] + data[seal.end() :]) == seal[1]


def write_own(target: Path, data: bytes) -> None:
    """Write a sealed file in one act. Raises NotWritten for a place that is taken by anything but an own file, and for
    whatever the disk refuses.
    """
    try:
        _refuse_foreign(target)
        building = target.with_name(f".{target.name}.{secrets.token_hex(8)}")
        try:
            with building.open("xb") as file:
                file.write(data)
            os.replace(building, target)
        except BaseException:
            with suppress(OSError):
                building.unlink(missing_ok=True)
            raise
    except OSError as error:
        why = (error.strerror or "the disk refuses it").lower()
        raise NotWritten(f"{target} could not be written: {why}.") from None
    except ValueError:
        raise NotWritten(f"{target} could not be written: this is not a usable path.") from None


def _refuse_foreign(target: Path) -> None:
    if target.is_symlink():
        raise NotWritten(f"{target} is a link. Name a new file, or the file that it leads to.")
    if target.is_dir():
        raise NotWritten(f"{target} is a folder. Name a file in it.")
    if not target.exists():
        return
    if not target.is_file() or target.stat().st_size > _MOST_BYTES or not is_own(target.read_bytes()):
        raise NotWritten(
            f"{target} is there already, and was not written by this program or was changed since. Name another file,"
            " or take it away first."
        )


def _digest(data: bytes) -> bytes:
    return hashlib.blake2b(data, digest_size=16).hexdigest().encode("ascii")
