"""Builds step cards."""

from __future__ import annotations

from sitegen.reading import ContentFolder, Mapping, Node, Scalar, Sequence
from sitegen.tutorial.build.builder import Builder
from sitegen.tutorial.build.fields import Fields
from sitegen.tutorial.build.photos import photos
from sitegen.tutorial.model import Join, OtherWay, Reference, Step, Words

JOIN_EXAMPLE = "join: [{edges: [front.side, back.side], stitch: zigzag}]"
OTHER_WAY_EXAMPLE = "other_way: {when: If you have an overlock machine., text: Sew the side with it.}"


def step(number: int, file: str, folder: ContentFolder, home: str, node: Mapping, builder: Builder) -> Step:
    """One card from its file; ``home`` is the tutorial's folder."""
    fields = Fields(builder, node, f"step {number}", f"step{number}.")
    text_node = fields.required("text", "text: |\n  Pin the band to the neckline.")
    minutes = fields.get("minutes")
    _confirmed(fields)
    found = Step(
        number=number,
        file=file,
        place=node.place,
        title=fields.text("title", "title: Sew on the neckband", required=True),
        minutes=builder.whole_number(minutes, "minutes: 30", most=10_000) if minutes is not None else None,
        minutes_place=minutes.place if minutes is not None else node.place,
        text=builder.prose(text_node) if text_node is not None else None,
        needs=fields.words_list("needs", "needs: [pins, the cut band]"),
        tools=fields.words_list("tools", "tools: [pins, sewing machine]", things=True),
        cuts=_references(fields, "cut", "cut: [front, back, neckband]"),
        stabilises=_references(fields, "stabilise", "stabilise: [front.shoulder]"),
        joins=tuple(_joins(fields)),
        hems=_references(fields, "hem", "hem: [lower]"),
        finishes=_chains(fields, "finish", "finish: [front.side, back.side]"),
        inserts=_references(fields, "insert", "insert: [waist_elastic]"),
        darts=_references(fields, "darts", "darts: [front.bust]"),
        boxes=_references(fields, "box", "box: [corners]"),
        other_way=_other_way(fields),
        diagrams=_references(fields, "diagrams", "diagrams: [neckband]"),
        look_for=fields.prose("look_for"),
        if_wrong=fields.prose("if_wrong"),
        cautions=fields.words_list("cautions", "cautions: [pins, iron]", named=True),
        photos=tuple(photos(fields, folder, home)),
        video=fields.words("video", 'video: "14:20"'),
        teacher=fields.prose("teacher"),
        only_in=fields.only_in(),
    )
    fields.accept()
    fields.finish()
    return found


def _confirmed(fields: Fields) -> None:
    """Report a step that was drafted by the program and that nobody has read against the video yet."""
    node = fields.get("confirmed")
    if node is not None and fields.builder.yes_or_no(node, "confirmed: yes") is False:
        fields.builder.wrong(
            "step-unconfirmed",
            node.place,
            "This step was drafted from a video and is not confirmed yet. Read its words and numbers against the video,"
            " put right what is wrong, then take this line out.",
            said=node.text if isinstance(node, Scalar) else "",
        )


def _other_way(fields: Fields) -> OtherWay | None:
    """A second way of the step: what it does, when it suits, and what is sewn in it."""
    node = fields.get("other_way")
    if node is None:
        return None
    if not isinstance(node, Mapping):
        fields.builder.not_this(node, "keys with values", OTHER_WAY_EXAMPLE)
        return None
    inner = Fields(fields.builder, node, f"other_way of {fields.what}", f"{fields.prefix}other_way.")
    texts = {key: inner.required(key, OTHER_WAY_EXAMPLE) for key in ("text", "when")}
    text, when = (inner.builder.prose(each) if each is not None else None for each in texts.values())
    found = OtherWay(
        place=node.place,
        text=text,
        when=when,
        joins=tuple(_joins(inner)),
        hems=_references(inner, "hem", "hem: [lower]"),
        finishes=_chains(inner, "finish", "finish: [front.side, back.side]"),
    )
    inner.finish()
    return found


def _references(fields: Fields, key: str, example: str) -> tuple[Reference, ...]:
    node = fields.get(key)
    return fields.builder.references(node, example) if node is not None else ()


def _chains(fields: Fields, key: str, example: str) -> tuple[tuple[Reference, ...], ...]:
    node = fields.get(key)
    return _chain_list(fields.builder, node, example) if node is not None else ()


def _chain_list(builder: Builder, node: Node, example: str) -> tuple[tuple[Reference, ...], ...]:
    found = []
    for item in builder.entries(node):
        if isinstance(item, Scalar) and item.text.strip():
            found.append(builder.chain(item))
        elif isinstance(item, Sequence) and all(isinstance(each, Scalar) for each in item.items):
            edges = [each for each in item.items if isinstance(each, Scalar)]
            names = " + ".join(each.text for each in edges)
            message = f"Expected an edge, found a list. Edges that lie end to end have a + between them: {names}"
            builder.wrong("wrong-kind", item.place, message)
            found.append(tuple(name for each in edges for name in builder.chain(each)))
        else:
            builder.not_this(item, "an edge", example)
    return tuple(found)


def _joins(fields: Fields) -> list[Join]:
    found = []
    for node in fields.mappings("join", JOIN_EXAMPLE):
        inner = Fields(fields.builder, node, f"join of {fields.what}", f"{fields.prefix}join.")
        found.append(_join(inner))
    return found


_YES_OR_NO = frozenset({"yes", "no", "true", "false", "on", "off"})


def _enclosed(node: Node, builder: Builder) -> Words | None:
    """In what the raw edges are hidden, as it is shown to the student: a yes would tell her nothing."""
    example = "enclosed: inside the lining"
    if isinstance(node, Scalar) and node.text.strip().lower() in _YES_OR_NO:
        builder.not_this(node, "in what the raw edges are hidden, or no such key where they are not", example)
        return None
    return builder.words(node, "in what the raw edges are hidden", example)


def _join(fields: Fields) -> Join:
    builder = fields.builder
    edges = fields.required("edges", JOIN_EXAMPLE)
    chains = _chain_list(builder, edges, JOIN_EXAMPLE) if edges is not None else ()
    if edges is not None and len(chains) < 2:
        builder.not_this(edges, "two edges or more", JOIN_EXAMPLE)
    length, width, per_inch = (fields.get(key) for key in ("stitch_length", "stitch_width", "stitches_per_inch"))
    stabilised, stretched = fields.get("stabilised"), fields.get("stretched")
    enclosed = fields.get("enclosed")
    found = Join(
        place=fields.node.place,
        chains=chains,
        stitch=fields.stitch("stitch: zigzag"),
        stitch_length=builder.words(length, "a number", "stitch_length: 2.5") if length is not None else None,
        stitch_length_mm=builder.plain_number(length, "stitch_length: 2.5") if length is not None else None,
        stitch_width_mm=builder.plain_number(width, "stitch_width: 2") if width is not None else None,
        stitches_per_inch=(
            builder.words(per_inch, "a number", "stitches_per_inch: 10") if per_inch is not None else None
        ),
        seam_allowance=fields.lengths("seam_allowance"),
        press=fields.text("press", "press: to the back"),
        stabilised=builder.words(stabilised, "with what", "stabilised: clear elastic") is not None
        if stabilised is not None
        else False,
        stretched=bool(builder.yes_or_no(stretched, "stretched: true")) if stretched is not None else False,
        ease=fields.lengths("ease"),
        enclosed=_enclosed(enclosed, builder) if enclosed is not None else None,
    )
    fields.finish()
    return found
