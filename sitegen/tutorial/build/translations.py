"""A text in several languages side by side, ``{en: Pin the band., es: Prende la tira.}``, and the one that is built."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from sitegen.findings import Collector, Finding, Severity, nearest
from sitegen.reading import Entry, Mapping, Node, Scalar, Sequence

_REFERENCE = re.compile(r"\{\{|\{\s*([^{}\n]{0,80}?)\s*\}")
_LANGUAGE = re.compile(r"[a-z]{2,3}(-[A-Za-z0-9]{2,8})*")
_LETTER = re.compile(r"[^\W\d_]")
_IN_LANGUAGES = {"en": "Pin the band.", "es": "Prende la tira."}
"""One sentence in the languages that examples can be given in; elsewhere dots stand for it."""


@dataclass(frozen=True, slots=True)
class Languages:
    """The languages of a site, the first of them at its root, and the one that is being built."""

    current: str = "en"
    every: tuple[str, ...] = ("en",)

    @property
    def first(self) -> str:
        """The language in which a text without languages is written."""
        return self.every[0]

    @property
    def is_first(self) -> bool:
        """Whether the first one is being built, which reports what is said once for all."""
        return self.current == self.first


ENGLISH_ALONE = Languages()
"""A site that says nothing of languages."""


def is_language(text: str) -> bool:
    """Whether a text has the form of a language tag: ``en``, ``es``, ``pt-BR`` (BCP 47)."""
    return _LANGUAGE.fullmatch(text) is not None


def side_by_side(node: Node, languages: Languages) -> Mapping | None:
    """The node as texts by language; None where it is something else."""
    if not isinstance(node, Mapping) or not any(key in languages.every for key in node.keys):
        return None
    return node if all(is_language(key) for key in node.keys) else None


def in_language(node: Node, languages: Languages, collector: Collector) -> tuple[Node, str]:
    """The text in the language that is built, and the language in which it is where a translation is missing.

    That a translation is missing, or holds other references than the first text, is reported.
    """
    texts = side_by_side(node, languages)
    if texts is None:
        if not languages.is_first and _has_words(node):
            _missing(node, languages, collector)
            return node, languages.first
        return node, ""
    if languages.is_first:
        _compare(texts, languages, collector)
    own = texts.get(languages.current)
    if own is not None:
        return own.value, ""
    _missing(texts, languages, collector)
    other = next(entry for name in (*languages.every, *texts.keys) if (entry := texts.get(name)) is not None)
    return other.value, other.key.text


def translated(nodes: Iterable[Node], languages: Languages) -> dict[str, str]:
    """What the texts of the first language are called in the one that is built, as far as they stand side by side
    somewhere in the nodes, and everywhere alike."""
    if languages.is_first:
        return {}
    found: dict[str, set[str]] = {}
    for first, current in _pairs(nodes, languages):
        found.setdefault(one_line(first.text), set()).add(one_line(current.text))
    return {text: said.pop() for text, said in found.items() if len(said) == 1}


def one_line(text: str) -> str:
    """A short text as it is read, with single spaces."""
    return " ".join(text.split())


def _pairs(nodes: Iterable[Node], languages: Languages) -> Iterator[tuple[Scalar, Scalar]]:
    waiting = list(nodes)
    while waiting:
        node = waiting.pop()
        if isinstance(node, Sequence):
            waiting.extend(node.items)
        if not isinstance(node, Mapping):
            continue
        texts = side_by_side(node, languages)
        if texts is None:
            waiting.extend(entry.value for entry in node.entries)
            continue
        first, current = (_listed(texts.get(name)) for name in (languages.first, languages.current))
        if len(first) == len(current):
            yield from zip(first, current, strict=True)


def _listed(entry: Entry | None) -> tuple[Scalar, ...]:
    if entry is None:
        return ()
    items = entry.value.items if isinstance(entry.value, Sequence) else (entry.value,)
    return tuple(item for item in items if isinstance(item, Scalar))


def _has_words(node: Node) -> bool:
    return isinstance(node, Scalar) and _LETTER.search(_REFERENCE.sub("", node.text)) is not None


def _missing(node: Node, languages: Languages, collector: Collector) -> None:
    sides = (f"{name}: {_IN_LANGUAGES.get(name, '…')}" for name in (languages.first, languages.current))
    there = f"languages in site.yaml are {', '.join(languages.every)}. Example: {{{', '.join(sides)}}}"
    said = " ".join(node.text.split())[:60] if isinstance(node, Scalar) else ""
    collector.add(
        Finding(
            "translation-missing",
            Severity.DOUBTFUL,
            node.place,
            f"This text has no translation into {languages.current}; the {there}",
            said if isinstance(node, Scalar) and said == node.text else "",
        )
    )


def _compare(texts: Mapping, languages: Languages, collector: Collector) -> None:
    """Say which languages the site does not have, and which texts refer to other numbers than the first."""
    for entry in texts.entries:
        if len(languages.every) > 1 and entry.key.text not in languages.every:
            near = nearest(entry.key.text, languages.every, most=1)
            collector.wrong(
                "translation-language",
                entry.key.place,
                f"The site has no language “{entry.key.text}”; site.yaml has languages: {', '.join(languages.every)}.",
                said=entry.key.text,
                should_be=near[0] if near and texts.get(near[0]) is None else "",
            )
    first, *others = texts.entries
    wanted = _references(first)
    for entry in others:
        found = _references(entry)
        if wanted is not None and found is not None and found != wanted:
            collector.wrong("translation-references", entry.value.place, _difference(first, entry, wanted, found))


def _references(entry: Entry) -> Counter[str] | None:
    if isinstance(entry.value, Sequence):
        texts = [item.text for item in entry.value.items if isinstance(item, Scalar)]
    elif isinstance(entry.value, Scalar):
        texts = [entry.value.text]
    else:
        return None
    return Counter(name for text in texts for name in _REFERENCE.findall(text) if name)


def _difference(first: Entry, other: Entry, wanted: Counter[str], found: Counter[str]) -> str:
    lacks, more = (
        ", ".join(f"{{{name}}}" for name in sorted((one - two).elements()))
        for one, two in ((wanted, found), (found, wanted))
    )
    parts = [f"lacks {lacks}" if lacks else "", f"has {more} besides" if more else ""]
    return (
        f"The text in {other.key.text} {' and '.join(filter(None, parts))}; it refers to the same numbers as the one in"
        f" {first.key.text}, or a reader learns something else."
    )
