"""What is wrong with a file that is not YAML, in words for people who have never heard of YAML.

The parser says where it gave up and what it wanted. Each rule here looks at the lines around and knows one slip.
"""

from __future__ import annotations

from collections.abc import Callable

from sitegen.reading import yaml_words_lines as lines
from sitegen.reading import yaml_words_signs as signs
from sitegen.reading.slip import Slip
from sitegen.reading.yaml_trouble import EXAMPLE, SYNTAX, Trouble

RULES: tuple[Callable[[Trouble], Slip | None], ...] = (
    signs.behind_quotes,
    signs.open_quote,
    signs.escape,
    signs.percent_line,
    signs.behind_brackets,
    signs.bar,
    signs.dash,
    signs.first_sign,
    lines.missing_space,
    signs.in_brackets,
    lines.colon_in_text,
    lines.no_colon,
    lines.wrong_start,
)
"""The first rule that knows the slip speaks: what was read just before, then signs, then colons, then indentation."""

_ANYTHING_ELSE = (
    "The file cannot be read from here on. Look for a missing quotation mark, comma or space in this line and in the"
    f" line above. A line is a key, a colon, a space and a value, such as {EXAMPLE}."
)


def explain(trouble: Trouble) -> Slip:
    """The slip behind the trouble, with its place, what is wrong and a right example."""
    for rule in RULES:
        slip = rule(trouble)
        if slip is not None:
            return slip
    return Slip(SYNTAX, trouble.at, max(trouble.at, trouble.lines.full(trouble.line).end), _ANYTHING_ELSE)
