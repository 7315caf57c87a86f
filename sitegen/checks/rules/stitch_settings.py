"""Lengths and widths of stitches: in seams of one stitch, and in the texts beside them."""

from __future__ import annotations

import re
from collections import Counter, defaultdict
from collections.abc import Iterator
from fractions import Fraction

from sitegen.checks.registry import COMMON_PRACTICE, check
from sitegen.findings import Finding, Severity
from sitegen.quantities import decimal
from sitegen.tutorial import Computed, Join, Prose, Step, Tutorial

LONGEST, SHORTEST, WIDEST = Fraction(7), Fraction(1, 2), Fraction(9)
"""Millimetres that household machines can be set to."""
_PRACTICE = "One stitch has one setting on one cloth: " + COMMON_PRACTICE
_SETTING = re.compile(r"(?<![\d.,/])(?P<number>\d{1,3}(?:\.\d{1,2})?)\s+(?P<unit>mm|cm)\s+(?P<which>wide|long)\b")
_RIGHT_BEFORE = re.compile(
    r"\b(?:stitch|zigzag|stitches)(?: \w+)?,?\s+(?:[\d.]+ [cm]m wide and )?$|\bstitch $|wider, $"
)
_STITCH = re.compile(r"\b(?:zigzag|stitch|stitches)\b", re.IGNORECASE)
_PRACTISE = re.compile(r"\bpracti[sc]|\btry\b|\btest\b", re.IGNORECASE)
_SEAMS = (
    "fabrics: {main: {name: linen, structure: woven, buy: 1 yd}}\n"
    "pieces: {panel: {cut: 2, fabric: main, edges: {side: 15 in, lower: 9 in, top: 9 in}}}\n--- steps/01.yaml\n"
    "title: Sew\nminutes: 9\ntext: TEXT\njoin:\n"
    "  - {edges: [panel.side, panel.side], stitch: straight, stitch_length: 2.5}\n"
    "  - {edges: [panel.lower, panel.lower], stitch: straight, stitch_length: 2.5}\n"
    "  - {edges: [panel.top, panel.top], stitch: straight, stitch_length: LENGTH}\n"
)


@check(
    id="stitch-setting",
    area="stitches",
    severity=Severity.DOUBTFUL,
    looks_at=Tutorial,
    title="One stitch with two settings",
    why="A stitch ten times as long holds nothing, and one as short as a grain of sand cannot be unpicked.",
    source=_PRACTICE,
    trips=_SEAMS.replace("TEXT", "Sew the seams.").replace("LENGTH", "5.2"),
    passes=_SEAMS.replace("TEXT", "Sew the seams.").replace("LENGTH", "2.5"),
)
def stitch_setting(tutorial: Tutorial, computed: Computed) -> Iterator[Finding]:
    """Seams of one stitch by name, in at least three seams, have one length and one width; a single seam that differs
    is named, and no setting lies outside what machines have. Basting and topstitching have names of their own."""
    by_name: dict[str, list[Join]] = defaultdict(list)
    for step in tutorial.steps:
        for join in step.every_join():
            if join.stitch is not None:
                by_name[join.stitch.text.lower()].append(join)
            yield from _out_of_range(join)
    for name, joins in by_name.items():
        for field in ("length", "width"):
            yield from _odd_one(name, field, joins)


def _out_of_range(join: Join) -> Iterator[Finding]:
    for field, most in (("length", LONGEST), ("width", WIDEST)):
        value = _setting(join, field)
        least = Fraction(0) if field == "width" and value == 0 else SHORTEST
        if value is not None and not least <= value <= most:
            yield Finding(
                "stitch-setting",
                Severity.DOUBTFUL,
                join.stitch_length.place if field == "length" and join.stitch_length is not None else join.place,
                f"No machine for the home sews a stitch {decimal(value)} mm {'long' if field == 'length' else 'wide'}.",
            )


def _setting(join: Join, field: str) -> Fraction | None:
    return join.stitch_length_mm if field == "length" else join.stitch_width_mm


def _odd_one(name: str, field: str, joins: list[Join]) -> Iterator[Finding]:
    given = [join for join in joins if _setting(join, field) is not None]
    counts = Counter(_setting(join, field) for join in given).most_common()
    if len(counts) != 2 or counts[1][1] != 1 or counts[0][1] < 2:
        return
    usual = counts[0][0]
    for join in given:
        if _setting(join, field) != usual and usual is not None:
            words = join.stitch_length if field == "length" else None
            said = words.text if words is not None else ""
            yield Finding(
                "stitch-setting",
                Severity.DOUBTFUL,
                words.place if words is not None else join.place,
                f"This seam has a {name} stitch {_shown(join, field)} mm {'long' if field == 'length' else 'wide'}, the"
                f" others with that stitch have {decimal(usual)} mm.",
                said,
                decimal(usual) if said else "",
            )


def _shown(join: Join, field: str) -> str:
    value = _setting(join, field)
    return decimal(value) if value is not None else ""


@check(
    id="stitch-in-text",
    area="stitches",
    severity=Severity.DOUBTFUL,
    looks_at=Step,
    title="A setting in a text that is not the seam's",
    why="The student sets the machine by the text, and sees another number beside the seam.",
    source=_PRACTICE + "; household machines sew up to about 7 mm long and 9 mm wide",
    trips=_SEAMS.replace("TEXT", "Sew with a straight stitch, 2 mm long.").replace("LENGTH", "2.5"),
    passes=_SEAMS.replace("TEXT", "Sew with a straight stitch, 2.5 mm long.").replace("LENGTH", "2.5"),
)
def stitch_in_text(step: Step, computed: Computed) -> Iterator[Finding]:
    """The length or width of a stitch that the text of a card gives (“a straight stitch, 2.5 mm long”) is that of one
    of its seams; on a card to practise,
    that of a seam of the tutorial. No
    household machine sews beyond its range."""
    everywhere = [join for other in computed.tutorial.steps for join in other.every_join()]
    own = list(step.every_join())
    texts = (step.text, step.other_way.text if step.other_way is not None else None)
    for text in (text for text in texts if text is not None):
        for match in _SETTING.finditer(text.text):
            around = text.text[max(0, match.start() - 90) : match.end() + 30]
            if not _STITCH.search(around):
                continue
            field = "width" if match["which"] == "wide" else "length"
            value = Fraction(match["number"])
            if match["unit"] == "cm":
                if not _RIGHT_BEFORE.search(" ".join(text.text[: match.start()].split()) + " "):
                    continue
                value *= 10
            in_seams = _settings(own, field)
            known = in_seams or (_settings(everywhere, field) if _PRACTISE.search(step.title) else frozenset())
            if known and value not in known:
                yield _finding(text, match, min(known, key=lambda each: abs(each - value)), bool(in_seams))
            elif not SHORTEST <= value <= (LONGEST if field == "length" else WIDEST):
                yield Finding(
                    "stitch-in-text",
                    Severity.DOUBTFUL,
                    text.locate(*match.span("number")),
                    f"No machine for the home sews stitches {' '.join(match.group().split())}.",
                    match["number"],
                )


def _settings(joins: list[Join], field: str) -> frozenset[Fraction]:
    return frozenset(value for join in joins if (value := _setting(join, field)) is not None)


def _finding(text: Prose, match: re.Match[str], right: Fraction, own: bool) -> Finding:
    whose = "the seam of this card has" if own else "the seams of the tutorial have"
    return Finding(
        "stitch-in-text",
        Severity.DOUBTFUL,
        text.locate(*match.span("number")),
        f"The text says {' '.join(match.group().split())}, {whose} {decimal(right)} mm.",
        match["number"] if match["unit"] == "mm" else "",
        decimal(right) if match["unit"] == "mm" else "",
    )
