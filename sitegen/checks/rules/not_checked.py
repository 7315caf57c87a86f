"""Says which checks were withheld, so that their silence is not taken for a good sign."""

from __future__ import annotations

from collections.abc import Iterator

from sitegen.checks.registry import check, registered
from sitegen.checks.rules.pictures_asked import picture_undrawable
from sitegen.checks.rules.unheld import claim_unheld
from sitegen.checks.told import listed, tells
from sitegen.checks.withheld import FROM_ABSENCE, MAKING
from sitegen.findings import Finding, Severity
from sitegen.tutorial import Computed, Tutorial, untold_references

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
    parts = []
    if steps or (tutorial.unread and tells(tutorial)):
        count = sum(each.area == MAKING for each in registered())
        names = listed(sorted(FROM_ABSENCE))
        parts = [f"the order of making ({count} checks of what is sewn, turned and finished when), and {names}"]
    if tutorial.gaps:
        parts += _not_known(tutorial, computed)
    if parts:
        yield Finding(
            "not-checked",
            Severity.HINT,
            tutorial.title_place,
            f"Not checked until {_causes(steps, tutorial)}: {'; '.join(parts)}.",
        )


def _causes(steps: list[str], tutorial: Tutorial) -> str:
    """What is to be put right first."""
    names = steps or sorted(tutorial.unread | tutorial.gaps)
    if not tutorial.unread.issuperset(names):
        return f"{listed(names)} {'is' if len(names) == 1 else 'are'} put right"
    return f"{listed(names)} can be read"


def _not_known(tutorial: Tutorial, computed: Computed) -> Iterator[str]:
    """How many findings are not told, since they may follow from what is not understood."""
    counts = {
        "reference": len(untold_references(computed)),
        "written number": sum(any(claim_unheld(claim, computed)) for claim in tutorial.claims),
        "picture": sum(len(tuple(picture_undrawable(step, computed))) for step in tutorial.steps),
    }
    told = [f"{count} {what}{'' if count == 1 else 's'}" for what, count in counts.items() if count]
    if told:
        yield f"{listed(told)} that cannot be worked out, perhaps because of this"
