"""The order of making against networkx, a library of graphs: what comes before what, layers, the longest way, and by
which seams parts hang together."""

from __future__ import annotations

from itertools import combinations, pairwise
from pathlib import Path

import pytest
from content import EXAMPLE
from hypothesis import given
from hypothesis import strategies as st

from sitegen.checks import review
from sitegen.diagrams import arrows_of
from sitegen.findings import Place
from sitegen.reading import ContentFolder
from sitegen.tutorial import Join, Joining, Link, Making, Seam, Work, making_of, seams_of
from sitegen.tutorial.making.joining import hanging_together

nx = pytest.importorskip("networkx")

MOST = 12
PARTS = "abcdefg"
JOIN = Join(Place("step.yaml"), (), None, None, None, None, None, None, "", False, False, None, None)


@st.composite
def orders(draw: st.DrawFn) -> Making:
    """Some steps with minutes, and links from earlier to later ones, sure or not."""
    count = draw(st.integers(0, MOST))
    minutes = draw(st.lists(st.integers(0, 90), min_size=count, max_size=count))
    works = [Work(step, frozenset(), frozenset(), frozenset(), each) for step, each in enumerate(minutes, 1)]
    pairs = list(combinations(range(1, count + 1), 2))
    chosen = draw(st.lists(st.sampled_from(pairs), unique=True)) if pairs else []
    sure = draw(st.lists(st.booleans(), min_size=len(chosen), max_size=len(chosen)))
    links = [Link(*pair, ("front",) if each else ()) for pair, each in zip(chosen, sure, strict=True)]
    return Making(tuple(works), tuple(links))


seam_lists = st.lists(st.lists(st.sampled_from(PARTS), min_size=2, max_size=4, unique=True), max_size=9).map(
    lambda lists: tuple(Seam(step, JOIN, tuple(parts)) for step, parts in enumerate(lists, 1))
)


def drawn(made: Making, *, sure: bool) -> nx.DiGraph:
    graph = nx.DiGraph()
    graph.add_nodes_from(work.step for work in made.works)
    graph.add_edges_from((link.before, link.after) for link in made.links if link.sure or not sure)
    return graph


def same_as_networkx(made: Making) -> None:
    certain, kept = drawn(made, sure=True), drawn(made, sure=False)
    steps = [work.step for work in made.works]
    for step in steps:
        assert made.must_come_before(step) == tuple(sorted(nx.ancestors(certain, step)))
    assert made.layers() == tuple(tuple(sorted(layer)) for layer in nx.topological_generations(kept))
    closed = nx.transitive_closure_dag(kept)
    apart = tuple(pair for pair in combinations(steps, 2) if not closed.has_edge(*pair))
    assert made.can_be_done_together() == apart
    minutes = {work.step: work.minutes or 0 for work in made.works}
    timed = nx.DiGraph()
    timed.add_weighted_edges_from((0, step, minutes[step]) for step in steps)
    timed.add_weighted_edges_from((one, other, minutes[other]) for one, other in kept.edges)
    longest = made.longest_path()
    assert longest is not None
    assert longest.minutes == nx.dag_longest_path_length(timed)
    assert longest.minutes == sum(minutes[step] for step in longest.steps)
    assert all(kept.has_edge(*pair) for pair in pairwise(longest.steps))
    needed, following = nx.transitive_reduction(certain), nx.transitive_reduction(kept)
    arrows = {(arrow.before, arrow.after): arrow.sure for arrow in arrows_of(made)}
    uncertain = set(kept.edges) - set(certain.edges)
    assert {pair for pair, sure in arrows.items() if sure} == set(needed.edges)
    assert {pair for pair, sure in arrows.items() if not sure} == set(following.edges) & uncertain


@given(orders())
def test_any_order_of_steps_is_told_as_networkx_tells_it(made: Making) -> None:
    same_as_networkx(made)


def test_orders_of_the_example_are_told_as_networkx_tells_them() -> None:
    found = review(ContentFolder(EXAMPLE, Path(EXAMPLE).name)).tutorials
    assert found
    for each in found:
        same_as_networkx(making_of(each.tutorial))


def sewn(seams: tuple[Seam, ...]) -> nx.Graph:
    """Parts with every seam between two of them; the weight is the first step that sews them to each other."""
    graph = nx.Graph()
    graph.add_nodes_from(PARTS)
    for seam in reversed(seams):
        graph.add_edges_from(combinations(seam.parts, 2), weight=seam.step)
    return graph


@given(seam_lists, st.sampled_from(PARTS), st.sampled_from(PARTS))
def test_parts_hang_together_from_the_seam_on_that_a_least_spanning_tree_names(
    seams: tuple[Seam, ...], one: str, other: str
) -> None:
    graph, joining = sewn(seams), Joining(seams)
    way = joining.way(one, other)
    if not nx.has_path(graph, one, other):
        assert (joining.since(one, other), way) == (None, None)
        return
    assert way is not None
    tree = nx.minimum_spanning_tree(graph)
    last = max((tree.edges[pair]["weight"] for pair in pairwise(nx.shortest_path(tree, one, other))), default=0)
    assert joining.since(one, other) == last
    assert max((seam.step for seam in way), default=0) == last
    assert len(way) == nx.shortest_path_length(sewn(seams[:last]), one, other)


@given(seam_lists, st.sets(st.sampled_from(PARTS)))
def test_everything_sewn_to_a_part_is_its_connected_component(seams: tuple[Seam, ...], parts: set[str]) -> None:
    graph = sewn(seams)
    components = [nx.node_connected_component(graph, part) for part in parts]
    assert hanging_together(parts, seams) == frozenset[str]().union(*components)


def test_seams_of_the_example_tee_join_every_piece_and_band() -> None:
    found = review(ContentFolder(EXAMPLE, Path(EXAMPLE).name)).tutorials
    (tee,) = [each.tutorial for each in found if each.tutorial.key == "boxy-tee"]
    graph = nx.Graph()
    for seam in seams_of(tee):
        graph.add_edges_from(pairwise(seam.parts))
    assert [sorted(parts) for parts in nx.connected_components(graph)] == [
        sorted([*tee.pieces, *tee.bands]),
    ]
