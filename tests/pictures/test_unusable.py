"""Whatever a file holds, there is a picture or plain words; nothing is raised and nothing is printed."""

from __future__ import annotations

import os
import sys
import time
import warnings
from concurrent.futures import ThreadPoolExecutor
from io import BytesIO
from pathlib import Path
from random import Random

import pytest
from pictures.made_pictures import file_of, made, photo, png, put, trouble
from PIL import Image, features

from sitegen.pictures import Prepared, Trouble, decode, prepare

FORMATS = ["JPEG", "PNG", "WEBP", "GIF"] + (["AVIF"] if features.check("avif") else [])


@pytest.fixture(autouse=True)
def silent(capfd: pytest.CaptureFixture[str]) -> object:
    """Look after each test that nothing was printed and that warnings are as they were."""
    filters = list(warnings.filters)
    yield
    assert capfd.readouterr() == ("", "")
    assert list(warnings.filters) == filters


@pytest.mark.parametrize(
    ("data", "words"),
    [
        (b"", "photo.jpg is empty: it holds no bytes at all. Copy it from the camera again."),
        (b"hello", "photo.jpg is no picture that can be read. Save it as JPEG, PNG, WebP or AVIF."),
        (b"\0" * 5000, "photo.jpg is no picture that can be read. Save it as JPEG, PNG, WebP or AVIF."),
        (b"%PDF-1.7\n", "photo.jpg is a PDF document, which a page cannot show as a photo. Save it as JPEG,"),
        (b"<svg xmlns='http://www.w3.org/2000/svg'/>", "photo.jpg is an SVG drawing, which"),
        (b"\n<?xml version='1.0'?><svg/>", "photo.jpg is an SVG drawing or another XML text, which"),
        (b"<!doctype html><p>", "photo.jpg is a web page, which"),
        (b"PK\x03\x04rest", "photo.jpg is a ZIP archive or a document, which"),
        (file_of(Image.new("RGB", (9, 9)), "TIFF"), "photo.jpg is a TIFF picture, which"),
        (file_of(Image.new("RGB", (9, 9)), "BMP"), "photo.jpg is a BMP picture, which"),
        (b"\0\0\0\x18ftypheic\0\0\0\0", "photo.jpg is a HEIC picture or a film, as phones take them, which cannot"),
        (b"\xff\xd8\xff\xe0\0", "photo.jpg is damaged"),
        (b"\x89PNG\r\n\x1a\n", "photo.jpg is damaged"),
        (b"GIF89a", "photo.jpg is damaged"),
        (b"RIFF\x10\0\0\0WEBPVP8 ", "photo.jpg is damaged"),
    ],
)
def test_file_that_is_no_picture_is_told_for_what_it_is(tmp_path: Path, data: bytes, words: str) -> None:
    assert trouble(tmp_path, data).startswith(words)


def test_folder_missing_file_and_pipe_are_told(tmp_path: Path) -> None:
    (tmp_path / "photos.jpg").mkdir()
    said = {"photos.jpg": "is a folder", "missing.jpg": "is not there", "a\0b.jpg": "cannot be read"}
    if sys.platform != "win32":
        os.mkfifo(tmp_path / "pipe.jpg")
        said["pipe.jpg"] = "is no file"
    for name, words in said.items():
        result = prepare(tmp_path / name, stem="x")
        assert isinstance(result, Trouble)
        assert words in result.message
        assert result.message.isprintable()


def test_file_of_hundreds_of_megabytes_is_not_even_read(tmp_path: Path) -> None:
    with (tmp_path / "film.jpg").open("wb") as file:
        file.truncate(300_000_000)
    result = prepare(tmp_path / "film.jpg", stem="x")
    assert isinstance(result, Trouble)
    assert result.message == "film.jpg is larger than 200 MB. Save it as JPEG, 4000 pixels wide at most."


def huge_jpeg(side: int) -> bytes:
    """A small JPEG whose head says that it is huge."""
    data = file_of(Image.new("RGB", (8, 8)), "JPEG")
    at = data.index(b"\xff\xc0") + 5
    return data[:at] + side.to_bytes(2) * 2 + data[at + 4 :]


def huge_webp(side: int) -> bytes:
    """A small WebP file whose head says that it is huge."""
    image = Image.new("RGBA", (8, 8), (1, 2, 3, 4))
    data = file_of(image, "WEBP", exif=Image.Exif(), icc_profile=b"x")
    at = data.index(b"VP8X") + 12
    return data[:at] + (side - 1).to_bytes(3, "little") * 2 + data[at + 6 :]


@pytest.mark.parametrize(
    "data",
    [
        png(9_000, 9_000, depth=1, colour=0, pixels=bytes(9_000 * 1_126)),
        png(12_000, 12_000),
        png(20_000, 20_000),
        png(2**31 - 1, 2**31 - 1),
        huge_jpeg(9_500),
        huge_jpeg(65_500),
        huge_webp(16_000),
        b"GIF89a" + b"\xff\xff" * 2 + b"\0\0\0",
    ],
    ids=["png real", "png 144", "png 400", "png most", "jpeg 90", "jpeg most", "webp", "gif"],
)
def test_small_file_that_unpacks_to_a_huge_picture_is_refused_at_once(tmp_path: Path, data: bytes) -> None:
    started = time.monotonic()
    message = trouble(tmp_path, data)
    assert "more than 80 million pixels" in message or "is damaged" in message
    assert time.monotonic() - started < 5


def test_picture_of_just_under_the_limit_is_read(tmp_path: Path) -> None:
    assert made(tmp_path, png(8_000, 9_990, depth=1, colour=0, pixels=bytes(9_990 * 1_001))).width == 1600


@pytest.mark.parametrize("size", [(1, 101), (5_000, 40)])
def test_picture_too_long_and_thin_for_a_page_is_told(tmp_path: Path, size: tuple[int, int]) -> None:
    message = trouble(tmp_path, file_of(Image.new("RGB", size), "PNG"))
    assert message == (
        f"photo.jpg is {size[0]} × {size[1]} pixels, too long and thin for a page. Cut it to what is to be seen."
    )


@pytest.mark.parametrize("format", FORMATS)
def test_truncated_file_is_told(tmp_path: Path, format: str) -> None:
    data = file_of(photo(300, 200), format)
    for share in range(1, 10):
        assert "is damaged" in trouble(tmp_path, data[: len(data) * share // 10])


def test_end_of_a_file_that_is_missing_is_told(tmp_path: Path) -> None:
    data = file_of(photo(2400, 1800), "JPEG")  # large enough to be decoded at half its size
    assert trouble(tmp_path, data[:-2000]).startswith("photo.jpg is damaged or cut off")


@pytest.mark.parametrize("format", FORMATS)
def test_any_wrong_byte_gives_a_picture_or_plain_words(tmp_path: Path, format: str) -> None:
    image = photo(64, 48)
    exif = Image.Exif()
    exif[0x0112] = 6
    data = file_of(image, format, **({} if format == "GIF" else {"exif": exif}))
    chance = Random(format)
    outcomes = set()
    for _ in range(200):
        spoilt = bytearray(data)
        for _ in range(chance.choice((1, 1, 3, 30))):
            spoilt[chance.randrange(min(len(data), chance.choice((64, 400, len(data)))))] = chance.randrange(256)
        outcomes.add(type(prepare(put(tmp_path, bytes(spoilt), "photo.jpg"), stem="x")))
    assert Trouble in outcomes
    assert outcomes <= {Prepared, Trouble}


@pytest.mark.parametrize("exif", [b"", b"garbage", b"II*\0\xff\xff\xff\xff", b"MM\0*\0\0\0\x08\xff\xff"])
def test_damaged_camera_data_do_not_spoil_the_picture(tmp_path: Path, exif: bytes) -> None:
    assert made(tmp_path, file_of(photo(300, 200), "JPEG", exif=b"Exif\0\0" + exif)).width == 300


@pytest.mark.parametrize("fault", [MemoryError, RecursionError, AttributeError, KeyError])
def test_any_fault_of_the_decoder_becomes_plain_words(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, fault: type[Exception]
) -> None:
    def fail(*_: object) -> None:
        raise fault

    monkeypatch.setattr(decode, "_plain_mode", fail)
    message = trouble(tmp_path, file_of(photo(300, 200), "JPEG"))
    assert ("memory" in message) == (fault is MemoryError)


def test_warnings_stay_off_the_screen_in_several_threads(tmp_path: Path) -> None:
    data = file_of(photo(400, 300), "JPEG", exif=b"Exif\0\0II*\0\x08\0\0\0\xff\xff")
    with pytest.warns(UserWarning, match="Corrupt EXIF data"):
        Image.open(BytesIO(data)).getexif()
    place = put(tmp_path, data, "photo.jpg")
    with ThreadPoolExecutor(4) as pool:
        results = list(pool.map(lambda _: prepare(place, stem="x"), range(40)))
    assert isinstance(results[0], Prepared)
    assert all(result == results[0] for result in results)
