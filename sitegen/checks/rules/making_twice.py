"""Seams that are sewn twice."""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterator
from itertools import pairwise

from sitegen.checks.registry import COMMON_PRACTICE, check
from sitegen.checks.told import by_title
from sitegen.findings import Finding, Severity
from sitegen.tutorial import Computed, Join, Reference, Step, Tutorial, copies_of

_TOP = (
    "seam_allowance: 3/8 in\n"
    "fabrics: {main: {name: jersey, structure: knit, stretch_across: 60%}}\n"
    "pieces: {front: {cut: 1, fabric: main, edges: {neckline: 20 in, hem: 40 in}}}\n"
    "bands:\n"
    "  neckband: {opening: [front.neckline], ratio: 80%, finished_width: 1 in, fabric: main}\n"
    "  hem_band: {opening: [front.hem], ratio: 90%, finished_width: 2 in, fabric: main}\n"
)
_FIRST = "--- steps/01.yaml\ntitle: Sew on the neckband\ntext: Sew.\njoin: [{edges: [neckband, front.neckline]}]\n"
_SECOND = "--- steps/02.yaml\ntitle: Sew on the hem band\ntext: Sew.\njoin: [{edges: [hem_band, front.hem]}]\n"
_HOLDS = {"basting", "topstitch", "backstitch", "slip stitch", "blind hem", "twin needle", "cover stitch"}
"""Stitches that hold a seam before it is sewn, or hold down one that is."""
_ON_PURPOSE = re.compile(
    r"\b(?:second|another) (?:row|line|time|seam)|\b(?:sew|sewn|stitch|sewing|stitched)\b[^.]{0,40}\b(?:again|twice)\b"
    r"|\breinforc|\bstrengthen|\bgap\b|\bclos(?:e|es|ed|ing)\b|\bbast|\btack",
    re.IGNORECASE,
)
_FACE = re.compile(r"\bright sides? (?:together|up|out|in|down|of|on|facing)\b", re.IGNORECASE)
"""The face of the cloth, not the right-hand one of two edges."""
Sewn = tuple[str, str, str]
"""Two edges that are joined to each other, and the stitch."""


@check(
    id="sewn-twice",
    area="making",
    severity=Severity.WRONG,
    looks_at=Tutorial,
    title="The same seam in two steps",
    why="Nearly always a seam was copied from another step and its edges were not changed.",
    source="Follows from the steps; " + COMMON_PRACTICE,
    trips=_TOP + _FIRST + _SECOND.replace("hem_band, front.hem", "neckband, front.neckline"),
    passes=_TOP + _FIRST + _SECOND,
)
def sewn_twice(tutorial: Tutorial, computed: Computed) -> Iterator[Finding]:
    """The same edges are joined to each other, with the same stitch, in two steps. It is wrong where the garment has
    no further edges of that name, doubtful where it may have (a left and a right shoulder). Nothing is said of rows
    that hold a seam, of bindings and enclosed seams, which are sewn twice, and where the text speaks of the other side,
    of a second row or of a gap to close."""
    earlier: dict[Sewn, list[Step]] = defaultdict(list)
    for step in tutorial.steps:
        sewn_here: dict[Sewn, Reference] = {}
        for join in step.joins:
            if join.enclosed or (join.stitch and join.stitch.text in _HOLDS) or _is_bound(join, tutorial):
                continue
            for one, other in _pairs(join):
                first, second = sorted((one.name, other.name))
                sewn_here.setdefault((first, second, join.stitch.text if join.stitch else ""), other)
        repeated = [(key, at) for key, at in sewn_here.items() if earlier[key]]
        for key, at in repeated[:1]:
            yield from _twice(key[:2], at, earlier[key], step, tutorial)
        for key in sewn_here:
            earlier[key].append(step)


def _is_bound(join: Join, tutorial: Tutorial) -> bool:
    """Whether it sews on a binding or a single band: first to one side, then folded over and sewn down."""
    single = {band.key for band in tutorial.bands.values() if not band.folded}
    return any(name.name in tutorial.bindings or name.name in single for name in join.names())


def _pairs(join: Join) -> Iterator[tuple[Reference, Reference]]:
    """Edge for edge where the chains are equally long; else the first edge of the one with each of the other."""
    for one, other in pairwise(join.chains):
        if len(one) == len(other):
            yield from zip(one, other, strict=True)
        else:
            yield from ((first, second) for first in one for second in other)


def _twice(
    names: tuple[str, str], at: Reference, earlier: list[Step], step: Step, tutorial: Tutorial
) -> Iterator[Finding]:
    if any(_says_why(each, names) for each in (*earlier, step)):
        return
    counts = [(copies_of(name, tutorial), names.count(name)) for name in dict.fromkeys(names)]
    known = [copies // times for copies, times in counts if copies is not None]
    spent = bool(known) and len(earlier) >= min(known)
    edges = " and ".join(names)
    message = f"{edges} are sewn together here, and were already in {by_title(earlier[-1])}."
    hint = " If this is the other side, say so in the text." if not spent else ""
    yield Finding("sewn-twice", Severity.WRONG if spent else Severity.DOUBTFUL, at.place, message + hint, at.name)


def _says_why(step: Step, names: tuple[str, str]) -> bool:
    """Whether the words of a step tell that it sews one of several such seams, or this one once more."""
    text = _FACE.sub("", f"{step.title}\n{step.text.text if step.text else ''}")
    edges = "|".join(re.escape(name.rpartition(".")[2].replace("_", " ")) for name in names)
    one_of_several = rf"\b(?:other|second|first|one|left|right|remaining|last)\s+(?:\w+\s+)?(?:{edges})"
    return bool(_ON_PURPOSE.search(text) or re.search(one_of_several, text, re.IGNORECASE))
