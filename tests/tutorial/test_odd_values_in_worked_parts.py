"""Whatever stands behind a key of marks, gathers, pleats, bindings, circles, arcs, darts, lines,
boxed corners and drops: findings, never a traceback."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from content import reviewed

from sitegen.findings import as_data

WHOLE = """sizes: [S, M]
body: {waist: '26, 28 in'}
seam_allowance: 1/2 in
fabrics: {main: {name: jersey, structure: knit, swatch: {rest: 4 in, stretched: 5 in}, width: 45 in, repeat: 6 in, match: [bodice]}}
pieces:
  front: {cut: 2, fabric: main, edges: {placket: 20 in, hem: {radius: 30 in, turn: 90 outward}, neck: {shape: half circle, radius: 4 in}}}
  bodice: {cut: 2, fabric: main, length: 40 in, width: 20 in, sides: {top: seam, bottom: seam, left: seam, right: seam}, taper: {top: 14 in, bottom: 8 in, over: 12 in, edges: 1}, edges: {side: {length: 16 in, sewn: 15 in}, waist: 20 in}, darts: {bust: {edge: side, width: 1 in, length: 3 in, leg: 3 in}, low: {edge: waist, meets: front.placket, count: 2, length: 3 in}}}
hems: {lower: {edges: [skirt.hem_edge], turn: 1/2 in}}
spacings:
  buttons: {along: front.placket, marks: 5, spread: both ends, first_margin: 1 in, last_margin: 1 in, greatest_gap: 5 in}
  loops: {length: 20 in, greatest_gap: 6 in, spread: round, start: 2 in, button: {diameter: 1 in, thickness: 1 in}}
gathers:
  top: {edges: [front.placket], onto: [front.neck], ratio: 1.6 to 1, rows: {first: 1/4 in, apart: 1/8 in, count: 2}}
  tier: {edges: [front.hem], onto_length: 26 in, ratio: 2, cut_for: ratio}
pleats:
  row: {kind: box, count: 3, depth: 1 in, finished: 13 in}
  tucks: {kind: tuck, count: 4, edges: [front.placket], finished: 18 in}
bindings:
  tape: {edges: [front.hem], kind: french, finished_width: 3/8 in, overlap: 1 in, square: 18 in, join_allowance: 1/4 in}
  edging: {edges: [front.neck], kind: single fold, finished_width: 3/8 in, overlap: 1 in, strip: 20 in, turn_of_cloth: 1/8 in}
circles:
  skirt: {waist: body.waist, ease: 1 in, share: half, length: 20 in, hem: lower}
  peplum: {waist: 28 in, share: 3/4, length: 20 in, hem: 1/2 in, seam_allowance: 1/2 in}
changes:
  longer: {piece: bodice, lines: [{line_at: 8 in from the top, lengthen_by: 1 in}, {line_at: 6 in from the bottom, shorten_by: 1/2 in, fold: 1/4 in, from_line_1: 26 in, crosses: [side]}]}
  shared: {pieces: [bodice, front], wanted: 42 in cut, lines: [{line_at: 8 in from the top, share: 1/2}, {line_at: 2/3 from the top, share: 1/2}], each: {bodice: {new_cut_length: 42 in, line_1: {part_below: 32 in}}}}
boxed:
  bag: {panel: bodice, square: 2 in, corner_allowance: 1/2 in, width: 15 in, cut_out_height: 2 in}
  chosen: {panel: [bodice], depth: 4 in, cut_for: {width: 12 in, height: 14 in}, panel_width: 16 in}
drops:
  curtain: {width: 50 in, ratio: 2 to 1, length: 84 in, top: 3 in, hem: 6 in, side: 1 in, fabric: main, drops: 3, cloth: 288 in, seam_allowance: 1/2 in}
"""
VALUES = re.finditer(r"(?<=[a-z]: )(?:\[[^\]]*\]|'[^']*'|[^{}\[\],'\n]+)", WHOLE)
ODD = ["0 in", "0", "9999 in", "x", "[]", "{}", "~", "'{tape.area}'", "[tape, skirt]", "'{row.cut_width}'", "'1 in, 2 in'",
       "front.hem"]  # fmt: skip


@pytest.mark.parametrize("span", [match.span() for match in VALUES][6:], ids=lambda span: WHOLE[span[0] : span[1]])
def test_odd_value_is_no_fault_of_the_program(span: tuple[int, int], tmp_path: Path) -> None:
    for number, odd in enumerate(ODD):
        text = WHOLE[: span[0]] + odd + WHOLE[span[1] :]
        found = reviewed(tmp_path / str(number), text).findings
        as_data(found)
        assert all(each.message.strip() and each.place.line >= 1 for each in found)
