"""Drafts from captions: where steps part, what they are called, and that no word is lost, changed or added."""

from __future__ import annotations

import re
import time

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st

from sitegen.findings import Severity
from sitegen.prose import Drafted, captions_of, drafted, empty_folder, proofread

Said = list[tuple[float, float, str]]
LONG = "lay it flat on the table in front of you and smooth it with both hands until there is no fold left in it anywhere at all"


def draft(said: Said, name: str = "talk.vtt") -> Drafted:
    text = "WEBVTT\n\n" + "\n\n".join(f"{clock(begins)} --> {clock(ends)}\n{words}" for begins, ends, words in said)
    found = drafted(captions_of(text), name)
    assert found is not None
    return found


def clock(seconds: float) -> str:
    return f"{int(seconds) // 3600:02}:{int(seconds) // 60 % 60:02}:{seconds % 60:06.3f}"


def steps(found: Drafted) -> list[dict[str, str]]:
    return [yaml.safe_load(text) for path, text in sorted(found.files.items()) if "/steps/" in path]


def remarks(found: Drafted, number: int = 1) -> list[str]:
    (text,) = [text for path, text in found.files.items() if f"/steps/{number:02}-" in path]
    return [line for line in text.splitlines() if line.startswith("#   ")]


def words(text: str) -> list[str]:
    """Only letters and digits, since a draft may add full stops and capitals."""
    return re.findall(r"[a-z0-9½'’%/]+", text.replace("\\", "").replace("{{", "{").lower())


# -- where steps part --------------------------------------------------------------------------------------------


def test_pause_longer_than_usual_parts_steps() -> None:
    found = draft([(0, 25, f"Cut the band. {LONG}."), (29, 60, f"Pin the band. {LONG}.")])
    assert [(step["title"], step["video"]) for step in steps(found)] == [
        ("Cut the band", "0:00"),
        ("Pin the band", "0:29"),
    ]


def test_pause_that_is_usual_in_the_talk_parts_nothing() -> None:
    found = draft([(at * 33, at * 33 + 30, f"Pin it here. {LONG}.") for at in range(6)])
    assert found.steps == 1


@pytest.mark.parametrize(
    "opener",
    [
        "Next, pin it.", "Now we're going to pin it.", "The first thing we'll do is pin it.", "Step three, pin it.", "Once that's done, pin it.",
        "Then take your pins.", "Okay, so next we pin it.", "Now let’s pin it.", "First of all, pin it.", "Finally, pin it.",
    ],
)  # fmt: skip
def test_words_that_open_a_step_part_steps(opener: str) -> None:
    assert draft([(0, 25, f"Cut it. {LONG}."), (25, 60, f"{opener} {LONG}.")]).steps == 2


@pytest.mark.parametrize(
    "opener",
    [
        "now we're going to pin it",
        "the first thing is to pin it",
        "once that's done pin it",
        "next we pin it",
        "step two pin it",
    ],
)
def test_opener_in_the_middle_of_a_caption_without_full_stops_parts_steps(opener: str) -> None:
    found = draft([(0, 25, LONG), (25, 30, f"and leave it {opener}"), (30, 60, LONG)])
    assert found.steps == 2
    assert words(steps(found)[1]["text"])[:3] == words(opener)[:3]


@pytest.mark.parametrize(
    "said",
    ["as we did in step two", "until the next step", "and then it is flat", "the next inch", "as in the first thing"],
)
def test_words_that_only_sound_like_an_opener_part_nothing(said: str) -> None:
    assert draft([(0, 25, LONG), (25, 30, f"do it {said} and leave it"), (30, 60, LONG)]).steps == 1


def test_no_step_is_shorter_than_twenty_seconds_or_twenty_five_words() -> None:
    many = [(at * 5, at * 5 + 5, f"Next, pin the side number {at} and sew.") for at in range(40)]
    found = draft(many)
    assert 2 < found.steps <= 10
    for step in steps(found):
        assert len(words(step["text"])) >= 25
    slow = [(at * 21, at * 21 + 18, "Next, pin it.") for at in range(9)]
    assert draft(slow).steps == 1


def test_last_step_that_is_too_short_belongs_to_the_one_before() -> None:
    assert draft([(0, 25, f"Cut it. {LONG}."), (30, 32, "Next, thank you for watching.")]).steps == 1


@pytest.mark.parametrize("stop", [".", ""])
def test_step_that_is_called_by_its_number_is_one_however_short(stop: str) -> None:
    said = [
        (0, 6, f"Hello there, we make a cushion{stop}"),
        (6, 12, f"{'S' if stop else 's'}tep one: cut two squares{stop}"),
        (12, 18, f"{'S' if stop else 's'}tep 2, pin them{stop} Go back to step one if you must{stop}"),
        (18, 24, f"{'Okay, s' if stop else 'okay s'}tep number three is to sew{stop}"),
    ]
    found = steps(draft(said))
    assert [step["video"] for step in found] == ["0:00", "0:06", "0:12", "0:18"]
    assert "step one if you must" in found[2]["text"].lower()


@pytest.mark.parametrize(
    "said",
    ["repeat step two on the other side", "go slow on step three", "as in step two", "Step one. Step one again.", "step two took me a day"],
)  # fmt: skip
def test_step_that_is_only_spoken_of_opens_none(said: str) -> None:
    assert draft([(0, 4, "step one cut it"), (4, 9, f"and {said}"), (9, 12, "pin it")]).steps == 1


def test_words_that_lead_to_an_opener_stay_with_it() -> None:
    found = draft([(0, 25, LONG), (25, 60, f"and leave it okay so the first thing is to pin it {LONG}")])
    assert steps(found)[1]["text"].startswith("Okay so the first thing is to pin it")
    (step,) = steps(draft([(0, 5, "leave it lie"), (5, 9, "so the first thing is to pin it")]))
    assert step["text"] == "Leave it lie. So the first thing is to pin it.\n"


def test_step_never_begins_with_what_the_one_before_ended_with() -> None:
    rolled = (
        (0, 25, f"{LONG}\nand a yard of cord"),
        (25, 30, "and a yard of cord\nand thread"),
        (40, 70, f"and thread\nso the first thing is to cut it in half {LONG}"),
    )
    found = steps(draft(list(rolled)))
    assert [step["text"].split()[:3] for step in found] == [["Lay", "it", "flat"], ["So", "the", "first"]]


def test_pause_inside_a_measurement_parts_nothing() -> None:
    found = draft([(0, 25, f"{LONG} cut sixteen and"), (30, 60, f"a half inches {LONG}")])
    assert found.steps == 1
    assert "sixteen and a half inches" in steps(found)[0]["text"].replace("\n", " ")


def test_captions_out_of_order_are_put_in_order() -> None:
    found = draft([(30, 60, f"Next, pin it. {LONG}."), (0, 25, f"Cut it. {LONG}.")])
    assert [step["video"] for step in steps(found)] == ["0:00", "0:30"]


# -- titles and texts ---------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("said", "title"),
    [
        (
            "Okay, so the next thing we're going to do is fold the band in half, short ends together.",
            "Fold the band in half, short ends together",
        ),
        ("Step three: sew on the neckband, slowly.", "Sew on the neckband, slowly"),
        ("Next, turn it.", "Next, turn it"),
        ("Hi everyone. Today we make a neckband.", "Today we make a neckband"),
        ("Cut a strip that is sixteen and a half inches long, from the rib.", "Cut a strip"),
        ("hey everybody welcome back to the channel today we are making a bag", "Today we are making a bag"),
        ("Welcome to my sewing room! Today we hem a skirt.", "Today we hem a skirt"),
        ("Welcome to the world of hems and seams", "Welcome to the world of hems and seams"),
        ("Hi, and welcome! In this lesson we make a bag.", "In this lesson we make a bag"),
        ("alright next up is the boxed corner", "The boxed corner"),
        ("Press. Then turn the whole thing right side out.", "Press"),
        ("12", "12"),
        ("Use a seam allowance of 5/8 inch (1.6 cm) here.", "Use a seam allowance of 5/8 inch"),
        ("Turn --> press: it's & done #1 @ 5%.", "Turn --> press"),
    ],
)
def test_title_is_the_first_words_without_those_that_lead_to_them(said: str, title: str) -> None:
    (step,) = steps(draft([(0, 5, said)]))
    assert str(step["title"]) == title


def test_captions_with_full_stops_are_left_as_they_are() -> None:
    (step,) = steps(draft([(0, 5, "Cut it. Then,"), (6, 9, "when it's cut, pin"), (10, 15, "it. Sew.")]))
    assert step["text"] == "Cut it. Then, when it's cut, pin it. Sew.\n"


def test_pause_makes_a_sentence_where_captions_have_no_full_stops() -> None:
    (step,) = steps(
        draft(
            [
                (0, 5, "cut it and pin"),
                (5, 9, "it to the front"),
                (9.8, 15, "sew it slowly with"),
                (15.8, 19, "a zigzag"),
            ]
        )
    )
    assert step["text"] == "Cut it and pin it to the front. Sew it slowly with a zigzag.\n"


def test_title_ends_where_a_pause_makes_a_full_stop() -> None:
    (step,) = steps(draft([(0, 4, "okay so today we make a cover"), (5, 9, "you need a zip and thread")]))
    assert step["text"] == "Okay so today we make a cover. You need a zip and thread.\n"
    assert step["title"] == "Today we make a cover"


@pytest.mark.parametrize(
    "said",
    [
        "{size} and {{ and }",
        "a * b _c_ `d` [2](f) <b>g</b> &amp; h",
        "1. cut 2) sew",
        "# not a heading",
        "> quoted",
        "---",
        "- and so",
        "key: value",
    ],
)
def test_signs_that_mark_up_a_text_stand_for_themselves(said: str) -> None:
    (step,) = steps(draft([(0, 5, said)]))
    seen = re.sub(r"\\([\\`*_\[\]<>&#.)+=~-])", r"\1", step["text"]).replace("{{", "{").strip()
    assert words(seen) == words(said.replace("<b>", "").replace("</b>", "").replace("&amp;", "&").replace("{{", "{"))
    assert not re.match(r"(?:#|>|-|=|\+|\d+[.)])(?:\s|$)", step["text"]) or said.startswith("{")


_WORD = st.sampled_from(
    [
        "cut",
        "Next,",
        "it.",
        "half",
        "an",
        "inch",
        "16",
        "1/2",
        "{a}",
        "&",
        "*",
        "then",
        "take",
        "step",
        "two",
        "plus",
        "is",
        "“so”",
        "no",
        "#",
        "1.",
    ]
)
_CUE = st.tuples(st.integers(0, 9), st.integers(1, 30), st.lists(_WORD, min_size=1, max_size=25).map(" ".join))


@given(st.lists(_CUE, min_size=1, max_size=12))
def test_no_word_is_lost_changed_or_added(cues: list[tuple[int, int, str]]) -> None:
    said: Said = []
    now = 0
    for at, (gap, lasts, each) in enumerate(cues):
        text = f"{each} x{at}"  # no caption like another, which might be the same one still shown
        said.append((now + gap, now + gap + lasts, text))
        now += gap + lasts
    found = steps(draft(said))
    assert [word for step in found for word in words(str(step["text"]))] == [
        word for _, _, text in said for word in words(text)
    ]
    times = [int(minutes) * 60 + int(seconds) for step in found for minutes, seconds in [step["video"].split(":")]]
    assert times == sorted(set(times))


# -- numbers ------------------------------------------------------------------------------------------------------


def test_each_number_is_told_with_its_time_its_words_and_what_was_understood() -> None:
    found = draft(
        [
            (0, 60, "Sew a seam of"),
            (65, 70, "three eighths of an inch. Then"),
            (70, 75, "fold 2 cm under, at eighty percent."),
        ]
    )
    assert remarks(found) == [
        '#   1:05  "three eighths of an inch"  = 3/8 in (1 cm)   confirm',
        '#   1:10  "2 cm"  = 2 cm (13/16 in)   confirm',
        '#   1:10  "eighty percent"  = 80%   confirm',
    ]
    assert found.measurements == 3


def test_sum_that_does_not_add_up_is_told() -> None:
    found = draft([(0, 9, "Cut 16 inches plus 1 inch, so 18 inches.")])
    assert found.wrong == 1
    assert remarks(found)[-1].startswith('#   0:00  "18 inches"  should be 17 in: ')


def test_talk_is_read_as_a_whole_for_what_does_not_add_up() -> None:
    said = [
        (0, 25, f"{LONG}. First, cut the strap: 2 1/2 in x 40 in."),
        (29, 60, f"Then fold the strap in half, so it's 1 1/2 in wide. Sew 5/8 in (2 cm) from the edge. {LONG}."),
    ]
    found = draft(said)
    assert found.steps == 2
    text = " ".join(words for _, _, words in said)
    assert (found.wrong, found.doubtful) == tuple(
        sum(1 for each in proofread(text) if each.severity is grade) for grade in (Severity.WRONG, Severity.DOUBTFUL)
    )
    assert found.wrong == 1
    assert remarks(found, 2)[-1] == (
        '#   0:29  "5/8 in (2 cm)"  should be 5/8 in (1.6 cm): 5/8 in is 1.6 cm, not 2 cm.'
    )


def test_sum_that_may_not_add_up_is_told_as_doubtful() -> None:
    found = draft([(0, 9, "The cloth is 140 cm wide, so four 35 cm strips come off it. Each is 90 cm long plus 3 cm.")])
    assert (found.wrong, found.doubtful) == (0, 1)
    assert remarks(found)[-1].startswith('#   0:00  "90 cm"  If 90 cm is meant to be ')


def test_what_was_said_wrong_is_told_and_left_as_it_was_said() -> None:
    found = draft([(0, 9, "Sew at 5/8 inch (2 cm).")])
    assert found.wrong == 1
    assert "should be 5/8 inch (1.6 cm)" in remarks(found)[-1]
    assert steps(found)[0]["text"] == "Sew at 5/8 inch (2 cm).\n"


def test_draft_is_in_centimetres_where_most_lengths_are_metric() -> None:
    found = draft([(0, 9, "Cut 16 cm, then 4 mm, not 6 inches.")])
    assert yaml.safe_load(found.files["tutorials/talk/tutorial.yaml"])["measured_in"] == "centimetres"
    assert yaml.safe_load(found.files["site.yaml"])["units_first"] == "centimetres"
    assert yaml.safe_load(draft([(0, 9, "Cut it.")]).files["site.yaml"])["units_first"] == "inches"


# -- names --------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("name", "key", "title"),
    [
        ("neckband-talk.vtt", "neckband-talk", "Neckband talk"),
        ("My Talk #2.en.VTT", "my-talk-2", "My Talk #2"),
        ("Ärmel.en-GB.srt", "armel", "Ärmel"),
        ("縫う.vtt", "tutorial", "縫う"),
        (".vtt", "tutorial", "Tutorial"),
        ("CON.vtt", "con-tutorial", "CON"),
        ("be\x07ll\n two.vtt", "be-ll-two", "Be ll two"),
        ("bad\udcff.vtt", "bad", "Bad"),
        ('a "b" \\ c.vtt', "a-b-c", 'A "b" \\ c'),
        ("a" * 80 + ".srt", "a" * 40, "A" + "a" * 79),
    ],
)
def test_tutorial_is_called_like_its_captions(name: str, key: str, title: str) -> None:
    found = draft([(0, 9, "Cut it.")], name)
    assert found.key == key
    assert yaml.safe_load(found.files[f"tutorials/{key}/tutorial.yaml"])["title"] == title


def test_steps_keep_their_order_by_name() -> None:
    found = draft([(at * 25, at * 25 + 25, f"Next, pin side {at}. {LONG}.") for at in range(120)])
    names = [path for path in found.files if "/steps/" in path]
    assert names == sorted(names)
    assert len(set(names)) == found.steps == 120


@pytest.mark.parametrize(
    "text",
    ["WEBVTT\n", "WEBVTT\n\n00:01.000 --> 00:02.000\n[music]\n", "WEBVTT\n\n00:01.000 --> 00:02.000\n<v Anna>\n"],
)
def test_captions_in_which_nothing_is_said_make_no_draft(text: str) -> None:
    assert drafted(captions_of(text), "talk.vtt") is None


def test_empty_folder_is_plain_yaml() -> None:
    assert all(yaml.safe_load(text) for text in empty_folder().values())


def test_time_grows_no_faster_than_the_talk() -> None:
    def needed(cues: int) -> float:
        said = [(at * 5.0, at * 5.0 + 5, f"next we pin it at {at % 9} inches and press") for at in range(cues)]
        before = time.process_time()
        draft(said)
        return time.process_time() - before

    assert min(needed(1600) for _ in range(2)) < 16 * min(needed(200) for _ in range(3)) + 0.1
