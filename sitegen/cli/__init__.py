"""Words on the screen and exit codes; parses, calls, prints. Holds no logic of its own."""

from sitegen.cli.main import main

__all__ = ["main"]
