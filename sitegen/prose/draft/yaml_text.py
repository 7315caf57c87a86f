"""Texts as a person would type them into a YAML file."""

from __future__ import annotations

import json
import re
import textwrap
from collections.abc import Iterable

WIDTH = 100
_BARE = re.compile(r"[A-Za-z][A-Za-z0-9 '’/.,-]*[A-Za-z0-9.]")
_OTHER_VALUES = {"yes", "no", "on", "off", "true", "false", "null", "y", "n"}
_MARKDOWN = re.compile(r"[\\`*_\[\]]|<(?=[A-Za-z/!?])|&(?=#?\w+;)")
_LINE_HEAD = re.compile(r"^(\d{1,9})([.)])(?=\s|$)|^([#+=-]+)(?=\s|$)|^(>|-{2,}|={2,}|~{3,})")


def scalar(text: str) -> str:
    """A short text as a value, in quotes only where it needs them."""
    if _BARE.fullmatch(text) and text.casefold() not in _OTHER_VALUES and "  " not in text:
        return text
    return json.dumps(text, ensure_ascii=False)


def block(key: str, text: str) -> str:
    """Running text under a key. Signs that would mark up the text are made to stand for themselves."""
    lines = [f"{key}: |"]
    for number, paragraph in enumerate(text.split("\n\n")):
        lines += [""] if number else []
        lines += [f"  {line}" for line in _wrapped(_as_said(paragraph))]
    return "\n".join(lines) + "\n"


def comments(lines: Iterable[str]) -> str:
    """Remarks, one a line; long ones stay in one line, so that a time and its words are never parted."""
    return "".join(f"# {line}".rstrip() + "\n" for line in lines)


def _as_said(text: str) -> str:
    return _MARKDOWN.sub(lambda sign: f"\\{sign.group()}", text).replace("{", "{{")


def _wrapped(text: str) -> list[str]:
    found = textwrap.wrap(text, WIDTH, break_long_words=False, break_on_hyphens=False)
    return [_LINE_HEAD.sub(_escaped, line) for line in found]


def _escaped(head: re.Match[str]) -> str:
    """A list or a heading that none is meant to be."""
    return f"{head[1]}\\{head[2]}" if head[1] else f"\\{head.group()}"
