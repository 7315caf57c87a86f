"""Names of stitches."""

from __future__ import annotations

from collections.abc import Iterator
from difflib import SequenceMatcher

from sitegen.checks.registry import check
from sitegen.findings import Finding, Severity
from sitegen.sewing import STITCHES
from sitegen.tutorial import Computed, Hem, Join

_LIKE = 0.85
"""From here on two names differ by a letter or two."""
_SEAM = (
    "fabrics: {main: {name: linen, structure: woven, buy: 1 yd}}\n"
    "pieces: {panel: {cut: 2, fabric: main, edges: {side: 15 in}}}\n"
    "--- steps/01.yaml\ntitle: Sew\ntext: Sew.\njoin: [{edges: [panel.side, panel.side], stitch: STITCH}]\n"
)


@check(
    id="stitch-misspelt",
    area="stretch",
    severity=Severity.DOUBTFUL,
    looks_at=(Join, Hem),
    title="A stitch whose name is almost one that is known",
    why="Of a stitch that is not known nobody can say whether it stretches, so the seam is not checked.",
    source="Names and classes of stitches: ISO 4915, by their plain names",
    trips=_SEAM.replace("STITCH", "straigt"),
    passes=_SEAM.replace("STITCH", "straight"),
)
def stitch_misspelt(part: Join | Hem, computed: Computed) -> Iterator[Finding]:
    """The stitch of a seam or hem is not a misspelt name of a known one. Other names are left alone."""
    stitch = part.stitch
    if stitch is None or stitch.text in STITCHES:
        return
    near = _nearest(stitch.text.lower())
    if near is not None:
        yield Finding(
            "stitch-misspelt",
            Severity.DOUBTFUL,
            stitch.place,
            f"“{stitch.text}” is almost the name of a stitch. Write {near}, so that the seam can be checked.",
            stitch.text,
            near,
        )


def _nearest(said: str) -> str | None:
    """The known stitch of almost this name."""
    spellings = (said, said.removesuffix(" stitch"))
    likeness, name = max((SequenceMatcher(None, each, name).ratio(), name) for each in spellings for name in STITCHES)
    return name if likeness >= _LIKE else None
