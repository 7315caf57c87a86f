"""Layouts that are kept, of lengths that are the same and are not shown in one way."""

from __future__ import annotations

from pathlib import Path

import pytest
from content import computed

from sitegen.quantities import System, show_value
from sitegen.sewing.layout import Layout

PIECE = "pieces: {panel: {cut: 1, fabric: main, width: 20 in, length: 30 in, sides: {left: cut, right: cut}}}\n"


@pytest.mark.parametrize("order", [("45 in", "114.3 cm"), ("114.3 cm", "45 in")])
def test_a_layout_is_shown_as_its_own_cloth_is_written(tmp_path: Path, order: tuple[str, str]) -> None:
    shown = {}
    for width in order:
        fabrics = f"fabrics: {{main: {{name: linen, structure: woven, width: {width}, laid: open}}}}\n"
        found, _ = computed(tmp_path / width.split()[1], fabrics + PIECE)
        laid = found.laid("main", 0)
        assert isinstance(laid, Layout)
        shown[width] = show_value(laid.sections[0].width, System.CENTIMETRES)
    assert shown == {"45 in": "114.5 cm", "114.3 cm": "114.3 cm"}
