"""What all parts of a handout are made from."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass

from sitegen.classes import ComputedClass
from sitegen.handouts.model import Copy, Wanted
from sitegen.handouts.words import SheetWords
from sitegen.publishing import PaperPage, PrintedNumbers
from sitegen.reading import ContentFolder
from sitegen.tutorial import Step

_REFERENCE = re.compile(r"\{\s*([^{}\n]+?)\s*\}")


@dataclass(frozen=True)
class Source:
    """A class, the page of its tutorial, and how the handout is wanted."""

    cls: ComputedClass
    page: PaperPage
    folder: ContentFolder
    wanted: Wanted
    numbers: PrintedNumbers
    """Of the class, with its changes made."""
    before: PrintedNumbers
    """Of the same garment before they are made."""
    words: SheetWords
    sessions: Mapping[int, int]
    """The session in which each step is done, by the number of the step; empty when nobody can tell."""

    @property
    def size_names(self) -> tuple[str, ...]:
        """The names of the sizes of the sheet."""
        return tuple(self.cls.computed.size_name(size) for size in self.wanted.sizes)

    @property
    def drawn_size(self) -> int:
        """The size that drawings show: the one in the middle of those that are printed."""
        return self.wanted.sizes[len(self.wanted.sizes) // 2]

    def is_made(self, name: str) -> bool:
        """Whether a number or a drawing is of a change that the class makes."""
        return name.partition(".")[0] in {change.name for change in self.cls.written.changes}

    def numbers_in(self, text: str) -> PrintedNumbers:
        """The numbers that a text speaks of. One that tells of a change itself tells the way from before to after, so
        its numbers are those of its author: before the change, and those of the change."""
        return self.before if any(self.is_made(name) for name in _REFERENCE.findall(text)) else self.numbers

    @property
    def steps(self) -> tuple[Step, ...]:
        """The steps that are printed: those that students do, and for the teacher those before class too."""
        hidden = self.cls.left_out
        if self.wanted.copy is Copy.STUDENT:
            hidden |= self.cls.before_class
        return tuple(step for step in self.cls.computed.tutorial.steps if step.number not in hidden)

    def when(self, step: Step) -> str:
        """When a step is done, in words; empty where that is not known or there is but one session."""
        if step.number in self.cls.at_home:
            return self.words("at_home")
        if step.number in self.cls.before_class:
            return self.words("before_class")
        session = self.sessions.get(step.number)
        several = len(self.cls.written.sessions) > 1
        return self.words("session", number=session) if session is not None and several else ""
