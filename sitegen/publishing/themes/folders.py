"""Reads the folders of themes: those that come with the program, and those in the folder ``themes`` of an author."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import lru_cache
from pathlib import Path

from sitegen.findings import Collector, nearest
from sitegen.publishing.languages import Texts, read_texts
from sitegen.publishing.themes.look import with_colours
from sitegen.publishing.themes.theme import Theme, ThemeText
from sitegen.publishing.themes.theme_file import ThemeFile, theme_file
from sitegen.reading import ContentFolder
from sitegen.tutorial import Words

DEFAULT_THEME = "workroom"
THEMES_FOLDER = "themes"
_PACKAGE = Path(__file__).resolve().parents[2]
_PLACES = (_PACKAGE / THEMES_FOLDER, _PACKAGE.parent / THEMES_FOLDER)
"""Inside an installed package, and beside the package in a checkout."""
_PLAIN_NAME = re.compile(r"[A-Za-z0-9][A-Za-z0-9_-]*")
_PARTS = ("templates", "style", "assets", "script")
_DRAWING = "drawing.css"
_WORDS = "words"
_TEXTS = (".html", ".css", ".js")
_DEEPEST = 4
_NONE = "none"
_NOTHING = Theme("", "", "", {}, {}, {}, {}, ())
"""What a theme is based on that is based on none."""


class ThemeNotFoundError(ValueError):
    """There is no theme of this name; the message names those there are."""


@dataclass(frozen=True, slots=True)
class _Home:
    """Where the folder of a theme lies."""

    key: str
    folder: ContentFolder
    path: str
    own: bool
    """Whether it lies in the content folder."""


def shipped_themes() -> tuple[str, ...]:
    """The names of the themes that come with the program."""
    found = {each.name for place in _PLACES if place.is_dir() for each in place.iterdir() if each.is_dir()}
    return tuple(sorted(found))


def shipped_theme(key: str = DEFAULT_THEME) -> Theme:
    """A theme that comes with the program. Raises ThemeNotFoundError when there is none of this name."""
    for place in _PLACES:
        if _PLAIN_NAME.fullmatch(key) and (place / key).is_dir():
            return _shipped(place, key)
    raise ThemeNotFoundError(f"there is no theme {key!r}; there is {', '.join(shipped_themes()) or _NONE}")


@lru_cache(maxsize=16)
def _shipped(place: Path, key: str) -> Theme:
    collector = Collector()
    theme = _read(_Home(key, ContentFolder(place, THEMES_FOLDER), key, own=False), None, collector, (key,))
    if theme is None or collector.findings:
        raise ValueError("; ".join(f"{each.place}: {each.message}" for each in collector.findings))
    return theme


def find_theme(named: Words | None, content: ContentFolder, collector: Collector) -> Theme | None:
    """The theme that site.yaml names, or that taken by default. None if it cannot be used, which the collector is told.

    A name is first one of the themes that come with the program, then one of the folders in ``themes``.
    """
    return shipped_theme() if named is None else _find(named, content, collector, ())


def _find(named: Words, content: ContentFolder | None, collector: Collector, above: tuple[str, ...]) -> Theme | None:
    key = named.text
    own = content.folders(THEMES_FOLDER, collector) if content is not None else ()
    if key in above:
        circle = " on ".join((*above[above.index(key) :], key))
        message = f"No theme can be based on itself: here {circle}. Base one of them on another theme."
    elif key in own and key in shipped_themes():
        message = (
            f"{key} is a theme that comes with the program. Give your folder themes/{key} another name, and "
            f"write based_on: {key} in its theme.yaml if it shall take from there what it lacks."
        )
    elif key in shipped_themes():
        return shipped_theme(key)
    elif content is not None and key in own and _PLAIN_NAME.fullmatch(key):
        return _read(_Home(key, content, f"{THEMES_FOLDER}/{key}", own=True), content, collector, (*above, key))
    else:
        known = (*shipped_themes(), *own)
        near = nearest(key, known, most=1)
        message = f"There is no theme “{key}”. Known are {', '.join(known)}. Example: theme: {DEFAULT_THEME}"
        collector.wrong("theme-unknown", named.place, message, said=key, should_be=near[0] if near else "")
        return None
    collector.wrong("theme-broken", named.place, message, said=key)
    return None


def _read(home: _Home, content: ContentFolder | None, collector: Collector, above: tuple[str, ...]) -> Theme | None:
    """A theme out of its folder; None if its ``theme.yaml`` cannot be read, or that of a theme it is based on."""
    path = f"{home.path}/theme.yaml"
    if not home.folder.exists(path):
        message = f"The theme {home.key} has no theme.yaml. The file begins: name: Plain linen"
        collector.wrong("theme-broken", home.folder.place(path), message)
        return None
    node = home.folder.yaml(path, collector)
    if node is None:
        return None
    said = theme_file(node, home.key, collector)
    base: Theme | None = _NOTHING
    if said.based_on is not None and said.based_on.text != _NONE:
        base = _find(said.based_on, content, collector, above)
    if base is None:
        return None
    texts, assets = _files(home, collector)
    theme = replace(
        with_colours(base, said.colours, own=home.own),
        key=home.key,
        name=said.name,
        about=said.about,
        texts={**base.texts, **_under_its_name(base), **texts},
        assets={**base.assets, **assets},
        fonts={**base.fonts, **said.fonts},
        words=_words(home, base, collector),
        pairs=tuple(dict.fromkeys((*base.pairs, *said.pairs))),
    )
    _pairs_are_known(said, theme, collector)
    return theme


def _under_its_name(base: Theme) -> dict[str, ThemeText]:
    """The templates of a theme once more, such as ``workroom/front.html``: one that stands for it can extend it."""
    templates = base.below("templates").items()
    return {f"templates/{base.key}/{path}": text for path, text in templates if base.key}


def _pairs_are_known(said: ThemeFile, theme: Theme, collector: Collector) -> None:
    known = theme.colours_of("light")
    for pair in said.pairs:
        for name in (pair.above, pair.ground):
            if name not in known:
                message = f"The theme has no colour “{name}” for light. It has {', '.join(known) or 'none'}."
                collector.wrong("theme-broken", pair.place, message, said=f"{pair.above} on {pair.ground}")


def _files(home: _Home, collector: Collector) -> tuple[dict[str, ThemeText], dict[str, bytes]]:
    """The files of a folder: those that hold text, and the assets that do not."""
    texts: dict[str, ThemeText] = {}
    assets: dict[str, bytes] = {}
    names = [f"{part}/{name}" for part in _PARTS for name in _below(home, f"{home.path}/{part}", collector)]
    if home.folder.exists(f"{home.path}/{_DRAWING}"):
        names.append(_DRAWING)
    for name in names:
        path = f"{home.path}/{name}"
        if name.endswith(_TEXTS):
            text = home.folder.text(path, collector)
            if text is not None:
                texts[name] = ThemeText(text, home.folder.place(path), home.own)
        elif name.startswith("assets/"):
            file = home.folder.file(path)
            try:
                content = file.read_bytes() if file is not None else None
            except OSError:
                content = None
            if content is None:
                message = "This file cannot be read, or it is a link out of the content folder. Put a copy of it here."
                collector.wrong("theme-broken", home.folder.place(path), message)
            else:
                assets[name.removeprefix("assets/")] = content
    return texts, assets


def _words(home: _Home, base: Theme, collector: Collector) -> dict[str, Texts]:
    """The texts by language: each that the theme does not have is that of its base."""
    found = dict(base.words)
    for name in home.folder.list(f"{home.path}/{_WORDS}", collector, suffixes=(".yaml",)):
        code = name.removesuffix(".yaml")
        found[code] = {**found.get(code, {}), **read_texts(home.folder, f"{home.path}/{_WORDS}/{name}", collector)}
    return found


def _below(home: _Home, folder: str, collector: Collector, depth: int = 1) -> Iterator[str]:
    """The paths of all files in a folder and a few folders deep, so that a link in a circle comes to an end."""
    yield from home.folder.list(folder, collector)
    if depth < _DEEPEST:
        for inner in home.folder.folders(folder, collector):
            for name in _below(home, f"{folder}/{inner}", collector, depth + 1):
                yield f"{inner}/{name}"
