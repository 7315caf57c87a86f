"""One step card from the computed tutorial."""

from __future__ import annotations

from collections.abc import Callable

from markupsafe import Markup

from sitegen.publishing.cautions import caution
from sitegen.publishing.markdown import Terms
from sitegen.publishing.marked_photos import ShowPhoto, marked_photo
from sitegen.publishing.number_book import CardNumbers, NumberBook
from sitegen.publishing.picture_views import Diagram
from sitegen.publishing.spoken import rendered
from sitegen.publishing.views import OtherWay, StepCard, Stitching, Video
from sitegen.quantities import ZERO, English, System, decimal
from sitegen.sewing import stitches_per_inch
from sitegen.tutorial import Computed, Hem, Join, Prose, Reference, Step, words_of
from sitegen.tutorial import OtherWay as Way

Draw = Callable[[str], Diagram | None]
_HEADING = 4


def card(
    step: Step, computed: Computed, book: NumberBook, first: System, show: ShowPhoto, draw: Draw, terms: Terms
) -> StepCard:
    """The card with its prose, numbers, stitches, pictures and diagrams."""
    numbers = CardNumbers(book, f"on card {step.number}", computed.tutorial.sizes, first)

    def prose(text: Prose | None) -> Markup:
        return rendered(text, book.language, numbers, _HEADING, terms)

    text, look_for, if_wrong = prose(step.text), prose(step.look_for), prose(step.if_wrong)
    stitching = _stitching(step, computed, numbers, book.language)
    way = step.other_way
    other_way = (
        OtherWay(prose(way.when), prose(way.text), _stitching(way, computed, numbers, book.language))
        if way is not None
        else None
    )
    photos = (marked_photo(photo, show, numbers) for photo in step.photos)
    pictures = tuple(picture for picture in photos if picture is not None)
    return StepCard(
        number=step.number,
        anchor=f"step-{step.number}",
        title=book.language.own(step.title),
        prose=text,
        minutes=step.minutes,
        needs=tuple(book.language.own(each.text) for each in step.needs),
        tools=tuple(book.language.own(tool.text) for tool in step.tools),
        cautions=tuple(caution(each.text, book.language) for each in step.cautions),
        stitching=stitching,
        numbers=numbers.used,
        working=numbers.told,
        pictures=pictures,
        diagrams=tuple(diagram for name in step.diagrams if (diagram := draw(name.name)) is not None),
        look_for=look_for,
        if_wrong=if_wrong,
        other_way=other_way,
        video=Video(step.video.text) if step.video else None,
    )


def _stitching(way: Step | Way, computed: Computed, numbers: CardNumbers, language: English) -> tuple[Stitching, ...]:
    """How each seam and hem is sewn, and which edges are neatened."""
    joins = tuple(_join(join, computed, numbers, language) for join in way.joins if join.stitch or join.press)
    turned = (computed.tutorial.hems.get(name.name) for name in way.hems)
    hems = tuple(_hem(hem, numbers, language) for hem in turned if hem is not None)
    return (*joins, *hems, *_neatened(way, language))


def _neatened(way: Step | Way, language: English) -> tuple[Stitching, ...]:
    """The edges that are neatened, all in one line."""
    edges = tuple(dict.fromkeys(name for chain in way.finishes for name in chain))
    return (Stitching(language.own(_chain(edges, language)), notes=(language.say("neatened"),)),) if edges else ()


def _join(join: Join, computed: Computed, numbers: CardNumbers, language: English) -> Stitching:
    edges = [name for chain in join.chains for name in chain]
    allowances = (_allowance_of(name, computed) for name in edges)
    allowance = next((view for name in allowances if _is_sewn_in(name, computed) and (view := numbers.use(name))), None)
    notes = []
    if join.stabilised:
        notes.append("stabilised, so that it does not stretch")
    if join.stretched or any(name.name in computed.tutorial.bands for name in edges):
        notes.append("stretch the shorter edge to fit the longer one")
    if join.enclosed:
        notes.append(f"raw edges {join.enclosed.text}")
    return Stitching(
        what=language.own(_sewn_together([_chain(chain, language) for chain in join.chains])),
        stitch=language.own(join.stitch.text) if join.stitch else "",
        named=join.stitch.text if join.stitch else "",
        stitch_width=language.amount(f"{decimal(join.stitch_width_mm)} mm") if join.stitch_width_mm else "",
        stitch_length=language.say(_stitch_length(join)),
        allowance=allowance,
        press=language.own(join.press),
        notes=tuple(language.say(note) for note in notes),
    )


def _allowance_of(name: Reference, computed: Computed) -> str:
    """The number of the allowance with which an edge is sewn: the garment's own where the edge has no other."""
    own = f"{name.name}.seam_allowance"
    general = computed.number("seam_allowance", 0)
    found = computed.number(own, 0)
    return "seam_allowance" if found is not None and general is not None and found.value == general.value else own


def _is_sewn_in(allowance: str, computed: Computed) -> bool:
    """Whether there is cloth beyond the stitches: an edge that is bound has none, and then there is nothing to tell."""
    return any(
        length is not None and length.length > ZERO
        for length in (computed.length(allowance, size) for size in range(computed.tutorial.size_count))
    )


def _sewn_together(chains: list[str]) -> str:
    """``front side to back side``; where more than two edges lie on each other, the first ``to`` all the others."""
    first, *others = dict.fromkeys(chains)
    return f"{first} to {' and '.join(others)}" if others else first


def _chain(chain: tuple[Reference, ...], language: English) -> str:
    """The edges of a chain in words: ``front and back neckline`` where they share their last word."""
    names = [*dict.fromkeys(words_of(name.name) for name in chain)]
    ends = {name.rpartition(" ")[2] for name in names}
    if language.as_made and len(names) > 1 and len(ends) == 1 and all(" " in name for name in names):
        return f"{' and '.join(name.rpartition(' ')[0] for name in names)} {ends.pop()}"
    if language.as_made and len(names) > 2:
        return f"{', '.join(names[:-1])} and {names[-1]}"
    return " and ".join(names)


def _stitch_length(join: Join) -> str:
    if join.stitch_length_mm is None:
        return ""
    per_inch = stitches_per_inch("stitches to the inch", join.stitch_length_mm)
    return f"{decimal(join.stitch_length_mm)} mm, about {decimal(per_inch.number, 0)} stitches to the inch"


def _hem(hem: Hem, numbers: CardNumbers, language: English) -> Stitching:
    notes = []
    gap = numbers.use(f"{hem.key}.needle_gap") if hem.needle_gap else None
    if gap is not None:
        notes.append(f"needles {gap.values[0].metric} apart")
    return Stitching(
        what=language.say(f"hem of {_chain(hem.edges, language)}"),
        stitch=language.own(hem.stitch.text) if hem.stitch else "",
        named=hem.stitch.text if hem.stitch else "",
        allowance=numbers.use(f"{hem.key}.allowance"),
        from_fold=numbers.use(f"{hem.key}.stitch_line"),
        is_hem=True,
        notes=tuple(language.say(note) for note in notes),
    )
