"""Looks for the one given number behind several that do not agree: were it another, would all of them be right?

A number that nothing repeats cannot be held against anything by itself; but what follows from it can. If the
allowance of a seam is mistyped, every cut length that the author wrote down is wrong at once, and by what it would
have to be for them to be right.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from sitegen.quantities import Length, Ratio, System, inches, mm
from sitegen.tutorial import Amount, Computed, Reference, Share, Tutorial, supposing

_LEAST = 2
"""So many statements must come right. A single one is as likely to be wrong itself."""
_MOST_EQUALLY_GOOD = 3
"""Where more given numbers than this would do as well, none of them is pointed at."""
_MARKS = {System.INCHES: (inches("1/8"), inches("1/16")), System.CENTIMETRES: (mm(5), mm(1))}
_PERCENT = (Fraction(5, 100), Fraction(1, 100))


@dataclass(frozen=True, slots=True)
class Statement:
    """Something that the author wrote and that other numbers decide."""

    words: str
    numbers: tuple[str, ...]
    """The names of the numbers that it speaks of."""
    wrong_in: Callable[[Computed], frozenset[int]]
    """The sizes, by index, in which it is wrong."""
    said: Callable[[int], Length | None]
    """What it says of the first of its numbers in this size; None if it says no length."""


@dataclass(frozen=True, slots=True)
class Given:
    """A number that the author gave, by size or once for all of them."""

    name: str
    typed: tuple[Amount | Share, ...]

    def at(self, size: int) -> Amount | Share:
        """What was typed for the size at this index."""
        return self.typed[0] if len(self.typed) == 1 else self.typed[size]


@dataclass(frozen=True, slots=True)
class Cause:
    """A given number, what it would be by size where it is another, and the statements that would come right."""

    given: Given
    instead: Mapping[int, Length | Ratio]
    mended: tuple[Statement, ...]


def causes(statements: Sequence[Statement], computed: Computed) -> tuple[Cause, ...]:
    """The given numbers that would put right the most statements, without making one wrong; none if too many would."""
    wrong = {index: off for index, each in enumerate(statements) if (off := each.wrong_in(computed))}
    if len(wrong) < _LEAST:
        return ()
    search = _Search(statements, wrong, computed)
    found = [cause for given in givens(computed.tutorial) if (cause := search.cause(given)) is not None]
    most = max((len(cause.mended) for cause in found), default=0)
    best = tuple(cause for cause in found if len(cause.mended) == most)
    return best if len(best) <= _MOST_EQUALLY_GOOD else ()


def givens(tutorial: Tutorial) -> Iterator[Given]:
    """Every length and share that the author gave and that is no claim."""
    claimed = {claim.lengths.name for claim in tutorial.claims}
    of_pieces = {
        f"{piece.key}.{axis}": f"{piece.key}.{'finished' if piece.finished_given else 'cut'}_{axis}"
        for piece in tutorial.pieces.values()
        for axis in ("length", "width")
    }
    for lengths in tutorial.typed:
        typed = () if isinstance(lengths.source, Reference) else lengths.source.values
        if typed and lengths.name not in claimed:
            yield Given(of_pieces.get(lengths.name, lengths.name), typed)
    ratios = {key: band.ratio for key, band in tutorial.bands.items()}
    ratios |= {key: elastic.ratio for key, elastic in tutorial.elastics.items()}
    yield from (Given(f"{key}.ratio", (ratio,)) for key, ratio in ratios.items())
    for fabric in tutorial.fabrics.values():
        if fabric.shrinkage is not None:
            yield Given(f"{fabric.key}.shrinkage", (fabric.shrinkage,))


@dataclass(frozen=True, slots=True)
class _Search:
    """The statements, and in which sizes which of them are wrong."""

    statements: Sequence[Statement]
    wrong: Mapping[int, frozenset[int]]
    computed: Computed

    def cause(self, given: Given) -> Cause | None:
        """The given number as a cause; None if no other value of it would do."""
        sizes = range(self.computed.tutorial.size_count)
        now = [self.computed.number(given.name, size) for size in sizes]
        if any(each is None or each.terms for each in now):
            return None
        values = [each.value for each in now if each is not None and isinstance(each.value, Length | Ratio)]
        if len(values) != len(sizes) or len(given.typed) not in (1, len(sizes)):
            return None
        tried = supposing(self.computed, given.name, [_more(value) for value in values])
        wanted = {
            size: value
            for size in sizes
            if (value := self._wanted(given.at(size), values[size], tried, size)) is not None
        }
        if len(given.typed) > 1:
            return self._checked(given, values, wanted)
        options = (dict.fromkeys(sizes, value) for value in dict.fromkeys(wanted.values()))
        return next((cause for each in options if (cause := self._checked(given, values, each)) is not None), None)

    def _wanted(
        self, typed: Amount | Share, value: Length | Ratio, tried: Computed, size: int
    ) -> Length | Ratio | None:
        """What the number would have to be in this size, by the statement that follows it the most; None if none does.

        ``tried`` is everything with the number a little larger: it shows what moves with it, and by how much.
        """
        steepest, more = Fraction(0), Fraction(0)
        for index, off in self.wrong.items():
            statement = self.statements[index]
            said = statement.said(size) if size in off else None
            before, after = (each.length(statement.numbers[0], size) for each in (self.computed, tried))
            if said is None or before is None or after is None:
                continue
            slope = (after.length - before.length).mm / (_amount(_more(value)) - _amount(value))
            if abs(slope) > abs(steepest):
                # Lengths are written without their sign.
                signed = said if before.length.mm >= 0 else said * -1
                steepest, more = slope, (signed - before.length).mm / slope
        return _on_a_mark(_amount(value) + more, typed, value) if steepest else None

    def _checked(
        self, given: Given, values: Sequence[Length | Ratio], instead: Mapping[int, Length | Ratio]
    ) -> Cause | None:
        """The cause, if with these values nothing right becomes wrong and all that moves and was wrong is right."""
        instead = {size: value for size, value in instead.items() if value != values[size]}
        if not instead:
            return None
        other = supposing(self.computed, given.name, [instead.get(size, value) for size, value in enumerate(values)])
        mended: list[Statement] = []
        for index, statement in enumerate(self.statements):
            off, before = statement.wrong_in(other), self.wrong.get(index, frozenset())
            if not off <= before:
                return None
            if before and not off:
                mended.append(statement)
            elif any(self._moves(statement, other, size) for size in off):
                return None
        return Cause(given, instead, tuple(mended)) if len(mended) >= _LEAST else None

    def _moves(self, statement: Statement, other: Computed, size: int) -> bool:
        """Whether a number that it speaks of is another."""
        now = ((self.computed.number(name, size), other.number(name, size)) for name in statement.numbers)
        return any(before is not None and after is not None and before.value != after.value for before, after in now)


def _more(value: Length | Ratio) -> Length | Ratio:
    return value + inches("1/8") if isinstance(value, Length) else value + Ratio.percent(1)


def _amount(value: Length | Ratio) -> Fraction:
    return value.mm if isinstance(value, Length) else value.value


def _on_a_mark(exact: Fraction, typed: Amount | Share, like: Length | Ratio) -> Length | Ratio | None:
    """The mark that a person would have typed: a coarse one if it is as good as exact, else the nearest fine one."""
    marks = _PERCENT if isinstance(typed, Share) else tuple(each.mm for each in _MARKS[typed.typed.unit.system])
    for mark in marks:
        nearest = round(exact / mark) * mark
        if nearest > 0 and (mark == marks[-1] or abs(nearest - exact) * 4 <= mark):
            return Length(nearest) if isinstance(like, Length) else Ratio(nearest, like.as_fraction)
    return None
