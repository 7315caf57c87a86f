"""Seams: edges that meet, their allowance, and stitches that stretch."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import islice

from sitegen.checks.held import instead, system_of
from sitegen.checks.registry import COMMON_PRACTICE, check
from sitegen.checks.sewn_cloth import knits_of
from sitegen.findings import Finding, Place, Severity
from sitegen.quantities import RULER, ZERO, Length, Worked, decimal, inches, plus, show_working, work
from sitegen.sewing import STITCHES, Give, stitches_per_inch
from sitegen.tutorial import Computed, Hem, Join, Reference, edge_number, gathered_edge, pleated_width

SEAM_TOLERANCE = inches("1/8")
_PIECES = (
    "seam_allowance: 3/8 in\n"
    "fabrics: {main: {name: jersey, structure: knit, stretch_across: 40%}}\n"
    "pieces:\n"
    "  front: {cut: 1 on fold, fabric: main, edges: {side: 15 in}}\n"
    "  back: {cut: 1 on fold, fabric: main, edges: {side: BACK}}\n"
)
_STEP = "--- steps/01.yaml\ntitle: Sew the sides\ntext: Sew the side seams.\n"
_EQUAL = _PIECES.replace("BACK", "15 in")


@check(
    id="seam-match",
    area="seams",
    severity=Severity.WRONG,
    looks_at=Join,
    title="Joined edges that are not equally long",
    why="The longer edge puckers or is cut off at the end, and whatever follows no longer meets.",
    source="Seams to be joined are trued to equal length (costume terminology text); tolerance 1/8 in: "
    + COMMON_PRACTICE,
    trips=_PIECES.replace("BACK", "15 1/2 in") + _STEP + "join: [{edges: [front.side, back.side], stitch: zigzag}]",
    passes=_EQUAL + _STEP + "join: [{edges: [front.side, back.side], stitch: zigzag}]",
)
def seam_match(join: Join, computed: Computed) -> Iterator[Finding]:
    """Edges that are joined must be equally long within 1/8 in (3 mm), or differ by the stated ease, in every size.
    Gathered and pleated edges may meet as they are afterwards or as they are before. A band or elastic is stretched to
    fit and is not compared."""
    off = (unequal_in(join, size, computed) for size in range(computed.tutorial.size_count))
    yield from islice((each for each in off if each is not None), 1)


def unequal_in(join: Join, size: int, computed: Computed) -> Finding | None:
    """What is wrong with the edges of a seam in the size at this index; None if they meet, or nobody can know."""
    if join.stretched or any(_ring(name, computed) for chain in join.chains for name in chain):
        return None
    off = _unequal(join, size, computed, drawn_in=True)
    return off if off is not None and _unequal(join, size, computed, drawn_in=False) is not None else None


def _unequal(join: Join, size: int, computed: Computed, *, drawn_in: bool) -> Finding | None:
    """The first two sides of a seam that differ in this size, with gathers and pleats as they are after or before."""
    sides = [_chain_length(chain, computed, size, drawn_in=drawn_in) for chain in join.chains]
    known = [side for side in sides if side is not None]
    if len(known) != len(sides) or len(known) < 2:
        return None
    ease = _stated_ease(join, size)
    first = known[0]
    for chain, other in zip(join.chains[1:], known[1:], strict=True):
        apart = first.length - other.length - (ease or ZERO)
        if abs(apart) > SEAM_TOLERANCE:
            shorter = chain if apart > ZERO else join.chains[0]
            return _mismatch(chain[0].place, shorter, first, other, ease, size, computed)
    return None


def _stated_ease(join: Join, size: int) -> Length | None:
    amount = join.ease.amount_at(size) if join.ease is not None else None
    return amount.typed.value if amount is not None else None


def _mismatch(
    place: Place,
    short: tuple[Reference, ...],
    first: Worked,
    other: Worked,
    ease: Length | None,
    size: int,
    computed: Computed,
) -> Finding:
    system = computed.tutorial.first_system
    size_name = computed.size_name(size)
    more = first.length - other.length
    longer, shorter = (first, other) if more.mm > 0 else (other, first)
    stated = f", the stated ease is {RULER.show(ease, system)}" if ease is not None else ", and no ease is stated"
    return Finding(
        "seam-match",
        Severity.WRONG,
        place,
        f"{longer.name} is {RULER.show(abs(more), system)} longer than {shorter.name}"
        f"{f' in size {size_name}' if size_name else ''}{stated}.{_twice(short, longer.length, shorter.length)}",
        "",
        "",
        (*show_working(first, system), *show_working(other, system)),
        size_name,
    )


def _twice(short: tuple[Reference, ...], longer: Length, shorter: Length) -> str:
    """How an edge is written that lies there twice, where twice its length would do."""
    if len(short) != 1 or abs(longer - shorter * 2) > SEAM_TOLERANCE:
        return ""
    name = short[0].name
    return f" If two of them lie along it end to end, write {name} + {name}."


def _ring(name: Reference, computed: Computed) -> bool:
    return name.name in computed.tutorial.bands or name.name in computed.tutorial.elastics


def _chain_length(chain: tuple[Reference, ...], computed: Computed, size: int, *, drawn_in: bool) -> Worked | None:
    pleated = pleated_width(chain, computed, size) if drawn_in else None
    if pleated is not None:
        return pleated
    parts = [
        (gathered_edge(name, computed, size) if drawn_in else None)
        or computed.length(edge_number(name, computed.tutorial), size)
        for name in chain
    ]
    known = [part for part in parts if part is not None]
    if not known or len(known) != len(parts):
        return None
    if len(known) == 1:
        return known[0]
    return work(" + ".join(part.name for part in known), known[0], *(plus(part) for part in known[1:]))


@check(
    id="seam-allowance",
    area="seams",
    severity=Severity.WRONG,
    looks_at=Join,
    title="A seam sewn with another allowance than its edges have",
    why="Every length that was computed with the one allowance is wrong when the seam is sewn with the other.",
    source=COMMON_PRACTICE,
    trips=_EQUAL + _STEP + "join: [{edges: [front.side, back.side], stitch: zigzag, seam_allowance: 5/8 in}]",
    passes=_EQUAL + _STEP + "join: [{edges: [front.side, back.side], stitch: zigzag, seam_allowance: 3/8 in}]",
)
def seam_allowance(join: Join, computed: Computed) -> Iterator[Finding]:
    """The allowance that a step states for a seam must be that of the edges which it joins. A binding is sewn on at
    its own fold, and is not compared."""
    amount = join.seam_allowance.amount_at(0) if join.seam_allowance is not None else None
    if amount is None or any(name.name in computed.tutorial.bindings for chain in join.chains for name in chain):
        return
    for name in (name for chain in join.chains for name in chain):
        exact = computed.number(f"{name.name}.seam_allowance", 0)
        if exact is None or RULER.agrees(amount.typed.value, exact.length, system_of(amount.typed)):
            continue
        right = instead(amount.typed, exact.length)
        yield Finding(
            "seam-allowance",
            Severity.WRONG,
            amount.place,
            f"This seam is sewn with {amount.typed.text.strip()}, but {name.name} has an allowance of {right}.",
            amount.typed.text.strip(),
            right,
            show_working(exact, system_of(amount.typed)),
        )
        return


@check(
    id="stretch-stitch",
    area="stretch",
    severity=Severity.DOUBTFUL,
    looks_at=(Join, Hem),
    title="A seam in a knit with a stitch that does not stretch",
    why="The thread breaks the first time that the garment is pulled on.",
    source="T-shirt seams want a zigzag, a stretch stitch or an overlock: New Mexico State Univ. Guide C-210",
    trips=_EQUAL + _STEP + "join: [{edges: [front.side, back.side], stitch: straight}]",
    passes=_EQUAL + _STEP + "join: [{edges: [front.side, back.side], stitch: zigzag}]",
)
def stretch_stitch(part: Join | Hem, computed: Computed) -> Iterator[Finding]:
    """A seam or hem in a knit needs a stitch that stretches, unless it is stabilised on purpose."""
    names = part.edges if isinstance(part, Hem) else tuple(part.names())
    if part.stitch is None or (isinstance(part, Join) and part.stabilised) or _stabilised(names, computed):
        return
    stitch = STITCHES.get(part.stitch.text)
    if stitch is None or stitch.give is not Give.LITTLE:
        return
    if not knits_of(names, computed.tutorial):
        return
    yield Finding(
        "stretch-stitch",
        Severity.DOUBTFUL,
        part.stitch.place,
        f"A {stitch.name} stitch hardly stretches, and this cloth is a knit. Sew it with a zigzag, a stretch stitch or"
        " an overlock, or say how it is stabilised.",
        part.stitch.text,
        "zigzag",
    )


def _stabilised(names: tuple[Reference, ...], computed: Computed) -> bool:
    """Whether some step keeps one of these edges from stretching."""
    steadied = {name.name for step in computed.tutorial.steps for name in step.stabilises}
    return any(name.name in steadied for name in names)


@check(
    id="stitch-length",
    area="units",
    severity=Severity.WRONG,
    looks_at=Join,
    title="Stitch length and stitches to the inch that disagree",
    why="Older machines are set by stitches to the inch, newer ones in millimetres; the two must be one stitch.",
    source="Stitches per inch = 25.4 ÷ millimetres (arithmetic)",
    trips=_EQUAL + _STEP + "join: [{edges: [front.side, back.side], stitch: zigzag, stitch_length: 2.5,"
    " stitches_per_inch: 12}]",
    passes=_EQUAL + _STEP + "join: [{edges: [front.side, back.side], stitch: zigzag, stitch_length: 2.5,"
    " stitches_per_inch: 10}]",
)
def stitch_length(join: Join, computed: Computed) -> Iterator[Finding]:
    """Written stitches to the inch must be 25.4 divided by the stitch length, to the nearest whole stitch."""
    if join.stitch_length_mm is None or join.stitches_per_inch is None:
        return
    exact = stitches_per_inch("stitches to the inch", join.stitch_length_mm)
    right = decimal(exact.number, 0)
    said = join.stitches_per_inch.text
    if said not in (right, decimal(exact.number, 1)):
        yield Finding(
            "stitch-length",
            Severity.WRONG,
            join.stitches_per_inch.place,
            f"A stitch of {decimal(join.stitch_length_mm)} mm makes {right} stitches to the inch, not {said}.",
            said,
            right,
            show_working(exact, computed.tutorial.first_system),
        )
