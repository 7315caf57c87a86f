"""Nodes of the author's files to the model. The only part of this room that knows how files are written."""

from sitegen.tutorial.build.builder import Builder
from sitegen.tutorial.build.fields import Fields
from sitegen.tutorial.build.look import FONT_ROLES, colours, fonts
from sitegen.tutorial.build.site import glossary, near_tutorial, site
from sitegen.tutorial.build.site_languages import languages_of_folder
from sitegen.tutorial.build.translations import Languages
from sitegen.tutorial.build.tutorial import tutorial

__all__ = [
    "FONT_ROLES",
    "Builder",
    "Fields",
    "Languages",
    "colours",
    "fonts",
    "glossary",
    "languages_of_folder",
    "near_tutorial",
    "site",
    "tutorial",
]
