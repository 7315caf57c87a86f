"""Which card of a print is which card of another: by what the record of each holds, not by where it stands."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from sitegen.handouts.printed import PrintedCard

Cards = Mapping[int, PrintedCard]


def same_cards(old: Cards, new: Cards) -> dict[int, int]:
    """By the number of a card in the old print its number in the new one; a card that is gone has none.

    Cards are the same that have the same title, else those of the same step file, whatever number its name begins
    with. Of several with one title, those of one file belong together, then the first to the first.
    """
    found: dict[int, int] = {}
    _pair(found, old, new, lambda card: (card.title, card.step))
    _pair(found, old, new, lambda card: card.title)
    _pair(found, old, new, lambda card: card.step or None)
    _pair(found, old, new, lambda card: card.title, alone=False)
    return found


def _pair(
    found: dict[int, int], old: Cards, new: Cards, name: Callable[[PrintedCard], object], *, alone: bool = True
) -> None:
    """Pair the cards that have no partner yet and the same name, one that no other has, unless it need not be alone."""
    free_old, free_new = _by_name(old, set(found), name), _by_name(new, set(found.values()), name)
    for key, before in free_old.items():
        after = free_new.get(key, [])
        if key is not None and (not alone or len(before) == len(after) == 1):
            found.update(zip(before, after, strict=False))


def _by_name(cards: Cards, taken: set[int], name: Callable[[PrintedCard], object]) -> dict[object, list[int]]:
    found: dict[object, list[int]] = {}
    for number, card in cards.items():
        if number not in taken:
            found.setdefault(name(card), []).append(number)
    return found
