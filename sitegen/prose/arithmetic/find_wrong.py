"""Finds results in a text that are not what their parts make."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import chain, combinations

from sitegen.prose.arithmetic.agree import agrees
from sitegen.prose.arithmetic.becomes import become_results
from sitegen.prose.arithmetic.columns import column_results
from sitegen.prose.arithmetic.finished import wrong_cuts
from sitegen.prose.arithmetic.forms import FORMS, Form, Tie
from sitegen.prose.arithmetic.likely import is_like
from sitegen.prose.arithmetic.percents import right_percents, wrong_percents
from sitegen.prose.arithmetic.rectangles import wrong_sides
from sitegen.prose.arithmetic.references import pointed_results
from sitegen.prose.arithmetic.related import related_results
from sitegen.prose.arithmetic.relations import is_adjective, judged
from sitegen.prose.arithmetic.sized import Size, remembered, wrong_cut_sides
from sitegen.prose.arithmetic.slack import has_slack
from sitegen.prose.arithmetic.spacing import spaced_results
from sitegen.prose.arithmetic.statements import Stated, stated_results
from sitegen.prose.arithmetic.sure import is_sure
from sitegen.prose.arithmetic.symbols import Item, paragraphs_of
from sitegen.prose.arithmetic.terms import Said
from sitegen.prose.arithmetic.ties import tie_of
from sitegen.prose.arithmetic.together import together_results
from sitegen.prose.arithmetic.worded import worded_results
from sitegen.prose.arithmetic.workers import Made, Match
from sitegen.prose.find import Measured, Reading
from sitegen.quantities import Unit

_STATEMENTS = (stated_results, pointed_results, become_results, spaced_results, worded_results)
_SOFT = Fraction(2, 5)
"""How far, as a share of the right result, a number may lie that soft words call the result of a sum."""
_STRONG = Fraction(20)
_CALLED = frozenset("=kq:u")
"""Words that call even ``a 17-inch band`` a result."""
_TELLS = frozenset("=qTcvdE<>")
"""Words that tell a result, however far it lies from the right one."""
_BESIDE = 9
"""Items beside a result among which such a word is looked for."""
_TIED = frozenset("=qcv:")
"""Words that tie a result to its parts among many numbers."""
_CROWD, _CROWD_BEFORE, _CROWD_BEHIND = 6, 36, 12
"""How many numbers around a result leave no doubt, and among how many items before and behind it."""
_THINGS = re.compile(r"(?!(?:this|plus|less|minus|equals|makes|gives|leaves|comes)\b)[a-z]{3,}s\b", re.IGNORECASE)
_ADDED = re.compile(r"[_DWapSui]*,?_?\+_?(?:N_?\*?_?)?L")
"""Behind a part of a result that stands before it: ``9 cm: 4 cm finished twice, plus 2 × 0.5 cm``."""
_SUMS = frozenset(("sum", "difference", "total"))
_LAST_ITEMS, _LAST_NUMBERS = 20, 4
_FEWEST_LENGTHS = 2
"""A result and one part: with less nothing can be done again."""


@dataclass(frozen=True, slots=True)
class WrongResult:
    """A result that its parts do not make: the item, what it should be, and the sum in words.

    What it should be is in millimetres, or a share where the unit is None. It is not ``sure`` where the words, or other
    numbers beside it, may mean another sum.
    """

    kind: str
    number: Measured
    unit: Unit | None
    should_be: Fraction
    words: str
    sure: bool = True


@dataclass(slots=True)
class _Found:
    """What is known of the results of a paragraph, by their places among its items."""

    right: dict[int, tuple[int, ...]]
    """The results that hold, with the places of all that the sum is made of."""
    wrong: dict[int, WrongResult]
    made_of: dict[int, tuple[int, ...]]
    """The places of the parts of wrong results; of those that loose words tie to their parts, none."""
    firm: set[int]
    """The wrong results that strong words tie to their parts."""
    plain: set[int]
    """The wrong results of plain statements: no other way of putting the numbers together explains them."""
    parts: set[int]
    """The lengths that are parts of a sum."""


def wrong_results(reading: Reading, pairs: dict[int, Measured], skipped: frozenset[int]) -> Iterator[WrongResult]:
    """Every wrong result of a text, each once, in order. A sum never reaches over an empty line."""
    sizes: tuple[Size, ...] = ()
    for items in paragraphs_of(reading, pairs, skipped):
        symbols = "".join(item.symbol for item in items)
        if symbols.count("L") >= _FEWEST_LENGTHS:
            yield from _in_paragraph(reading, items, symbols, sizes)
        sizes = remembered(sizes, items, symbols)


def _in_paragraph(reading: Reading, items: list[Item], symbols: str, sizes: Sequence[Size]) -> Iterator[WrongResult]:
    texts: dict[int, str] = {}

    def said(item: Item) -> str:
        text = texts.get(item.first)
        if text is None:
            one = item.number if item.times and item.number is not None else item
            start, end = reading.tokens.starts[one.first], reading.tokens.ends[one.behind - 1]
            often = f"{item.times} × " if item.times > 1 else ""
            text = texts[item.first] = often + " ".join(reading.text[start:end].split())
        return text

    found = _by_forms(items, symbols, said)
    _by_statements(items, symbols, said, found, column_results(reading, items, symbols))
    found.parts.update([*_sources(items, found.parts)])
    unused = list(items)
    for at, first, second in right_percents(items, symbols):
        unused[at] = items[at]._replace(symbol="X")
        found.right.setdefault(second, (first, at))
        found.parts.add(first)
    settled = found.right.keys() | found.wrong.keys()
    open_parts = frozenset(found.parts - settled)
    others = "".join(item.symbol for item in unused)
    for each in related_results(unused, others, said, frozenset(settled), open_parts):
        number, unit = each.item.number, each.item.unit
        if _is_doubtful(items, symbols, each.index, each.way.value, said):
            continue
        if number is not None and unit is not None and not each.item.times:
            found.wrong[each.index] = WrongResult(each.way.kind, number, unit, each.way.value, each.way.words)
    for place, wrong in [*found.wrong.items()]:
        if place not in found.firm and _is_unlike(items, symbols, place, wrong):
            del found.wrong[place]
    _by_relations(items, symbols, said, found)
    for place in [*(found.wrong.keys() - found.firm)]:
        wrong = found.wrong[place]
        behind = said(items[place + 1]) if place + 1 < len(items) else ""
        called = not _CALLED.isdisjoint(tie_of(symbols, place) or "")
        thing = not called and is_adjective(said(items[place]), behind)
        if thing or has_slack(items, symbols, place, wrong.should_be, wrong.kind, said):
            del found.wrong[place]
    for place, wrong in [*found.wrong.items()]:
        first = min(found.made_of.get(place, ()), default=place)
        if wrong.kind not in _SUMS and first > place and _ADDED.match(symbols, first + 1):
            del found.wrong[place]
    for place, wrong in found.wrong.items():
        firm, parts = place in found.firm, found.made_of.get(place)
        if parts is None or not is_sure(items, symbols, place, wrong.should_be, parts, firm=firm):
            found.wrong[place] = replace(wrong, sure=False)
    for side in (*wrong_sides(items, symbols, said), *wrong_cut_sides(items, symbols, said, sizes)):
        number = items[side.index].number
        if number is not None:
            found.wrong[side.index] = WrongResult("cut length", number, number.unit, side.value, side.words)
    mended = {part for place in found.wrong for part in found.made_of.get(place, ())}
    for cut in wrong_cuts(items, symbols, said):
        number = items[cut.index].number
        if number is not None and cut.index not in mended:
            found.wrong.setdefault(cut.index, WrongResult("cut length", number, number.unit, cut.value, cut.words))
    for percent in wrong_percents(items, symbols, said):
        number = items[percent.index].number
        if number is not None:
            for part in percent.parts:  # the slip is in the percentage, not in a length that it would make
                if part in found.wrong and not found.wrong[part].sure:
                    del found.wrong[part]
            found.wrong[percent.index] = WrongResult("percent", number, None, percent.share, percent.words)
    if not found.wrong:
        for place, made in together_results(items, symbols, said, found.right):
            number = items[place].number
            if number is not None and place not in found.parts:
                found.wrong[place] = WrongResult(made.kind, number, number.unit, made.value, made.words, sure=False)
    for place in sorted(found.wrong.keys() - found.right.keys()):
        if not _ends_before_its_fraction(items, place, found.wrong[place], said):
            yield found.wrong[place]


def _ends_before_its_fraction(items: list[Item], at: int, wrong: WrongResult, said: Said) -> bool:
    """Whether the fraction of a result is another length: ``twice that's four and half an inch for this seam``."""
    behind = said(items[at + 1]).lower() if at + 1 < len(items) else ""
    if wrong.unit is None or not behind.startswith("for ") or " and " not in said(items[at]):
        return False
    return wrong.should_be == items[at].value // wrong.unit.mm * wrong.unit.mm


def _is_unlike(items: list[Item], symbols: str, at: int, wrong: WrongResult) -> bool:
    """Whether a number is nothing like what the others make, and only loose words tie it to them.

    What a percentage or a share makes may be anything beside its whole.
    """
    ahead = re.split(r"[LNPR.\n]", symbols[max(0, at - _BESIDE) : at])[-1]
    behind = symbols[at + 1 : at + 1 + _BESIDE // 2].partition(".")[0]
    if wrong.unit is None or wrong.kind in ("percent", "share") or not _TELLS.isdisjoint(ahead + behind):
        return False
    return not is_like(items[at].value, wrong.should_be, wrong.unit)


def _is_doubtful(items: list[Item], symbols: str, at: int, right: Fraction, said: Said) -> bool:
    """Whether a result of loose words may be another number's: many stand around it, or the last ones explain it."""
    unit = items[at].unit
    if unit is None:
        return True
    crowd = sum(1 for symbol in symbols[max(0, at - _CROWD_BEFORE) : at + _CROWD_BEHIND] if symbol in "LN")
    tied = not _TIED.isdisjoint(tie_of(symbols, at) or "")
    if crowd > _CROWD and not (tied and is_like(items[at].value, right, unit)):
        return True
    return _follows_bare_numbers(items, symbols, at, unit, said)


def _follows_bare_numbers(items: list[Item], symbols: str, at: int, unit: Unit, said: Said) -> bool:
    """Whether the last numbers, one without a unit among them, make a result: ``cut it 27, overlap 1 in: 26 in``."""
    places = [place for place in range(max(0, at - _LAST_ITEMS), at) if symbols[place] in "LN"][-_LAST_NUMBERS:]
    if not places or "." in symbols[places[0] : at] or "*" in symbols[places[-1] : at]:
        return False  # print, where a number without a unit counts
    places = [place for place in places if symbols[place] == "L" or not _THINGS.match(said(items[place + 1]))]
    values = {place: items[place].value / (unit.mm if symbols[place] == "L" else 1) for place in places}
    wanted = items[at].value / unit.mm
    for size in (2, 3):
        for some in combinations(places, size):
            one, *rest = (values[place] for place in some)
            made = {one + sum(rest), abs(one - sum(rest))} | ({one + sum(rest) + rest[-1]} if len(rest) > 1 else set())
            if wanted in made and {symbols[place] for place in some} == set("LN"):
                return True
    return False


def _by_forms(items: list[Item], symbols: str, said: Said) -> _Found:
    """The results of sums that are written in one of the known forms."""
    found = _Found({}, {}, {}, set(), set(), set())
    present = frozenset(symbols)
    for form in FORMS:
        if not form.may_match(present):
            continue
        for each in _everywhere(form, symbols):
            match = Match(items, symbols, each, said)
            place = each.start("r")
            made = form.work(match) if place not in found.right and not items[place].times else None
            if made is None or not made.values:
                continue
            places = tuple(at for at in range(*each.span()) if symbols[at] in "LNPRDH" and at != place)
            if _holds(match, made):
                found.right[place] = places
            elif _is_told_in_two(items, symbols, place, made):
                continue
            elif _may_be_wrong(form, match, made):
                found.wrong.setdefault(place, _wrong(form, match, made))
                found.made_of.setdefault(place, places)
                if form.tie is Tie.STRONG:
                    found.firm.add(place)
            else:
                continue
            found.parts.update(at for at in places if symbols[at] == "L")
    return found


def _by_statements(items: list[Item], symbols: str, said: Said, found: _Found, columns: Iterator[Stated]) -> None:
    """Takes in the results of plain statements, and those of columns.

    A form has spoken already, but where it passed over a number that counts a term the statement knows better.
    """
    for stated in chain(columns, *(results(items, symbols, said) for results in _STATEMENTS)):
        number = items[stated.at].number
        right = found.right.get(stated.at)
        ignored = right is not None and stated.counts.isdisjoint(right) and set(stated.places) <= set(right)
        known = stated.at in found.firm if right is None else stated.holds or not (ignored and stated.counts)
        if number is None or known or (not stated.holds and not found.wrong.keys().isdisjoint(stated.places)):
            continue  # the slip was made in a part
        if stated.holds:
            found.right[stated.at] = stated.places
            found.wrong.pop(stated.at, None)
        else:
            found.wrong[stated.at] = WrongResult(stated.kind, number, number.unit, stated.value, stated.words)
            found.made_of[stated.at] = (*stated.places, *stated.counts)
            found.firm.add(stated.at)
            found.plain.add(stated.at)
            found.right.pop(stated.at, None)
        found.parts.update(stated.places)


def _sources(items: Sequence[Item], parts: Iterable[int]) -> Iterator[int]:
    """Where the parts that are only named were given."""
    numbers = (items[part].number for part in parts if items[part].times)
    given = {number.first for number in numbers if number is not None}
    return (at for at, item in enumerate(items) if item.first in given and item.symbol == "L")


def _is_told_in_two(items: list[Item], symbols: str, at: int, made: Made) -> bool:
    """Whether the length behind the result is the rest of it: ``a double half inch hem: half an inch and another``."""
    following = re.match(r"_?&_?A?_?L", symbols[at + 1 : at + 6])
    return following is not None and items[at].value + items[at + following.end()].value in made.values


def _by_relations(items: list[Item], symbols: str, said: Said, found: _Found) -> None:
    """Takes in what the relations that are told around each result say of it."""
    relations = judged(items, symbols, said, found.right, found.wrong.keys() - found.firm)
    for place in (relations.right | relations.excused) - found.plain:
        found.wrong.pop(place, None)
    for result in relations.wrong:
        known = result.at in found.right or result.at in found.parts or result.at in found.firm
        known = known or items[result.at].times > 0
        number = items[result.at].number
        if number is not None and not known and not any(at in found.wrong for at in result.parts):
            told = result.told
            wrong = WrongResult(told.kind, number, number.unit, told.value, told.words)
            doubtful = _is_doubtful(items, symbols, result.at, told.value, said)
            if not doubtful and not _is_unlike(items, symbols, result.at, wrong):
                found.wrong[result.at] = wrong
                found.made_of[result.at] = result.parts


def _everywhere(form: Form, symbols: str) -> Iterator[re.Match[str]]:
    """Matches of a form from each of its starting places; a result may begin the next sum."""
    position = 0
    while found := form.pattern.search(symbols, position):
        yield found
        position = found.start() + 1


def _holds(match: Match, made: Made) -> bool:
    """Whether the written result, or its partner in the other unit, is what the parts make."""
    result = match.item("r")
    hedged = made.hedged or result.hedged
    return any(agrees(value, unit, made.values, made.exactness, hedged=hedged) for value, unit in result.written)


def _may_be_wrong(form: Form, match: Match, made: Made) -> bool:
    """Whether a result that does not hold is one: not too far from what its parts make for the words that tie it."""
    result = match.item("r")
    if re.match(r"_?[b*]_?[LN]", match.symbols[match.found.start("r") + 1 :][:4]):
        return False  # a side of a rectangle
    parts = match.items[slice(*match.found.span())]
    greatest = max((item.value for item in parts if item.symbol == "L" and item is not result), default=Fraction(0))
    bought = "u" in match.found.group() and "<" not in match.found.group()
    if form.tie is Tie.SOFT and made.values[0] < greatest < result.value and bought:
        return False  # “you could lose 20 cm of 2.5 m, so buy 2.7 m”
    allowed = _STRONG if form.tie is Tie.STRONG else _SOFT
    shares = [abs(result.value - value) / value for value in made.values if value > 0]
    return result.unit is not None and bool(shares) and min(shares) <= allowed


def _wrong(form: Form, match: Match, made: Made) -> WrongResult:
    result = match.item("r")
    if result.number is None or result.unit is None:
        raise TypeError("a result is a length")
    return WrongResult(_kind(form, match), result.number, result.unit, made.values[0], made.words)


def _kind(form: Form, match: Match) -> str:
    if form.kind != "worked":
        return form.kind
    term = match.found.group("term")
    if "P" in term:
        return "percent"
    if "R" in term:
        share = next(
            item for item in match.items[match.found.start("term") : match.found.end("term")] if item.symbol == "R"
        )
        return "halving" if share.value == Fraction(1, 2) else "share"
    return "doubling" if "D" in term else "product"
