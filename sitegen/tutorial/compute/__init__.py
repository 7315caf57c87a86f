"""The model to every number, for every size, with its working. All rooms above read only what comes out here."""

from sitegen.tutorial.compute.computed import compute
from sitegen.tutorial.compute.given import edge_number, words_of
from sitegen.tutorial.compute.result import Computed

__all__ = ["Computed", "compute", "edge_number", "words_of"]
