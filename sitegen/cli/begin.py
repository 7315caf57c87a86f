"""``sitegen begin FOLDER [--captions FILE]``"""

from __future__ import annotations

import argparse
import sys
from pathlib import Path

from sitegen.cli.screen import COULD_NOT, NOTHING_WRONG
from sitegen.findings import Collector, as_text
from sitegen.prose import Captions, Drafted, captions_of, drafted, empty_folder, is_captions
from sitegen.publishing import NotBegun, write_new_folder
from sitegen.quantities import Unit
from sitegen.reading import LooseFiles


def set_up(command: argparse.ArgumentParser) -> None:
    """Tell the parser of this command what it takes."""
    command.description = (
        "Makes a small content folder to start from. With captions, drafts the steps of a tutorial from"
        " what is said in the video: its words, its times, and every number for you to confirm."
    )
    command.epilog = "Exit code: 0 the folder was made, 2 something could not be read or written."
    command.add_argument("folder", metavar="FOLDER", help="the folder to make; it must not be there, or be empty")
    command.add_argument(
        "--captions",
        metavar="FILE",
        help="the captions of a video, WebVTT (.vtt) or SubRip (.srt), or - for standard input",
    )


def run(options: argparse.Namespace) -> int:
    """Draft, write, and say what to do next."""
    captions = draft = None
    if options.captions is not None:
        named = "standard input" if options.captions == "-" else options.captions
        captions = _captions(named, sys.stdin.buffer.read() if options.captions == "-" else None)
        draft = (
            drafted(captions, None if options.captions == "-" else Path(named).name) if captions is not None else None
        )
        if draft is None:
            if captions is not None:
                _refuse(f"Nothing is said in {named}, so there is nothing to draft.")
            return COULD_NOT
    try:
        write_new_folder(Path(options.folder), draft.files if draft is not None else empty_folder())
    except NotBegun as reason:
        _refuse(str(reason))
        return COULD_NOT
    print(_written(options.folder, draft))
    if captions is not None and captions.unclear:
        count = _count(len(captions.unclear), "time")
        print(f"{count} of the captions could not be read. The words behind are kept, at the time of those before.")
    return NOTHING_WRONG


def _captions(name: str, data: bytes | None) -> Captions | None:
    """The captions in a file, or in the bytes given instead; None, with a message, when there are none."""
    collector, files = Collector(), LooseFiles()
    text = files.text(name, data, collector)
    if text is None:
        print(as_text(collector.findings, files.source_line), file=sys.stderr)
        _refuse(f"The captions in {name} could not be read.")
        return None
    if not text.strip():
        _refuse(f"{name} is empty. Export the captions of the video once more.")
        return None
    if not is_captions(text):
        _refuse(
            f"{name} holds no captions. Expected WebVTT, which begins with WEBVTT, or SubRip, which begins with a"
            " number and a line of times. Example: 00:00:01,000 --> 00:00:04,000"
        )
        return None
    return captions_of(text)


def _refuse(message: str) -> None:
    print(f"sitegen: nothing was written. {message}", file=sys.stderr)


def _written(folder: str, draft: Drafted | None) -> str:
    root = Path(folder).as_posix()
    if draft is None:
        return (
            f"A small content folder is in {root}.\n"
            f"Next:\n"
            f"  1. Open {root}/site.yaml and put your title and name there.\n"
            f"  2. Open {root}/tutorials/first-tutorial and write your tutorial; the remarks in it say how.\n"
            f"  3. Run: sitegen check {_typed(root)}"
        )
    home = f"{root}/tutorials/{draft.key}"
    units = "centimetres" if draft.unit is Unit.CM else "inches"
    found = f"{_count(draft.steps, 'step')}, {_count(draft.measurements, 'number')} to confirm"
    lines = [f"A draft is in {root}: {found}, measured in {units}."]
    if draft.wrong or draft.doubtful:
        lines.append(f"{_sums(draft.wrong, draft.doubtful)}: see the head of the steps.")
    lines += [
        "Next:",
        f"  1. Open {root}/site.yaml and put your title and name there.",
        f"  2. Read each file in {home}/steps against the video, confirm the numbers at its head,"
        " and take out its line “confirmed: no”.",
        f"  3. Say in {home}/tutorial.yaml what is made, and for whom.",
        f"  4. Run: sitegen check {_typed(root)}",
    ]
    return "\n".join(lines)


def _sums(wrong: int, doubtful: int) -> str:
    """How many sums of the talk do not add up, and how many may not."""
    if not wrong:
        return f"{_count(doubtful, 'sum')} of the talk may not add up"
    adds = f"{_count(wrong, 'sum')} of the talk {'does' if wrong == 1 else 'do'} not add up"
    return f"{adds}, and {doubtful} more may not" if doubtful else adds


def _typed(path: str) -> str:
    """A path as it is typed in a command."""
    return f'"{path}"' if " " in path else path


def _count(number: int, word: str) -> str:
    return f"{number} {word}{'' if number == 1 else 's'}"
