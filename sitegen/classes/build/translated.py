"""A class in another language of its site, for what is printed in it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace

from sitegen.classes.model import ComputedClass, computed_class
from sitegen.findings import Collector
from sitegen.reading import ContentFolder
from sitegen.tutorial import Computed, Tutorial, Words, made_together
from sitegen.tutorial.build import Builder, Fields, languages_of_folder


def class_in_language(
    cls: ComputedClass, folder: ContentFolder, relative: str, plain: Computed, language: str
) -> ComputedClass:
    """The class with its tutorial, as that reads in a language. What the class file calls by the tutorial's words
    (supplies, tools, things to buy) is called as the tutorial calls it there; its title and place are its own.

    ``plain`` is the tutorial in this language, in the views of the class.
    """
    said = dict(_same_words(cls.plain.tutorial, plain.tutorial))
    written, keys = cls.written, [change.name for change in cls.written.changes]
    own = _own_texts(folder, relative, language)

    def named(words: Words) -> Words:
        return replace(words, text=said.get(words.text, words.text))

    translated = replace(
        written,
        title=own["title"] or written.title,
        where=own["where"] or written.where,
        brings=tuple(map(named, written.brings)),
        room={said.get(tool, tool): count for tool, count in written.room.items()},
        shared={said.get(supply, supply): count for supply, count in written.shared.items()},
        prices=tuple(replace(price, item=named(price.item)) for price in written.prices),
    )
    by_number = {step.number: step for step in plain.tutorial.steps}
    steps = {name: by_number[step.number] for name, step in cls.steps.items()}
    return computed_class(translated, made_together(plain, keys) if keys else plain, plain, steps)


def _same_words(first: Tutorial, other: Tutorial) -> Iterator[tuple[str, str]]:
    """What is named in the first language, and what stands at its place in the other."""
    pairs = [(one.item, two.item) for one, two in zip(first.supplies, other.supplies, strict=False)]
    pairs += zip(first.tools, other.tools, strict=False)
    for one, two in zip(first.steps, other.steps, strict=False):
        pairs += zip((*one.tools, *one.needs), (*two.tools, *two.needs), strict=False)
    yield from ((before.text, after.text) for before, after in pairs)
    for key, fabric in first.fabrics.items():
        if key in other.fabrics:
            yield fabric.name, other.fabrics[key].name


def _own_texts(folder: ContentFolder, relative: str, language: str) -> Mapping[str, str]:
    """The title and the place of the class; empty where there is none. What is wrong was said before."""
    collector = Collector()
    node = folder.yaml(relative, collector)
    if node is None:
        return {"title": "", "where": ""}
    builder = Builder(collector, replace(languages_of_folder(folder), current=language))
    fields = Fields(builder, node, "the class")
    return {key: fields.text(key, f"{key}: …") for key in ("title", "where")}
