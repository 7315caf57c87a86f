"""The search for a short arrangement of rectangles on strips of cloth, in whole numbers.

The stretch of cloth nearest to the start is filled first: with one of the rectangles that fit there, tried in
their order of rank, or with none. A branch is cut off as soon as the cloth it has wasted is too much for it to
become shorter than the best arrangement so far (branch and bound). Then two rectangles after the other change
ranks. Every number of tries is fixed, never the time, so that the same pieces always lie in the same way.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from sitegen.sewing.layout import skyline
from sitegen.sewing.layout.rectangles import Kind, Packed, Rectangle, Spot, kinds_of
from sitegen.sewing.layout.skyline import Skyline


def packed(rectangles: Sequence[Rectangle], strips: Sequence[int], *, tries: int, least: int = 0) -> Packed:
    """The shortest arrangement found within about so many tries; none overlap.

    Every rectangle must fit across the strips, which are equally wide. ``least`` is a length that no arrangement
    can beat: the search ends when it is reached.
    """
    if not rectangles:
        return Packed(0, ())
    search = _Search(rectangles, tuple(strips), least)
    search.by_size(max(tries // _PART_FOR_SIZES // len(_RANKS), 2 * len(rectangles)))
    search.by_exchange(tries - tries // _PART_FOR_SIZES)
    return Packed(search.length, tuple(sorted(search.spots, key=lambda spot: spot.number)))


_PART_FOR_SIZES = 4
"""This part of the tries goes to the ranks by size, the rest to exchanges of ranks (measured: best on garments)."""

_RANKS: tuple[Callable[[int, int], tuple[int, ...]], ...] = (
    lambda across, along: (across, along),
    lambda across, along: (along, across),
    lambda across, along: (across * along, along),
    lambda across, along: (across + along, along),
)
"""Which rectangle ranks first: the widest, the longest, that of most area, that of most edge."""

_Option = tuple[int, int, int, bool]
"""A kind, by its index, and how it would lie: across, along, turned."""


@dataclass(slots=True)
class _State:
    """A part of the search: what the cloth looks like, and the options for its lowest stretch not yet tried."""

    skylines: tuple[Skyline, ...]
    wasted: int
    length: int
    fold_left: int
    strip: int
    index: int
    low: int
    options: list[_Option]


class _Search:
    """The best arrangement so far (``length``, ``spots``, the ``ranks`` that gave it), made better by every run."""

    def __init__(self, rectangles: Sequence[Rectangle], strips: tuple[int, ...], least: int) -> None:
        self.ranks = kinds_of(rectangles, strips[0])
        self.strips = strips
        self.least = least
        self.area = sum(one.across * one.along for one in rectangles)
        self.fold = sum(one.along for one in rectangles if one.at_fold)
        self.count = len(rectangles)
        self.length = sum(max(one.across, one.along) for one in rectangles) + 1
        self.spots: list[Spot] = []
        self.kinds = self.ranks
        self.left: list[int] = []
        self.tries = 0

    def by_size(self, tries: int) -> None:
        """Ranks the rectangles by size, each time in another sense, with so many tries each."""
        kinds = self.ranks
        for rank in _RANKS:
            self._run(sorted(kinds, key=lambda kind: (*(-part for part in rank(*kind.size)), kind.numbers)), tries)

    def by_exchange(self, tries: int) -> None:
        """Lets two rectangles change ranks, the first ranks first, and begins anew whenever that helps.

        When no exchange has helped, each is tried again with twice as many tries.
        """
        share = 2 * self.count
        while len(self.ranks) > 1 and tries > 0 and not self._is_least():
            ranks = self.ranks
            for earlier, later in ((one, other) for other in range(1, len(ranks)) for one in range(other)):
                kinds = list(ranks)
                kinds[earlier], kinds[later] = kinds[later], kinds[earlier]
                tries -= self._run(kinds, min(share, tries))
                if tries <= 0 or self.ranks is not ranks:
                    break
            else:
                share *= 2

    def _is_least(self) -> bool:
        return bool(self.spots) and self.length <= self.least

    def _run(self, kinds: list[Kind], tries: int) -> int:
        """Searches with these ranks for something shorter than the best so far; how many tries that took."""
        if self._is_least():
            return 0
        self.kinds = kinds
        self.left = [len(kind.numbers) for kind in kinds]
        self.tries = tries
        laid: list[tuple[int, Spot]] = []
        states = [self._state(tuple(skyline.empty(width) for width in self.strips), 0, 0, self.fold)]
        while states and not self._is_least():
            state = states[-1]
            if state.options:
                option = state.options.pop()
                if state.low + option[2] >= self.length:
                    continue
                self.left[option[0]] -= 1
                after, spot = self._lay(state, option)
                laid.append((option[0], spot))
                if len(laid) < self.count:
                    states.append(after)
                    continue
                self.length, self.spots, self.ranks = after.length, [spot for _, spot in laid], kinds
            elif self._give_up(state):
                continue
            else:
                states.pop()
            if self.tries <= 0 and self.spots:
                break
            if laid:
                self.left[laid.pop()[0]] += 1
        return tries - self.tries

    def _lay(self, state: _State, option: _Option) -> tuple[_State, Spot]:
        """The state once the option lies on the lowest stretch, and the spot that it got."""
        kind, across, along, turned = option
        at_fold = self.kinds[kind].at_fold
        here = state.skylines[state.strip]
        start, width, low = here[state.index]
        before, behind = skyline.sides(here, state.index)
        keeps_fold_free = state.fold_left > 0 and start == 0
        at_end = not at_fold and (keeps_fold_free or behind > before)
        number = self.kinds[kind].numbers[-1 - self.left[kind]]
        spot = Spot(number, state.strip, start + width - across if at_end else start, low, turned)
        changed = skyline.with_piece(here, state.index, across, along, at_end=at_end)
        skylines = (*state.skylines[: state.strip], changed, *state.skylines[state.strip + 1 :])
        fold_left = state.fold_left - along if at_fold else state.fold_left
        return self._state(skylines, state.wasted, max(state.length, low + along), fold_left), spot

    def _state(self, skylines: tuple[Skyline, ...], wasted: int, length: int, fold_left: int) -> _State:
        """The state of the cloth, with the options for its lowest stretch."""
        strip, index = skyline.lowest(skylines)
        state = _State(skylines, wasted, length, fold_left, strip, index, skylines[strip][index][2], [])
        state.options = self._options(state)
        return state

    def _give_up(self, state: _State) -> bool:
        """Leaves the lowest stretch empty up to its lower neighbour; whether anything shorter can come of it."""
        here = state.skylines[state.strip]
        level = min(*skyline.sides(here, state.index), self.length)
        state.wasted += here[state.index][1] * (level - state.low)
        if level >= self.length or state.wasted >= sum(self.strips) * self.length - self.area:
            return False
        changed = skyline.given_up(here, state.index, level)
        state.skylines = (*state.skylines[: state.strip], changed, *state.skylines[state.strip + 1 :])
        state.strip, state.index = skyline.lowest(state.skylines)
        state.low = state.skylines[state.strip][state.index][2]
        state.options = self._options(state)
        return True

    def _options(self, state: _State) -> list[_Option]:
        """What fits on the lowest stretch, best last: what fills its width, what ends level with a side, the rest."""
        self.tries -= 1
        fold_room = sum(self.length - each[0][2] for each in state.skylines)
        if state.length >= self.length or (state.fold_left and fold_room <= state.fold_left):
            return []
        here = state.skylines[state.strip]
        start, width, low = here[state.index]
        before, behind = skyline.sides(here, state.index)
        filling: list[_Option] = []
        level: list[_Option] = []
        others: list[_Option] = []
        for number, kind in enumerate(self.kinds):
            if not self.left[number] or (kind.at_fold and start):
                continue
            for across, along, turned in kind.ways:
                end = low + along
                if across > width or end >= self.length:
                    continue
                fits = filling if across == width else level if end in (before, behind) else others
                fits.append((number, across, along, turned))
        options = filling + level + others
        options.reverse()
        return options
