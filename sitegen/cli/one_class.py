"""Finds the one class that a command is about, and says what is wrong with it; writes its files."""

from __future__ import annotations

import argparse
import sys
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

from sitegen.checks import OF_THE_PLAN, review_class
from sitegen.classes import ComputedClass, NotWritten, write_own
from sitegen.cli.screen import COULD_NOT, NOTHING_WRONG, SOMETHING_WRONG, coloured, content_folder, folder_above
from sitegen.findings import Severity, as_text
from sitegen.publishing import ClassHead
from sitegen.quantities import System
from sitegen.reading import ContentFolder


@dataclass(frozen=True, slots=True)
class Found:
    """A class, whether anything in it or in its tutorial is wrong, and the content folder."""

    cls: ComputedClass
    any_wrong: bool
    folder: ContentFolder
    language: str = ""
    """The language of the site in which it is; the first one where that is empty."""
    plan_only: bool = False
    """Whether all that is wrong is that its steps do not fit into its sessions."""

    def for_students(self) -> Found:
        """The same for a sheet that does not tell which step is done when: it is held back by all else that is wrong,
        but not by a plan that does not fit."""
        return replace(self, any_wrong=False) if self.plan_only else self

    @property
    def code(self) -> int:
        """The exit code of a command that only prints."""
        return SOMETHING_WRONG if self.any_wrong else NOTHING_WRONG


def add_class(command: Any) -> None:
    """Add what names a class, and the units, to the options of a command."""
    command.add_argument("file", metavar="CLASS", help="the file of the class, such as content/classes/evening.yaml")
    command.add_argument("--units", choices=[each.value for each in System], help="the units to show lengths in")


def one_class(options: argparse.Namespace) -> Found | int:
    """The class in this file; the exit code, with a message, when there is none. What is wrong is printed."""
    path = Path(options.file).resolve()
    if path.parent.name != "classes" or not path.is_file():
        missing = "it is a folder" if path.is_dir() else "there is no such file"
        found = "it is in no folder classes" if path.is_file() else missing
        print(
            f"sitegen: {options.file} is not the file of a class: {found}. Example: content/classes/evening.yaml",
            file=sys.stderr,
        )
        return COULD_NOT
    folder = content_folder(folder_above(Path(options.file), 2).as_posix())
    if folder is None:
        return COULD_NOT
    cls, collector = review_class(folder, f"classes/{path.name}")
    own = [each for each in collector.findings if each.place.file.endswith(f"classes/{path.name}") or each.unread]
    if own:
        print(as_text(own, folder.source_line, colour=coloured(sys.stderr)), file=sys.stderr)
    others = sum(1 for each in collector.findings if each.severity.value == "wrong" and each not in own)
    if others:
        count = "1 thing is" if others == 1 else f"{others} things are"
        print(f"sitegen: {count} wrong in the tutorial of this class; sitegen check tells what.", file=sys.stderr)
    if cls is None:
        return COULD_NOT if collector.any_unread else SOMETHING_WRONG
    wrong = {each.check for each in collector.findings if each.severity is Severity.WRONG}
    return Found(cls, bool(wrong), folder, plan_only=bool(wrong) and wrong <= OF_THE_PLAN)


def no_pdf(file: str) -> bool:
    """Whether a sheet of paper would get a name under which no program opens it; says so."""
    if Path(file).suffix.lower() == ".pdf":
        return False
    print(
        f"sitegen: nothing was written. What is printed is a PDF, so {file} must end in .pdf."
        f" Example: {Path(file).stem or 'evening'}.pdf",
        file=sys.stderr,
    )
    return True


def no_theme() -> int:
    """Say that a sheet has no words and no look; the exit code."""
    print("sitegen: the site has no usable theme; sitegen check tells why.", file=sys.stderr)
    return COULD_NOT


def units_of(options: argparse.Namespace, cls: ComputedClass) -> System:
    """The units that were asked for, else those of the class."""
    return System(options.units) if options.units else cls.first_system


def write(file: str, data: bytes, found: Found, what: str) -> tuple[int, str]:
    """Write a file of a class, if nothing is wrong; the exit code, and what to say of it."""
    if found.any_wrong:
        return SOMETHING_WRONG, f"sitegen: {file} was not written. Mend what is wrong first."
    try:
        write_own(Path(file), data)
    except NotWritten as reason:
        return COULD_NOT, f"sitegen: nothing was written. {reason}"
    return NOTHING_WRONG, f"{what} is in {file}."


def say_written(code: int, message: str) -> int:
    """Print what became of a file, and return the exit code."""
    if message:
        print(message if code else f"\n{message}", file=sys.stderr if code else sys.stdout)
    return code


def heading(head: ClassHead) -> str:
    """The title of a class, who is in it, and what it makes."""
    return f"{head.title}\n{head.students}. {head.made}."
