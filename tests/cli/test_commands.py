"""The commands as an author uses them: words on the screen, exit codes, and no traceback."""

from __future__ import annotations

import builtins
import json
import os
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest
from content import EXAMPLE, folder

from sitegen.cli import main
from sitegen.cli.commands import HELP

KNIT = (
    "sizes: [S, M]\nseam_allowance: 3/8 in\n"
    "fabrics: {rib: {name: rib, structure: knit, stretch_across: 80%}}\n"
    "pieces: {front: {cut: 1 on fold, fabric: rib, edges: {neckline: '20, 21 in'}}}\n"
    "bands:\n  neckband: {opening: [front.neckline], ratio: 80%, finished_width: 1 in, fabric: rib,\n"
    "    cut_length: '16 3/4, 17 1/2 in'}\n"
)


def content(root: Path, text: str = KNIT, **files: str) -> str:
    folder(root, text, **files)
    return str(root)


@pytest.fixture
def wrong(tmp_path: Path) -> str:
    return content(tmp_path / "mine", KNIT.replace("17 1/2 in", "17 3/8 in"))


def test_check_of_a_wrong_number(wrong: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["check", wrong]) == 1
    assert capsys.readouterr().out == (
        f"{wrong}/tutorials/tee/tutorial.yaml\n"
        "  10:26  wrong  band-cut, size M\n"
        "      The neckband cut length of size M is given as 17 3/8 in, computed it is 17 1/2 in.\n"
        "      said: cut_length: '16 3/4, 17 3/8 in'}\n"
        "                                 ^^^^^^^^^\n"
        "      put:  17 1/2 in\n"
        "      how:  neckband opening length: front neckline 21 in\n"
        "            neckband finished length: neckband opening length 21 in × ratio 80% = 16 3/4 in\n"
        "            neckband cut length: neckband finished length 16 3/4 in + 2 seam allowances of 3/8 in = 17 1/2 in\n"
        "\n"
        "1 tutorial, 0 steps, 15 numbers: 1 wrong\n"
    )


def test_check_as_data(wrong: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["check", wrong, "--json"]) == 1
    (found,) = json.loads(capsys.readouterr().out)
    assert set(found) == {
        "check", "severity", "file", "line", "column", "size", "said", "should_be", "working", "message",
    }  # fmt: skip
    assert (found["check"], found["severity"], found["size"]) == ("band-cut", "wrong", "M")
    assert (found["line"], found["column"], found["said"], found["should_be"]) == (10, 26, "17 3/8 in", "17 1/2 in")


def test_nothing_wrong_is_exit_code_0(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["check", content(tmp_path / "mine")]) == 0
    assert capsys.readouterr().out == "1 tutorial, 0 steps, 15 numbers: nothing wrong\n"


def test_unread_file_is_exit_code_2(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    name = content(tmp_path / "mine", steps__01_dot_yaml='title: "unclosed\n')
    assert main(["check", name]) == 2
    assert "yaml-syntax" in capsys.readouterr().out


@pytest.mark.parametrize(
    ("arguments", "message"),
    [
        (["check", "no-such-folder"], "no-such-folder is not a folder that can be read: it does not exist."),
        (["check", __file__], "is not a folder that can be read: it is a file."),
        (["checks", "band-cutt"], "there is no check “band-cutt”. Nearest: band-cut"),
        (["explain", "no-such-folder"], "no-such-folder is not a folder that can be read"),
        (["publish", "no-such-folder", "--to", "x"], "no-such-folder is not a folder that can be read"),
    ],
)
def test_wrong_use_is_exit_code_2(arguments: list[str], message: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(arguments) == 2
    assert message in capsys.readouterr().err


def test_unknown_command_is_exit_code_2(capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit) as stop:
        main(["chekc"])
    assert stop.value.code == 2


def test_checks_are_listed(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["checks"]) == 0
    out = capsys.readouterr().out
    assert "  band-cut" in out
    assert out.rstrip().endswith("checks")


def test_one_check_is_explained_with_its_examples(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["checks", "hem-catch"]) == 0
    out = capsys.readouterr().out
    for word in ("hem-catch (hems, wrong)", "what:", "why:", "from:", "trips it:", "passes:", "twin needle"):
        assert word in out


TEE = str(EXAMPLE / "tutorials" / "boxy-tee")


def test_explain_shows_the_working_for_one_size(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["explain", TEE, "neckband.cut_length", "--size", "M"]) == 0
    lines = capsys.readouterr().out.splitlines()
    assert lines[0].startswith("neckband.cut_length, size M: 17 1/4 in (44 cm)")
    assert "× ratio 80%" in lines[2]


def test_explain_shows_every_size_without_one(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["explain", TEE, "neckband.cut_length", "--units", "centimetres"]) == 0
    out = capsys.readouterr().out
    assert out.count("neckband.cut_length, size") == 8
    assert "neckband.cut_length, size M: 44 cm (17 1/4 in)" in out


def test_explain_lists_all_numbers(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["explain", TEE]) == 0
    assert "neckband.cut_width" in capsys.readouterr().out


@pytest.mark.parametrize(
    ("arguments", "message"),
    [
        (["opening_quarter"], "there is no number “opening_quarter” in this tutorial. Nearest: neckband.opening_quarter"),
        (["neckband.cut_lenght"], "there is no number “neckband.cut_lenght” in this tutorial. Nearest: neckband.cut_length"),
        (["neckband.cut_length", "--size", "Q"], "this tutorial has no size “Q”. Its sizes are XS, S, M"),
    ],
)  # fmt: skip
def test_explain_of_nothing(arguments: list[str], message: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["explain", TEE, *arguments]) == 2
    assert message in capsys.readouterr().err


def run(*arguments: str, **environment: str) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [sys.executable, "-m", "sitegen", *arguments],
        capture_output=True,
        text=True,
        encoding="utf-8",
        env={**os.environ, **environment},
        check=False,
    )


def test_piped_output_is_plain(wrong: str) -> None:
    done = run("check", wrong)
    assert done.returncode == 1
    assert "\x1b" not in done.stdout + done.stderr


def test_output_survives_a_screen_without_unicode(wrong: str) -> None:
    done = run("check", wrong, PYTHONIOENCODING="ascii")
    assert done.returncode == 1
    assert "Traceback" not in done.stderr


def test_reader_that_goes_away_is_no_fault(wrong: str) -> None:
    command = f'"{sys.executable}" -m sitegen checks | head -n 1'
    done = subprocess.run(["bash", "-c", command], capture_output=True, text=True, check=False)
    assert done.stderr == ""


def test_colour_on_a_terminal_only_and_not_with_no_color(wrong: str) -> None:
    pty = pytest.importorskip("pty")

    def on_a_terminal(environment: dict[str, str]) -> bytes:
        seen = bytearray()

        def read(descriptor: int) -> bytes:
            data = os.read(descriptor, 4096)
            seen.extend(data)
            return b""

        before = dict(os.environ)
        os.environ.update(environment)
        try:
            pty.spawn([sys.executable, "-m", "sitegen", "check", wrong], read)
        finally:
            os.environ.clear()
            os.environ.update(before)
        return bytes(seen)

    assert b"\x1b[31mwrong" in on_a_terminal({"TERM": "xterm"})
    assert b"\x1b[" not in on_a_terminal({"TERM": "xterm", "NO_COLOR": "1"})


def test_stopped_while_it_loads_says_so_without_a_traceback(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """``^C`` before the commands are there: while their modules are imported."""

    def stopped(name: str, *rest: object, **more: object) -> object:
        if name == "sitegen.cli.commands":
            raise KeyboardInterrupt
        return real(name, *rest, **more)

    real = builtins.__import__
    monkeypatch.setattr(builtins, "__import__", stopped)
    assert main(["--version"]) == 130
    assert capsys.readouterr().err == "sitegen: stopped. Nothing is half written.\n"


@pytest.mark.skipif(sys.platform == "win32", reason="no program is asked to end there")
def test_asked_to_end_while_it_loads_says_so_and_gives_the_signal_back(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    def stopped(name: str, *rest: object, **more: object) -> object:
        if name == "sitegen.cli.commands":
            signal.raise_signal(signal.SIGTERM)
        return real(name, *rest, **more)

    real = builtins.__import__
    monkeypatch.setattr(builtins, "__import__", stopped)
    assert main(["--version"]) == 143
    assert capsys.readouterr().err == "sitegen: stopped. Nothing is half written.\n"
    assert signal.getsignal(signal.SIGTERM) is signal.SIG_DFL


@pytest.mark.skipif(sys.platform == "win32", reason="no program is asked to end there")
def test_publish_that_is_asked_to_end_leaves_nothing_behind(tmp_path: Path) -> None:
    command = [sys.executable, "-m", "sitegen", "publish", str(EXAMPLE), "--to", str(tmp_path / "site")]
    with subprocess.Popen(command, stderr=subprocess.PIPE, stdout=subprocess.PIPE, text=True) as run:
        while not any(path.is_dir() for path in tmp_path.iterdir()):
            assert run.poll() is None
            time.sleep(0.01)
        run.send_signal(signal.SIGTERM)
        out, said = run.communicate()
    assert (run.returncode, out, said) == (143, "", "sitegen: stopped. Nothing is half written.\n")
    assert list(tmp_path.iterdir()) == []


def test_explain_shows_every_sum_of_a_number_that_is_alike(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    text = KNIT + "body: {head: '20, 21 in'}\ngirths: {neck: {edges: [front.neckline], body: head}}\n"
    content(tmp_path, text)
    assert main(["explain", str(tmp_path / "tutorials" / "tee"), "neck.ease"]) == 0
    shown = capsys.readouterr().out
    assert "neck.ease, size S: 0 in" in shown
    assert "finished girth 21 in − head measurement 21 in = 0 in" in shown


def test_explain_lists_the_numbers_of_a_part(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    content(tmp_path)
    assert main(["explain", str(tmp_path / "tutorials" / "tee"), "neckband"]) == 2
    assert "neckband.cut_length, " in capsys.readouterr().err


def test_explain_of_a_content_folder_names_its_tutorials(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["explain", content(tmp_path)]) == 2
    assert f"Its tutorials: tee. Example: {tmp_path}/tutorials/tee" in capsys.readouterr().err


def test_every_command_is_a_module_with_its_help(capsys: pytest.CaptureFixture[str]) -> None:
    """Help that lists a command and the command itself must not come apart: its module is only loaded to run it."""
    for name in HELP:
        with pytest.raises(SystemExit) as ended:
            main([name, "--help"])
        told = capsys.readouterr().out
        assert ended.value.code == 0
        assert told.startswith(f"usage: sitegen {name} ")
        assert "Exit code: 0 " in told, name


def test_help_and_proofreading_load_no_pages(tmp_path: Path) -> None:
    draft = tmp_path / "draft.txt"
    draft.write_text("Cut it 16 in long.", encoding="utf-8")
    program = "import sys; from sitegen.cli import main\ntry: main(sys.argv[1:])\nfinally: print(*sys.modules)"
    for arguments in (["--help"], ["--version"], ["proofread", str(draft)]):
        run = subprocess.run([sys.executable, "-c", program, *arguments], capture_output=True, text=True, check=False)
        assert "sitegen.cli.commands" in run.stdout.split(), run.stderr
        assert not {"sitegen.publishing", "sitegen.classes", "typst"} & set(run.stdout.split()), arguments


@pytest.mark.parametrize(
    ("where", "named", "shown"),
    [
        ("content/tutorials/tee", ".", "../.."),
        ("content/tutorials/tee/steps", "..", "../../.."),
        ("content/tutorials", "tee", ".."),
        ("content/tutorials", "./tee/", ".."),
        ("content", "tutorials/tee", "."),
        (".", "content/tutorials/tee", "content"),
        ("content", "ROOT/content/tutorials/tee", "ROOT/content"),
    ],
)
def test_tutorial_is_shown_as_it_was_named(
    where: str,
    named: str,
    shown: str,
    tmp_path: Path,
    capsys: pytest.CaptureFixture[str],
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    folder(tmp_path / "content", "body: {waist: 30 in}\n")
    home = tmp_path / "content" / "tutorials" / "tee"
    (home / "steps").mkdir()
    monkeypatch.chdir(tmp_path / where)
    name = named.replace("ROOT", str(tmp_path))
    assert main(["explain", name]) == 0
    assert capsys.readouterr() == ("body.waist  30 in\n", "")
    (home / "tutorial.yaml").write_text("- no\n", encoding="utf-8")
    assert main(["explain", name]) == 2
    first = capsys.readouterr().err.splitlines()[0]
    assert first == f"{shown.replace('ROOT', str(tmp_path))}/tutorials/tee/tutorial.yaml"
