"""``sitegen check FOLDER``"""

from __future__ import annotations

import argparse
import json
import sys

from sitegen.checks import review
from sitegen.cli.screen import COULD_NOT, NOTHING_WRONG, SOMETHING_WRONG, coloured, content_folder
from sitegen.findings import Severity, as_data, as_text, count_line
from sitegen.publishing import look_findings, photo_findings
from sitegen.quantities import plural


def set_up(command: argparse.ArgumentParser) -> None:
    """Tell the parser of this command what it takes."""
    command.description = "Reads a content folder and reports everything that is wrong, doubtful or could be better."
    command.epilog = "Exit code: 0 nothing wrong, 1 something wrong, 2 something could not be read."
    command.add_argument("folder", metavar="FOLDER", help="the folder with site.yaml and tutorials/")
    command.add_argument("--json", action="store_true", help="print the findings as a JSON list")


def run(options: argparse.Namespace) -> int:
    """Check and print."""
    folder = content_folder(options.folder)
    if folder is None:
        return COULD_NOT
    result = review(folder)
    of_pages = (*photo_findings(result, folder), *look_findings(result, folder))
    findings = tuple(sorted((*result.findings, *of_pages), key=lambda each: each.place))
    if options.json:
        print(json.dumps(as_data(findings), ensure_ascii=False, indent=2))
    else:
        text = as_text(findings, folder.source_line, colour=coloured(sys.stdout))
        if text:
            print(text)
        found = [(each.tutorial.key, each) for each in result.tutorials]
        tutorials = {key for key, _ in found}
        steps = {(key, step.file) for key, each in found for step in each.tutorial.steps}
        numbers = {(key, name) for key, each in found for name in each.names()}
        words = (_count(len(tutorials), "tutorial"), _count(len(steps), "step"), _count(len(numbers), "number"))
        looked_at = ", ".join((*words, *([_count(len(result.classes), "class")] if result.classes else [])))
        print(count_line(findings, looked_at=looked_at))
    wrong = any(each.severity is Severity.WRONG for each in findings)
    unread = any(each.unread for each in findings)
    return COULD_NOT if unread else SOMETHING_WRONG if wrong else NOTHING_WRONG


def _count(number: int, word: str) -> str:
    return f"{number} {word if number == 1 else plural(word)}"
