"""Lays the example of a check out as a content folder.

An example is what follows the head of a tutorial.yaml. A line ``--- steps/01.yaml`` begins another file of the
tutorial; ``--- tutorial.yaml`` begins the tutorial file itself, without the head, and ``--- classes/a.yaml`` a class
beside the tutorials. In brackets behind the name
may stand ``(a folder)``, ``(a gap)``, ``(removed)``, ``(3000000 bytes)``, ``(a picture)``, ``(100100 items)`` or ``(link out)``. A character U+DCxx stands for the byte xx.
"""

from __future__ import annotations

import re
import shutil
from pathlib import Path

from PIL import Image

HEAD = "title: Example\nsummary: An example.\nmeasured_in: inches\n"
_FILE = re.compile(r"^--- (\S+)(?: \((.+)\))?\n", re.MULTILINE)


def lay_out(example: str, root: Path) -> Path:
    """Write the example below the folder and return the folder."""
    home = root / "tutorials" / "example"
    home.mkdir(parents=True)
    (root / "site.yaml").write_text("title: Example site\nauthor: Nobody\n", encoding="utf-8")
    parts = _FILE.split(example)
    (home / "tutorial.yaml").write_text(HEAD + parts[0], encoding="utf-8")
    for name, how, text in zip(parts[1::3], parts[2::3], parts[3::3], strict=True):
        _write((root if name.startswith("classes/") else home) / name, how, text.removeprefix("\n"))
    return root


def _write(path: Path, how: str | None, text: str) -> None:
    path.parent.mkdir(parents=True, exist_ok=True)
    if how == "a folder":
        path.unlink(missing_ok=True)
        path.mkdir()
    elif how == "removed":
        shutil.rmtree(path)
    elif how == "a gap":
        path.unlink(missing_ok=True)
    elif how == "link out":
        path.unlink(missing_ok=True)
        path.symlink_to("/etc/hostname")
    elif how == "a picture":
        Image.new("RGB", (400, 300)).save(path)
    elif how and how.endswith("items"):
        path.write_text("\n".join(["needs:", *["- x"] * int(how.split()[0])]), encoding="utf-8")
    elif how:
        path.write_text("#" * int(how.split()[0]), encoding="utf-8")
    else:
        path.write_bytes(text.encode("utf-8", "surrogateescape"))
