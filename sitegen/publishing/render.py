"""Fills the templates of a theme.

A theme is a folder in ``themes/``: ``templates/`` with ``front.html``, ``tutorial.html`` and ``glossary.html``,
and ``assets/`` with the files that pages ask for, laid into the folder ``theme`` of the site as they are.
Everything is escaped unless it is ``Markup``, and a name that a template does not know is an error.
"""

from __future__ import annotations

import re
from functools import lru_cache
from pathlib import Path

from jinja2 import Environment, FileSystemLoader, StrictUndefined

from sitegen.publishing import amounts, views
from sitegen.publishing.views import FrontView, GlossaryView, TutorialView

DEFAULT_THEME = "workroom"

_ROOM = Path(__file__).resolve().parent
_PLACES = (_ROOM.parent / "themes", _ROOM.parent.parent / "themes")
"""Inside an installed package, and beside the package in a checkout."""
_PLAIN_NAME = re.compile(r"[A-Za-z0-9][A-Za-z0-9_-]*")


class ThemeNotFoundError(ValueError):
    """There is no theme of this name; the message names those there are."""


def themes() -> dict[str, Path]:
    """The folder of each theme by its name."""
    found: dict[str, Path] = {}
    for place in reversed(_PLACES):
        if place.is_dir():
            found |= {folder.name: folder for folder in place.iterdir() if (folder / "templates").is_dir()}
    return found


def theme_folder(name: str) -> Path:
    """The folder of a theme. Raises ThemeNotFoundError when the name is not that of a folder in ``themes``."""
    known = themes()
    if not _PLAIN_NAME.fullmatch(name) or name not in known:
        raise ThemeNotFoundError(f"there is no theme {name!r}; there is {', '.join(sorted(known)) or 'none'}")
    return known[name]


def theme_assets(name: str = DEFAULT_THEME) -> dict[str, Path]:
    """The files that pages ask for, by their path in the folder ``theme`` of the site."""
    folder = theme_folder(name) / "assets"
    return {path.relative_to(folder).as_posix(): path for path in sorted(folder.rglob("*")) if path.is_file()}


def render_front(view: FrontView, theme: str = DEFAULT_THEME) -> str:
    """The front page as HTML."""
    return _render("front.html", view, theme)


def render_tutorial(view: TutorialView, theme: str = DEFAULT_THEME) -> str:
    """The page of one tutorial as HTML."""
    return _render("tutorial.html", view, theme)


def render_glossary(view: GlossaryView, theme: str = DEFAULT_THEME) -> str:
    """The page of terms as HTML."""
    return _render("glossary.html", view, theme)


def duration(minutes: int) -> str:
    """A time in words: ``45 min``, ``2 h``, ``3 h 20 min``."""
    hours, rest = divmod(minutes, 60)
    parts = ([f"{hours} h"] if hours else []) + ([f"{rest} min"] if rest or not hours else [])
    return amounts.unbroken(" ".join(parts)).replace(" ", "\N{NO-BREAK SPACE}")


def _render(template: str, view: FrontView | TutorialView | GlossaryView, theme: str) -> str:
    environment = _environment(theme_folder(theme))
    return environment.get_template(template).render(view=view, site=view.site, root=view.root)


@lru_cache(maxsize=8)
def _environment(folder: Path) -> Environment:
    environment = Environment(
        loader=FileSystemLoader(folder / "templates"),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        keep_trailing_newline=True,
    )
    environment.globals |= {
        "amount": amounts.amount,
        "cell": amounts.cell,
        "number": amounts.number,
        "unbroken": amounts.unbroken,
        "FRONT_PAGE": views.FRONT_PAGE,
        "GLOSSARY_PAGE": views.GLOSSARY_PAGE,
        "THEME_FOLDER": views.THEME_FOLDER,
    }
    environment.filters["duration"] = duration
    return environment
