"""The drawings of the site: each is a file named by its content, so that pages and sizes share what is alike."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from dataclasses import replace
from hashlib import blake2b

from markupsafe import Markup

from sitegen.diagrams import Drawn, PictureFile, diagram_of, picture_file
from sitegen.publishing.amounts import sentences
from sitegen.publishing.languages import unmarked
from sitegen.publishing.picture_views import Diagram, DrawnPicture
from sitegen.publishing.slugs import Slugs
from sitegen.quantities import ENGLISH, English, System
from sitegen.tutorial import Computed

DRAWINGS_FOLDER = "drawings"
IDS = "d"
"""What every id in the file of a drawing begins with."""
_SENTENCE_END = re.compile(r"(?<=\.) ")


class DrawingFiles:
    """Keeps the files of all drawings that pages ask for. ``colours`` are the theme's rules for drawings."""

    def __init__(self, colours: str) -> None:
        self._colours = colours
        self._files: dict[str, bytes] = {}

    def files(self) -> dict[str, bytes]:
        """Every file by its path in the site."""
        return dict(self._files)

    def file_of(self, svg: str, stem: str) -> tuple[str, PictureFile]:
        """The path in the site of a drawing, and the drawing as a file."""
        file = picture_file(svg, self._colours)
        content = unmarked(file.text).encode("utf-8")
        path = f"{DRAWINGS_FOLDER}/{stem}-{blake2b(content, digest_size=4).hexdigest()}.svg"
        self._files[path] = content
        return path, file


class Drawings:
    """The drawings of one page by the name of what they show."""

    def __init__(
        self, computed: Computed, first: System, root: str, files: DrawingFiles, language: English = ENGLISH
    ) -> None:
        self.language = language
        """In which they are labelled and described."""
        self._computed = computed
        self._first = first
        self._root = root
        self._files = files
        self._described: set[str] = set()
        self._slugs = Slugs()

    def diagram(self, name: str) -> Diagram | None:
        """The diagram of a part, in every size in which it differs; None when there is nothing to draw.

        It is described in words the first time that the page shows it.
        """
        first_time = name not in self._described
        self._described.add(name)
        found = self.by_size(name, lambda size: diagram_of(name, self._computed, size, IDS, self._first, self.language))
        return found if first_time or found is None else replace(found, words=Markup())

    def alike(self, name: str, drawn: Drawn | None, in_one_system: Sequence[Drawn | None] = ()) -> Diagram | None:
        """A drawing that is alike for all sizes, and how it is in inches and in centimetres alone; None if none.

        ``name`` tells it from all others of the page.
        """
        if drawn is None:
            return None
        stem = self._slugs.of(name)
        alone = tuple(self._picture(*self._files.file_of(each.svg, stem)) for each in in_one_system if each is not None)
        return replace(self._shown(stem, [self._files.file_of(drawn.svg, stem)]), in_one_system=alone)

    def by_size(self, name: str, draw: Callable[[int], Drawn | None]) -> Diagram | None:
        """What is drawn for each size, in every size in which it differs; None when a size has no drawing.

        ``name`` tells it from all others of the page.
        """
        stem = self._slugs.of(name)
        pictures: list[tuple[str, PictureFile]] = []
        for size in range(self._computed.tutorial.size_count):
            drawn = draw(size)
            if drawn is None:
                return None
            pictures.append(self._files.file_of(drawn.svg, stem))
        return self._shown(stem, pictures[:1] if len({path for path, _ in pictures}) == 1 else pictures)

    def _shown(self, stem: str, pictures: Sequence[tuple[str, PictureFile]]) -> Diagram:
        shown = len(pictures) // 2
        return Diagram(
            title=pictures[shown][1].title,
            drawings=tuple(self._picture(path, file) for path, file in pictures),
            words=_in_sentences([file.description for _, file in pictures], shown),
            shown=shown,
            anchor=f"d-{stem}",
        )

    def _picture(self, path: str, file: PictureFile) -> DrawnPicture:
        return DrawnPicture(f"{self._root}{path}", file.width, file.height, file.true_size)


def _in_sentences(texts: Sequence[str], shown: int) -> Markup:
    """The words of a drawing by size: a sentence that sizes share stands once, also where others differ."""
    parts = [_SENTENCE_END.split(text) for text in texts]
    if len({len(each) for each in parts}) != 1:
        return sentences(texts, shown)
    return Markup(" ").join(sentences(each, shown) for each in zip(*parts, strict=True))
