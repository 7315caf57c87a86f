"""Photos and drawings as a page shows them. Knows nothing of how they were made."""

from __future__ import annotations

from dataclasses import dataclass

from markupsafe import Markup


@dataclass(frozen=True, slots=True)
class PictureSource:
    """One file format of a picture, in several widths."""

    media_type: str
    """``image/webp``, ``image/avif``, ``image/jpeg``."""
    srcset: str
    """``pictures/band-480.webp 480w, pictures/band-960.webp 960w``, relative to the page."""


@dataclass(frozen=True, slots=True)
class LogoPicture:
    """The picture at the head of every page. Its files are named from the folder of the site."""

    src: str
    """For any browser."""
    modern: str
    """As WebP, smaller."""
    width: int
    """Pixels."""
    height: int
    alt: str


@dataclass(frozen=True, slots=True)
class MarkText:
    """What a mark on a photo says."""

    text: Markup
    number: int | None = None
    """The number in the picture; None for words that stand in the picture themselves."""
    kind: str = ""
    """Of words in the picture: ``arrow`` or ``circle``."""


@dataclass(frozen=True, slots=True)
class Picture:
    """A photo or a drawing, in every prepared width."""

    src: str
    """The file for any browser, relative to the page."""
    width: int
    """Of ``src``, in pixels; keeps its place free while it loads."""
    height: int
    alt: str
    """What it shows, for who cannot see it."""
    srcset: str = ""
    """More widths of the same format as ``src``."""
    sources: tuple[PictureSource, ...] = ()
    """Other formats, the best first."""
    caption: str = ""
    illustration: bool = False
    """Whether it is drawn, and says so, rather than photographed."""
    overlay: str = ""
    """The file of its marks, relative to the page, to be laid over all of the picture; empty where there are none."""
    marks: tuple[MarkText, ...] = ()
    """What the marks say, for a list below the picture: the numbers first, in their order."""

    @property
    def numbered(self) -> tuple[MarkText, ...]:
        """The marks whose texts stand only in the list."""
        return tuple(mark for mark in self.marks if mark.number is not None)

    @property
    def in_picture(self) -> tuple[MarkText, ...]:
        """The marks whose texts stand in the picture, and must be told to who cannot see it."""
        return tuple(mark for mark in self.marks if mark.number is None)


@dataclass(frozen=True, slots=True)
class DrawnPicture:
    """The file of a drawing, relative to the page, and its size in CSS pixels."""

    src: str
    width: int
    height: int
    true_size: bool = False
    """Whether it is printed as large as the cloth, so that nothing may make it smaller."""


@dataclass(frozen=True, slots=True)
class Diagram:
    """A drawing to scale, made by this program."""

    title: str
    drawings: tuple[DrawnPicture, ...]
    """One for all sizes, or one for each size in their order."""
    words: Markup = Markup()
    """What it shows, in sentences; empty where the page has said it before."""
    shown: int = 0
    """Which drawing stands for all while no size is chosen."""
    anchor: str = ""
    """The id of the words."""
    in_one_system: tuple[DrawnPicture, ...] = ()
    """The same with inches alone and with centimetres alone, for who chose these; empty where it is not drawn anew."""
