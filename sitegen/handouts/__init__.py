"""What a class holds in its hands: handouts as PDF, for students and for the teacher, and slips that correct them.

Knows the computed class and the page of its tutorial; the only room that lays out paper.
"""

from sitegen.handouts.model import Copy, Handout, Paper, Wanted
from sitegen.handouts.needed import NoPdf
from sitegen.handouts.printed import NotPrintedHere, Printed, read_printed
from sitegen.handouts.slip import Slip
from sitegen.handouts.whole import Made, handout_of, handout_pdf, slip_for, slip_pdf

__all__ = [
    "Copy",
    "Handout",
    "Made",
    "NoPdf",
    "NotPrintedHere",
    "Paper",
    "Printed",
    "Slip",
    "Wanted",
    "handout_of",
    "handout_pdf",
    "read_printed",
    "slip_for",
    "slip_pdf",
]
