"""The model to every number, for every size, with its working. All rooms above read only what comes out here."""

from sitegen.tutorial.compute.computed import compute
from sitegen.tutorial.compute.drawn_in import gathered_edge, pleated_width
from sitegen.tutorial.compute.following import made_together, more_cloth
from sitegen.tutorial.compute.given import edge_number
from sitegen.tutorial.compute.lengths_of_pieces import sides_to_tell, taken_at
from sitegen.tutorial.compute.linking import untold_references
from sitegen.tutorial.compute.naming import body_words, words_of
from sitegen.tutorial.compute.result import Computed
from sitegen.tutorial.compute.size_advice import SizeAdvice, SizeRule, SizeTable, size_advice, size_rule
from sitegen.tutorial.compute.supposing import supposing

__all__ = [
    "Computed",
    "SizeAdvice",
    "SizeRule",
    "SizeTable",
    "body_words",
    "compute",
    "edge_number",
    "gathered_edge",
    "made_together",
    "more_cloth",
    "pleated_width",
    "sides_to_tell",
    "size_advice",
    "size_rule",
    "supposing",
    "taken_at",
    "untold_references",
    "words_of",
]
