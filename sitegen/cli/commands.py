"""The commands of ``sitegen``, one module each."""

from __future__ import annotations

import argparse
import os
import sys
from collections.abc import Sequence

from sitegen import __version__
from sitegen.cli import begin, check, errata, explain, handout, kit, list_checks, proofread, publish, sessions, size
from sitegen.cli.screen import COULD_NOT, NOTHING_WRONG


def run(arguments: Sequence[str] | None = None) -> int:
    """Run one command and return its exit code. What a person stops is told by who called."""
    for stream in (sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(errors="replace")
    options = parser().parse_args(arguments)
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
            "Nothing was changed. Please report it; SITEGEN_TRACEBACK=1 shows where it happened.",
            file=sys.stderr,
        )
        return COULD_NOT


def parser() -> argparse.ArgumentParser:
    """The commands and their options."""
    top = argparse.ArgumentParser(
        prog="sitegen", description="Checks the numbers of sewing tutorials and publishes them as a site."
    )
    top.add_argument("--version", action="version", version=f"sitegen {__version__}")
    commands = top.add_subparsers(title="commands", required=True, metavar="COMMAND")
    for module in (begin, check, proofread, explain, size, kit, sessions, handout, errata, publish, list_checks):
        module.add_to(commands)
    return top
