"""Builds the photos of a card or of the whole, and the marks on them."""

from __future__ import annotations

import re
from fractions import Fraction

from sitegen.findings import nearest
from sitegen.reading import ContentFolder, Mapping, Node, Scalar, Sequence
from sitegen.tutorial.build.builder import short
from sitegen.tutorial.build.fields import Fields
from sitegen.tutorial.model import ArrowMark, CircleMark, Mark, NumberMark, Photo, Prose, Spot

PHOTO_EXAMPLE = "photo: {file: band-pinned.jpg, shows: The band pinned at its quarter marks}"
_EXAMPLES = {
    "arrow": "{arrow: notch, from: [20%, 30%], to: [45%, 50%]}",
    "circle": "{circle: overlap, at: [60%, 40%], across: 12%}",
    "number": "{number: 1, at: [30%, 70%], text: The shoulder seam}",
}
_MARKS_EXAMPLE = f"marks: [{_EXAMPLES['arrow']}]"
_PERCENT = re.compile(r"([-+]?\d{1,6}(?:\.\d{1,4})?)\s*%")


def photos(fields: Fields, folder: ContentFolder, home: str) -> list[Photo]:
    """The pictures under the key ``photo``: one, or a list."""
    found = []
    for node in fields.mappings("photo", PHOTO_EXAMPLE):
        inner = Fields(fields.builder, node, f"photo of {fields.what}")
        file_node = inner.required("file", PHOTO_EXAMPLE)
        name = inner.text("file", PHOTO_EXAMPLE)
        shows = inner.text("shows", PHOTO_EXAMPLE) if inner.node.get("shows") else ""
        inner.get("shows")
        marks = tuple(_marks(inner))
        inner.finish()
        if file_node is None or not name:
            continue
        path = f"{home}/photos/{name}"
        exists = folder.file(path) is not None
        found.append(Photo(name, shows, file_node.place, exists, marks, "" if exists else folder.no_file(path)))
    return found


def _marks(photo: Fields) -> list[Mark]:
    """The marks on a photo. One of which anything is not understood is left out, and reported."""
    makers = {"arrow": _arrow, "circle": _circle, "number": _number}
    found = []
    for node in photo.mappings("marks", _MARKS_EXAMPLE):
        kinds = [entry.key for entry in node.entries if entry.key.text in makers]
        if len(kinds) != 1:
            _unclear_kind(photo, node, kinds)
            continue
        kind = kinds[0].text
        fields = Fields(photo.builder, node, f"the {kind} on a photo")
        mark = makers[kind](fields, _EXAMPLES[kind])
        fields.finish()
        if mark is not None:
            found.append(mark)
    return found


def _unclear_kind(photo: Fields, node: Mapping, kinds: list[Scalar]) -> None:
    """Report a mark that is none of the known kinds, or several at once."""
    said = kinds[1] if kinds else next((entry.key for entry in node.entries), None)
    near = nearest(said.text, _EXAMPLES, most=1) if said is not None and not kinds else ()
    what = "two of them in one" if kinds else f"“{short(said.text)}”" if said is not None else "nothing"
    photo.builder.wrong(
        "mark-kind",
        said.place if said is not None else node.place,
        f"A mark is an arrow, a circle or a number; found {what}. Examples: {', '.join(_EXAMPLES.values())}",
        said=said.text if said is not None else "",
        should_be=near[0] if near else "",
    )


def _arrow(fields: Fields, example: str) -> ArrowMark | None:
    text = _text_in_picture(fields, "arrow", example)
    tail, tip = (_spot(fields, key, example) for key in ("from", "to"))
    if text is None or tail is None or tip is None:
        return None
    return ArrowMark(fields.node.place, text, tail, tip)


def _circle(fields: Fields, example: str) -> CircleMark | None:
    text = _text_in_picture(fields, "circle", example)
    centre = _spot(fields, "at", example)
    node = fields.required("across", example)
    across = _percent(fields, node, "across", example) if node is not None else None
    if text is None or centre is None or across is None:
        return None
    return CircleMark(fields.node.place, text, centre, across)


def _number(fields: Fields, example: str) -> NumberMark | None:
    node = fields.get("number")
    number = fields.builder.whole_number(node, example, most=99) if node is not None else None
    spot = _spot(fields, "at", example)
    told = fields.required("text", example)
    text = fields.builder.prose(told, example) if told is not None else None
    if number is None or spot is None or text is None:
        return None
    return NumberMark(fields.node.place, text, number, spot)


def _text_in_picture(fields: Fields, key: str, example: str) -> Prose | None:
    """Words that stand in the picture itself, which is one file for every size and unit."""
    node = fields.get(key)
    text = fields.builder.prose(node, example) if node is not None else None
    if text is not None and text.references:
        fields.builder.wrong(
            "mark-reference",
            text.references[0].place,
            f"A text in a picture cannot follow the size and the unit. Use a number, whose text stands below the"
            f" picture. Example: {{number: 1, at: [30%, 70%], text: The band, {{{text.references[0].name}}} long}}",
            said=text.references[0].name,
        )
        return None
    return text


def _spot(fields: Fields, key: str, example: str) -> Spot | None:
    node = fields.required(key, example)
    if node is None:
        return None
    if not isinstance(node, Sequence) or len(node.items) != 2:
        fields.builder.not_this(node, "how far across and how far down, both in percent", example)
        return None
    across, down = (_percent(fields, item, key, example) for item in node.items)
    return Spot(across, down) if across is not None and down is not None else None


def _percent(fields: Fields, node: Node, key: str, example: str) -> Fraction | None:
    """A share of the picture's width or height, from 0 to 100."""
    match = _PERCENT.fullmatch(node.text.strip()) if isinstance(node, Scalar) else None
    if match is None:
        fields.builder.not_this(node, f"a percentage of the picture in {key}", example)
        return None
    value = Fraction(match[1])
    if 0 <= value <= 100:
        return value
    fields.builder.wrong(
        "mark-outside",
        node.place,
        f"Expected a place in the picture, from 0% to 100%, found {match[0]} in {key}. Example: {example}",
        said=match[0],
    )
    return None
