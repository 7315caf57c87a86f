"""Words on the screen and exit codes; parses, calls, prints. Holds no logic of its own."""

from __future__ import annotations

import sys
from collections.abc import Sequence

__all__ = ["main"]

INTERRUPTED = 130
"""The exit code of what was stopped from the keyboard, as shells have it: 128 and the number of the signal."""


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command and return its exit code: 0 nothing wrong, 1 something wrong, 2 could not read or wrong usage.

    All is imported here, so that who stops the program while it loads is told no more than later.
    """
    try:
        from sitegen.cli.commands import run

        return run(arguments)
    except KeyboardInterrupt:
        print("sitegen: stopped. Nothing was changed.", file=sys.stderr)
        return INTERRUPTED
