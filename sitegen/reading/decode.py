"""From the bytes of a file to its text, or to what an author has to do in the editor first."""

from __future__ import annotations

import codecs
import re

from sitegen.findings import Collector
from sitegen.reading.offsets import Source
from sitegen.reading.slip import Slip, tell

MOST_BYTES = 2_000_000
"""More than this in one file is no text that somebody wrote; common practice, no source."""

_MARKS = (
    (codecs.BOM_UTF32_LE, "utf-32", "UTF-32"),
    (codecs.BOM_UTF32_BE, "utf-32", "UTF-32"),
    (codecs.BOM_UTF16_LE, "utf-16", "UTF-16"),
    (codecs.BOM_UTF16_BE, "utf-16", "UTF-16"),
)
NEVER_TYPED = "[^\t\n\r\x20-\x7e\x85\xa0-\ud7ff\ue000-\ufefe\uff00-\ufffd\U00010000-\U0010ffff]"
"""Characters that YAML 1.1 does not allow in a file (section 5.1), and the byte order mark inside a text."""

_IN_AN_EDITOR = "Open it in a text editor and save it with the encoding UTF-8."
_IN_A_SPREADSHEET = "Save it from the spreadsheet as “CSV UTF-8”, or choose UTF-8 as the character set when saving."


def decode(data: bytes, shown: str, collector: Collector, *, spreadsheet: bool = False) -> tuple[Source, bool]:
    """The text of a file and whether it can be used; where it cannot, the text serves only to show its lines."""
    cure = _IN_A_SPREADSHEET if spreadsheet else _IN_AN_EDITOR
    for mark, codec, name in _MARKS:
        if data.startswith(mark):
            source = Source(shown, data.decode(codec, "replace"))
            message = f"This file is saved as {name}, not as UTF-8. {cure}"
            tell(Slip("file-encoding", 0, 0, message), source, collector)
            return source, False
    bare = data.removeprefix(codecs.BOM_UTF8)
    try:
        source = Source(shown, bare.decode("utf-8"))
    except UnicodeDecodeError as error:
        source = Source(shown, bare.decode("utf-8", "replace"))
        start = len(bare[: error.start].decode("utf-8"))
        tell(Slip("file-encoding", start, start + 1, _not_utf8(bare[error.start], cure)), source, collector)
        return source, False
    odd = re.search(NEVER_TYPED, source.text)
    if odd:
        tell(Slip("control-character", odd.start(), odd.end(), _odd(odd[0], cure)), source, collector)
    return source, odd is None


def _not_utf8(byte: int, cure: str) -> str:
    sign = bytes([byte]).decode("cp1252", "ignore")
    older = f" (an older program writes “{sign}” so)" if sign.isprintable() and sign else ""
    return f"This file is not saved as UTF-8: the byte {byte:02X} stands here{older}. {cure}"


def _odd(char: str, cure: str) -> str:
    if char == "\0":
        return f"There is a zero byte here: this is no plain text, or it is not saved as UTF-8. {cure}"
    return f"There is an invisible control character here (U+{ord(char):04X}). Delete it, or type this line anew."
