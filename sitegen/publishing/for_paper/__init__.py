"""A tutorial as plain data for printed sheets: running text as a small tree, numbers in the words of a few sizes.

Nothing here is HTML: whoever lays out paper sets these parts in a way of its own.
"""

from sitegen.publishing.for_paper.numbers import PrintedNumbers
from sitegen.publishing.for_paper.page import PaperPage, paper_page
from sitegen.publishing.for_paper.text import Block, Fill, Span, printed_line, printed_text, unstyled

__all__ = [
    "Block",
    "Fill",
    "PaperPage",
    "PrintedNumbers",
    "Span",
    "paper_page",
    "printed_line",
    "printed_text",
    "unstyled",
]
