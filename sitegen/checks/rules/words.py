"""Words that beginners do not know, and cards that are too long to follow."""

from __future__ import annotations

import re
from collections.abc import Iterator

from sitegen.checks.glossary import Glossary
from sitegen.checks.registry import COMMON_PRACTICE, check
from sitegen.checks.trade_words import TRADE_WORDS, TradeWord
from sitegen.findings import Finding, Severity
from sitegen.tutorial import Computed, Prose, Step, Tutorial

MOST_WORDS, MOST_ITEMS = 300, 12
"""Beyond these a learner loses the place between page and machine (common practice, no source)."""
_REFERENCE = re.compile(r"\{[^{}\n]*\}")
_ITEM = re.compile(r"^\s*(?:\d+[.)]|[-*])\s", re.MULTILINE)
_PART = re.compile(r"^(?=#|\*\*)", re.MULTILINE)
_TABLE_ROW = re.compile(r"^\s*\|.*$", re.MULTILINE)
_STEP = "--- steps/01.yaml\ntitle: Cut out\ntext: Lay the paper parallel to the selvage.\n"


@check(
    id="term-unexplained",
    area="words",
    severity=Severity.HINT,
    looks_at=Glossary,
    title="A word of the trade that is not explained",
    why="Beginners do not know it, and do not know that they could look it up.",
    source="Unexplained terms and no glossary are what learners complain of: three learner articles, names withheld;"
    " the words are " + COMMON_PRACTICE,
    trips=_STEP,
    passes=_STEP + "--- ../../glossary.yaml\nselvage: {means: The woven edge of the cloth., us: selvage, uk: selvedge}",
)
def term_unexplained(glossary: Glossary, computed: Computed) -> Iterator[Finding]:
    """A word of the trade in a text for students is in the glossary, under its name or its US or UK name, or is named
    in before_you_start, or some text of the tutorial says what it is."""
    names = [
        name
        for term in glossary.terms
        for text in (term.term, term.us, term.uk)
        for name in re.split(r"[,;/]\s*", text)
    ]
    texts = [(text, _REFERENCE.sub(_blank, text.text)) for text in _for_students(computed.tutorial)]
    before = computed.tutorial.before.text if computed.tutorial.before else ""
    for word in TRADE_WORDS:
        known = any(name.casefold() == word.name or word.pattern.fullmatch(name) for name in names)
        if known or word.pattern.search(before) or any(_says_what(word, plain) for _, plain in texts):
            continue
        first = next(((text, match) for text, plain in texts if (match := word.pattern.search(plain))), None)
        if first is not None:
            text, match = first
            said = " ".join(match.group().split())
            yield Finding(
                "term-unexplained",
                Severity.HINT,
                text.locate(match.start(), match.end()),
                f"“{said}” is a word of the trade that beginners may not know. Explain it in a text, or in"
                f" glossary.yaml, such as {word.name}: {word.means}",
                said,
            )


def _for_students(tutorial: Tutorial) -> Iterator[Prose]:
    notes = {id(step.teacher) for step in tutorial.steps}
    yield from (text for text in tutorial.prose() if id(text) not in notes)


def _blank(match: re.Match[str]) -> str:
    return " " * len(match.group())


def _says_what(word: TradeWord, text: str) -> bool:
    """Whether a text explains a word: it is called so, or the word is or means something."""
    term = word.pattern.pattern
    called = rf"\b(?:called|this is|that is|these are|are)\s+(?:an?\s+|the\s+)?{term}"
    means = rf"{term}(?:\s+\([^)]*\))?\s+(?:is|are|means?)\s+(?:an?|the|to|how|what)\b"
    return re.search(rf"{called}|{means}", text, re.IGNORECASE) is not None


@check(
    id="step-too-long",
    area="words",
    severity=Severity.HINT,
    looks_at=Step,
    title="A card that is too long for a beginner",
    why="Whoever looks up from the machine must find the place again.",
    source="Small steps, each with its own picture: " + COMMON_PRACTICE,
    trips="--- steps/01.yaml\ntitle: Sew\ntext: |\n" + "  1. Pin and sew the next seam of the garment.\n" * 13,
    passes="--- steps/01.yaml\ntitle: Sew\ntext: |\n" + "  1. Pin and sew the next seam of the garment.\n" * 5,
)
def step_too_long(step: Step, computed: Computed) -> Iterator[Finding]:
    """The text of a card has no more than 300 words and 12 numbered or listed acts in one part. A heading, or a
    paragraph that begins in bold, begins another part. A number counts as a word, tables do not count."""
    for text in (step.text, step.other_way.text if step.other_way else None):
        if text is None:
            continue
        plain = _TABLE_ROW.sub("", _REFERENCE.sub("0", text.text))
        parts = _PART.split(plain)
        words, items = max(len(part.split()) for part in parts), max(len(_ITEM.findall(part)) for part in parts)
        if words > MOST_WORDS or items > MOST_ITEMS:
            how = f"{items} acts in one list" if items > MOST_ITEMS else f"{words} words in one part"
            yield Finding(
                "step-too-long",
                Severity.HINT,
                text.place,
                f"This card has {how}, which is much to follow at the machine. Make two cards of it, or parts with"
                " headings.",
            )
