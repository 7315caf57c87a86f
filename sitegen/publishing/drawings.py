"""The diagrams of one page: drawn once for each size in which they differ, with ids of their own."""

from __future__ import annotations

from markupsafe import Markup

from sitegen.diagrams import diagram_of
from sitegen.publishing.views import Diagram
from sitegen.quantities import System
from sitegen.tutorial import Computed


class Drawings:
    """Draws parts of a tutorial by name; a part that is shown twice gets other ids the second time."""

    def __init__(self, computed: Computed, first: System) -> None:
        self._computed = computed
        self._first = first
        self._drawn = 0

    def diagram(self, name: str) -> Diagram | None:
        """The diagram of a band, hem or change; None when there is nothing to draw."""
        self._drawn += 1
        pictures: list[str] = []
        title = ""
        for size in range(self._computed.tutorial.size_count):
            drawn = diagram_of(name, self._computed, size, f"d{self._drawn}-{size}", self._first)
            if drawn is None:
                return None
            title = drawn.title
            pictures.append(drawn.svg)
        plain = [picture.replace(f"d{self._drawn}-{size}-", "") for size, picture in enumerate(pictures)]
        if len(set(plain)) == 1:
            pictures = pictures[:1]
        return Diagram(title, tuple(Markup(picture) for picture in pictures), shown=len(pictures) // 2)
