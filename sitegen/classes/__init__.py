"""A class that is taught from a tutorial: its file, what to buy and to cut for it, and its steps spread over sessions.

Knows nothing of pages or of the rules of checks. Every number comes from the tutorial's own, so that a change there
changes the kit.
"""

from sitegen.classes.bags import Bag, CutPart, bags_of, cut_parts
from sitegen.classes.calendar import NoCalendar, calendar_of, event_id
from sitegen.classes.clocks import skipped
from sitegen.classes.cloth import ClassCloth, ClassPiece, pieces_of_class, unknown_cloth
from sitegen.classes.costs import Cost, Costs, StudentCost, costs_of, money
from sitegen.classes.fit import too_long, ways_to_fit
from sitegen.classes.kit import (
    Kind,
    Kit,
    KitLine,
    NotKnown,
    bought_fabrics,
    counted,
    kit_of,
    shared_in_vain,
    students_of,
    unpriced,
)
from sitegen.classes.model import ComputedClass, Count, Price, Session, SewingClass, Students
from sitegen.classes.own_file import (
    OPEN_SEAL,
    NotWritten,
    is_own,
    sealed_calendar,
    sealed_document,
    sealed_page,
    sealed_table,
    write_own,
)
from sitegen.classes.plan import (
    ClassStep,
    Placed,
    Plan,
    SessionPlan,
    class_steps,
    jobs_of,
    leaves_pins,
    plan_of,
    tools_of,
    waits_for,
    without_minutes,
)
from sitegen.classes.samples import (
    Sample,
    SampleCloth,
    SampleKind,
    SampleNeed,
    is_stretched,
    sample_needs,
    samples_of,
    shown_size,
)
from sitegen.classes.schedule import RULE, Job, Laid, Schedule, scheduled
from sitegen.classes.table import HEAD, as_csv, kit_rows, safe

__all__ = [
    "HEAD",
    "OPEN_SEAL",
    "RULE",
    "Bag",
    "ClassCloth",
    "ClassPiece",
    "ClassStep",
    "ComputedClass",
    "Cost",
    "Costs",
    "Count",
    "CutPart",
    "Job",
    "Kind",
    "Kit",
    "KitLine",
    "Laid",
    "NoCalendar",
    "NotKnown",
    "NotWritten",
    "Placed",
    "Plan",
    "Price",
    "Sample",
    "SampleCloth",
    "SampleKind",
    "SampleNeed",
    "Schedule",
    "Session",
    "SessionPlan",
    "SewingClass",
    "StudentCost",
    "Students",
    "as_csv",
    "bags_of",
    "bought_fabrics",
    "calendar_of",
    "class_steps",
    "costs_of",
    "counted",
    "cut_parts",
    "event_id",
    "is_own",
    "is_stretched",
    "jobs_of",
    "kit_of",
    "kit_rows",
    "leaves_pins",
    "money",
    "pieces_of_class",
    "plan_of",
    "safe",
    "sample_needs",
    "samples_of",
    "scheduled",
    "sealed_calendar",
    "sealed_document",
    "sealed_page",
    "sealed_table",
    "shared_in_vain",
    "shown_size",
    "skipped",
    "students_of",
    "too_long",
    "tools_of",
    "unknown_cloth",
    "unpriced",
    "waits_for",
    "ways_to_fit",
    "without_minutes",
    "write_own",
]
