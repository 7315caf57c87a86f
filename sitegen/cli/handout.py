"""``sitegen handout CLASS --to FILE.pdf``"""

from __future__ import annotations

import argparse
import re
import sys
import unicodedata
from datetime import date
from itertools import count
from pathlib import Path

from sitegen.classes import ComputedClass, sealed_document
from sitegen.cli.in_language import NoSuchLanguage, in_language
from sitegen.cli.one_class import Found, no_pdf, no_theme, one_class, write
from sitegen.cli.printed_earlier import lost_over, page_of
from sitegen.cli.screen import COULD_NOT
from sitegen.handouts import Copy, NoPdf, Paper, Wanted, handout_of, handout_pdf
from sitegen.quantities import System

_BOTH = "both"


def set_up(command: argparse.ArgumentParser) -> None:
    """Tell the parser of this command what it takes."""
    command.description = (
        "Makes a PDF of the step cards of a class, with a cover, a marking sheet and gauges of true size."
    )
    command.epilog = "Exit code: 0 nothing wrong, 1 something wrong, 2 something could not be read or written."
    command.add_argument("file", metavar="CLASS", help="the file of the class, such as content/classes/evening.yaml")
    command.add_argument("--to", metavar="FILE.pdf", required=True, help="where to write it")
    which = command.add_mutually_exclusive_group()
    which.add_argument("--size", metavar="SIZE", help="for one size alone; all sizes of the class unless told")
    which.add_argument("--each-size", action="store_true", help="a file for each size of the class: FILE-M.pdf")
    command.add_argument(
        "--units", choices=[_BOTH, *(each.value for each in System)], default=_BOTH, help="one unit, or both"
    )
    command.add_argument(
        "--paper", choices=[each.value for each in Paper], default=Paper.A4.value, help="A4 unless told"
    )
    command.add_argument("--large-print", action="store_true", help="letters of 20 points, one column")
    command.add_argument(
        "--language",
        metavar="CODE",
        default="",
        help="a language of the site, such as es; the first of its languages unless told",
    )
    command.add_argument(
        "--replace",
        action="store_true",
        help="write over an earlier handout even if numbers have moved since, so that no slip can be made for it",
    )
    command.add_argument(
        "--copy",
        choices=[each.value for each in Copy],
        default=Copy.STUDENT.value,
        help="the teacher's copy has the teacher's notes, the plan, the kit and the samples too",
    )


def run(options: argparse.Namespace) -> int:
    """Find the class, make each handout, write it."""
    if no_pdf(options.to):
        return COULD_NOT
    found = one_class(options)
    if isinstance(found, int):
        return found
    try:
        printed = in_language(found, options.language)
    except NoSuchLanguage as reason:
        print(f"sitegen: nothing was written; {reason}", file=sys.stderr)
        return COULD_NOT
    if options.copy == Copy.STUDENT.value:
        printed = printed.for_students()
    groups = _groups(options, printed.cls)
    if isinstance(groups, str):
        print(f"sitegen: {groups}", file=sys.stderr)
        return COULD_NOT
    if not (options.replace or printed.any_wrong) and _kept(tuple(groups), options, found):
        return COULD_NOT
    code = found.code
    for file, sizes in groups.items():
        code = max(code, _one(file, sizes, options, printed))
    return code


def _kept(files: tuple[str, ...], options: argparse.Namespace, found: Found) -> bool:
    """Whether there stands a handout whose numbers nobody could print again; says so of each."""
    any_kept = False
    for file in files:
        lost = lost_over(file, found)
        if lost:
            any_kept = True
            slip = f"sitegen errata {options.file} --printed {file} --to slip.pdf"
            print(
                f"sitegen: nothing was written. {file} stands there already. {lost}\n"
                f"  If it was printed, keep it for a slip ({slip}) and give this one another name.\n"
                "  If nobody has it on paper, add --replace.",
                file=sys.stderr,
            )
    return any_kept


def _one(file: str, sizes: tuple[int, ...], options: argparse.Namespace, found: Found) -> int:
    first = System(options.units) if options.units != _BOTH else found.cls.first_system
    units = (first, *(each for each in System if each is not first)) if options.units == _BOTH else (first,)
    wanted = Wanted(sizes, units, Paper(options.paper), Copy(options.copy), options.large_print)
    data, mark = b"", ""
    if not found.any_wrong:
        page = page_of(found, first)
        if page is None:
            return no_theme()
        try:
            made = handout_of(found.cls, page, found.folder, wanted, date.today())
            data, mark = handout_pdf(made), made.handout.mark
        except NoPdf as reason:
            print(f"sitegen: nothing was written. {reason}", file=sys.stderr)
            return COULD_NOT
    size = found.cls.computed.size_name(sizes[0]) if options.each_size else ""
    what = f"The handout of size {size}" if size else "The handout"
    code, message = write(file, sealed_document(data), found, what)
    print(message if code else f"{message} Its release mark is {mark}.", file=sys.stderr if code else sys.stdout)
    return code


def _groups(options: argparse.Namespace, cls: ComputedClass) -> dict[str, tuple[int, ...]] | str:
    """The sizes of each file to be written, by its name; what is wrong, in words."""
    every = {cls.computed.size_name(each.size): each.size for each in cls.written.students}
    if options.size is not None:
        if options.size not in every:
            known = ", ".join(name for name in every if name) or "none, for the tutorial has no sizes"
            return f"no student of this class makes size {options.size}. Its sizes: {known}."
        return {options.to: (every[options.size],)}
    if options.each_size:
        path = Path(options.to)
        endings = zip(_endings(tuple(every)), every.values(), strict=True)
        return {str(path.with_name(f"{path.stem}-{ending}{path.suffix}")): (size,) for ending, size in endings}
    return {options.to: tuple(every.values())}


def _endings(sizes: tuple[str, ...]) -> tuple[str, ...]:
    """How the file of each size ends: its name without what files are not called by, and a number behind it where
    another is called so already. Case does not count, since it does not to every disk."""
    plain = [re.sub(r"[^\w]+", "-", size).strip("-") or "one-size" for size in sizes]
    taken = {_on_disk(name) for name in plain}
    seen: set[str] = set()
    found = []
    for name in plain:
        ending = name
        if _on_disk(name) in seen:
            ending = next(each for number in count(2) if _on_disk(each := f"{name}-{number}") not in taken | seen)
        seen.add(_on_disk(ending))
        found.append(ending)
    return tuple(found)


def _on_disk(name: str) -> str:
    return unicodedata.normalize("NFC", name).casefold()
