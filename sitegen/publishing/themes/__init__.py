"""Themes: how pages look. A theme is a folder with templates, style sheets and assets, and a ``theme.yaml``.

Knows nothing of what stands on a page.
"""

from sitegen.publishing.themes.contrast import contrast
from sitegen.publishing.themes.folders import (
    DEFAULT_THEME,
    THEMES_FOLDER,
    ThemeNotFoundError,
    find_theme,
    shipped_theme,
    shipped_themes,
)
from sitegen.publishing.themes.look import contrast_is_enough, in_its_look, weak_pairs
from sitegen.publishing.themes.theme import SCHEMES, SCRIPT, STYLE_SHEET, Theme
from sitegen.publishing.themes.trial import try_theme

__all__ = [
    "DEFAULT_THEME",
    "SCHEMES",
    "SCRIPT",
    "STYLE_SHEET",
    "THEMES_FOLDER",
    "Theme",
    "ThemeNotFoundError",
    "contrast",
    "contrast_is_enough",
    "find_theme",
    "in_its_look",
    "shipped_theme",
    "shipped_themes",
    "try_theme",
    "weak_pairs",
]
