"""Builds the prices of a class."""

from __future__ import annotations

import re
from collections.abc import Mapping as Names
from fractions import Fraction

from sitegen.classes.model import Price
from sitegen.findings import nearest
from sitegen.quantities import Unit
from sitegen.reading import Mapping, Node, Scalar
from sitegen.tutorial import Words
from sitegen.tutorial.build import Fields

_EXAMPLE = "prices: {canvas: £9.50 a metre, polyester thread: £2.80}"
_PRICE = re.compile(
    r"(?P<sign>[£€$¥])?\s*(?P<amount>\d{1,6}(?:[.,]\d{1,2})?)\s*(?P<code>[A-Z]{3}|[£€$¥])?"
    r"(?:\s*(?:/|\b(?:a|an|per)\b)\s*(?P<unit>[a-z]+))?"
)
_UNITS = {"metre": Unit.M, "meter": Unit.M, "m": Unit.M, "yard": Unit.YD, "yd": Unit.YD}


def prices(
    fields: Fields, by_length: Names[str, str], counted: Names[str, str]
) -> tuple[tuple[Price, ...], frozenset[str]]:
    """The price of each thing: of a metre or a yard for what is sold by its length, of one for what is counted; and the
    things of which it was not understood, or may be the one under a name that nothing has.

    Both hold what a thing may be called in the file, and its own name.
    """
    node = fields.get("prices")
    if node is None:
        return (), frozenset()
    if not isinstance(node, Mapping):
        fields.builder.not_this(node, "things with their prices", _EXAMPLE)
        return (), frozenset()
    known = {**counted, **by_length}
    priced = {entry.key.text for entry in node.entries}
    found: list[Price] = []
    unread: set[str] = set()
    for entry in node.entries:
        if entry.key.text not in known:
            unpriced = [name for name in known if name not in priced] or list(known)
            fields.builder.unknown("thing to buy", entry.key, unpriced)
            unread.update(known[near] for near in nearest(entry.key.text, unpriced, most=1))
            continue
        sold = entry.key.text in by_length
        price = _price(fields, Words(known[entry.key.text], entry.key.place), entry.value, by_length=sold)
        if price is not None:
            found.append(price)
        else:
            unread.add(known[entry.key.text])
    return tuple(found), frozenset(unread)


def _price(fields: Fields, item: Words, node: Node, *, by_length: bool) -> Price | None:
    match = _PRICE.fullmatch(node.text.strip()) if isinstance(node, Scalar) else None
    unit = _UNITS.get(match["unit"] or "") if match is not None else None
    has_currency = match is not None and (match["sign"] is None) != (match["code"] is None)
    if match is None or not has_currency or (match["unit"] and unit is None) or by_length != (unit is not None):
        kind = "the price of a metre or a yard" if by_length else "the price of one"
        example = "£9.50 a metre or 11 EUR a metre" if by_length else "£2.80 or 3 EUR"
        fields.builder.not_this(node, f"{kind}, with its currency", f"{item.text}: {example}")
        return None
    amount = Fraction(match["amount"].replace(",", "."))
    return Price(item, amount, match["sign"] or match["code"], unit, node.place)
