"""Every calculation of the trade with its source, read from the docstrings of the room that does the sums."""

from __future__ import annotations

import inspect
import re
from dataclasses import dataclass
from types import ModuleType

from sitegen import sewing

_SOURCE = re.compile(r"\bSources?:\s*(.+?)(?:\n\s*\n|\Z)", re.DOTALL)
_PRACTICE = re.compile(r"[Cc]ommon practice, no source|[Dd]erived|[Gg]eometry|[Aa]rithmetic")


@dataclass(frozen=True, slots=True)
class Calculation:
    """A sum: its topic, its name, what it gives, and from where the formula is."""

    topic: str
    name: str
    gives: str
    source: str


def calculations() -> tuple[Calculation, ...]:
    """Every public sum of the sewing room, by topic and name; the source is its own or that of its topic."""
    found = []
    for topic, module in sorted(vars(sewing).items()):
        if isinstance(module, ModuleType) and module.__name__.startswith("sitegen.sewing."):
            found += [_calculation(topic, name, function, module) for name, function in _sums(module)]
    return tuple(found)


def _sums(module: ModuleType) -> list[tuple[str, object]]:
    own = inspect.getmembers(module, inspect.isfunction)
    return [(name, each) for name, each in own if each.__module__.startswith(module.__name__) and name[0] != "_"]


def _calculation(topic: str, name: str, function: object, module: ModuleType) -> Calculation:
    text = inspect.getdoc(function) or ""
    gives = " ".join(text.split("\n\n")[0].split())
    return Calculation(
        topic.replace("_", " "), name.replace("_", " "), gives, _source(text) or _source(module.__doc__ or "")
    )


def _source(text: str) -> str:
    match = _SOURCE.search(text)
    if match:
        return " ".join(match.group(1).split())
    practice = _PRACTICE.search(text)
    return practice.group().lower() if practice else ""
