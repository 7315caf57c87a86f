"""The finder of sizes: what the page carries for it, and in a browser that it decides as the program does."""

from __future__ import annotations

import json
import random
import re
from collections.abc import Iterator
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest
from bs4 import BeautifulSoup
from content import computed
from publishing.whole_pages import CHROMIUM, TEE, chromium, lay_out

from sitegen.publishing.size_finder import size_finder
from sitegen.quantities import RULER, Length, NotUnderstood, System, Unit, Worked, given, parse_length
from sitegen.sewing.size_choice import OUTSIDE, Choice, Fit
from sitegen.tutorial import Computed, SizeAdvice, size_advice, size_rule

WOVEN = TEE.replace("knit, stretch_across: 40%,", "woven,")
CLOSE = WOVEN.replace("'19, 20, 21 in'", "'18, 19, 19 1/2 in'")
TWO_RUNS = (
    "measured_in: centimetres\nsizes: {child: ['92', '98', '104'], adult: [S, M]}\n"
    "body: {height: '92, 98, 104, 160, 166 cm', waist: '51, 51, 54.5, 66, 70 cm'}\n"
)
KINDS = {"knit": TEE, "woven": WOVEN, "close": CLOSE}
BARE = {System.INCHES: Unit.IN, System.CENTIMETRES: Unit.CM}
SYMBOL = {System.INCHES: "in", System.CENTIMETRES: "cm"}


def finder_of(root: Path, text: str, first: System = System.INCHES) -> Any:
    found, _ = computed(root, text)
    return size_finder(found, first)


def test_page_carries_the_table_as_it_is_printed_in_both_systems(tmp_path: Path) -> None:
    text = TEE.replace("'26, 28, 30 in'", "'26, 28 1/2, 30 in'")
    found = finder_of(tmp_path, text)
    data = json.loads(found.data)
    assert data["first"] == "in"
    assert data["stretches"] is True
    assert data["tolerance"] == {"in": "1/2", "cm": "127/100"}
    (run,) = data["runs"]
    assert run["sizes"] == ["S", "M", "L"]
    bust, waist = run["rows"]
    # 28 1/2 in is 72.39 cm, which the table prints as 72.5 cm.
    assert waist == {
        "measure": 1,
        "body": {"in": "26 57/2 30", "cm": "66 145/2 76"},
        "least": {"in": "1", "cm": "127/50"},
    }
    assert bust["garment"]["in"] == "38 40 42"
    assert bust["least"]["in"] == "3"
    assert found.over == "1/2 in (1.3 cm)"


@pytest.mark.parametrize(
    "text",
    ["body: {bust: 34 in}\n", "sizes: [S, M]\n", "sizes: [S, M]\nbody: {bust: '36, 34 in'}\n"],
    ids=["one size", "no measurement", "sizes that fall"],
)
def test_where_there_is_nothing_to_choose_there_is_no_finder(tmp_path: Path, text: str) -> None:
    assert finder_of(tmp_path, text) is None


def test_data_cannot_leave_its_attribute(tmp_path: Path) -> None:
    found = finder_of(tmp_path, "sizes: [\"S'><b>\", 'M&quot;']\nbody: {bust: '34, 36 in'}\n")
    assert not set("<>'&") & set(found.data)
    assert json.loads(found.data)["runs"][0]["sizes"] == ["S'><b>", "M&quot;"]


@pytest.mark.parametrize(
    ("text", "said"),
    [
        (TEE, "this cloth stretches, so take the smaller one"),
        (WOVEN, "take the smaller one only if the finished garment leaves room enough there"),
        (TWO_RUNS, "between two: take the larger one."),
    ],
    ids=["knit", "woven with a known garment", "nothing known of the garment"],
)
def test_without_a_script_a_sentence_says_how_to_choose(tmp_path: Path, text: str, said: str) -> None:
    page, _ = lay_out(tmp_path, text)
    soup = BeautifulSoup(page.read_text(encoding="utf-8"), "html.parser")
    (sentence,) = soup.select(".by-hand")
    assert said in re.sub(r"\s+", " ", sentence.get_text())
    assert soup.select_one("#finder").has_attr("hidden")
    labels = {label["for"] for label in soup.select("#finder label")}
    assert labels == {field["id"] for field in soup.select("#finder input")}
    assert len(labels) == 2


def test_measurement_that_the_table_prints_is_that_size_in_either_unit(tmp_path: Path) -> None:
    """28 1/2 in is a little less than the 72.5 cm which the table prints for it."""
    found, _ = computed(tmp_path, WOVEN.replace("'26, 28, 30 in'", "'26, 28 1/2, 30 in'"))
    waist = {"waist": given("waist", parse_length("72.5 cm").value)}
    (advice,) = size_advice(found, waist, measured_in={"waist": System.CENTIMETRES})
    assert (advice.size, advice.found.decided_by.fit) == ("M", Fit.IN_A_SIZE)


# In the browser: what it finds is held against the program, size by size and sum by sum.

browsers = pytest.importorskip("playwright.sync_api")
in_browser = pytest.mark.skipif(CHROMIUM is None, reason="no chromium on this machine")

ASK = """cases => cases.map(([unit, texts]) => {
  document.getElementById("units-" + unit).click();
  const fields = [...document.querySelectorAll("#finder input")];
  fields.forEach((field, at) => { field.value = texts[at]; });
  document.querySelector("#finder form button").click();
  return {
    wrong: fields.map(field => document.getElementById(field.id + "-wrong").textContent),
    runs: [...document.querySelectorAll(".sized > div")].map(part => ({
      answer: part.querySelector(".answer").textContent,
      why: part.querySelector(".answer + p").textContent,
      lines: [...part.querySelectorAll("li")].map(line => line.textContent.replaceAll("\\u00a0", " ")),
      button: part.querySelector("button") ? part.querySelector("button").textContent : "",
    })),
  };
})"""


@pytest.fixture(scope="module")
def browser() -> Iterator[Any]:
    with chromium(browsers) as running:
        yield running


def opened(browser: Any, page: Path, **more: Any) -> Any:
    tab = browser.new_page(**more)
    tab.goto(page.as_uri())
    tab.locator("#finder summary").click()
    tab.locator("#finder form").wait_for()
    return tab


def typed(rule: random.Random, low: Length, high: Length) -> tuple[str, str]:
    """A unit that is chosen, and a length a little within or without the table as somebody may type it."""
    system = rule.choice(list(System))
    ends = [int(end.in_unit(BARE[system])) for end in (low, high)]
    span = 6 if system is System.INCHES else 15
    whole = rule.randint(ends[0] - span, ends[1] + span)
    part = Fraction(rule.randint(0, 16), 16) if system is System.INCHES else Fraction(rule.randint(0, 10), 10)
    part = part % 1
    decimals = f"{float(part):.4f}".rstrip("0")[2:]
    forms = [f"{whole}.{decimals or 0}"]
    if len(decimals) != 3:  # a comma before three digits may part thousands
        forms.append(f" {whole},{decimals or 0} ")
    if part and system is System.INCHES:
        forms += [f"{whole} {part}", f"{whole}-{part}", f"{whole} + {part}", f"{whole} and {part}"]
        signs = {Fraction(1, 2): "½", Fraction(1, 4): "¼", Fraction(3, 8): "⅜"}
        forms += [f"{whole}{signs[part]}"] * 3 if part in signs else []
    if not part:
        forms.append(str(whole))
    text = rule.choice(forms)
    chosen = SYMBOL[system]
    if rule.random() < 0.25:
        text = text.rstrip() + rule.choice([" in", '"', " inches"] if system is System.INCHES else ["cm", " CM"])
        chosen = rule.choice(["in", "cm"])
    elif rule.random() < 0.1 and system is System.CENTIMETRES:
        text, chosen = f"{whole}{int(part * 10)} mm", "in"
    return chosen, text


def cases_for(found: Computed, count: int) -> list[tuple[str, list[str]]]:
    rule = random.Random(20)
    rows = [row for table in size_rule(found, System.INCHES).tables for row in table.rows]
    names = list(found.tutorial.body)
    cases = []
    for _ in range(count):
        unit, texts = "in", []
        for place, name in enumerate(names):
            bodies = [body.length for row in rows if row.measure == name for body in row.bodies]
            chosen, text = typed(rule, min(bodies), max(bodies))
            # One unit is chosen for all fields: a text of the other one then says its own.
            if place and chosen != unit and text.strip()[-1].isdigit():
                text = f"{text.strip()} {chosen}"
            unit = unit if place else chosen
            texts.append(text if rule.random() < 0.8 else "")
        cases.append((unit, texts if any(texts) else ["30", *texts[1:]]))
    return cases


def told(choice: Choice, advice: SizeAdvice, person: Worked, system: System, words: str, found: Computed) -> list[str]:
    """What a line of the page must hold: the measurement, the size, the numbers around it and the sum."""
    run = next(table for table in size_rule(found, system).tables if table.sizes == advice.sizes)
    row = next(row for row in run.rows if row.measure == choice.measure)

    def show(value: Length) -> str:
        return RULER.show(value, system)

    names, body = advice.sizes, row.bodies
    parts = [f"Your {choice.measure}, {words}, "]
    if choice.between is not None:
        smaller, larger = choice.between
        parts += [
            f"between {names[smaller]} ({show(body[smaller].length)}) and {names[larger]} ({show(body[larger].length)})"
        ]
        parts += [f"{show(person.length - body[smaller].length)} over {names[smaller]}."]
        why = choice.reason.note.partition(": ")[2]
        parts += {
            "the cloth stretches, so the smaller one serves": [f"stretches, so {names[smaller]} serves"],
            "the smaller one still leaves the ease wanted": [
                f"{names[smaller]} still leaves ",
                f"size {names[smaller]}.",
            ],
            "the larger one, since it can be taken in": [f"Take {names[larger]}, since"],
        }[why]
    elif choice.fit is Fit.BELOW:
        parts += [f"{show(body[0].length - person.length)} under {names[0]} ({show(body[0].length)})", "loose"]
    elif choice.fit is Fit.ABOVE:
        parts += [f"{show(person.length - body[-1].length)} over {names[-1]} ({show(body[-1].length)})", "tight"]
    else:
        parts += [f"{names[choice.index]} ({show(body[choice.index].length)})", f"size {names[choice.index]}."]
    inside = advice.found.decided_by.fit not in OUTSIDE and choice.fit not in OUTSIDE
    if inside and row.finished:
        garment = row.finished[advice.found.index].length
        ease = garment - person.length
        way = "more than you" if ease.mm > 0 else "less than you"
        room = f"{show(abs(ease))} {way}" if ease else "as large as you"
        parts.append(f"In {advice.size} the garment is {show(garment)} there, {room}.")
    return parts


@in_browser
@pytest.mark.parametrize("kind", [*KINDS, "two runs"])
def test_page_finds_the_size_that_the_program_finds(tmp_path: Path, browser: Any, kind: str) -> None:
    page, found = lay_out(tmp_path, KINDS.get(kind, TWO_RUNS))
    tab = opened(browser, page)
    cases = cases_for(found, 400)
    fits = set()
    for (unit, texts), answer in zip(cases, tab.evaluate(ASK, cases), strict=True):
        assert not any(answer["wrong"]), (texts, answer)
        bare = {"in": Unit.IN, "cm": Unit.CM}[unit]
        read = {name: parse_length(text, bare) for name, text in zip(found.tutorial.body, texts, strict=True) if text}
        systems = {name: each.unit.system for name, each in read.items()}
        person = {name: given(name, each.value) for name, each in read.items()}
        advice = size_advice(found, person, measured_in=systems)
        assert len(answer["runs"]) == len(advice)
        for said, right in zip(answer["runs"], advice, strict=True):
            outside = right.found.decided_by.fit in OUTSIDE
            begin = f"Of sizes {right.sizes[0]} to {right.sizes[-1]}: " if len(advice) > 1 else ""
            none = "none" if begin else "No size of this table"
            size = f"size {right.size}" if begin else f"Size {right.size}"
            assert said["answer"] == begin + (none if outside else size), (texts, said, right.found)
            assert said["button"] == ("" if outside else f"Choose size {right.size}")
            assert ("Every measurement" in said["why"]) == (right.found.agreed and len(read) > 1)
            if not right.found.agreed and right.found.decided_by.fit is not Fit.BELOW:
                assert right.found.decided_by.measure in said["why"]
            assert len(said["lines"]) == len(right.found.choices)
            for line, choice in zip(said["lines"], right.found.choices, strict=True):
                fits.add((choice.fit, choice.reason.note))
                text = texts[list(found.tutorial.body).index(choice.measure)].strip()
                words = text if re.search(r"[a-zA-Z\"]$", text) else f"{text} {unit}"
                for part in told(choice, right, person[choice.measure], systems[choice.measure], words, found):
                    assert part in line, (part, line)
    assert {fit for fit, _ in fits} == set(Fit)
    tab.close()


TEXTS = (
    "36", "36.5", "36,5", ".5", "36 1/2", "36-1/2", "36½", "36 ½", "½", "3/4", "36 and 1/2", "36 + 1/2", "36 1/2 in", '36"',
    "36 inches", "92cm", "920 mm", "92.5 centimetres", "36⅓", "36 1/3", "36 2/2", "36 1/0", "abc", "-36", "36 in 2", "1,234",
    "1.2.3", "36 / 2", "0", "1234567", "36 1/2 1/2", "3 ft", "½½", "36..5", "in",
)  # fmt: skip


@in_browser
def test_texts_are_read_as_the_program_reads_them(tmp_path: Path, browser: Any) -> None:
    page, _ = lay_out(tmp_path)
    tab = opened(browser, page)
    for unit in ("in", "cm"):
        answers = tab.evaluate(ASK, [(unit, [text, ""]) for text in TEXTS])
        for text, answer in zip(TEXTS, answers, strict=True):
            try:
                known = parse_length(text, {"in": Unit.IN, "cm": Unit.CM}[unit])
            except NotUnderstood:
                known = None
            # A body is not measured in feet, and a measurement of nothing is none.
            if known is not None and known.value and "ft" not in text:
                assert answer["wrong"] == ["", ""], text
                assert len(answer["runs"]) == 1
            else:
                assert answer["wrong"][0], text
                assert answer["runs"] == []
    tab.close()


@in_browser
def test_working_is_told_in_plain_words(tmp_path: Path, browser: Any) -> None:
    page, _ = lay_out(tmp_path)
    tab = opened(browser, page)
    (answer,) = tab.evaluate(ASK, [("in", ["36 1/4", "33"])])
    assert answer["runs"] == [
        {
            "answer": "No size of this table",
            "why": "Your waist is over the largest size, so even that would be tight. Have the pattern made larger, or"
            " choose another one.",
            "lines": [
                "Your bust, 36 1/4 in, lies between M (36 in) and L (38 in), 1/4 in over M. The cloth stretches, so M"
                " serves.",
                "Your waist, 33 in, is 3 in over L (30 in), the largest size: expect L to be tight there.",
            ],
            "button": "",
        }
    ]
    (answer,) = tab.evaluate(ASK, [("in", ["92", ""])])
    assert answer["runs"][0]["lines"][0].endswith(
        "If you measured in centimetres, choose that above, or type the unit: 92 cm."
    )
    (answer,) = tab.evaluate(ASK, [("cm", ["91.5", "66"])])
    assert answer["runs"][0]["why"].startswith("By your bust: no other asks for a larger size.")
    assert answer["runs"][0]["lines"] == [
        "Your bust, 91.5 cm, is over S (86.5 cm) and no more than M (91.5 cm): size M. In M the garment is 101.5 cm there,"
        " 10 cm more than you.",
        "Your waist, 66 cm, is no more than S (66 cm): size S.",
    ]
    tab.close()


@in_browser
def test_button_sets_the_size_of_the_page_and_nothing_else_is_kept(tmp_path: Path, browser: Any) -> None:
    page, _ = lay_out(tmp_path)
    tab = opened(browser, page)
    asked: list[str] = []
    tab.on("request", lambda request: asked.append(request.url))
    tab.locator("#m-1").fill("35 3/4")
    tab.locator("#m-1").press("Enter")
    button = tab.locator(".sized button")
    assert button.inner_text() == "Choose size M"
    assert tab.evaluate("JSON.stringify(localStorage)") == "{}"
    button.click()
    assert tab.locator("#size-2").is_checked()
    assert "size=M" in tab.url
    assert button.inner_text() == "Size M is chosen"
    tab.locator("#size-1").check()
    assert button.inner_text() == "Choose size M"
    assert "35 3/4" not in tab.evaluate("JSON.stringify(localStorage) + location.href")
    assert [url for url in asked if not url.endswith(".svg")] == []
    tab.close()


@in_browser
def test_trouble_stands_beside_its_field_and_goes_when_it_is_mended(tmp_path: Path, browser: Any) -> None:
    page, _ = lay_out(tmp_path)
    tab = opened(browser, page)
    tab.locator("#finder form button").click()
    assert tab.locator(".sized").inner_text() == "Type at least one measurement."
    tab.locator("#m-1").fill("36")
    tab.locator("#m-2").fill("twenty")
    tab.locator("#finder form button").click()
    assert tab.locator("#m-2-wrong").inner_text() == "“twenty” is not a length. Type it like 36 1/2."
    assert tab.locator("#m-2").get_attribute("aria-invalid") == "true"
    assert tab.evaluate("document.activeElement.id") == "m-2"
    assert tab.locator(".sized").inner_text() == ""
    tab.locator("#m-2").fill("28 1/3")
    assert tab.locator("#m-2-wrong").inner_text() == ""
    tab.locator("#finder form button").click()
    assert "halves, quarters, eighths" in tab.locator("#m-2-wrong").inner_text()
    tab.close()


@in_browser
def test_what_was_typed_keeps_its_unit_when_another_is_chosen(tmp_path: Path, browser: Any) -> None:
    page, _ = lay_out(tmp_path)
    tab = opened(browser, page)
    assert tab.locator("#m-1-unit").inner_text() == "in"
    tab.locator("#m-1").fill("36½")
    tab.locator("#units-cm").check()
    assert tab.locator("#m-1-unit").inner_text() == "cm"
    assert tab.locator("#m-1").input_value() == "36½ in"
    assert tab.locator("#m-2").get_attribute("inputmode") == "decimal"
    tab.close()


@in_browser
def test_spanish_page_reads_and_writes_a_comma_for_decimals(tmp_path: Path, browser: Any) -> None:
    page, _ = lay_out(tmp_path, first=System.CENTIMETRES, language="es")
    tab = opened(browser, page)
    tab.locator("#m-1").fill("91,5")
    tab.locator("#finder form button").click()
    assert tab.locator(".answer").inner_text() == "Talla M"
    told = tab.locator(".sized li").inner_text().replace("\xa0", " ")
    assert ", 91,5 cm, " in told
    assert "(86,5 cm)" in told
    assert "91.5" not in told
    tab.locator("#m-1").fill("noventa")
    tab.locator("#finder form button").click()
    assert tab.locator("#m-1-wrong").inner_text() == "«noventa» no es una medida. Escríbela como 92,5."
    tab.close()


@in_browser
def test_length_stays_on_one_line_with_its_fraction_and_its_unit(tmp_path: Path, browser: Any) -> None:
    page, _ = lay_out(tmp_path)
    tab = opened(browser, page)
    tab.locator("#m-1").fill("35 3/4")
    tab.locator("#finder form button").click()
    assert "35\xa03/4\xa0in, " in tab.locator(".sized li").inner_text()
    tab.close()


@in_browser
def test_without_a_script_there_is_no_finder(tmp_path: Path, browser: Any) -> None:
    page, _ = lay_out(tmp_path)
    context = browser.new_context(java_script_enabled=False)
    tab = context.new_page()
    tab.goto(page.as_uri())
    assert not tab.locator("#finder").is_visible()
    assert tab.locator(".by-hand").is_visible()
    context.close()


@in_browser
@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_finder_has_no_known_barrier(tmp_path: Path, browser: Any, scheme: str) -> None:
    axe = pytest.importorskip("axe_playwright_python.sync_playwright").Axe()
    page, _ = lay_out(tmp_path)
    tab = opened(browser, page, color_scheme=scheme, viewport={"width": 360, "height": 800})
    for first, second in (("36", "twenty"), ("36 1/4", "26")):
        tab.locator("#m-1").fill(first)
        tab.locator("#m-2").fill(second)
        tab.locator("#finder form button").click()
        found = axe.run(tab).response["violations"]
        assert [(one["id"], [node["html"] for node in one["nodes"]]) for one in found] == []
        assert tab.evaluate("document.documentElement.scrollWidth") == 360
    tab.close()
