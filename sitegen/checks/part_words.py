"""By which words a text may speak of the parts of a tutorial."""

from __future__ import annotations

import re
from collections.abc import Iterator

from sitegen.checks.spoken import phrase, tokens
from sitegen.tutorial import Reference, Step, Tutorial

_BOLD = re.compile(r"^[ ]*(?:[-*] |\d+[.)] )?\*\*(.+?)\*\*", re.MULTILINE | re.DOTALL)

_TRIM_WORDS = {
    "cord": frozenset({"drawstring", "string", "casing", "tunnel"}),
    "zip": frozenset({"zipper", "opening"}),
    "piping": frozenset({"cord"}),
}
"""What a trim may be called besides its kind."""

PLACE = re.compile(
    r"\b(?:from|to|at|on|onto|below|above|beside|under|over|into|in|with|towards|round|behind|between|against|like|as)"
    r"(?: (?:the|a|an|your|each|both|one|this|that))?(?: [a-z]+)? $"
)
"""What stands before a part that is only a place or a likeness."""


def kinds(tutorial: Tutorial) -> tuple[frozenset[str], ...]:
    """The keys of parts that may be mistaken for each other: what is cut, hems, changes, girths, joined pieces."""
    sewn = (*tutorial.bands, *tutorial.elastics, *tutorial.bindings, *tutorial.circles, *tutorial.trims)
    cut = (*tutorial.pieces, *sewn, *tutorial.pleats)
    groups = (
        cut,
        tutorial.hems,
        tutorial.changes,
        tutorial.girths,
        tutorial.joined,
        tutorial.spacings,
        tutorial.gathers,
    )
    return tuple(frozenset(group) for group in groups)


def called(key: str, tutorial: Tutorial) -> tuple[re.Pattern[str], ...]:
    """The full names of a part: if one is read, the text surely speaks of it."""
    names = [key.replace("_", " ")]
    if key in tutorial.pieces:
        names.append(tutorial.pieces[key].called)
    if key in tutorial.bands and key.endswith("s"):
        names.append(key.removesuffix("s").replace("_", " "))
    return tuple(phrase(name) for name in dict.fromkeys(names) if name)


def mentions(key: str, text: str, tutorial: Tutorial) -> tuple[int, ...]:
    """Where a text names a part in full. Within the longer name of another part it does not: “back band” is no back."""
    own = {match.span() for name in called(key, tutorial) for match in name.finditer(text)}
    if not own:
        return ()
    every = dict.fromkeys(other for group in kinds(tutorial) for other in group if other != key)
    longer = [match.span() for other in every for name in called(other, tutorial) for match in name.finditer(text)]
    return tuple(sorted(start for start, end in own if not any(_within((start, end), span) for span in longer)))


def _within(inner: tuple[int, int], outer: tuple[int, int]) -> bool:
    return inner != outer and outer[0] <= inner[0] and inner[1] <= outer[1]


def about(key: str, tutorial: Tutorial) -> frozenset[str]:
    """Every word that may stand for a part: those of its name, of what it lies at, and of its sort."""
    found = tokens(key)
    if key in tutorial.pieces:
        found |= tokens(tutorial.pieces[key].called)
    if key in tutorial.bands:
        found |= {"band"} | _of(tutorial.bands[key].around)
    if key in tutorial.hems:
        found |= _of(tutorial.hems[key].edges)
    if key in tutorial.elastics:
        found |= {"elastic", "casing", "tunnel"} | tokens(tutorial.elastics[key].around.name)
    if key in tutorial.bindings:
        found |= {"binding", "strip", "bias", "tape"} | _of(tutorial.bindings[key].edges)
    if key in tutorial.trims:
        found |= _TRIM_WORDS.get(tutorial.trims[key].kind, frozenset()) | {tutorial.trims[key].kind}
        found |= _of(tutorial.trims[key].edges) | tokens(tutorial.trims[key].supply.name)
    if key in tutorial.circles:
        found |= {"skirt", "circle"}
    if key in tutorial.changes:
        found |= _of(tutorial.changes[key].pieces)
    if key in tutorial.girths:
        girth = tutorial.girths[key]
        found |= _of(girth.edges) | (tokens(girth.body.name) if girth.body is not None else frozenset())
    if key in tutorial.joined:
        found |= _of(tutorial.joined[key].pieces)
    if key in tutorial.gathers:
        found |= _of(tutorial.gathers[key].edges) | _of(tutorial.gathers[key].onto)
    if key in tutorial.spacings:
        found |= _of(tutorial.spacings[key].along)
    return found - {"body", "edge"}


def _of(names: tuple[Reference, ...]) -> frozenset[str]:
    return frozenset().union(*(tokens(name.name.replace(".", " ")) for name in names))


def worked_on(step: Step, tutorial: Tutorial) -> frozenset[str]:
    """The keys of every part that a card cuts, sews, turns, finishes, inserts or draws, with the pieces of its hems."""
    names = [*step.cuts, *step.stabilises, *step.hems, *step.inserts, *step.diagrams]
    names += [name for join in step.every_join() for name in join.names()]
    names += [name for chain in step.finishes for name in chain]
    if step.other_way is not None:
        names += [*step.other_way.hems, *(name for chain in step.other_way.finishes for name in chain)]
    keys = {name.name.partition(".")[0] for name in names}
    for hem in keys & set(tutorial.hems):
        keys |= {edge.name.partition(".")[0] for edge in tutorial.hems[hem].edges}
    for change in keys & set(tutorial.changes):
        keys |= {piece.name for piece in tutorial.changes[change].pieces}
    return frozenset(keys)


def topics(step: Step, tutorial: Tutorial) -> frozenset[str]:
    """The parts that a card is about: those that it works on, and those that its title names."""
    every = (*tutorial.pieces, *tutorial.bands, *tutorial.elastics, *tutorial.bindings, *tutorial.hems, *tutorial.trims)
    title = step.title.lower()
    return worked_on(step, tutorial) | {
        key for key in every if any(name.search(title) for name in called(key, tutorial))
    }


def apart(key: str, other: str) -> frozenset[str]:
    """The words of one key that the other does not have: ``longer`` of ``longer_legs`` beside ``shorter_legs``."""
    return tokens(key) - tokens(other)


def words_on(step: Step) -> str:
    """Everything that a card says to the student, without its references."""
    texts = [step.title, *(need.text for need in step.needs), *(photo.shows for photo in step.photos)]
    return " ".join([*texts, *(prose.text for prose in step.prose())])


def alike(key: str, groups: tuple[frozenset[str], ...]) -> Iterator[str]:
    """The other parts of the same sort."""
    yield from sorted(other for group in groups if key in group for other in group if other != key)


def lead_in(text: str, position: int) -> str:
    """The last words in bold print before a place of a text, which head what follows; empty without any."""
    heads = list(_BOLD.finditer(text, 0, position))
    return heads[-1].group(1).lower() if heads else ""
