"""Builds one tutorial from its folder."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import replace
from math import prod
from typing import TypeVar

from sitegen.findings import Collector, Place
from sitegen.quantities import Unit
from sitegen.reading import ContentFolder, Mapping, Node, Scalar, Sequence
from sitegen.tutorial.build import changes, corners_and_drops, marks_and_folds, parts, pieces, strips_and_circles, trims
from sitegen.tutorial.build.builder import Builder, short
from sitegen.tutorial.build.commas import read_as_several
from sitegen.tutorial.build.fields import Fields
from sitegen.tutorial.build.photos import photos
from sitegen.tutorial.build.sizes_table import SizeTable, size_table
from sitegen.tutorial.build.steps import step
from sitegen.tutorial.build.translations import ENGLISH_ALONE, Languages, side_by_side, translated
from sitegen.tutorial.model import SIZES_FILE, Lengths, Prose, Supply, Tutorial, Words

P = TypeVar("P")
MOST_COMBINATIONS = 24
"""Every combination is computed, checked and published by itself."""
_SECTIONS = ("body", "seam_allowance", "size")
_STEP_FILES = (".yaml", ".yml")
_OF_A_STEP = re.compile(r"steps/|step\d+(?:\.|$)")


def tutorial(
    folder: ContentFolder, home: str, collector: Collector, languages: Languages = ENGLISH_ALONE
) -> Tutorial | None:
    """The tutorial in this folder, in a language of its site; None when its ``tutorial.yaml`` cannot be read."""
    node = folder.yaml(f"{home}/tutorial.yaml", collector)
    if node is None:
        return None
    builder = Builder(collector, languages)
    cards = _cards(folder, home, builder)
    builder.translated = translated((node, *cards.values()), languages)
    fields = Fields(builder, node, "the tutorial", "")
    builder.unit = _unit(fields)
    builder.sizes, builder.runs, size_places = _sizes(fields)
    builder.table = _table(folder, home, builder)
    title = fields.words("title", "title: Lantern tee", required=True)
    summary = fields.prose("summary")
    if summary is None and node.get("summary") is None:
        fields.required("summary", "summary: A long-sleeved knit top.")
    wearer = fields.get("wearer")
    who = builder.choice(wearer, ("adult", "child"), "wearer: adult") if wearer is not None else None
    body = _body(fields)
    allowance = fields.get("seam_allowance")
    names: dict[str, int] = dict.fromkeys(_SECTIONS, 0)
    builder.views = _views(fields)
    found = Tutorial(
        key=home.rpartition("/")[2],
        place=node.place,
        title=title.text if title else "",
        title_place=title.place if title else node.place,
        summary=summary,
        level=fields.text("level", "level: beginner"),
        child=who is not None and who.text == "child",
        unit=builder.unit,
        sizes=builder.sizes,
        size_places=size_places,
        runs=builder.runs,
        views=builder.views,
        only_in={},
        chosen=(),
        learn=_prose_list(fields, "learn"),
        before=fields.prose("before_you_start"),
        photo=next(iter(photos(fields, folder, home)), None),
        names=fields.names(),
        untranslated=frozenset(),
        translated=builder.translated,
        video_length=fields.words("video_length", 'video_length: "42:10"'),
        body=body,
        seam_allowance=builder.amount(allowance, "seam_allowance") if allowance is not None else None,
        fabrics=_section(fields, "fabrics", pieces.fabric, "main: {name: cotton, structure: woven}", names),
        pieces=_section(fields, "pieces", pieces.piece, "front: {cut: 1 on fold, fabric: main}", names),
        bands=_section(fields, "bands", parts.band, parts.BAND_EXAMPLE, names),
        hems=_section(fields, "hems", parts.hem, parts.HEM_EXAMPLE, names),
        elastics=_section(fields, "elastics", parts.elastic, parts.ELASTIC_EXAMPLE, names),
        joined=_section(fields, "joined", parts.joined, parts.JOINED_EXAMPLE, names),
        girths=_section(fields, "girths", parts.girth, parts.GIRTH_EXAMPLE, names),
        changes=_section(fields, "changes", changes.change, changes.CHANGE_EXAMPLE, names),
        swaps=_section(fields, "swaps", parts.swap, parts.SWAP_EXAMPLE, names),
        spacings=_section(fields, "spacings", marks_and_folds.spacing, marks_and_folds.SPACING_EXAMPLE, names),
        gathers=_section(fields, "gathers", marks_and_folds.gather, marks_and_folds.GATHER_EXAMPLE, names),
        pleats=_section(fields, "pleats", marks_and_folds.pleats, marks_and_folds.PLEATS_EXAMPLE, names),
        bindings=_section(fields, "bindings", strips_and_circles.binding, strips_and_circles.BINDING_EXAMPLE, names),
        circles=_section(fields, "circles", strips_and_circles.circle, strips_and_circles.CIRCLE_EXAMPLE, names),
        boxed=_section(fields, "boxed", corners_and_drops.boxed, corners_and_drops.BOXED_EXAMPLE, names),
        drops=_section(fields, "drops", corners_and_drops.drops, corners_and_drops.DROPS_EXAMPLE, names),
        trims=_section(fields, "trims", trims.trim, trims.TRIM_EXAMPLE, names),
        supplies=_supplies(fields),
        tools=fields.words_list("tools", "tools: [scissors, pins, iron]", things=True),
        steps=tuple(
            step(number, name, folder, home, each, builder) for number, (name, each) in enumerate(cards.items(), 1)
        ),
        claims=(),
        accepted=(),
        typed=(),
        referred=(),
        unread=frozenset(),
        gaps=frozenset(),
        could_have=frozenset(),
    )
    fields.accept()
    fields.finish()
    builder.table.report_left_over(tuple(lengths.name for lengths in builder.typed), collector)
    return _with_all_typed(found, builder)


def _with_all_typed(found: Tutorial, builder: Builder) -> Tutorial:
    return replace(
        found,
        claims=tuple(builder.claims),
        accepted=tuple(builder.accepted),
        only_in=builder.only_in,
        typed=tuple(builder.typed),
        referred=tuple(builder.referred),
        untranslated=frozenset(builder.untranslated) - frozenset(builder.sizes),
        unread=frozenset(builder.unread),
        gaps=frozenset(name for name in builder.gaps | builder.unread if not _OF_A_STEP.match(name)),
        could_have=frozenset(builder.could_have),
    )


def _views(fields: Fields) -> dict[str, tuple[str, ...]]:
    """What the student may choose: names of views, each with two choices or more."""
    node = fields.get("views")
    example = "views: {neck: [neckband, hood]}"
    if node is None:
        return {}
    if not isinstance(node, Mapping):
        fields.builder.not_this(node, "names of views with their choices", example)
        return {}
    found = {}
    for entry in node.entries:
        items = entry.value.items if isinstance(entry.value, Sequence) else ()
        words = [each for item in items if (each := fields.builder.words(item, "a choice", example))]
        if len({each.text for each in words}) < 2:
            fields.builder.not_this(entry.value, "two different choices or more", example)
        else:
            found[entry.key.text] = tuple(dict.fromkeys(each.text for each in words))
    combinations = prod(len(choices) for choices in found.values())
    if combinations > MOST_COMBINATIONS:
        fields.builder.wrong(
            "too-many-views",
            node.place,
            f"These views can be combined in {combinations} ways; at most {MOST_COMBINATIONS} are worked out."
            " Split the tutorial in two.",
        )
        return {}
    return found


def _unit(fields: Fields) -> Unit:
    node = fields.required("measured_in", "measured_in: inches")
    words = fields.builder.choice(node, ("inches", "centimetres"), "measured_in: inches") if node is not None else None
    return Unit.CM if words and words.text == "centimetres" else Unit.IN


def _sizes(fields: Fields) -> tuple[tuple[str, ...], tuple[int, ...], tuple[Place, ...]]:
    """All sizes in order, where each further run begins (``sizes: {child: [92, 98], adult: [S, M]}``), and where each
    size was written."""
    node = fields.get("sizes")
    if node is None:
        return (), (), ()
    lists = [entry.value for entry in node.entries] if isinstance(node, Mapping) else [node]
    found: dict[str, Place] = {}
    starts = []
    for each in lists:
        starts.append(len(found))
        _one_run(fields, each, found)
    return tuple(found), tuple(starts[1:]), tuple(found.values())


def _one_run(fields: Fields, node: Node, found: dict[str, Place]) -> None:
    example = "sizes: [S, M, L]"
    if not isinstance(node, Sequence):
        fields.builder.not_this(node, "a list of sizes", example)
        # What was meant is plain enough to read on by; else every length by size would be reported as well.
        for name in node.text.split(",") if isinstance(node, Scalar) else ():
            found.setdefault(name.strip(), node.place)
        return
    for item in node.items:
        words = fields.builder.words(item, "the name of a size", example)
        if words is None:
            continue
        if words.text in found:
            fields.builder.wrong("key-twice", words.place, f"Size {words.text} is listed twice.", said=words.text)
        # Counted all the same; else every length by size would be reported as well.
        found[f"{words.text} ({len(found) + 1})" if words.text in found else words.text] = words.place


def _table(folder: ContentFolder, home: str, builder: Builder) -> SizeTable:
    relative = f"{home}/{SIZES_FILE}"
    if not folder.exists(relative):
        return SizeTable()
    table = folder.csv(relative, builder.collector)
    if table is None:
        builder.gaps.add(SIZES_FILE)
        return SizeTable()
    found = size_table(table, builder.sizes, builder.collector)
    builder.unread |= found.refused
    return found


def _body(fields: Fields) -> dict[str, Lengths]:
    node = fields.get("body")
    example = "body: {bust: '31, 33, 35 1/2 in'}"
    builder = fields.builder
    found: dict[str, Lengths] = {}
    inner = Fields(builder, node, "body", "body.") if isinstance(node, Mapping) else None
    if node is not None and inner is None:
        builder.not_this(node, "body measurements", example)
        builder.unread.add("body")
    names = [entry.key.text for entry in node.entries] if isinstance(node, Mapping) else []
    for name in dict.fromkeys([*names, *builder.table.names_under("body.")]):
        lengths = (inner or Fields(builder, Mapping((), fields.node.place), "body", "body.")).lengths(name)
        if lengths is not None:
            found[name] = lengths
    return found


def _section(
    fields: Fields,
    key: str,
    make: Callable[[str, Fields], P | None],
    example: str,
    names: dict[str, int],
) -> dict[str, P]:
    """The named parts of one section. A name may serve only one part of the whole tutorial."""
    found: dict[str, P] = {}
    for name, entry, inner in fields.parts(key, example):
        if name in names:
            line = names[name]
            where = f"at line {line}" if line else "as a word of its own"
            fields.builder.wrong(
                "name-twice", entry.key.place, f"The name {name} is already used {where}. Choose another.", said=name
            )
        names[name] = entry.key.place.line
        only_in = inner.only_in()
        if only_in:
            fields.builder.only_in[name] = only_in
        part = make(name, inner)
        if part is not None:
            found[name] = part
        else:
            fields.builder.unread.add(name)
    return found


def _prose_list(fields: Fields, key: str) -> tuple[Prose, ...]:
    node = fields.get(key)
    if node is None:
        return ()
    items: tuple[Node, ...] = node.items if isinstance(node, Sequence) else (node,)
    return tuple(text for item in items if (text := fields.builder.prose(item, f"{key}: [Sewing a rib neckband]")))


def _supplies(fields: Fields) -> tuple[Supply, ...]:
    node = fields.get("supplies")
    if node is None:
        return ()
    example = "supplies: [{item: ballpoint needle, size: 80/12}]"
    found: list[Supply] = []
    for item in read_as_several(node, fields.builder.collector):
        if isinstance(item, Mapping) and side_by_side(item, fields.builder.languages) is None:
            inner = Fields(fields.builder, item, "a supply")
            name = inner.words("item", example, required=True)
            found.append(
                Supply(
                    name or Words("", item.place),
                    inner.words("size", "size: 80/12"),
                    inner.words("amount", "amount: 2 spools"),
                    inner.text("for", "for: sewing the jersey"),
                    item.place,
                    inner.only_in(),
                )
            )
            inner.finish()
        elif isinstance(item, Mapping) or (isinstance(item, Scalar) and item.text.strip()):
            words = fields.builder.words(item, "a supply", example, read=True)
            found.append(Supply(words or Words("", item.place), None, None, "", item.place, {}))
        else:
            fields.builder.not_this(item, "something to have at hand", example)
    return tuple(found)


def _cards(folder: ContentFolder, home: str, builder: Builder) -> dict[str, Mapping]:
    """Every step file in the order of the numbers in their names; one that cannot be read is reported and left out."""
    found: dict[str, Mapping] = {}
    names = folder.list(f"{home}/steps", builder.collector, suffixes=_STEP_FILES)
    if not names:
        _report_misnamed(folder, home, builder)
    for name in sorted(names, key=_by_number):
        node = folder.yaml(f"{home}/steps/{name}", builder.collector)
        if node is not None:
            found[name] = node
        else:
            builder.unread.add(f"steps/{name}")
    return found


def _report_misnamed(folder: ContentFolder, home: str, builder: Builder) -> None:
    """Steps that lie in a folder of another name would be left out without a word."""
    for other in folder.folders(home, Collector()):
        if other != "steps" and folder.list(f"{home}/{other}", Collector(), suffixes=_STEP_FILES):
            builder.wrong(
                "steps-missing",
                folder.place(f"{home}/{other}"),
                f"This tutorial has no step. Steps are read from its folder steps, not from {short(other)}."
                " Example: steps/01-cut-out.yaml",
            )


def _by_number(name: str) -> tuple[tuple[str, int], ...]:
    """A key that orders file names by the numbers in them, so that 2-sew comes before 10-hem, as in 02 and 10."""
    parts = [*re.split(r"(\d+)", name), ""]
    return tuple((text, int(digits or -1)) for text, digits in zip(parts[::2], parts[1::2], strict=True))
