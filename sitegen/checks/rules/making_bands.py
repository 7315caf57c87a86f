"""Bands that are sewn to another edge than their opening, and edges that are hemmed although a band is on them."""

from __future__ import annotations

from collections.abc import Iterator

from sitegen.checks.registry import check
from sitegen.checks.rules.seams import SEAM_TOLERANCE
from sitegen.checks.told import by_title, listed
from sitegen.findings import Finding, Severity
from sitegen.tutorial import Band, Computed, Join, Reference, Step, Tutorial, edge_number, part_of, words_of

_TOP = (
    "seam_allowance: 1/4 in\n"
    "fabrics: {rib: {name: rib, structure: knit, stretch_across: 80%}}\n"
    "pieces: {shell: {cut: 1, fabric: rib, edges: {neckline: 18 in, wrist: 8 in}}}\n"
    "bands: {collar: {opening: [shell.neckline], ratio: 85%, finished_width: 2 in, fabric: rib}}\n"
    "hems: {bottom: {edges: [shell.wrist], turn: 1 in}, top: {edges: [shell.neckline], turn: 1 in}}\n"
)
_COLLAR = "--- steps/01.yaml\ntitle: Sew on the collar\ntext: Sew.\njoin: [{edges: [collar, EDGE]}]\n"
_HEM = "--- steps/02.yaml\ntitle: Hem\ntext: Turn and sew.\nhem: HEM\n"


@check(
    id="band-elsewhere",
    area="making",
    severity=Severity.WRONG,
    looks_at=Tutorial,
    title="A band that is sewn to another edge than its opening",
    why="The band was cut for its opening; on another edge it is too short or too long, and the opening stays raw.",
    source="Follows from the steps",
    trips=_TOP + _COLLAR.replace("EDGE", "shell.wrist") + _HEM.replace("HEM", "bottom"),
    passes=_TOP + _COLLAR.replace("EDGE", "shell.neckline") + _HEM.replace("HEM", "bottom"),
)
def band_elsewhere(tutorial: Tutorial, computed: Computed) -> Iterator[Finding]:
    """A band is sewn to an edge of its opening, or to what is sewn or gathered to one. Nothing is said of its ends, of
    bands that are sewn to each other, and where one of several edges is of its opening. Where other seams sew it to its
    opening, and the edge is in the opening of no other band, it is doubtful, and an edge as long as the opening, such
    as that of a lining, is let pass."""
    for step in tutorial.steps:
        for join in step.every_join():
            for band in tutorial.bands.values():
                edges = _sewn_to(band, join, tutorial)
                severity = _how_wrong(band, edges, join, computed)
                if severity is not None:
                    yield _elsewhere(band, edges, severity)


def _sewn_to(band: Band, join: Join, tutorial: Tutorial) -> tuple[Reference, ...]:
    """The edges of pieces and circles to which a join sews a band: those of the chains in which the band is not."""
    if all(band.key != name.name for name in join.names()):
        return ()
    others = [chain for chain in join.chains if all(name.name != band.key for name in chain)]
    return tuple(name for chain in others for name in chain if _is_edge(name, tutorial))


def _is_edge(name: Reference, tutorial: Tutorial) -> bool:
    return "." in name.name and part_of(name.name, tutorial) is not None


def _how_wrong(band: Band, edges: tuple[Reference, ...], join: Join, computed: Computed) -> Severity | None:
    tutorial = computed.tutorial
    here = {name.name for name in join.names()}
    joined = [other for other in tutorial.bands.values() if other.key in here]
    fitting = {name for other in joined for name in _fitting(other, tutorial)}
    if not edges or any(edge.name in fitting for edge in edges):
        return None
    own = {edge.name for edge in band.around}
    sewn = [name.name for each in _joins(tutorial) for name in _sewn_to(band, each, tutorial)]
    others = {edge.name for other in tutorial.bands.values() for edge in other.around}
    if not own & set(sewn) or any(edge.name in others for edge in edges):
        return Severity.WRONG
    return None if _as_long(band, edges, computed) else Severity.DOUBTFUL


def _joins(tutorial: Tutorial) -> Iterator[Join]:
    yield from (join for step in tutorial.steps for join in step.every_join())


def _fitting(band: Band, tutorial: Tutorial) -> set[str]:
    """The edges of a band's opening, and those that are sewn or gathered to one of them."""
    own = {edge.name for edge in band.around}
    found = set(own)
    for join in _joins(tutorial):
        names = {name.name for name in join.names()}
        if band.key not in names and names & own:
            found |= names
    for gather in tutorial.gathers.values():
        if {name.name for name in gather.onto} & {*own, band.key}:
            found |= {name.name for name in gather.edges}
    return found


def _as_long(band: Band, edges: tuple[Reference, ...], computed: Computed) -> bool:
    """Whether these edges together are as long as the opening in every size, as far as anybody can know."""
    for size in range(computed.tutorial.size_count):
        opening = computed.length(f"{band.key}.opening_length", size)
        found = [computed.length(edge_number(edge, computed.tutorial), size) for edge in edges]
        known = [each.length for each in found if each is not None]
        if opening is None or len(known) < len(found):
            continue
        if abs(sum(known[1:], start=known[0]) - opening.length) > SEAM_TOLERANCE:
            return False
    return True


def _elsewhere(band: Band, edges: tuple[Reference, ...], severity: Severity) -> Finding:
    opening = tuple(dict.fromkeys(edge.name for edge in band.around))
    said = edges[0].name if len(edges) == 1 else ""
    return Finding(
        "band-elsewhere",
        severity,
        edges[0].place,
        f"The {words_of(band.key)} is sewn to {listed(edge.name for edge in edges)} here, but its opening is"
        f" {listed(opening)}. One of the two is another edge than is meant.",
        said,
        " + ".join(opening) if said else "",
    )


@check(
    id="hemmed-under-band",
    area="making",
    severity=Severity.WRONG,
    looks_at=Tutorial,
    title="An edge that is hemmed although a band is sewn to it",
    why="Once the band is on, the edge lies inside its seam and can no longer be turned up.",
    source="Follows from the steps",
    trips=_TOP + _COLLAR.replace("EDGE", "shell.neckline") + _HEM.replace("HEM", "top"),
    passes=_TOP + _COLLAR.replace("EDGE", "shell.neckline") + _HEM.replace("HEM", "bottom"),
)
def hemmed_under_band(tutorial: Tutorial, computed: Computed) -> Iterator[Finding]:
    """An edge to which a step sews a band is not hemmed in that step or a later one. The other way of a step is left
    out, and so is a garment in another of its views."""
    banded: dict[str, tuple[Band, Step]] = {}
    for step in tutorial.steps:
        for join in step.joins:
            for band in tutorial.bands.values():
                for edge in _sewn_to(band, join, tutorial):
                    banded.setdefault(edge.name, (band, step))
        for name in step.hems:
            hem = tutorial.hems.get(name.name)
            edge_name = next((edge.name for edge in hem.edges if edge.name in banded), None) if hem else None
            if edge_name is None:
                continue
            band, earlier = banded[edge_name]
            where = "in this step" if earlier is step else f"in {by_title(earlier)}"
            yield Finding(
                "hemmed-under-band",
                Severity.WRONG,
                name.place,
                f"This hem turns up {edge_name}, but the {words_of(band.key)} is sewn to that edge {where}. If the"
                " student has the choice, write it as views.",
                name.name,
            )
