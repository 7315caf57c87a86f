"""Measurements in running text: every notation that people use, and what only looks like one."""

from __future__ import annotations

from fractions import Fraction

import pytest

from sitegen.prose import Kind, read
from sitegen.quantities import Unit

MM = {"in": Fraction(127, 5), "cm": Fraction(10), "mm": Fraction(1), "m": Fraction(1000), "yd": Fraction(4572, 5)}


def lengths(text: str) -> list[tuple[str, Fraction, Fraction | None]]:
    return [(each.text, each.low, each.high) for each in read(text) if each.kind is Kind.LENGTH]


@pytest.mark.parametrize(
    ("text", "value", "unit"),
    [
        ('3/8"', "3/8", "in"),
        ("⅜\"", "3/8", "in"),
        ("3/8-inch", "3/8", "in"),
        ('1 1/2"', "3/2", "in"),
        ("1-1/2 in", "3/2", "in"),
        ("1½″", "3/2", "in"),
        (".5 in", "1/2", "in"),
        ("0.6cm", "3/5", "cm"),
        ("6 mm", "6", "mm"),
        ("1,5 cm", "3/2", "cm"),
        ("2¼ yards", "9/4", "yd"),
        ("1/8 yd", "1/8", "yd"),
        ("1.5 m", "3/2", "m"),
        ("1 yd 9 in", "5/4", "yd"),
        ("5' 2\"", "62", "in"),
        ("three eighths of an inch", "3/8", "in"),
        ("half an inch", "1/2", "in"),
        ("an inch and a half", "3/2", "in"),
        ("two and a half inches", "5/2", "in"),
        ("a quarter inch", "1/4", "in"),
        ("three-quarter inch", "3/4", "in"),
        ("five eights of an inch", "5/8", "in"),
        ("one and three eighths of a yard", "11/8", "yd"),
        ("twenty-two and a half inches", "45/2", "in"),
        ("point six of a centimeter", "3/5", "cm"),
        ("two point five centimetres", "5/2", "cm"),
        ("3-8 of an inch", "3/8", "in"),
        ("1∕2 in", "1/2", "in"),
        ("1 1∕2 in", "3/2", "in"),
        ("5/8ths of an inch", "5/8", "in"),
        ("1/8th of an inch", "1/8", "in"),
        ("1/16th inch", "1/16", "in"),
        ("5/8’’", "5/8", "in"),
        ("1,250 mm", "1250", "mm"),
        ("1 000 mm", "1000", "mm"),
        ("1\u202f250\u202fmm", "1250", "mm"),
        ("1-3-8 inches", "11/8", "in"),
        ("one hundred and five centimetres", "105", "cm"),
    ],
)  # fmt: skip
def test_each_notation_is_read_whole(text: str, value: str, unit: str) -> None:
    assert lengths(f"the strip takes {text} here") == [(text, Fraction(value) * MM[unit], None)]


@pytest.mark.parametrize(
    ("text", "low", "high", "unit"),
    [
        ("28\" to 60\"", 28, 60, "in"),
        ("71 to 152.5 cm", 71, Fraction(305, 2), "cm"),
        ("1/4- to 3/8-in.", Fraction(1, 4), Fraction(3, 8), "in"),
        ("1/4 to 3/8 in", Fraction(1, 4), Fraction(3, 8), "in"),
        ("3–5 cm", 3, 5, "cm"),
        ("3-8 inches", 3, 8, "in"),
        ('2 1/2 - 3 1/2"', Fraction(5, 2), Fraction(7, 2), "in"),
        ('1-1/2" - 2-1/2"', Fraction(3, 2), Fraction(5, 2), "in"),
        ('44/45"', 44, 45, "in"),
        ("58/60 in", 58, 60, "in"),
        ("110/115 cm", 110, 115, "cm"),
    ],
)  # fmt: skip
def test_a_range_is_one_measurement(text: str, low: Fraction, high: Fraction, unit: str) -> None:
    assert lengths(f"a seam of {text} wide") == [(text, low * MM[unit], high * MM[unit])]


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("a rectangle 5 x 7 in", ["5", "7 in"]),
        ("cut it 1 + 40 + 1 cm wide", ["1", "40", "1 cm"]),
        ("mark at 4, 6 or 8 in", ["4", "6", "8 in"]),
        ("plus 2 × 1/2 in of seams", ["1/2 in"]),
        ("sew that at three eighths", ["three eighths"]),
        ("take a five eighths seam allowance", ["five eighths"]),
        ("two half inch seams", ["half inch"]),
        ("join all 4 in the middle, then a 2 in hem", ["2 in"]),
        ('he says "cut 2" and then a 3/8" seam', ['3/8"']),
        ("mark 1 1/4 in below", ["1 1/4 in"]),
        ("add 6 in for the hem and 4 for the rod pocket", ["6 in", "4"]),
        ("cut 45/64 in off", ["45/64 in"]),
        ("drop 135 cm, hem 15 cm – 160 cm in all", ["135 cm", "15 cm", "160 cm"]),
    ],
)
def test_units_are_carried_over_and_supplied_only_where_a_length_fits(text: str, found: list[str]) -> None:
    assert [each[0] for each in lengths(text)] == found


@pytest.mark.parametrize(
    "text",
    [
        "needle 80/12 and a twin needle 2.0/80", "size 12 or 14", "ages 3 to 6", "step 3 in the leaflet", "view 2",
        "$5.50 a yard, £3 a metre", "on 12/3/2024 at 10:30", "May 3, 2025", "No. 5 thread, 40 wt", "stitch length 2.5",
        "zigzag 3 mm wide and 1.5 mm long", "10 stitches per inch", "the presser foot", "fold it in half",
        "two thirds of the way", "chapter 4, page 12", "my daughter is seven and a half", "https://example.org/3in",
        "tension 4, speed 3", "it went for nine dollars a yard", "3 seams in all", "1,250 m", "gathered to one half: so far",
        "lesson 3-8", "ages 3-8", "steps 3-8", "knit row 3-8", "3-8 people", "pages 5-8", "room 12 in building 4",
        "I bought 3 in March and 4 in May", "cut 4 in 2 colours", "a 5 in 1 tool", "a 10-in-1 foot", "back in 2024 I cut it",
    ],
)  # fmt: skip
def test_what_only_looks_like_a_length_is_left_alone(text: str) -> None:
    assert lengths(text) == []


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("85%", Kind.PERCENT), ("two thirds of the edge", Kind.RATIO), ("a 2.5 mm stitch", Kind.STITCH),
        ("180 g/m2", Kind.WEIGHT), ("2 square yards", Kind.AREA), ("half an hour", Kind.TIME), ("12 buttons", Kind.COUNT),
    ],
)  # fmt: skip
def test_other_kinds_are_told_apart(text: str, kind: Kind) -> None:
    assert [each.kind for each in read(f"that is {text}")] == [kind]


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("Allow 3 in all round for turning under.", ["3 in"]),
        ("There's 20in between the top button and the bottom one.", ["20in"]),
        ("Cutting took 1 1/2 hours and sewing 4 hours, so 5 1/2 in all.", []),
        ("He does one in twenty-five minutes.", []),
        ('Pocket: cut two, 5 wide x 5 1/2" deep.', ["5", '5 1/2"']),
        ("After washing 48 long × 49 cm wide.", ["48", "49 cm"]),
        ("Her mother told me 4 ft 2 on the phone.", ["4 ft 2"]),
        ("The bed is 4 ft 6 in wide.", ["4 ft 6 in"]),
        ("He is 5ft 10 and a half.", ["5ft 10 and a half"]),
        ("Cut 2 × 27 cm × 18 cm.", ["27 cm", "18 cm"]),
        ("A box of 20 × 27 cm × 18 cm.", ["20", "27 cm", "18 cm"]),
        ("Fold 5 cm.\nthen 3 cm. 2 more follow, 4 cm. wide", ["5 cm", "3 cm", "4 cm."]),
        ("In 2024 I cut 3 inches.", ["3 inches"]),
        ("in 1998 we cut 2 cm off", ["2 cm"]),
        ("Cut 2 150 mm strips.", ["150 mm"]),
        ("A hem of 3 in may do.", ["3 in"]),
        ("Sew the row 3-8 from the edge.", ["3-8"]),
        ("It measures 5 in 1 cm above.", ["5 in", "1 cm"]),
        ("I'm 5'4 if that helps.", ["5'4"]),
        ("For a frock leave a generous hem, from 4in to 3in.", ["4in to 3in"]),
        ("On 132 cm you get twelve, and 11 cm between them.", ["132 cm", "11 cm"]),
        ("Four squares of 4 in fit each way, that is sixteen in all.", ["4 in"]),
        ("It wants 3.1 m of 115 cm wide, or 2.4 m of 150.", ["3.1 m", "115 cm", "2.4 m", "150"]),
        ("Chest 39, waist 34, which is a drop of 6 inches.", ["39", "34", "6 inches"]),
        ("An edge of 24 in the ruffle is 36 in.", ["24 in", "36 in"]),
        ("The waist is thirty-two inches, so the band is thirty-four.", ["thirty-two inches", "thirty-four"]),
    ],
)
def test_a_unit_is_told_from_a_preposition_and_a_length_from_a_count(text: str, found: list[str]) -> None:
    assert [one for one, _, _ in lengths(text)] == found


@pytest.mark.parametrize(
    ("text", "found", "kind", "value"),
    [
        ("a ratio of 1:1.5", "1:1.5", Kind.RATIO, Fraction(2, 3)),
        ("it takes 1 h 30", "1 h 30", Kind.TIME, Fraction(3, 2)),
        ("it takes 1 h 30 min", "1 h 30 min", Kind.TIME, Fraction(3, 2)),
        ("an hour and a half", "an hour and a half", Kind.TIME, Fraction(3, 2)),
        ("stitch length 2,5 – 3.", "2,5 – 3", Kind.STITCH, Fraction(5, 2)),
        ("10 st/in", "10", Kind.STITCH, Fraction(10)),
        ("3 times the width", "3 times", Kind.RATIO, Fraction(3)),
    ],
)
def test_other_measurements_are_read_whole(text: str, found: str, kind: Kind, value: Fraction) -> None:
    assert [(each.text, each.kind, each.low) for each in read(text)] == [(found, kind, value)]


def test_both_sides_of_a_stitch_are_settings_and_how_often_is_no_ratio() -> None:
    assert [each.kind for each in read("zigzag 3.5 wide and 2 long")] == [Kind.STITCH, Kind.STITCH]
    assert read("Log in 5 times.") == ()


def test_place_and_exact_value_stand_with_each() -> None:
    text = "First line.\nCut 3/8 in here."
    (found,) = read(text)
    assert (text[found.start : found.end], found.line, found.column) == ("3/8 in", 2, 5)
    assert found.low_mm == Fraction(381, 40)
    assert found.high_mm is None
    assert found.unit is Unit.IN


def test_the_authors_unit_is_that_of_most_lengths() -> None:
    (_, _, bare) = (
        each for each in read("a 2 cm hem, 4 cm casing and a 1.5 seam allowance") if each.kind is Kind.LENGTH
    )
    assert bare.low_mm == 15
    (bare,) = (each for each in read("a 1.5 seam allowance", author=Unit.CM) if each.kind is Kind.LENGTH)
    assert bare.low_mm == 15


def test_reading_is_the_same_every_time() -> None:
    text = '28" to 60" (71 to 152.5 cm), half an inch, 5 x 7 in, sew at three eighths'
    assert read(text) == read(text)
