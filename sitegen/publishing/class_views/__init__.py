"""What is told of a class, as plain frozen data: strings in the units and the language asked for, no HTML.

The interface, which lists on screen, pages and printed handouts share:

``class_head(cls)``, ``kit_view(cls, system)``, ``plan_view(cls, system)`` and ``samples_view(cls, system)`` are pure
functions of a ``ComputedClass``; each takes a ``language`` as its last argument, English when it is left out.
``plan_view`` raises ValueError for a class with a step without minutes (``classes.without_minutes`` tells).
What they give is in ``parts``: a text that was worked out is a ``WorkedText``, with the lines of its working. A
``ClothLayout`` is drawn to scale by ``layout_drawing(layout, system, prefix)``. Empty strings and tuples stand for what
there is not.
"""

from sitegen.publishing.class_views.days import day_of_week
from sitegen.publishing.class_views.head import class_head
from sitegen.publishing.class_views.kit import kit_view
from sitegen.publishing.class_views.layouts import layout_drawing
from sitegen.publishing.class_views.parts import (
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
)
from sitegen.publishing.class_views.plan import plan_view
from sitegen.publishing.class_views.samples import samples_view

__all__ = [
    "BagView",
    "ClassHead",
    "ClothLayout",
    "KitGroup",
    "KitItem",
    "KitView",
    "OneSize",
    "Packed",
    "PartRow",
    "PlanStep",
    "PlanView",
    "SampleGroup",
    "SampleRectangle",
    "SampleTotal",
    "SampleView",
    "SamplesView",
    "SessionView",
    "StepName",
    "WorkedText",
    "class_head",
    "day_of_week",
    "kit_view",
    "layout_drawing",
    "plan_view",
    "samples_view",
]
