"""In which languages a site is published: ``language: en``, or ``languages: [en, es]``, the first at its root."""

from __future__ import annotations

from sitegen.findings import Collector
from sitegen.reading import ContentFolder, Mapping, Scalar
from sitegen.tutorial.build.builder import Builder
from sitegen.tutorial.build.translations import Languages, is_language

_EXAMPLE = "languages: [en, es]"


def site_languages(node: Mapping | None, collector: Collector, current: str = "") -> Languages:
    """The languages of a ``site.yaml``; English if it names none. ``current`` is the one to build, else the first."""
    builder = Builder(collector)
    named = _named(node, "languages", builder) or _named(node, "language", builder) or ("en",)
    return Languages(current or named[0], named)


def languages_of_folder(folder: ContentFolder) -> Languages:
    """Those of a folder. What is wrong with its ``site.yaml`` is said when the whole folder is read."""
    collector = Collector()
    return site_languages(folder.yaml("site.yaml", collector) if folder.exists("site.yaml") else None, collector)


def _named(node: Mapping | None, key: str, builder: Builder) -> tuple[str, ...]:
    entry = node.get(key) if node is not None else None
    if entry is None:
        return ()
    items = builder.entries(entry.value) if key == "languages" else (entry.value,)
    found = []
    for item in items:
        if isinstance(item, Scalar) and is_language(item.text.strip()):
            found.append(item.text.strip())
        else:
            builder.not_this(item, "a language such as en or es", _EXAMPLE if key == "languages" else "language: en")
    return tuple(dict.fromkeys(found))
