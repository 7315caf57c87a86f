"""What the head of a page tells to other programs.

Sources: HTML Living Standard for ``description`` and ``canonical``; the Open Graph protocol (ogp.me) for link previews,
with ``twitter:card`` for the size of the picture, as those who show previews document it.
"""

from __future__ import annotations

from dataclasses import dataclass

from markupsafe import Markup

from sitegen.publishing.discovery.addresses import absolute
from sitegen.publishing.picture_views import Picture
from sitegen.publishing.plain_text import plain_text
from sitegen.publishing.views import FRONT_PAGE

_NO_DATA = Markup()
_LONGEST = 300
"""Letters of a description; more is cut off wherever it is shown."""


@dataclass(frozen=True, slots=True)
class HeadImage:
    """The picture of a link preview."""

    address: str
    """Absolute."""
    width: int
    height: int
    alt: str


@dataclass(frozen=True, slots=True)
class Head:
    """What is told of one page."""

    description: str = ""
    canonical: str = ""
    """The page's own absolute address; empty when the site does not know its address."""
    kind: str = "website"
    """``website`` or ``article``, as the Open Graph protocol has it."""
    image: HeadImage | None = None
    data: Markup = Markup()
    """JSON-LD, fit to stand in a script element as data."""
    feed: bool = False
    """Whether the site has a feed to point to."""
    path: str = FRONT_PAGE
    """The page from the folder of its language, as it is found in that of another language too."""


NO_HEAD = Head()


def page_head(
    description: str,
    path: str,
    address: str,
    *,
    kind: str = "website",
    picture: Picture | None = None,
    root: str = "",
    data: Markup = _NO_DATA,
) -> Head:
    """The head of the page at a path of the site. ``description`` may be HTML; ``picture`` is as the page shows it.

    Without an address what must be absolute is left out: canonical address, picture, feed.
    """
    image = None
    if address and picture is not None:
        at = absolute(address, picture.src.removeprefix(root))
        image = HeadImage(at, picture.width, picture.height, picture.alt)
    return Head(
        description=shortened(plain_text(description), _LONGEST),
        canonical=absolute(address, path) if address else "",
        kind=kind,
        image=image,
        data=data,
        feed=bool(address),
        path=path,
    )


def shortened(text: str, longest: int) -> str:
    """The text, ended after a sentence, or else after a word, where it is longer than this."""
    if len(text) <= longest:
        return text
    cut = text[: longest + 1]
    sentence = max(cut.rfind(sign) for sign in (". ", "? ", "! "))
    if sentence > 0:
        return cut[: sentence + 1]
    return f"{cut[: longest - 1].rpartition(' ')[0] or cut[: longest - 1]}…"
