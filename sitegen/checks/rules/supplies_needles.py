"""Needles in the supplies, against what the steps sew."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from fractions import Fraction

from sitegen.checks.registry import COMMON_PRACTICE, check
from sitegen.checks.sewn_cloth import knits_of
from sitegen.findings import Finding, Place, Severity
from sitegen.quantities import RULER, Length, System, decimal, mm
from sitegen.tutorial import Computed, Fabric, Hem, Join, Step, Supply, Tutorial

TWIN_NEEDLE = "twin needle"
_TWIN = re.compile(r"\btwin[- ](?:\w+[- ])?needles?\b", re.IGNORECASE)
_LABEL = re.compile(r"(?<![\d.,/])(?P<gap>\d(?:[.,]\d)?)(?P<rest>(?:\s?mm)?\s?/\s?\d{2,3})(?![\d/])")
_TWIN_WITH_LABEL = re.compile(rf"{_TWIN.pattern}[^.;:]{{0,30}}?{_LABEL.pattern}", re.IGNORECASE)
_NEEDLE = re.compile(r"\bneedles?\b", re.IGNORECASE)
_FOR_KNITS = re.compile(r"\b(?:ball[- ]?point|stretch|jersey)\b", re.IGNORECASE)
_UNIVERSAL = re.compile(r"\buniversal\b", re.IGNORECASE)
_OWN_NEEDLES = ("overlock", "three-thread overlock", "four-thread overlock", "cover stitch", "chain")
"""Stitches of machines that have needles of their own kind."""
_WIDEST_GAP = mm(10)
"""Household twin needles stand up to about 8 mm apart (common practice, no source)."""
_LABELLED = (
    "Twin needles are labelled gap in millimetres / size, such as 4.0/75; the range of gaps is " + COMMON_PRACTICE
)
_HEM = (
    "seam_allowance: 3/8 in\nfabrics: {main: {name: cotton jersey, structure: knit, stretch_across: 40%}}\n"
    "pieces: {front: {cut: 1, fabric: main, edges: {hem: 18 in, side: 15 in}}}\n"
    "hems: {lower: {edges: [front.hem], turn: 1 in, stitch: twin needle, needle_gap: 4 mm}}\n"
)
_SEAM = (
    "\n--- steps/01.yaml\ntitle: Sew the sides\ntext: Sew.\njoin: [{edges: [front.side, front.side], stitch: zigzag}]\n"
)


@dataclass(frozen=True, slots=True)
class _Label:
    """The label of a twin needle as it is written, its gap, and the text and place in which it is put right."""

    text: str
    gap: Length
    place: Place
    whole: str
    start: int
    end: int
    """Where the number of the gap stands in ``whole``, which stands at ``place``."""

    def with_gap(self, gap: Length) -> str:
        """The whole text with another gap, as many decimals as before; empty when no label has such a gap."""
        number = _in_tenths(gap)
        if self.end - self.start == 1:
            number = number.removesuffix(".0")
        return f"{self.whole[: self.start]}{number}{self.whole[self.end :]}" if number else ""


@check(
    id="twin-needle-gap",
    area="supplies",
    severity=Severity.WRONG,
    looks_at=(Tutorial, Step),
    title="A twin needle with another gap than the hem is planned for",
    why="The second row of stitches runs beside the first by the gap of the needle; with another needle it may miss the"
    " turned cloth.",
    source=_LABELLED,
    trips=_HEM + "supplies: [{item: stretch twin needle, size: 3.0/75}]",
    passes=_HEM + "supplies: [{item: stretch twin needle, size: 4.0/75}]",
)
def twin_needle_gap(part: Tutorial | Step, computed: Computed) -> Iterator[Finding]:
    """The gap on the label of a twin needle, in the supplies and on the card that sews the hem, must be the needle_gap
    of the hem."""
    hems = [hem for hem in _twin_hems(computed.tutorial) if _gap(hem, computed) is not None]
    if isinstance(part, Step):
        named = {name.name for name in part.hems}
        hems, labels = [hem for hem in hems if hem.key in named], list(_on_card(part))
        where = "on this card"
    else:
        labels, where = list(_in_supplies(part.supplies)), "in the supplies"
    without = [hem for hem in hems if not any(_same(label, hem, computed) for label in labels)]
    stray = [label for label in labels if not any(_same(label, hem, computed) for hem in hems)]
    if not labels or not without:
        return
    gaps = {gap.mm for hem in without if (gap := _gap(hem, computed)) is not None}
    if len(stray) == 1 and len(gaps) == 1:
        yield _other_gap(stray[0], without[0], Length(gaps.pop()), where)
    elif isinstance(part, Tutorial):
        yield from (_no_such_needle(hem, labels, computed) for hem in without)


def _other_gap(label: _Label, hem: Hem, gap: Length, where: str) -> Finding:
    right = label.with_gap(gap)
    return Finding(
        "twin-needle-gap",
        Severity.WRONG,
        label.place,
        f"The needles of the twin needle {where}, {label.text}, are {_mm(label.gap)} apart, but hem"
        f" {_words(hem.key)} is sewn with a gap of {_mm(gap)}. Change the needle, or the needle_gap of the hem.",
        label.whole,
        right,
        (f"{label.text} is the gap in millimetres, then the size of the needle",),
    )


def _no_such_needle(hem: Hem, labels: list[_Label], computed: Computed) -> Finding:
    gap = hem.needle_gap
    place = gap.place if gap is not None else hem.place
    exact = _gap(hem, computed)
    said = ", ".join(label.text for label in labels)
    return Finding(
        "twin-needle-gap",
        Severity.WRONG,
        place,
        f"Hem {_words(hem.key)} is sewn with a gap of {_mm(exact) if exact else 'its own'}, but no twin needle in the"
        f" supplies has it. They have {said}.",
    )


@check(
    id="twin-needle-missing",
    area="supplies",
    severity=Severity.DOUBTFUL,
    looks_at=Tutorial,
    title="A hem sewn with a twin needle that is not in the supplies",
    why="The student finds out in the middle of the hem, with the shops closed.",
    source="The materials of a project are listed before its steps: Univ. of Kentucky 4-H 4JD-01PB",
    trips=_HEM + "supplies: [{item: stretch needle, size: 75/11}]",
    passes=_HEM + "supplies: [{item: stretch twin needle, size: 4.0/75}]",
)
def twin_needle_missing(tutorial: Tutorial, computed: Computed) -> Iterator[Finding]:
    """Where supplies are listed and a hem is sewn with a twin needle, one is among them or among the tools."""
    listed = [supply.item.text for supply in tutorial.supplies] + [tool.text for tool in tutorial.tools]
    if not tutorial.supplies or any(_TWIN.search(text) for text in listed):
        return
    for hem in _twin_hems(tutorial)[:1]:
        gap = _gap(hem, computed)
        size = f", size: {_in_tenths(gap)}/75" if gap is not None and _in_tenths(gap) else ""
        kind = "stretch twin needle" if knits_of(hem.edges, tutorial) else "twin needle"
        yield Finding(
            "twin-needle-missing",
            Severity.DOUBTFUL,
            hem.stitch.place if hem.stitch else hem.place,
            f"Hem {_words(hem.key)} is sewn with a twin needle, and none is in the supplies. Add one, such as"
            f" {{item: {kind}{size}}}",
            TWIN_NEEDLE,
        )


@check(
    id="needle-for-knit",
    area="supplies",
    severity=Severity.DOUBTFUL,
    looks_at=Tutorial,
    title="A knit, and no needle for knits",
    why="A sharp point cuts the loops of a knit and skips stitches; a rounded one slips between them.",
    source="Ballpoint or stretch needles for knits, and the stretch twin needle, since universal points skip:"
    " sewing.org, notes on machine needles and twin needles",
    trips=_HEM + "supplies: [{item: universal needle, size: 80/12}]" + _SEAM,
    passes=_HEM + "supplies: [{item: ballpoint needle, size: 80/12}]" + _SEAM,
)
def needle_for_knit(tutorial: Tutorial, computed: Computed) -> Iterator[Finding]:
    """Where supplies are listed and a knit is sewn, a ballpoint, stretch or jersey needle is among them, and a twin
    needle for it is not a universal one. Seams of an overlock or cover stitch machine do not count."""
    needles = [supply for supply in tutorial.supplies if _NEEDLE.search(supply.item.text)]
    single = [supply for supply in needles if not _TWIN.search(supply.item.text)]
    knits = list(dict.fromkeys(knit.name for knit in _knits_sewn(tutorial)))
    if tutorial.supplies and knits and not any(_FOR_KNITS.search(_text(supply)) for supply in single):
        is_knit = f"{knits[0]} is a knit" if len(knits) == 1 else f"{' and '.join(knits)} are knits"
        yield Finding(
            "needle-for-knit",
            Severity.DOUBTFUL,
            single[0].item.place if len(single) == 1 else tutorial.supplies[0].place,
            f"{is_knit[:1].upper()}{is_knit[1:]}, but no ballpoint, stretch or jersey needle is in the supplies. Add"
            " one, such as {item: ballpoint needle, size: 80/12}",
            single[0].item.text if len(single) == 1 else "",
        )
    if not any(knits_of(hem.edges, tutorial) for hem in _twin_hems(tutorial)):
        return
    for supply in needles:
        if supply not in single and _UNIVERSAL.search(_text(supply)):
            in_item = bool(_UNIVERSAL.search(supply.item.text))
            yield Finding(
                "needle-for-knit",
                Severity.DOUBTFUL,
                supply.item.place,
                "A universal twin needle skips stitches in a knit. A stretch twin needle does not.",
                supply.item.text if in_item else "",
                _UNIVERSAL.sub("stretch", supply.item.text) if in_item else "",
            )


def _twin_hems(tutorial: Tutorial) -> list[Hem]:
    return [hem for hem in tutorial.hems.values() if hem.stitch is not None and hem.stitch.text == TWIN_NEEDLE]


def _gap(hem: Hem, computed: Computed) -> Length | None:
    gap = computed.number(f"{hem.key}.needle_gap", 0)
    return gap.length if gap is not None else None


def _same(label: _Label, hem: Hem, computed: Computed) -> bool:
    gap = _gap(hem, computed)
    return gap is not None and RULER.agrees(label.gap, gap, System.CENTIMETRES)


def _in_supplies(supplies: Iterable[Supply]) -> Iterator[_Label]:
    for supply in supplies:
        for words in (supply.size, supply.item):
            match = _LABEL.search(words.text) if words is not None and _TWIN.search(supply.item.text) else None
            if words is not None and match is not None:
                yield _label(match, words.text, words.place, 0)


def _on_card(step: Step) -> Iterator[_Label]:
    for need in step.needs:
        if match := _TWIN_WITH_LABEL.search(need.text):
            yield _label(match, need.text, need.place, 0)
    for text in step.prose():
        for match in _TWIN_WITH_LABEL.finditer(text.text):
            start, end = match.start("gap"), match.end("rest")
            yield _label(match, text.text[start:end], text.locate(start, end), start)


def _label(match: re.Match[str], whole: str, place: Place, offset: int) -> _Label:
    gap = mm(Fraction(match["gap"].replace(",", ".")))
    start, end = (at - offset for at in match.span("gap"))
    return _Label(match["gap"] + match["rest"], gap, place, whole, start, end)


def _knits_sewn(tutorial: Tutorial) -> Iterator[Fabric]:
    sewn: list[Join | Hem] = [join for step in tutorial.steps for join in step.joins]
    sewn += [tutorial.hems[name.name] for step in tutorial.steps for name in step.hems if name.name in tutorial.hems]
    for part in sewn:
        stitch = part.stitch.text if part.stitch else ""
        if stitch and stitch != TWIN_NEEDLE and stitch not in _OWN_NEEDLES:
            yield from knits_of(part.edges if isinstance(part, Hem) else tuple(part.names()), tutorial)


def _text(supply: Supply) -> str:
    return f"{supply.item.text} {supply.size.text if supply.size else ''}"


def _words(key: str) -> str:
    return key.replace("_", " ")


def _in_tenths(gap: Length) -> str:
    """A gap as labels print it, 4.0; empty when it is no whole tenth of a millimetre, or more than needles have."""
    tenths = gap.mm * 10
    is_one = tenths.denominator == 1 and gap <= _WIDEST_GAP
    return f"{tenths.numerator // 10}.{tenths.numerator % 10}" if is_one else ""


def _mm(gap: Length) -> str:
    return f"{decimal(gap.mm, 1)} mm"
