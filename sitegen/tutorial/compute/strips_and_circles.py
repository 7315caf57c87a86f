"""Defines the numbers of bindings and of circle skirts."""

from __future__ import annotations

from sitegen.quantities import Worked, given, minus, plus, work
from sitegen.sewing import bias, circle, ease
from sitegen.tutorial.compute.given import allowance_or_own, lengths_maker, together
from sitegen.tutorial.compute.naming import words_of
from sitegen.tutorial.compute.numbers import Numbers
from sitegen.tutorial.model import Binding, CircleSkirt, Tutorial


def define_bindings(tutorial: Tutorial, numbers: Numbers) -> None:
    """Bindings: how wide to cut the strip, how long in all, out of how much cloth, and in how many strips."""
    for each in tutorial.bindings.values():
        _define_binding(each, tutorial, numbers)
        _define_strips(each, numbers)


def _define_binding(each: Binding, tutorial: Tutorial, numbers: Numbers) -> None:
    key = each.key
    for field, lengths in (
        ("finished_width", each.finished_width),
        ("overlap", each.overlap),
        ("turn_of_cloth", each.turn_of_cloth),
        ("square", each.square),
    ):
        if lengths:
            numbers.define(f"{key}.{field}", lengths_maker(lengths, numbers))
    allowance_or_own(f"{key}.join_allowance", each.join_allowance, numbers)
    width, edge, length = (f"{key}.{field}" for field in ("strip_width", "edge_length", "length"))
    turn = f"{key}.turn_of_cloth"
    numbers.define(
        width,
        lambda size: bias.strip_width(
            words_of(width),
            numbers.at(f"{key}.finished_width", size),
            each.kind,
            numbers.at(turn, size) if turn in numbers else None,
        ),
    )
    numbers.define(edge, together(edge, each.edges, tutorial, numbers))
    numbers.define(
        f"{key}.needed",
        lambda size: bias.binding_length(
            words_of(f"{key}.needed"), numbers.at(edge, size), numbers.at(f"{key}.overlap", size)
        ),
    )
    numbers.define(
        f"{key}.area",
        lambda size: bias.area(words_of(f"{key}.area"), numbers.at(length, size), numbers.at(width, size)),
    )
    numbers.define(
        f"{key}.square_side",
        lambda size: bias.square_side(
            words_of(f"{key}.square_side"), numbers.at(length, size), numbers.at(width, size)
        ),
    )


def _define_strips(each: Binding, numbers: Numbers) -> None:
    """How many strips are joined, and the length to cut in all; one strip where it is not said how long it can be."""
    key = each.key
    length, needed, strip, join, joins = (f"{key}.{field}" for field in ("length", "needed", "strip", "join", "joins"))
    if each.square is None and each.strip is None:
        numbers.define(length, lambda size: numbers.at(needed, size).named(words_of(length)))
        return

    def allowance(size: int) -> Worked:
        return numbers.at(f"{key}.join_allowance", size)

    if each.strip is not None:
        numbers.define(strip, lengths_maker(each.strip, numbers))
    else:
        _define_square(each, numbers)
        numbers.define(
            strip,
            lambda size: bias.diagonal(
                words_of(strip),
                bias.joined_side("square once joined", numbers.at(f"{key}.square", size), allowance(size)),
            ),
        )
    numbers.define(join, lambda size: bias.slanted_join(words_of(join), allowance(size)))
    numbers.define(
        f"{key}.strips",
        lambda size: bias.strips_needed(
            words_of(f"{key}.strips"), numbers.at(needed, size), numbers.at(strip, size), numbers.at(join, size)
        ),
    )
    numbers.define(
        joins,
        lambda size: work(words_of(joins), numbers.at(f"{key}.strips", size), minus(given("strip at the end", 1))),
    )
    numbers.define(
        length,
        lambda size: bias.binding_length(
            words_of(length),
            numbers.at(f"{key}.edge_length", size),
            numbers.at(f"{key}.overlap", size),
            numbers.at(join, size),
            int(numbers.at(joins, size).number),
        ),
    )


def _define_square(each: Binding, numbers: Numbers) -> None:
    """What a square of cloth makes: whole strips, the joined strip, and what is left over."""
    key = each.key
    sums = (
        ("whole_strips", bias.whole_strips),
        ("sewn_length", bias.sewn_length),
        ("left_over", bias.left_over),
    )
    for field, result in sums:
        name = f"{key}.{field}"
        numbers.define(
            name,
            lambda size, name=name, result=result: result(  # type: ignore[misc]
                words_of(name),
                numbers.at(f"{key}.square", size),
                numbers.at(f"{key}.strip_width", size),
                numbers.at(f"{key}.join_allowance", size),
            ),
        )


def define_circles(tutorial: Tutorial, numbers: Numbers) -> None:
    """Circle skirts: the radius of the waist, the radii to cut, and the edges along both."""
    for each in tutorial.circles.values():
        _define_circle(each, numbers)


def _define_circle(each: CircleSkirt, numbers: Numbers) -> None:
    key = each.key
    waist, radius, length = (f"{key}.{field}" for field in ("waist", "radius", "length"))
    measured = lengths_maker(
        each.waist, numbers, f"waist measurement for the {words_of(key)}" if each.ease else words_of(waist)
    )
    if each.ease:
        numbers.define(f"{key}.ease", lengths_maker(each.ease, numbers))
        numbers.define(
            waist,
            lambda size: ease.finished_for(words_of(waist), measured(size), numbers.at(f"{key}.ease", size)),
        )
    else:
        numbers.define(waist, measured)
    numbers.define(length, lengths_maker(each.length, numbers))
    allowance_or_own(f"{key}.seam_allowance", each.seam_allowance, numbers)
    numbers.define(radius, lambda size: circle.radius(words_of(radius), numbers.at(waist, size), each.share))
    numbers.define(
        f"{key}.cut_radius",
        lambda size: circle.cut_radius(
            words_of(f"{key}.cut_radius"), numbers.at(radius, size), numbers.at(f"{key}.seam_allowance", size)
        ),
    )
    if each.hem_allowance:
        numbers.define(f"{key}.hem", lengths_maker(each.hem_allowance, numbers, "hem allowance"))
    hem = f"{each.hem.name}.allowance" if each.hem else f"{key}.hem"

    def hem_radius(size: int) -> Worked:
        turned = numbers.length_at(hem, size) if each.hem or each.hem_allowance else None
        return circle.hem_radius(
            words_of(f"{key}.hem_radius"), numbers.at(radius, size), numbers.at(length, size), turned
        )

    def hem_edge(size: int) -> Worked:
        finished = work("radius of the finished hem", numbers.at(radius, size), plus(numbers.at(length, size)))
        return circle.edge(words_of(each.hem_edge), finished, each.share)

    numbers.define(f"{key}.hem_radius", hem_radius)
    numbers.define(each.hem_edge, hem_edge)
