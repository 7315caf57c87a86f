"""Words in another language than the page around them, marked from where they are made until the page is finished.

Plain texts pass through many hands and are escaped on the way, so a mark is made of noncharacters, which Unicode keeps
for such use inside a program (The Unicode Standard, 23.7 "Noncharacters"). In the end they become ``lang`` attributes.
"""

from __future__ import annotations

import re

_OPEN, _MIDDLE, _CLOSE = "\ufdd0", "\ufdd1", "\ufdd2"
_MARKS = re.compile(rf"{_OPEN}[A-Za-z-]*{_MIDDLE}|[{_OPEN}{_MIDDLE}{_CLOSE}]")
_BEGINS = re.compile(rf"{_OPEN}([A-Za-z-]+){_MIDDLE}")
_PICTURE = re.compile(
    rf"(<img\b[^>]*? alt=)([\"']?){_OPEN}([A-Za-z-]+){_MIDDLE}([^{_OPEN}{_MIDDLE}{_CLOSE}>]*){_CLOSE}\2(?=[ />])"
)
_NO_ELEMENT_INSIDE = re.compile(r"(<(script|style|title|textarea)\b.*?</\2>|<[^>]*>)", re.DOTALL)


def foreign(text: str, language: str) -> str:
    """The text, marked as one of this language. A text that is marked already stays as it is."""
    return text if not text or _OPEN in text else f"{_OPEN}{language}{_MIDDLE}{text}{_CLOSE}"


def unmarked(text: str) -> str:
    """The text without marks, for what cannot tell languages apart."""
    return _MARKS.sub("", text)


def finished_page(html: str) -> str:
    """The page with an element for every marked text; attributes and scripts hold the text alone.

    A picture is of the language of its description, which has no other place to say so.
    """
    if _OPEN not in html:
        return html
    parts = _NO_ELEMENT_INSIDE.split(_PICTURE.sub(r"\1\2\4\2 lang=\3", html))
    # split gives text, the tag or element, the name of the element, and so on
    return "".join(
        part if index % 3 == 0 else unmarked(part)
        for index, part in enumerate(
            _BEGINS.sub(r'<span lang="\1">', part).replace(_CLOSE, "</span>") if index % 3 == 0 else part or ""
            for index, part in enumerate(parts)
        )
        if index % 3 != 2
    )
