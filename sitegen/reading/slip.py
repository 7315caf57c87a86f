"""One failure to read, by offsets in its file; becomes a finding when it is told."""

from __future__ import annotations

from dataclasses import dataclass

from sitegen.findings import Collector
from sitegen.reading.offsets import LINE_END, Source

MOST_SLIPS = 200
"""More of them in one file have one cause, and nobody reads them; common practice, no source."""

_LONGEST_SAID = 120


@dataclass(frozen=True, slots=True)
class Slip:
    """What is wrong between two offsets. ``unread`` says that nothing of the file is usable because of it."""

    check: str
    start: int
    end: int
    message: str
    should_be: str = ""
    unread: bool = True


def too_many(after: Slip) -> Slip:
    """What is said instead of all further slips of a file."""
    message = f"There are more than {MOST_SLIPS} slips in this file. Mend these first; the rest was not looked at."
    return Slip("too-many-slips", after.start, after.end, message)


def tell(slip: Slip, source: Source, collector: Collector) -> None:
    """Keep the slip as a finding, with the text that stands there if it is one short line."""
    said = source.text[slip.start : slip.end]
    if LINE_END.search(said) or len(said) > _LONGEST_SAID:
        said = ""
    collector.wrong(
        slip.check,
        source.place(slip.start, slip.end),
        slip.message,
        said=said,
        should_be=slip.should_be,
        unread=slip.unread,
    )
