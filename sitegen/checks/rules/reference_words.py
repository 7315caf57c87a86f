"""References in a text whose nearest words ask for another number."""

from __future__ import annotations

import re
from collections.abc import Iterator

from sitegen.checks.asked import LENGTHS, WIDTHS, Asked
from sitegen.checks.asked_sewing import SEWING
from sitegen.checks.asked_sizes import SIZES
from sitegen.checks.needed_words import NEEDED
from sitegen.checks.registry import COMMON_PRACTICE, check
from sitegen.checks.spoken import OTHER, Spoken, differs, hints, spoken, tokens
from sitegen.findings import Finding, Severity
from sitegen.tutorial import Computed, Step, Tutorial, words_of

_PIECE = (
    "fabrics: {main: {name: linen, structure: woven, buy: 1 yd}}\n"
    "pieces: {panel: {called: panel, cut: 2, fabric: main, length: 15 in, width: 12 in}}\n"
    "seam_allowance: 1/2 in\n--- steps/01.yaml\ntitle: Cut\ntext: "
)
_PRACTICE = "The plain words of the trade: " + COMMON_PRACTICE
_UPRIGHT = re.compile(r"¤ (?:tall|high|deep)\b")
_SNIP = re.compile(r"\b(?:snip|clip|notch|slit|stitch|mark|tail|end)")
_LONG_AND_WIDE = re.compile(r"¤ (?:long|wide|tall|high) and ¤ (?:long|wide|tall|high)")
_CLOTH = frozenset({"cloth", "fabric", "material", "bolt", "knit", "selvage", "selvedge", "goods"})
_CELL = re.compile(r"(?:(?P<which>cut|finished) )?(?P<way>length|width)")


@check(
    id="reference-words",
    area="references",
    severity=Severity.DOUBTFUL,
    looks_at=Tutorial,
    title="A number that the words beside it do not ask for",
    why="The name exists, so nothing else shows that the student reads a width where a length is meant.",
    source=_PRACTICE,
    trips=_PIECE + "Cut the panel, {panel.cut_length} long and {panel.cut_length} wide.",
    passes=_PIECE + "Cut the panel, {panel.cut_length} long and {panel.cut_width} wide.",
)
def reference_words(tutorial: Tutorial, computed: Computed) -> Iterator[Finding]:
    """The words right before and behind a reference, or at the head of its column, must not ask for another number:
    “long” for a width, “wide” for a length, “seam allowance of” for what is no allowance, “the hem takes” for the
    stitch line. A number that is equal to what was asked for is never reported."""
    for each in spoken(tutorial):
        asked = (
            _by_heading(each)
            or _with_its_pair(each)
            or next((one for one in (*SIZES, *SEWING) if _refuses(one, each, tutorial)), None)
        )
        if asked is None:
            continue
        fits = [name for name in _proposed(asked, each, computed) if name != each.name]
        if any(not differs(each.name, name, computed) for name in fits):
            continue
        yield _finding("reference-words", each, f"The words beside it ask for {asked.asks}", fits[:1])


def _refuses(asked: Asked, each: Spoken, tutorial: Tutorial) -> bool:
    if "." not in each.name or not asked.speaks(f"{each.before} ", each.after):
        return False
    if asked.asks == "a width" and _UPRIGHT.search(each.sentence):
        return False
    if asked.asks == "a length" and (_SNIP.search(each.before) or _UPRIGHT.search(each.sentence)):
        return False
    if _is_edge(each.name, tutorial):
        return _edge_refused(asked, each, tutorial)
    return asked.refuses(each.field)


def _edge_refused(asked: Asked, each: Spoken, tutorial: Tutorial) -> bool:
    """Whether an edge cannot stand there: where only other numbers can, and a side edge where a width is asked for."""
    if asked.asks == "a width":
        sides = tutorial.pieces[each.part].sides
        upright = {sides[side].name for side in ("left", "right") if side in sides}
        across = {sides[side].name for side in ("top", "bottom") if side in sides}
        return each.field in upright - across
    return bool(asked.only)


def _is_edge(name: str, tutorial: Tutorial) -> bool:
    part, _, field = name.partition(".")
    return part in tutorial.pieces and field in tutorial.pieces[part].edges


def _by_heading(each: Spoken) -> Asked | None:
    """What the head of the column asks for, if it is not this."""
    match = _CELL.fullmatch(each.heading)
    if match is None or "." not in each.name:
        return None
    fields = frozenset(
        f"{which}_{match['way']}" for which in ("cut", "finished", "new_cut", "new_finished")
        if match["which"] is None or which.endswith(match["which"])
    )  # fmt: skip
    unknown = each.field not in LENGTHS | WIDTHS | set(NEEDED) and "_" not in each.field
    if each.field in fields or (unknown and match["which"] is None):
        return None
    return Asked(f"a {each.heading}", only=fields, instead=tuple(sorted(fields)))


def _with_its_pair(each: Spoken) -> Asked | None:
    """What “… long and … wide” asks for, where one is a number to cut and the other is not one of the same piece."""
    if not _LONG_AND_WIDE.search(each.sentence):
        return None
    beside = [each.others[index] for index in (each.index - 1, each.index + 1) if 0 <= index < len(each.others)]
    for part, _, field in (other.rpartition(".") for other in beside):
        sort, _, way = field.partition("_")
        if sort not in ("cut", "finished") or way not in ("length", "width") or part != each.part:
            continue
        fits = f"{sort}_{'width' if way == 'length' else 'length'}"
        own = each.field.partition("_")[0]
        if each.field not in (fits, field) and (sort == "cut" or own == "cut"):
            return Asked(f"a number like {field}", only=frozenset({fits}), instead=(fits,))
    return None


def _proposed(asked: Asked, each: Spoken, computed: Computed) -> list[str]:
    """The numbers of the same part that would fit, as far as they exist."""
    names = [f"{each.part}.{field}" for field in asked.instead]
    if "seam_allowance" in asked.instead:
        names.append("seam_allowance")
    return [name for name in names if computed.by_size(name) is not None]


@check(
    id="reference-twice",
    area="references",
    severity=Severity.DOUBTFUL,
    looks_at=Tutorial,
    title="The same number twice in one sentence",
    why="Where a sentence names two numbers, the second is seldom the first again.",
    source=_PRACTICE,
    trips=_PIECE + "The panel measures {panel.cut_length} by {panel.cut_length}.",
    passes=_PIECE + "The panel measures {panel.cut_length} by {panel.cut_width}.",
)
def reference_twice(tutorial: Tutorial, computed: Computed) -> Iterator[Finding]:
    """A sentence, or a row of a table, that refers to the same number twice with nothing but a few words between."""
    found = list(spoken(tutorial))
    for each in found:
        if each.index and each.others[each.index - 1] == each.name and "." in each.name:
            between = each.before.rpartition(OTHER)[2]
            if len(between.split()) <= 6 and not re.search(r"\b(?:again|same|also|too|from|another)\b", each.sentence):
                yield _finding("reference-twice", each, "It stands in this sentence twice", [])
    for step in tutorial.steps:
        own = [each for each in found if each.step is step and step.text is each.prose]
        yield from _turn_twice(step, own, tutorial)


def _turn_twice(step: Step, found: list[Spoken], tutorial: Tutorial) -> Iterator[Finding]:
    """A double hem of which a card names the turn twice and what is folded under never, or the other way round."""
    for hem in step.hems:
        pair = tuple(f"{hem.name}.{field}" for field in ("fold_under", "turn"))
        if hem.name not in tutorial.hems or tutorial.hems[hem.name].fold_under is None:
            continue
        for name, other in (pair, pair[::-1]):
            twice = [each for each in found if each.name == name]
            if len(twice) == 2 and not any(each.name == other for each in found):
                fold_first = twice[0] if name.endswith("turn") else twice[1]
                yield _finding("reference-twice", fold_first, "It stands on this card twice", [other])


@check(
    id="reference-unspoken",
    area="references",
    severity=Severity.DOUBTFUL,
    looks_at=Tutorial,
    title="A number of which the sentence does not speak",
    why="What an overlap or a stitch line is, the student learns from the words; without them it is another number.",
    source=_PRACTICE,
    trips=_PIECE + "The panel is {panel.seam_allowance} tall.",
    passes=_PIECE + "Sew it, {panel.seam_allowance} from the edge.",
)
def reference_unspoken(tutorial: Tutorial, computed: Computed) -> Iterator[Finding]:
    """A number of a narrow meaning, such as an overlap, a quarter, a stitch line or a seam allowance, with no word
    in its sentence or the one before that could speak of it: lap, over, ends; mark, quarter, pin; sew, row, line."""
    for each in spoken(tutorial):
        needed = NEEDED.get(each.field)
        if needed is None or "." not in each.name or _is_edge(each.name, tutorial):
            continue
        if computed.by_size(each.name) is None:
            continue
        near = f"{each.previous} {each.sentence} {each.heading}"
        if each.part in tutorial.fabrics and each.field in ("width", "buy"):
            fabric = tutorial.fabrics[each.part]
            words = tokens(f"{each.part} {fabric.name}") | _CLOTH
            if not hints(words, near):
                yield _finding("reference-unspoken", each, "Nothing in its sentence speaks of cloth", [])
            continue
        if not re.search(needed, near):
            yield _finding("reference-unspoken", each, "Nothing in its sentence speaks of such a number", [])


def _finding(check_id: str, each: Spoken, why: str, fits: list[str]) -> Finding:
    instead = f" Is {fits[0]} meant?" if fits else ""
    return Finding(
        check_id,
        Severity.DOUBTFUL,
        each.place,
        f"{each.name} is the {words_of(each.name)}. {why}.{instead}",
        each.name,
        fits[0] if fits else "",
    )
