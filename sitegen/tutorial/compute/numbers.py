"""Every number of a tutorial by name and size, worked out when first asked for."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from sitegen.quantities import BySize, Length, Worked

MOST_LINKS = 100
"""So many numbers may follow one from another in a row. Nobody could read the working of more, and every one of them
takes room while the first waits for the last."""
Maker = Callable[[int], Worked]
"""Works a number out for the size at an index."""


class Missing(Exception):  # noqa: N818 - says what is the case
    """A number needs another that nobody gave; the reason has been reported where it was left out."""


class Impossible(Missing):
    """A number that cannot be, whatever the size of the cloth: its name, the size at an index, and what stands in the
    way, in words."""

    def __init__(self, name: str, size: int, reason: str) -> None:
        super().__init__(name)
        self.name = name
        self.size = size
        self.reason = reason


class Circle(Exception):  # noqa: N818 - says what is the case
    """Numbers that need each other in a circle: the names along it, the first again at the end."""

    def __init__(self, names: tuple[str, ...]) -> None:
        super().__init__(" → ".join(names))
        self.names = names


class DividesByNothing(ZeroDivisionError):  # noqa: N818
    """A number whose own sum divides by a length of nothing, and what follows from it: its name."""

    def __init__(self, name: str) -> None:
        super().__init__(name)
        self.name = name


class LongChain(Missing):
    """A number that follows from others over more links than there may be: their names, this one first."""

    def __init__(self, names: tuple[str, ...]) -> None:
        super().__init__(names[0])
        self.names = names


class Numbers:
    """The makers of all numbers, and what they have made."""

    def __init__(self, size_count: int) -> None:
        self.size_count = size_count
        self._makers: dict[str, Maker] = {}
        self._made: dict[tuple[str, int], Worked] = {}
        self._open: list[str] = []
        self._links: dict[tuple[str, int], int] = {}
        self._most_below: list[int] = [0]
        self._too_long: dict[tuple[str, int], tuple[str, ...]] = {}

    def define(self, name: str, maker: Maker) -> None:
        """Say how a number is got. The first definition stands: names are kept apart when the model is built."""
        self._makers.setdefault(name, maker)

    def __contains__(self, name: str) -> bool:
        return name in self._makers

    def __iter__(self) -> Iterator[str]:
        return iter(self._makers)

    def at(self, name: str, size: int) -> Worked:
        """The number for one size. Raises Missing, Impossible or DividesByNothing when its sum cannot be done,
        LongChain, or Circle."""
        key = (name, size)
        if key not in self._made:
            self._made[key], self._links[key] = self._make(name, size)
        self._most_below[-1] = max(self._most_below[-1], self._links[key])
        return self._made[key]

    def _make(self, name: str, size: int) -> tuple[Worked, int]:
        """The number, and over how many links it follows from others: the same in whatever order they are asked for."""
        if name not in self._makers:
            raise Missing(name)
        if (name, size) in self._too_long:
            raise LongChain(self._too_long[name, size])
        if name in self._open:
            raise Circle((*self._open[self._open.index(name) :], name))
        if len(self._open) > MOST_LINKS:
            raise LongChain((*self._open, name))
        self._open.append(name)
        self._most_below.append(0)
        try:
            made = self._makers[name](size)
            links = self._most_below[-1] + 1
            if links > MOST_LINKS + 1:
                raise LongChain(tuple(self._open))
        except LongChain as chain:
            # Only of the number that was asked for first it is known that its own chain is too long.
            if len(self._open) == 1:
                self._too_long[name, size] = chain.names
            raise
        except ValueError as trouble:
            raise Impossible(name, size, str(trouble)) from trouble
        except DividesByNothing:
            raise
        except ZeroDivisionError as trouble:
            raise DividesByNothing(name) from trouble
        finally:
            self._open.pop()
            self._most_below.pop()
        return made, links

    def length_at(self, name: str, size: int) -> Worked:
        """The number for one size, known to be a length. Raises Missing when it is something else, or Circle."""
        found = self.at(name, size)
        if not isinstance(found.value, Length):
            raise Missing(name)
        return found

    def by_size(self, name: str) -> BySize[Worked]:
        """The number for every size, a single one when all are alike. Raises Missing or Circle."""
        values = tuple(self.at(name, size) for size in range(self.size_count))
        return BySize(values[:1]) if all(each.value == values[0].value for each in values) else BySize(values)
