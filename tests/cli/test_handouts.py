"""The commands handout and errata: what they write, what they say, what they leave alone."""

from __future__ import annotations

import sys
from io import BytesIO
from pathlib import Path

import pytest
from classes.class_folders import CLASS, STEPS, TOTE, class_folder
from PIL import Image
from pypdf import PdfReader

from sitegen.cli import main


def made(root: Path, text: str = CLASS, tutorial: str = TOTE) -> str:
    class_folder(root, text, tutorial=tutorial, **STEPS)
    return str(root / "classes" / "evening.yaml")


def run(*arguments: str, capsys: pytest.CaptureFixture[str]) -> tuple[int, str, str]:
    code = main(arguments)
    out, err = capsys.readouterr()
    return code, out, err


def test_handout_is_written_and_says_its_mark(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    target = tmp_path / "evening.pdf"
    code, out, err = run("handout", made(tmp_path / "c"), "--to", str(target), capsys=capsys)
    assert (code, err) == (0, "")
    assert out.startswith(f"The handout is in {target}. Its release mark is 20")
    reader = PdfReader(BytesIO(target.read_bytes()))
    assert reader.metadata is not None
    assert reader.metadata.title == "Evening class: Test tee"
    assert abs(float(reader.pages[0].mediabox.width) - 595.3) < 0.5


def test_own_file_is_replaced_and_a_changed_one_is_not(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    cls, target = made(tmp_path / "c"), tmp_path / "evening.pdf"
    assert run("handout", cls, "--to", str(target), capsys=capsys)[0] == 0
    assert run("handout", cls, "--to", str(target), "--paper", "letter", capsys=capsys)[0] == 0
    assert abs(float(PdfReader(BytesIO(target.read_bytes())).pages[0].mediabox.width) - 612) < 0.5
    marked = target.read_bytes() + b"a note by hand"
    target.write_bytes(marked)
    code, _, err = run("handout", cls, "--to", str(target), capsys=capsys)
    assert code == 2
    assert "was not written by this program or was changed since" in err
    assert target.read_bytes() == marked


def test_a_file_for_each_size(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    code, out, _ = run("handout", made(tmp_path / "c"), "--to", str(tmp_path / "h.pdf"), "--each-size", capsys=capsys)
    assert code == 0
    assert [line.partition(" is in ")[0] for line in out.splitlines()] == [
        "The handout of size S", "The handout of size L",
    ]  # fmt: skip
    assert sorted(path.name for path in tmp_path.glob("*.pdf")) == ["h-L.pdf", "h-S.pdf"]


def test_sizes_with_like_names_get_files_of_their_own(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    names = ["M", "M+", "m", "M-2", "+"]
    values = {"'30, 40 in'": "'30, 31, 32, 33, 34 in'", "'12, 14 in'": "12 in", "'16, 18 in'": "16 in"}
    tutorial = (
        TOTE.replace("[S, L]", "[M, M+, m, M-2, +]").replace("'10, 12 in'", "10 in").replace("'1/2, 3/4 yd'", "1 yd")
    )
    for old, new in values.items():
        tutorial = tutorial.replace(old, new)
    text = CLASS.replace("{S: 3, L: 2}", "{" + ", ".join(f"{name}: 1" for name in names) + "}")
    cls = made(tmp_path / "c", text, tutorial)
    code, out, _ = run("handout", cls, "--to", str(tmp_path / "h.pdf"), "--each-size", capsys=capsys)
    assert code == 0
    said = [line.partition(". ")[0].partition(" is in ") for line in out.splitlines()]
    assert [(each[0].removeprefix("The handout of size "), Path(each[2]).name) for each in said] == [
        ("M", "h-M.pdf"), ("M+", "h-M-3.pdf"), ("m", "h-m-4.pdf"), ("M-2", "h-M-2.pdf"), ("+", "h-one-size.pdf"),
    ]  # fmt: skip
    assert len({path.name.casefold() for path in tmp_path.glob("*.pdf")}) == len(names)


def test_size_that_nobody_makes(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    code, _, err = run("handout", made(tmp_path / "c"), "--to", str(tmp_path / "h.pdf"), "--size", "M", capsys=capsys)
    assert code == 2
    assert err == "sitegen: no student of this class makes size M. Its sizes: S, L.\n"
    assert not (tmp_path / "h.pdf").exists()


def test_nothing_is_printed_while_something_is_wrong(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    wrong = TOTE.replace("taller: {piece: panel,", "taller: {piece: panel, new_cut_length: 99 in,")
    code, _, err = run("handout", made(tmp_path / "c", tutorial=wrong), "--to", str(tmp_path / "h.pdf"), capsys=capsys)
    assert code == 1
    assert "h.pdf was not written. Mend what is wrong first." in err
    assert not (tmp_path / "h.pdf").exists()


SHORT = CLASS.replace("[{minutes: 200}]", "[{minutes: 60}, {minutes: 15}]")


def test_students_get_their_sheets_while_the_sessions_are_too_short(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """The sheets tell no session then, and the plan is told to be wrong."""
    cls, target, slip = made(tmp_path / "c", SHORT), tmp_path / "h.pdf", tmp_path / "slip.pdf"
    code, out, err = run("handout", cls, "--to", str(target), capsys=capsys)
    assert (code, out.partition(" Its")[0]) == (1, f"The handout is in {target}.")
    assert "class-time" in err
    text = "".join(page.extract_text() for page in PdfReader(BytesIO(target.read_bytes())).pages[1:])
    assert "Session 1" not in text
    made(tmp_path / "c", SHORT, tutorial=TOTE.replace("'12, 14 in'", "'12, 15 in'"))
    code, out, _ = run("errata", cls, "--printed", str(target), "--to", str(slip), capsys=capsys)
    assert (code, out) == (1, f"The slip is in {slip}.\n")


def test_a_plan_that_begins_or_ceases_to_fit_needs_no_slip(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    cls, target = made(tmp_path / "c", CLASS.replace("200}", "200}, {minutes: 200}")), tmp_path / "h.pdf"
    assert run("handout", cls, "--to", str(target), capsys=capsys)[0] == 0
    made(tmp_path / "c", SHORT)
    code, out, _ = run("errata", cls, "--printed", str(target), "--to", str(tmp_path / "s.pdf"), capsys=capsys)
    assert (code, "No slip is needed." in out) == (1, True)


@pytest.mark.parametrize(
    ("text", "tutorial", "options"),
    [
        (SHORT, TOTE, ("--copy", "teacher")),
        (SHORT, TOTE.replace("taller: {piece: panel,", "taller: {piece: panel, new_cut_length: 99 in,"), ()),
    ],
)
def test_neither_the_plan_nor_a_wrong_number_is_printed(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], text: str, tutorial: str, options: tuple[str, ...]
) -> None:
    cls, target = made(tmp_path / "c", text, tutorial), tmp_path / "h.pdf"
    code, _, err = run("handout", cls, "--to", str(target), *options, capsys=capsys)
    assert code == 1
    assert "h.pdf was not written. Mend what is wrong first." in err
    assert not target.exists()


@pytest.mark.parametrize("package", ["typst", "segno"])
def test_missing_package_is_named(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch, package: str
) -> None:
    monkeypatch.setitem(sys.modules, package, None)
    cls = made(tmp_path / "c")
    (tmp_path / "c" / "site.yaml").write_text(
        "title: T\nauthor: N\naddress: https://example.org/sewing\n", encoding="utf-8"
    )
    code, _, err = run("handout", cls, "--to", str(tmp_path / "h.pdf"), capsys=capsys)
    assert code == 2
    assert f"A PDF needs the package {package}. Install it with: pip install 'sitegen[pdf]'" in err


def test_errata(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    cls, printed, slip = made(tmp_path / "c"), tmp_path / "h.pdf", tmp_path / "slip.pdf"
    assert run("handout", cls, "--to", str(printed), capsys=capsys)[0] == 0
    code, out, _ = run("errata", cls, "--printed", str(printed), "--to", str(slip), capsys=capsys)
    assert code == 0
    assert "No slip is needed." in out
    assert not slip.exists()
    made(tmp_path / "c", tutorial=TOTE.replace("'12, 14 in'", "'12, 15 in'"))
    code, out, _ = run("errata", cls, "--printed", str(printed), "--to", str(slip), capsys=capsys)
    assert (code, out) == (0, f"The slip is in {slip}.\n")
    assert "15 in" in PdfReader(BytesIO(slip.read_bytes())).pages[0].extract_text().replace("\u00a0", " ")


def in_two_languages(root: Path, length: str = "'12, 14 in'") -> str:
    """The class of a site in English and Spanish, with what the teacher calls by the words of the tutorial."""
    tutorial = TOTE.replace("'12, 14 in'", length).replace(
        "- {item: polyester thread,", "- {item: {en: polyester thread, es: hilo},"
    )
    tutorial = tutorial.replace("tools: [sewing machine, iron,", "tools: [sewing machine, {en: iron, es: plancha},")
    text = CLASS.replace("title: Evening class", "title: {en: Evening class, es: Clase de tarde}")
    text += "brings: [iron]\nroom: {iron: 2}\nshared: {polyester thread: 2}\nprices: {polyester thread: £2.80}\n"
    steps = {
        **STEPS,
        "steps__03-press_dot_yaml": STEPS["steps__03-press_dot_yaml"].replace(
            "Press the bag", "{en: Press, es: Plancha la bolsa}"
        ),
    }
    class_folder(root, text, tutorial=tutorial, **steps)
    (root / "site.yaml").write_text("title: T\nauthor: N\nlanguages: [en, es]\n", encoding="utf-8")
    return str(root / "classes" / "evening.yaml")


def text_of(pdf: Path) -> str:
    pages = PdfReader(BytesIO(pdf.read_bytes())).pages
    return " ".join(" ".join(page.extract_text().split()) for page in pages)


def test_handout_in_another_language_of_the_site(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    cls, target = in_two_languages(tmp_path / "c"), tmp_path / "es.pdf"
    code, _, err = run("handout", cls, "--to", str(target), "--language", "es", "--copy", "teacher", capsys=capsys)
    assert code == 0
    assert "no translation into es and will be in en; sitegen check tells which." in err
    told = text_of(target)
    for words in ("Clase de tarde", "Plancha la bolsa", "hilo", "£2,80", "Trae contigo • plancha"):
        assert words in told, words
    for words in ("Evening class", "polyester thread", "Bring with you"):
        assert words not in told, words
    assert run("handout", cls, "--to", str(tmp_path / "en.pdf"), capsys=capsys)[0] == 0
    assert "Evening class" in text_of(tmp_path / "en.pdf")


def test_slip_is_in_the_language_of_the_print(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    cls, printed, slip = in_two_languages(tmp_path / "c"), tmp_path / "es.pdf", tmp_path / "slip.pdf"
    assert run("handout", cls, "--to", str(printed), "--language", "es", capsys=capsys)[0] == 0
    errata = ("errata", cls, "--printed", str(printed), "--to", str(slip))
    assert "No slip is needed." in run(*errata, capsys=capsys)[1]
    assert run("handout", cls, "--to", str(printed), capsys=capsys)[0] == 0  # the numbers are the same in any language
    assert run("handout", cls, "--to", str(printed), "--language", "es", capsys=capsys)[0] == 0
    in_two_languages(tmp_path / "c", "'12, 15 in'")
    assert run(*errata, capsys=capsys)[0] == 0
    assert "Clase de tarde" in text_of(slip)
    (tmp_path / "c" / "site.yaml").write_text("title: T\nauthor: N\nlanguage: en\n", encoding="utf-8")
    code, _, err = run(*errata, capsys=capsys)
    assert code == 2
    assert "it is in the language es, which the site has no more." in err


def test_language_that_the_site_does_not_have(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    target = tmp_path / "h.pdf"
    code, _, err = run(
        "handout", in_two_languages(tmp_path / "c"), "--to", str(target), "--language", "fr", capsys=capsys
    )
    assert (code, target.exists()) == (2, False)
    assert err.endswith(
        "sitegen: nothing was written; the site has no language fr: in site.yaml there are en, es."
        " Example: languages: [en, es, fr]\n"
    )
    code, _, err = run("handout", made(tmp_path / "d"), "--to", str(target), "--language", "es", capsys=capsys)
    assert code == 2
    assert "in site.yaml there is en alone. Example: languages: [en, es]" in err


def test_slip_is_not_written_over_a_print(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    cls, printed = made(tmp_path / "c"), tmp_path / "h.pdf"
    assert run("handout", cls, "--to", str(printed), capsys=capsys)[0] == 0
    made(tmp_path / "c", tutorial=TOTE.replace("'12, 14 in'", "'12, 15 in'"))
    record = printed.read_bytes()
    code, _, err = run("errata", cls, "--printed", str(printed), "--to", str(printed), capsys=capsys)
    assert code == 2
    assert f"nothing was written. {printed} is a printed handout" in err
    assert "Give the slip another name. Example: --to slip.pdf" in err
    assert printed.read_bytes() == record


def test_print_whose_numbers_have_moved_is_kept_unless_told(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    cls, printed = made(tmp_path / "c"), tmp_path / "h.pdf"
    assert run("handout", cls, "--to", str(printed), capsys=capsys)[0] == 0
    made(tmp_path / "c", CLASS.replace("Evening class", "Late class"))
    code, out, err = run("handout", cls, "--to", str(printed), "--size", "L", capsys=capsys)
    assert (code, err) == (0, "")  # its numbers could be printed again
    made(tmp_path / "c", tutorial=TOTE.replace("'12, 14 in'", "'12, 15 in'"))
    record = printed.read_bytes()
    code, out, err = run("handout", cls, "--to", str(printed), capsys=capsys)
    assert (code, out) == (2, "")
    assert f"nothing was written. {printed} stands there already." in err
    assert "and its numbers have moved since: panel cut length." in err
    assert f"sitegen errata {cls} --printed {printed} --to slip.pdf" in err
    assert printed.read_bytes() == record
    assert run("handout", cls, "--to", str(printed), "--replace", capsys=capsys)[0] == 0
    assert printed.read_bytes() != record
    assert run("handout", cls, "--to", str(printed), capsys=capsys)[0] == 0


def test_print_of_another_class_is_kept(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    cls, printed = made(tmp_path / "c"), tmp_path / "h.pdf"
    assert run("handout", cls, "--to", str(printed), capsys=capsys)[0] == 0
    other = tmp_path / "c" / "classes" / "morning.yaml"
    other.write_text(CLASS, encoding="utf-8")
    code, _, err = run("handout", str(other), "--to", str(printed), capsys=capsys)
    assert code == 2
    assert "it was printed for the class evening" in err


def test_errata_of_what_is_no_handout(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    cls, printed = made(tmp_path / "c"), tmp_path / "h.pdf"
    for content, why in (
        (None, "cannot be read: no such file or directory"),
        (b"junk", "is no handout of this class: it is no PDF"),
    ):
        if content is not None:
            printed.write_bytes(content)
        code, _, err = run("errata", cls, "--printed", str(printed), "--to", str(tmp_path / "s.pdf"), capsys=capsys)
        assert code == 2
        assert f"{printed} {why}." in err
    assert run("handout", cls, "--to", str(tmp_path / "own.pdf"), capsys=capsys)[0] == 0
    other = tmp_path / "c" / "classes" / "morning.yaml"
    other.write_text(CLASS, encoding="utf-8")
    code, _, err = run(
        "errata", str(other), "--printed", str(tmp_path / "own.pdf"), "--to", str(tmp_path / "s.pdf"), capsys=capsys
    )
    assert code == 2
    assert "it was printed for the class evening." in err
    made(tmp_path / "c", CLASS.replace("{S: 3, L: 2}", "{S: 3, XL: 2}"), tutorial=TOTE.replace("[S, L]", "[S, XL]"))
    code, _, err = run(
        "errata", cls, "--printed", str(tmp_path / "own.pdf"), "--to", str(tmp_path / "s.pdf"), capsys=capsys
    )
    assert code == 2
    assert "it has size L, which the tutorial has no more. Print it anew." in err


def test_photo_that_cannot_be_shown_stops_the_print(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    cls = made(tmp_path / "c")
    home = tmp_path / "c" / "tutorials" / "tee"
    (home / "photos").mkdir()
    step = home / "steps" / "02-sew.yaml"
    step.write_text(
        step.read_text(encoding="utf-8") + "photo: {file: side.png, shows: The side seam}\n", encoding="utf-8"
    )
    picture = BytesIO()
    Image.effect_noise((300, 200), 50).save(picture, "PNG")
    (home / "photos" / "side.png").write_bytes(picture.getvalue()[:9000])
    code, _, err = run("handout", cls, "--to", str(tmp_path / "h.pdf"), capsys=capsys)
    assert code == 2
    assert "side.png is damaged or cut off" in err
    (home / "photos" / "side.png").write_bytes(picture.getvalue())
    assert run("handout", cls, "--to", str(tmp_path / "h.pdf"), capsys=capsys)[0] == 0


@pytest.mark.parametrize("command", [["handout"], ["errata", "--printed", "h.pdf"]])
def test_a_sheet_is_called_a_pdf(command: list[str], tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    target = tmp_path / "evening.txt"
    code, _, err = run(*command, made(tmp_path / "c"), "--to", str(target), capsys=capsys)
    assert code == 2
    assert "must end in .pdf. Example: evening.pdf" in err
    assert not target.exists()
