"""Bands and widths against worked examples that were printed elsewhere.

B1: sewing.org, "Using ribbing for a cuff or neckline opening". Cut width of folded rib: sewing handbook, ribbed
edges. The others are from web lessons whose names are withheld; what they leave out is said beside each.
"""

from __future__ import annotations

from fractions import Fraction

import pytest

from sitegen.quantities import Ratio, Worked, cm, given, inches, mm
from sitegen.sewing import band, hem
from sitegen.sewing.allowance import End, finished_length


def length(value) -> Worked:
    return given("given", value)


def ratio(number: str) -> Worked:
    return given("ratio", Ratio(Fraction(number)))


def test_b1_rib_of_three_quarters_of_16_in_is_12_in() -> None:
    assert band.finished_length("band", length(inches(16)), ratio("3/4")).length == inches(12)


def test_b1_ring_of_12_in_needs_83_percent_to_pass_a_head_of_22_in() -> None:
    """Derived: (22 − 12) ÷ 12; the 16 in edge itself needs 37.5 %."""
    needed = band.stretch_needed("stretch", length(inches(22)), length(inches(12))).ratio
    assert needed.value == Fraction(10, 12)
    edge = band.stretch_needed("stretch", length(inches(22)), length(inches(16))).ratio
    assert edge == Ratio.percent("37.5")


def test_b2_opening_of_66_cm_less_a_tenth_prints_62_cm_cut() -> None:
    """The lesson rounds the reduction down to 6 cm: 60 + 2 × 1 = 62 cm; exactly it is 59.4 + 2 = 61.4 cm."""
    exact = band.finished_length("band", length(cm(66)), ratio("0.9"))
    assert exact.length == cm("59.4")
    assert band.cut_length("cut", exact, length(cm(1))).length == cm("61.4")
    printed = band.cut_length("cut", length(cm(60)), length(cm(1))).length
    assert printed == cm(62)


def test_b3_opening_of_40_cm_times_075_and_1_cm_at_each_end_is_32_cm() -> None:
    finished = band.finished_length("band", length(cm(40)), ratio("0.75"))
    assert band.cut_length("cut", finished, length(cm(1))).length == cm(32)


def test_b4_opening_of_25_in_times_085_is_21_and_a_quarter() -> None:
    """The lesson adds no allowance for the join, so its printed number is our finished length."""
    assert band.finished_length("band", length(inches(25)), ratio("0.85")).length == inches("21.25")


def test_b5_opening_of_20_cm_times_08_cut_17_cm() -> None:
    """The lesson adds 1 cm in all, which is 0.5 cm at each end."""
    finished = band.finished_length("band", length(cm(20)), ratio("0.8"))
    assert finished.length == cm(16)
    assert band.cut_length("cut", finished, length(mm(5))).length == cm(17)


def test_b6_half_edges_of_26_and_20_cm_are_12_cm_apart_in_the_whole() -> None:
    needed = band.stretch_needed("stretch", length(cm(52)), length(cm(40))).ratio
    assert needed == Ratio.percent(30)
    assert Fraction(40, 52) == Fraction(10, 13)


def test_b7_cuff_of_three_and_a_quarter_finished_is_cut_seven_inches_high() -> None:
    width = band.cut_width("cuff cut width", length(inches("3.25")), length(inches("1/4")), folded=True)
    assert width.length == inches(7)


def test_b8_leg_of_16_in_with_half_inch_allowances_is_cut_17_in() -> None:
    assert band.cut_length("cut", length(inches(16)), length(inches("1/2"))).length == inches(17)


def test_b9_band_of_three_and_a_quarter_shortens_the_leg_by_three_inches() -> None:
    """A leg keeps its finished length when it is cut shorter by the band less one allowance."""
    allowance, depth = length(inches("1/4")), length(inches("3.25"))
    leg = length(inches(20))
    with_band = finished_length("leg", leg, [End(allowance, depth)])
    assert with_band.length - leg.length == inches(3)


@pytest.mark.parametrize(("finished", "printed"), [("1", "2.5"), ("1.5", "3.5"), ("2", "4.5")])
def test_folded_rib_is_cut_twice_its_width_and_half_an_inch(finished: str, printed: str) -> None:
    """Sewing handbook, ribbed edges: 2 × finished + 1/2 in, of two allowances of 1/4 in (6 mm)."""
    width = band.cut_width("rib", length(inches(finished)), length(inches("1/4")), folded=True)
    assert width.length == inches(printed)


def test_prefinished_rib_is_cut_its_width_and_one_allowance() -> None:
    """Sewing handbook, ribbed edges."""
    width = band.cut_width("rib", length(inches(2)), length(inches("1/4")), folded=False)
    assert width.length == inches("2.25")


@pytest.mark.parametrize(
    ("rest", "stretched", "percent"), [(4, 5, 25), (4, 6, 50), (4, 8, 100), (4, 10, 150), (10, 14, 40)]
)
def test_stretch_of_a_swatch(rest: int, stretched: int, percent: int) -> None:
    """Web lessons, names withheld; the formula is that of Purdue Univ. Cooperative Extension HE-452."""
    found = band.stretch_needed("stretch", length(inches(stretched)), length(inches(rest))).ratio
    assert found == Ratio.percent(percent)


def test_double_hem_of_one_and_a_quarter() -> None:
    """Depth + turn-in, 1 + 1/4 in, as New Mexico State Univ. and 4-H leaflets give it."""
    assert hem.allowance("hem", length(inches(1)), length(inches("1/4"))).length == inches("1.25")
