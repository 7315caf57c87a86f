"""The depth of a casing once it is folded has a name of its own."""

from __future__ import annotations

from pathlib import Path

from content import computed, reviewed

from sitegen.quantities import inches

TEXT = (
    "body: {waist: 30 in}\nelastics: {waist: {around: body.waist, ratio: 90%, overlap: 1 in, width: 3/4 in,"
    " room: 1/8 in, fold_under: 3/8 in, DEPTH}}\n"
)


def test_it_is_the_casing_less_what_is_folded_under(tmp_path: Path) -> None:
    found, findings = computed(tmp_path, TEXT.replace(", DEPTH", ""))
    casing, under, depth = (found.length(f"waist.{name}", 0) for name in ("casing", "fold_under", "casing_depth"))
    assert findings == ()
    assert casing is not None
    assert under is not None
    assert depth is not None
    assert depth.length == inches("7/8") == casing.length - under.length


def test_it_may_be_claimed(tmp_path: Path) -> None:
    right = reviewed(tmp_path / "a", TEXT.replace("DEPTH", "casing_depth: 7/8 in")).findings
    wrong = reviewed(tmp_path / "b", TEXT.replace("DEPTH", "casing_depth: 1 1/4 in")).findings
    assert "elastic-cut" not in {each.check for each in right}
    assert [each.should_be for each in wrong if each.check == "elastic-cut"] == ["7/8 in"]
