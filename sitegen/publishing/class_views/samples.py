"""The samples of a class as they are read: what each is, from what, for which steps, and how it is made."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import groupby

from sitegen.classes import (
    ComputedClass,
    KitLine,
    Sample,
    SampleKind,
    SampleNeed,
    counted,
    is_stretched,
    sample_needs,
    sample_supplies,
    samples_of,
)
from sitegen.publishing.class_views.head import class_head, step_name
from sitegen.publishing.class_views.parts import (
    SampleGroup,
    SampleRectangle,
    SamplesView,
    SampleTotal,
    SampleView,
    WorkedText,
)
from sitegen.publishing.class_views.worked import working_of
from sitegen.quantities import ENGLISH, ZERO, English, Length, System, Worked, decimal, show_number, show_value
from sitegen.tutorial import Hem, Join, words_of

_HEADS = {
    SampleKind.STRETCH: "Swatches to stretch",
    SampleKind.WASHING: "Swatches to wash",
    SampleKind.SEAM: "Seams",
    SampleKind.HEM: "Hems",
    SampleKind.BAND: "Bands on their openings",
    SampleKind.STAGE: "Made-up samples, as they are when a session ends",
}

_SHOWN = {
    SampleKind.STRETCH: ("swatch_stretch",),
    SampleKind.WASHING: ("washed_shrinkage",),
    SampleKind.HEM: ("stitch_line", "catch"),
    SampleKind.BAND: ("band_quarter", "opening_quarter", "quarter_from_shoulder"),
}
"""The worked numbers that a sample shows, besides its size."""


def samples_view(cls: ComputedClass, system: System, language: English = ENGLISH) -> SamplesView:
    """The samples and swatches to prepare, lengths in these units."""
    samples = samples_of(cls, system)
    told = _Told(cls, system, language)
    groups = tuple(
        SampleGroup(language.say(_HEADS[kind]), tuple(told.sample(sample) for sample in group))
        for kind, group in groupby(samples, key=lambda sample: sample.kind)
    )
    stages = sum(1 for sample in samples if sample.kind is SampleKind.STAGE)
    totals = tuple(
        total for need in sample_needs(samples, cls, system) for total in told.totals(need, stages, samples[0].size)
    )
    sewn_in = tuple(
        told.sewn_in(line, amount, stages, samples[0].size) for line, amount in sample_supplies(samples, cls, system)
    )
    return SamplesView(class_head(cls, language), groups, (*totals, *sewn_in))


class _Told:
    """Words the samples of one class."""

    def __init__(self, cls: ComputedClass, system: System, language: English) -> None:
        self._cls = cls
        self._system = system
        self._language = language

    def sample(self, sample: Sample) -> SampleView:
        """One sample."""
        count = sample.count
        name, how = self._name_and_how(sample)
        return SampleView(
            name=self._language.own(name),
            count=WorkedText(decimal(count.number), working_of(count, self._system, self._language)),
            cloth=tuple(self._rectangles(sample)),
            steps=tuple(step_name(step, self._cls, self._system, self._language) for step in sample.steps),
            how=tuple(self._language.sentences(sentence) for sentence in how),
            working=tuple(dict.fromkeys(self._working(sample))),
        )

    def totals(self, need: SampleNeed, stages: int, size: int) -> Iterator[SampleTotal]:
        """What one fabric is needed for."""
        fabric, say = self._language.own(need.fabric.name), self._language.say
        if need.swatches is not None or need.reason:
            amount = None
            if need.swatches is not None:
                text = show_number(need.swatches, self._system, language=self._language)
                amount = WorkedText(text, working_of(need.swatches, self._system, self._language))
            yield SampleTotal(fabric, say("swatches and strips"), amount, say(need.reason))
        if need.garments is not None:
            yield SampleTotal(fabric, self._garments(stages, size), self._worked(need.garments, ""))

    def sewn_in(self, line: KitLine, amount: Worked, stages: int, size: int) -> SampleTotal:
        """How much of a supply the made-up samples take."""
        name = f"{self._language.own(line.name)}{f', {self._language.say(line.size)}' if line.size else ''}"
        return SampleTotal(name, self._garments(stages, size), self._worked(amount, line.unit))

    def _garments(self, stages: int, size: int) -> str:
        name = self._cls.computed.size_name(size)
        return self._language.say(f"{counted(stages, 'made-up sample')}{f' of size {name}' if name else ''}")

    def _worked(self, amount: Worked, unit: str) -> WorkedText:
        if isinstance(amount.value, Length):
            text = show_number(amount, self._system, language=self._language)
        else:
            text = self._language.own(counted(int(amount.number), unit))
        return WorkedText(text, working_of(amount, self._system, self._language))

    def _rectangles(self, sample: Sample) -> Iterator[SampleRectangle]:
        for cloth in sample.cloth:
            across, along = (
                show_value(each.value, self._system, language=self._language) for each in (cloth.across, cloth.along)
            )
            lines = (
                line for each in (cloth.across, cloth.along) for line in working_of(each, self._system, self._language)
            )
            text = self._language.say(f"{across} across, {along} along the grain")
            fabric = self._cls.computed.tutorial.fabrics[cloth.fabric].name
            yield SampleRectangle(
                cloth.pieces, self._language.own(fabric), WorkedText(text, tuple(dict.fromkeys(lines)))
            )

    def _show(self, name: str, sample: Sample, system: System | None = None) -> str:
        """A number of the tutorial in the size of the sample; empty when it is not known."""
        found = self._cls.computed.number(name, sample.size)
        return show_number(found, system or self._system) if found is not None else ""

    def _working(self, sample: Sample) -> Iterator[str]:
        """How its count, its cloth and the numbers that it shows were got."""
        if sample.kind in _SHOWN:
            fields = _SHOWN[sample.kind]
            part = sample.hem or sample.band
            key = part.key if part is not None else sample.cloth[0].fabric
            numbers = [self._cls.computed.number(f"{key}.{field}", sample.size) for field in fields]
        else:
            numbers = []
        cloth = (each for rectangle in sample.cloth for each in (rectangle.across, rectangle.along))
        for number in (sample.count, *cloth, *numbers):
            if number is not None:
                yield from working_of(number, self._system, self._language)

    def _name_and_how(self, sample: Sample) -> tuple[str, Iterator[str]]:
        size = self._cls.computed.size_name(sample.size)
        in_size = f", size {size}" if size else ""
        if sample.joins:
            return _seam(sample.joins[0]), self._how_to_sew(sample.joins, sample)
        if sample.hem is not None:
            return _hem(sample.hem), self._how_to_hem(sample.hem.key, sample)
        if sample.band is not None:
            return f"{words_of(sample.band.key)}{in_size}", self._how_to_band(sample.band.key, sample)
        if sample.kind is SampleKind.STAGE:
            return f"after session {sample.session}{in_size}", _how_far(sample)
        fabric = sample.cloth[0].fabric
        how = self._how_to_stretch if sample.kind is SampleKind.STRETCH else self._how_to_wash
        return self._cls.computed.tutorial.fabrics[fabric].name, how(fabric, sample)

    def _how_to_stretch(self, key: str, sample: Sample) -> Iterator[str]:
        rest, stretched, stretch = (
            self._show(f"{key}.swatch_{field}", sample) for field in ("rest", "stretched", "stretch")
        )
        yield "Fold it in the middle, the fold across the cloth, and mark it at the fold."
        yield f"Two marks {rest} apart come to {stretched}, which is a stretch of {stretch}."

    def _how_to_wash(self, key: str, sample: Sample) -> Iterator[str]:
        before, after, share = (
            self._show(f"{key}.washed_{field}", sample) for field in ("before", "after", "shrinkage")
        )
        yield "Wash and dry one as the garment will be, and leave the other as it is."
        yield f"{before} along the grain come to {after}, which is a shrinkage of {share}."

    def _how_to_sew(self, joins: Sequence[Join], sample: Sample) -> Iterator[str]:
        allowances = dict.fromkeys(
            shown
            for join in joins
            for name in join.names()
            if (shown := self._show(f"{name.name}.seam_allowance", sample))
        )
        if len(allowances) == 1:
            yield f"Sew {next(iter(allowances))} from the edge."
        if is_stretched(joins[0], self._cls):
            yield "Stretch the shorter layer while it is sewn."
        pressed = {join.press for join in joins}
        if len(pressed) == 1 and "" not in pressed:
            yield f"Press {pressed.pop()}."

    def _how_to_hem(self, key: str, sample: Sample) -> Iterator[str]:
        turn, under, line, catch = (
            self._show(f"{key}.{field}", sample) for field in ("turn", "fold_under", "stitch_line", "catch")
        )
        gap = self._show(f"{key}.needle_gap", sample, System.CENTIMETRES)  # as on the label of the needle
        yield f"Fold {under} under and turn {turn}." if under else f"Turn {turn}."
        yield f"Stitch {line} from the fold{f', with needles {gap} apart' if gap else ''}."
        if catch:
            far = "the row nearest the raw edge" if gap else "the stitches"
            yield f"{catch} of cloth lies beyond {far}."

    def _how_to_band(self, key: str, sample: Sample) -> Iterator[str]:
        own, opening = (self._show(f"{key}.{field}", sample) for field in ("band_quarter", "opening_quarter"))
        yield "Close the band and the strip of the opening to rings, mark both in quarters, and pin them at the marks."
        yield f"From mark to mark the band measures {own} and the opening {opening}."
        apart = self._cls.computed.length(f"{key}.quarter_from_shoulder", sample.size)
        if apart is not None:
            way = "behind" if apart.length < ZERO else "in front of"
            where = f"{show_value(abs(apart.length), self._system)} {way}" if apart.length else "on"
            yield f"On the garment the side marks lie {where} the shoulder seams."


def _how_far(sample: Sample) -> Iterator[str]:
    last = sample.steps[-1]
    yield f"Do all that is done by the end of session {sample.session}, with step {last.number} as the last."


def _seam(join: Join) -> str:
    """The stitch with its settings."""
    settings = [
        f"{decimal(value)} mm {way}"
        for value, way in ((join.stitch_width_mm, "wide"), (join.stitch_length_mm, "long"))
        if value
    ]
    stitch = [join.stitch.text] if join.stitch is not None else []
    return ", ".join([*stitch, *settings, *(["stabilised"] if join.stabilised else [])])


def _hem(hem: Hem) -> str:
    name = words_of(hem.key)
    name = name if "hem" in name.split() else f"{name} hem"
    return f"{name}, {hem.stitch.text}" if hem.stitch is not None else name
