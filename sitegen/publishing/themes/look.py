"""The author's own colours and fonts in a theme, and whether what is read can be read."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace
from math import floor

from sitegen.findings import Collector, either, nearest
from sitegen.publishing.themes.contrast import contrast, nearest_that_does
from sitegen.publishing.themes.fonts import FONTS
from sitegen.publishing.themes.theme import SCHEMES, Pair, Theme
from sitegen.tutorial import Colour, Look, Words

_OPAQUE = len("#rrggbb")
_ON = {"light": "on a light screen", "dark": "on a dark screen", "print": "on paper"}


def in_its_look(theme: Theme, look: Look, collector: Collector) -> Theme:
    """The theme in the author's colours and fonts. What it does not know is reported and left out."""
    known = theme.colours_of("light")
    for each in (colour for named in look.colours.values() for colour in named):
        if each.name not in known:
            near = nearest(each.name, known, most=1)
            hint = f"Did you mean {near[0]}?" if near else f"Known are: {', '.join(known)}."
            message = f"The theme {theme.key} has no colour “{each.name}”. {hint}"
            collector.wrong("look-unknown", each.place, message)
    given = {scheme: tuple(each for each in named if each.name in known) for scheme, named in look.colours.items()}
    return replace(
        with_colours(theme, given, own=True), fonts={**theme.fonts, **fonts_are_known(look.fonts, collector)}
    )


def with_colours(theme: Theme, given: Mapping[str, tuple[Colour, ...]], *, own: bool) -> Theme:
    """The theme with other colours. ``own`` says that they stand in the content folder."""
    named = {scheme: {each.name: each for each in given.get(scheme, ())} for scheme in SCHEMES}
    theirs = {(scheme, name) for scheme, colours in named.items() for name in colours} if own else set()
    return replace(
        theme,
        colours={scheme: {**theme.colours.get(scheme, {}), **named[scheme]} for scheme in SCHEMES},
        own_colours=theme.own_colours | theirs,
    )


def fonts_are_known(chosen: Mapping[str, Words], collector: Collector) -> dict[str, Words]:
    """The lists of fonts that there are; of each other one it is said what there is."""
    for role, words in chosen.items():
        if words.text not in FONTS:
            near = nearest(words.text, FONTS, most=1)
            message = f"Expected {either(FONTS)}, found “{words.text}”. Example: {role}: {next(iter(FONTS))}"
            collector.wrong("wrong-kind", words.place, message, said=words.text, should_be=near[0] if near else "")
    return {role: words for role, words in chosen.items() if words.text in FONTS}


def weak_pairs(theme: Theme, scheme: str) -> Iterator[tuple[Pair, float]]:
    """The pairs of a scheme whose contrast is less than they need, with the contrast that they have.

    A colour that something shows through has no contrast of its own, and counts as none: 1 to 1.
    """
    named = theme.colours_of(scheme)
    for pair in theme.pairs:
        if pair.above in named and pair.ground in named:
            found = _contrast(named[pair.above].value, named[pair.ground].value)
            if found < pair.kind.least:
                yield pair, found


def contrast_is_enough(theme: Theme, collector: Collector) -> None:
    """Report each colour of the content folder with too little contrast, and each pair that a theme there names."""
    for scheme in SCHEMES:
        blamed: dict[str, list[tuple[Pair, float]]] = {}
        for pair, found in weak_pairs(theme, scheme):
            name = next((each for each in (pair.above, pair.ground) if _own(theme, scheme, each)), None)
            if name is not None:
                blamed.setdefault(name, []).append((pair, found))
            else:
                message = f"{_told(theme, scheme, pair, found)} Both colours are those of the theme it is based on."
                collector.wrong("look-contrast", pair.place, message, said=f"{pair.above} on {pair.ground}")
        for name, weak in blamed.items():
            _say(theme, scheme, name, weak, collector)


def _own(theme: Theme, scheme: str, name: str) -> bool:
    """Whether a colour of a scheme stands in the content folder, there or as the colour of light that it takes."""
    if name in theme.colours.get(scheme, {}):
        return (scheme, name) in theme.own_colours
    return ("light", name) in theme.own_colours


def _say(theme: Theme, scheme: str, name: str, weak: list[tuple[Pair, float]], collector: Collector) -> None:
    named = theme.colours_of(scheme)
    colour = named[name]
    pair, found = min(weak, key=lambda each: each[1] / each[0].kind.least)
    if len(colour.value) > _OPAQUE:
        message = f"{name} is read on others, or others on it, so that nothing may show through it: write six digits."
        collector.wrong("look-contrast", colour.place, message, said=colour.value, should_be=colour.value[:_OPAQUE])
        return
    does = _enough(theme, scheme, name, theme.pairs) or _enough(theme, scheme, name, tuple(each for each, _ in weak))
    cure = f"The nearest {name} that would do is {does}." if does else f"No {name} would do: change the other colour."
    collector.wrong(
        "look-contrast",
        colour.place,
        f"{_told(theme, scheme, pair, found)} {cure}",
        said=colour.value,
        should_be=does,
        working=tuple(
            f"{each.above} on {each.ground}: {_shown(ratio)} to 1, needed {each.kind.least:g} to 1"
            for each, ratio in weak
        ),
    )


def _told(theme: Theme, scheme: str, pair: Pair, found: float) -> str:
    named = theme.colours_of(scheme)
    return (
        f"The contrast of {pair.above} {named[pair.above].value} on {pair.ground} {named[pair.ground].value} "
        f"{_ON[scheme]} is {_shown(found)} to 1; {pair.kind.words} {pair.kind.least:g} to 1 at least (WCAG 2.2)."
    )


def _enough(theme: Theme, scheme: str, name: str, pairs: tuple[Pair, ...]) -> str:
    """The nearest colour of this name with which all these pairs can be read; empty when there is none."""
    values = {key: colour.value for key, colour in theme.colours_of(scheme).items()}
    mine = [pair for pair in pairs if name in (pair.above, pair.ground) and {pair.above, pair.ground} <= values.keys()]

    def does(value: str) -> bool:
        tried = {**values, name: value}
        return all(_contrast(tried[pair.above], tried[pair.ground]) >= pair.kind.least for pair in mine)

    return nearest_that_does(values[name], does)


def _contrast(above: str, ground: str) -> float:
    return contrast(above, ground) if len(above) == len(ground) == _OPAQUE else 1.0


def _shown(ratio: float) -> str:
    """Two decimals, never rounded up to what would be enough."""
    return f"{floor(ratio * 100) / 100:.2f}"
