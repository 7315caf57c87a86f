"""Captions as phrases: a few words, when they are said, and how long nothing was said before them."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import pairwise
from statistics import median_low

from sitegen.prose.captions import Captions
from sitegen.prose.draft.openers import OPENS_ANYWHERE, only_leads_in

_SENTENCE_END = re.compile(r"(?<=[.?!…])[\"”’)]?\s+(?=[^a-z\s])")
_WORDS_OF_A_SENTENCE = 40
"""Captions with fewer full stops than one in so many words were written by a machine that sets none."""
_UNSEEN = re.compile("[\x00-\x1f\x7f-\x9f\u2028\u2029\ud800-\udfff\ufeff\ufffe\uffff]")


@dataclass(frozen=True, slots=True)
class Phrase:
    """Some words that are said together."""

    text: str
    begins: Fraction
    ends: Fraction
    gap: Fraction
    """Seconds of silence before it; none within a caption."""
    at_cue: bool
    """Whether a caption begins with it."""


@dataclass(frozen=True, slots=True)
class Talk:
    """All that is said, and what silences mean in it."""

    phrases: tuple[Phrase, ...]
    with_stops: bool
    """Whether the captions have full stops."""
    usual_gap: Fraction

    def is_pause(self, phrase: Phrase, least: Fraction, times: int) -> bool:
        """Whether the silence before a phrase is so many seconds, and so many times the usual one."""
        return phrase.gap >= max(least, self.usual_gap * times)


def seen(text: str) -> str:
    """A text in one line, without signs that nobody sees and that YAML does not allow."""
    return " ".join(_UNSEEN.sub(" ", text).split())


def talk_of(captions: Captions) -> Talk:
    """What is said, in the order of time."""
    whole = tuple(_in_time(captions))
    words = sum(len(phrase.text.split()) for phrase in whole)
    stops = sum(len(_SENTENCE_END.findall(f"{phrase.text} A")) for phrase in whole)
    with_stops = stops * _WORDS_OF_A_SENTENCE >= words
    phrases = tuple(_parted(whole, _SENTENCE_END if with_stops else OPENS_ANYWHERE))
    return Talk(phrases, with_stops, median_low([Fraction(0), *(phrase.gap for phrase in whole[1:])]))


def _in_time(captions: Captions) -> Iterator[Phrase]:
    spoken = sorted(captions.cues, key=lambda cue: cue.begins)
    starts = [cue.begins for cue in spoken if cue.text]
    next_start = dict(pairwise(dict.fromkeys(starts)))
    silent_from = Fraction(0)
    for cue in spoken:
        text = seen(cue.text)
        # A caption that stays while the next one is shown is spoken until that one begins.
        ends = min(cue.ends, next_start.get(cue.begins, cue.ends))
        if text:
            yield Phrase(text, cue.begins, ends, max(Fraction(0), cue.begins - silent_from), at_cue=True)
        silent_from = max(silent_from, ends)


def _parted(whole: Iterable[Phrase], where: re.Pattern[str]) -> Iterator[Phrase]:
    """Each caption parted where a sentence or a step begins inside it."""
    for phrase in whole:
        cuts = [0]
        for match in where.finditer(phrase.text):
            if match.end() and not (where is OPENS_ANYWHERE and only_leads_in(phrase.text[cuts[-1] : match.end()])):
                cuts.append(match.end())
        cuts.append(len(phrase.text))
        for start, end in pairwise(cuts):
            part = phrase.text[start:end].strip()
            if part:
                yield (
                    phrase
                    if start == 0 and end == len(phrase.text)
                    else replace(phrase, text=part, gap=phrase.gap if start == 0 else Fraction(0), at_cue=start == 0)
                )
