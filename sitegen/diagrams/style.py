"""The one style sheet of all diagrams: every role differs by line or pattern, never by colour alone.

A page may set ``--d-ink`` (lines and words), ``--d-cloth`` and ``--d-cloth-strength`` (tone of cloth) and
``--d-font``. Unset, all is drawn in the colour of the text around it, so light, dark and print need nothing. A picture
of true size keeps the millimetres that it carries, on the screen and on paper.
"""

from __future__ import annotations

_ROLES = """\
.d-picture .d-right,.d-picture .d-wrong,.d-picture .d-paper,.d-picture .d-tone{stroke:none}
.d-picture .d-cut{stroke-width:2.2}
.d-picture .d-fold{stroke-dasharray:14 4 2 4}
.d-picture .d-seam{stroke-width:1.8;stroke-dasharray:9 4}
.d-picture .d-stitch{stroke-width:2.6;stroke-dasharray:6 4}
.d-picture .d-zigzag{stroke-width:2}
.d-picture .d-thread{stroke-width:2.6;stroke-linecap:round}
.d-picture .d-raw{stroke-width:1.8}
.d-picture .d-break{stroke-width:1.5}
.d-picture .d-grain{stroke-width:1.8}
.d-picture .d-arrow{stroke-width:1.8}
.d-picture .d-mark{stroke-width:4}
.d-picture .d-join{stroke-width:1.5;stroke-dasharray:1.5 4;stroke-linecap:round}
.d-picture .d-old{stroke-width:1.8;stroke-dasharray:4 3}
.d-picture .d-trued{stroke-width:2.6}
.d-picture .d-tick{stroke-width:1.4}
.d-picture .d-dim line,.d-picture .d-dim path,.d-picture .d-leader{stroke-width:1.4}
.d-picture .d-dot{fill:currentColor;stroke:none}
.d-picture .d-hatch{stroke-width:1}
.d-text{fill:currentColor;stroke:none}
.d-strong{font-weight:700}
"""

STYLE_SHEET = f"""\
.d-picture{{display:block;color:var(--d-ink,currentColor);font-family:var(--d-font,system-ui,"DejaVu Sans",sans-serif)}}
.d-picture:where(:not(.d-true)){{width:100%;max-width:34rem;height:auto}}
.d-picture.d-true{{max-width:none;max-height:none}}
.d-picture :where(line,path){{stroke:currentColor;stroke-width:2;stroke-linecap:butt;stroke-linejoin:round}}
.d-picture :where(line,path:not([fill])){{fill:none}}
.d-picture .d-right{{fill:var(--d-cloth,currentColor);fill-opacity:var(--d-cloth-strength,.16)}}
.d-picture .d-tone{{fill:var(--d-cloth,currentColor);fill-opacity:calc(var(--d-cloth-strength,.16)/3)}}
{_ROLES}\
@media print{{.d-picture:where(:not(.d-true)){{max-width:13cm}}}}
"""

_PRINT_SHEET = f"""\
.d-picture{{color:#000}}
line,path{{stroke:#000;stroke-width:2;stroke-linecap:butt;stroke-linejoin:round}}
.d-picture .d-right{{fill:#000;fill-opacity:.16}}
.d-picture .d-tone{{fill:#000;fill-opacity:.05}}
{_ROLES}"""


def print_sheet(font: str) -> str:
    """The same in black on white for a program that lays out paper and knows of CSS only what SVG 1.1 asks for: no
    custom properties, no ``:where``, no ``calc``. Shapes without a fill of their own take that of the root: none.
    """
    return f'{_PRINT_SHEET}.d-picture{{font-family:"{font}"}}\n'


PATTERNS = {
    "wrong": '<pattern id="{id}" width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">'
    '<path class="d-hatch" d="M3.5 0V7"/></pattern>',
    "paper": '<pattern id="{id}" width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(-45)">'
    '<path class="d-hatch" d="M0 3.5H7M3.5 0V7"/></pattern>',
}
"""Hatching of areas, by role: one way for the wrong side of the cloth, both ways for paper."""
