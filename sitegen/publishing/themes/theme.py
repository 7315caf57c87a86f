"""A theme as a whole: its texts and other files, its colours and fonts, and what it takes from another theme."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from enum import Enum

from sitegen.findings import Place
from sitegen.publishing.languages import Texts
from sitegen.publishing.packed import packed_script, packed_styles
from sitegen.publishing.themes.fonts import FONTS
from sitegen.tutorial import Colour, Words

STYLE_SHEET = "style.css"
"""The name of the style sheet of every page, in the folder ``theme`` of a site."""
SCRIPT = "script.js"
SCHEMES = ("light", "dark", "print")
_ONLY_IF = {"light": "", "dark": "@media (prefers-color-scheme: dark)", "print": "@media print"}
_USED = re.compile(r"var\(--([a-z][a-z0-9-]*)")


class Read(Enum):
    """What stands on a ground, and how much contrast it needs at least (WCAG 2.2, 1.4.3 and 1.4.11)."""

    TEXT = "text"
    LARGE = "large"
    MARKS = "marks"

    @property
    def least(self) -> float:
        """The least contrast ratio."""
        return 4.5 if self is Read.TEXT else 3.0

    @property
    def words(self) -> str:
        """As a message says it."""
        return {Read.TEXT: "text needs", Read.LARGE: "large text needs", Read.MARKS: "lines and signs need"}[self]


@dataclass(frozen=True, slots=True)
class Pair:
    """A colour that is read on another, both by name."""

    kind: Read
    above: str
    ground: str
    place: Place = field(compare=False)


@dataclass(frozen=True, slots=True)
class ThemeText:
    """A template, a style sheet or a script."""

    text: str
    place: Place
    """Its first character."""
    own: bool
    """Whether it lies in the content folder, so that its author can mend it."""


@dataclass(frozen=True, eq=False)
class Theme:
    """All of a theme. Texts and assets have their path in the folder of the theme: ``templates/front.html``."""

    key: str
    """The name of its folder."""
    name: str
    about: str
    texts: Mapping[str, ThemeText]
    assets: Mapping[str, bytes]
    colours: Mapping[str, Mapping[str, Colour]]
    """By scheme and name; what ``dark`` and ``print`` do not name is as in ``light``."""
    fonts: Mapping[str, Words]
    pairs: tuple[Pair, ...]
    own_colours: frozenset[tuple[str, str]] = frozenset()
    """Scheme and name of the colours that stand in the content folder."""
    words: Mapping[str, Texts] = field(default_factory=dict)
    """The texts of its templates by language, those of the theme that it is based on among them."""

    def colours_of(self, scheme: str) -> dict[str, Colour]:
        """Every colour of a scheme by its name."""
        return {**self.colours.get("light", {}), **self.colours.get(scheme, {})}

    def below(self, folder: str) -> dict[str, ThemeText]:
        """The texts of one folder by their path in it, in the order of their names."""
        start = f"{folder}/"
        return {path.removeprefix(start): self.texts[path] for path in sorted(self.texts) if path.startswith(start)}

    def files(self) -> dict[str, bytes]:
        """The files that pages ask for, by their path in the folder ``theme`` of the site.

        The sheets in a folder of ``style`` become a sheet of its name, for the pages that ask for it.
        """
        scripts = {path: each.text for path, each in self.below("assets").items()}
        more = "".join(each.text for each in self.below("script").values())
        if more:
            scripts[SCRIPT] = scripts.get(SCRIPT, "") + more
        sheets = {STYLE_SHEET: [self._rules()]}
        for path, each in self.below("style").items():
            folder, inside, _ = path.partition("/")
            sheets.setdefault(f"{folder}.css" if inside else STYLE_SHEET, []).append(each.text)
        return {
            **self.assets,
            **{path: packed_script(text).encode("utf-8") for path, text in scripts.items()},
            **{path: packed_styles(parts).encode("utf-8") for path, parts in sheets.items()},
        }

    def drawing_rules(self) -> str:
        """The style rules that the file of every drawing carries: a file cannot ask the page for its colours."""
        sheet = self.texts.get("drawing.css")
        if sheet is None:
            return ""
        return packed_styles([self._rules(set(_USED.findall(sheet.text))), sheet.text])

    def phone_colours(self) -> dict[str, str]:
        """The colours of the site on the home screen of a phone, under the names of the W3C manifest."""
        paper = self.colours_of("light").get("paper")
        return {"background_color": paper.value, "theme_color": paper.value} if paper is not None else {}

    def _rules(self, only: set[str] | None = None) -> str:
        """Colours and fonts as custom properties. Paper comes last, for it may be printed from the dark."""
        found = []
        for scheme in SCHEMES:
            named = self.colours_of(scheme) if scheme == "print" else self.colours.get(scheme, {})
            values = {name: colour.value for name, colour in named.items()}
            if scheme == "light":
                values |= {role: FONTS[words.text] for role, words in self.fonts.items()}
            rules = _rule({name: value for name, value in values.items() if only is None or name in only}.items())
            if rules:
                found.append(f"{_ONLY_IF[scheme]} {{ {rules} }}" if _ONLY_IF[scheme] else rules)
        return "\n".join(found)


def _rule(values: Iterable[tuple[str, str]]) -> str:
    inner = " ".join(f"--{name}: {value};" for name, value in values)
    return f":root {{ {inner} }}" if inner else ""
