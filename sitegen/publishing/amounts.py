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
    return Markup(_systems(first, both.alike, lambda system: _safe(both.text(system)), ""))


def cell(both: Both, first: System) -> Markup:
    """An amount in a table: the two systems one below the other, without brackets."""
    if both.alike:
        return unbroken(both.inches)
    inches, metric = f'<span class="in">{_safe(both.inches)}</span>', f'<span class="cm">{_safe(both.metric)}</span>'
    return Markup(f"{inches} {metric}" if first is System.INCHES else f"{metric} {inches}")


def number(view: NumberView, first: System) -> Filled:
    """A number in prose. One that differs reads ``16 to 21 in (41 to 53 cm, by size)`` until a size is chosen."""
    if view.by_size:
        lowest, highest = view.values[view.low], view.values[view.high]
        alike = all(value.alike for value in view.values)

        def words(system: System) -> str:
            span = spread(lowest.text(system), highest.text(system))
            return _by_size(span, [value.text(system) for value in view.values])

        inner = _systems(first, alike, words, '<span class="all">, by size</span>')
    else:
        inner = str(amount(view.values[0], first))
    plain = Markup(f'<span class="n">{inner}</span>')
    linked = Markup(f'<a class="n" href="#{escape(view.anchor)}">{inner}</a>') if view.anchor else plain
    return Filled(linked, plain)


def size_name(sizes: Sequence[str]) -> Filled:
    """What stands for ``{size}``: the name of the chosen size, ``XS to XL`` until one is chosen."""
    inner = (
        _by_size(f"{sizes[0]} to {sizes[-1]}", sizes) if len(sizes) > 1 else _safe(sizes[0] if sizes else "one size")
    )
    plain = Markup(f'<span class="n">{inner}</span>')
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

# Below this line text is escaped and kept as plain strings, since a page holds thousands of them.


def _safe(text: str) -> str:
    return str(unbroken(text))


def _systems(first: System, alike: bool, words: Callable[[System], str], remark: str) -> str:
    if alike:
        return words(first) + remark
    second = System.CENTIMETRES if first is System.INCHES else System.INCHES
    return (
        f'<span class="{_CLASS[first]}">{words(first)}</span><span class="br"> (</span>'
        f'<span class="{_CLASS[second]}">{words(second)}</span>{remark}<span class="br">)</span>'
    )


def _by_size(all_sizes: str, each: Sequence[str]) -> str:
    spans = "".join(f'<span class="z{place}" hidden>{_safe(text)}</span>' for place, text in enumerate(each, 1))
    return f'<span class="all">{_safe(all_sizes)}</span>{spans}'
