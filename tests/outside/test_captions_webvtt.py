"""Captions read as the library webvtt-py reads them: the same cues, times and words. PyPI: webvtt-py, MIT."""

from __future__ import annotations

from html import unescape
from io import StringIO

import pytest
import webvtt
from hypothesis import given
from hypothesis import strategies as st

from sitegen.prose import Captions, captions_of

VTT = [
    "WEBVTT\n\n00:01.000 --> 00:02.500\nHalf an inch",
    "WEBVTT a title\nKind: captions\n\nNOTE said by nobody\n\nSTYLE\n::cue {}\n\n1\n00:00:01.000 --> 00:00:02.500 align:start\n"
    "<v Anna>Half <b>an</b> inch</v>\n<00:02.000>and press\n\n\n\nlast one\n01:00:05.250 --> 01:00:06.000\n- Again?\n- Yes.\n\nNOTE\nthe end\n",
    "WEBVTT\r\n\r\nREGION\r\nid:a\r\n\r\n00:01.000 --> 00:02.500\r\nHalf an inch\r\n\r\n00:02.500 --> 00:03.000\r\nand &amp; press\r\n",
    "WEBVTT\n\n00:01.000 --> 00:02.500\nHalf an inch\n00:02.500 --> 00:03.000\nno empty line before\n",
    "WEBVTT\n\n00:01.000 --> 00:02.500\n \nA line with a space before it\n \n\nloose words\n\n00:02.500 --> 00:03.000\nNOTE the mark\n",
    "WEBVTT\n\n100:00:01.000 --> 100:00:02.500 line:0 position:20% size:60%\n<c.yellow.bg_blue>Fold</c> it\n",
]
SRT = [
    "1\n00:00:01,000 --> 00:00:02,500\nHalf an inch\n\n2\n00:00:02,500 --> 00:00:03,000\nand press\nand turn\n",
    "1\r\n00:00:01,000 --> 00:00:02,500\r\nHalf an <i>inch</i>\r\n\r\n2\r\n01:00:02,500 --> 01:00:03,000\r\nand press\r\n",
    "1\n00:00:01,000 --> 00:00:02,500\nHalf an inch\n\nand a line after a gap\n\n2\n00:00:02,500 --> 00:00:03,000\n17\n",
    "1\n00:00:01,000 --> 00:00:02,500\nHalf an inch\n2\n00:00:02,500 --> 00:00:03,000\nno empty line before\n",
]


def ours(found: Captions) -> list[tuple[int, int, str]]:
    """Milliseconds and words."""
    return [(int(cue.begins * 1000), int(cue.ends * 1000), cue.text.strip()) for cue in found.cues]


def theirs(captions: webvtt.WebVTT) -> list[tuple[int, int, str]]:
    return [
        (
            _ms(each.start),
            _ms(each.end),
            "\n".join(line for part in unescape(each.text).splitlines() if (line := " ".join(part.split()))),
        )
        for each in captions
    ]


def _ms(time: str) -> int:
    hours, minutes, seconds = time.split(":")
    return (int(hours) * 60 + int(minutes)) * 60_000 + int(seconds.replace(".", ""))


@pytest.mark.parametrize("text", VTT)
def test_webvtt_is_read_as_the_library_reads_it(text: str) -> None:
    assert ours(captions_of(text)) == theirs(webvtt.from_string(text))


@pytest.mark.parametrize("text", SRT)
def test_subrip_is_read_as_the_library_reads_it(text: str) -> None:
    assert ours(captions_of(text)) == theirs(webvtt.from_buffer(StringIO(text, newline=""), format="srt"))


_WORDS = st.lists(
    st.sampled_from(["half", "an", "inch", "3/8", "<i>seam</i>", "&amp;", "17", "NOTE", "fold,"]),
    min_size=1,
    max_size=6,
)
_LINES = st.lists(_WORDS.map(" ".join), min_size=1, max_size=3, unique=True)


@given(st.lists(_LINES, min_size=1, max_size=8), st.sampled_from(["\n", "\r\n"]), st.booleans())
def test_any_well_formed_file_has_the_same_cues(cues: list[list[str]], end: str, numbered: bool) -> None:
    """Cues lie more than a second apart, so that none is taken to roll on into the next."""
    lines = ["WEBVTT", ""]
    for at, cue in enumerate(cues):
        lines += [str(at + 1)] if numbered else []
        lines += [f"00:{at * 4:02}.000 --> 00:{at * 4 + 2:02}.500", *cue, ""]
    text = end.join(lines)
    assert ours(captions_of(text)) == theirs(webvtt.from_string(text))
