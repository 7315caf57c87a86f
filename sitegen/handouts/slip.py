"""A slip that corrects a printed handout: what moved since, in the sizes of the print."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from sitegen.handouts.model import Handout
from sitegen.handouts.printed import Printed
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
    """Cards of which the author has changed the words, added or taken away."""
    mark: str
    words: dict[str, str]
    paper: str

    @property
    def empty(self) -> bool:
        """Whether nothing moved."""
        return not self.corrections and not self.reworded


def slip_of(old: Printed, new: Printed, handout: Handout, numbers: PrintedNumbers, words: SheetWords) -> Slip:
    """What moved between a print and the handout as it would be printed now."""
    path = "handout"
    changes = compare_records(Record(old.day, {path: old.page}), Record(new.day, {path: new.page}))
    cards = _cards_of(handout)
    return Slip(
        language=handout.language,
        title=handout.title,
        class_title=handout.class_title,
        about=words("slip_about", day=numbers.language.say(day_in_words(old.day)), mark=old.mark),
        corrections=tuple(_correction(each, cards, numbers, words) for page in changes for each in page.numbers),
        reworded=tuple(_reworded(old, new, words)),
        mark=new.mark,
        words=words.all(),
        paper=handout.wanted.paper.value,
    )


def _cards_of(handout: Handout) -> Mapping[str, list[int]]:
    found: dict[str, list[int]] = {}
    for card in handout.cards:
        for name in card.uses:
            found.setdefault(name, []).append(card.number)
    return found


def _correction(
    change: NumberChange, cards: Mapping[str, list[int]], numbers: PrintedNumbers, words: SheetWords
) -> Correction:
    def shown(value: Both | None) -> str:
        return numbers.both(value) if value is not None else ""

    on = cards.get(change.name, [])
    return Correction(
        what=change.words
        + {Status.NEW: f" ({words('new')})", Status.GONE: f" ({words('gone')})"}.get(change.status, ""),
        cards=", ".join(map(str, on)) if on else words("in_tables"),
        sizes=tuple((each.size, shown(each.before), shown(each.after)) for each in change.sizes),
    )


def _reworded(old: Printed, new: Printed, words: SheetWords) -> Iterator[str]:
    for number in sorted({*old.cards, *new.cards}):
        before, after = old.cards.get(number), new.cards.get(number)
        if before is None and after is not None:
            yield f"{number} {after.title} ({words('new')})"
        elif after is None and before is not None:
            yield f"{number} {before.title} ({words('gone')})"
        elif before is not None and after is not None and before.digest != after.digest:
            yield f"{number} {after.title}"
