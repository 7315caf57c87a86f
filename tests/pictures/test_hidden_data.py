"""Nothing but the pixels leaves: no place, no camera, no words, no profile."""

from __future__ import annotations

from io import BytesIO
from pathlib import Path
from typing import Any

import pytest
from pictures.made_pictures import file_of, made, parts, photo, profile
from PIL import ExifTags, Image, PngImagePlugin, features

from sitegen.pictures import Rendition, Trouble, for_paper

SECRETS = [
    b"Planted camera", b"Planted author", b"Planted XMP", b"Planted comment", b"Planted profile", b"Planted caption",
    b"\x00\x00\x00\x33\x00\x00\x00\x01", b"Planted packed",
]  # fmt: skip
"""What is planted; the one in the middle is the 51 degrees of a latitude."""

ALLOWED = {
    "image/jpeg": {"APP0", "table", "scan"},
    "image/png": {"IHDR", "IDAT", "IEND"},
    "image/webp": {"VP8", "VP8L", "VP8X", "ALPH"},
    "image/avif": {
        "ftyp", "meta", "hdlr", "pitm", "iloc", "iinf", "infe av01", "iref", "iprp", "ipco", "ipma", "mdat",
        "ispe", "pixi", "av1C", "auxC", "colr nclx",
    },
}  # fmt: skip
"""The parts of a file that hold pixels and nothing else; APP0 of a JPEG holds its density, the boxes of an AVIF file
say where its pixels are, how many and in which colours (by a code, nclx, not by a profile)."""


def planted_exif() -> Image.Exif:
    """Camera, author and place."""
    exif = Image.Exif()
    exif[0x010F] = "Planted camera"
    exif[0x013B] = "Planted author"
    exif[0x8825] = {1: "N", 2: (51.0, 30.0, 26.0), 3: "W", 4: (0.0, 7.0, 39.0)}
    return exif


XMP = b"<xmpmeta><note>Planted XMP</note></xmpmeta>"


def planted(format: str, image: Image.Image) -> bytes:
    """A file full of what must not be published."""
    options: dict[str, Any] = {"exif": planted_exif(), "icc_profile": profile("RGB")}
    if format == "JPEG":
        data = file_of(image, format, comment=b"Planted comment", xmp=XMP, **options)
        caption = b"\x1c\x02\x78\x00\x0fPlanted caption"  # IPTC-IIM, data set 2:120
        return data[:2] + b"\xff\xed" + (len(caption) + 2).to_bytes(2) + caption + data[2:]
    if format == "PNG":
        text = PngImagePlugin.PngInfo()
        text.add_text("Comment", "Planted comment")
        text.add_itxt("XMP", XMP.decode())
        text.add_text("Author", "Planted packed", zip=True)
        return file_of(image, format, pnginfo=text, **options)
    if format == "GIF":
        return file_of(image, format, comment=b"Planted comment")
    return file_of(image, format, xmp=XMP, **options)


@pytest.mark.parametrize("size", [(400, 300), (3300, 200)])
@pytest.mark.parametrize("alpha", [False, True])
@pytest.mark.parametrize("format", ["JPEG", "PNG", "WEBP", "GIF", *(["AVIF"] if features.check("avif") else [])])
def test_planted_data_do_not_come_through(tmp_path: Path, format: str, alpha: bool, size: tuple[int, int]) -> None:
    image = photo(*size)
    if alpha and format != "JPEG":
        image.putalpha(Image.radial_gradient("L").resize(size))
    data = planted(format, image)
    assert any(secret in data for secret in SECRETS)
    for source in made(tmp_path, data).sources:
        for secret in SECRETS:
            assert secret not in source.content
        assert parts(source.content) <= ALLOWED[source.mime]
        saved = Image.open(BytesIO(source.content))
        saved.load()
        assert not saved.getexif()
        assert not {"icc_profile", "comment", "exif", "xmp"} & set(saved.info)


@pytest.mark.parametrize("format", ["JPEG", "PNG", "WEBP"])
def test_the_file_for_paper_is_one_that_any_program_reads_and_holds_nothing_planted(
    tmp_path: Path, format: str
) -> None:
    path = tmp_path / "planted.bin"
    path.write_bytes(planted(format, photo(2000, 1000)))
    found = for_paper(path, width=900)
    assert isinstance(found, Rendition)
    assert (found.mime, found.width, found.height) == ("image/jpeg", 900, 450)
    assert parts(found.content) <= ALLOWED[found.mime]
    assert not [secret for secret in SECRETS if secret in found.content]
    path.write_bytes(b"no picture")
    assert isinstance(for_paper(path, width=900), Trouble)


def test_every_kind_of_planted_data_is_in_the_file_before() -> None:
    data = planted("JPEG", photo(40, 30)) + planted("PNG", photo(40, 30))
    assert [secret for secret in SECRETS if secret not in data] == [b"Planted packed"]
    packed = Image.open(BytesIO(planted("PNG", photo(40, 30))))
    assert packed.info["Author"] == "Planted packed"
    assert parts(planted("JPEG", photo(40, 30))) >= {"APP1", "APP2", "APP13", "comment"}
    if features.check("avif"):
        assert parts(planted("AVIF", photo(40, 30))) >= {"infe Exif", "infe mime", "colr prof"}


def test_colours_rubbed_out_of_a_picture_cannot_be_brought_back(tmp_path: Path) -> None:
    image = Image.new("RGBA", (100, 100), (200, 10, 10, 255))
    image.paste((10, 200, 10, 0), (0, 0, 50, 100))  # a green face, hidden by transparency alone
    for source in made(tmp_path, file_of(image, "PNG")).sources:
        saved = Image.open(BytesIO(source.content)).convert("RGBA")
        assert saved.getpixel((20, 50)) == (0, 0, 0, 0)
        assert saved.getpixel((80, 50)) == (200, 10, 10, 255)


@pytest.mark.parametrize("format", ["JPEG", "PNG", "WEBP", "GIF", *(["AVIF"] if features.check("avif") else [])])
def test_what_is_hung_on_a_picture_is_left_behind(tmp_path: Path, format: str) -> None:
    """A file that is a picture and something else besides: an archive, a page with a script, a second picture."""
    hung = b"PK\x03\x04Planted packed" + b"<script>Planted comment</script>" + planted("JPEG", photo(40, 30))
    for source in made(tmp_path, planted(format, photo(400, 300)) + hung).sources:
        assert parts(source.content) <= ALLOWED[source.mime]
        assert not [secret for secret in (*SECRETS, b"<script>", b"PK\x03\x04") if secret in source.content]


def test_small_picture_in_the_camera_data_is_left_behind(tmp_path: Path) -> None:
    """Cameras hide a thumbnail in EXIF 2.3, 1st IFD, which still shows what was cut off from the picture."""
    small = file_of(Image.new("RGB", (160, 120), (1, 200, 3)), "JPEG", comment=b"Planted comment")
    first = b"MM\0*\0\0\0\x08" + b"\0\0" + (14).to_bytes(4)
    second = b"\0\2" + b"\2\1\0\4\0\0\0\1" + (44).to_bytes(4) + b"\2\2\0\4\0\0\0\1" + len(small).to_bytes(4)
    data = file_of(photo(400, 300), "JPEG", exif=b"Exif\0\0" + first + second + b"\0\0\0\0" + small)
    assert Image.open(BytesIO(data)).getexif().get_ifd(ExifTags.IFD.IFD1)[0x0202] == len(small)
    for source in made(tmp_path, data).sources:
        assert b"Planted comment" not in source.content
        assert source.content.count(b"\xff\xd8\xff") == (source.mime == "image/jpeg")
        assert parts(source.content) <= ALLOWED[source.mime]
