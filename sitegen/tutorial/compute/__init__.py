"""The model to every number, for every size, with its working. All rooms above read only what comes out here."""

from sitegen.tutorial.compute.computed import Computed, compute
from sitegen.tutorial.compute.given import edge_number, words_of

__all__ = ["Computed", "compute", "edge_number", "words_of"]
