"""A slip that corrects a printed handout: what moved since, in the sizes of the print."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from sitegen.handouts.model import Handout
from sitegen.handouts.printed import Printed, PrintedCard
from sitegen.handouts.same_cards import same_cards
from sitegen.handouts.words import SheetWords
from sitegen.publishing import (
    Both,
    NumberChange,
    PrintedNumbers,
    Record,
    Status,
    compare_records,
    day_in_words,
)


@dataclass(frozen=True, slots=True)
class Correction:
    """A number that moved: what it is, on which cards it stands, and for each size what it was and is."""

    what: str
    cards: str
    sizes: tuple[tuple[str, str, str], ...]
    """Size, empty when it holds for every one; what was printed; what it is now. Empty where it had or has none."""


@dataclass(frozen=True, slots=True)
class Slip:
    """What a slip says."""

    language: str
    title: str
    class_title: str
    about: str
    """Which handout it corrects."""
    corrections: tuple[Correction, ...]
    reworded: tuple[str, ...]
    """Cards of which the author has changed the words, and those that are new."""
    gone: tuple[str, ...]
    """Cards that are no more."""
    mark: str
    words: dict[str, str]
    paper: str

    @property
    def empty(self) -> bool:
        """Whether nothing moved."""
        return not self.corrections and not self.reworded and not self.gone


def slip_of(old: Printed, new: Printed, handout: Handout, numbers: PrintedNumbers, words: SheetWords) -> Slip:
    """What moved between a print and the handout as it would be printed now."""
    path = "handout"
    changes = compare_records(Record(old.day, {path: old.page}), Record(new.day, {path: new.page}))
    cards = _Cards(old.cards, new.cards, words)
    known = [each for page in changes for each in page.numbers if cards.known or each.status is not Status.NEW]
    numbers_moved = [each for each in known if not _told_by_the_whole(each, known, cards)]
    return Slip(
        language=handout.language,
        title=handout.title,
        class_title=handout.class_title,
        about=words("slip_about", day=numbers.language.say(day_in_words(old.day)), mark=old.mark),
        corrections=tuple(_correction(each, cards, numbers, words) for each in numbers_moved),
        reworded=tuple(cards.reworded()),
        gone=tuple(cards.gone()),
        mark=new.mark,
        words=words.all(),
        paper=handout.wanted.paper.value,
    )


def _told_by_the_whole(change: NumberChange, all_changes: Sequence[NumberChange], cards: _Cards) -> bool:
    """Whether the allowance of an edge or a piece moved as that of the garment did, which stands on the same cards."""
    if not change.name.endswith(".seam_allowance"):
        return False
    whole = next((each for each in all_changes if each.name == "seam_allowance"), None)
    if whole is None or whole.sizes != change.sizes:
        return False
    return set(cards.told_with(change.name)) <= set(cards.told_with(whole.name))


class _Cards:
    """The cards of a print and those of today, each told by the number on the paper that students hold."""

    def __init__(self, old: Mapping[int, PrintedCard], new: Mapping[int, PrintedCard], words: SheetWords) -> None:
        self._old, self._new, self.words = old, new, words
        self._now = same_cards(old, new)
        self._was = {after: before for before, after in self._now.items()}
        self.known = all(card.uses is not None for card in old.values())
        """Whether the print says which numbers it holds: if not, one that seems new may only not have been noted."""

    def with_number(self, name: str) -> str:
        """The cards on which a number stood or stands: ``4 (now 5), 7``; that it stands in tables if on none."""
        return ", ".join(self.told_with(name)) or self.words("in_tables")

    def told_with(self, name: str) -> list[str]:
        """Each of the cards on which a number stood or stands, as it is told."""
        found = [each for each, card in self._old.items() if name in self._uses_of(each, card)]
        found += [
            self._was[each]
            for each, card in self._new.items()
            if each in self._was and self._was[each] not in found and name in (card.uses or ())
        ]
        told = [self._told(each, title=False) for each in sorted(found)]
        new = (each for each, card in self._new.items() if each not in self._was and name in (card.uses or ()))
        told += (f"{each} ({self.words('new')})" for each in new)
        return told

    def reworded(self) -> Iterator[str]:
        """Those to print again, in the order of today."""
        for number, card in self._new.items():
            before = self._was.get(number)
            if before is None:
                yield f"{number} {card.title} ({self.words('new')})"
            elif self._old[before].digest != card.digest:
                yield self._told(before, title=True)

    def gone(self) -> Iterator[str]:
        """Those that are no more."""
        yield from (f"{number} {card.title}" for number, card in self._old.items() if number not in self._now)

    def _uses_of(self, number: int, card: PrintedCard) -> tuple[str, ...]:
        if card.uses is not None:
            return card.uses
        now = self._now.get(number)
        return (self._new[now].uses or ()) if now is not None else ()

    def _told(self, number: int, *, title: bool) -> str:
        """A card of the print by its number there, and what it is called now where that differs."""
        now, card = self._now.get(number), self._old[number]
        told = f"{number} {card.title}" if title else str(number)
        if now is None:
            return f"{told} ({self.words('gone')})"
        other = [str(now)] if now != number else []
        if title and self._new[now].title != card.title:
            other.append(self._new[now].title)
        return f"{told} ({self.words('now', card=' '.join(other))})" if other else told


def _correction(change: NumberChange, cards: _Cards, numbers: PrintedNumbers, words: SheetWords) -> Correction:
    def shown(value: Both | None) -> str:
        return numbers.both(value) if value is not None else ""

    return Correction(
        what=change.words
        + {Status.NEW: f" ({words('new')})", Status.GONE: f" ({words('gone')})"}.get(change.status, ""),
        cards=cards.with_number(change.name),
        sizes=tuple((each.size, shown(each.before), shown(each.after)) for each in change.sizes),
    )
