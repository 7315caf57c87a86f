"""Measurements in running text, and what they say. Knows nothing of pages or of the rules of checks."""

from sitegen.prose.bind import Bound, bind, sizes_around
from sitegen.prose.captions import Captions, Cue, captions_of, clock, is_captions
from sitegen.prose.draft import Drafted, drafted, empty_folder
from sitegen.prose.find import read
from sitegen.prose.markdown import said_in_markdown
from sitegen.prose.marking import Piece, marked_text, pieces_of
from sitegen.prose.measurement import Kind, Measurement
from sitegen.prose.mixed_sums import MixedSum, find_mixed_sums
from sitegen.prose.proofread import Proof, TextFinding, proof, proofread
from sitegen.prose.sums import WrittenSum, find_sums
from sitegen.prose.two_units import find_pairs

__all__ = [
    "Bound",
    "Captions",
    "Cue",
    "Drafted",
    "Kind",
    "Measurement",
    "MixedSum",
    "Piece",
    "Proof",
    "TextFinding",
    "WrittenSum",
    "bind",
    "captions_of",
    "clock",
    "drafted",
    "empty_folder",
    "find_mixed_sums",
    "find_pairs",
    "find_sums",
    "is_captions",
    "marked_text",
    "pieces_of",
    "proof",
    "proofread",
    "read",
    "said_in_markdown",
    "sizes_around",
]
