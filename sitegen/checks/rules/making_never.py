"""What the garment has and no step sews, turns, puts in or cuts."""

from __future__ import annotations

from collections.abc import Iterator

from sitegen.checks.registry import COMMON_PRACTICE, check
from sitegen.checks.told import handled, tells
from sitegen.findings import Finding, Severity
from sitegen.tutorial import (
    Band,
    Binding,
    Computed,
    Elastic,
    Hem,
    Reference,
    Step,
    Trim,
    Tutorial,
    part_of,
    parts_of,
    seat_of,
)

_CLOTH = "seam_allowance: 3/8 in\nfabrics: {main: {name: jersey, structure: knit, stretch_across: 60%}}\n"
_BAND = _CLOTH + (
    "pieces: {sleeve: {cut: 2, fabric: main, edges: {wrist: 9 in, underarm: 17 in}}}\n"
    "bands: {cuffs: {opening: [sleeve.wrist], ratio: 80%, finished_width: 2 in, fabric: main, make: 2}}\n"
)
_UNDERARM = (
    "--- steps/01.yaml\ntitle: Sew the sleeves\ntext: Sew.\njoin: [{edges: [sleeve.underarm, sleeve.underarm]}]\n"
)
_CUFFS = "--- steps/02.yaml\ntitle: Sew on the cuffs\ntext: Sew.\njoin: [{edges: [cuffs, sleeve.wrist]}]\n"
_HEM = _CLOTH + (
    "pieces: {sleeve: {cut: 2, fabric: main, edges: {wrist: 9 in, underarm: 17 in}}}\n"
    "hems: {sleeve_hem: {edges: [sleeve.wrist], turn: 1 in}}\n"
)
_TURNED = "--- steps/02.yaml\ntitle: Hem\ntext: Turn and sew.\nhem: [sleeve_hem]\n"
_RING = _CLOTH + (
    "body: {waist: 22 in}\n"
    "pieces: {front: {cut: 2, fabric: main, sides: {top: ring}, edges: {waist: 12 in, side: 10 in}}}\n"
    "elastics: {ring: {around: body.waist, ratio: 90%, overlap: 1 in, width: 3/4 in, room: 1/8 in}}\n"
)
_SIDES = "--- steps/01.yaml\ntitle: Sew the sides\ntext: Sew.\njoin: [{edges: [front.side, front.side]}]\n"
_CASING = "--- steps/02.yaml\ntitle: Casing\ntext: Sew the casing and put the elastic in.\nfinish: [front.waist]\n"


@check(
    id="band-never-sewn",
    area="making",
    severity=Severity.DOUBTFUL,
    looks_at=(Band, Binding),
    title="A band or binding that no step sews on",
    why="Either it is left over, or a step does not say what it sews.",
    source="Follows from the steps",
    trips=_BAND + _UNDERARM,
    passes=_BAND + _UNDERARM + _CUFFS,
)
def band_never_sewn(band: Band | Binding, computed: Computed) -> Iterator[Finding]:
    """Every band and binding is joined to something else than itself in some step, if any step says what it sews. A
    binding is sewn as well where its edges are finished."""
    steps = computed.tutorial.steps
    seams = [{name.name for name in join.names()} for step in steps for join in step.every_join()]
    joined = {name for names in seams if len(names) > 1 for name in names}
    edges = band.edges if isinstance(band, Binding) else band.around
    bound = {name.name for step in steps for name in _finished(step)} if isinstance(band, Binding) else set()
    if seams and band.key not in joined and not {edge.name for edge in edges} <= bound:
        opening = " + ".join(edge.name for edge in edges)
        yield Finding(
            "band-never-sewn",
            Severity.DOUBTFUL,
            band.place,
            f"No step sews on the {band.key.replace('_', ' ')}. Add to its step"
            f" join: [{{edges: [{band.key}, {opening}]}}]",
        )


@check(
    id="hem-never-turned",
    area="making",
    severity=Severity.DOUBTFUL,
    looks_at=Hem,
    title="A hem that no step turns",
    why="Either the hem is left over, or the student is never told to turn it.",
    source="Follows from the steps",
    trips=_HEM + _UNDERARM,
    passes=_HEM + _UNDERARM + _TURNED,
)
def hem_never_turned(hem: Hem, computed: Computed) -> Iterator[Finding]:
    """Every hem is turned in some step, if any step says what it sews."""
    turned = {name.name for step in computed.tutorial.steps for name in _hems(step)}
    if tells(computed.tutorial) and hem.key not in turned:
        yield Finding(
            "hem-never-turned",
            Severity.DOUBTFUL,
            hem.place,
            f"No step turns the hem {hem.key.replace('_', ' ')}. Add to its step hem: [{hem.key}]",
        )


def _finished(step: Step) -> Iterator[Reference]:
    ways = (step.finishes, step.other_way.finishes if step.other_way else ())
    yield from (name for finishes in ways for chain in finishes for name in chain)


def _hems(step: Step) -> tuple[Reference, ...]:
    return (*step.hems, *(step.other_way.hems if step.other_way else ()))


@check(
    id="elastic-never-inserted",
    area="making",
    severity=Severity.DOUBTFUL,
    looks_at=Elastic,
    title="Elastic that no step puts in",
    why="Either the elastic is left over, or the student is never told when to put it in.",
    source="Follows from the steps",
    trips=_RING + _SIDES + _CASING,
    passes=_RING + _SIDES + _CASING + "insert: [ring]\n",
)
def elastic_never_inserted(elastic: Elastic, computed: Computed) -> Iterator[Finding]:
    """Every elastic is put in or sewn on in some step, if any step says what it sews."""
    tutorial = computed.tutorial
    used = {name.name for step in tutorial.steps for name in handled(step, tutorial)}
    if tells(tutorial) and elastic.key not in used:
        yield Finding(
            "elastic-never-inserted",
            Severity.DOUBTFUL,
            elastic.place,
            f"No step puts in the {elastic.key.replace('_', ' ')}. Add to its step insert: [{elastic.key}]",
        )


@check(
    id="edge-never-sewn",
    area="making",
    severity=Severity.DOUBTFUL,
    looks_at=Tutorial,
    title="An edge that is neither sewn nor finished",
    why="Either the edge stays raw and open, or a step does not say what it sews.",
    source="Follows from the steps; " + COMMON_PRACTICE,
    trips=_HEM.replace("hems: {sleeve_hem: {edges: [sleeve.wrist], turn: 1 in}}\n", "") + _UNDERARM,
    passes=_HEM + _UNDERARM + _TURNED,
)
def edge_never_sewn(tutorial: Tutorial, computed: Computed) -> Iterator[Finding]:
    """An edge of a piece is joined, hemmed, finished, stabilised, has a zip sewn in, or lies in a casing, a
    hem or binding, or in the opening of a band that is sewn to no edge. Edges of which only a girth, a row of marks or
    a taper is made are lines to measure. Of a piece none of whose edges is in any step, nothing is said."""
    in_steps = _in_steps(tutorial)
    openings = {edge for band in tutorial.bands.values() for edge in _around(band)}
    elsewhere = _in_parts(tutorial) | (_measured(tutorial) - openings)
    for piece in tutorial.pieces.values():
        told = any(edge.name in in_steps for edge in piece.edges.values())
        for edge in piece.edges.values() if told else ():
            if edge.name not in in_steps and edge.name not in elsewhere:
                opening = next((band.key for band in tutorial.bands.values() if edge.name in _around(band)), "")
                trim = next((trim.key for trim in tutorial.trims.values() if edge.name in _opening(trim)), "")
                why = f", but it is in the opening of the {opening.replace('_', ' ')}" if opening else ""
                line = "" if opening else " If it is only a line to measure, put it into girths."
                if trim and not opening:
                    line = f" Where the {trim.replace('_', ' ')} is sewn in, that is insert: [{trim}]."
                yield Finding(
                    "edge-never-sewn",
                    Severity.DOUBTFUL,
                    edge.place,
                    f"{edge.name} is in no seam, band, hem or finish of any step{why}. Add it to the step that sews"
                    f" it.{line}",
                )


def _around(band: Band) -> set[str]:
    return {edge.name for edge in band.around}


def _opening(trim: Trim) -> set[str]:
    return {edge.name for edge in trim.edges} if trim.is_zip else set()


def _in_steps(tutorial: Tutorial) -> set[str]:
    """What any step sews, turns or finishes, in either way of doing it."""
    found = {name.name for step in tutorial.steps for name in handled(step, tutorial)}
    others = [step.other_way for step in tutorial.steps if step.other_way]
    found |= {name.name for way in others for join in way.joins for name in join.names()}
    found |= {name.name for step in tutorial.steps for name in _finished(step)}
    turned = (tutorial.hems.get(name.name) for way in others for name in way.hems)
    return found | {edge.name for hem in turned if hem is not None for edge in hem.edges}


def _in_parts(tutorial: Tutorial) -> set[str]:
    """What bands, bindings, hems and elastics go along; that they are sewn at all is looked at by itself. A band that a
    step sews to an edge goes along what it is sewn to."""
    seams = [[name.name for name in join.names()] for step in tutorial.steps for join in step.every_join()]
    sewn = {name for names in seams if any("." in other for other in names) for name in names}
    found = {edge for band in tutorial.bands.values() if band.key not in sewn for edge in _around(band)}
    found |= {edge.name for binding in tutorial.bindings.values() for edge in binding.edges}
    found |= {edge.name for hem in tutorial.hems.values() for edge in hem.edges}
    found |= {edge for elastic in tutorial.elastics.values() for edge in seat_of(elastic, tutorial)}
    return found | {elastic.around.name for elastic in tutorial.elastics.values()}


def _measured(tutorial: Tutorial) -> set[str]:
    """Lines of which only a girth, a row of marks or a taper is made."""
    found = {edge.name for girth in tutorial.girths.values() for edge in girth.edges}
    found |= {edge.name for spacing in tutorial.spacings.values() for edge in spacing.along}
    for piece in tutorial.pieces.values():
        widths = (piece.taper.top, piece.taper.bottom) if piece.taper else ()
        found |= {width.source.name for width in widths if isinstance(width.source, Reference)}
    return found


@check(
    id="never-cut",
    area="making",
    severity=Severity.DOUBTFUL,
    looks_at=Tutorial,
    title="A piece that no step cuts",
    why="The student comes to the seam and the piece is still in the cloth.",
    source="Follows from the steps",
    trips=_BAND + "--- steps/00.yaml\ntitle: Cut out\ntext: Cut the sleeves.\ncut: [sleeve]\n" + _UNDERARM + _CUFFS,
    passes=_BAND + "--- steps/00.yaml\ntitle: Cut out\ntext: Cut all.\ncut: [sleeve, cuffs]\n" + _UNDERARM + _CUFFS,
)
def never_cut(tutorial: Tutorial, computed: Computed) -> Iterator[Finding]:
    """Once any step says what it cuts, every piece, band, elastic, binding, circle and trim that is sewn is cut in some
    step. A zip is not cut."""
    cut = {name.name for step in tutorial.steps for name in step.cuts}
    sewn = {part_of(name.name, tutorial) for step in tutorial.steps for name in handled(step, tutorial)}
    for part in parts_of(tutorial) if cut else ():
        uncut = isinstance(part, Trim) and part.is_zip
        if part.key in sewn and part.key not in cut and not uncut:
            yield Finding(
                "never-cut",
                Severity.DOUBTFUL,
                part.place,
                f"No step cuts the {part.key.replace('_', ' ')}. Add it to a step, such as cut: [{part.key}]",
            )
