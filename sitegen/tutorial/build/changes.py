"""Builds changes of length and width: at one line, at several, over one piece or more."""

from __future__ import annotations

import re
from fractions import Fraction

from sitegen.quantities import NotUnderstood, parse_ratio
from sitegen.reading import Mapping, Node, Scalar, Sequence
from sitegen.tutorial.build.builder import capital
from sitegen.tutorial.build.fields import Fields
from sitegen.tutorial.build.named import inner, names
from sitegen.tutorial.model import Change, ChangeLine, Lengths, LineAt, Reference, Share

CHANGE_EXAMPLE = "longer_sleeve: {piece: sleeve, line_at: 2/3 from the top, wanted: 25 in finished}"
LINES_EXAMPLE = (
    "lines: [{line_at: 8 in from the top, lengthen_by: 1/2 in}, {line_at: 2/3 from the top, lengthen_by: 1 in}]"
)
_AMOUNTS = ("lengthen_by", "shorten_by", "widen_by")
_NEW_LENGTHS = ("new_cut_length", "new_finished_length")
_AT_A_LINE = ("part_above", "part_below", "taper_step")
_CLAIMS = ("each_edge", "new_cut_width", *_AT_A_LINE, *_NEW_LENGTHS)


def change(key: str, fields: Fields) -> Change | None:
    """A lengthening, shortening or widening; None when its pieces or its amount is missing (reported)."""
    builder = fields.builder
    pieces = names(fields, "piece", "piece: sleeve") + names(fields, "pieces", "pieces: [front, back]")
    if not pieces:
        builder.wrong("key-missing", fields.node.place, f"Change {key} lacks piece. Example: piece: sleeve")
    line_at = _line_at(fields, f"{key}.line_at")
    wanted, finished = _wanted(key, fields)
    amounts = _amounts(fields, _AMOUNTS)
    given = [word for word in _AMOUNTS if amounts[word]]
    edges_node = fields.get("seam_edges")
    seam_edges = builder.whole_number(edges_node, "seam_edges: 4", most=40) if edges_node is not None else None
    crosses = names(fields, "crosses", "crosses: [side]")
    several = fields.node.get("lines") is not None
    lines = _lines(key, fields, crosses)
    own = _own_amounts(fields)
    if wanted is not None or own:
        fields.claims("change", ("amount",))
    _one_amount(key, fields, (wanted is not None) + len(given), own=own, several=several)
    if several and (line_at is not None or amounts["widen_by"]):
        other = "line_at" if line_at is not None else "widen_by"
        builder.wrong("given-twice", fields.node.place, f"Change {key} has lines and {other}. Keep one of them.")
    fields.claims("change", _NEW_LENGTHS if several else _CLAIMS)
    _claims_of_each(key, fields, pieces, len(lines), several=several)
    fields.finish()
    amount = next((amounts[word] for word in given), None)
    if not pieces or (wanted is None and amount is None and not own) or (several and not lines):
        return None
    return Change(
        key,
        fields.node.place,
        pieces,
        None if several else line_at,
        wanted,
        finished,
        amount,
        amounts["shorten_by"] is not None,
        tuple(dict.fromkeys((*crosses, *(edge for line in lines for edge in line.crosses)))),
        (seam_edges or 2 * len(pieces)) if amounts["widen_by"] is not None and not several else 0,
        lines,
    )


def _amounts(fields: Fields, words: tuple[str, ...]) -> dict[str, Lengths | None]:
    """What is written behind each of these keys; a row ``longer.amount`` of the size table is a claim."""
    nodes = {word: fields.get(word) for word in words}
    name = f"{fields.prefix}amount"
    return {word: fields.lengths_of(node, name) if node is not None else None for word, node in nodes.items()}


def _one_amount(key: str, fields: Fields, given: int, *, own: bool, several: bool) -> None:
    """Report a change that does not say by how much, or says it twice."""
    written = [name for name in ("wanted", *_AMOUNTS) if fields.get(name) is not None]
    if given + own == 1 or (given + own == 0 and written):  # what is written and cannot be read is told already
        return
    words = f"Change {key} needs one of wanted, lengthen_by, shorten_by or widen_by. Example: wanted: 25 in finished"
    if given > 1:
        words = f"Change {key} says more than once by how much: {' and '.join(written)}. Keep one of them."
    if several and own:
        words = (
            f"Change {key} has amounts at its lines and one for all of them. Keep the one or the others; the sum of the"
            " lines may be written as amount."
        )
    elif several:
        words = f"Change {key} needs an amount at each of its lines, or one to share. Example: {LINES_EXAMPLE}"
    fields.builder.wrong("given-twice" if given + own else "key-missing", fields.node.place, words)


def _lines(key: str, fields: Fields, crosses: tuple[Reference, ...]) -> tuple[ChangeLine, ...]:
    """The lines of a change from the top down; none when any of them cannot be known (reported)."""
    node = fields.get("lines")
    if node is None:
        return ()
    if not isinstance(node, Sequence) or not node.items:
        fields.builder.not_this(node, "a list of lines", LINES_EXAMPLE)
        return ()
    found = [_line(key, number, item, fields, crosses) for number, item in enumerate(node.items, 1)]
    lines = tuple(line for line in found if line is not None)
    if len(lines) < len(found):
        return ()
    _all_or_none(node, fields, lines)
    return lines


def _own_amounts(fields: Fields) -> bool:
    """Whether any line says by how much the piece is changed there, understood or not."""
    entry = fields.node.get("lines")
    items = entry.value.items if entry is not None and isinstance(entry.value, Sequence) else ()
    return any(isinstance(item, Mapping) and {"lengthen_by", "shorten_by"} & set(item.keys) for item in items)


def _line(key: str, number: int, node: Node, fields: Fields, crosses: tuple[Reference, ...]) -> ChangeLine | None:
    if not isinstance(node, Mapping):
        fields.builder.not_this(node, "the keys of a line", LINES_EXAMPLE)
        return None
    own = Fields(fields.builder, node, f"line {number} of change {key}", f"{key}.line_{number}.")
    own.required("line_at", "line_at: 8 in from the top")
    at = _line_at(own, f"{own.prefix}line_at")
    amounts = _amounts(own, _AMOUNTS[:2])
    given = [word for word in amounts if amounts[word]]
    share_node = own.get("share")
    share = fields.builder.share(share_node, "share: 1/2") if share_node is not None else None
    if len(given) + (share is not None) > 1:
        fields.builder.wrong(
            "given-twice", node.place, f"{capital(own.what)} needs one of lengthen_by, shorten_by or share at most."
        )
    named = names(own, "crosses", "crosses: [side]")
    folds = ("fold",) if amounts["shorten_by"] or fields.node.get("shorten_by") is not None else ()
    own.claims("change", (*(() if given else ("amount",)), *folds, *_AT_A_LINE, *_distances(number)))
    own.finish()
    if at is None:
        return None
    amount = amounts[given[0]] if given else None
    return ChangeLine(at, node.place, amount, amounts["shorten_by"] is not None, share, named or crosses)


def _distances(number: int) -> tuple[str, ...]:
    """How far a line lies below the one before it."""
    return (f"from_line_{number - 1}",) if number > 1 else ()


def _all_or_none(node: Node, fields: Fields, lines: tuple[ChangeLine, ...]) -> None:
    """Report lines of which only some have an amount or a share, and shares that do not make one whole."""
    for what, example, has in (
        ("lengthen_by or shorten_by", "lengthen_by: 1 in", [line.amount is not None for line in lines]),
        ("share", "share: 1/2", [line.share is not None for line in lines]),
    ):
        lacking = [number for number, given in enumerate(has, 1) if not given]
        if lacking and len(lacking) < len(lines):
            number = lacking[0]
            fields.builder.wrong(
                "key-missing",
                lines[number - 1].place,
                f"{capital(fields.what)} has {what} at other lines, and none at line {number}. Example: {example}",
            )
    shares = [line.share for line in lines if line.share is not None]
    total = sum((share.ratio.value for share in shares), start=Fraction(0))
    if len(shares) == len(lines) and total != 1:
        fields.builder.wrong(
            "line-shares",
            node.place,
            f"The shares of the lines of {fields.what} make {' + '.join(share.text for share in shares)}, which is not"
            f" the whole amount. Leave them out to share it equally.",
        )


def _claims_of_each(key: str, fields: Fields, pieces: tuple[Reference, ...], lines: int, *, several: bool) -> None:
    """Numbers of one of several pieces that the author wrote: ``each: {front: {part_above: 15 in}}``."""
    example = "each: {front: {part_above: 15 in}, back: {part_above: 16 in}}"
    own = inner(fields, "each", example)
    if own is None:
        return
    for name in dict.fromkeys(piece.name for piece in pieces):
        of_piece = _part(own, name, f"the {name} in {fields.what}", f"{key}.{name}.", example)
        if of_piece is None:
            continue
        of_piece.claims("change", _NEW_LENGTHS if several else tuple(name for name in _CLAIMS if name != "each_edge"))
        for number in range(1, lines + 1):
            prefix = f"{of_piece.prefix}line_{number}."
            of_line = _part(of_piece, f"line_{number}", f"line {number} of {of_piece.what}", prefix, example)
            if of_line is not None:
                of_line.claims("change", (*_AT_A_LINE, *_distances(number)))
                of_line.finish()
        of_piece.finish()
    own.finish()


def _part(fields: Fields, key: str, what: str, prefix: str, example: str) -> Fields | None:
    node = fields.get(key)
    if node is None:
        return None
    if not isinstance(node, Mapping):
        fields.builder.not_this(node, "keys with values", example)
        return None
    return Fields(fields.builder, node, what, prefix)


def _wanted(key: str, fields: Fields) -> tuple[Lengths | None, bool]:
    """The length to reach, and whether it is meant finished (else cut)."""
    node = fields.get("wanted")
    if node is None:
        return None, True
    example = "wanted: 25 in finished"
    if not isinstance(node, Scalar):
        return fields.builder.lengths(node, f"{key}.wanted"), True
    match = re.search(r"\s+(finished|cut)\s*$", node.text)
    if match is None:
        fields.builder.not_this(node, "a length and the word finished or cut", example)
        return None, True
    length = node.part(0, match.start())
    return fields.builder.lengths(length, f"{key}.wanted"), match.group(1) == "finished"


def _line_at(fields: Fields, name: str) -> LineAt | None:
    node = fields.get("line_at")
    if node is None:
        return None
    example = "line_at: 2/3 from the top, or 5 in from the bottom"
    pattern = r"\s*(.+?)\s+from\s+(?:the\s+)?(top|bottom)\s*"
    match = re.fullmatch(pattern, node.text) if isinstance(node, Scalar) else None
    if not isinstance(node, Scalar) or match is None:
        fields.builder.not_this(node, "a share or a length from the top or the bottom", example)
        return None
    text, from_top = match.group(1), match.group(2) == "top"
    try:
        ratio = parse_ratio(text)
    except NotUnderstood:
        lengths = fields.builder.lengths(node.part(match.start(1), match.end(1)), name)
        return LineAt(None, lengths, from_top, node.place) if lengths else None
    if not 0 < ratio.value < 1:
        fields.builder.not_this(node, "a share between 0 and 1", example)
        return None
    return LineAt(Share(ratio, text, node.at(match.start(1), match.end(1))), None, from_top, node.place)
