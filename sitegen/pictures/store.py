"""Finished pictures kept in a folder between runs, each under a key made of all that decides on its bytes."""

from __future__ import annotations

import json
import os
import tempfile
from collections.abc import Sequence
from contextlib import suppress
from hashlib import blake2b
from pathlib import Path

import PIL

from sitegen.pictures.encode import SETTINGS, Encoded

_CODE = 1
"""Goes up with each change of this room that changes the bytes of a picture."""
_CHECK_BYTES = 32


def key(source: bytes, widths: Sequence[int]) -> str:
    """The name under which a finished picture is kept."""
    settings = json.dumps([_CODE, PIL.__version__, SETTINGS, list(widths)]).encode()
    return blake2b(settings + b"\0" + source, digest_size=20).hexdigest()


def kept(folder: Path, key: str) -> tuple[Encoded, ...] | None:
    """The finished picture under a key; None when there is none, or when the entry is not as it was written."""
    try:
        data = (folder / key).read_bytes()
    except OSError:
        return None
    check, body = data[:_CHECK_BYTES], data[_CHECK_BYTES:]
    if _check(body) != check:
        return None
    head, _, contents = body.partition(b"\n")
    entry: list[Encoded] = []
    for width, height, mime, length in json.loads(head):
        entry.append(Encoded(width, height, mime, contents[:length]))
        contents = contents[length:]
    return tuple(entry)


def keep(folder: Path, key: str, entry: Sequence[Encoded]) -> None:
    """Keep a finished picture, whole or not at all. A folder that cannot be written to is no trouble, only slow."""
    head = json.dumps([[each.width, each.height, each.mime, len(each.content)] for each in entry]).encode()
    body = b"\n".join((head, b"".join(each.content for each in entry)))
    with suppress(OSError):
        folder.mkdir(parents=True, exist_ok=True)
        handle, part = tempfile.mkstemp(prefix=f"{key}.", suffix=".part", dir=folder)
        try:
            with os.fdopen(handle, "wb") as file:
                file.write(_check(body) + body)
            os.replace(part, folder / key)
        except BaseException:
            os.unlink(part)
            raise


def _check(body: bytes) -> bytes:
    return blake2b(body, digest_size=_CHECK_BYTES).digest()
