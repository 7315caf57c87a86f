"""References in a text whose sentence speaks of another part."""

from __future__ import annotations

from collections.abc import Iterator

from sitegen.checks.part_words import PLACE, about, alike, apart, kinds, lead_in, mentions, topics, words_on, worked_on
from sitegen.checks.registry import COMMON_PRACTICE, check
from sitegen.checks.spoken import Spoken, differs, equals, hints, plain, spoken, tokens
from sitegen.findings import Finding, Severity
from sitegen.tutorial import Computed, Tutorial

_PIECES = (
    "fabrics: {main: {name: linen, structure: woven, buy: 1 yd}}\n"
    "pieces:\n"
    "  panel: {called: panel, cut: 2, fabric: main, length: 15 in, width: 12 in}\n"
    "  pocket: {called: pocket, cut: 1, fabric: main, length: 8 in, width: 6 in}\n"
    "seam_allowance: 1/2 in\n"
    "--- steps/01.yaml\ntitle: Cut\n"
)


@check(
    id="reference-part",
    area="references",
    severity=Severity.DOUBTFUL,
    looks_at=Tutorial,
    title="A number of another part than the one the words speak of",
    why="The name exists, so nothing else shows that the student reads the pocket's length where the panel's is meant.",
    source="One number stands for one thing: " + COMMON_PRACTICE,
    trips=_PIECES + "text: Cut the pocket, {panel.cut_length} long.",
    passes=_PIECES + "text: Cut the panel, {panel.cut_length} long.",
)
def reference_part(tutorial: Tutorial, computed: Computed) -> Iterator[Finding]:
    """A sentence that names one part and refers to the same number of another part, of which it does not speak, nor
    does the paragraph; or a reference to a part of which a whole card does not speak, while it speaks of another part
    that has the same number. A name within a longer one does not count: “back band” is no back. Where both numbers are
    equal in every size nothing is said."""
    groups = kinds(tutorial)
    words: dict[int, str] = {id(step): plain(words_on(step)) for step in tutorial.steps}
    for each in spoken(tutorial):
        if not any(each.part in group for group in groups):
            continue
        rest = each.name.partition(".")[2]
        own_sort = tuple(alike(each.part, groups))
        others = [key for key in own_sort if differs(each.name, f"{key}.{rest}", computed)]
        equal = [key for key in own_sort if equals(each.name, f"{key}.{rest}", computed)]
        if _last_named((each.part, *equal, *others), each.before, tutorial) in equal:
            continue
        named = _named_instead(each, others, tutorial)
        if not named and each.step is not None:
            named = _on_card(each, others, tutorial, words[id(each.step)]) or _off_topic(each, others, tutorial)
        named = named or _under_other_head(each, others, tutorial) or _by_own_words(each, others, tutorial)
        named = named or _nearest(each, others, tutorial)
        if named:
            yield _finding(each, named, rest)


def _named_instead(each: Spoken, others: list[str], tutorial: Tutorial) -> list[str]:
    """The parts that the sentence names, if it does not speak of the one that is referred to."""
    own = about(each.part, tutorial)
    if hints(own, each.heading) or hints(own, each.item):
        return _nearer(each, others, tutorial)
    return [key for key in others if _names(key, each.sentence, tutorial)]


def _nearer(each: Spoken, others: list[str], tutorial: Tutorial) -> list[str]:
    """The part that the sentence names as its only one, if the other is spoken of in no sentence near."""
    own = about(each.part, tutorial)
    if hints(own, each.sentence) or hints(own, each.previous):
        return []
    before = each.before.rpartition("¤")[2]
    return [key for key in others if _names(key, before, tutorial)]


def _names(key: str, text: str, tutorial: Tutorial) -> bool:
    """Whether a text speaks of the part, and does not only say where something lies: “from the waistband down”."""
    return any(not PLACE.search(text, 0, start) for start in mentions(key, text, tutorial))


def _on_card(each: Spoken, others: list[str], tutorial: Tutorial, words: str) -> list[str]:
    """The parts of which the card speaks, if it does not speak of the one that is referred to."""
    step = each.step
    if step is None or each.part in worked_on(step, tutorial) or hints(about(each.part, tutorial), words):
        return []
    return [key for key in others if key in worked_on(step, tutorial)]


def _off_topic(each: Spoken, others: list[str], tutorial: Tutorial) -> list[str]:
    """The parts that the card is about, if it is not about the one that is referred to and nothing near names it."""
    step = each.step
    own = topics(step, tutorial) if step is not None else frozenset()
    if each.part in own or not own:
        return []
    if mentions(each.part, f"{each.previous} {each.item}", tutorial):
        return []
    pieces = [edge.name for edge in tutorial.hems[each.part].edges] if each.part in tutorial.hems else []
    if any(hints(tokens(piece.partition(".")[0]), each.item) for piece in pieces):
        return []
    named = [key for key in others if key in own and key not in tutorial.pieces]
    return [key for key in named if each.part not in tutorial.pieces or hints(about(key, tutorial), each.item)]


def _under_other_head(each: Spoken, others: list[str], tutorial: Tutorial) -> list[str]:
    """The changes of which the bold head above speaks, if it does not speak of the one that is referred to."""
    head = lead_in(each.prose.text, each.position)
    if each.part not in tutorial.changes or not head:
        return []
    return [
        key
        for key in others
        if tokens(head) & apart(key, each.part) and not tokens(f"{head} {each.sentence}") & apart(each.part, key)
    ]


def _by_own_words(each: Spoken, others: list[str], tutorial: Tutorial) -> list[str]:
    """The girths, joined pieces, marks and gathers of whose edges the sentence speaks, and not of its own."""
    if each.part not in {*tutorial.girths, *tutorial.joined, *tutorial.spacings, *tutorial.gathers}:
        return []
    own, said = about(each.part, tutorial), tokens(each.sentence)
    named = [key for key in others if said & (about(key, tutorial) - own)]
    return [key for key in named if not hints(own - about(key, tutorial), f"{each.previous} {each.item}")]


def _nearest(each: Spoken, others: list[str], tutorial: Tutorial) -> list[str]:
    """The part that is named last before the reference as that of which the sentence speaks, if it is another."""
    last = _last_named((each.part, *others), each.before, tutorial)
    if not last or last == each.part or mentions(each.part, each.after, tutorial):
        return []
    return [last]


def _last_named(keys: tuple[str, ...], text: str, tutorial: Tutorial) -> str:
    """The part that a text names last as that of which it speaks; empty when it names none of them."""
    found = [
        (start, key) for key in keys for start in mentions(key, text, tutorial) if not PLACE.search(text, 0, start)
    ]
    return max(found)[1] if found else ""


def _finding(each: Spoken, named: list[str], rest: str) -> Finding:
    spoken_of = " and ".join(key.replace("_", " ") for key in named)
    return Finding(
        "reference-part",
        Severity.DOUBTFUL,
        each.place,
        f"The words speak of {spoken_of}, but {each.name} is a number of {each.part.replace('_', ' ')}.",
        each.name,
        f"{named[0]}.{rest}" if len(named) == 1 else "",
    )
