"""What decides on the bytes of a finished picture, so that one made before can be known again."""

from __future__ import annotations

import json
from collections.abc import Sequence
from hashlib import blake2b

import PIL

from sitegen.pictures.encode import SETTINGS

_CODE = 2
"""Goes up with each change of this room that changes the bytes of a picture."""


def key(source: bytes, widths: Sequence[int]) -> str:
    """A few letters that stand for the file, the widths, the settings and the code."""
    settings = json.dumps([_CODE, PIL.__version__, SETTINGS, list(widths)]).encode()
    return blake2b(settings + b"\0" + source, digest_size=20).hexdigest()
