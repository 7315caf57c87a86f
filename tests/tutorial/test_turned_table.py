"""A size table with the sizes below each other says the same as one with the sizes beside each other."""

from __future__ import annotations

from pathlib import Path

import pytest
from content import computed, messages, reviewed

from sitegen.quantities import inches

TEXT = (
    "sizes: [S, M, L]\nfabrics: {main: {name: linen, structure: woven, width: 45 in}}\n"
    "pieces: {front: {cut: 1, fabric: main, edges: {hem: 9 in}}}\n"
)
TURNED = "size,body.bust,front.side\nS,33,14\nM,35,14 1/4\nL,37,14 1/2\n"
STEP = "title: Sew\ntext: The side is {front.side} long.\nfinish: [front.side, front.hem]\n"


def test_it_is_read(tmp_path: Path) -> None:
    found, findings = computed(tmp_path, TEXT, sizes_dot_csv=TURNED)
    assert messages(findings) == []
    sides = [found.length("front.side", size) for size in range(3)]
    assert [each.length for each in sides if each] == [inches("14"), inches("14.25"), inches("14.5")]


@pytest.mark.parametrize(
    ("table", "told"),
    [
        (
            TURNED.replace("M,35", "M,"),
            ["1:6 size-count: The column “body.bust” of the size table has no value for M."],
        ),
        (TURNED.replace("L,37,14 1/2\n", ""), ["1:1 size-count: The size table has no row for size L."]),
        (
            TURNED + "XXL,39,14 3/4\n",
            ["5:1 size-count: The size table has a row “XXL” but the tutorial has no such size (S, M, L)."],
        ),
        (
            TURNED.replace("body.bust", "bodice"),
            ["1:6 unknown-row: The size table has a column “bodice” that belongs to nothing in the tutorial."],
        ),
        (
            "size,body.bust,body.bust\nS,33,1\nM,35,1\nL,37,1\n",
            [
                "1:16 csv-header-twice: There are two columns with the name body.bust. Keep one of them, or give each"
                " its own name.",
                "1:16 key-twice: The size table has two columns “body.bust”.",
            ],
        ),
    ],
)
def test_what_is_wrong_is_told_of_its_rows_and_columns(tmp_path: Path, table: str, told: list[str]) -> None:
    assert messages(computed(tmp_path, TEXT, sizes_dot_csv=table)[1]) == told


@pytest.mark.parametrize("table", [TURNED.replace("33,14", '"33,14'), TURNED.replace("L,37,14 1/2\n", "")])
def test_what_a_table_that_is_not_understood_may_hold_is_not_told_as_well(tmp_path: Path, table: str) -> None:
    findings = reviewed(tmp_path, TEXT, sizes_dot_csv=table, steps__01_dot_yaml=STEP).findings
    of_the_table = {each.check for each in findings if each.place.file.endswith("sizes.csv")}
    assert len(of_the_table) == 1
    assert {each.check for each in findings} - of_the_table <= {"not-checked", "fabric-unbought"}
