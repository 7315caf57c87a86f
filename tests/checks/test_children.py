"""Nightwear and cords on children's garments: what is said, and where."""

from __future__ import annotations

from pathlib import Path

import pytest
from content import folder

from sitegen.checks import review
from sitegen.findings import Finding

STEP = "title: Take care\ntext: TEXT\ncautions: [pins, cords]\n"


def of(
    check: str, root: Path, *, title: str = "A garment", summary: str = "For a child.", text: str = "", rest: str = ""
) -> list[Finding]:
    head = f"title: {title}\nsummary: {summary}\nmeasured_in: inches\nwearer: child\n"
    made = folder(root, rest, head=head, steps__01_dot_yaml=STEP.replace("TEXT", text or "Look."))
    return [each for each in review(made).findings if each.check == check]


def test_nightwear_without_its_caution_is_doubted_at_the_title(tmp_path: Path) -> None:
    (found,) = of("sleepwear-caution", tmp_path, title="Warm Pyjamas")
    assert found.message == (
        "This is for a child and called “Pyjamas”, but no step has the caution “sleepwear”. Add to a step: cautions:"
        " [sleepwear]. What the law of the place asks comes first."
    )
    assert (found.place.line, found.place.column, found.severity.value) == (1, 8, "doubtful")


@pytest.mark.parametrize("word", ["nightdress", "pajamas", "dressing gown", "sleepwear", "loungewear"])
def test_nightwear_is_known_by_its_names_in_the_summary(word: str, tmp_path: Path) -> None:
    (found,) = of("sleepwear-caution", tmp_path, summary=f"A soft {word} of flannel.")
    assert (found.said, found.place.line, found.place.column) == (word, 2, 17)


@pytest.mark.parametrize(
    "summary", ["Day clothes, not pyjamas.", "Trousers for play.", "A bag without a nightdress in it."]
)
def test_garment_that_is_said_to_be_no_nightwear_is_left_alone(summary: str, tmp_path: Path) -> None:
    assert of("sleepwear-caution", tmp_path, summary=summary) == []


def test_caution_for_nightwear_in_any_step_is_enough(tmp_path: Path) -> None:
    head = "title: Pyjamas\nsummary: Warm.\nmeasured_in: inches\nwearer: WHO\n"
    cautioned = STEP.replace("cords", "sleepwear").replace("TEXT", "Look.")
    for who, step in (("child", cautioned), ("adult", STEP)):
        made = folder(tmp_path, "", head=head.replace("WHO", who), steps__01_dot_yaml=step)
        assert [each for each in review(made).findings if each.check == "sleepwear-caution"] == []


def test_cord_at_the_hood_is_doubted_although_there_is_a_caution(tmp_path: Path) -> None:
    (found,) = of("cord-at-neck", tmp_path, text="Thread the drawstring through the edge of the hood.")
    assert found.message == (
        "This garment is for a child, and a drawstring at its neck or hood can strangle. Rules in the US and in Europe ask"
        " for none there. Close it in another way."
    )
    assert (found.place.line, found.place.column, found.said) == (2, 18, "drawstring")


def test_cord_in_the_supplies_is_doubted_where_it_is_for_the_neck(tmp_path: Path) -> None:
    (found,) = of("cord-at-neck", tmp_path, rest="supplies: [{item: cotton cord, for: the collar}]\n")
    assert (found.said, found.place.line, found.place.column) == ("cotton cord", 5, 19)


@pytest.mark.parametrize(
    "text",
    [
        "Thread the cord through the waist. The hood is sewn next.",
        "Add no cord at the neck.",
        "A neckband of corduroy.",
        "Close the neck with a snap instead of ties.",
    ],
)
def test_cord_that_is_elsewhere_or_is_not_there_is_left_alone(text: str, tmp_path: Path) -> None:
    assert of("cord-at-neck", tmp_path, text=text) == []


def test_cord_at_an_adults_hood_is_left_alone(tmp_path: Path) -> None:
    head = "title: A hooded top\nsummary: Warm.\nmeasured_in: inches\n"
    made = folder(tmp_path, "", head=head, steps__01_dot_yaml=STEP.replace("TEXT", "Thread the cord of the hood."))
    assert "cord-at-neck" not in {each.check for each in review(made).findings}
