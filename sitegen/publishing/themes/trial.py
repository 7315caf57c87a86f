"""Whether the templates and style sheets of a theme can be used, before any page is made of them."""

from __future__ import annotations

import re
from dataclasses import replace

from jinja2 import TemplateSyntaxError, meta
from jinja2.sandbox import ImmutableSandboxedEnvironment

from sitegen.findings import Collector, Place, nearest
from sitegen.publishing.themes.theme import Theme, ThemeText

PAGES = (
    "front.html", "tutorial.html", "glossary.html", "changes.html", "techniques.html", "technique.html", "search.html",
    "offline.html", "not-found.html",
)  # fmt: skip
"""The templates that a theme has, of its own or from the theme that it is based on."""
_REMARK_OR_STRING = re.compile(r'/\*.*?\*/|"[^"\n]*"|\'[^\'\n]*\'', re.DOTALL)
_FROM_ELSEWHERE = re.compile(r"@import|url\(\s*(?:[a-z][a-z0-9+.-]*:|//)", re.IGNORECASE)


def try_theme(theme: Theme, place: Place, environment: ImmutableSandboxedEnvironment, collector: Collector) -> None:
    """Report what stands in the way of using a theme. ``place`` is where its name stands."""
    templates = theme.below("templates")
    for page in PAGES:
        if page not in templates:
            message = (
                f"The theme {theme.key} has no templates/{page}, nor has a theme that it is based on. "
                "Write based_on: workroom in its theme.yaml, and what it lacks is taken from there."
            )
            collector.wrong("theme-broken", place, message, said=theme.key)
    for name, each in templates.items():
        if each.own:
            _try_template(name, each, set(templates), environment, collector)
    for each in (*theme.below("style").values(), *filter(None, [theme.texts.get("drawing.css")])):
        if each.own:
            _try_sheet(each, collector)


def _try_template(
    name: str, each: ThemeText, known: set[str], environment: ImmutableSandboxedEnvironment, collector: Collector
) -> None:
    try:
        tree = environment.parse(each.text, name)
        environment.compile(tree, name)
    except TemplateSyntaxError as trouble:
        why = (trouble.message or "").rstrip(".")
        message = f"This template cannot be read: {why}. Expected what Jinja reads: {{{{ site.title }}}}"
        collector.wrong("theme-broken", _line(each.place, trouble.lineno), message)
        return
    for asked in meta.find_referenced_templates(tree):
        if asked is not None and asked not in known:
            near = nearest(asked, known, most=1)
            hint = f" Did you mean {near[0]}?" if near else ""
            line = each.text.partition(asked)[0].count("\n") + 1
            message = f"The theme has no template “{asked}”.{hint}"
            collector.wrong("theme-broken", _line(each.place, line), message)


def _try_sheet(each: ThemeText, collector: Collector) -> None:
    """Braces that do not match spoil the sheets that follow; what comes from elsewhere is never let in."""
    text = _REMARK_OR_STRING.sub(lambda found: re.sub(r"[{}]", " ", found[0]), each.text)
    open_lines: list[int] = []
    for number, line in enumerate(text.split("\n"), start=1):
        elsewhere = _FROM_ELSEWHERE.search(line)
        if elsewhere:
            message = "Pages fetch nothing from elsewhere. Put the file into the folder assets of the theme."
            collector.wrong("theme-broken", _line(each.place, number), message, said=elsewhere[0])
        for sign in re.findall(r"[{}]", line):
            if sign == "{":
                open_lines.append(number)
            elif open_lines:
                open_lines.pop()
            else:
                message = "This } closes nothing. Expected a { before it, such as a { color: red }."
                collector.wrong("theme-broken", _line(each.place, number), message)
                return
    if open_lines:
        message = "The { on this line is never closed. Expected a } behind it, such as a { color: red }."
        collector.wrong("theme-broken", _line(each.place, open_lines[-1]), message)


def _line(place: Place, line: int) -> Place:
    return replace(place, line=line, column=1)
