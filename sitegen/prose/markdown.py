"""What a Markdown text says, at its own offsets: without code, link targets and comments."""

from __future__ import annotations

import re

_NOT_SAID = re.compile(
    r"^(?P<fence>`{3,}|~{3,})[^\n]*\n(?:(?!(?P=fence))[^\n]*(?:\n|$))*(?:(?P=fence)[^\n]*)?"
    r"|`[^`\n]{1,300}`"
    r"|(?<=\])\([^()\n]{0,500}\)(?!\s*[\d(])"
    r"|<!--(?:(?!-->)[\s\S]){0,4000}-->"
    r"|<(?:https?:|mailto:)[^<>\s]{1,500}>",
    re.MULTILINE,
)


def said_in_markdown(text: str) -> str:
    """The text, as long as before, with blanks for whatever a reader of the page would not read as words.

    >>> said_in_markdown("Cut `3 in` and [this](page-4.html)")
    'Cut        and [this]             '
    """
    return _NOT_SAID.sub(lambda match: re.sub(r"[^\n]", " ", match.group()), text)
