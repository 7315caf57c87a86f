"""Tools of the steps, against the list of the tutorial."""

from __future__ import annotations

from collections.abc import Iterator

from sitegen.checks.registry import check
from sitegen.findings import Finding, Severity, nearest
from sitegen.tutorial import Computed, Step, Tutorial

_STEP = "--- steps/01.yaml\ntitle: Mark the hem\ntext: Mark the fold.\ntools: [tailor's chalk]\n"


@check(
    id="tool-unlisted",
    area="supplies",
    severity=Severity.DOUBTFUL,
    looks_at=Step,
    title="A tool that is not in the list of the tutorial",
    why="The student gathers what is on the list, and then it lacks.",
    source="A project page lists its equipment before its steps: Univ. of Kentucky 4-H 4JD-01PB, page 4",
    trips="tools: [pins, scissors]\n" + _STEP,
    passes="tools: [pins, scissors, tailor's chalk]\n" + _STEP,
)
def tool_unlisted(step: Step, computed: Computed) -> Iterator[Finding]:
    """Where a tutorial lists its tools, every tool of a step is among them or among the supplies. A ruler is there when
    a long ruler is."""
    tutorial = computed.tutorial
    if not tutorial.tools:
        return
    listed = _listed(tutorial)
    for tool in step.tools:
        name = _plain(tool.text)
        if any(other == name or other.endswith(f" {name}") for other in listed):
            continue
        near = nearest(tool.text, [each.text for each in tutorial.tools], most=1)
        yield Finding(
            "tool-unlisted",
            Severity.DOUBTFUL,
            tool.place,
            f"The tools of this tutorial do not have “{tool.text}”. Add it to tools in tutorial.yaml"
            + (f", or write {near[0]}, as there." if near else "."),
            tool.text,
        )


def _listed(tutorial: Tutorial) -> set[str]:
    names = [tool.text for tool in tutorial.tools] + [supply.item.text for supply in tutorial.supplies]
    return {_plain(name) for name in names}


def _plain(text: str) -> str:
    """A tool's name without capitals, curly apostrophes and the plural."""
    return text.casefold().replace("’", "'").removesuffix("s")
