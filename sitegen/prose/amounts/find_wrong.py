"""From the claims of a text to its wrong amounts."""

from __future__ import annotations

import re
from bisect import bisect_left
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from fractions import Fraction

from sitegen.prose.amounts.amount import MONEY, RATE, Item, shown
from sitegen.prose.amounts.bills import bills
from sitegen.prose.amounts.claims import Claim, Paragraph, paragraph_of
from sitegen.prose.amounts.counts import counts
from sitegen.prose.amounts.explain import agrees, is_explained, is_rest, is_slip
from sitegen.prose.amounts.items import items_of, special_tokens, told_at
from sitegen.prose.amounts.line import Line
from sitegen.prose.amounts.percentages import percentages
from sitegen.prose.amounts.pieces import pieces
from sitegen.prose.amounts.products import products
from sitegen.prose.amounts.rows import Row, RowResult, heads_of, people_in, row_results
from sitegen.prose.amounts.running import running_totals
from sitegen.prose.amounts.runs import runs
from sitegen.prose.amounts.sums import sums
from sitegen.prose.amounts.tallies import tallies
from sitegen.prose.amounts.told_over import told_over
from sitegen.prose.find import Reading

_FEWEST = 2
"""Numbers of a paragraph without which it can claim nothing of any."""
_COLUMN = 8
_IN_COLUMN = re.compile(r"(?:\s\s|\t|[|:]\s?)[*_]{0,3}$")
"""Two blanks, a colon or the border of a cell before a price, which may be in bold."""

_MARK = re.compile(r"[ \t]{0,8}(?:[-*•–]|\d{1,2}[.)])\s")
"""What an entry of a list begins with."""


@dataclass(frozen=True, slots=True)
class WrongAmount:
    """An amount that its parts do not make, from offset ``start`` to ``end`` of the text.

    ``should_be`` is in the notation of what was said, ``words`` the working without its result.
    """

    start: int
    end: int
    said: str
    should_be: str
    words: str
    kind: str
    sure: bool = True


def wrong_amounts(reading: Reading) -> Iterator[WrongAmount]:
    """Every wrong price, time, weight and count of a text, each once, in order."""
    paragraphs = list(_paragraphs(reading))
    heads = heads_of(told.items[at] for told in paragraphs for at in told.numbers)
    rows = [row for told in paragraphs for row in _rows(reading, told)]
    in_rows = {result.item.first: result for result in row_results(rows, heads)}
    found = [
        _wrong_amount(reading, result.item, result.should_be, result.words, result.kind)
        for result in in_rows.values()
        if result.should_be is not None
    ]
    for told in paragraphs:
        for claim in _in_paragraph(told, in_rows):
            wrong = _wrong_amount(reading, told.items[claim.at], claim.values[0], claim.words, claim.kind)
            found.append(wrong if claim.sure else replace(wrong, sure=False))
    yield from sorted(found, key=lambda wrong: wrong.start)


def _paragraphs(reading: Reading) -> Iterator[Paragraph]:
    """What stands between two empty lines; nothing where no price, time, weight or count is told."""
    tokens = reading.tokens

    def said(item: Item) -> str:
        return " ".join(reading.text[tokens.starts[item.first] : tokens.ends[item.behind - 1]].split())

    def word(item: Item) -> str:
        alone = item.behind == item.first + 1
        return tokens.words[item.first] if alone else " ".join(tokens.words[item.first : item.behind])

    def opens(item: Item) -> bool:
        return tokens.opens_line(item.first)

    number_at = {one.first: one for one in reading.numbers}
    told, special = told_at(tokens, number_at), special_tokens(tokens, number_at)
    first = 0
    for behind in (*tokens.breaks, len(tokens)):
        if bisect_left(told, first) < bisect_left(told, behind):
            inside = special[bisect_left(special, first) : bisect_left(special, behind)]
            yield paragraph_of(items_of(reading, first, behind, number_at, inside), said, word, opens)
        elif behind > first:
            yield paragraph_of(Line(), said, word, opens)
        first = behind + 1


def _rows(reading: Reading, told: Paragraph) -> Iterator[Row]:
    """The lines of a paragraph; where it tells no price, one without anything stands for all."""
    if {MONEY, RATE}.isdisjoint(told.symbols):
        yield Row([], frozenset(), frozenset(), apart=True, in_column=False, listed=False)
        return
    tokens = reading.tokens
    line: list[Item] = []
    apart = True
    for item in told.items:
        if line and tokens.opens_line(item.first):
            yield _row(reading, line, apart=apart)
            line, apart = [], False
        line.append(item)
    if line:
        yield _row(reading, line, apart=apart)


def _row(reading: Reading, line: list[Item], *, apart: bool) -> Row:
    tokens = reading.tokens
    price = next((item for item in reversed(line) if item.symbol in (MONEY, RATE)), None)
    if price is None:
        return Row(line, frozenset(), frozenset(), apart, in_column=False, listed=False)
    start = tokens.starts[price.first]
    opens = tokens.starts[line[0].first]
    before = reading.text[max(opens, start - _COLUMN) : start]
    listed = _MARK.match(reading.text, reading.text.rfind("\n", 0, opens) + 1) is not None
    words = people_in(tokens.words[line[0].first : line[-1].behind])
    first = next(item for item in line if item.symbol in (MONEY, RATE))
    opening = frozenset(tokens.words[line[0].first : first.first])
    return Row(line, words, opening, apart, bool(_IN_COLUMN.search(before)), listed)


def _in_paragraph(told: Paragraph, in_rows: Mapping[int, RowResult]) -> Iterator[Claim]:
    """The claims of a paragraph that are wrong; nothing is said twice, nor of a sum that has a wrong part."""
    if len(told.numbers) < _FEWEST:
        return
    claims: dict[int, list[Claim]] = {}
    for claim in (
        *products(told),
        *sums(told),
        *percentages(told),
        *running_totals(told),
        *counts(told),
        *tallies(told),
        *told_over(told),
        *bills(told),
        *pieces(told),
    ):
        claims.setdefault(claim.at, []).append(claim)
    wrong = {at for at in told.numbers if (row := in_rows.get(told.items[at].first)) and row.should_be is not None}
    for at in sorted(claims):
        if told.items[at].first in in_rows:
            continue
        found = _broken(told, claims[at])
        if found is not None and wrong.isdisjoint(found.parts):
            wrong.add(at)
            yield found
    settled = {
        at: claim.parts for at, each in claims.items() for claim in each if agrees(told.items[at], claim.values[0])
    }
    loose: dict[int, list[Claim]] = {}
    for claim in runs(told, settled):
        if claim.at not in claims and told.items[claim.at].first not in in_rows:
            loose.setdefault(claim.at, []).append(claim)
    for at in sorted(loose):
        found = _broken(told, loose[at])
        if found is not None and wrong.isdisjoint(found.parts):
            wrong.add(at)
            yield found


def _broken(told: Paragraph, claims: list[Claim]) -> Claim | None:
    """The claim by which an amount is wrong; None where any makes it right, or none is sure."""
    item = told.items[claims[0].at]
    if any(agrees(item, value) for claim in claims for value in claim.values):
        return None
    for claim in sorted(claims, key=lambda each: not each.firm):
        explained = is_rest(told, claim) if claim.firm else is_explained(told, claim)
        if not explained and is_slip(item, claim.values[0], claim, told):
            return claim
    return None


def _wrong_amount(reading: Reading, item: Item, should_be: Fraction, words: str, kind: str) -> WrongAmount:
    start, end = reading.tokens.starts[item.first], reading.tokens.ends[item.behind - 1]
    said = reading.text[start:end]
    return WrongAmount(start, end, said, shown(item, said, should_be), words, kind)
