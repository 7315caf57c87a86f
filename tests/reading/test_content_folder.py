"""The only door to an author's files: what it lists, what it reads, and what it keeps out."""

import builtins
import os
from pathlib import Path
from typing import Any

import pytest

from sitegen.findings import Collector, Finding, Place
from sitegen.reading import ContentFolder, Mapping, Scalar, Table
from sitegen.reading.decode import MOST_BYTES


@pytest.fixture
def root(tmp_path: Path) -> Path:
    folder = tmp_path / "content"
    (folder / "tutorials" / "tee" / "steps").mkdir(parents=True)
    (folder / "tutorials" / "tee" / "tutorial.yaml").write_text("title: Summer tee\n")
    (folder / "tutorials" / "tee" / "sizes.csv").write_text("measure,XS\nbust,33\n")
    for name in ("02-sew.yaml", "10-hem.yaml", "01-cut.yaml", ".hidden.yaml", "notes.txt", "03-Press.YAML"):
        (folder / "tutorials" / "tee" / "steps" / name).write_text("title: x\n")
    (tmp_path / "secret.yaml").write_text("password: x\n")
    return folder


class Door:
    """A content folder with its collector."""

    def __init__(self, root: Path, shown: str = "my/content") -> None:
        self.collector = Collector()
        self.folder = ContentFolder(root, shown)

    def yaml(self, relative: str) -> Mapping | None:
        return self.folder.yaml(relative, self.collector)

    def csv(self, relative: str) -> Table | None:
        return self.folder.csv(relative, self.collector)

    @property
    def said(self) -> list[str]:
        return [f"{finding.place} {finding.check}: {finding.message}" for finding in self.collector.findings]


def only(door: Door) -> Finding:
    (finding,) = door.collector.findings
    assert finding.unread
    return finding


def test_a_yaml_file_is_read_with_the_place_as_its_user_named_it(root: Path) -> None:
    door = Door(root)
    mapping = door.yaml("tutorials/tee/tutorial.yaml")
    assert mapping is not None
    assert mapping.keys == ("title",)
    entry = mapping.get("title")
    assert entry is not None
    assert entry.value == Scalar("Summer tee", Place("my/content/tutorials/tee/tutorial.yaml", 1, 8, 18), False)
    assert mapping.get("summary") is None
    assert door.said == []


def test_a_slash_at_the_end_of_the_shown_name_is_not_doubled(root: Path) -> None:
    assert ContentFolder(root, "content/").place("site.yaml") == Place("content/site.yaml", 1, 1)


def test_files_come_in_the_order_of_their_names_without_hidden_ones(root: Path) -> None:
    door = Door(root)
    names = door.folder.list("tutorials/tee/steps", door.collector, suffixes=(".yaml", ".yml"))
    assert names == ("01-cut.yaml", "02-sew.yaml", "03-Press.YAML", "10-hem.yaml")
    assert door.folder.list("tutorials/tee", door.collector) == ("sizes.csv", "tutorial.yaml")
    assert door.folder.list("", door.collector) == ()
    assert door.said == []


def test_folders_come_in_the_order_of_their_names_without_hidden_ones(root: Path) -> None:
    (root / "tutorials" / "b").mkdir()
    (root / "tutorials" / "a").mkdir()
    (root / "tutorials" / ".git").mkdir()
    (root / "tutorials" / "a file").write_text("x")
    door = Door(root)
    assert door.folder.folders("tutorials", door.collector) == ("a", "b", "tee")
    assert door.folder.folders("", door.collector) == ("tutorials",)
    assert door.said == []


def test_a_missing_folder_holds_nothing_and_is_no_finding(root: Path) -> None:
    door = Door(root)
    assert door.folder.list("tutorials/tee/photos", door.collector) == ()
    assert door.folder.folders("classes", door.collector) == ()
    assert door.said == []
    nowhere = Door(root / "nowhere")
    assert nowhere.folder.folders("", nowhere.collector) == ()
    assert nowhere.yaml("site.yaml") is None
    assert only(nowhere).check == "file-missing"


def test_what_exists_is_known_without_reading_it(root: Path) -> None:
    folder = ContentFolder(root, "c")
    assert folder.exists("tutorials/tee/sizes.csv")
    assert folder.exists("tutorials")
    assert folder.exists("")
    assert folder.exists("tutorials/../tutorials/tee")
    assert not folder.exists("tutorials/tee/photos")
    assert not folder.exists("../secret.yaml")
    assert not folder.exists("/etc/hostname")
    assert not folder.exists("a\0b")


def test_a_missing_file_is_said(root: Path) -> None:
    door = Door(root)
    assert door.yaml("site.yaml") is None
    assert door.csv("tutorials/tee/tutorial.yaml/x.csv") is None
    assert door.said == [
        "my/content/site.yaml:1:1 file-missing: There is no such file.",
        "my/content/tutorials/tee/tutorial.yaml/x.csv:1:1 file-missing: There is no such file.",
    ]


def test_a_folder_in_the_place_of_a_file_is_listed_and_said(root: Path) -> None:
    (root / "tutorials" / "tee" / "steps" / "04-x.yaml").mkdir()
    door = Door(root)
    names = door.folder.list("tutorials/tee/steps", door.collector, suffixes=(".yaml",))
    assert "04-x.yaml" in names
    assert door.yaml("tutorials/tee/steps/04-x.yaml") is None
    assert only(door).check == "file-unreadable"
    assert only(door).message == "A file is expected here, but this is a folder."


def test_a_file_in_the_place_of_a_folder_is_said(root: Path) -> None:
    door = Door(root)
    assert door.folder.list("tutorials/tee/sizes.csv", door.collector) == ()
    assert only(door).check == "folder-unreadable"
    assert only(door).message == "A folder is expected here, but this is a file."


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="this system has no pipes with a name")
def test_a_pipe_is_not_waited_for(root: Path) -> None:
    os.mkfifo(root / "site.yaml")
    door = Door(root)
    assert door.yaml("site.yaml") is None
    assert door.folder.file("site.yaml") is None
    assert only(door).message == "This is not an ordinary file."
    assert only(door).check == "file-unreadable"


@pytest.mark.parametrize(
    ("error", "words"),
    [
        (PermissionError(13, "Permission denied"), "you have no permission to read it"),
        (OSError(5, "Input/output error"), "input/output error"),
        (OSError("?"), "the system gives no reason"),
    ],
)
def test_a_file_that_cannot_be_opened_is_said(
    root: Path, monkeypatch: pytest.MonkeyPatch, error: OSError, words: str
) -> None:
    real = builtins.open

    def refuse(path: Any, *args: Any, **kwargs: Any) -> Any:
        if str(path).endswith("tutorial.yaml"):
            raise error
        return real(path, *args, **kwargs)

    monkeypatch.setattr(builtins, "open", refuse)
    door = Door(root)
    assert door.yaml("tutorials/tee/tutorial.yaml") is None
    assert door.yaml("tutorials/tee/steps/01-cut.yaml") is not None
    assert only(door).check == "file-unreadable"
    assert only(door).message == f"This file cannot be opened: {words}."


def test_a_folder_that_cannot_be_opened_is_said(root: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def refuse(path: Any) -> Any:
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(os, "scandir", refuse)
    door = Door(root)
    assert door.folder.list("tutorials/tee/steps", door.collector) == ()
    assert only(door).check == "folder-unreadable"
    assert only(door).message == "This folder cannot be opened: you have no permission to read it."


def test_no_file_outside_is_ever_read(root: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    outside = root.parent
    (root / "link.yaml").symlink_to(outside / "secret.yaml")
    (root / "up").symlink_to(outside)
    opened: list[str] = []
    real = builtins.open
    monkeypatch.setattr(builtins, "open", lambda path, *a, **k: (opened.append(str(path)), real(path, *a, **k))[1])
    names = ("link.yaml", "up/secret.yaml", "../secret.yaml", "tutorials/../../secret.yaml")
    for name in (*names, str(outside / "secret.yaml")):
        door = Door(root)
        assert door.yaml(name) is None
        assert door.csv(name) is None
        assert door.folder.text(name, door.collector) is None
        assert door.folder.file(name) is None
        assert only(door).check == "outside-folder"
        assert only(door).message == (
            "This leads out of the content folder, and only files inside it are read. Put a copy of it inside."
        )
    door = Door(root)
    assert door.folder.list("up", door.collector) == ()
    assert only(door).check == "outside-folder"
    assert not door.folder.exists("up/secret.yaml")
    assert opened == []


def test_a_folder_that_leads_outside_is_left_out_and_said(root: Path) -> None:
    (root / "tutorials" / "other").symlink_to(root.parent)
    door = Door(root)
    assert door.folder.folders("tutorials", door.collector) == ("tee",)
    assert only(door).check == "outside-folder"
    assert only(door).place == Place("my/content/tutorials/other", 1, 1)


def test_a_link_inside_is_followed(root: Path) -> None:
    (root / "tutorials" / "same").symlink_to(root / "tutorials" / "tee")
    (root / "tutorials" / "tee" / "steps" / "04-again.yaml").symlink_to("01-cut.yaml")
    door = Door(root)
    assert door.folder.folders("tutorials", door.collector) == ("same", "tee")
    assert door.yaml("tutorials/same/steps/04-again.yaml") is not None
    assert door.said == []


def test_the_content_folder_itself_may_be_a_link(root: Path) -> None:
    link = root.parent / "link"
    link.symlink_to(root)
    door = Door(link)
    assert door.folder.folders("", door.collector) == ("tutorials",)
    assert door.yaml("tutorials/tee/tutorial.yaml") is not None


def test_a_link_to_nothing_is_said_and_not_passed_over(root: Path) -> None:
    (root / "tutorials" / "gone").symlink_to(root / "nowhere")
    (root / "tutorials" / "tee" / "steps" / "04-gone.yaml").symlink_to("nowhere.yaml")
    door = Door(root)
    assert door.folder.exists("tutorials/tee/steps/04-gone.yaml")
    assert "04-gone.yaml" in door.folder.list("tutorials/tee/steps", door.collector, suffixes=(".yaml",))
    assert door.yaml("tutorials/tee/steps/04-gone.yaml") is None
    assert door.folder.folders("tutorials", door.collector) == ("tee",)
    assert door.folder.list("tutorials/gone", door.collector) == ()
    words = "This link leads to nothing. Take it out or mend it."
    assert door.said == [
        f"my/content/tutorials/gone:1:1 file-missing: {words}",
        f"my/content/tutorials/tee/steps/04-gone.yaml:1:1 file-missing: {words}",
    ]


def test_links_in_a_circle_end(root: Path) -> None:
    (root / "a.yaml").symlink_to("b.yaml")
    (root / "b.yaml").symlink_to("a.yaml")
    door = Door(root)
    assert door.yaml("a.yaml") is None
    assert only(door).check == "file-unreadable"
    assert door.folder.file("a.yaml") is None


@pytest.mark.parametrize("name", [b"bad\xff.yaml", b"two\nlines.yaml", b"bell\x07.yaml"])
def test_a_name_that_cannot_be_shown_is_said(root: Path, name: bytes) -> None:
    with open(os.fsencode(root) + b"/" + name, "w") as file:
        file.write("a: 1\n")
    door = Door(root)
    assert door.folder.list("", door.collector) == ()
    assert only(door).check == "file-name"
    assert only(door).message == (
        "The name of this file or folder holds characters that cannot be shown. Give it a plain name."
    )
    assert only(door).place.file.encode("utf-8").isascii()
    assert "\n" not in only(door).place.file


@pytest.mark.parametrize(("name", "check"), [("a\0b.yaml", "file-missing"), ("x" * 5_000, "file-unreadable")])
def test_a_name_that_no_file_can_have_is_said(root: Path, name: str, check: str) -> None:
    door = Door(root)
    assert door.yaml(name) is None
    assert door.folder.file(name) is None
    assert only(door).check == check
    assert "\0" not in only(door).place.file


def test_a_file_too_large_is_not_read(root: Path) -> None:
    (root / "site.yaml").write_bytes(b"#" * MOST_BYTES)
    (root / "glossary.yaml").write_bytes(b"#" * (MOST_BYTES + 1))
    door = Door(root)
    door.yaml("site.yaml")
    assert only(door).check == "file-empty"
    door = Door(root)
    door.yaml("glossary.yaml")
    assert only(door).check == "file-too-large"
    assert only(door).message == "This file is larger than 2 MB, too large for text. Split it."


@pytest.mark.parametrize(
    ("data", "place", "message"),
    [
        (
            "title: ½ in\n".encode("utf-16"),
            Place("my/content/site.yaml", 1, 1, 1),
            "This file is saved as UTF-16, not as UTF-8. Open it in a text editor and save it with the encoding UTF-8.",
        ),
        (
            "title: ½ in\n".encode("utf-32"),
            Place("my/content/site.yaml", 1, 1, 1),
            "This file is saved as UTF-32, not as UTF-8. Open it in a text editor and save it with the encoding UTF-8.",
        ),
        (
            "title: é\r\nband: ".encode() + b"1\xbd in\n",
            Place("my/content/site.yaml", 2, 8, 9),
            "This file is not saved as UTF-8: the byte BD stands here (an older program writes “½” so)."
            " Open it in a text editor and save it with the encoding UTF-8.",
        ),
        (
            b"\xef\xbb\xbfa: \x81",
            Place("my/content/site.yaml", 1, 4, 5),
            "This file is not saved as UTF-8: the byte 81 stands here."
            " Open it in a text editor and save it with the encoding UTF-8.",
        ),
    ],
    ids=["UTF-16", "UTF-32", "Windows", "unknown byte"],
)
def test_a_file_that_is_not_utf8_is_said(root: Path, data: bytes, place: Place, message: str) -> None:
    (root / "site.yaml").write_bytes(data)
    door = Door(root)
    assert door.yaml("site.yaml") is None
    assert only(door).check == "file-encoding"
    assert only(door).place == place
    assert only(door).message == message


def test_a_spreadsheet_file_of_an_old_program_is_told_how_to_be_saved(root: Path) -> None:
    (root / "sizes.csv").write_bytes("measure;XS\nbust;33½\n".encode("cp1252"))
    door = Door(root)
    assert door.csv("sizes.csv") is None
    assert only(door).place == Place("my/content/sizes.csv", 2, 8, 9)
    assert only(door).message == (
        "This file is not saved as UTF-8: the byte BD stands here (an older program writes “½” so). Save it from the"
        " spreadsheet as “CSV UTF-8”, or choose UTF-8 as the character set when saving."
    )
    assert door.folder.source_line("my/content/sizes.csv", 2) == "bust;33\ufffd"


def test_a_byte_order_mark_is_no_part_of_the_text(root: Path) -> None:
    (root / "site.yaml").write_bytes(b"\xef\xbb\xbftitle: x\n")
    (root / "sizes.csv").write_bytes(b"\xef\xbb\xbfmeasure,XS\nbust,33\n")
    (root / "notes.md").write_bytes(b"\xef\xbb\xbfx")
    door = Door(root)
    mapping, table = door.yaml("site.yaml"), door.csv("sizes.csv")
    assert mapping is not None
    assert table is not None
    assert mapping.place == Place("my/content/site.yaml", 1, 1)
    assert table.header[0] == Scalar("measure", Place("my/content/sizes.csv", 1, 1, 8))
    assert door.folder.text("notes.md", door.collector) == "x"
    assert door.said == []


def test_text_comes_with_plain_line_breaks(root: Path) -> None:
    (root / "a.vtt").write_bytes("WEBVTT\r\n\r\né\rb\n".encode())
    (root / "empty.md").write_bytes(b"")
    door = Door(root)
    assert door.folder.text("a.vtt", door.collector) == "WEBVTT\n\né\nb\n"
    assert door.folder.text("empty.md", door.collector) == ""
    assert door.said == []


def test_lines_of_files_that_were_read_can_be_shown(root: Path) -> None:
    (root / "site.yaml").write_bytes(b"a: 1\r\nb: \xc3\xa9\r\n")
    door = Door(root)
    assert door.folder.source_line("my/content/site.yaml", 2) == ""
    door.yaml("site.yaml")
    assert door.folder.source_line("my/content/site.yaml", 2) == "b: é"
    assert door.folder.source_line("my/content/site.yaml", 1) == "a: 1"
    assert door.folder.source_line("my/content/site.yaml", 99) == ""
    assert door.folder.source_line("my/content/site.yaml", 0) == ""


def test_a_file_is_found_only_inside(root: Path) -> None:
    door = Door(root)
    assert door.folder.file("tutorials/tee/sizes.csv") == root / "tutorials" / "tee" / "sizes.csv"
    assert door.folder.file("tutorials") is None
    assert door.folder.file("nowhere.jpg") is None
    assert door.folder.file("") is None
