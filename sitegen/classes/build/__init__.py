"""Nodes of a class file to the model. The only part of this room that knows how files are written."""

from sitegen.classes.build.translated import class_in_language
from sitegen.classes.build.whole import class_files, class_of

__all__ = ["class_files", "class_in_language", "class_of"]
