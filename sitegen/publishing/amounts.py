"""The HTML of a number: every size and both systems are in the page, the stylesheet shows what was chosen.

The contract with a theme: ``in`` and ``cm`` hold the words of one system, an ``i`` beside them what is read only
between the two; ``all`` is read while no size is chosen, and the ``b`` of an element that is ``hidden`` belong to the
sizes in their order. So without the stylesheet the range is read alone. In a cell of a table the system of the site
stands bare, and a ``p`` holds the other. The shortest names of elements were taken, and a ``p`` needs no end tag there:
a page holds thousands of them.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass

from markupsafe import Markup, escape

from sitegen.publishing.aligned import aligned
from sitegen.publishing.views import Both, NumberView
from sitegen.quantities import ENGLISH, English, System


@dataclass(frozen=True, slots=True)
class Filled:
    """What stands in prose for a reference."""

    linked: Markup
    """With a link to the working, where there is one."""
    plain: Markup
    """The same without the link, for use inside another link."""


BY_SIZE = ", by size"
"""Stands behind a number that differs, while no size is chosen."""


def amount(both: Both, first: System) -> Markup:
    """An amount in a sentence: ``17 3/4 in (45 cm)``, the system of the site first."""
    return Markup(_systems(first, both.alike, lambda system: _safe(both.text(system)), ""))


def cells(values: Sequence[Both], first: System) -> Markup:
    """A cell of a table for each amount: the two systems one below the other, without brackets."""
    return Markup("".join(f"<td>{_cell(value, first)}</td>" for value in values))


def number(view: NumberView, first: System, language: English = ENGLISH) -> Filled:
    """A number in prose. One that differs reads ``16 to 21 in (41 to 53 cm, by size)`` until a size is chosen."""
    if view.by_size:
        lowest, highest = view.values[view.low], view.values[view.high]
        alike = all(value.alike for value in view.values)

        def words(system: System) -> str:
            each = [value.text(system) for value in view.values]
            unit = unit_of_all(each)
            span = spread(lowest.text(system), highest.text(system), language).removesuffix(unit)
            return _by_size(span, [text.removesuffix(unit) for text in each]) + _safe(unit, "\N{NO-BREAK SPACE}")

        inner = _systems(first, alike, words, f'<b class="all">{escape(language.say(BY_SIZE))}</b>')
    else:
        inner = str(amount(view.values[0], first))
    plain = Markup(f'<b class="n">{inner}</b>')
    linked = Markup(f'<a class="n" href="#{escape(view.anchor)}">{inner}</a>') if view.anchor else plain
    return Filled(linked, plain)


def size_name(sizes: Sequence[str], language: English = ENGLISH) -> Filled:
    """What stands for ``{size}``: the name of the chosen size, ``XS to XL`` until one is chosen."""
    inner = (
        _by_size(language.span(sizes[0], sizes[-1]), sizes)
        if len(sizes) > 1
        else _safe(sizes[0] if sizes else language.say("one size"))
    )
    plain = Markup(f'<b class="n">{inner}</b>')
    return Filled(plain, plain)


def sentences(texts: Sequence[str], shown: int) -> Markup:
    """Sentences of which each size has its own: the words that all share stand once.

    ``texts`` hold one for all sizes, or one for each. While no size is chosen, the one at ``shown`` is read.
    """
    together = aligned(texts)
    if together is None:
        return Markup(_by_size(texts[shown], texts))
    inner = _safe(together.words[0])
    for each, words in zip(together.amounts, together.words[1:], strict=True):
        unit = unit_of_all(each)
        own = [text.removesuffix(unit) for text in each]
        inner += _by_size(own[shown], own) + _safe(unit, "\N{NO-BREAK SPACE}") + _safe(words)
    return Markup(inner)


def spread(low: str, high: str, language: English = ENGLISH) -> str:
    """Two amounts as a range, the unit said once if it is the same: ``16 1/4 to 21 in``."""
    number_low, _, unit_low = low.rpartition(" ")
    _, _, unit_high = high.rpartition(" ")
    return language.span(number_low if number_low and unit_low == unit_high else low, high)


def unit_of_all(texts: Sequence[str]) -> str:
    """The unit that ends every amount, with the space before it; empty when there is none or they have several."""
    units = {text.rpartition(" ")[2] if " " in text else "" for text in texts}
    unit = units.pop()
    return f" {unit}" if unit and not units and not unit[0].isdigit() else ""


def unbroken(text: str) -> Markup:
    """The text, escaped, kept on one line between a number, its fraction and its unit, and within a range."""
    return escape(kept_together(text))


def kept_together(text: str) -> str:
    """The same as plain text."""
    return _INSIDE.sub("\N{NO-BREAK SPACE}", text)


def with_squares(text: str) -> str:
    """The weights of cloth in a text as they are printed: ``190 g/m²`` for the typed ``190 g/m2``."""
    return _SQUARED.sub(r"\1²", text)


_SQUARED = re.compile(r"(?<=\d)( ?(?:g/m|oz/yd))2\b")
_INSIDE = re.compile(r"(?<=\d) (?=\S)|(?<=\d to) (?=\d)|(?<=\d a) (?=\d)")
_CLASS = {System.INCHES: "in", System.CENTIMETRES: "cm"}

# Below this line text is escaped and kept as plain strings, since a page holds thousands of them.


def _safe(text: str, space: str = " ") -> str:
    return str(unbroken(text)).replace(" ", space)


def _cell(both: Both, first: System) -> str:
    if both.alike:
        return str(escape(both.inches))
    one, other = (both.inches, both.metric) if first is System.INCHES else (both.metric, both.inches)
    return f"{escape(one)}<p>{escape(other)}</p>"


def _systems(first: System, alike: bool, words: Callable[[System], str], remark: str) -> str:
    if alike:
        return words(first) + remark
    second = System.CENTIMETRES if first is System.INCHES else System.INCHES
    return (
        f'<b class="{_CLASS[first]}">{words(first)}</b><i> (</i>'
        f'<b class="{_CLASS[second]}">{words(second)}</b>{remark}<i>)</i>'
    )


def _by_size(all_sizes: str, each: Sequence[str]) -> str:
    if len(set(each)) == 1:
        return _safe(each[0])
    own = "".join(f"<b>{escape(text)}</b>" for text in each)
    return f'<b class="all">{_safe(all_sizes)}</b><b hidden>{own}</b>'
