"""What to cut before class, and what goes into the bag of each student, by size."""

from __future__ import annotations

import re
from dataclasses import dataclass

from sitegen.classes.kit import Kind, Kit, KitLine
from sitegen.classes.model import ComputedClass
from sitegen.quantities import Worked
from sitegen.tutorial import Tutorial


@dataclass(frozen=True, slots=True)
class CutPart:
    """A part that is cut before class, as it is for one student of a size.

    ``how`` are the tutorial's own words, ``1 on fold``. Length and width are None where the tutorial does not know
    them, and elastic has no width to cut.
    """

    name: str
    fabric: str
    how: str
    length: Worked | None
    width: Worked | None

    @property
    def how_many(self) -> int:
        """How many there are of it for one student: the number with which ``how`` begins, else 1."""
        match = re.match(r"\d{1,3}\b", self.how)
        return int(match.group()) if match is not None else 1


@dataclass(frozen=True, slots=True)
class Bag:
    """The bags of one size: how many, the cut parts in each, the uncut lengths, and everything else."""

    size: int
    count: int
    cut: tuple[CutPart, ...]
    lengths: tuple[tuple[KitLine, Worked], ...]
    things: tuple[tuple[KitLine, Worked], ...]


def bags_of(kit: Kit, cls: ComputedClass) -> tuple[Bag, ...]:
    """The bags of a class, a kind for each size."""
    return tuple(_bag(each.size, each.count, kit, cls) for each in cls.written.students)


def cut_parts(size: int, cls: ComputedClass) -> tuple[CutPart, ...]:
    """What is cut before class for one student of a size, in the order of the steps that cut it."""
    tutorial, names = cls.computed.tutorial, []
    for step in tutorial.steps:
        if step.number in cls.before_class:
            names += [name.name for name in step.cuts]
    brought = {words.text for words in cls.written.brings}
    parts = [_part(name, size, cls) for name in dict.fromkeys(names)]
    return tuple(part for part in parts if part.fabric not in brought)


def _bag(size: int, count: int, kit: Kit, cls: ComputedClass) -> Bag:
    cut = cut_parts(size, cls)
    own = {name.name for step in cls.computed.tutorial.steps if step.number in cls.before_class for name in step.cuts}
    lengths: list[tuple[KitLine, Worked]] = []
    things: list[tuple[KitLine, Worked]] = []
    for line in kit.lines:
        for_size = dict(line.for_one).get(size)
        already_cut = line.key in own or (bool(line.cloth) and line.cloth[0].laid is not None)
        if for_size is None or already_cut:
            continue
        (lengths if line.kind is Kind.CLOTH else things).append((line, for_size))
    return Bag(size, count, cut, tuple(lengths), tuple(things))


def _part(key: str, size: int, cls: ComputedClass) -> CutPart:
    tutorial = cls.computed.tutorial
    length, width = (cls.computed.length(f"{key}.cut_{axis}", size) for axis in ("length", "width"))
    name, fabric, how = _words(key, tutorial)
    return CutPart(name, fabric, how, length, width)


def _words(key: str, tutorial: Tutorial) -> tuple[str, str, str]:
    """What a part is called, from which fabric it is cut, and how often."""
    plain = key.replace("_", " ")
    if key in tutorial.pieces:
        piece = tutorial.pieces[key]
        return piece.called or plain, piece.fabric.name if piece.fabric else "", piece.cut.text if piece.cut else "1"
    if key in tutorial.bands:
        return plain, tutorial.bands[key].fabric.name, str(tutorial.bands[key].make)
    return plain, "", "1"
