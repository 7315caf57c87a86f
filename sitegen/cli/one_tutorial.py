"""Finds the one tutorial that a command is about, and says so when there is none."""

from __future__ import annotations

import sys
from collections.abc import Sequence
from pathlib import Path
from typing import Any

from sitegen.checks import review_tutorial
from sitegen.cli.screen import content_folder, folder_above
from sitegen.findings import as_text
from sitegen.tutorial import Computed


def add_tutorial(command: Any) -> None:
    """Add what names a tutorial, and which of its views, to the options of a command."""
    command.add_argument("tutorial", metavar="TUTORIAL", help="the tutorial's folder, with tutorial.yaml in it")
    command.add_argument(
        "--view", metavar="VIEW=CHOICE", action="append", default=[], help="a choice such as neck=hood; may come twice"
    )


def one_tutorial(name: str, views: Sequence[str]) -> Computed | None:
    """The tutorial in this folder with its numbers, in the views chosen; None, with a message, when it is not there."""
    path = Path(name).resolve()
    levels = 2 if path.parent.name == "tutorials" else 1
    root = folder_above(Path(name), levels)
    folder = content_folder(root.as_posix()) if content_folder(name) else None
    if folder is None:
        return None
    inner = folder_of_tutorials(path)
    if inner:
        print(
            f"sitegen: {name} is no tutorial: there is no tutorial.yaml in it. Its tutorials: {', '.join(inner)}."
            f" Example: {(Path(name) / 'tutorials' / inner[0]).as_posix()}",
            file=sys.stderr,
        )
        return None
    combinations, collector = review_tutorial(folder, path.relative_to(root.resolve()).as_posix())
    if not combinations:
        print(as_text(collector.findings, folder.source_line), file=sys.stderr)
        return None
    wanted = {tuple(choice.split("=", 1)) for choice in views}
    computed = next((each for each in combinations if wanted <= set(each.tutorial.chosen)), None)
    if computed is None:
        known = combinations[0].tutorial.views
        offered = "; ".join(f"{view}: {', '.join(choices)}" for view, choices in known.items()) or "none"
        print(f"sitegen: this tutorial is not offered with {', '.join(views)}. Its views: {offered}.", file=sys.stderr)
    return computed


def folder_of_tutorials(path: Path) -> tuple[str, ...]:
    """The names of the tutorials, if this is a content folder and not one of its tutorials; else none."""
    if (path / "tutorial.yaml").exists() or not (path / "tutorials").is_dir():
        return ()
    return tuple(sorted(each.parent.name for each in path.glob("tutorials/*/tutorial.yaml")))
