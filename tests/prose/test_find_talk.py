"""Lengths that talk says without a unit, and numbers of a talk that are no lengths."""

from __future__ import annotations

from fractions import Fraction

import pytest

from sitegen.prose import Kind, read
from sitegen.quantities import Unit


def said(text: str) -> list[tuple[str, Unit | None]]:
    return [(one.text, one.unit) for one in read(text) if one.kind is Kind.LENGTH]


@pytest.mark.parametrize(
    ("text", "number", "unit"),
    [
        ("the base is 66 centimetres and with the seams it's so 84.5 one way", "84.5", Unit.CM),
        ("it wants to be 20 inches so cut it at 23 leave the ends open", "23", Unit.IN),
        ("the mat is 31 centimetres wide and leave a gap of 14 to turn it", "14", Unit.CM),
        ("the strip is 19 inches and i get two 19s out of that", "19", Unit.IN),
        ("the rug is 48 inches round so half of 48 each is what you need", "48", Unit.IN),
        ("the bag is 15 inches wide and 11 tall when it's done", "11", Unit.IN),
        ("it's 90 centimetres long so that's 270 of piping cord", "270", Unit.CM),
        ("the panel is 26 inches take off 4 and a half and go on", "4 and a half", Unit.IN),
        (
            "the drop is 210 centimetres the pole 180 centimetres that's 71 inches so i add 12 for the lap",
            "12",
            Unit.CM,
        ),
        ("so a thirty four waist needs two inches of ease on top", "thirty four", Unit.IN),
        ("that's two strips of sixty straight off a fifty four inch width", "sixty", Unit.IN),
        ("the yoke is nine inches and the tabs are three so that's twelve write it down", "three", Unit.IN),
        ("my rail is eighty inches so i cut ninety perfect", "ninety", Unit.IN),
        ("i had four metres the coat took two point six so you see", "two point six", Unit.M),
        ("the band is eighteen inches and it finishes at two by eighteen", "two", Unit.IN),
        ("the tail is nine inches adding one at the neck and four at the hem", "one", Unit.IN),
        ("the rug is seventy inches so seventy divided by five that's fourteen", "seventy", Unit.IN),
        ("the seam was 5-8 and i'm trimming mine to a quarter all the way round", "a quarter", Unit.IN),
        ("the length is nineteen and the hem adds two more", "nineteen", Unit.IN),
    ],
)
def test_a_number_that_measures_takes_the_unit_of_the_talk(text: str, number: str, unit: Unit) -> None:
    assert (number, unit) in said(text)


@pytest.mark.parametrize(
    ("text", "number"),
    [
        ("the seam is half an inch and i use a denim needle not a seventy you will break it", "seventy"),
        ("it shrinks by 3 centimetres so wash the flannel at 60 before you cut", "60"),
        ("the strip is 9 inches so there's eleven of you and we need more", "eleven"),
        ("i cut 40 inches in four and then each one is hemmed", "four"),
        ("the elastic is 30 inches so divide that by five and pin it", "five"),
        ("it's 4 inches deep at thirteen dollars a yard so fifteen and a half", "fifteen and a half"),
        ("the hem is 2 inches the first took twelve minutes the last one was nine so", "nine"),
        ("the cord is 6 inches and back to about a three for the rest", "three"),
        ("hem it at 2 inches with the tension at four and the foot off", "four"),
        ("the strap is 24 inches and we need two so that's plenty", "two"),
        ("the webbing is 72 inches and i cut that into six so there", "six"),
        ("the strip is 4 inches and our machine goes to three point five so try it", "three point five"),
        ("the block is 6 inches and we put them in rows of four so count", "four"),
        ("it's a 5 inch hem and the class stops for lunch at twelve so hurry", "twelve"),
        ("each flag is 7 inches times eight so", "eight"),
        ("we had eighteen in the class and every one got half a yard", "eighteen"),
        ("my mum's seventy and she still sews a three inch hem by hand", "seventy"),
        ("i sold fifteen at the fair and every one was ten inches wide", "fifteen"),
        ("the buttons are six millimeters and i buy them by the hundred", "hundred"),
        ("it took forty minutes and then the next took twenty and it's only a six inch zip", "twenty"),
        ("the pattern goes up to a twenty two and i took off an inch", "twenty two"),
    ],
)
def test_what_counts_or_sets_or_costs_is_no_length(text: str, number: str) -> None:
    assert number not in [told for told, _ in said(text)]


@pytest.mark.parametrize(
    ("text", "whole", "value"),
    [
        ("press it up another whole inch and stitch", "another whole inch", Fraction(127, 5)),
        ("and then one more inch for the seam", "one more inch", Fraction(127, 5)),
        ("that's about one seventy three centimetres for the drop", "one seventy three centimetres", Fraction(1730)),
        ("so one oh five inches all round", "one oh five inches", Fraction(2667)),
        ("a hem of 16 mil all round", "16 mil", Fraction(16)),
        ("she's 5 foot 4 and", "5 foot 4", Fraction(8128, 5)),
        ("that's for me at five foot six in a medium", "five foot six", Fraction(8382, 5)),
        ("she measured 18 point 5 inches", "18 point 5 inches", Fraction(4699, 10)),
        ("i had two metres and used one forty on the dress", "one forty", Fraction(1400)),
        ("get a yard and a half of this", "a yard and a half", Fraction(6858, 5)),
        ("it's 18 inches and in centimetres that's 46 or so", "46", Fraction(460)),
    ],
)
def test_a_length_is_read_whole_as_talk_says_it(text: str, whole: str, value: Fraction) -> None:
    assert (whole, value) in [(one.text, one.low) for one in read(text) if one.kind is Kind.LENGTH]


@pytest.mark.parametrize("text", ["a pocket of 12 mil vinyl", "so one twenty inch strip", "cut two ten inch squares"])
def test_a_sheet_and_a_count_are_not_taken_for_parts_of_a_length(text: str) -> None:
    assert all(one.low < 600 for one in read(text))
    assert "12 mil" not in [one.text for one in read(text)]
