"""Phrases as steps: parted at pauses and at words that open a step, with a title of the first words."""

from __future__ import annotations

import re
from bisect import bisect_right
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from sitegen.prose.draft.openers import behind_lead_in, heading_of, opens_step, refers
from sitegen.prose.draft.phrases import Phrase, Talk
from sitegen.prose.find import read

LEAST_SECONDS = 20
LEAST_WORDS = 25
_STEP_PAUSE = Fraction(2), 3
_PARAGRAPH_PAUSE = Fraction(6, 5), 2
_SENTENCE_PAUSE = Fraction(1, 2), 2
"""Seconds, and how many times the usual silence of the talk."""
_TITLE_WORDS = 8
_GO_ON_BEHIND = re.compile(
    r"\b(?:plus|minus|times|equals?|is|are|of|to|the|a|an|and|or|by|with|makes?|gives?|into|about|at|for|from|in|your|our"
    r"|my|its|than|because|if|when|until|as|point|over|divided|we|i|have|will)$",
    re.IGNORECASE,
)
_GO_ON_WITH = re.compile(
    r"(?:plus|minus|times|equals?|is|are|makes?|gives?|divided|of|over|which|or|than|point|by)\b", re.IGNORECASE
)
_WEAK_END = re.compile(
    r"\s+(?:the|a|an|and|or|of|to|with|in|on|at|for|from|by|into|is|are|so|that|your|our|this|it|we|you|i|then|as|if|about|just)$",
    re.IGNORECASE,
)


@dataclass(frozen=True, slots=True)
class Step:
    """One step as it was said. ``times`` are the offsets of its text from which on a time holds, in order."""

    title: str
    begins: Fraction
    ends: Fraction
    text: str
    times: tuple[tuple[int, Fraction], ...]

    def time_at(self, offset: int) -> Fraction:
        """When the word at an offset of the text is said."""
        return self.times[bisect_right(self.times, offset, key=lambda each: each[0]) - 1][1]


def steps_of(talk: Talk) -> tuple[Step, ...]:
    """The steps of a talk. None is shorter than about 20 seconds or 25 words, unless the whole talk is, or a step is
    called by its number: “step two”."""
    groups: list[list[Phrase]] = []
    called, last_is_called = 0, False
    for at, phrase in enumerate(talk.phrases):
        before = talk.phrases[at - 1] if at else None
        number = _called(talk, before, phrase)
        calls = number is not None and number > called
        if groups and int(phrase.begins) == int(groups[-1][0].begins):
            calls = False  # two steps in one second would be one chapter of the video
        if calls and number is not None:
            called = number
        if before is None or calls or (_long_enough(groups[-1], phrase.begins) and _begins_step(talk, before, phrase)):
            groups.append([])
            last_is_called = calls
        groups[-1].append(phrase)
    if len(groups) > 1 and not last_is_called and not _long_enough(groups[-1], groups[-1][-1].ends):
        last = groups.pop()
        groups[-1] += last
    return tuple(_step(talk, group) for group in groups)


def _called(talk: Talk, before: Phrase | None, phrase: Phrase) -> int | None:
    """The number of the step that a phrase calls by it, at the head of a sentence where the captions have any."""
    if before is None or before.text.endswith((".", "?", "!", "…")):
        return heading_of(phrase.text)
    return None if talk.with_stops or refers(before.text) or _goes_on(before, phrase) else heading_of(phrase.text)


def _long_enough(group: Sequence[Phrase], until: Fraction) -> bool:
    return until - group[0].begins >= LEAST_SECONDS and sum(len(each.text.split()) for each in group) >= LEAST_WORDS


def _begins_step(talk: Talk, before: Phrase, phrase: Phrase) -> bool:
    ended = before.text.endswith((".", "?", "!", "…"))
    if talk.with_stops and not ended and not talk.is_pause(phrase, *_STEP_PAUSE):
        return False
    opens = opens_step(phrase.text, at_sentence=ended)
    return (opens or talk.is_pause(phrase, *_STEP_PAUSE)) and not _goes_on(before, phrase)


def _goes_on(before: Phrase, phrase: Phrase) -> bool:
    """Whether a sentence or a measurement runs on from one phrase into the next."""
    if before.text.endswith((".", "?", "!", "…")):
        return False
    if _GO_ON_BEHIND.search(before.text) or _GO_ON_WITH.match(phrase.text):
        return True
    tail, head = " ".join(before.text.split()[-6:]), " ".join(phrase.text.split()[:6])
    return any(found.start < len(tail) < found.end for found in read(f"{tail} {head}"))


def _step(talk: Talk, phrases: Sequence[Phrase]) -> Step:
    text, times = "", []
    for between, words, phrase in _joined(talk, phrases):
        text += between
        times.append((len(text), phrase.begins))
        text += words
    return Step(_title(" ".join(text.split())), phrases[0].begins, phrases[-1].ends, text, tuple(times))


def _joined(talk: Talk, phrases: Sequence[Phrase]) -> Iterator[tuple[str, str, Phrase]]:
    """What stands between two phrases, and each phrase. Where captions have no full stops, a pause makes one."""
    before: Phrase | None = None
    for phrase in phrases:
        if before is None:
            yield "", _capital(phrase.text), phrase
        elif talk.with_stops:
            new_paragraph = before.text.endswith((".", "?", "!", "…")) and talk.is_pause(phrase, *_PARAGRAPH_PAUSE)
            yield "\n\n" if new_paragraph else " ", phrase.text, phrase
        elif _is_new_sentence(talk, phrase) and not _goes_on(before, phrase):
            stop = "." if before.text[-1].isalnum() else ""
            yield stop + ("\n\n" if talk.is_pause(phrase, *_PARAGRAPH_PAUSE) else " "), _capital(phrase.text), phrase
        else:
            yield " ", phrase.text, phrase
        before = phrase
    if before is not None and not talk.with_stops and before.text[-1].isalnum():
        yield ".", "", before


def _is_new_sentence(talk: Talk, phrase: Phrase) -> bool:
    """Whether a phrase of captions without full stops begins one: after a pause, or with words that open a step."""
    return talk.is_pause(phrase, *_SENTENCE_PAUSE) or not phrase.at_cue or opens_step(phrase.text, at_sentence=False)


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]


def _title(text: str) -> str:
    """The first words of a step, without the words that only lead to it; no measurement is cut in two."""
    rest = behind_lead_in(text, 3)
    words = list(re.finditer(r"\S+", rest))
    end = words[min(len(words), _TITLE_WORDS) - 1].end()
    sentence = re.search(r"\S[.?!…](?=\s|$)", rest[:end])
    clause = re.search(r"[,;:](?=\s|$)", rest[:end])
    if sentence is not None:
        end = sentence.end() - 1
    elif clause is not None and len(rest[: clause.start()].split()) > 2:
        end = clause.start()
    for found in read(rest[: end + 80]):
        if found.start < end < found.end:
            end = found.start if len(rest[: found.start].split()) > 2 else found.end
    title = rest[:end].rstrip(" ,;:.–-([")
    whole = sentence is not None or end == len(rest)
    while not whole and len(title.split()) > 2 and (weak := _WEAK_END.search(title)):
        title = title[: weak.start()]
    return _capital(title.strip() or rest[:end].strip())
