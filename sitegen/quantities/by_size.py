"""A value that is the same for every size, or one value for each size."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Generic, TypeVar

T = TypeVar("T")
U = TypeVar("U")


@dataclass(frozen=True, slots=True)
class BySize(Generic[T]):
    """Values in the order of the sizes, or a single one that serves all."""

    values: tuple[T, ...]

    @property
    def differs(self) -> bool:
        """Whether each size has a value of its own."""
        return len(self.values) > 1

    def at(self, index: int) -> T:
        """The value for the size at this place in the run. Raises IndexError when the run is too short."""
        return self.values[index] if self.differs else self.values[0]

    def map(self, change: Callable[[T], U]) -> BySize[U]:
        """The same shape with every value changed."""
        return BySize(tuple(change(value) for value in self.values))

    def __iter__(self) -> Iterator[T]:
        return iter(self.values)
