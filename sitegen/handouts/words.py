"""The fixed words of the sheets, as the theme has them for every page."""

from __future__ import annotations

import json

from sitegen.publishing import Words

GROUP = "handout"


class SheetWords:
    """Words of the group of handouts."""

    def __init__(self, words: Words) -> None:
        self._words = words

    def __call__(self, key: str, **values: object) -> str:
        """A text with its places filled. Raises KeyError for a key or a place that there is not."""
        return self._words(f"{GROUP}.{key}", **values).unescape()

    def all(self) -> dict[str, str]:
        """Every text by its key, places unfilled."""
        found: dict[str, str] = json.loads(self._words.group(GROUP))
        return found
