"""Which parts of a tutorial a sentence speaks of: those that it names, else those of its step, else the only one."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from sitegen.tutorial import Computed, Step, Tutorial

_GENERIC = {
    "elastics": r"elastics?",
    "bands": r"bands?|ribbing",
}
"""What a part of a kind is called where there is only one of that kind."""
_NOT_BESIDE = r"(?!\s+(?:lining|facing|interfacing|pattern)s?\b)"
"""What lies against a part, or its paper, has a size of its own: the pocket lining is not the pocket."""


@dataclass(frozen=True, slots=True)
class Around:
    """The words of a sentence before and behind a length, and the step and tutorial they stand in."""

    ahead: str
    behind: str
    step: Step | None
    computed: Computed

    @property
    def tutorial(self) -> Tutorial:
        """The tutorial of the sentence."""
        return self.computed.tutorial

    @property
    def sentence(self) -> str:
        """The sentence without the length."""
        return f"{self.ahead} {self.behind}"

    @property
    def clause(self) -> str:
        """The words before the length, and those behind it up to the next comma."""
        return f"{self.ahead} {re.split('[,;:]', self.behind)[0]}"

    def general_first(self, names: Iterable[str]) -> tuple[str, ...]:
        """Allowances of edges, that of the whole tutorial before them where it is the same as one of them."""
        known = self.known(names)
        general = self.computed.number("seam_allowance", 0)
        same = general is not None and any(
            one.value == general.value for name in known if (one := self.computed.number(name, 0)) is not None
        )
        return ("seam_allowance", *known) if same else known

    def known(self, names: Iterable[str]) -> tuple[str, ...]:
        """Those of these names that have a number, each once."""
        return tuple(name for name in dict.fromkeys(names) if self.computed.by_size(name) is not None)

    def elastics(self) -> list[str]:
        """The elastics that the sentence names, else those that the step cuts or draws in, else the only one."""
        return self._some(self.tutorial.elastics, self._of_step("inserts", "cuts"))

    def changes(self) -> list[str]:
        """The changes that the sentence names, else those that the step shows, else the only one."""
        return self._some(self.tutorial.changes, self._of_step("diagrams"))

    def joined(self) -> Iterator[str]:
        """What the step sews together: edges, bands and pieces."""
        for join in self.step.every_join() if self.step is not None else ():
            yield from (reference.name for reference in join.names())

    def says(self, key: str, words: str | None = None) -> bool:
        """Whether the words, or the sentence, name a part."""
        names = {key.replace("_", " ")}
        if key in self.tutorial.pieces:
            names.add(self.tutorial.pieces[key].called)
        said = self.sentence if words is None else words
        return any(
            re.search(rf"(?<![\w-]){re.escape(name)}s?(?![\w-]){_NOT_BESIDE}", said, re.IGNORECASE)
            for name in names
            if name
        )

    def says_the_only(self, kind: str, words: str) -> bool:
        """Whether the words name the only part of a kind by its kind: ``the elastic``."""
        parts: Mapping[str, object] = getattr(self.tutorial, kind)
        return len(parts) == 1 and re.search(rf"\b(?:{_GENERIC[kind]})\b", words, re.IGNORECASE) is not None

    def _some(self, parts: Mapping[str, object], of_step: list[str]) -> list[str]:
        named = [key for key in parts if self.says(key)]
        if named:
            return named
        own = [key for key in of_step if key in parts]
        return own or (list(parts) if len(parts) == 1 else [])

    def _of_step(self, *fields: str) -> list[str]:
        if self.step is None:
            return []
        return [reference.name for field in fields for reference in getattr(self.step, field)]
