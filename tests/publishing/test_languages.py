"""Spanish pages: numbers, names, workings and drawings in Spanish, texts side by side, and marks on what is not."""

from __future__ import annotations

import re
import shutil
from pathlib import Path

import pytest
from bs4 import BeautifulSoup
from content import EXAMPLE
from pictures.made_pictures import corners, file_of, put

from sitegen.checks import review
from sitegen.findings import Severity
from sitegen.publishing import publish
from sitegen.publishing.languages import (
    finished_page,
    foreign,
    languages,
    misplaced,
    places_of,
    speech_in,
    tables_of,
    unmarked,
)
from sitegen.publishing.site import Outcome
from sitegen.quantities import Ratio, System, cm, given, inches, plus, show_line, times, work
from sitegen.reading import ContentFolder

SPANISH = speech_in("es")
ENGLISH_WORDS = re.compile(r"\b(the|of|is|are|and|from|with|by|on|an|it|its|seam|sewn|cloth|each)\b", re.IGNORECASE)
SITE = {
    "site.yaml": "title: {en: Test room, es: Taller de prueba}\nauthor: Nobody\nlanguages: [en, es]\n"
    "address: https://rooms.example/sewing\n",
    "glossary.yaml": "selvage: {term: {en: selvage, es: orillo}, means: {en: The woven edge., es: El borde tejido.}}\n",
    "tutorials/bag/tutorial.yaml": """\
title: {en: Flat bag, es: Bolsa plana}
summary: {en: "A bag {panel.cut_length} long.", es: "Una bolsa de {panel.cut_length} de largo."}
measured_in: inches
sizes: [S, L]
seam_allowance: 3/8 in
fabrics: {main: {name: {en: canvas, es: lona}, structure: woven, width: 45 in, shrinkage: 3%}}
pieces:
  panel: {cut: 2, fabric: main, finished: {length: "12 1/4, 14 in", width: 10 in}, edges: {upper: 10 in},
    sides: {top: top, bottom: seam, left: seam, right: seam}}
hems: {top: {edges: [panel.upper], turn: 1 1/4 in, fold_under: 1/2 in, stitch: straight, stitch_line: 1 1/8 in}}
supplies: [{item: {en: thread, es: hilo}, for: {en: all seams, es: todas las costuras}}]
names: {upper: {es: borde superior, en: upper}}
""",
    "tutorials/bag/steps/01.yaml": """\
title: {en: Hem the top, es: Haz el dobladillo}
minutes: 75
needs: {en: [thread], es: [hilo]}
cautions: [pins]
hem: [top]
diagrams: [top, plan of panel]
text:
  en: Turn it by {top.turn}, 5/8 in (1.6 cm) stay.
  es: Vuelve {top.turn}; quedan 5/8 in (1,6 cm) hasta el orillo.
look_for: Only English here.
""",
}


def laid(root: Path, **changed: str) -> ContentFolder:
    for name, text in (
        SITE | {name.replace("__", "/").replace("_dot_", "."): text for name, text in changed.items()}
    ).items():
        path = root / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
    return ContentFolder(root, "folder")


def published(content: ContentFolder, target: Path, *, draft: bool = False) -> Outcome:
    outcome = publish(content, target, draft=draft, progress=lambda *_: None)
    assert outcome.front is not None, [each.message for each in outcome.findings]
    return outcome


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    root = tmp_path_factory.mktemp("languages")
    published(laid(root / "content"), root / "site")
    return root / "site"


def page(site: Path, path: str) -> BeautifulSoup:
    return BeautifulSoup((site / path).read_text(encoding="utf-8"), "html.parser")


def english_in(html: BeautifulSoup) -> list[str]:
    """English words of a Spanish page outside of what is marked as another language."""
    for element in html.select("script, style, [lang=en]"):
        element.extract()
    texts = [html.body.get_text(" ")] + [  # type: ignore[union-attr]
        str(element[name]) for name in ("alt", "aria-label") for element in html.select(f"[{name}]")
    ]
    return [found[0] for text in texts for found in ENGLISH_WORDS.finditer(re.sub(r"\d in\b", "", text))]


# -- the language of what the program makes --------------------------------------------------------------------


def test_decimals_have_a_comma_and_inches_stay_fractions() -> None:
    assert SPANISH.amount("1.5 cm") == "1,5 cm"
    assert SPANISH.amount("17 3/4 in (45 cm)") == "17 3/4 in (45 cm)"
    assert speech_in("en").amount("1.5 cm") == "1.5 cm"
    assert SPANISH.metric_first
    assert not speech_in("en").metric_first


@pytest.mark.parametrize("inches", ["⅛", "³⁄₁₆", "1¹⁄₁₆", "²¹⁄₃₂"])
def test_true_fractions_are_read_as_amounts(inches: str) -> None:
    assert SPANISH.say(f"step {inches} in (4.5 mm)") == f"escalón {inches} in (4,5 mm)"


def test_working_is_said_in_spanish() -> None:
    finished = work(
        "neckband finished length",
        given("neckband opening length", inches(20)),
        times(given("neckband ratio", Ratio.percent(85))),
    )
    cut = work("neckband cut length", finished, plus(given("seam allowance", cm("1.5")), 2))
    speech = SPANISH.of_tutorial(
        {}, ["neckband.finished_length", "neckband.cut_length", "neckband.opening_length"], frozenset()
    )
    line = show_line(cut, System.CENTIMETRES, language=speech)
    assert line.startswith(
        "largo de corte de tira del escote: largo acabado de tira del escote 43 cm + 2 márgenes de costura de 1,5 cm = 46"
    )
    assert show_line(cut, System.INCHES).startswith("neckband cut length: neckband finished length 17 in")


def test_names_of_the_author_stay_and_what_is_unknown_is_marked() -> None:
    assert SPANISH.own("tapeta") == "tapeta"
    assert SPANISH.say("a phrase that nobody knows") == foreign("a phrase that nobody knows", "en")
    named = SPANISH.of_tutorial({"neckband": "cuello"}, ["neckband.cut_length"], frozenset())
    assert named.say("neckband cut length") == "largo de corte de cuello"


def test_key_of_a_cutting_layout_names_its_pieces_in_spanish() -> None:
    speech = speech_in("es", "en").of_tutorial({"front_band": "tira delantera"}, (), frozenset())
    assert speech.own("A: sleeve") == "A: manga"
    assert speech.own("B2: front band ×\u00a02") == "B2: tira delantera ×\u00a02"
    assert speech.own("back ×\u00a012") == "espalda ×\u00a012"
    assert speech.own("Ab: sleeve") == "Ab: sleeve"


def test_sentence_of_the_author_is_never_said_in_two_languages() -> None:
    title = "Sew the sides and the bottom"
    spanish = speech_in("es", "en").of_tutorial({}, (), frozenset({title, "sewing machine", "front and back"}))
    assert spanish.own(title) == foreign(title, "en")
    assert spanish.own("sewing machine") == "máquina de coser"
    assert spanish.own("front and back") == "delantero y espalda"


def test_title_of_the_author_stays_whole_inside_a_sentence_of_the_program() -> None:
    title = "Sew sides and underarms in one seam"
    spanish = speech_in("es", "en").of_tutorial({}, (), frozenset({title}))
    told = spanish.sentences(f"Step 12, {title}: needs step 11 and follows step 9.")
    assert unmarked(told) == f"Paso 12, {title}: necesita el paso 11 y sigue al paso 9."


@pytest.mark.parametrize("code", [each for each in languages() if each != "en"])
def test_phrases_keep_their_places(code: str) -> None:
    grammar, phrases = tables_of(code)
    assert list(misplaced(phrases)) == []
    assert set(places_of(grammar["several"])) == {"count", "things", "amount"}
    assert len(phrases) > 500


def test_every_working_and_name_of_the_example_has_spanish_words() -> None:
    """Nothing that the program makes for the example is left in English; what its author named may be."""
    unknown = set()
    for computed in review(ContentFolder(EXAMPLE, "example")).tutorials:
        speech = SPANISH.of_tutorial({}, computed.numbers, frozenset())
        for name in computed.names():
            for number in computed.by_size(name) or ():
                line = show_line(number, System.CENTIMETRES, language=speech)
                if line != unmarked(line):
                    unknown.add(line)
    assert not unknown


def test_marks_become_elements_in_text_and_nothing_elsewhere() -> None:
    text = foreign("cap", "en")
    html = f'<title>{text}</title><p title="{text}">{text}</p><script>{text}</script>'
    assert finished_page(html) == (
        '<title>cap</title><p title="cap"><span lang="en">cap</span></p><script>cap</script>'
    )
    assert foreign(text, "fr") == text


@pytest.mark.parametrize("quote", ['"', ""])
def test_picture_is_of_the_language_of_its_description(quote: str) -> None:
    html = f'<p><img src="a.png" alt={quote}{foreign("cap", "en")}{quote} loading=lazy> <img alt="gorra"></p>'
    assert finished_page(html) == (
        f'<p><img src="a.png" alt={quote}cap{quote} lang=en loading=lazy> <img alt="gorra"></p>'
    )


# -- texts side by side ----------------------------------------------------------------------------------------


def test_each_language_has_its_pages_which_lead_to_each_other(site: Path) -> None:
    english, spanish = page(site, "tutorials/bag/index.html"), page(site, "es/tutorials/bag/index.html")
    assert (english.html["lang"], spanish.html["lang"]) == ("en", "es")  # type: ignore[index]
    assert (english.h1.get_text(), spanish.h1.get_text()) == ("Flat bag", "Bolsa plana")  # type: ignore[union-attr]
    for one, there, code in (
        (english, "../../es/tutorials/bag/index.html", "es"),
        (spanish, "../../../tutorials/bag/index.html", "en"),
    ):
        links = one.select(f'.languages a[hreflang="{code}"], link[rel=alternate][hreflang="{code}"]')
        assert [link["href"] for link in links] == [there, there]
    assert (
        spanish.select_one("link[rel=canonical]")["href"] == "https://rooms.example/sewing/es/tutorials/bag/index.html"
    )  # type: ignore[index]


def test_links_and_files_of_spanish_pages_are_there(site: Path) -> None:
    for path in (site / "es").rglob("*.html"):
        html = BeautifulSoup(path.read_text(encoding="utf-8"), "html.parser")
        for element in html.select("a[href], link[href], script[src], img[src]"):
            target = str(element.get("href") or element.get("src")).partition("#")[0]
            if target and ":" not in target:
                assert (path.parent / target).resolve().is_file(), f"{path.name}: {target}"
    assert not (site / "es" / "theme").exists()
    assert not (site / "es" / "pictures").exists()


def test_numbers_of_both_languages_come_from_the_same_references(site: Path) -> None:
    spanish, english = (
        page(site, f"{folder}tutorials/bag/index.html").select_one(".telling").get_text()  # type: ignore[union-attr]
        for folder in ("es/", "")
    )
    assert "Vuelve 3,2 cm (1 1/4 in)" in spanish.replace("\N{NO-BREAK SPACE}", " ")
    assert "by 1 1/4 in (3.2 cm)" in english.replace("\N{NO-BREAK SPACE}", " ")


def test_nothing_english_is_left_unmarked_on_spanish_pages(site: Path) -> None:
    for path in sorted((site / "es").rglob("*.html")):
        assert english_in(BeautifulSoup(path.read_text(encoding="utf-8"), "html.parser")) == [], path


def test_drawings_speak_spanish(site: Path) -> None:
    spanish = page(site, "es/tutorials/bag/index.html")
    files = {str(image["src"]).rpartition("/")[2] for image in spanish.select(".diagram img")}
    assert files
    for name in files:
        svg = (site / "drawings" / name).read_text(encoding="utf-8")
        texts = re.findall(r"<t(?:span|itle)[^>]*>([^<]*)<", svg)
        assert not [text for text in texts if ENGLISH_WORDS.search(re.sub(r"\d\s?in\b", "", text))], name
        assert unmarked(svg) == svg


def test_labels_stand_at_the_same_places_whether_or_not_their_words_lack_a_translation(tmp_path: Path) -> None:
    """Marks of a language take no room, and a size is a name in every language."""
    measured = SITE["tutorials/bag/tutorial.yaml"] + 'body: {waist: "24, 30 in", "hem_round": "34, 38 in"}\n'
    published(laid(tmp_path / "content", tutorials__bag__tutorial_dot_yaml=measured), tmp_path / "site")
    places = []
    for address in ("tutorials/bag/index.html", "es/tutorials/bag/index.html"):
        chart = next(
            image for image in page(tmp_path / "site", address).select("img") if "size-chart" in str(image["src"])
        )
        svg = (tmp_path / "site" / "drawings" / str(chart["src"]).rpartition("/")[2]).read_text(encoding="utf-8")
        places.append(re.findall(r"<tspan ([^>]*)>([SL]|hem round|Hem round)<", svg))
        if address.startswith("es"):
            told = svg.partition("</desc>")[0]
            assert "Cintura por talla: S 61 cm (24 in), L 76 cm (30 in)." in told
    assert places[0]
    assert places[0] == places[1]


def test_stretch_gauge_is_described_in_spanish(tmp_path: Path) -> None:
    knit = SITE["tutorials/bag/tutorial.yaml"].replace("structure: woven,", "structure: knit, stretch_across: 35%,")
    published(laid(tmp_path / "content", tutorials__bag__tutorial_dot_yaml=knit), tmp_path / "site")
    gauge = next(
        image
        for image in page(tmp_path / "site", "es/tutorials/bag/index.html").select("img")
        if "stretch" in str(image["src"])
    )
    svg = (tmp_path / "site" / "drawings" / str(gauge["src"]).rpartition("/")[2]).read_text(encoding="utf-8")
    told = svg.partition("<desc")[2].partition("</desc>")[0]
    assert "Una flecha señala el 35% de lona. Debajo hay barras de 5 cm y 2 in para comprobar" in told
    assert not ENGLISH_WORDS.findall(re.sub(r"\d in\b", "", told))


def test_a_word_that_is_translated_once_is_so_elsewhere_in_the_tutorial(tmp_path: Path) -> None:
    """Only whole texts for students in the same letters: settings and other words stay as they are."""
    bag = SITE["tutorials/bag/tutorial.yaml"] + "tools: [{en: snips, es: tijeritas}, {en: straight, es: recta}]\n"
    step = SITE["tutorials/bag/steps/01.yaml"] + "tools: [snips, clips]\n"
    content = laid(tmp_path / "content", tutorials__bag__tutorial_dot_yaml=bag, tutorials__bag__steps__01_dot_yaml=step)
    found = [each for each in review(content).findings if each.check == "translation-missing"]
    assert [(each.place.line, each.said) for each in found] == [(10, "Only English here."), (11, "clips")]
    published(content, tmp_path / "site")
    card = page(tmp_path / "site", "es/tutorials/bag/index.html").select_one("#step-1")
    assert card is not None
    assert "tijeritas" in card.get_text()
    assert [each.get_text() for each in card.select("[lang=en]") if "snips" in each.get_text()] == []


def test_title_and_place_of_a_class_are_said_in_both_languages(tmp_path: Path) -> None:
    bag = SITE["tutorials/bag/tutorial.yaml"] + "tools: [{en: snips, es: tijeritas}]\n"
    one = (
        "title: {en: Bags on Monday, es: Bolsas el lunes}\ntutorial: bag\nstudents: {S: 2}\n"
        "sessions: [{minutes: 200}]\nwhere: The hall\nbrings: [snips]\non_site: yes\n"
    )
    content = laid(tmp_path / "content", tutorials__bag__tutorial_dot_yaml=bag, classes__monday_dot_yaml=one)
    told = [each for each in review(content).findings if each.place.file.endswith("monday.yaml")]
    assert [(each.check, each.said) for each in told] == [("translation-missing", "The hall")]
    published(content, tmp_path / "site")
    english, spanish = (page(tmp_path / "site", f"{folder}classes/monday/index.html") for folder in ("", "es/"))
    assert english.h1 is not None
    assert spanish.h1 is not None
    assert (english.h1.get_text(), spanish.h1.get_text()) == ("Bags on Monday", "Bolsas el lunes")
    assert "tijeritas" in spanish.get_text()
    assert "The hall" in [each.get_text() for each in spanish.select("[lang=en]")]


def test_class_of_a_site_whose_first_language_is_spanish_is_titled_in_spanish(tmp_path: Path) -> None:
    one = (
        "title: {en: Bags on Monday, es: Bolsas el lunes}\ntutorial: bag\nstudents: {S: 2}\n"
        "sessions: [{minutes: 200}]\n"
    )
    first = SITE["site.yaml"].replace("[en, es]", "[es, en]")
    found = review(laid(tmp_path, site_dot_yaml=first, classes__monday_dot_yaml=one))
    assert [each.written.title for each in found.classes] == ["Bolsas el lunes"]


def test_what_lacks_a_translation_is_told_and_marked(tmp_path: Path, site: Path) -> None:
    found = [each for each in review(laid(tmp_path)).findings if each.check == "translation-missing"]
    assert [(each.severity, each.place.file, each.place.line) for each in found] == [
        (Severity.DOUBTFUL, "folder/tutorials/bag/steps/01.yaml", 10)
    ]
    marked = page(site, "es/tutorials/bag/index.html").select_one(".look [lang=en]")
    assert marked is not None
    assert marked.get_text().strip() == "Only English here."


def test_photo_and_table_say_in_which_language_they_are_told(tmp_path: Path) -> None:
    rows = "\n\n    | a | b |\n    | --- | --- |\n    | 1 | 2 |\n"
    step = (
        f"title: {{en: Look, es: Mira}}\nminutes: 5\ntext:\n  en: |\n    Look.{rows}  es: |\n    Mira.{rows}"
        f"look_for: |\n  Only English here.{rows.replace('    ', '  ')}photo: {{file: bag.png, shows: The bag,"
        " marks: [{arrow: a corner, from: [20%, 20%], to: [40%, 40%]}, {number: 1, at: [70%, 70%], text: the other}]}\n"
    )
    content = laid(tmp_path / "in", tutorials__bag__steps__02_dot_yaml=step)
    (tmp_path / "in" / "tutorials" / "bag" / "photos").mkdir()
    put(tmp_path / "in" / "tutorials" / "bag" / "photos", file_of(corners(40, 40), "PNG"), "bag.png")
    published(content, tmp_path / "out")
    spanish = page(tmp_path / "out", "es/tutorials/bag/index.html")
    labels = {
        (str(each["aria-label"]), str(each.find_parent(lang=True)["lang"]))  # type: ignore[index]
        for each in spanish.select("#step-2 .scroll[aria-label]")
    }
    assert labels == {("Tabla", "es"), ("Table", "en")}
    photo = spanish.select_one('#step-2 img[alt="The bag"]')
    assert photo is not None
    assert photo["lang"] == "en"
    marks = [each.get_text() for each in spanish.select("#step-2 figure li [lang=en]")]
    assert marks == ["the other", "a corner"]
    english = page(tmp_path / "out", "tutorials/bag/index.html")
    assert {str(each["aria-label"]) for each in english.select("#step-2 .scroll[aria-label]")} == {"Table"}
    assert english.select("img[lang]") == []


def test_a_missing_translation_is_shown_an_example_in_the_languages_of_the_site(tmp_path: Path) -> None:
    found = review(laid(tmp_path / "spanish")).findings
    assert [each.message for each in found if each.check == "translation-missing"] == [
        "This text has no translation into es; the languages in site.yaml are en, es."
        " Example: {en: Pin the band., es: Prende la tira.}"
    ]
    french = laid(tmp_path / "french", site_dot_yaml=SITE["site.yaml"].replace("[en, es]", "[es, fr]"))
    told = {each.message for each in review(french).findings if each.check == "translation-missing"}
    assert told == {
        "This text has no translation into fr; the languages in site.yaml are es, fr."
        " Example: {es: Prende la tira., fr: …}"
    }


def test_checks_of_numbers_run_on_each_language(tmp_path: Path) -> None:
    step = SITE["tutorials/bag/steps/01.yaml"]
    wrong = step.replace("5/8 in (1,6 cm)", "5/8 in (1,2 cm)")
    found = [
        each
        for each in review(laid(tmp_path, tutorials__bag__steps__01_dot_yaml=wrong)).findings
        if each.check == "unit-pair"
    ]
    assert [(each.place.line, each.said) for each in found] == [(9, "5/8 in (1,2 cm)")]
    assert "," in found[0].should_be


def test_references_that_differ_are_told(tmp_path: Path) -> None:
    wrong = SITE["tutorials/bag/steps/01.yaml"].replace("Vuelve {top.turn}", "Vuelve {top.fold_under}")
    found = review(laid(tmp_path, tutorials__bag__steps__01_dot_yaml=wrong)).findings
    told = [each for each in found if each.check == "translation-references"]
    assert [(each.severity, each.place.line) for each in told] == [(Severity.WRONG, 9)]
    assert "lacks {top.turn} and has {top.fold_under} besides" in told[0].message


def test_unknown_language_speaks_english_and_says_so(tmp_path: Path) -> None:
    site_yaml = "title: Atelier\nauthor: Nobody\nlanguage: fr\n"
    outcome = published(laid(tmp_path / "content", site_dot_yaml=site_yaml), tmp_path / "site", draft=True)
    assert any("fr" in note and "English" in note for note in outcome.notes)
    html = page(tmp_path / "site", "index.html")
    assert html.html["lang"] == "fr"  # type: ignore[index]
    assert html.select_one("nav [lang=en]") is not None


def test_english_grammar_is_not_read_into_spanish(tmp_path: Path) -> None:
    site_yaml = "title: Taller\nauthor: Nadie\nlanguage: es\n"
    found = review(laid(tmp_path, site_dot_yaml=site_yaml)).findings
    assert not [each for each in found if each.check in ("caution-missing", "told-sum", "term-unexplained")]


# -- in a browser ----------------------------------------------------------------------------------------------


@pytest.mark.parametrize("width", [390, 1280])
def test_spanish_page_is_accessible_and_choices_work(site: Path, width: int) -> None:
    """WCAG 2.2 A and AA as axe-core tests them; the choice of size and unit works as on an English page."""
    browsers = pytest.importorskip("playwright.sync_api")
    chromium = shutil.which("chromium") or shutil.which("chromium-browser")
    if chromium is None:
        pytest.skip("no chromium on this machine")
    axe = pytest.importorskip("axe_playwright_python.sync_playwright").Axe()
    with browsers.sync_playwright() as running:
        browser = running.chromium.launch(executable_path=chromium, args=["--no-sandbox"])
        opened = browser.new_page(viewport={"width": width, "height": 900}, locale="es")
        opened.goto((site / "es" / "tutorials" / "bag" / "index.html").as_uri())
        assert opened.evaluate("document.documentElement.lang") == "es"
        assert opened.evaluate("document.documentElement.scrollWidth <= innerWidth")
        found = axe.run(opened).response["violations"]
        assert [(each["id"], each["nodes"][0]["html"]) for each in found] == []
        opened.locator("label:has(#size-1)").click()
        opened.locator("label:has(#units-cm)").click()
        lead = opened.locator(".lead").inner_text().replace("\N{NO-BREAK SPACE}", " ")
        assert lead == "Una bolsa de 36,5 cm de largo."
        browser.close()
