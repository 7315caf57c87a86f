"""What stands in the file ``theme.yaml`` of a theme."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from sitegen.findings import Collector
from sitegen.publishing.themes.look import fonts_are_known
from sitegen.publishing.themes.theme import SCHEMES, Pair, Read
from sitegen.reading import Mapping as Keys
from sitegen.tutorial import Colour, Words
from sitegen.tutorial.build import FONT_ROLES, Builder, Fields, colours, fonts

_COLOUR_NAME = re.compile(r"[a-z][a-z0-9-]*")
_PAIR = re.compile(r"(\S+) on (\S+)")


@dataclass(frozen=True, slots=True)
class ThemeFile:
    """The file as its author wrote it, without what it takes from another theme."""

    name: str
    about: str
    based_on: Words | None
    colours: Mapping[str, tuple[Colour, ...]]
    fonts: Mapping[str, Words]
    pairs: tuple[Pair, ...]


def theme_file(node: Keys, key: str, collector: Collector) -> ThemeFile:
    """The keys of the file. What cannot be used is reported and left out."""
    fields = Fields(Builder(collector), node, f"the theme {key}")
    found = ThemeFile(
        name=fields.text("name", "name: Plain linen", required=True),
        about=fields.text("about", "about: The colours of undyed cloth."),
        based_on=fields.words("based_on", "based_on: workroom"),
        colours={
            scheme: tuple(each for each in named if _can_be_named(each, collector))
            for scheme, named in colours(fields, SCHEMES).items()
        },
        fonts=fonts_are_known(fonts(fields), collector),
        pairs=tuple(_pairs(fields)),
    )
    fields.finish()
    return found


def _can_be_named(colour: Colour, collector: Collector) -> bool:
    if _COLOUR_NAME.fullmatch(colour.name) and colour.name not in FONT_ROLES:
        return True
    message = f"“{colour.name}” cannot name a colour. Use small letters, digits and hyphens, a letter first: accent"
    collector.wrong("bad-name", colour.place, message)
    return False


def _pairs(fields: Fields) -> Iterator[Pair]:
    """The key ``contrast``: which colour is read on which."""
    node = fields.get("contrast")
    if node is None:
        return
    if not isinstance(node, Keys):
        fields.builder.not_this(node, "text, large and marks", "contrast: {text: [ink on paper]}")
        return
    inner = Fields(fields.builder, node, "the part contrast")
    for kind in Read:
        for words in inner.words_list(kind.value, f"{kind.value}: [ink on paper]"):
            found = _PAIR.fullmatch(words.text)
            if found:
                yield Pair(kind, found[1], found[2], words.place)
            else:
                message = f"Expected two names with on between them, found “{words.text}”. Example: ink on paper"
                fields.builder.wrong("wrong-kind", words.place, message, said=words.text)
    inner.finish()
