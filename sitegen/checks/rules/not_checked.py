"""Says which checks were withheld, so that their silence is not taken for a good sign."""

from __future__ import annotations

from collections.abc import Iterator

from sitegen.checks.registry import check, registered
from sitegen.checks.told import listed, tells
from sitegen.checks.withheld import FROM_ABSENCE, MAKING
from sitegen.findings import Finding, Severity
from sitegen.tutorial import Computed, Tutorial

_STEPS = "steps/"
_CUT = "title: Cut\ntext: Cut.\n"


@check(
    id="not-checked",
    area="reading",
    severity=Severity.HINT,
    looks_at=Tutorial,
    title="Checks that wait until a file or part can be read",
    why="What is silent because it could not look is easily taken for right.",
    source="The content format of this program",
    trips=f"level: beginner\n--- steps/01.yaml\n{_CUT}--- steps/02.yaml\ntitle: Sew\ntext: Sew.\njoin: [\n",
    passes=f"level: beginner\n--- steps/01.yaml\n{_CUT}--- steps/02.yaml\ntitle: Sew\ntext: Sew.\n",
)
def not_checked(tutorial: Tutorial, computed: Computed) -> Iterator[Finding]:
    """Which checks were not done, because a step, a part or a number that they go by is not understood."""
    steps = sorted(name for name in tutorial.unread if name.startswith(_STEPS))
    if not steps and not (tutorial.unread and tells(tutorial)):
        return
    count = sum(each.area == MAKING for each in registered())
    yield Finding(
        "not-checked",
        Severity.HINT,
        tutorial.title_place,
        f"Not checked until {listed(steps or sorted(tutorial.unread))} can be read: the order of making ({count} checks"
        f" of what is sewn, turned and finished when), and {listed(sorted(FROM_ABSENCE))}.",
    )
