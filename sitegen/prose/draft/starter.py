"""The words of a new content folder: what an author finds in it, and how she is told what to put where."""

from __future__ import annotations

from sitegen.quantities import Unit

SITE_TITLE = "To be written. The title of your site"
TITLE = "To be written. The title of your tutorial"
GLOSSARY = """\
# Words of the trade that a beginner may not know, a line each. Add yours, or take these out.
seam allowance: The cloth between the row of stitches and the cut edge.
right side: The side of the cloth that shows when the garment is worn.
"""

_PARTS = """\
# What the steps can take their numbers from. Take the # away from the lines that you need. A number that can be
# computed is then shown in a text by its name, such as {neckband.cut_length}, in the size of the student.
#
#sizes: [S, M, L]
#seam_allowance: 3/8 in
#body:
#  bust: 34, 36, 38 in
#fabrics:
#  main: {name: cotton jersey, structure: knit, stretch_across: 50%}
#pieces:
#  front:
#    cut: 1 on fold
#    fabric: main
#    edges: {neckline: "11, 11 1/2, 12 in"}
#bands:
#  neckband: {opening: [front.neckline], ratio: 85%, finished_width: 1 in, fabric: main}
#supplies:
#  - {item: ballpoint needle, size: 80/12}
#tools: [scissors, pins, iron, sewing machine]
"""


def site_file(unit: Unit) -> str:
    """``site.yaml``."""
    return f"""\
# The whole site. Put your own words in place of these; nothing is published while one begins with “To be written”.
title: {SITE_TITLE}
author: To be written. The name of your workshop

# Which units a student sees first: inches or centimetres. Both are always there.
units_first: {_units(unit)}

# Where the site will be, and a line for the foot of every page, if you like:
#address: https://example.org
#note: All patterns on these pages are our own.
"""


def starter_tutorial() -> str:
    """The ``tutorial.yaml`` of a folder without captions."""
    return f"""\
# One garment or project. The name of this folder becomes part of the address of its page.
title: {TITLE}
summary: To be written. What is made, for whom, and what is learnt by it.
level: beginner

# For an adult or a child. For a child, cords and small parts are checked as well.
wearer: adult

# The unit of numbers that are written without one: inches or centimetres.
measured_in: inches

{_PARTS}"""


def starter_step() -> str:
    """The one step of a folder without captions."""
    return """\
# One step, one file. The steps follow in the order of their file names: 01-…, 02-…, 03-…
title: To be written. The first step
minutes: 10
text: |
  To be written. What to do, in short sentences. A length is written as you say it, such as 3/8 in or 1 cm.

# As wanted; take the # away:
#needs: [the cut pieces]
#tools: [pins, sewing machine]
#look_for: What the student should see when it went well.
#if_wrong: What to do if it did not.
#video: "1:05"
"""


def tutorial_file(title: str, file_name: str, unit: Unit, until: str) -> str:
    """The ``tutorial.yaml`` of a draft; ``title`` and ``file_name`` are YAML values already."""
    why = (
        "most lengths of the talk are said in metric units"
        if unit is Unit.CM
        else "the talk does not speak mostly in metric units"
    )
    return f"""\
# Drafted from the captions in {file_name}, which end at {until}. Put your own words in place of these; nothing is
# published while one begins with “To be written”.
title: {title}
summary: To be written. What is made, for whom, and what is learnt by it.

# For an adult or a child: please say which. For a child, cords and small parts are checked as well.
wearer: adult

# The unit of numbers that are written without one: {_units(unit)}, because {why}.
measured_in: {_units(unit)}

# How long the whole video is, if you know it. The chapters of the site then end there.
#video_length: "{until}"

{_PARTS}"""


def _units(unit: Unit) -> str:
    return "centimetres" if unit is Unit.CM else "inches"
