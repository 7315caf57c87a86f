"""A picture comes out upright, in the right colours, in the widths and formats of a page."""

from __future__ import annotations

import re
from io import BytesIO
from pathlib import Path

import pytest
from pictures.made_pictures import (
    BLUE,
    GREEN,
    RED,
    YELLOW,
    colour_at,
    corners,
    file_of,
    images,
    is_near,
    made,
    photo,
    png,
    profile,
    put,
)
from PIL import Image, features

from sitegen.pictures import Prepared, Trouble, encode, prepare, upright_size

FORMATS = ["JPEG", "PNG", "WEBP", "GIF"] + (["AVIF"] if features.check("avif") else [])


def assert_corners(image: Image.Image) -> None:
    """Red and green above, blue and yellow below."""
    for place, colour in (((0.2, 0.2), RED), ((0.8, 0.2), GREEN), ((0.2, 0.8), BLUE), ((0.8, 0.8), YELLOW)):
        assert is_near(colour_at(image, *place), colour), (place, colour_at(image, *place))


def without_avif(result: Prepared) -> list[str]:
    """The formats in which every machine makes a picture, file by file."""
    return [source.mime for source in result.sources if source.mime != "image/avif"]


@pytest.mark.parametrize("has_avif", [True, False])
def test_photo_comes_in_every_width_in_each_format(
    tmp_path: Path, has_avif: bool, monkeypatch: pytest.MonkeyPatch
) -> None:
    if has_avif and not features.check("avif"):
        pytest.skip("Pillow has no AVIF here")
    monkeypatch.setattr(encode, "_HAS_AVIF", has_avif)
    formats = [*(["image/avif"] if has_avif else []), "image/webp", "image/jpeg"]
    result = made(tmp_path, file_of(photo(2000, 1500), "JPEG"))
    assert (result.width, result.height) == (1600, 1200)
    assert [(source.mime, source.width, source.height) for source in result.sources] == [
        (mime, *size) for mime in formats for size in ((480, 360), (960, 720), (1600, 1200))
    ]
    for source in result.sources:
        image = Image.open(BytesIO(source.content))
        assert image.size == (source.width, source.height)
        assert image.get_format_mimetype() == source.mime
        extension = {"image/avif": "avif", "image/webp": "webp", "image/jpeg": "jpg"}[source.mime]
        assert re.fullmatch(rf"band-pinned-[0-9a-f]{{8}}-{source.width}\.{extension}", source.name)
    assert len({source.name for source in result.sources}) == 3 * len(formats)


@pytest.mark.parametrize("format", FORMATS)
def test_every_format_is_read_whatever_its_name_says(tmp_path: Path, format: str) -> None:
    result = made(tmp_path, file_of(corners(700, 500), format), "photo.txt")
    for mime in {source.mime for source in result.sources}:
        for image in images(result, mime):
            assert_corners(image)


def test_photo_with_a_second_picture_behind_it_is_read(tmp_path: Path) -> None:
    data = file_of(corners(3300, 2000), "MPO", save_all=True, append_images=[Image.new("RGB", (3300, 2000), RED)])
    result = made(tmp_path, data)
    assert set(without_avif(result)) == {"image/webp", "image/jpeg"}
    assert_corners(images(result, "image/webp")[-1])


@pytest.mark.parametrize(
    ("size", "widths"),
    [
        ((1600, 1200), [480, 960, 1600]),
        ((1599, 1200), [480, 960, 1599]),
        ((1000, 800), [480, 1000]),  # 960 would hardly differ from 1000
        ((1100, 800), [480, 960, 1100]),
        ((480, 300), [480]),
        ((100, 300), [100]),
        ((1, 1), [1]),
        ((3000, 40), [480, 960, 1600]),
        ((400, 12_800), [200]),  # four times as high as the widest width, at most
    ],
)
def test_picture_is_never_enlarged(tmp_path: Path, size: tuple[int, int], widths: list[int]) -> None:
    result = made(tmp_path, file_of(Image.new("RGB", size, RED), "JPEG"))
    assert [image.width for image in images(result, "image/webp")] == widths
    for source in result.sources:
        assert abs(source.height - size[1] * source.width / size[0]) <= 1
    assert (result.width, result.height) == (result.sources[-1].width, result.sources[-1].height)


def test_widths_are_taken_in_any_order_and_once(tmp_path: Path) -> None:
    result = made(tmp_path, file_of(photo(500, 400), "JPEG"), widths=(300, 200, 300))
    assert [source.width for source in result.sources] == [200, 300] * 2


@pytest.mark.parametrize("widths", [(), (0, 300)])
def test_no_width_is_a_fault_of_the_program(tmp_path: Path, widths: tuple[int, ...]) -> None:
    with pytest.raises(ValueError, match="widths"):
        prepare(tmp_path / "photo.jpg", stem="x", widths=widths)


def test_same_file_gives_the_same_bytes_and_another_file_other_names(tmp_path: Path) -> None:
    data = file_of(photo(1200, 900), "JPEG")
    first = made(tmp_path, data, "one.jpg")
    assert made(tmp_path, data, "two.jpg") == first
    other = made(tmp_path, file_of(corners(1200, 900), "JPEG"))
    assert not {source.name for source in first.sources} & {source.name for source in other.sources}


TURNS = {
    1: None,
    2: Image.Transpose.FLIP_LEFT_RIGHT,
    3: Image.Transpose.ROTATE_180,
    4: Image.Transpose.FLIP_TOP_BOTTOM,
    5: Image.Transpose.TRANSPOSE,
    6: Image.Transpose.ROTATE_90,
    7: Image.Transpose.TRANSVERSE,
    8: Image.Transpose.ROTATE_270,
}
"""How an upright picture is laid into the file for each EXIF orientation."""


@pytest.mark.parametrize("orientation", TURNS)
@pytest.mark.parametrize(("format", "size"), [("JPEG", (3001, 1999)), ("JPEG", (300, 500)), ("PNG", (301, 201))])
def test_every_orientation_comes_out_upright(
    tmp_path: Path, orientation: int, format: str, size: tuple[int, int]
) -> None:
    turn = TURNS[orientation]
    laid = corners(*size) if turn is None else corners(*size).transpose(turn)
    exif = Image.Exif()
    exif[0x0112] = orientation
    result = made(tmp_path, file_of(laid, format, exif=exif))
    assert result.width == min(1600, size[0])
    assert abs(result.height - size[1] * result.width / size[0]) <= 1
    for mime in {source.mime for source in result.sources}:
        for image in images(result, mime):
            assert_corners(image)
            assert 0x0112 not in image.getexif()


@pytest.mark.parametrize("orientation", [0, 9, 65535])
def test_orientation_that_means_nothing_is_passed_over(tmp_path: Path, orientation: int) -> None:
    exif = Image.Exif()
    exif[0x0112] = orientation
    assert_corners(images(made(tmp_path, file_of(corners(300, 200), "JPEG", exif=exif)), "image/webp")[0])


@pytest.mark.parametrize(("format", "mode"), [("JPEG", "RGB"), ("PNG", "RGB"), ("PNG", "RGBA"), ("PNG", "P")])
def test_colours_of_a_profile_are_turned_to_srgb(tmp_path: Path, format: str, mode: str) -> None:
    red_is_green = profile("RGB", columns=(1, 0, 2))
    image = Image.new("RGB", (200, 100), (255, 0, 0)).convert(mode)
    result = made(tmp_path, file_of(image, format, icc_profile=red_is_green))
    for source in result.sources:
        assert is_near(colour_at(Image.open(BytesIO(source.content)), 0.5, 0.5), (0, 255, 0))


def test_transparent_picture_with_a_profile_keeps_its_transparency(tmp_path: Path) -> None:
    image = Image.new("RGBA", (200, 100), (255, 0, 0, 128))
    result = made(tmp_path, file_of(image, "PNG", icc_profile=profile("RGB", columns=(1, 0, 2))))
    for source in result.sources:
        assert is_near(colour_at(Image.open(BytesIO(source.content)), 0.5, 0.5), (0, 255, 0, 128))


def test_grey_profile_is_turned_to_srgb(tmp_path: Path) -> None:
    linear = profile("GRAY", gamma=1)
    result = made(tmp_path, file_of(Image.new("L", (200, 100), 55), "JPEG", icc_profile=linear))
    # IEC 61966-2-1: 55/255 of the light is 128/255 in sRGB.
    assert is_near(colour_at(images(result, "image/jpeg")[0], 0.5, 0.5), (128, 128, 128), within=3)


@pytest.mark.parametrize("given", [b"no profile", profile("RGB")[:200], profile("GRAY"), b""])
def test_profile_that_does_not_fit_leaves_the_colours_as_they_stand(tmp_path: Path, given: bytes) -> None:
    image = Image.new("CMYK", (200, 100), (0, 255, 255, 0))
    result = made(tmp_path, file_of(image, "JPEG", icc_profile=given))
    assert is_near(colour_at(images(result, "image/jpeg")[0], 0.5, 0.5), (255, 0, 0))


def test_grey_photo_with_an_rgb_profile_is_read(tmp_path: Path) -> None:
    result = made(tmp_path, file_of(Image.new("L", (200, 100), 90), "JPEG", icc_profile=profile("RGB")))
    assert is_near(colour_at(images(result, "image/jpeg")[0], 0.5, 0.5), (90, 90, 90), within=6)


def test_four_ink_picture_becomes_rgb(tmp_path: Path) -> None:
    for size in ((300, 200), (4000, 100)):
        result = made(tmp_path, file_of(Image.new("CMYK", size, (0, 0, 255, 0)), "JPEG"))
        assert is_near(colour_at(images(result, "image/webp")[-1], 0.5, 0.5), (255, 255, 0))


def test_sixteen_bits_of_grey_are_scaled_not_cut(tmp_path: Path) -> None:
    row = b"\0" + b"".join(value.to_bytes(2) for value in (0, 16_384, 32_768, 49_152)) * 1
    result = made(tmp_path, png(4, 1, depth=16, colour=0, pixels=row))
    image = images(result, "image/png")[0].convert("L")
    assert [image.getpixel((x, 0)) for x in range(4)] == [0, 64, 128, 192]


def test_sixteen_bits_of_colour_are_read(tmp_path: Path) -> None:
    row = b"\0" + b"".join(value.to_bytes(2) for value in (65_535, 32_768, 0)) * 40
    result = made(tmp_path, png(40, 1, depth=16, pixels=row))
    assert is_near(colour_at(images(result, "image/webp")[0], 0.5, 0.5), (255, 128, 0), within=3)


@pytest.mark.parametrize("mode", ["1", "L", "P", "RGB", "RGBA", "LA"])
def test_every_kind_of_pixel_is_read(tmp_path: Path, mode: str) -> None:
    image = Image.new("L", (60, 40), 255)
    image.paste(0, (0, 0, 30, 40))
    result = made(tmp_path, file_of(image.convert(mode), "PNG"))
    for source in result.sources:
        saved = Image.open(BytesIO(source.content))
        assert is_near(colour_at(saved, 0.2, 0.5)[:3], (0, 0, 0))
        assert is_near(colour_at(saved, 0.8, 0.5)[:3], (255, 255, 255))


@pytest.mark.skipif(not features.check("avif"), reason="Pillow has no AVIF here")
@pytest.mark.parametrize("image", [photo(1600, 1200), corners(1600, 1200)], ids=["photo", "drawing"])
def test_avif_is_made_only_where_it_is_smaller_than_webp(tmp_path: Path, image: Image.Image) -> None:
    result = made(tmp_path, file_of(image, "PNG"))
    widest = {source.mime: len(source.content) for source in result.sources}
    alone = BytesIO()
    image.save(alone, "AVIF", quality=60, speed=8, max_threads=1)
    smaller = len(alone.getvalue()) < widest["image/webp"]
    assert ("image/avif" in widest) == smaller
    assert smaller == (image.getcolors(9) is None), "neither a photo nor a drawing tells the two apart"


def test_drawing_goes_into_png_and_webp_without_loss(tmp_path: Path) -> None:
    drawing = Image.new("RGB", (400, 300), (255, 255, 255))
    for x in range(0, 400, 20):
        drawing.paste(RED, (x, 0, x + 3, 300))
    result = made(tmp_path, file_of(drawing, "PNG"))
    assert [source.mime for source in result.sources] == ["image/webp", "image/png"]
    for source in result.sources:
        assert Image.open(BytesIO(source.content)).convert("RGB").tobytes() == drawing.tobytes()


def test_photo_in_png_goes_into_jpeg(tmp_path: Path) -> None:
    result = made(tmp_path, file_of(photo(600, 400), "PNG"))
    assert without_avif(result) == ["image/webp"] * 2 + ["image/jpeg"] * 2


def test_photo_in_few_colours_goes_into_jpeg_where_that_is_smaller(tmp_path: Path) -> None:
    result = made(tmp_path, file_of(photo(600, 400).quantize(256), "PNG"))
    assert without_avif(result) == ["image/webp"] * 2 + ["image/jpeg"] * 2


def test_transparent_photo_goes_into_png_and_stays_transparent(tmp_path: Path) -> None:
    image = photo(600, 400)
    image.putalpha(Image.linear_gradient("L").resize((600, 400)))
    result = made(tmp_path, file_of(image, "WEBP", lossless=True))
    assert set(without_avif(result)) == {"image/webp", "image/png"}
    for source in result.sources:
        saved = Image.open(BytesIO(source.content))
        assert colour_at(saved, 0.5, 0.02)[3] < 20
        assert colour_at(saved, 0.5, 0.98)[3] > 235


def test_photo_that_only_could_be_transparent_goes_into_jpeg(tmp_path: Path) -> None:
    image = photo(300, 200)
    image.putalpha(255)
    result = made(tmp_path, file_of(image, "PNG"))
    assert without_avif(result) == ["image/webp", "image/jpeg"]


@pytest.mark.parametrize("format", ["PNG", "GIF"])
def test_transparent_colour_of_a_palette_stays_transparent(tmp_path: Path, format: str) -> None:
    image = Image.new("P", (100, 100), 1)
    image.putpalette([255, 0, 0, 0, 0, 255])
    image.paste(0, (0, 0, 50, 100))
    result = made(tmp_path, file_of(image, format, transparency=0))
    for source in result.sources:
        saved = Image.open(BytesIO(source.content))
        assert colour_at(saved, 0.2, 0.5)[3] == 0
        assert colour_at(saved, 0.8, 0.5) == (0, 0, 255, 255)


@pytest.mark.parametrize("format", ["GIF", "WEBP", "PNG"])
def test_moving_picture_shows_its_first_moment(tmp_path: Path, format: str) -> None:
    later = [Image.new("RGB", (200, 100), colour) for colour in (GREEN, BLUE)]
    data = file_of(Image.new("RGB", (200, 100), RED), format, save_all=True, append_images=later, duration=100)
    for source in made(tmp_path, data).sources:
        saved = Image.open(BytesIO(source.content))
        assert getattr(saved, "n_frames", 1) == 1
        assert is_near(colour_at(saved, 0.5, 0.5), RED)


@pytest.mark.parametrize("orientation", TURNS)
@pytest.mark.parametrize("format", ["JPEG", "PNG", "WEBP"])
def test_size_of_a_file_is_that_of_the_upright_picture(tmp_path: Path, orientation: int, format: str) -> None:
    turn = TURNS[orientation]
    laid = corners(300, 500) if turn is None else corners(300, 500).transpose(turn)
    exif = Image.Exif()
    exif[0x0112] = orientation
    place = put(tmp_path, file_of(laid, format, exif=exif), "photo.jpg")
    assert upright_size(place) == (300, 500)


def test_size_of_a_file_that_is_no_picture_is_told_as_when_it_is_made(tmp_path: Path) -> None:
    place = put(tmp_path, b"hello", "photo.jpg")
    assert isinstance(upright_size(place), Trouble)
    assert upright_size(place) == prepare(place, stem="x")
    assert upright_size(tmp_path / "missing.jpg") == prepare(tmp_path / "missing.jpg", stem="x")


@pytest.mark.parametrize("format", ["JPEG", "PNG", "WEBP"])
@pytest.mark.parametrize("share", [0.3, 0.7])
def test_file_that_is_cut_off_has_no_size(tmp_path: Path, format: str, share: float) -> None:
    whole = file_of(corners(300, 500), format)
    place = put(tmp_path, whole[: int(len(whole) * share)], "photo.jpg")
    assert isinstance(upright_size(place), Trouble)
    assert upright_size(place) == prepare(place, stem="x")
