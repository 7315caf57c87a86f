"""Which words the templates of a theme ask for, held against those that there are."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from jinja2 import TemplateSyntaxError, nodes
from jinja2.sandbox import ImmutableSandboxedEnvironment

from sitegen.findings import Collector, Place, nearest
from sitegen.publishing.languages.words import COUNT, Texts

NAME = "t"
"""By which templates call words."""


@dataclass(frozen=True, slots=True)
class Asked:
    """One call for a text: its key, the places that it fills, and where the call stands."""

    key: str
    places: frozenset[str]
    place: Place


def asked_in(templates: Mapping[str, tuple[str, Place]], environment: ImmutableSandboxedEnvironment) -> Iterator[Asked]:
    """Every call for a text in templates, given with their text and the place where it begins."""
    for name, (text, place) in templates.items():
        try:
            tree = environment.parse(text, name)
        except TemplateSyntaxError:
            continue  # reported when the theme is tried
        for call in tree.find_all(nodes.Call):
            first = call.args[0] if call.args else None
            if isinstance(call.node, nodes.Name) and call.node.name == NAME and isinstance(first, nodes.Const):
                places = frozenset(each.key for each in call.kwargs)
                yield Asked(str(first.value), places, replace(place, line=call.lineno, column=1))


def words_are_there(asked: Iterator[Asked], english: Texts, collector: Collector) -> None:
    """Report calls for a text that there is not, and places of a text that a call does not fill."""
    for each in asked:
        text = english.get(each.key)
        if text is None:
            near = nearest(each.key, english, most=1)
            hint = f" Nearest: {near[0]}." if near else " Write it into words/en.yaml of the theme."
            collector.wrong("theme-words", each.place, f"The theme has no text called {each.key}.{hint}", said=each.key)
            continue
        lacking = text.places - each.places
        if lacking:
            named = ", ".join(f"{{{name}}}" for name in sorted(lacking))
            collector.wrong("theme-words", each.place, f"The text {each.key} has {named}, which is not given here.")
        if text.one != text.other and COUNT not in each.places:
            message = f"The text {each.key} is told by its count, which is not given here. Example: count=3"
            collector.wrong("theme-words", each.place, message)
