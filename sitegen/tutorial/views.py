"""The garment in each combination of views that its author offers: with the parts and steps that belong to it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from itertools import product
from typing import TypeVar

from sitegen.tutorial.model import OnlyIn, Tutorial

P = TypeVar("P")


def combinations(tutorial: Tutorial) -> tuple[Tutorial, ...]:
    """The tutorial once for each combination of choices, the first choices first; itself when there are no views."""
    if not tutorial.views:
        return (tutorial,)
    views = tuple(tutorial.views)
    return tuple(
        _with(tutorial, dict(zip(views, choices, strict=True))) for choices in product(*tutorial.views.values())
    )


def _with(tutorial: Tutorial, chosen: Mapping[str, str]) -> Tutorial:
    left_out = {name for name, only_in in tutorial.only_in.items() if not _belongs(only_in, chosen)}

    def kept(parts: Mapping[str, P]) -> dict[str, P]:
        return {name: part for name, part in parts.items() if name not in left_out}

    steps = [step for step in tutorial.steps if _belongs(step.only_in, chosen)]
    return replace(
        tutorial,
        chosen=tuple(chosen.items()),
        fabrics=kept(tutorial.fabrics),
        pieces=kept(tutorial.pieces),
        bands=kept(tutorial.bands),
        hems=kept(tutorial.hems),
        elastics=kept(tutorial.elastics),
        joined=kept(tutorial.joined),
        girths=kept(tutorial.girths),
        changes=kept(tutorial.changes),
        swaps=kept(tutorial.swaps),
        spacings=kept(tutorial.spacings),
        gathers=kept(tutorial.gathers),
        pleats=kept(tutorial.pleats),
        bindings=kept(tutorial.bindings),
        circles=kept(tutorial.circles),
        boxed=kept(tutorial.boxed),
        drops=kept(tutorial.drops),
        trims=kept(tutorial.trims),
        supplies=tuple(each for each in tutorial.supplies if _belongs(each.only_in, chosen)),
        steps=tuple(replace(step, number=number) for number, step in enumerate(steps, 1)),
        claims=tuple(each for each in tutorial.claims if each.lengths.name.partition(".")[0] not in left_out),
        referred=tuple(each for each in tutorial.referred if each.name.partition(".")[0] not in left_out),
    )


def _belongs(only_in: OnlyIn, chosen: Mapping[str, str]) -> bool:
    return all(chosen.get(view) in choices for view, choices in only_in.items())
