"""Times of the cards, and the words on them: what is said, where, and what to put instead."""

from __future__ import annotations

from pathlib import Path

import pytest
from content import reviewed

from sitegen.findings import Finding


def of(check: str, root: Path, text: str, **files: str) -> list[Finding]:
    return [each for each in reviewed(root, text, **files).findings if each.check == check]


def videos(root: Path, check: str, *times: str) -> list[Finding]:
    files = {
        f"steps__{number:02}_dot_yaml": f'title: Card {number}\ntext: Sew.\nvideo: "{time}"\n'
        for number, time in enumerate(times, 1)
    }
    return of(check, root, "", **files)


def prose(root: Path, text: str, before: str = "Read all cards first.") -> list[str]:
    found = of(
        "term-unexplained", root, f"before_you_start: {before}\n", steps__01_dot_yaml=f"title: A\ntext: {text}\n"
    )
    return [each.said for each in found]


# -- time -------------------------------------------------------------------------------------------------------


def test_video_time_before_that_of_the_card_before_is_wrong(tmp_path: Path) -> None:
    (found,) = videos(tmp_path, "video-order", "0:40", "14:20", "1:50", "20:00")
    assert found.message == (
        "The time in the video of this card, 1:50, lies before 14:20, the time of the card before, “Card 2”."
    )
    assert (found.place.file, found.place.line, found.place.column) == ("folder/tutorials/tee/steps/03.yaml", 3, 9)
    assert (found.said, found.severity.value) == ("1:50", "wrong")


def test_card_that_alone_is_too_late_is_the_one_named(tmp_path: Path) -> None:
    (found,) = videos(tmp_path, "video-order", "0:40", "41:20", "15:50", "20:00")
    assert found.message == (
        "The time in the video of this card, 41:20, lies after 15:50, the time of the next card, “Card 3”."
    )
    assert found.place.file.endswith("steps/02.yaml")


@pytest.mark.parametrize("times", [("0:40", "0:40", "59:59", "1:00:00"), ("75:10", "1:20:00"), ("3:05",)])
def test_times_in_order_are_left_alone(times: tuple[str, ...], tmp_path: Path) -> None:
    assert videos(tmp_path, "video-order", *times) == []
    assert videos(tmp_path, "video-time", *times) == []


@pytest.mark.parametrize(
    ("time", "right"),
    [("14.20", "14:20"), ("14:75", ""), ("1:75:10", ""), ("14", ""), ("14:2", ""), ("14,05", "14:05"), ("14.75", "")],
)
def test_time_that_is_none_is_put_right_where_it_can_be(time: str, right: str, tmp_path: Path) -> None:
    (found,) = videos(tmp_path, "video-time", time)
    assert found.message == (
        f"“{time}” is no time in a video. Write minutes and seconds, such as 14:20, or hours before them, such as 1:14:20."
    )
    assert (found.said, found.should_be) == (time, right)


def test_time_that_is_none_does_not_put_the_others_out_of_order(tmp_path: Path) -> None:
    assert videos(tmp_path, "video-order", "0:40", "14.20", "15:50") == []


@pytest.mark.parametrize(
    ("minutes", "message"),
    [
        ("0", "This card takes 0 minutes. Leave minutes out if they are not known."),
        (
            "300",
            "This card takes 300 minutes, more than four hours. Is there a digit too many, or should these be several"
            " cards?",
        ),
    ],
)
def test_odd_minutes_are_doubted(minutes: str, message: str, tmp_path: Path) -> None:
    (found,) = of("minutes-odd", tmp_path, "", steps__01_dot_yaml=f"title: A\nminutes: {minutes}\ntext: B.\n")
    assert (found.message, found.place.line, found.said) == (message, 2, minutes)


@pytest.mark.parametrize("minutes", ["1", "240"])
def test_minutes_at_the_bounds_are_left_alone(minutes: str, tmp_path: Path) -> None:
    assert of("minutes-odd", tmp_path, "", steps__01_dot_yaml=f"title: A\nminutes: {minutes}\ntext: B.\n") == []


# -- words ------------------------------------------------------------------------------------------------------


def test_unexplained_word_is_a_hint_at_its_first_place_with_a_line_for_the_glossary(tmp_path: Path) -> None:
    (found,) = of("term-unexplained", tmp_path, "", steps__01_dot_yaml="title: A\ntext: Baste it. Then baste that.\n")
    assert found.message == (
        "“Baste” is a word of the trade that beginners may not know. Explain it in a text, or in glossary.yaml, such as"
        " baste: To sew with long, loose stitches that are taken out later."
    )
    assert (found.severity.value, found.place.line, found.place.column, found.place.end_column) == ("hint", 2, 7, 12)


@pytest.mark.parametrize(
    "glossary",
    [
        "selvage: The firm edge of the cloth.\n",
        "firm edge: {means: The firm edge of the cloth., us: selvage, uk: selvedge}\n",
        "edge of the cloth: {means: The firm edge., us: selvage line, uk: 'list, selvedges'}\n",
    ],
)
def test_word_in_the_glossary_is_explained_under_any_of_its_names(glossary: str, tmp_path: Path) -> None:
    step = "title: A\ntext: Cut off the selvedge.\n"
    assert of("term-unexplained", tmp_path, "", steps__01_dot_yaml=step) != []
    (tmp_path / "glossary.yaml").write_text(glossary, encoding="utf-8")
    assert of("term-unexplained", tmp_path, "", steps__01_dot_yaml=step) == []


@pytest.mark.parametrize(
    "text",
    [
        "Pull the selvages. The selvages are the firm side edges.",
        "Fold it on the selvage. A selvage (selvedge, in the UK) is the firm edge.",
        "Draw one new line. This is called truing.",
        "Cut a short snip. This is a notch.",
        "To baste means to sew with long stitches.",
    ],
)
def test_word_that_a_card_explains_is_left_alone(text: str, tmp_path: Path) -> None:
    assert prose(tmp_path, text) == []


def test_word_that_stands_before_the_cards_is_left_alone(tmp_path: Path) -> None:
    assert prose(tmp_path, "Cut off the selvage.", before="You will meet the selvage, the firm edge.") == []


@pytest.mark.parametrize(
    "text",
    [
        "The same is true of the armhole. It slips over the hip with ease.",
        "Hold the strips together with clips. The right side is facing you.",
        "The child takes a nap. Lay the cloth out. Tie a bow.",
        "It is {elastic.casing} deep.",
    ],
)
def test_plain_words_that_look_like_those_of_the_trade_are_left_alone(text: str, tmp_path: Path) -> None:
    assert prose(tmp_path, f'"{text}"') == []


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("Ease in the cap.", "Ease in"),
        ("Clip into the curve and clip the corners.", "Clip into"),
        ("Grade the seam allowances of it.", "Grade the seam allowances"),
        ("True the edge.", "True the edge"),
        ("Understitch the neck facing.", "neck facing"),
        ("Leave the raw\n  edge open.", "raw edge"),
    ],
)
def test_word_of_the_trade_is_found_in_all_its_forms(text: str, said: str, tmp_path: Path) -> None:
    assert said in prose(tmp_path, text)


def test_note_for_the_teacher_needs_no_glossary(tmp_path: Path) -> None:
    assert of("term-unexplained", tmp_path, "", steps__01_dot_yaml="title: A\ntext: B.\nteacher: Baste first.\n") == []


def card(acts: int, words: int, head: str = "") -> str:
    items = "".join("  1. Pin it.\n" for _ in range(acts))
    return f"title: A\ntext: |\n{items}\n{head}  {'word ' * words}\n"


def test_card_with_too_much_in_one_part_is_a_hint(tmp_path: Path) -> None:
    (found,) = of("step-too-long", tmp_path, "", steps__01_dot_yaml=card(13, 10))
    assert found.message == (
        "This card has 13 acts in one list, which is much to follow at the machine. Make two cards of it, or parts with"
        " headings."
    )
    (found,) = of("step-too-long", tmp_path, "", steps__01_dot_yaml=card(0, 301))
    assert found.message.startswith("This card has 301 words in one part, which")
    assert (found.place.line, found.severity.value) == (3, "hint")


@pytest.mark.parametrize("text", [card(12, 10), card(0, 300), card(10, 290, head="  **Back.** The same.\n\n")])
def test_card_that_can_be_followed_is_left_alone(text: str, tmp_path: Path) -> None:
    assert of("step-too-long", tmp_path, "", steps__01_dot_yaml=text) == []
