"""Works out a tutorial: its numbers, and those that follow from each change."""

from __future__ import annotations

from sitegen.findings import Collector
from sitegen.tutorial.compute.define import numbers_of
from sitegen.tutorial.compute.following import changed_by
from sitegen.tutorial.compute.linking import report_circles, report_other_kinds, report_unknown
from sitegen.tutorial.compute.result import Computed
from sitegen.tutorial.model import Tutorial


def compute(tutorial: Tutorial, collector: Collector) -> Computed:
    """Every number of a tutorial. References to nothing, circles and divisions by nothing are reported."""
    plain = Computed(tutorial, numbers_of(tutorial))
    computed = Computed(tutorial, plain.numbers, changed_by(plain))
    report_unknown(computed, collector)
    report_circles(computed, collector)
    report_other_kinds(computed, collector)
    return computed
