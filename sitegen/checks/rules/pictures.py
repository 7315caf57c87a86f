"""Pictures of the steps."""

from __future__ import annotations

import re
from collections.abc import Iterator

from sitegen.checks.registry import check
from sitegen.findings import Finding, Severity
from sitegen.tutorial import Computed, Photo

_EXAMPLE = "shows: The band pinned at its quarter marks"
_SAYS_NOTHING = re.compile(
    r"(?:an?|the|my|this|our)?\s*(?:step\s*)?(?:photo(?:graph)?|picture|image|pic|img|screenshot|drawing|figure|fig)?s?"
    r"(?:\s*(?:of|for|from|no|number))?(?:\s*(?:the|this|step|it))*\s*\d*",
    re.IGNORECASE,
)
"""A photo, picture 3, the photo of this step: words that tell only that there is something to see."""
_STEP = "--- steps/01.yaml\ntitle: Pin the band\ntext: Match the quarter marks.\n"


@check(
    id="picture-missing",
    area="pictures",
    severity=Severity.WRONG,
    looks_at=Photo,
    title="A picture that is not there",
    why="The student sees a hole where the picture should be.",
    source="Arithmetic of files: the photos folder of the tutorial",
    trips=_STEP + "photo: {file: band-pinned.jpg, shows: The band pinned at its quarter marks}",
    passes=_STEP,
)
def picture_missing(photo: Photo, computed: Computed) -> Iterator[Finding]:
    """Every picture that a step names must lie in the tutorial's photos folder."""
    if not photo.exists:
        named = f"photos/{photo.file}"
        none = f"There is no picture {named} in this tutorial's folder."
        message = f"The picture {named} {photo.hindrance}" if photo.hindrance else none
        alone = photo.file.removeprefix("photos/")
        if alone != photo.file:
            message += f" Pictures are looked for in photos: write {alone}."
        yield Finding(
            "picture-missing", Severity.WRONG, photo.place, message, photo.file, alone if alone != photo.file else ""
        )


@check(
    id="picture-undescribed",
    area="pictures",
    severity=Severity.DOUBTFUL,
    looks_at=Photo,
    title="A picture without a description",
    why="Who cannot see the picture learns nothing from it.",
    source="Web Content Accessibility Guidelines 2.2, success criterion 1.1.1, and its failures F65 (no description)"
    " and F30 (the file name, or a word like picture, in its place)",
    trips=_STEP + "photo: {file: band-pinned.jpg, shows: Band pinned}",
    passes=_STEP,
)
def picture_undescribed(photo: Photo, computed: Computed) -> Iterator[Finding]:
    """Every picture says what it shows, in other words than its file name, and in more than that it is a picture."""
    said = " ".join(_words(photo.shows))
    if not photo.shows:
        message = f"Picture {photo.file} has no description."
    elif said in (" ".join(_words(photo.file)), " ".join(_words(photo.file.rpartition(".")[0]))):
        message = f"The description of picture {photo.file} says only its file name."
    elif _SAYS_NOTHING.fullmatch(said):
        message = f"The description of picture {photo.file} says only that it is a picture."
    else:
        return
    yield Finding(
        "picture-undescribed",
        Severity.DOUBTFUL,
        photo.place,
        f"{message} Say what it shows, such as {_EXAMPLE}",
        photo.file,
    )


def _words(text: str) -> list[str]:
    """The words and numbers of a text or a file name, in small letters."""
    return re.findall(r"[^\W\d_]+|\d+", text.lower())
