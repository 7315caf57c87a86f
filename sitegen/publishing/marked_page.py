"""One page that shows texts with every measurement and finding marked, for a person to read."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from jinja2 import Environment

from sitegen.prose import Piece, TextFinding

_PAGE = """<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
<title>Proofread: {{ texts | map(attribute="name") | join(", ") }}</title>
<style>
:root { color-scheme: light dark;
  --ink: #1d1b18; --paper: #fdfbf7; --line: #8a8378; --found: #efe6d4; --wrong: #a3201b; --doubtful: #7a5200; }
@media (prefers-color-scheme: dark) {
  :root { --ink: #ece7de; --paper: #1b1a18; --line: #8d867b; --found: #3a3428; --wrong: #ff9a8f; --doubtful: #e8b45a; }
}
body { margin: 0 auto; max-width: 44rem; padding: 1.5rem 1.25rem 4rem; background: var(--paper); color: var(--ink);
  font: 1.0625rem/1.65 Georgia, "Times New Roman", serif; }
h1 { font-size: 1.5rem; line-height: 1.25; overflow-wrap: anywhere; }
h2 { font-size: 1.125rem; margin-top: 2.5rem; overflow-wrap: anywhere; }
.text { white-space: pre-wrap; overflow-wrap: anywhere; border-left: 3px solid var(--line); padding-left: 1rem; }
mark { background: var(--found); color: inherit; padding: 0 .15em; border-radius: .2em; }
del { color: var(--wrong); text-decoration: underline wavy; text-underline-offset: .2em; }
ins { color: var(--wrong); font-weight: bold; text-decoration: none; }
.whole { white-space: nowrap; }
:target + del { outline: 2px solid; outline-offset: 2px; border-radius: .2em; }
.doubtful { color: var(--doubtful); }
del.doubtful { text-decoration-style: dotted; }
ins.doubtful::after { content: "?"; }
a { color: inherit; }
li { margin: .75rem 0; }
.how { display: block; color: var(--ink); opacity: .8; font-size: .9375rem; }
@page { margin: 15mm; }
@media print {
  body { max-width: none; padding: 0; background: none; font-size: 11pt; line-height: 1.5; }
  body, del, ins, .doubtful, .how { color: #000; }
  mark { background: none; border: 1px solid #777; }
  h1, h2 { break-after: avoid; }
  li { break-inside: avoid; }
}
</style>
</head>
<body>
<main>
<h1>{% if told %}{{ told }} place{{ "" if told == 1 else "s" }} to look at
{%- else %}Nothing wrong was found{% endif %}</h1>
<p>{{ measured }} measurement{{ "" if measured == 1 else "s" }} found; each is marked. What is wrong is underlined,
with what it should be behind it; what is doubtful has a question mark there.</p>
{%- for text in texts %}
<section>
<h2>{{ text.name }}</h2>
{%- if text.findings %}
<ol>
{%- for finding in text.findings %}
<li><a href="#{{ text.anchor }}-{{ loop.index }}">Line {{ finding.line }}</a>, {{ finding.severity.value }}:
{{ finding.message }}
{%- for line in finding.working %}<span class="how">{{ line }}</span>{% endfor %}</li>
{%- endfor %}
</ol>
{%- endif %}
<div class="text">
{%- for part in text.parts -%}
{%- if part.opens %}<span id="{{ part.opens }}"></span>{% endif -%}
{%- if part.told %}<del class="{{ part.told }}">{% endif -%}
{%- if part.kind %}<mark{{ part.mark | xmlattr }}>{{ part.text }}</mark>{% else %}{{ part.text }}{% endif -%}
{%- if part.told %}</del>{% endif -%}
{%- if part.should_be %} <ins class="{{ part.told }}{{ part.kept }}">{{ part.should_be }}</ins>{% endif -%}
{%- endfor -%}
</div>
</section>
{%- endfor %}
</main>
</body>
</html>
"""


_MOST_ON_A_LINE = 20


@dataclass(frozen=True, slots=True)
class MarkedText:
    """One text of the page: its name, its pieces and what was found in it."""

    name: str
    pieces: tuple[Piece, ...]
    findings: tuple[TextFinding, ...]


def marked_page(texts: Sequence[MarkedText]) -> str:
    """The page as HTML. It needs nothing from anywhere else, and all text in it is escaped."""
    template = Environment(keep_trailing_newline=True, autoescape=True).from_string(_PAGE)
    return template.render(
        texts=[_view(text, f"text-{number}") for number, text in enumerate(texts, start=1)],
        told=sum(len(text.findings) for text in texts),
        measured=sum(1 for text in texts for piece in text.pieces if piece.measurement is not None),
    )


def _is_short(text: str) -> bool:
    """Whether a text has room on one line of a phone, and is one: ``16 1/2 in`` cut in two would be misread."""
    return len(text) <= _MOST_ON_A_LINE and "\n" not in text


def _view(text: MarkedText, anchor: str) -> dict[str, object]:
    numbers = {finding: number for number, finding in enumerate(text.findings, start=1)}
    parts: list[dict[str, object]] = []
    before: TextFinding | None = None
    for piece in text.pieces:
        finding = piece.finding
        opens = finding is not None and finding is not before
        kind = piece.measurement.kind.value if piece.measurement is not None else ""
        should_be = finding.should_be if finding is not None and piece.last else ""
        parts.append(
            {
                "text": piece.text,
                "kind": kind,
                "mark": {"class": "whole" if _is_short(piece.text) else None, "title": kind},
                "told": finding.severity.value if finding is not None else "",
                "opens": f"{anchor}-{numbers[finding]}" if finding is not None and opens else "",
                "should_be": should_be,
                "kept": " whole" if _is_short(should_be) else "",
            }
        )
        before = finding
    return {"name": text.name, "anchor": anchor, "findings": text.findings, "parts": parts}
