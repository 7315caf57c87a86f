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

_OTHER_KINDS = {
    b"\x89PNG\r\n\x1a\n": "but a picture (PNG)",
    b"\xff\xd8\xff": "but a picture (JPEG)",
    b"GIF87a": "but a picture (GIF)",
    b"GIF89a": "but a picture (GIF)",
    b"%PDF-": "but a PDF",
    b"PK\x03\x04": "but a packed file (ZIP, or a document of an office program)",
    b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1": "but a document of an older office program",
    b"{\\rtf": "but a document of an office program (RTF)",
    b"\x1f\x8b": "but a packed file (gzip)",
}
"""How files begin that are mistaken for text, by the published formats of each, and what is said of them."""
_LOOKED_AT = 4096
_WIDE_SHARE = 4
"""A text in UTF-16 has at least one zero byte in so many; common practice, no source."""
_FEW_CONTROLS = 20
"""Text has no control character in so many bytes but tabs, line ends and escapes; common practice, no source."""

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
    wide = _without_mark(data)
    if wide is not None:
        source = Source(shown, data.decode(wide, "replace"))
        message = f"This file is saved as UTF-16 without a byte order mark, not as UTF-8. {cure}"
        tell(Slip("file-encoding", 0, 0, message), source, collector)
        return source, False
    kind = _no_text(data)
    if kind is not None:
        source = Source(shown, "")
        tell(
            Slip("file-encoding", 0, 0, f"This is no text, {kind}. A file of plain text is expected here."),
            source,
            collector,
        )
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


def _without_mark(data: bytes) -> str | None:
    """The codec of UTF-16 without its mark: in most scripts every other byte of the blanks and signs is zero."""
    head = data[: _LOOKED_AT // 2 * 2]
    if len(data) % 2 or head.count(0) * _WIDE_SHARE < len(head):
        return None
    for codec, high in (("utf-16-le", head[1::2]), ("utf-16-be", head[::2])):
        if high.count(0) * 10 >= head.count(0) * 9:  # a sign outside of the first plane may have one elsewhere
            text = head.decode(codec, "ignore")
            return codec if text and not re.search(NEVER_TYPED, text) else None
    return None


def _no_text(data: bytes) -> str | None:
    """What a file is that holds no text at all, None for one that may hold some."""
    for start, kind in _OTHER_KINDS.items():
        if data.startswith(start):
            return kind
    head = data[:_LOOKED_AT]
    controls = sum(1 for byte in head if byte < 0x20 and byte not in b"\t\n\f\r\x1b")
    return "its bytes are not those of letters" if controls > max(3, len(head) // _FEW_CONTROLS) else None


def _not_utf8(byte: int, cure: str) -> str:
    sign = bytes([byte]).decode("cp1252", "ignore")
    older = f" (an older program writes “{sign}” so)" if sign.isprintable() and sign else ""
    return f"This file is not saved as UTF-8: the byte {byte:02X} stands here{older}. {cure}"


def _odd(char: str, cure: str) -> str:
    if char == "\0":
        return f"There is a zero byte here: this is no plain text, or it is not saved as UTF-8. {cure}"
    return f"There is an invisible control character here (U+{ord(char):04X}). Delete it, or type this line anew."
