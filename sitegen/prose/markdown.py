"""What a Markdown text says, at its own offsets: no code, tags, link targets or comments; entities as their signs.

A length alone in code or as the words of a link is said as any other.
"""

from __future__ import annotations

import re
from html import unescape

from sitegen.prose.packed import FILLER
from sitegen.quantities import FRACTION_SIGNS

_SIGNS = "".join(FRACTION_SIGNS)
_LENGTH_ALONE = (
    rf"[ ]?[\d{_SIGNS}][\d{_SIGNS}./⁄, -]{{0,16}}(?:&frac\d\d;)?(?:&nbsp;)?"
    r"(?:\"|″|”|''|&quot;|&Prime;|&\#34;|in\.?|inch(?:es)?|[cm]m|m|yds?|yards?|ft)[ ]?"
)
_INLINE = "a|abbr|b|big|cite|code|em|font|i|img|ins|kbd|mark|q|small|span|strong|u|var"
_NOT_SAID = re.compile(
    r"^(?P<fence>`{3,}|~{3,})[^\n]*\n(?:(?!(?P=fence))[^\n]*(?:\n|$))*(?:(?P=fence)[^\n]*)?"
    rf"|`(?P<code>{_LENGTH_ALONE})`"
    r"|`[^`\n]{1,300}`"
    rf"|(?<!!)\[(?P<linked>{_LENGTH_ALONE})\]\((?=[^()\n]{{0,500}}(?:://|[#/.][a-z]))[^()\n]{{0,500}}\)"
    r"|(?<=\])\([^()\n]{0,500}\)(?!\s*[\d(])"
    r"|<!--(?:(?!-->)[\s\S]){0,4000}-->"
    r"|<(?:https?:|mailto:)[^<>\s]{1,500}>"
    rf"|</?(?i:{_INLINE})(?:\s[^<>]{{0,300}})?/?>"
    r"|(?P<entity>&(?:\#\d{1,7}|\#[xX][0-9a-fA-F]{1,6}|[A-Za-z]{2,12}\d{0,2});)",
    re.MULTILINE,
)
_SAID = ("code", "linked")
_LINE_ENDS = "\n\r\v\f\x85\u2028\u2029"


def said_in_markdown(text: str) -> str:
    """The text, as long as before, with blanks for whatever a reader of the page would not read as words.

    Behind the sign of an entity stand fillers, which ``read`` and ``proofread`` pass over.

    >>> said_in_markdown("Cut `f(3 in)` and [this](page-4.html)")
    'Cut           and [this]             '
    """
    return _NOT_SAID.sub(_said, text)


def _said(match: re.Match[str]) -> str:
    written = match.group()
    if entity := match["entity"]:
        sign = unescape(entity)
        if len(sign) > 1 or sign in _LINE_ENDS or sign.isprintable() is sign.isspace():
            return written
        return sign + FILLER * (len(entity) - 1)
    blank = re.sub(r"[^\n]", " ", written)
    for name in _SAID:
        if said := match[name]:
            first, behind = (place - match.start() for place in match.span(name))
            return blank[:first] + said_in_markdown(said) + blank[behind:]
    return blank
