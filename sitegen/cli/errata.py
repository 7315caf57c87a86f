"""``sitegen errata CLASS --printed FILE.pdf --to SLIP.pdf``"""

from __future__ import annotations

import argparse
import sys
from datetime import date
from pathlib import Path

from sitegen.classes import sealed_document
from sitegen.cli.one_class import Found, no_pdf, no_theme, one_class, write
from sitegen.cli.printed_earlier import in_its_language, is_printed, page_of, wanted_of
from sitegen.cli.screen import COULD_NOT, NOTHING_WRONG
from sitegen.handouts import Copy, NoPdf, NotPrintedHere, Printed, Wanted, handout_of, read_printed, slip_for, slip_pdf


def set_up(command: argparse.ArgumentParser) -> None:
    """Tell the parser of this command what it takes."""
    command.description = (
        "Compares the numbers that lie in the PDF of a handout with those of today, and makes a slip of"
        " half a page with what moved."
    )
    command.epilog = "Exit code: 0 nothing wrong, 1 something wrong, 2 something could not be read or written."
    command.add_argument("file", metavar="CLASS", help="the file of the class, such as content/classes/evening.yaml")
    command.add_argument("--printed", metavar="FILE.pdf", required=True, help="the handout as it was printed")
    command.add_argument("--to", metavar="SLIP.pdf", required=True, help="where to write the slip")


def run(options: argparse.Namespace) -> int:
    """Read the print, compare, write the slip if there is anything to say."""
    if no_pdf(options.to):
        return COULD_NOT
    if is_printed(options.to):
        return _failed(
            f"{options.to} is a printed handout: its numbers are needed for this slip and for later ones."
            " Give the slip another name. Example: --to slip.pdf"
        )
    found = one_class(options)
    if isinstance(found, int):
        return found
    try:
        old = read_printed(Path(options.printed).read_bytes())
        wanted = wanted_of(old, found.cls)
        found = in_its_language(old, found, say=True)
    except OSError as trouble:
        return _failed(f"{options.printed} cannot be read: {(trouble.strerror or 'the disk refuses it').lower()}.")
    except NotPrintedHere as reason:
        return _failed(f"{options.printed} is no handout of this class: {reason}.")
    except NoPdf as reason:
        return _failed(str(reason))
    told = found.for_students() if wanted.copy is Copy.STUDENT else found
    return max(_compared(old, wanted, options, told), found.code)


def _compared(old: Printed, wanted: Wanted, options: argparse.Namespace, found: Found) -> int:
    data = b""
    if not found.any_wrong:
        page = page_of(found, wanted.units[0])
        if page is None:
            return no_theme()
        try:
            slip = slip_for(old, handout_of(found.cls, page, found.folder, wanted, date.today()))
            if slip.empty:
                print(f"Nothing moved since this handout was printed on {old.day}. No slip is needed.")
                return NOTHING_WRONG
            data = slip_pdf(slip, date.today())
        except NoPdf as reason:
            return _failed(str(reason))
    code, message = write(options.to, sealed_document(data), found, "The slip")
    print(message, file=sys.stderr if code else sys.stdout)
    return code


def _failed(message: str) -> int:
    print(f"sitegen: nothing was written. {message}", file=sys.stderr)
    return COULD_NOT
