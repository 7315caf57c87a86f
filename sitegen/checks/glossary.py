"""The glossary of a site, as a part that checks may look at."""

from __future__ import annotations

from dataclasses import dataclass

from sitegen.tutorial import Term


@dataclass(frozen=True, slots=True)
class Glossary:
    """The words that a site explains. It is shown to its checks once with every tutorial."""

    terms: tuple[Term, ...] = ()
