"""The rooms of the package: who may import whom, and what each room may hold."""

from __future__ import annotations

import ast
import importlib
import pkgutil
from pathlib import Path

import pytest

import sitegen

PACKAGE = Path(sitegen.__file__).parent
ROOMS: dict[str, set[str]] = {
    "quantities": set(),
    "findings": set(),
    "sewing": {"quantities"},
    "reading": {"findings"},
    "tutorial": {"quantities", "findings", "sewing"},
    "prose": {"quantities", "findings"},
    "classes": {"quantities", "findings", "sewing", "tutorial"},
    "checks": {"quantities", "findings", "sewing", "reading", "tutorial", "prose", "classes"},
    "diagrams": {"quantities", "sewing", "tutorial"},
    "pictures": {"findings"},
    "publishing": {
        "quantities", "findings", "sewing", "reading", "tutorial", "prose", "classes", "checks", "diagrams",
        "pictures",
    },
    "handouts": {
        "quantities", "findings", "sewing", "reading", "tutorial", "classes", "diagrams", "pictures", "publishing",
    },
    "cli": {
        "quantities", "findings", "sewing", "reading", "tutorial", "prose", "classes", "checks", "diagrams",
        "pictures", "publishing", "handouts",
    },
}  # fmt: skip
ALSO = {"tutorial/build": {"reading"}, "classes/build": {"reading"}, "prose/bind": {"tutorial"}}
"""Parts of a room that may import more than the rest of it."""
THIRD_PARTY = {
    "yaml": {"reading"},
    "markdown_it": {"reading", "publishing"},
    "jinja2": {"publishing"},
    "markupsafe": {"publishing"},
    "PIL": {"pictures"},
    "icalendar": {"classes"},
    "typst": {"handouts"},
    "segno": {"handouts"},
    "pypdf": {"handouts"},
}
MOST_LINES = 400


def modules() -> list[Path]:
    return sorted(path for path in PACKAGE.rglob("*.py") if path.parent != PACKAGE)


def room_of(path: Path) -> str:
    return path.relative_to(PACKAGE).parts[0]


def imports(path: Path) -> list[tuple[str, str]]:
    """Every import of a module, those inside functions and under type checking included: (module, name)."""
    found = []
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            found += [(name.name, "") for name in node.names]
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, f"{path}: relative import"
            found += [(node.module or "", name.name) for name in node.names]
    return found


def test_every_folder_is_a_room_of_the_plan() -> None:
    folders = {path.name for path in PACKAGE.iterdir() if path.is_dir() and path.name not in ("__pycache__", "themes")}
    assert folders == set(ROOMS)


@pytest.mark.parametrize("path", modules(), ids=lambda path: path.relative_to(PACKAGE).as_posix())
def test_module_imports_only_downhill(path: Path) -> None:
    room = room_of(path)
    part = "/".join(path.relative_to(PACKAGE).parts[:2])
    allowed = ROOMS[room] | ALSO.get(part, set()) | {room}
    for module, _ in imports(path):
        parts = module.split(".")
        if parts[0] == "sitegen" and len(parts) > 1:
            assert parts[1] in allowed, f"{room} must not import {module}"
        elif parts[0] in THIRD_PARTY:
            assert room in THIRD_PARTY[parts[0]], f"{module} belongs to {THIRD_PARTY[parts[0]]}, not to {room}"


@pytest.mark.parametrize("path", modules(), ids=lambda path: path.relative_to(PACKAGE).as_posix())
def test_rooms_are_entered_by_the_front_door(path: Path) -> None:
    for module, name in imports(path):
        parts = module.split(".")
        if parts[0] != "sitegen" or len(parts) < 2 or parts[1] == room_of(path) or not name:
            continue
        inner = parts[2:]
        assert inner in ([], ["build"]), f"import {name} from sitegen.{parts[1]}, not from {module}"
        assert name in importlib.import_module(module).__all__, f"{module} does not offer {name}"


@pytest.mark.parametrize("path", modules(), ids=lambda path: path.relative_to(PACKAGE).as_posix())
def test_no_float_enters_a_sum(path: Path) -> None:
    if room_of(path) not in ("quantities", "sewing") or path.stem == "geometry":
        return
    floats = [
        node.lineno
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8")))
        if (isinstance(node, ast.Constant) and isinstance(node.value, float))
        or (isinstance(node, ast.Name) and node.id == "float")
    ]
    assert not floats, f"{path.name}: floats in lines {floats}"


@pytest.mark.parametrize("path", modules(), ids=lambda path: path.relative_to(PACKAGE).as_posix())
def test_module_is_small_enough_to_live_in(path: Path) -> None:
    lines = len(path.read_text(encoding="utf-8").splitlines())
    assert lines <= MOST_LINES, f"{path.name} has {lines} lines"


@pytest.mark.parametrize("room", sorted(ROOMS))
def test_room_says_what_it_knows_nothing_of(room: str) -> None:
    docstring = importlib.import_module(f"sitegen.{room}").__doc__ or ""
    assert len(docstring.split()) > 8, f"sitegen.{room} has no docstring to speak of"


def test_every_module_can_be_imported() -> None:
    names = [info.name for info in pkgutil.walk_packages([str(PACKAGE)], "sitegen.") if info.name != "sitegen.__main__"]
    assert len(names) > 30
    for name in names:
        importlib.import_module(name)
