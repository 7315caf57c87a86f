"""Lengths in two units."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from sitegen.checks.held import alone, in_words
from sitegen.checks.registry import check
from sitegen.findings import Finding, Place, Severity
from sitegen.prose import find_pairs
from sitegen.quantities import Typed, pair_agrees, pair_for, show_exactly
from sitegen.tutorial import Computed, Lengths, Prose, Reference, Step, Supply, Words

_SOURCE = (
    "1 in = 25.4 mm exactly (National Bureau of Standards, Addendum to Circular 572, 1960);"
    " rounding as sewing handbooks print pairs, from 1/4 in (6 mm) to 60 in (152.5 cm)"
)


@check(
    id="unit-pair",
    area="units",
    severity=Severity.WRONG,
    looks_at=(Lengths, Prose, Supply, Step),
    title="Inches and centimetres that disagree",
    why="A student who works in the other unit cuts or sews another garment.",
    source="1 in = 25.4 mm exactly (National Bureau of Standards, Addendum to Circular 572, 1960); rounding as sewing"
    " handbooks print pairs, from 1/4 in (6 mm) to 60 in (152.5 cm)",
    trips="seam_allowance: 5/8 in (1 cm)",
    passes="seam_allowance: 5/8 in (1.5 cm)",
)
def unit_pair(part: Lengths | Prose | Supply | Step, computed: Computed) -> Iterator[Finding]:
    """A length given in two units, as a value, inside a text or among what is needed, must be one length, each rounded
    at a mark that the trade uses for lengths of that size."""
    if isinstance(part, Prose):
        for pair in find_pairs(part.text):
            place, said = part.locate(pair.start, pair.end), part.text[pair.start : pair.end]
            if pair.unit_slipped:
                message = f"{said} gives two different lengths in one kind of unit."
                yield Finding("unit-pair", Severity.WRONG, place, message, said, pair.unit_slipped)
            elif not pair.agrees:
                severity = Severity.WRONG if pair.sure else Severity.DOUBTFUL
                found = _finding(pair.first, pair.second, place)
                yield replace(found, said=" ".join(said.split()), severity=severity)
    elif isinstance(part, Supply | Step):
        words = part.needs if isinstance(part, Step) else (part.item, part.size, part.amount)
        yield from (finding for each in words if each is not None for finding in _in_words(each))
    elif not isinstance(part.source, Reference):
        for amount in part.source:
            second = amount.typed.pair
            if second is not None and not pair_agrees(amount.typed, second, bolt=part.bolt):
                yield _finding(amount.typed, second, amount.place)


def _in_words(words: Words) -> Iterator[Finding]:
    """Pairs in a short text, such as what a card needs: the whole text is put right."""
    for pair in find_pairs(words.text):
        said = words.text[pair.start : pair.end]
        if not pair.unit_slipped and not pair.agrees:
            found = _finding(pair.first, pair.second, words.place)
            yield replace(found, said=words.text, should_be=words.text.replace(said, found.should_be))
        elif pair.unit_slipped:
            message = f"{said} gives two different lengths in one kind of unit."
            right = words.text.replace(said, pair.unit_slipped)
            yield Finding("unit-pair", Severity.WRONG, words.place, message, words.text, right)


def _finding(typed: Typed, pair: Typed, place: Place) -> Finding:
    """The second length is put right from the first, in which the author thinks."""
    first, second = alone(typed), pair.text.strip()
    right = pair_for(typed, pair)
    swapped = in_words(pair, typed.value)
    if swapped.rpartition(" ")[0] == pair.number:
        right = swapped
    return Finding(
        "unit-pair",
        Severity.WRONG,
        place,
        f"{first} is {right}, not {second}.",
        typed.text.strip(),
        f"{first} ({right})",
        (f"{first} = {show_exactly(typed.value, pair.unit)}, on a ruler {right}",),
    )
