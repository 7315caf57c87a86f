"""What a page tells in words, without markup: for the search, for the record of a release and for other programs."""

from __future__ import annotations

from collections.abc import Iterator
from hashlib import blake2b

from sitegen.publishing.plain_text import plain_text
from sitegen.publishing.views import Fabric, StepCard, Stitching, TutorialView


def words_of_card(card: StepCard) -> str:
    """What a card tells, from its prose to its stitches, in one text."""
    other = card.other_way
    parts = [card.prose, card.look_for, card.if_wrong]
    if other is not None:
        parts += [other.when, other.prose]
    seams = (*card.stitching, *(other.stitching if other is not None else ()))
    return " ".join(filter(None, [*(plain_text(part) for part in parts), *(_seam(seam) for seam in seams)]))


def mark_of(page: TutorialView) -> str:
    """A digest of all that the page tells: its words and its numbers, but not how it looks."""
    digest = blake2b(digest_size=12)
    for text in _texts(page):
        digest.update(text.encode("utf-8", "surrogatepass") + b"\0")
    return digest.hexdigest()


def _texts(page: TutorialView) -> Iterator[str]:
    yield from (page.title, page.level, page.wearer, plain_text(page.summary), plain_text(page.before))
    yield from (plain_text(line) for line in page.learn)
    yield from page.sizes
    for fabric in page.fabrics:
        yield from _fabric(fabric)
    for supply in page.supplies:
        measures = (each.text(page.site.units_first) for each in (supply.size, supply.amount) if each)
        yield from (supply.item, *measures, supply.purpose)
    yield from page.tools
    for piece in page.cutting:
        yield from (piece.piece, piece.how_many, piece.fabric)
    for change in page.changes:
        yield from (change.title, plain_text(change.text))
    for card in page.cards:
        yield from (card.title, str(card.minutes), words_of_card(card), *card.needs, *card.tools)
        yield from (f"{each.name}: {each.text}" for each in card.cautions)
        for picture in card.pictures:
            yield from (picture.alt, *(plain_text(mark.text) for mark in picture.marks))
        yield card.video.time if card.video is not None else ""
    for number in page.numbers:
        yield number.name
        for value in number.values:
            yield from (value.inches, value.metric)


def _fabric(fabric: Fabric) -> Iterator[str]:
    yield from (fabric.name, fabric.structure, fabric.stretch, fabric.weight, fabric.shrinkage)
    yield plain_text(fabric.advice)
    if fabric.width is not None:
        yield from (fabric.width.inches, fabric.width.metric)


def _seam(seam: Stitching) -> str:
    said = (seam.what, seam.stitch, seam.stitch_width, seam.stitch_length, seam.press, *seam.notes)
    return ", ".join(part for part in said if part)
