"""From a checked content folder to a site on disk, written whole or not at all.

Knows nothing of how numbers are worked out or what is wrong with them: it asks the rooms below.
"""

from sitegen.publishing.amounts import kept_together
from sitegen.publishing.changes_page import day_in_words
from sitegen.publishing.class_pages.teacher import teacher_page
from sitegen.publishing.class_views import (
    BagView,
    ClassHead,
    ClothLayout,
    KitGroup,
    KitItem,
    KitView,
    OneSize,
    Packed,
    PartRow,
    PlanStep,
    PlanView,
    SampleGroup,
    SampleRectangle,
    SamplesView,
    SampleTotal,
    SampleView,
    SessionView,
    StepName,
    WorkedText,
    class_head,
    kit_view,
    layout_drawing,
    plan_view,
    samples_view,
)
from sitegen.publishing.for_paper import (
    Block,
    Fill,
    PaperPage,
    PrintedNumbers,
    Span,
    paper_page,
    printed_line,
    printed_text,
    unstyled,
)
from sitegen.publishing.languages import Words, unmarked
from sitegen.publishing.marked_page import MarkedText, marked_page
from sitegen.publishing.new_folder import NotBegun, write_new_folder
from sitegen.publishing.not_replaced import NotReplaced
from sitegen.publishing.photo_findings import photo_findings, photo_path
from sitegen.publishing.picture_views import Diagram
from sitegen.publishing.releases import (
    NumberChange,
    PageChanges,
    PublishedNumber,
    PublishedPage,
    Record,
    Status,
    compare_records,
    read_record,
    record_in,
    record_text,
)
from sitegen.publishing.render import duration
from sitegen.publishing.site import Outcome, look_findings, publish
from sitegen.publishing.views import Both, NumberView, StepCard, Stitching, TutorialView

__all__ = [
    "BagView",
    "Block",
    "Both",
    "ClassHead",
    "ClothLayout",
    "Diagram",
    "Fill",
    "KitGroup",
    "KitItem",
    "KitView",
    "MarkedText",
    "NotBegun",
    "NotReplaced",
    "NumberChange",
    "NumberView",
    "OneSize",
    "Outcome",
    "Packed",
    "PageChanges",
    "PaperPage",
    "PartRow",
    "PlanStep",
    "PlanView",
    "PrintedNumbers",
    "PublishedNumber",
    "PublishedPage",
    "Record",
    "SampleGroup",
    "SampleRectangle",
    "SampleTotal",
    "SampleView",
    "SamplesView",
    "SessionView",
    "Span",
    "Status",
    "StepCard",
    "StepName",
    "Stitching",
    "TutorialView",
    "Words",
    "WorkedText",
    "class_head",
    "compare_records",
    "day_in_words",
    "duration",
    "kept_together",
    "kit_view",
    "layout_drawing",
    "look_findings",
    "marked_page",
    "paper_page",
    "photo_findings",
    "photo_path",
    "plan_view",
    "printed_line",
    "printed_text",
    "publish",
    "read_record",
    "record_in",
    "record_text",
    "samples_view",
    "teacher_page",
    "unmarked",
    "unstyled",
    "write_new_folder",
]
