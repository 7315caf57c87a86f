"""Nodes of the author's files to the model. The only part of this room that knows how files are written."""

from sitegen.tutorial.build.site import glossary, near_tutorial, site
from sitegen.tutorial.build.tutorial import tutorial

__all__ = ["glossary", "near_tutorial", "site", "tutorial"]
