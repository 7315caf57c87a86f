"""The words with which a teacher opens a step. Common practice, no source: heard in any class."""

from __future__ import annotations

import re

_FILLERS = r"(?:(?:okay|ok|alright|all right|right|so|and|well|um|uh|great|good|perfect)\b[,.!]?\s+)*"
_WE = r"(?:we|you|i|let['’]?s|we['’](?:re|ll)|you['’](?:re|ll)|i['’](?:m|ll))"
_GOING_TO = rf"{_WE}(?:\s+(?:are|am))?\s+(?:going\s+to|gonna)"
_NUMBERS = r"(?:\d{1,2}|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|thirteen|fourteen|fifteen)"
_DO = (
    r"(?:take|turn|pin|sew|press|cut|fold|place|put|lay|stitch|mark|measure|open|clip|trim|slip|attach|join|gather|hem"
    r"|iron|draw|pull|bring|flip|match|line|start|grab|get|go|do|change|set|find|check|make|repeat)"
)
_DONE = (
    r"(?:once|when|after|now\s+that)\s+(?:that|this|it|they|you|we)['’]?\s*(?:s|re|ve)?"
    r"(?:\s+(?:is|are|has|have))?(?:\s+(?:all|been|both))*\s+(?:done|finished|sewn|pinned|pressed|cut|dry|marked)"
)
_STEP = rf"(?:step\s+(?:number\s+)?{_NUMBERS}\b)"
_NO_HEADING = r"(?!,?\s+(?:again|took|was|were|and\s+step|or\s+step)\b)"
"""Words behind the number of a step that is only spoken of."""
_THE_THING = r"(?:the\s+(?:very\s+)?(?:first|next|last|final|second|third)\s+(?:thing|step|job|part)\b)"
_SURE = rf"{_STEP}|{_THE_THING}|next\s+(?:up|{_WE})\b|now,?\s+{_GOING_TO}\b|{_DONE}\b"

_OPENS = re.compile(
    rf"{_FILLERS}(?:{_SURE}|(?:next|then|now|first)\b,?\s+(?:{_DO}|step|comes)\b|next\s+(?:is|thing|step)\b"
    rf"|now,?\s+{_WE}\b|first(?:ly|\s+of\s+all)\b|to\s+(?:start|begin)\b|finally\b|lastly\b|moving\s+on\b)",
    re.IGNORECASE,
)
_OPENS_SENTENCE = re.compile(rf"{_FILLERS}(?:next|then|now|first)\b", re.IGNORECASE)
_NOT_BEHIND = (
    *("in", "of", "to", "see", "for", "and", "until", "from", "is", "after", "on", "at", "as", "like", "with", "than"),
    *("through", "before", "by", "repeat", "skip", "do", "did", "finish", "finished"),
    *("the", "this", "that", "a", "each", "every", "your", "my", "our"),
)
_SOFT = r"(?:(?:okay|ok|alright|all right|so)\b[,.!]?\s+)*"
OPENS_ANYWHERE = re.compile(
    "".join(rf"(?<!\b{word})" for word in _NOT_BEHIND) + rf"\s+(?={_SOFT}(?:{_SURE}))", re.IGNORECASE
)
"""Where a step opens in words without full stops. Only what can hardly be anything else counts."""

_HEADING = re.compile(rf"{_FILLERS}step\s+(?:number\s+)?(?P<number>{_NUMBERS})\b{_NO_HEADING}", re.IGNORECASE)
_ONLY_FILLERS = re.compile(rf"{_FILLERS}\Z", re.IGNORECASE)
_SPELLED = re.findall(r"[a-z]+", _NUMBERS.partition("}")[2])
_MID_PHRASE = re.compile(r"(?:to|from|of|in|at|with|for|is|are)\b", re.IGNORECASE)
_REFERS = re.compile(rf"\b(?:{'|'.join(_NOT_BEHIND)})\Z", re.IGNORECASE)

_LEAD_IN = re.compile(
    rf"(?:(?:okay|ok|alright|all right|right|so|and|well|um|uh|great|good|perfect)\b[,.!]?\s+"
    r"|(?P<greeting>(?:hi|hello|hey|welcome)\b(?:\s+(?:again|everyone|everybody|all|there|back|guys|friends))*"
    r"(?:\s+to\s+(?:the|my|our|this|another|a\s+new)(?:\s+[\w'’-]+){0,2}?\s+(?:channel|video|class|lesson|course|tutorial"
    r"|workshop|studio|room|series|show|table))?[,.!]?\s+)"
    rf"|{_STEP}[,.:;]?\s+(?:is\s+)?(?:to\s+)?"
    rf"|{_THE_THING}(?:\s+(?:that\s+)?{_WE}(?:\s+(?:are|am|will))?(?:\s+(?:going\s+to|gonna|want\s+to|need\s+to|have\s+to))?"
    rf"(?:\s+do)?)?\s+is\s+(?:to\s+)?"
    rf"|(?:next|now|then|first|finally|lastly)\b(?:\s+up(?:\s+(?:is|are))?)?,?\s+|{_DONE}[,.]?\s+|first\s+of\s+all,?\s+"
    rf"|{_GOING_TO}\s+|let['’]?s\s+(?={_DO}\b))",
    re.IGNORECASE,
)


def opens_step(text: str, *, at_sentence: bool) -> bool:
    """Whether a phrase opens a step; at the beginning of a sentence one word such as “next” is enough."""
    return bool(_OPENS.match(text) or (at_sentence and _OPENS_SENTENCE.match(text)))


def heading_of(text: str) -> int | None:
    """The number in “step two: …” at the head of a phrase."""
    match = _HEADING.match(text)
    if match is None:
        return None
    said = match["number"].lower()
    return int(said) if said.isdecimal() else _SPELLED.index(said) + 1


def refers(text: str) -> bool:
    """Whether words such as “go back to” end a text, behind which a step is only spoken of."""
    return _REFERS.search(text) is not None


def only_leads_in(text: str) -> bool:
    """Whether words such as “okay, so” are all of a text."""
    return _ONLY_FILLERS.match(f"{text.strip()} ") is not None


def behind_lead_in(text: str, least_words: int) -> str:
    """The words behind “okay, so the next thing we're going to do is”, if so many are left.

    A greeting stays where what is behind it would begin in the middle of a phrase: “welcome to the sewing bee”.
    """
    while (match := _LEAD_IN.match(text)) and len(text[match.end() :].split()) >= least_words:
        greets = match["greeting"]
        if greets and not greets.rstrip().endswith((",", ".", "!")) and _MID_PHRASE.match(text, match.end()):
            break
        text = text[match.end() :]
    return text
