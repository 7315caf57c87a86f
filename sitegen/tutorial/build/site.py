"""Builds the whole content folder."""

from __future__ import annotations

import re

from sitegen.findings import Collector, nearest
from sitegen.quantities import System
from sitegen.reading import ContentFolder, Mapping
from sitegen.tutorial.build.builder import Builder
from sitegen.tutorial.build.fields import Fields
from sitegen.tutorial.build.tutorial import tutorial
from sitegen.tutorial.model import Site, Term, Tutorial

_FOLDER_NAME = re.compile(r"[a-z0-9][a-z0-9-]*")


def site(folder: ContentFolder, collector: Collector) -> Site:
    """Everything in the folder. What cannot be read is reported and left empty, the rest is read all the same."""
    node = folder.yaml("site.yaml", collector)
    terms = glossary(folder, collector)
    tutorials = _tutorials(folder, collector)
    if node is None:
        place = folder.place("site.yaml")
        return Site(place, "", "", "", System.INCHES, "en", "workroom", None, "", terms, tutorials)
    builder = Builder(collector)
    fields = Fields(builder, node, "the site")
    units = fields.get("units_first")
    first = builder.choice(units, ("inches", "centimetres"), "units_first: inches") if units is not None else None
    found = Site(
        place=node.place,
        title=fields.text("title", "title: Harbour Street sewing room", required=True),
        author=fields.text("author", "author: the workshop's name", required=True),
        address=_address(fields),
        first_system=System.CENTIMETRES if first and first.text == "centimetres" else System.INCHES,
        language=fields.text("language", "language: en") or "en",
        theme=fields.text("theme", "theme: workroom") or "workroom",
        about=fields.prose("about"),
        note=fields.text("note", "note: All patterns are invented."),
        glossary=terms,
        tutorials=tutorials,
    )
    fields.finish()
    return found


def _address(fields: Fields) -> str:
    example = "address: https://example.org/sewing"
    address = fields.text("address", example)
    if address and not re.fullmatch(r"https?://[^\s/]+(/\S*)?", address):
        node = fields.get("address")
        if node is not None:
            fields.builder.not_this(node, "a web address", example)
        return ""
    return address.rstrip("/")


def glossary(folder: ContentFolder, collector: Collector) -> tuple[Term, ...]:
    """The words that the folder explains; none when it has no glossary."""
    if not folder.exists("glossary.yaml"):
        return ()
    node = folder.yaml("glossary.yaml", collector)
    if node is None:
        return ()
    builder = Builder(collector)
    example = "selvage: {means: The woven edge of the cloth., us: selvage, uk: selvedge}"
    found = []
    for entry in node.entries:
        if isinstance(entry.value, Mapping):
            inner = Fields(builder, entry.value, f"the term {entry.key.text}")
            means_node = inner.required("means", example)
            means = builder.prose(means_node, example) if means_node is not None else None
            us, uk = inner.text("us", "us: selvage"), inner.text("uk", "uk: selvedge")
            inner.finish()
        else:
            means, us, uk = builder.prose(entry.value, example), "", ""
        if means is not None:
            found.append(Term(entry.key.text, means, us, uk, entry.key.place))
    return tuple(found)


def _tutorials(folder: ContentFolder, collector: Collector) -> tuple[Tutorial, ...]:
    found = []
    for name in folder.folders("tutorials", collector):
        if not _FOLDER_NAME.fullmatch(name):
            collector.wrong(
                "bad-name",
                folder.place(f"tutorials/{name}"),
                f"The folder name “{name}” becomes part of an address: use small letters, digits and hyphens.",
                said=name,
            )
            continue
        built = tutorial(folder, f"tutorials/{name}", collector)
        if built is not None:
            found.append(built)
    if not found and not collector.any_unread:
        collector.wrong(
            "no-tutorials",
            folder.place("tutorials"),
            "There is no tutorial in this folder. Example: tutorials/lantern-tee/tutorial.yaml",
        )
    return tuple(found)


def near_tutorial(name: str, tutorials: tuple[Tutorial, ...]) -> tuple[str, ...]:
    """The tutorials whose folder names are like this one."""
    return nearest(name, [each.key for each in tutorials])
