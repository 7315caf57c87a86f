"""How a whole site looks: its theme in the author's colours and fonts, and its logo."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from pathlib import PurePosixPath

from sitegen.findings import Collector
from sitegen.pictures import Trouble, prepare
from sitegen.publishing.languages import ENGLISH_CODE, asked_in, fits, read_texts, words_are_there
from sitegen.publishing.picture_files import PICTURES_FOLDER
from sitegen.publishing.picture_views import LogoPicture
from sitegen.publishing.render import environment_of
from sitegen.publishing.themes import Theme, contrast_is_enough, find_theme, in_its_look, try_theme
from sitegen.reading import ContentFolder
from sitegen.tutorial import Logo, Site

_LOGO_WIDTH = 480
"""Pixels: a logo is shown at most half as wide, and phones have two pixels and more for one."""


@dataclass(frozen=True)
class SiteLook:
    """The theme, the logo as pages show it, and the files that it needs."""

    theme: Theme
    logo: LogoPicture | None = None
    files: dict[str, bytes] = field(default_factory=dict)


def site_look(site: Site, folder: ContentFolder, collector: Collector) -> SiteLook | None:
    """What site.yaml says of the look, put to work. None when there is no theme; that and all else is reported."""
    named = site.look.theme
    theme = find_theme(named, folder, collector)
    if theme is None:
        return None
    theme = _with_own_words(in_its_look(theme, site.look, collector), site, folder, collector)
    try_theme(theme, named.place if named is not None else site.place, environment_of(theme), collector)
    contrast_is_enough(theme, collector)
    return _with_logo(theme, site.look.logo, folder, collector)


def _with_own_words(theme: Theme, site: Site, folder: ContentFolder, collector: Collector) -> Theme:
    """The theme with the texts that the author puts instead of its own: ``words.yaml``, ``words.es.yaml``."""
    english = theme.words.get(ENGLISH_CODE, {})
    templates = {name: (each.text, each.place) for name, each in theme.below("templates").items() if each.own}
    words_are_there(asked_in(templates, environment_of(theme)), english, collector)
    words = dict(theme.words)
    for texts in words.values():
        fits(texts, english, collector)
    for code in site.languages:
        name = "words.yaml" if code == site.languages[0] else f"words.{code}.yaml"
        if folder.exists(name):
            own = read_texts(folder, name, collector)
            fits(own, english, collector)
            plain = code.partition("-")[0].lower()
            words[code] = {**words.get(code, words.get(plain, {})), **own}
    return replace(theme, words=words)


def _with_logo(theme: Theme, logo: Logo | None, folder: ContentFolder, collector: Collector) -> SiteLook:
    if logo is None:
        return SiteLook(theme)
    name = logo.file.text
    path = folder.file(name)
    if path is None:
        message = (
            f"There is no file {name} in the content folder. Example: logo: {{file: logo.png, shows: A reel of thread}}"
        )
        collector.wrong("picture-missing", logo.file.place, message, said=name)
        return SiteLook(theme)
    if PurePosixPath(name).suffix.lower() in (".svg", ".svgz"):
        message = (
            f"{path.name} is an SVG drawing, which is not taken as a logo: it may hold scripts and hidden data, and "
            "these cannot be taken out for certain. Save it as PNG, 500 pixels wide."
        )
        collector.wrong("picture-broken", logo.file.place, message, said=name)
        return SiteLook(theme)
    made = prepare(path, stem="logo", widths=(_LOGO_WIDTH,))
    if isinstance(made, Trouble):
        collector.wrong("picture-broken", logo.file.place, made.message, said=name)
        return SiteLook(theme)
    files = {f"{PICTURES_FOLDER}/{each.name}": each.content for each in made.sources}
    modern, plain = (f"{PICTURES_FOLDER}/{each.name}" for each in (made.sources[0], made.sources[-1]))
    return SiteLook(theme, LogoPicture(plain, modern, made.width, made.height, logo.shows), files)
