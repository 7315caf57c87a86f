"""Reads values that may be a length or the name of one, and parts that are made of several."""

from __future__ import annotations

import re
from collections.abc import Iterable

from sitegen.reading import Mapping, Node, Scalar
from sitegen.tutorial.build.fields import Fields
from sitegen.tutorial.model import Amount, Lengths, Reference

_NAME = re.compile(r"[a-z][a-z0-9_]*(?:\.[a-z0-9_]+)*")


def lengths_or_name(fields: Fields, key: str, example: str, *, required: bool = False) -> Lengths | None:
    """Lengths by size, a reference in braces, or the plain name of another number, ``waist: body.waist``."""
    entry = fields.node.get(key)
    if entry is None or not is_name(entry.value):
        return fields.lengths(key, example, required=required)
    node = fields.get(key)
    if not isinstance(node, Scalar):
        return None
    full = f"{fields.prefix}{key}"
    fields.builder.table.take(full)
    found = Lengths(full, node.place, Reference(node.text.strip(), node.place))
    fields.builder.referred.append(found)
    return found


def is_name(node: Node) -> bool:
    """Whether a value is the name of a part or a number."""
    return isinstance(node, Scalar) and _NAME.fullmatch(node.text.strip()) is not None


def names(fields: Fields, key: str, example: str, *, required: bool = False) -> tuple[Reference, ...]:
    """The names under a key: one, a list, or a chain with ``+``."""
    node = fields.required_names(key, example) if required else fields.get(key)
    return fields.builder.references(node, example) if node is not None else ()


def name(fields: Fields, key: str, example: str) -> Reference | None:
    """The one name under a key, such as that of a fabric."""
    node = fields.get(key)
    words = fields.builder.words(node, "a name", example) if node is not None else None
    return Reference(words.text, words.place) if words is not None else None


def amount(fields: Fields, key: str) -> Amount | None:
    """One length that serves every size."""
    node = fields.get(key)
    return fields.builder.amount(node, f"{fields.prefix}{key}") if node is not None else None


def word_of(fields: Fields, key: str, choices: Iterable[str], example: str, *, required: bool = False) -> str:
    """One word out of a few; empty when it is absent or none of them (reported)."""
    node = fields.required(key, example) if required else fields.get(key)
    words = fields.builder.choice(node, tuple(choices), example) if node is not None else None
    return words.text if words else ""


def inner(fields: Fields, key: str, example: str) -> Fields | None:
    """The keys of a part inside of a part, ``button: {diameter: 1/2 in}``, whose length is ``button_diameter``."""
    node = fields.get(key)
    if node is None:
        return None
    if not isinstance(node, Mapping):
        fields.builder.not_this(node, "keys with values", example)
        return None
    return Fields(fields.builder, node, f"{key} of {fields.what}", f"{fields.prefix}{key}_")
