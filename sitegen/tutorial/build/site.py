"""Builds the whole content folder."""

from __future__ import annotations

import re
from dataclasses import replace
from urllib.parse import urlsplit

from sitegen.findings import Collector, Finding, Severity, nearest
from sitegen.quantities import System
from sitegen.reading import ContentFolder, Mapping
from sitegen.tutorial.build.builder import Builder, short
from sitegen.tutorial.build.fields import Fields
from sitegen.tutorial.build.look import look
from sitegen.tutorial.build.site_languages import site_languages
from sitegen.tutorial.build.translations import ENGLISH_ALONE, Languages, side_by_side
from sitegen.tutorial.build.tutorial import tutorial
from sitegen.tutorial.model import Look, Site, Term, Tutorial

_TUTORIALS = "tutorials"
_FOLDER_NAME = re.compile(r"[a-z0-9][a-z0-9-]*")
_NOT_IN_ADDRESS = re.compile(r"[\s<>\"'\\^`{|}?#]")
_HOST = re.compile(r"[a-z0-9-]+(\.[a-z0-9-]+)*")


def site(folder: ContentFolder, collector: Collector, language: str = "") -> Site:
    """Everything in the folder, in one of its languages, by default the first.

    What cannot be read is reported and left empty, the rest is read all the same.
    """
    node = folder.yaml("site.yaml", collector)
    spoken = site_languages(node, collector, language)
    terms = glossary(folder, collector, spoken)
    tutorials = _tutorials(folder, collector, spoken)
    if node is None:
        place = folder.place("site.yaml")
        return Site(place, "", "", "", System.INCHES, "en", Look(), None, "", terms, tutorials)
    builder = Builder(collector, spoken)
    fields = Fields(builder, node, "the site")
    units = fields.get("units_first")
    first = builder.choice(units, ("inches", "centimetres"), "units_first: inches") if units is not None else None
    found = Site(
        place=node.place,
        title=fields.text("title", "title: Harbour Street sewing room", required=True),
        author=fields.text("author", "author: the workshop's name", required=True),
        address=_address(fields),
        first_system=System.CENTIMETRES if first and first.text == "centimetres" else System.INCHES,
        language=spoken.current,
        look=look(fields),
        about=fields.prose("about"),
        note=fields.text("note", "note: All patterns are invented."),
        glossary=terms,
        tutorials=tutorials,
    )
    fields.get("language"), fields.get("languages")
    fields.finish()
    return replace(
        found, languages=spoken.every, units_said=first is not None, untranslated=frozenset(builder.untranslated)
    )


def _address(fields: Fields) -> str:
    """Where the site is found, without a slash at its end; empty when that is not said or cannot be an address."""
    example = "address: https://example.org/sewing"
    address = fields.text("address", example)
    if address and not _is_address(address):
        node = fields.get("address")
        if node is not None:
            fields.builder.not_this(node, "a web address that begins with https:// and has no ? or #", example)
        return ""
    return address.rstrip("/")


def _is_address(text: str) -> bool:
    """Whether a text is the address of a folder on the web, as RFC 3986 has it: scheme, host, perhaps port and path."""
    if _NOT_IN_ADDRESS.search(text):
        return False
    try:
        parts = urlsplit(text)
        host = (parts.hostname or "").encode("idna").decode("ascii")
        port_is_known = parts.port is None or parts.port > 0
    except ValueError:  # a port that is no number, brackets that are no host, a name with an empty part
        return False
    in_order = parts.scheme in ("http", "https") and port_is_known and parts.username is None
    return in_order and _HOST.fullmatch(host) is not None


def glossary(folder: ContentFolder, collector: Collector, spoken: Languages = ENGLISH_ALONE) -> tuple[Term, ...]:
    """The words that the folder explains; none when it has no glossary."""
    if not folder.exists("glossary.yaml"):
        return ()
    node = folder.yaml("glossary.yaml", collector, may_be_empty=True)
    if node is None:
        return ()
    builder = Builder(collector, spoken)
    example = "selvage: {means: The woven edge of the cloth., us: selvage, uk: selvedge}"
    found = []
    for entry in node.entries:
        term = entry.key.text
        if isinstance(entry.value, Mapping) and side_by_side(entry.value, spoken) is None:
            inner = Fields(builder, entry.value, f"the term {entry.key.text}")
            means_node = inner.required("means", example)
            means = builder.prose(means_node, example) if means_node is not None else None
            us, uk = inner.text("us", "us: selvage"), inner.text("uk", "uk: selvedge")
            term = inner.text("term", "term: {en: selvage, es: orillo}") or term
            inner.finish()
        else:
            means, us, uk = builder.prose(entry.value, example), "", ""
        if means is not None:
            found.append(Term(term, means, us, uk, entry.key.place))
    _report_terms_twice(found, collector)
    return tuple(found)


def _report_terms_twice(terms: list[Term], collector: Collector) -> None:
    """Two entries whose terms differ in capitals and blanks only: of the two a text opens one, and hides the other."""
    first: dict[str, Term] = {}
    for each in terms:
        word = " ".join(each.term.casefold().split())
        one = first.setdefault(word, each)
        if one is not each:
            message = (
                f"“{each.term}” is explained here a second time; the first entry, “{one.term}”, is on line"
                f" {one.place.line}, column {one.place.column}. Capitals make no other word: keep one of the two, or"
                " give one of them another name."
            )
            collector.add(Finding("term-twice", Severity.DOUBTFUL, each.place, message, said=each.term))


def _tutorials(folder: ContentFolder, collector: Collector, spoken: Languages) -> tuple[Tutorial, ...]:
    found = []
    for name in folder.folders(_TUTORIALS, collector):
        if not _FOLDER_NAME.fullmatch(name):
            collector.wrong(
                "bad-name",
                folder.place(f"tutorials/{name}"),
                f"The folder name “{name}” becomes part of an address: use small letters, digits and hyphens.",
                said=name,
            )
            continue
        built = tutorial(folder, f"tutorials/{name}", collector, spoken)
        if built is not None:
            found.append(built)
    _report_titles_twice(found, collector)
    if not found and not collector.any_unread:
        _report_none(folder, collector)
    return tuple(found)


def _report_none(folder: ContentFolder, collector: Collector) -> None:
    """Say that there is no tutorial, and where one lies that was not looked for there."""
    example = f"Example: {_TUTORIALS}/lantern-tee/tutorial.yaml"
    told = False
    for name in folder.folders("", Collector()):
        if folder.exists(f"{name}/tutorial.yaml"):
            cure = f"Move {short(name)} into it."
        elif name != _TUTORIALS and (nearest(name, [_TUTORIALS]) or _holds_tutorials(folder, name)):
            cure = f"There is a folder {short(name)}: call it {_TUTORIALS}."
        else:
            continue
        told = True
        message = f"There is no tutorial here: they are read from a folder {_TUTORIALS}. {cure} {example}"
        collector.wrong("no-tutorials", folder.place(name), message)
    if not told:
        message = f"There is no tutorial in this folder. {example}"
        collector.wrong("no-tutorials", folder.place(_TUTORIALS), message)


def _holds_tutorials(folder: ContentFolder, name: str) -> bool:
    return any(folder.exists(f"{name}/{inner}/tutorial.yaml") for inner in folder.folders(name, Collector()))


def _report_titles_twice(tutorials: list[Tutorial], collector: Collector) -> None:
    """Two tutorials of one title cannot be told apart in any list of the site."""
    first: dict[str, Tutorial] = {}
    for each in tutorials:
        title = each.title.casefold()
        if title and first.setdefault(title, each) is not each:
            message = (
                f"The tutorial {first[title].key} has this title too, so a student cannot tell the two apart. Give one"
                " of them another title."
            )
            collector.add(Finding("title-twice", Severity.DOUBTFUL, each.title_place, message, said=each.title))


def near_tutorial(name: str, tutorials: tuple[Tutorial, ...]) -> tuple[str, ...]:
    """The tutorials whose folder names are like this one."""
    return nearest(name, [each.key for each in tutorials])
