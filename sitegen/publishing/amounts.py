"""The HTML of a number: every size and both systems are in the page, the stylesheet shows what was chosen.

The classes are the contract with a theme: ``in`` and ``cm`` hold the words of one system, ``br`` what is read
only between the two, ``all`` what is read while no size is chosen, ``z1``, ``z2`` … what belongs to one size.
In prose a size's own words carry ``hidden`` as well, so that without the stylesheet the range is read alone.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass

from markupsafe import Markup, escape

from sitegen.publishing.views import Both, NumberView
from sitegen.quantities import System


@dataclass(frozen=True, slots=True)
class Filled:
    """What stands in prose for a reference."""

    linked: Markup
    """With a link to the working, where there is one."""
    plain: Markup
    """The same without the link, for use inside another link."""


def amount(both: Both, first: System) -> Markup:
    """An amount in a sentence: ``17 3/4 in (45 cm)``, the system of the site first."""
    return _systems(first, both.alike, lambda system: unbroken(both.text(system)), Markup())


def cell(both: Both, first: System) -> Markup:
    """An amount in a table: the two systems one below the other, without brackets."""
    if both.alike:
        return unbroken(both.inches)
    spans = (_span(_CLASS[system], unbroken(both.text(system))) for system in _order(first))
    return Markup(" ").join(spans)


def number(view: NumberView, first: System) -> Filled:
    """A number in prose. One that differs reads ``16 to 21 in (41 to 53 cm, by size)`` until a size is chosen."""
    if view.by_size:
        lowest, highest = view.values[view.low], view.values[view.high]
        alike = all(value.alike for value in view.values)

        def words(system: System) -> Markup:
            span = spread(lowest.text(system), highest.text(system))
            return _by_size(unbroken(span), [unbroken(value.text(system)) for value in view.values])

        inner = _systems(first, alike, words, Markup('<span class="all">, by size</span>'))
    else:
        inner = amount(view.values[0], first)
    plain = _span("n", inner)
    if not view.anchor:
        return Filled(plain, plain)
    return Filled(Markup('<a class="n" href="#{}">{}</a>').format(view.anchor, inner), plain)


def size_name(sizes: Sequence[str]) -> Filled:
    """What stands for ``{size}``: the name of the chosen size, ``XS to XL`` until one is chosen."""
    if len(sizes) > 1:
        inner = _by_size(unbroken(f"{sizes[0]} to {sizes[-1]}"), [unbroken(name) for name in sizes])
    else:
        inner = unbroken(sizes[0] if sizes else "one size")
    plain = _span("n", inner)
    return Filled(plain, plain)


def spread(low: str, high: str) -> str:
    """Two amounts as a range, the unit said once if it is the same: ``16 1/4 to 21 in``."""
    number_low, _, unit_low = low.rpartition(" ")
    _, _, unit_high = high.rpartition(" ")
    return f"{number_low if number_low and unit_low == unit_high else low} to {high}"


def unbroken(text: str) -> Markup:
    """The text, escaped, kept on one line between a number, its fraction and its unit, and within a range."""
    return escape(_INSIDE.sub("\N{NO-BREAK SPACE}", text))


_INSIDE = re.compile(r"(?<=\d) (?=\S)|(?<=\d to) (?=\d)")
_CLASS = {System.INCHES: "in", System.CENTIMETRES: "cm"}


def _order(first: System) -> tuple[System, System]:
    second = System.CENTIMETRES if first is System.INCHES else System.INCHES
    return first, second


def _systems(first: System, alike: bool, words: Callable[[System], Markup], remark: Markup) -> Markup:
    if alike:
        return words(first) + remark
    front, back = (_span(_CLASS[system], words(system)) for system in _order(first))
    return front + _OPEN + back + remark + _CLOSE


def _by_size(all_sizes: Markup, each: Sequence[Markup]) -> Markup:
    spans = (Markup('<span class="z{}" hidden>{}</span>').format(place, text) for place, text in enumerate(each, 1))
    return _span("all", all_sizes) + Markup("").join(spans)


def _span(name: str, inner: Markup) -> Markup:
    return Markup('<span class="{}">{}</span>').format(name, inner)


_OPEN = Markup('<span class="br"> (</span>')
_CLOSE = Markup('<span class="br">)</span>')
