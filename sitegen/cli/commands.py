"""The commands of ``sitegen``, one module each."""

from __future__ import annotations

import argparse
import os
import sys
from collections.abc import Sequence
from importlib import import_module

from sitegen import __version__
from sitegen.cli.screen import COULD_NOT, NOTHING_WRONG

HELP = {
    "begin": "make a new content folder, from the captions of a video if there are any",
    "check": "hold every number of a content folder against what can be computed",
    "proofread": "find wrong numbers in drafts, handouts and captions",
    "explain": "show how a number was got",
    "size": "choose a size by a person's measurements",
    "kit": "list what to buy, to cut and to pack for a class",
    "sessions": "spread the steps of a tutorial over the sessions of a class",
    "handout": "make the printed handout of a class",
    "errata": "make a slip with what changed since a handout was printed",
    "publish": "write the site, if nothing in it is wrong",
    "checks": "list all checks, or explain one",
}
"""What each command does, in a line. Its module has its name and is loaded only to run it: that takes most of a
second for all of them, and who asks for help waits for none."""


def run(arguments: Sequence[str] | None = None) -> int:
    """Run one command and return its exit code. What a person stops is told by who called."""
    for stream in (sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(errors="replace")
    given = sys.argv[1:] if arguments is None else list(arguments)
    options, unknown = parser(next((each for each in given if each in HELP), None)).parse_known_args(given)
    if unknown:
        options.command.error(f"unrecognized arguments: {' '.join(unknown)}")
    try:
        code: int = options.run(options)
        sys.stdout.flush()
        return code
    except BrokenPipeError:
        # The reader of our output has gone; keep Python from complaining when it closes the stream.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return NOTHING_WRONG
    except Exception as fault:
        if os.environ.get("SITEGEN_TRACEBACK"):
            raise
        print(
            f"sitegen: a fault of the program itself, not of your files: {type(fault).__name__}: {fault}\n"
            "Nothing is half written. Please report it; SITEGEN_TRACEBACK=1 shows where it happened.",
            file=sys.stderr,
        )
        return COULD_NOT


def parser(asked: str | None) -> argparse.ArgumentParser:
    """The commands, with the options of the one that is asked for."""
    top = argparse.ArgumentParser(
        prog="sitegen", description="Checks the numbers of sewing tutorials and publishes them as a site."
    )
    top.add_argument("--version", action="version", version=f"sitegen {__version__}")
    commands = top.add_subparsers(title="commands", required=True, metavar="COMMAND")
    for name, line in HELP.items():
        command = commands.add_parser(name, help=line)
        if name == asked:
            module = import_module(f"sitegen.cli.{name}")
            module.set_up(command)
            command.set_defaults(run=module.run, command=command)
    return top
