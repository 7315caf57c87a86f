"""Numbers of the example, changed one at a time by a plausible slip: each is caught, with the right correction."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest
from content import EXAMPLE

from sitegen.checks import review
from sitegen.findings import Finding
from sitegen.reading import ContentFolder

TEE = "tutorials/boxy-tee/tutorial.yaml"
TABLE = "tutorials/boxy-tee/sizes.csv"
TOTE = "tutorials/two-cloth-tote/tutorial.yaml"
TROUSERS = "tutorials/pull-on-trousers/tutorial.yaml"


def slipped(root: Path, file: str, right: str, wrong: str) -> tuple[Finding, ...]:
    shutil.copytree(EXAMPLE, root, ignore=shutil.ignore_patterns("*.png"))
    path = root / file
    text = path.read_text(encoding="utf-8")
    assert text.count(right) == 1, f"{right!r} stands {text.count(right)} times in {file}"
    path.write_text(text.replace(right, wrong), encoding="utf-8")
    found = review(ContentFolder(root, "content")).findings
    return tuple(each for each in found if each.check != "picture-missing")


# what slipped, the file, the right text, the slipped text, the check, the size, and what must be put instead
SLIPS = [
    ("neighbouring fraction", TEE, "16 1/4, 16 3/4, 17 1/4,", "16 1/4, 16 3/4, 17 3/8,", "band-cut", "M", "17 1/4"),
    ("dropped allowance", TEE, "cut_width: 2 1/4 in", "cut_width: 1 1/2 in", "band-cut", "", "2 1/4 in"),
    ("one allowance for two", TEE, "cut_length: 6 5/8,", "cut_length: 6 1/4,", "band-cut", "XS", "6 5/8"),
    ("wrong size column", TABLE, '8,"8 1/4","8 1/2","8 3/4",9,', '8,"8 1/4","8 3/4","8 3/4",9,', "size-run", "M", "8 1/2"),
    ("wrong unit", TEE, "seam_allowance: 3/8 in (1 cm)", "seam_allowance: 3/8 in (1 mm)", "unit-pair", "", "3/8 in (1 cm)"),
    ("dropped fraction", TEE, "amount: 2 1/4, 2 1/8, 2,", "amount: 2, 2 1/8, 2,", "added-length", "XS", "2 1/4"),
    ("parts that do not make the whole", TEE, "part_below: 5 in", "part_below: 5 1/4 in", "line-place", "", "5 in"),
    ("hem without its fold", TOTE, "allowance: 1 3/4 in", "allowance: 1 1/4 in", "hem-allowance", "", "1 3/4 in"),
    ("one overlap for two", TOTE, "joined_length: 18 1/4 in", "joined_length: 18 3/4 in", "allowance-sum", "", "18 1/4 in"),
    ("millimetres for centimetres", TROUSERS, "casing: 3.5 cm", "casing: 3.5 mm", "elastic-cut", "", "3.5 cm"),
    ("forgotten overlap", TROUSERS, "cut_length: 48.5, 50, 51, 52.5, 54, 55 cm",
     "cut_length: 46, 50, 51, 52.5, 54, 55 cm", "elastic-cut", "92", "48.5"),
    ("swapped digits", TEE, "part_above: 19 5/8, 20 1/8, 20 5/8,", "part_above: 19 5/8, 20 1/8, 20 8/5,",
     "not-a-length", "", ""),
]  # fmt: skip


@pytest.mark.parametrize("slip", SLIPS, ids=lambda slip: slip[0])
def test_slip_is_caught_with_the_right_correction(slip: tuple[str, ...], tmp_path: Path) -> None:
    _, file, right, wrong, check, size, put = slip
    found = slipped(tmp_path / "content", file, right, wrong)
    (finding,) = [each for each in found if each.check == check]
    assert (finding.size, finding.should_be) == (size, put)
    lines = (EXAMPLE / file).read_text(encoding="utf-8").splitlines()
    assert finding.place.file.endswith(file)
    assert right in lines[finding.place.line - 1]
