"""Which checks can read a text that is not English, and how they do.

Numbers, signs and units are read in every language; the grammar and the trade words of the checks are English ones. A
check that needs them would be silent or wrong elsewhere, and is left out.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import replace

from sitegen.checks.registry import Check
from sitegen.findings import Finding
from sitegen.tutorial import Prose

READS_ENGLISH = frozenset(
    (
        *("band_places", "beside_sums", "cautions", "change_pieces", "child", "cut_count", "literal_numbers"),
        *("making_darts", "making_raw_edges", "making_time", "making_twice", "needle_sizes", "piece_counts"),
        *("reference_nouns", "reference_parts", "reference_words", "said_of_cloth", "stitch_names"),
        *("stitch_settings", "supplies_needles", "told_sums", "words"),
    )
)
"""The modules of rules that know words of English."""
_DECIMAL_COMMA = re.compile(r"(?<=\d),(?=\d)")
_DECIMAL_POINT = re.compile(r"(?<=\d)\.(?=\d)")


def is_english(language: str) -> bool:
    """Whether a language tag is one of English."""
    return language.partition("-")[0].lower() == "en"


def can_read(check: Check, language: str) -> bool:
    """Whether a check understands texts in this language."""
    module = check.find.__module__.rpartition(".")[2] if check.find is not None else ""
    return is_english(language) or module not in READS_ENGLISH


def readable(part: Prose) -> Prose:
    """The text as the readers of numbers know it, letter for letter: with points for its decimal commas."""
    return replace(part, text=_DECIMAL_COMMA.sub(".", part.text))


def as_written(findings: Iterable[Finding], part: Prose) -> Iterator[Finding]:
    """The findings on such a text with what was said as it stands in the file, and what should be written likewise."""
    for finding in findings:
        said = _DECIMAL_POINT.sub(",", finding.said)
        if said != finding.said and said in part.text:
            yield replace(finding, said=said, should_be=_DECIMAL_POINT.sub(",", finding.should_be))
        elif _DECIMAL_COMMA.search(part.text):
            yield replace(finding, should_be=_DECIMAL_POINT.sub(",", finding.should_be))
        else:
            yield finding
