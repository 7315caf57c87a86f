"""Pictures made for the tests, and a look at saved files with code of its own."""

from __future__ import annotations

import struct
import zlib
from collections.abc import Iterator, Sequence
from io import BytesIO
from pathlib import Path
from random import Random
from typing import Any

from PIL import Image

from sitegen.pictures import Prepared, Trouble, prepare

Colour = tuple[int, ...]
RED, GREEN, BLUE, YELLOW = (220, 30, 30), (30, 180, 30), (30, 30, 220), (230, 220, 40)


def file_of(image: Image.Image, format: str, **options: Any) -> bytes:
    """A picture as the bytes of a file."""
    file = BytesIO()
    image.save(file, format, **options)
    return file.getvalue()


def photo(width: int, height: int) -> Image.Image:
    """Something with as many soft colours as a photo."""
    coarse = Image.frombytes("RGB", (16, 12), Random(7).randbytes(16 * 12 * 3))
    grain = Image.effect_noise((width, height), 12).convert("RGB")
    return Image.blend(coarse.resize((width, height), Image.Resampling.BICUBIC), grain, 0.15)


def corners(width: int, height: int) -> Image.Image:
    """Red and green above, blue and yellow below."""
    image = Image.new("RGB", (width, height), RED)
    image.paste(GREEN, (width // 2, 0, width, height))
    image.paste(BLUE, (0, height // 2, width // 2, height))
    image.paste(YELLOW, (width // 2, height // 2, width, height))
    return image


def made(folder: Path, data: bytes, name: str = "photo.jpg", **options: Any) -> Prepared:
    """A file made ready, which must succeed."""
    result = prepare(put(folder, data, name), stem="band-pinned", **options)
    assert isinstance(result, Prepared), result
    return result


def trouble(folder: Path, data: bytes, name: str = "photo.jpg") -> str:
    """What is said of a file that must not succeed."""
    result = prepare(put(folder, data, name), stem="band-pinned")
    assert isinstance(result, Trouble), "the file was taken"
    return result.message


def put(folder: Path, data: bytes, name: str) -> Path:
    """A file with these bytes."""
    place = folder / name
    place.write_bytes(data)
    return place


def images(prepared: Prepared, mime: str) -> list[Image.Image]:
    """The renditions of one kind as pictures, the narrowest first."""
    return [Image.open(BytesIO(source.content)) for source in prepared.sources if source.mime == mime]


def colour_at(image: Image.Image, across: float, down: float) -> Colour:
    """The colour at a place, as parts of width and height."""
    mode = "RGBA" if "A" in image.getbands() else "RGB"
    place = (int(image.width * across), int(image.height * down))
    found = image.convert(mode).getpixel(place)
    assert isinstance(found, tuple)
    return tuple(int(part) for part in found)


def is_near(one: Colour, other: Colour, within: int = 14) -> bool:
    """Whether two colours look alike."""
    return len(one) == len(other) and all(abs(a - b) <= within for a, b in zip(one, other, strict=True))


def parts(content: bytes) -> set[str]:
    """The kinds of segment, chunk or box of which a JPEG, PNG, WebP or AVIF file is made."""
    if content[:2] == b"\xff\xd8":
        return _jpeg_parts(content)
    if content[4:8] == b"ftyp":
        return set(_boxes(content))
    found, at = set(), 8 if content[:4] == b"\x89PNG" else 12
    while at < len(content):
        if at == 8 or content[:4] == b"\x89PNG":
            length, kind = struct.unpack(">I4s", content[at : at + 8])
            at += 12 + length
        else:
            kind, length = struct.unpack("<4sI", content[at : at + 8])
            at += 8 + length + length % 2
        found.add(kind.decode().strip())
    return found


_HEAD_OF_BOX = {b"meta": 4, b"iinf": 6, b"iprp": 0, b"ipco": 0}
"""Boxes that hold others, and the bytes before the first (ISO/IEC 14496-12, section 8.11; 23008-12, section 9.3)."""


def _boxes(content: bytes) -> Iterator[str]:
    """The kinds of all boxes of an ISO base media file; items and colours with what they hold, ``infe Exif``."""
    at = 0
    while at < len(content):
        length, kind = struct.unpack(">I4s", content[at : at + 8])
        held = content[at + 8 : at + length]
        assert 8 <= length <= len(content) - at
        what = {b"infe": held[8:12], b"colr": held[:4]}.get(kind, b"")
        yield (kind + b" " + what).decode().strip()
        if kind in _HEAD_OF_BOX:
            yield from _boxes(held[_HEAD_OF_BOX[kind] :])
        at += length


def _jpeg_parts(content: bytes) -> set[str]:
    found, at = set(), 2
    while True:
        assert content[at] == 0xFF
        kind = content[at + 1]
        name = {0xFE: "comment", 0xDA: "scan"}.get(kind, f"APP{kind - 0xE0}" if 0xE0 <= kind <= 0xEF else "table")
        found.add(name)
        if kind == 0xDA:
            return found
        at += 2 + int.from_bytes(content[at + 2 : at + 4])


def png(width: int, height: int, *, depth: int = 8, colour: int = 2, pixels: bytes = b"") -> bytes:
    """A PNG file written by hand, so that its head can say what Pillow would not write."""

    def chunk(kind: bytes, data: bytes) -> bytes:
        return struct.pack(">I", len(data)) + kind + data + struct.pack(">I", zlib.crc32(kind + data))

    head = struct.pack(">IIBBBBB", width, height, depth, colour, 0, 0, 0)
    body = chunk(b"IHDR", head) + chunk(b"IDAT", zlib.compress(pixels)) + chunk(b"IEND", b"")
    return b"\x89PNG\r\n\x1a\n" + body


_SRGB_COLUMNS = ((0.4361, 0.2225, 0.0139), (0.3851, 0.7169, 0.0971), (0.1431, 0.0606, 0.7141))


def profile(space: str, columns: Sequence[int] = (0, 1, 2), gamma: float = 2.2) -> bytes:
    """A colour profile after ICC.1:2001: RGB with the primaries of sRGB in this order, or GRAY with a gamma."""

    def xyz(*values: float) -> bytes:
        return b"XYZ \0\0\0\0" + b"".join(struct.pack(">i", round(value * 65536)) for value in values)

    curve = b"curv\0\0\0\0" + struct.pack(">IH", 1, round(gamma * 256)) + b"\0\0"
    text = b"desc\0\0\0\0" + struct.pack(">I", 16) + b"Planted profile\0" + b"\0" * 80
    tags = {b"desc": text, b"wtpt": xyz(0.9642, 1, 0.8249)}
    if space == "GRAY":
        tags[b"kTRC"] = curve
    else:
        for name, column in zip((b"r", b"g", b"b"), columns, strict=True):
            tags[name + b"XYZ"] = xyz(*_SRGB_COLUMNS[column])
            tags[name + b"TRC"] = curve
    at, table, body = 132 + 12 * len(tags), struct.pack(">I", len(tags)), b""
    for name, data in tags.items():
        table += name + struct.pack(">II", at + len(body), len(data))
        body += data
    head = struct.pack(">I4sI4s4s4s12s4s", at + len(body), b"", 0x02400000, b"mntr", space.ljust(4).encode(), b"XYZ ",
                       struct.pack(">6H", 2020, 1, 1, 0, 0, 0), b"acsp")  # fmt: skip
    head = head.ljust(68, b"\0") + struct.pack(">3i", 63190, 65536, 54061)
    return head.ljust(128, b"\0") + table + body
