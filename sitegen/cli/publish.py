"""``sitegen publish FOLDER --to SITE``"""

from __future__ import annotations

import argparse
import sys
from pathlib import Path

from sitegen.cli.screen import COULD_NOT, NOTHING_WRONG, SOMETHING_WRONG, coloured, content_folder
from sitegen.findings import as_text, count_line
from sitegen.publishing import NotReplaced, Outcome, publish
from sitegen.reading import ContentFolder

_BAR = 24


def set_up(command: argparse.ArgumentParser) -> None:
    """Tell the parser of this command what it takes."""
    command.description = "Checks a content folder and writes its site. The old site stays until the new one is whole."
    command.epilog = "Exit code: 0 published, 1 something is wrong so nothing was published, 2 could not read or write."
    command.add_argument("folder", metavar="FOLDER", help="the folder with site.yaml and tutorials/")
    command.add_argument("--to", metavar="SITE", required=True, help="the folder of the site, made if it is not there")
    command.add_argument("--draft", action="store_true", help="publish although something is wrong, marked as a draft")


def run(options: argparse.Namespace) -> int:
    """Publish and say where the site is."""
    folder = content_folder(options.folder)
    if folder is None:
        return COULD_NOT
    bar = _Bar()
    try:
        outcome = publish(folder, Path(options.to), draft=options.draft, progress=bar.show)
    except NotReplaced as reason:
        bar.clear()
        print(f"sitegen: nothing was published. {reason}", file=sys.stderr)
        return COULD_NOT
    bar.clear()
    _print_findings(outcome, folder)
    for note in outcome.notes:
        print(note)
    if outcome.front is None:
        print("Nothing was published. Mend what is wrong, or use --draft.", file=sys.stderr)
        return COULD_NOT if outcome.review.any_unread else SOMETHING_WRONG
    kind = "A draft of the site" if options.draft else "The site"
    print(f"{kind}, {outcome.files} files, is in {options.to}. Open {outcome.front}")
    return NOTHING_WRONG


def _print_findings(outcome: Outcome, folder: ContentFolder) -> None:
    text = as_text(outcome.findings, folder.source_line, colour=coloured(sys.stdout))
    if text:
        print(text)
        tutorials = len({each.tutorial.key for each in outcome.review.tutorials})
        print(count_line(outcome.findings, looked_at=f"{tutorials} tutorial{'' if tutorials == 1 else 's'}"))


class _Bar:
    """A progress bar on a terminal; nothing at all elsewhere."""

    def __init__(self) -> None:
        self._on = sys.stderr.isatty()

    def show(self, done: int, total: int, now: str) -> None:
        """Draw the bar."""
        if self._on:
            full = _BAR * done // max(1, total)
            print(f"\r\x1b[K{'█' * full}{'░' * (_BAR - full)} {now[:50]}", end="", file=sys.stderr, flush=True)

    def clear(self) -> None:
        """Take the bar off the screen."""
        if self._on:
            print("\r\x1b[K", end="", file=sys.stderr, flush=True)
