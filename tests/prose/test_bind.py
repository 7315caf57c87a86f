"""Lengths typed in the texts of a tutorial, bound by their words to its numbers."""

from __future__ import annotations

import time
from dataclasses import replace
from pathlib import Path

import pytest
from content import folder

from sitegen.checks import review
from sitegen.findings import Finding
from sitegen.prose import bind
from sitegen.reading import ContentFolder

TUTORIAL = (
    "sizes: [S, M]\nseam_allowance: 3/8 in\n"
    "fabrics: {rib: {name: rib, structure: knit, stretch_across: 80%}}\n"
    "pieces: {arm: {cut: 2, fabric: rib, edges: {wrist: '10, 11 in', lower: 20 in}}}\n"
    "bands: {cuff: {opening: [arm.wrist], ratio: 80%, finished_width: 2 in, fabric: rib}}\n"
    "hems: {lower: {edges: [arm.lower], turn: 1 in, stitch: zigzag}}\n"
)


def found(tmp_path: Path, text: str, *checks: str) -> list[Finding]:
    folder(tmp_path, TUTORIAL, **{"steps/01.yaml": f"title: Sew\ntext: {text}\n"})
    result = review(ContentFolder(tmp_path, "mine"))
    return [each for each in result.findings if each.check in (checks or ("said-otherwise", "literal-number"))]


@pytest.mark.parametrize(
    ("text", "said", "should_be"),
    [
        ("Sew it with a 5/8 in seam allowance.", "5/8 in", ""),
        ("The seam allowance is 1/2 in.", "1/2 in", ""),
        ("In size S cut the cuff 8 1/2 in long.", "8 1/2 in", "8 3/4 in"),
        ("Cut the cuff 4 1/2 in wide.", "4 1/2 in", "4 3/4 in"),
        ("Press up a hem allowance of 2 in.", "2 in", ""),
    ],
)  # fmt: skip
def test_length_that_is_another_in_the_tutorial_is_wrong(tmp_path: Path, text: str, said: str, should_be: str) -> None:
    (one,) = found(tmp_path, text, "said-otherwise")
    assert one.said == said
    if should_be:
        assert one.should_be == should_be


TRIMS = (
    "sizes: [S, M]\nseam_allowance: 3/8 in\nfabrics: {main: {name: canvas, structure: woven}}\n"
    "pieces: {bag: {cut: 2, fabric: main, edges: {casing: '10, 11 in', bottom: 9 in}}}\n"
    "trims:\n  bag_cord: {kind: cord, edges: [bag.casing, bag.casing], each_end: 5 in, supply: cotton cord}\n"
    "  lower_tape: {kind: tape, edges: [bag.bottom], each_end: 1/2 in, supply: twill tape}\n"
    "supplies: [{item: cotton cord, amount: 1 yd}, {item: twill tape, amount: 1 yd}]\n"
)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("Cut the cord 30 and 31 in long.", ("31 in", "wrong", "32 in")),
        ("Cut the cord 30 and 32 in long.", ("30 and 32 in", "hint", "{bag_cord.length}")),
        ("In size M cut the drawstring to 30 in.", ("30 in", "wrong", "32 in")),
        ("In size M cut 30 in of cord.", ("30 in", "wrong", "32 in")),
        ("Cut the lower tape 9 in long.", ("9 in", "doubtful", "10 in")),
        ("Cut 10 in of tape.", ("10 in", "hint", "{lower_tape.length}")),
    ],
)
def test_the_length_of_a_cord_or_tape_is_held(tmp_path: Path, text: str, said: tuple[str, str, str]) -> None:
    folder(tmp_path, TRIMS, **{"steps/01.yaml": f"title: Cut\ntext: {text}\n"})
    findings = review(ContentFolder(tmp_path, "mine")).findings
    (one,) = (each for each in findings if each.check in ("said-otherwise", "literal-number"))
    assert (one.said, one.severity.value, one.should_be) == said


@pytest.mark.parametrize(
    "text",
    [
        "Cut a piece of tape 3 in long for a loop.",
        "Knot the cord 2 in from each end, and cut it off.",
        "Cut 1 in off the cord.",
        "Cut the cord about 30 in long.",
        "Cut two lengths of cord, each 20 in long.",
        "Sew the tape 1/4 in from the edge. Draw in the cord, 30 in of it.",
    ],
)
def test_another_length_of_a_cord_or_tape_is_left_alone(tmp_path: Path, text: str) -> None:
    folder(tmp_path, TRIMS, **{"steps/01.yaml": f"title: Cut\ntext: {text}\n"})
    findings = review(ContentFolder(tmp_path, "mine")).findings
    assert [each for each in findings if each.check in ("said-otherwise", "literal-number")] == []


@pytest.mark.parametrize(
    ("text", "reference"),
    [
        ("Sew it with a 3/8 in seam allowance.", "{seam_allowance}"),
        ("In size M cut the cuff 9 1/2 in long.", "{cuff.cut_length}"),
        ("Press up a hem allowance of 1 in.", "{lower.allowance}"),
    ],
)
def test_right_length_gets_the_reference_to_put_instead(tmp_path: Path, text: str, reference: str) -> None:
    (one,) = found(tmp_path, text)
    assert (one.check, one.should_be) == ("literal-number", reference)


@pytest.mark.parametrize(
    "text",
    [
        "Trim the seam allowances to 1/8 in.",
        "Sew 1/8 in from the edge, then cut the thread 3 in long.",
        "Cut a strip 12 in long for the loop of the cuff.",
        "Use {seam_allowance} seam allowances.",
    ],
)
def test_words_that_name_nothing_bind_nothing(tmp_path: Path, text: str) -> None:
    assert found(tmp_path, f'"{text}"') == []


def test_length_right_in_one_size_only_is_told_so(tmp_path: Path) -> None:
    (one,) = found(tmp_path, "Cut the cuff 8 3/4 in long.", "said-otherwise")
    assert "not the same in every size" in one.message
    assert one.should_be == "{cuff.cut_length}"


LEGGINGS = (
    "sizes: [S, M]\nseam_allowance: 1 cm\nbody: {waist: '70, 80 cm'}\n"
    "fabrics: {main: {name: jersey, structure: knit, stretch_across: 50%, swatch: {rest: 10 cm, stretched: 15 cm}}}\n"
    "pieces: {leg: {cut: 2 mirrored, fabric: main, length: '100, 102 cm', width: 48 cm, edges: {waist: '42, 45 cm', ankle: 21 cm,"
    " front: 70 cm, back: 70 cm}, sides: {top: ring, bottom: lower}}, pouch: {cut: 1, fabric: main}}\n"
    "hems: {lower: {edges: [leg.ankle], turn: 2 cm, stitch: zigzag}}\n"
    "elastics: {ring: {around: body.waist, ratio: 90%, overlap: 2 cm, width: 2.5 cm, room: 3 mm, fold_under: 1 cm}}\n"
    "changes: {longer: {piece: leg, line_at: 60 cm from the top, lengthen_by: 4 cm}}\n"
)
HEM, CASING, SEAM = "hem: [lower]", "insert: [ring]", "join: [{edges: [leg.front, leg.back], stitch: zigzag}]"


def said(tmp_path: Path, card: str, text: str) -> list[tuple[str, str, str]]:
    folder(tmp_path, LEGGINGS, **{"steps/01.yaml": f'title: Sew\n{card}\ntext: "{text}"\n'})
    checks = ("said-otherwise", "trimmed-to-more", "told-sum")
    found = (each for each in review(ContentFolder(tmp_path, "mine")).findings if each.check in checks)
    return [(each.said, each.severity.value, each.should_be) for each in found]


@pytest.mark.parametrize(
    ("card", "text", "found"),
    [
        (HEM, "Turn up 2.5 cm and pin.", ("2.5 cm", "wrong", "2 cm")),
        (HEM, "Press 3 cm to the wrong side.", ("3 cm", "wrong", "2 cm")),
        (CASING, "Press 1 cm to the wrong side, then 3 cm again.", ("3 cm", "wrong", "")),
        (CASING, "Sew a casing of 4 cm.", ("4 cm", "wrong", "")),
        (CASING, "Leave a gap of 5 cm. Press it, less 1 cm. Lap its ends by 3 cm.", ("3 cm", "wrong", "2 cm")),
        (CASING, "Cut the elastic 63 cm long.", ("63 cm", "wrong", "{ring.cut_length}")),
        (CASING, "Cut the elastic 65 and 75 cm long.", ("75 cm", "wrong", "74 cm")),
        (CASING, "Cut 60 cm of elastic.", ("60 cm", "wrong", "{ring.cut_length}")),
        (CASING, "Take 2 cm wide elastic.", ("2 cm", "wrong", "2.5 cm")),
        (SEAM, "Sew around with 6 mm, and leave a gap of 8 cm.", ("6 mm", "wrong", "10 mm")),
        (SEAM, "Sew around at 6 mm.", ("6 mm", "doubtful", "10 mm")),
        (SEAM, "Sew it 1.5 cm from the raw edge.", ("1.5 cm", "doubtful", "1 cm")),
        (SEAM, "Sew it. Trim the allowances to 5 cm.", ("5 cm", "wrong", "")),
        (SEAM, "Sew it, then trim it to about 2 cm.", ("2 cm", "doubtful", "")),
        ("cut: [leg]", "In size S the new cut length is 106 cm.", ("106 cm", "wrong", "104 cm")),
        ("cut: [leg]", "The finished length of the leg is 95 cm.", ("95 cm", "wrong", "{leg.finished_length}")),
        ("cut: [leg]", "In size S cut the leg 48 × 101 cm.", ("101 cm", "wrong", "")),
        ("cut: [leg]", "In size S cut the leg 49 cm by 100 cm.", ("49 cm", "wrong", "")),
        (SEAM, "If you sew with an overlocker, take a 6 mm seam allowance.", ("6 mm", "doubtful", "10 mm")),
        (SEAM, "Many patterns have a 1.5 cm seam allowance.", ("1.5 cm", "doubtful", "1 cm")),
        (CASING, "Lap the facing over the front by 4 cm.", ("4 cm", "doubtful", "2 cm")),
        ("cut: [leg]", "Pull: it should reach 14 cm.", ("14 cm", "doubtful", "15 cm")),
    ],
)  # fmt: skip
def test_what_a_step_is_about_tells_what_its_lengths_are(
    tmp_path: Path, card: str, text: str, found: tuple[str, str, str]
) -> None:
    assert said(tmp_path, card, text) == [found]


@pytest.mark.parametrize(
    ("card", "text"),
    [
        (HEM, "Turn up 2 cm. Sew 3 mm from the inner edge."),
        (HEM, "Turn up about 2.5 cm, pin and look."),
        (HEM, "Press up 5 mm at a time."),
        (HEM, "Fold the sides in by 3 cm."),
        (CASING, "Press 1 cm to the wrong side, then 2.8 cm again for a casing of 3.8 cm, 2.8 cm deep."),
        (CASING, "Cut the elastic 65 and 74 cm long and lap its ends by 2 cm."),
        (CASING, "Cut 65 cm or so of elastic. You need 80 cm elastic in all."),
        (SEAM, "Sew around with 1 cm. Tack with stitches of 6 mm. Trim the allowances to 5 mm."),
        (SEAM, "Sew with a zigzag 3 mm wide, 6 mm from the fold."),
        (SEAM, "Turn up 2.5 cm. Sew it again with 6 mm. Sew with 2.5 mm stitches. Sew a zigzag with 3 mm."),
        (SEAM, "Lap the ends by 3 cm."),
        (SEAM, "Change the 1.5 cm seam allowance of a bought pattern to ours."),
        (CASING, "Take 2 cm wide elastic for the sleeves. Sew the 3 cm tunnel for the cord."),
        (SEAM, "Sew it. Trim the hem allowance to 3 cm, and the seam allowance from the notch to 4 cm below it."),
        (
            SEAM,
            "Stitch the label with 2 cm, no more. Sew the strap in place with 3 cm to spare. Sew the side with 4 cm and 5 cm openings.",
        ),
        (HEM, "A 4 cm hem would be heavier."),
        (HEM, "Fold the paper up by 5 cm. Press the ends of the ribbon under 6 mm."),
        (HEM, "Press 6 mm of the pouch to the wrong side. Turn up the leg by 2 cm."),
        (CASING, "Cut 3 cm off the elastic where it is loose."),
        (HEM, "Turn the wheel back 2.5 cm. Sew around with 6 mm."),
        (CASING, "Cut the elastic thread 60 cm from the end."),
        (SEAM, "Sew the seam. Trim the threads to 2 cm. Trim the whole to 40 cm. Trim it to 40 cm."),
        ("cut: [leg]", "In size S the new cut length is 104 cm. It should reach 15 cm."),
        ("cut: [leg]", "In size M cut the leg 102 by 48 cm. Cut a rectangle 60 × 90 cm for the leg."),
        ("cut: [leg]", "The finished length of the leg is more than 80 cm."),
        ("cut: [leg]", "Cut the leg lining 60 cm long. The finished length of the leg facing is 10 cm."),
    ],
)
def test_what_is_right_or_may_be_another_thing_is_left_alone(tmp_path: Path, card: str, text: str) -> None:
    assert said(tmp_path, card, text) == []


def test_row_of_lengths_gets_one_reference(tmp_path: Path) -> None:
    folder(tmp_path, LEGGINGS, **{"steps/01.yaml": f"title: Sew\n{CASING}\ntext: Cut the elastic 65 and 74 cm long.\n"})
    hints = [each for each in review(ContentFolder(tmp_path, "mine")).findings if each.check == "literal-number"]
    assert [(each.said, each.should_be) for each in hints] == [("65 and 74 cm", "{ring.cut_length}")]


@pytest.mark.parametrize(
    ("card", "text", "reference"),
    [
        (HEM, "Turn up 2 cm and sew.", "{lower.turn}"),
        (SEAM, "Sew around with 1 cm, and leave a gap of 8 cm.", "{seam_allowance}"),
        (CASING, "Lap the ends by 2 cm.", "{ring.overlap}"),
        (CASING, "In size S cut the elastic 65 cm long.", "{ring.cut_length}"),
    ],
)
def test_length_that_is_right_in_what_its_step_does_gets_the_reference(
    tmp_path: Path, card: str, text: str, reference: str
) -> None:
    folder(tmp_path, LEGGINGS, **{"steps/01.yaml": f'title: Sew\n{card}\ntext: "{text}"\n'})
    hints = [each for each in review(ContentFolder(tmp_path, "mine")).findings if each.check == "literal-number"]
    assert [each.should_be for each in hints] == [reference]


OWN = LEGGINGS.replace(
    "front: 70 cm, back: 70 cm",
    "front: {length: 70 cm, seam_allowance: 6 mm}, back: {length: 70 cm, seam_allowance: 6 mm}",
)


@pytest.mark.parametrize("words", ["with {said}.", "with a {said} seam allowance."])
def test_allowance_of_an_edge_that_the_step_sews_is_told_as_its_own(tmp_path: Path, words: str) -> None:
    for number, (length, wrong) in enumerate((("6 mm", False), ("1.5 cm", True))):
        root = tmp_path / str(number)
        root.mkdir()
        text = f"title: Sew\ntext: Sew both edges {words.format(said=length)}\n{SEAM}\n"
        folder(root, OWN, **{"steps/01.yaml": text})
        result = review(ContentFolder(root, "mine"))
        assert [each.said for each in result.findings if each.check == "said-otherwise"] == ([length] if wrong else [])


@pytest.mark.parametrize("piece", ["turn up 1 cm and ", "1 cm ", "cut the leg 1 cm long. ", "sew it with 1 cm, "])
def test_time_grows_with_the_text_and_no_faster(tmp_path: Path, piece: str) -> None:
    """Sixteen times the text may take about sixteen times as long: forty would show a square in it."""

    folder(tmp_path, LEGGINGS, **{"steps/01.yaml": f"title: Sew\n{HEM}\ntext: Turn up 2 cm.\n"})
    (computed,) = review(ContentFolder(tmp_path, "mine")).tutorials
    (step,) = computed.tutorial.steps
    assert step.text is not None
    prose = step.text

    def seconds(times: int) -> float:
        text = replace(prose, text=piece * times)
        best = 1e9
        for _ in range(2):
            start = time.process_time()
            list(bind(text, step, computed))
            best = min(best, time.process_time() - start)
        return best

    few = seconds(100)
    assert seconds(1600) < 40 * few + 0.05
