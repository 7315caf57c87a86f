"""Captions of both formats, rolling ones and broken ones: what is said, where and when."""

from __future__ import annotations

import time
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sitegen.prose import captions_of, clock, is_captions

FULL = """\ufeffWEBVTT - a talk about bands
Kind: captions

STYLE
::cue { color: white }

REGION
id:below
width:40%

NOTE
00:00 is where the talk begins; this is said by nobody

first
00:01.000 --> 00:02.500 align:start position:10%
<v Anna>Half an <i>inch</i> &amp; no more
<00:02.000>and press

NOTE this neither

1:00:05.250 --> 1:00:06.000
NOTE that it is said
5&frac12; in &lt; 6
"""
SUBRIP = (
    "1\r\n00:00:01,000 --> 00:00:02,500\r\n{\\an8}Half an <font color=red>inch</font>\r\nand press\r\n\r\n"
    "2\r\n00:01:05,25 --> 00:01:06,000 X1:10 X2:20\r\nAgain\r\n"
)
ROLLING = """WEBVTT
Kind: captions
Language: en

00:00:00.320 --> 00:00:02.950 align:start position:0%
\x20
add<00:00:00.640><c> half</c><00:00:01.040><c> an</c><00:00:01.240><c> inch</c>

00:00:02.950 --> 00:00:02.960 align:start position:0%
add half an inch
\x20

00:00:02.960 --> 00:00:05.190 align:start position:0%
add half an inch
and<00:00:03.200><c> one</c><00:00:03.500><c> inch</c>

00:00:05.190 --> 00:00:05.200 align:start position:0%
and one inch
\x20
"""


def texts(text: str) -> list[str]:
    return [cue.text for cue in captions_of(text).cues]


def said(text: str) -> str:
    return " ".join(captions_of(text).said.split())


def test_webvtt_says_only_what_its_cues_say() -> None:
    assert texts(FULL) == ["Half an inch & no more\nand press", "NOTE that it is said\n5½ in < 6"]
    assert said(FULL) == "Half an inch & no more and press NOTE that it is said 5½ in < 6"


def test_times_may_have_hours_or_not() -> None:
    assert [(cue.begins, cue.ends) for cue in captions_of(FULL).cues] == [
        (Fraction(1), Fraction(5, 2)),
        (3605 + Fraction(1, 4), Fraction(3606)),
    ]


def test_subrip_with_its_numbers_commas_and_tags() -> None:
    assert texts(SUBRIP) == ["Half an inch\nand press", "Again"]
    assert [cue.begins for cue in captions_of(SUBRIP).cues] == [1, 65 + Fraction(1, 4)]
    assert texts("\ufeff" + SUBRIP) == texts(SUBRIP)


def test_subrip_without_hours() -> None:
    (cue,) = captions_of("1\n01:05,500 --> 01:06,000\nPin it\n").cues
    assert (cue.begins, cue.text) == (Fraction(131, 2), "Pin it")


@pytest.mark.parametrize("text", [FULL, SUBRIP, ROLLING])
def test_what_is_said_stands_at_its_own_offset(text: str) -> None:
    found = captions_of(text)
    assert len(found.said) == len(text)
    for at, sign in enumerate(found.said):
        ends_line = sign == "\n" and text[at] in "\r\n"
        assert ends_line or sign in (" ", text[at], "½", "&", "<")
    for word in ("inch", "press" if text != ROLLING else "half"):
        assert found.said.index(word) == text.index(word)


def test_cue_at_is_the_cue_of_the_offset_or_the_one_before() -> None:
    found = captions_of(FULL)
    assert found.cue_at(FULL.index("WEBVTT")) is None
    assert found.cue_at(FULL.index("press")) == found.cues[0]
    assert found.cue_at(FULL.index("NOTE this")) == found.cues[0]
    assert found.cue_at(len(FULL)) == found.cues[1]


def test_line_that_rolls_up_is_said_once_where_it_first_stands() -> None:
    assert texts(ROLLING) == ["add half an inch", "", "and one inch", ""]
    assert said(ROLLING) == "add half an inch and one inch"
    found = captions_of(ROLLING)
    assert found.said.index("add") == ROLLING.index("add<")
    assert found.said.index("and") == ROLLING.index("and<")


def test_rolling_subrip_with_overlapping_times_is_said_once() -> None:
    lines = [f"line {word} is here" for word in ("one", "two", "three", "four")]
    cues = [
        f"{n}\n00:00:0{n},000 --> 00:00:0{n + 2},000\n{a}\n{b}\n"
        for n, (a, b) in enumerate(zip(["", *lines], lines, strict=False), 1)
    ]
    assert said("\n".join(cues)) == " ".join(lines)


@pytest.mark.parametrize("silence", [2, 5, 60])
def test_line_that_stays_behind_a_silence_is_said_once(silence: int) -> None:
    again = f"{(9 + silence) // 60:02}:{(9 + silence) % 60:02}.000 --> 02:00.000"
    text = (
        "WEBVTT\n\n00:01.000 --> 00:05.000\nyou need half a yard of cotton\n\n"
        "00:05.000 --> 00:09.000\nyou need half a yard of cotton\nand a yard and a half of cord\n\n"
        f"{again}\nand a yard and a half of cord\nso the first thing is to cut it in half\n"
    )
    assert said(text) == (
        "you need half a yard of cotton and a yard and a half of cord so the first thing is to cut it in half"
    )
    late = ROLLING + "\n00:00:20.000 --> 00:00:24.000\nand one inch\n<c>then</c> press it\n"
    assert said(late) == "add half an inch and one inch then press it"


def test_line_that_is_said_again_later_in_captions_that_do_not_roll_is_said_twice() -> None:
    cues = ["Pin it", "Sew it", "Sew it\nand turn it", "Press it", "Fold it", "Trim it", "Trim it\nagain"]
    times = [0, 2, 4, 6, 8, 10, 20]
    text = "WEBVTT\n\n" + "\n\n".join(
        f"00:{at:02}.000 --> 00:{at + 2:02}.000\n{cue}" for at, cue in zip(times, cues, strict=True)
    )
    assert said(text) == "Pin it Sew it and turn it Press it Fold it Trim it Trim it again"


def test_thing_said_twice_is_said_twice() -> None:
    cues = ["Pin it.", "Pin it.", "Sew it.", "Press it.", "Turn it."]
    text = "WEBVTT\n\n" + "\n\n".join(f"00:0{n}.000 --> 00:0{n + 1}.000\n{cue}" for n, cue in enumerate(cues))
    assert texts(text) == cues


def test_same_words_much_later_are_said_again() -> None:
    text = "WEBVTT\n\n00:01.000 --> 00:02.000\nPin it\n\n00:30.000 --> 00:31.000\nPin it\nand sew it\n"
    assert texts(text) == ["Pin it", "Pin it\nand sew it"]


def test_time_that_cannot_be_read_loses_no_words() -> None:
    text = "WEBVTT\n\n00:01.000 --> 00:02.000\nPin it\n\n00:0x.000 --> 00:04.000\nSew it\n\n00:75.000 --> 00:76.000\nPress it\n"
    found = captions_of(text)
    assert [(cue.begins, cue.text) for cue in found.cues] == [(1, "Pin it"), (2, "Sew it"), (2, "Press it")]
    assert found.unclear == (text.index("00:0x"), text.index("00:75"))


def test_missing_empty_lines_part_no_cue_from_its_words() -> None:
    text = "1\n00:00:01,000 --> 00:00:02,000\nPin it\n2\n00:00:03,000 --> 00:00:04,000\nSew it\n3\n"
    assert texts(text) == ["Pin it", "Sew it\n3"]
    assert texts("WEBVTT\n00:01.000 --> 00:02.000\nPin it\n00:03.000 --> 00:04.000\nSew it") == ["Pin it", "Sew it"]


def test_empty_line_inside_a_cue_of_subrip_loses_no_words() -> None:
    text = "1\n00:00:01,000 --> 00:00:02,000\nPin it\n\nand sew\n\n2\n00:00:03,000 --> 00:00:04,000\n17\n\n3\n"
    assert texts(text) == ["Pin it\nand sew", "17"]


def test_number_alone_in_the_last_cue_is_said() -> None:
    assert texts("1\n00:00:01,000 --> 00:00:02,000\n17\n\n\n") == ["17"]


def test_end_before_its_beginning_is_taken_to_be_at_it() -> None:
    (cue,) = captions_of("WEBVTT\n\n00:05.000 --> 00:01.000\nPin it").cues
    assert (cue.begins, cue.ends) == (5, 5)


def test_arrow_among_the_words_is_no_time() -> None:
    assert texts("1\n00:00:01,000 --> 00:00:02,000\nfold --> press\n") == ["fold --> press"]


def test_less_than_sign_is_no_tag() -> None:
    assert texts("1\n00:00:01,000 --> 00:00:02,000\n3 < 5 and 6 > 5\n") == ["3 < 5 and 6 > 5"]


def test_sounds_and_speaker_signs_are_nothing_said() -> None:
    assert texts("WEBVTT\n\n00:01.000 --> 00:02.000\n[music] ♪\n&gt;&gt; Cut [1/2 inch] more") == [
        "Cut [1/2 inch] more"
    ]


@pytest.mark.parametrize(
    ("text", "is_one"),
    [
        (FULL, True),
        (SUBRIP, True),
        ("\ufeff\n\n1\n\n00:00:01,000 --> 00:00:02,000\nPin", True),
        ("WEBVTT", True),
        ("WEBVTTX", False),
        ("Cut 3/8 in.\n", False),
        ("", False),
    ],
)
def test_file_of_captions_is_known_by_its_head(text: str, is_one: bool) -> None:
    assert is_captions(text) is is_one


@pytest.mark.parametrize(
    ("seconds", "shown"), [(0, "0:00"), (65, "1:05"), (Fraction(3723, 1) + Fraction(9, 10), "1:02:03")]
)
def test_clock_reads_as_a_player_shows_it(seconds: Fraction, shown: str) -> None:
    assert clock(Fraction(seconds)) == shown


_PARTS = st.sampled_from(
    ["WEBVTT\n", "\n", "\r", "\r\n", "1\n", "00:01.000 --> 00:02.000\n", "00:00:03,000 --> 00:00:01,000", "-->", "<", ">", "<v A>",
     "&amp;", "&#0;", "[", "]", "{\\an8}", "NOTE ", "STYLE\n", "half an inch", " ", "\u2028", "\x00", "٣", "9" * 12, "\ufdd0", "\ufeff", ">>"]
)  # fmt: skip


@given(st.lists(_PARTS, max_size=30).map("".join))
def test_no_text_is_too_odd(text: str) -> None:
    found = captions_of(text)
    assert len(found.said) == len(text)
    starts = [cue.start for cue in found.cues]
    assert starts == sorted(starts)
    assert all(cue.begins <= cue.ends and cue.start <= cue.end <= len(text) for cue in found.cues)
    is_captions(text)


@pytest.mark.parametrize(
    "part",
    [
        "00:01.000 --> 00:02.000\n", "1\n00:00:01,000 --> 00:00:02,000\nPin it\n\n", "<a", "[a", "&a", "{\\a", ">>", "9", " ", "-->", "1\n", "\n",
        "00:01.000 --> 00:02.000\nsame\nsame\n\n",
    ],
)  # fmt: skip
@pytest.mark.parametrize("head", ["", "WEBVTT\n\n00:01.000 --> 00:02.000\n"])
def test_time_grows_no_faster_than_the_text(part: str, head: str) -> None:
    def needed(size: int) -> float:
        text = head + part * (size // len(part))
        runs = []
        for _ in range(3):
            before = time.process_time()
            captions_of(text)
            is_captions(text)
            runs.append(time.process_time() - before)
        return min(runs)

    assert needed(160_000) < 16 * needed(20_000) + 0.05
