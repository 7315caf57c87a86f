"""``sitegen size``: a size by measurements, with the sum that decided, and clear words where there is none to choose."""

from __future__ import annotations

from pathlib import Path

import pytest
from content import folder

from sitegen.cli import main

WOVEN = (
    "sizes: [S, M, L]\n"
    "body: {bust: '34, 36, 38 in', waist: '26, 28, 30 in'}\n"
    "fabrics: {main: {name: linen, structure: woven}}\n"
    "pieces: {front: {cut: 2, fabric: main, edges: {chest: '18 1/2, 19 3/4, 21 in'}}}\n"
    "girths: {round: {edges: [front.chest, front.chest], body: bust}}\n"
)


def tee(root: Path, text: str = WOVEN) -> str:
    folder(root, text)
    return str(root / "tutorials" / "tee")


def test_size_is_told_with_its_working(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["size", tee(tmp_path), "bust=36 1/4in", "waist=27.5"]) == 0
    assert capsys.readouterr().out == (
        "Size M, every measurement asks for this size.\n"
        "\n"
        "bust 36 1/4 in: size M, between M and L\n"
        "    bust over the smaller size: bust of the person 36 1/4 in − bust of size M 36 in = 1/4 in (between sizes: the"
        " smaller one still leaves the ease wanted)\n"
        "    ease at the bust: garment of size M 39 1/2 in − bust of the person 36 1/4 in = 3 1/4 in\n"
        "\n"
        "waist 27 1/2 in: size M\n"
        "    waist of the size less the person's: waist of size M 28 in − waist of the person 27 1/2 in = 1/2 in (the"
        " smallest size that is no less than the person)\n"
        "\n"
        "By measurement, never by age.\n"
    )


def test_person_between_sizes_of_a_close_woven_takes_the_larger(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["size", tee(tmp_path, WOVEN.replace("19 3/4", "19 1/2")), "bust=36.25"]) == 0
    out = capsys.readouterr().out
    assert out.startswith("Size L, by the bust, the only measurement given.\n")
    assert "between sizes: the larger one, since it can be taken in" in out
    assert out.endswith("By measurement, never by age. Not measured: waist.\n")


def test_person_between_sizes_of_a_knit_takes_the_smaller(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["size", tee(tmp_path, WOVEN.replace("woven", "knit")), "waist=28.25"]) == 0
    assert "waist 28 1/4 in: size M, between M and L" in capsys.readouterr().out


def test_measurement_that_matters_most_decides(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    name = tee(tmp_path)
    assert main(["size", name, "bust=34", "waist=30"]) == 0
    assert capsys.readouterr().out.startswith("Size L, by the waist: none asks for a larger size")
    assert main(["size", name, "bust=34", "waist=30", "--by", "bust"]) == 0
    assert capsys.readouterr().out.startswith(
        "Size S, by the bust, which matters most in this garment; the waist asks for 2"
    )


def test_units_are_those_shown_and_those_of_bare_numbers(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["size", tee(tmp_path), "waist=71", "--units", "centimetres"]) == 0
    assert "waist 71 cm: size M\n" in capsys.readouterr().out


def test_person_outside_every_size_is_told_so(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["size", tee(tmp_path), "bust=44in"]) == 0
    assert "bust 44 in: size L, above the largest size\n" in capsys.readouterr().out


def test_each_run_of_sizes_gives_its_own(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    text = "sizes: {child: [92, 98], adult: [S, M]}\nbody: {bust: '21, 22, 33, 35 in'}\n"
    assert main(["size", tee(tmp_path, text), "bust=34in"]) == 0
    lines = capsys.readouterr().out.splitlines()
    assert [line for line in lines if line.startswith("Of sizes")] == [
        "Of sizes 92 to 98: size 98, by the bust, the only measurement given; the bust is above the largest size.",
        "Of sizes S to M: size M, by the bust, the only measurement given.",
    ]


@pytest.mark.parametrize(
    ("text", "measured", "message"),
    [
        (WOVEN, ["wiast=28in"], "there is no body measurement “wiast” in this tutorial. Nearest: waist."),
        (
            WOVEN,
            ["age=5"],
            "there is no body measurement “age” in this tutorial. A size is chosen by measuring, never by age. Its size"
            " table has bust, waist.",
        ),
        ("sizes: [S, M]\n", ["bust=36in"], "there is no body measurement “bust” in this tutorial. It has none at all."),
        (
            WOVEN,
            ["bust=3x"],
            "bust: expected one length and nothing behind it, found “3x”. Example: bust=36in",
        ),
        (WOVEN, ["bust="], "bust: expected a length, found “”. Example: bust=36in"),
        (WOVEN, ["bust=0"], "bust: expected a length of more than nothing, found “0”. Example: bust=36in"),
        (WOVEN, ["bust"], "“bust” is not a measurement. Example: bust=36in"),
        (WOVEN, ["bust=36in", "bust=37in"], "bust is given twice."),
        (WOVEN, ["bust=36in", "--by", "waist"], "--by waist: it is none of the measurements given."),
        ("body: {bust: 36 in}\n", ["bust=36in"], "this tutorial has one size only, so there is none to choose."),
        (
            "sizes: [S, M]\nbody: {bust: '36, 34 in'}\n",
            ["bust=36in"],
            "bust: sizes must go from the smallest to the largest.",
        ),
        (
            "sizes: [S, M, L]\nbody: {bust: '34, 36 in'}\n",
            ["bust=36in"],
            "no measurement of the person is in the size table.",
        ),
    ],
)
def test_what_stands_in_the_way_is_told(
    text: str, measured: list[str], message: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["size", tee(tmp_path, text), *measured]) == 2
    shown = capsys.readouterr()
    assert (shown.out, shown.err) == ("", f"sitegen: {message}\n")


def test_all_that_is_wrong_comes_at_once(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["size", tee(tmp_path), "bust=3x", "wiast=2in", "hip"]) == 2
    assert len(capsys.readouterr().err.splitlines()) == 3


def test_folder_that_is_not_there_is_told(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["size", "no-such-folder", "bust=36in"]) == 2
    assert "no-such-folder is not a folder that can be read" in capsys.readouterr().err
