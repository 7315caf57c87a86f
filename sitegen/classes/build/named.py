"""Reads names of the tutorial out of a class file, and counts of things that have names."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Collection, Iterable
from collections.abc import Mapping as Names
from dataclasses import dataclass

from sitegen.classes.model import Count
from sitegen.reading import Mapping, Node, Scalar, Sequence
from sitegen.tutorial import Reference, Step, Tutorial
from sitegen.tutorial.build import Fields

_STEPS = "steps/"
"""The folder of the step files, as what cannot be read names them."""


@dataclass(frozen=True, slots=True)
class StepNames:
    """What a class file may call each step: its file's name without the ending, with or without the number."""

    known: Names[str, Step]
    unread: frozenset[str]
    """Names of step files that are there and cannot be read: reported where they lie, and nowhere else."""

    @classmethod
    def of(cls, tutorial: Tutorial) -> StepNames:
        """The names of a tutorial's steps. A number can only be left away where what is behind it names one step."""
        unread = [name.removeprefix(_STEPS) for name in tutorial.unread if name.startswith(_STEPS)]
        files = {step.file: step for step in tutorial.steps} | dict.fromkeys(unread)
        stems = {file.rpartition(".")[0]: step for file, step in files.items()}
        short = {stem: re.sub(r"^\d+[-_ ]*", "", stem) or stem for stem in stems}
        often = Counter(short.values())
        names = {short[stem] if often[short[stem]] == 1 else stem: step for stem, step in stems.items()} | stems
        return cls(
            {name: step for name, step in names.items() if step is not None},
            frozenset(name for name, step in names.items() if step is None),
        )


def steps_named(fields: Fields, key: str, steps: StepNames) -> tuple[Reference, ...]:
    """The steps under a key, one or a list; those that the tutorial does not have are reported."""
    node = fields.get(key)
    return _steps(fields, node, steps, f"{key}: [cut-out]") if node is not None else ()


def steps_together(fields: Fields, steps: StepNames) -> tuple[tuple[Reference, ...], ...]:
    """Lists of two steps or more that stay in one session."""
    example = "together: [[gather, sew-on-the-waistband]]"
    node = fields.get("together")
    if node is None:
        return ()
    lists = node.items if isinstance(node, Sequence) else (node,)
    if lists and all(isinstance(item, Scalar) for item in lists):
        lists = (node,)
    found = []
    for item in lists:
        named = _steps(fields, item, steps, example)
        if len(named) < 2:
            if not isinstance(item, Sequence) or len(item.items) < 2:
                fields.builder.not_this(item, "two steps or more", example)
            continue
        found.append(named)
    return tuple(found)


def _steps(fields: Fields, node: Node, steps: StepNames, example: str) -> tuple[Reference, ...]:
    found = []
    for item in fields.builder.entries(node):
        words = fields.builder.words(item, "the name of a step file", example)
        if words is None:
            continue
        if words.text in steps.known:
            found.append(Reference(words.text, words.place))
        elif words.text not in steps.unread:
            known = [name for name in steps.known if not name[:1].isdigit()]
            fields.builder.unknown("step", words, known or list(steps.known))
    return tuple(found)


def counts(
    fields: Fields, key: str, known: Collection[str] | None, what: str, example: str, least: int = 1
) -> dict[str, Count]:
    """Names with whole numbers of at least one. With ``known`` others are reported."""
    node = fields.get(key)
    if node is None:
        return {}
    if not isinstance(node, Mapping):
        fields.builder.not_this(node, "names with numbers", example)
        return {}
    found = {}
    for entry in node.entries:
        if known is not None and entry.key.text not in known:
            fields.builder.unknown(what, entry.key, known)
            continue
        number = fields.builder.whole_number(entry.value, example, most=1000)
        if number is not None and number < least:
            fields.builder.not_this(entry.value, f"a number of at least {least}", example)
        elif number is not None:
            found[entry.key.text] = Count(number, entry.value.place)
    return found


def called_like(name: str, known: Iterable[str]) -> str | None:
    """The known name that is this one in other letters or in the plural; None when there is none."""
    plain = name.casefold().removesuffix("s")
    return next((each for each in known if each.casefold().removesuffix("s") == plain), None)
