"""Whatever the sizes: drawn lengths are true to scale, words stand apart and inside, the XML is sound."""

from __future__ import annotations

import pytest
from diagrams.reading_svg import SVG, measured, parsed, pictures, text_boxes, window
from diagrams.sewn_pictures import orders, to_scale
from hypothesis import HealthCheck, given, settings

from sitegen.diagrams import Drawing, write_svg

many = settings(
    max_examples=100, deadline=None, suppress_health_check=[HealthCheck.too_slow, HealthCheck.filter_too_much]
)


@many
@given(pictures | to_scale)
def test_every_drawn_length_is_true_to_its_scale_and_inside(drawing: Drawing) -> None:
    svg = write_svg(drawing, "p")
    lines, edge = measured(svg), window(svg)
    assert lines
    for line in lines:
        assert line.drawn_mm == pytest.approx(float(line.mm), rel=0.005), line.name
        for x, y in (line.start, line.end):
            assert edge.left <= x * 1000 <= edge.right, line.name
            assert edge.top <= y * 1000 <= edge.bottom, line.name


@many
@given(pictures | to_scale | orders())
def test_words_neither_overlap_nor_leave_the_picture(drawing: Drawing) -> None:
    svg = write_svg(drawing, "p")
    edge, boxes = window(svg), text_boxes(svg)
    for place, (said, box) in enumerate(boxes):
        assert edge.left <= box.left, said
        assert box.right <= edge.right, said
        assert edge.top <= box.top, said
        assert box.bottom <= edge.bottom, said
        for other_said, other in boxes[place + 1 :]:
            assert not box.overlaps(other), (said, other_said)


@many
@given(pictures | to_scale | orders())
def test_title_and_description_are_there_and_pointed_at(drawing: Drawing) -> None:
    root = parsed(write_svg(drawing, "one"))
    title, description = root[0], root[1]
    assert (title.tag, description.tag) == (f"{SVG}title", f"{SVG}desc")
    assert title.text
    assert description.text
    assert root.attrib["aria-labelledby"].split() == [title.attrib["id"], description.attrib["id"]]
    assert root.attrib["role"] == "img"
