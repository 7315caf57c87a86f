"""Times in a video as an author writes them."""

from __future__ import annotations

import re

_TIME = re.compile(r"(?:(?P<hours>\d{1,2}):(?=\d{2}:))?(?P<minutes>\d{1,3}):(?P<seconds>\d{2})")


def video_seconds(text: str) -> int | None:
    """Seconds from the beginning for ``14:20`` and ``1:14:20``; None for what is no time.

    A minute has 60 seconds; where hours are written, an hour has 60 minutes.
    """
    match = _TIME.fullmatch(text)
    if match is None:
        return None
    hours, minutes, seconds = (int(match[part] or 0) for part in ("hours", "minutes", "seconds"))
    if seconds >= 60 or (match["hours"] is not None and minutes >= 60):
        return None
    return hours * 3600 + minutes * 60 + seconds
