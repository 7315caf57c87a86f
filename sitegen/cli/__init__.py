"""Words on the screen and exit codes; parses, calls, prints. Holds no logic of its own."""

from __future__ import annotations

import signal
import sys
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from threading import current_thread, main_thread
from types import FrameType

__all__ = ["main"]

STOPPED = 128
"""Added to the number of the signal that stopped a command, the exit code that shells know it by: 130 for Ctrl-C."""


class Terminated(KeyboardInterrupt):
    """Another program, a shutdown or a time limit wants us to end: what Ctrl-C takes back is taken back."""


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command and return its exit code: 0 nothing wrong, 1 something wrong, 2 could not read or wrong usage.

    Stopped from the keyboard it is 130, by another program 143. All is imported here, so that who stops the program
    while it loads is told no more than later.
    """
    try:
        with _ended_in_order():
            from sitegen.cli.commands import run

            return run(arguments)
    except KeyboardInterrupt as stopped:
        print("sitegen: stopped. Nothing is half written.", file=sys.stderr)
        return STOPPED + (signal.SIGTERM if isinstance(stopped, Terminated) else signal.SIGINT)


@contextmanager
def _ended_in_order() -> Iterator[None]:
    """Have SIGTERM end what runs as Ctrl-C does, unless a program that calls us has a way of its own."""

    def end(_number: int, _frame: FrameType | None) -> None:
        raise Terminated

    ours = current_thread() is main_thread() and signal.getsignal(signal.SIGTERM) is signal.SIG_DFL
    if ours:
        signal.signal(signal.SIGTERM, end)
    try:
        yield
    finally:
        if ours:
            signal.signal(signal.SIGTERM, signal.SIG_DFL)
