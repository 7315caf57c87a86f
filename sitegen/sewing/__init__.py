"""The sums of the trade, pure: worked numbers in, worked numbers out.

Knows nothing of files, tutorials, pages or findings. Each module is one topic with its formula and its source.
"""

from sitegen.sewing import (
    allowance,
    band,
    bias,
    circle,
    class_sums,
    dart,
    ease,
    elastic,
    fabric_need,
    gather,
    geometry,
    grading,
    hem,
    layout,
    lengthen,
    pleats,
    rectangle,
    size_choice,
    spacing,
    tolerance,
    trim,
)
from sitegen.sewing.allowance import End
from sitegen.sewing.reach import ADULT_REACH
from sitegen.sewing.run import Break, breaks
from sitegen.sewing.stitch import STITCHES, Give, Stitch, known_name, stitches_per_inch

__all__ = [
    "ADULT_REACH",
    "STITCHES",
    "Break",
    "End",
    "Give",
    "Stitch",
    "allowance",
    "band",
    "bias",
    "breaks",
    "circle",
    "class_sums",
    "dart",
    "ease",
    "elastic",
    "fabric_need",
    "gather",
    "geometry",
    "grading",
    "hem",
    "known_name",
    "layout",
    "lengthen",
    "pleats",
    "rectangle",
    "size_choice",
    "spacing",
    "stitches_per_inch",
    "tolerance",
    "trim",
]
