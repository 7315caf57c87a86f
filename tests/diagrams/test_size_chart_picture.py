"""The size chart as a picture: a bar as long as each body measurement, and the ease beyond it."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest
from diagrams.reading_svg import measured, spots, words

from sitegen.diagrams import CannotDraw, write_svg
from sitegen.diagrams.kinds.size_chart import Measure, SizeChart, describe, draw
from sitegen.quantities import ZERO, System, cm, inches

SIZES = ("XS", "S", "M", "L", "XL", "2XL", "3XL", "4XL")
BODY = tuple(map(inches, (31, 33, 35, 37, 40, 43, 46, 49)))
BUST = Measure("body.bust", "bust", BODY, "bust_round", tuple(each + inches(5) for each in BODY))
HEAD = Measure("body.head", "head", tuple(map(inches, ("43/2", "87/4", 22, "89/4", "45/2", "91/4", 23, "93/4"))))
CHART = SizeChart("Lantern tee", SIZES, (BUST, HEAD))


def test_every_size_has_a_bar_as_long_as_the_body_and_its_ease_beyond() -> None:
    lines = measured(write_svg(draw(CHART), "p"))
    bodies = [line for line in lines if line.name == "body.bust"]
    eases = [line for line in lines if line.name == "bust_round.ease"]
    assert [line.mm for line in bodies] == [each.mm for each in BODY]
    assert [line.mm for line in eases] == [inches(5).mm] * 8
    for body, ease in zip(bodies, eases, strict=True):
        assert ease.start[0] == body.end[0]
        assert body.drawn_mm == pytest.approx(float(body.mm), rel=0.005)
    assert len({line.start[0] for line in lines if line.name.startswith("body.")}) == 1, "all begin at nothing"
    assert len({line.scale for line in lines}) == 1


def test_garment_is_marked_where_it_ends_also_when_it_is_smaller_than_the_body() -> None:
    tight = replace(BUST, garment=tuple(each - inches(3) for each in BODY))
    svg = write_svg(draw(SizeChart("Swimsuit", SIZES, (tight,))), "p")
    begin = next(line for line in measured(svg) if line.name == "body.bust").start[0]
    scale = measured(svg)[0].scale
    ends = [(mark[0][0] - begin) / scale / 25.4 for mark in spots(svg, "mark")][:8]
    assert ends == pytest.approx([28, 30, 32, 34, 37, 40, 43, 46], abs=0.02)
    assert any(said.startswith("the garment is 3\u00a0in") and said.endswith("smaller") for said in words(svg))


def test_each_size_says_its_name_and_number() -> None:
    said = words(write_svg(draw(CHART, first=System.CENTIMETRES), "p"))
    assert said.count("4XL") == 2
    assert "124.5\u00a0cm (49\u00a0in)" in said


def test_one_system_alone_is_all_that_is_said() -> None:
    for only, number, other in ((System.CENTIMETRES, "124.5\u00a0cm", "in"), (System.INCHES, "49\u00a0in", "cm")):
        said = words(write_svg(draw(CHART, only=only), "p"))
        assert number in said
        assert not re.search(rf"\d\s{other}\b", " ".join([*said, describe(CHART, only=only)]))
    assert "The garment is 12.5 cm larger." in describe(CHART, only=System.CENTIMETRES)


def test_ease_is_said_once_or_from_the_least_to_the_most() -> None:
    growing = replace(BUST, garment=tuple(each + cm(10) + cm(row) for row, each in enumerate(BODY)))
    assert "The garment is 5 in (12.5 cm) larger." in describe(CHART)
    assert "10 cm (3 15/16 in) to 17 cm (6 3/4 in) larger" in describe(
        SizeChart("Tee", SIZES, (growing,)), first=System.CENTIMETRES
    )
    both = replace(BUST, garment=tuple(each + inches(row - 1) for row, each in enumerate(BODY)))
    assert "up to 1 in (2.5 cm) smaller and up to 6 in (15 cm) larger" in describe(SizeChart("Tee", SIZES, (both,)))
    same = replace(BUST, garment=BODY)
    assert "The garment is as large as the body." in describe(SizeChart("Tee", SIZES, (same,)))


def test_chart_without_a_garment_has_neither_ease_nor_its_legend() -> None:
    svg = write_svg(draw(SizeChart("Tee", SIZES, (HEAD,))), "p")
    assert not spots(svg, "paper")
    assert not {"ease", "finished garment"} & set(words(svg))
    assert {"ease", "finished garment"} <= set(words(write_svg(draw(CHART), "p")))


@pytest.mark.parametrize(
    ("sizes", "measures"),
    [
        (("one",), (replace(HEAD, body=HEAD.body[:1]),)),
        (SIZES, ()),
        (SIZES, (replace(HEAD, body=HEAD.body[:7]),)),
        (SIZES, (replace(BUST, garment=BUST.garment[:7]),)),
        (SIZES, (replace(HEAD, body=(ZERO, *HEAD.body[1:])),)),
    ],
)
def test_chart_with_nothing_to_compare_cannot_be_drawn(sizes: tuple[str, ...], measures: tuple[Measure, ...]) -> None:
    with pytest.raises(CannotDraw):
        SizeChart("Tee", sizes, measures)
