"""Colours and fonts, in site.yaml as in the files of themes."""

from __future__ import annotations

import re
from collections.abc import Iterable

from sitegen.reading import Empty, Mapping, Node, Scalar
from sitegen.tutorial.build.builder import Builder
from sitegen.tutorial.build.fields import Fields
from sitegen.tutorial.model import Colour, Logo, Look, Words

FONT_ROLES = ("headings", "text", "labels")
_SCHEMES = ("light", "dark")
_HEX = re.compile(r"#(?:[0-9a-f]{3,4}|[0-9a-f]{6}|[0-9a-f]{8})")
_WHAT = "a colour in quotes, # and six digits from 0 to 9 and a to f"
_EXAMPLE = 'accent: "#1b4a80"'


def look(fields: Fields) -> Look:
    """What the keys ``theme`` and ``look`` of site.yaml say."""
    theme = fields.words("theme", "theme: workroom")
    node = fields.get("look")
    if node is None:
        return Look(theme)
    example = f"look: {{colours: {{light: {{{_EXAMPLE}}}}}, fonts: {{headings: slab}}}}"
    if not isinstance(node, Mapping):
        fields.builder.not_this(node, "colours, fonts and a logo", example)
        return Look(theme)
    inner = Fields(fields.builder, node, "the look")
    found = Look(theme, colours(inner, _SCHEMES), fonts(inner), _logo(inner))
    inner.finish()
    return found


def colours(fields: Fields, schemes: Iterable[str]) -> dict[str, tuple[Colour, ...]]:
    """The key ``colours``: for each scheme, names with their colours."""
    inner = _part(fields, "colours", f"colours: {{light: {{{_EXAMPLE}}}}}")
    if inner is None:
        return {}
    found = {}
    for scheme in schemes:
        node = inner.get(scheme)
        if isinstance(node, Mapping):
            read = (_colour(fields.builder, entry.key, entry.value) for entry in node.entries)
            found[scheme] = tuple(each for each in read if each is not None)
        elif node is not None:
            fields.builder.not_this(node, "names, each with its colour", f"{scheme}: {{{_EXAMPLE}}}")
    inner.finish()
    return found


def fonts(fields: Fields) -> dict[str, Words]:
    """The key ``fonts``: what is set in which of the lists of fonts."""
    inner = _part(fields, "fonts", "fonts: {headings: slab, text: serif}")
    if inner is None:
        return {}
    read = {role: inner.words(role, f"{role}: serif") for role in FONT_ROLES}
    inner.finish()
    return {role: words for role, words in read.items() if words is not None}


def _part(fields: Fields, key: str, example: str) -> Fields | None:
    node = fields.get(key)
    if node is None:
        return None
    if not isinstance(node, Mapping):
        fields.builder.not_this(node, f"keys with values under {key}", example)
        return None
    return Fields(fields.builder, node, f"the part {key}")


def _colour(builder: Builder, name: Scalar, value: Node) -> Colour | None:
    if isinstance(value, Empty):
        builder.wrong(
            "empty-value",
            name.place,
            f"{name.text} has no colour. Behind a space, # begins a remark, so a colour stands in quotes. "
            f"Example: {_EXAMPLE}",
            said=name.text,
        )
        return None
    text = value.text.strip().lower() if isinstance(value, Scalar) else ""
    if not _HEX.fullmatch(text):
        builder.not_this(value, _WHAT, _EXAMPLE)
        return None
    digits = text[1:]
    return Colour(name.text, "#" + ("".join(2 * each for each in digits) if len(digits) < 6 else digits), value.place)


def _logo(fields: Fields) -> Logo | None:
    example = "logo: {file: logo.png, shows: A reel of thread}"
    node = fields.get("logo")
    if node is None:
        return None
    if not isinstance(node, Mapping):
        fields.builder.not_this(node, "file and shows", example)
        return None
    inner = Fields(fields.builder, node, "the logo")
    file = inner.words("file", "file: logo.png", required=True)
    shows = inner.text("shows", "shows: A reel of thread", required=True)
    inner.finish()
    return Logo(file, shows) if file is not None and shows else None
