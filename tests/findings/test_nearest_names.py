"""Names that are close to a misspelt one."""

from __future__ import annotations

import pytest

from sitegen.findings import either, meant, nearest

KEYS = ("neckband", "neckline", "sleeve", "shoulder", "seam_allowance", "hem")


def test_the_best_name_comes_first() -> None:
    assert nearest("neckbnd", KEYS) == ("neckband", "neckline")
    assert nearest("sleve", KEYS) == ("sleeve",)


def test_letter_case_does_not_count_and_the_name_comes_as_it_is_known() -> None:
    assert nearest("NECKBAND", ["Neckband", "hem"]) == ("Neckband",)


def test_nothing_is_near_to_something_quite_different() -> None:
    assert nearest("xyzzy", KEYS) == ()
    assert nearest("", KEYS) == ()
    assert nearest("hem", ()) == ()


def test_no_more_names_come_than_were_asked_for() -> None:
    names = [f"edge{number}" for number in range(9)]
    assert len(nearest("edge", names)) == 3
    assert nearest("edge4", names, most=1) == ("edge4",)


def test_a_very_long_word_is_compared_by_its_beginning() -> None:
    assert nearest("hem" + "m" * 100_000, KEYS) == ()
    assert nearest("a" * 100_000, ["a" * 100]) == ("a" * 100,)


@pytest.mark.parametrize(
    ("word", "known", "put"),
    [
        ("pouch_outer.cut_widht", "pouch_outer.cut_width", "pouch_outer.cut_width"),
        ("front.sdie", "front.side", "front.side"),
        ("plan of frnt", "plan of front", "plan of front"),
        ("Seam_Alowance", "seam_allowance", "seam_allowance"),
        ("waist", "waist.room", ""),
        ("pouch_outer.cut_width", "pouch_corners.cut_out_width", ""),
        ("pouch_corners.from_tip", "pouch_outer.top", ""),
        ("front.cut_width", "cuff.cut_width", ""),
    ],
)
def test_only_a_misspelt_name_is_put_right(word: str, known: str, put: str) -> None:
    assert meant(word, [known]) == put


@pytest.mark.parametrize(
    ("choices", "words"),
    [(("adult", "child"), "adult or child"), (("a", "b", "c"), "a, b or c"), (("hood",), "hood"), ((), "nothing")],
)
def test_choices_in_words(choices: tuple[str, ...], words: str) -> None:
    assert either(choices) == words
