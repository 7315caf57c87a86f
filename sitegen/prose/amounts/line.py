"""A paragraph as a line of items, most of which are words and signs that are only passed over."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from typing import overload

from sitegen.prose.amounts.amount import Item


@dataclass(frozen=True, slots=True)
class Line(Sequence[Item]):
    """The items of a paragraph in order.

    Of plain words and signs only the symbol and the token are kept, and an item is made of one where it is asked for;
    ``kept`` has all others by their places, in order.
    """

    symbols: list[str] = field(default_factory=list)
    firsts: list[int] = field(default_factory=list)
    kept: dict[int, Item] = field(default_factory=dict)

    @classmethod
    def of(cls, items: Iterable[Item]) -> Line:
        """The line that consists of these items."""
        line = cls()
        for item in items:
            line.add(item)
        return line

    def add(self, item: Item) -> None:
        """Puts an item at the end."""
        self.kept[len(self.firsts)] = item
        self.symbols.append(item.symbol)
        self.firsts.append(item.first)

    def add_words(self, symbols: Sequence[str], first: int) -> None:
        """Puts plain words and signs at the end, that stand side by side from token ``first`` on."""
        self.symbols.extend(symbols)
        self.firsts.extend(range(first, first + len(symbols)))

    @property
    def last(self) -> str:
        """The symbol of the last item; empty where there is none."""
        return self.symbols[-1] if self.symbols else ""

    def __len__(self) -> int:
        return len(self.firsts)

    @overload
    def __getitem__(self, index: int) -> Item: ...

    @overload
    def __getitem__(self, index: slice) -> list[Item]: ...

    def __getitem__(self, index: int | slice) -> Item | list[Item]:
        if isinstance(index, slice):
            return [self._at(at) for at in range(*index.indices(len(self.firsts)))]
        return self._at(index if index >= 0 else index + len(self.firsts))

    def _at(self, index: int) -> Item:
        kept = self.kept.get(index)
        if kept is not None:
            return kept
        first = self.firsts[index]
        return Item(self.symbols[index], first, first + 1)
