"""What is known when a YAML parser gives up."""

from __future__ import annotations

from dataclasses import dataclass

from sitegen.reading.yaml_lines import Lines, Span

SYNTAX = "yaml-syntax"
EXAMPLE = "title: Summer tee"
NO_KEY = f"There is nothing in front of this colon. Write a key, such as {EXAMPLE}."
OR_BAR = "Put the text in quotes, or start it with | and write it on the next line."


@dataclass(frozen=True, slots=True)
class Trouble:
    """Where the parser gave up (``at``), what it wanted, and what it had read just before.

    ``since`` is the start of what it was reading. ``quoted`` and ``bracketed`` are the last text in quotes and the
    last list or table in brackets; ``bracket`` is the innermost one that is still open. ``problem`` and ``context``
    are the parser's words; they are only compared, never shown.
    """

    text: str
    lines: Lines
    problem: str
    context: str
    at: int
    since: int | None = None
    quoted: Span | None = None
    bracketed: Span | None = None
    bracket: int | None = None

    @property
    def char(self) -> str:
        """The character at the place of trouble; empty at the end of the file."""
        return self.text[self.at : self.at + 1]

    @property
    def line(self) -> int:
        """The line of the place of trouble."""
        return self.lines.number(self.at)

    def wants(self, *beginnings: str) -> bool:
        """Whether the parser's problem is one of these."""
        return self.problem.startswith(beginnings)

    def starts_line(self) -> bool:
        """Whether only spaces stand in front of the place of trouble."""
        return not self.text[self.lines.start(self.line) : self.at].strip(" ")

    def ends_here(self, part: Span) -> bool:
        """Whether a part stands right in front of the place of trouble, on the same line."""
        return part.end <= self.at and not self.text[part.end : self.at].strip(" ")
