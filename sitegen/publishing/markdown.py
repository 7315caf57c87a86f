"""Turns the author's Markdown into safe HTML, with computed numbers in place of references.

CommonMark and tables. Raw HTML is shown as it was typed, never passed on; links lead to web pages, mail
addresses or files beside the page; a picture in the text gives only its description, because pictures have
their own place on a card. ``{name.field}`` is a reference and ``{{`` a brace. Inside code both stay as typed.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from itertools import pairwise
from typing import Any

from markdown_it import MarkdownIt
from markdown_it.renderer import RendererHTML
from markdown_it.rules_inline import StateInline
from markdown_it.token import Token
from markupsafe import Markup, escape

from sitegen.publishing.amounts import Filled, with_squares
from sitegen.quantities import ENGLISH, English

Numbers = Callable[[str], Filled | None]
"""Gives what stands for a reference, or None when it names nothing: then it stays as typed."""

_REFERENCE = re.compile(r"\{([^{}\n]+)\}")
_INSIDE_A_LENGTH = re.compile(
    r"(?<=[\d¼½¾⅛⅜⅝⅞])(?: +|[ ]*\n[ ]*)(?=(?:in|inch|inches|cm|mm|m|yd|yards?|ft)\b)|(?<=\d) (?=\d+/\d+\b)"
)
_SCHEME = re.compile(r"([^/?#:]*):")
_ALLOWED = frozenset({"http", "https", "mailto"})
_DEEPEST = 6


def no_numbers(name: str) -> None:
    """Fills in nothing: for prose that belongs to no tutorial."""


Terms = Callable[[str, bool], Markup]
"""Gives a piece of plain text with the terms in it marked; told whether the piece begins a sentence."""


def render(
    text: str,
    numbers: Numbers = no_numbers,
    heading_level: int = 3,
    terms: Terms | None = None,
    language: English = ENGLISH,
) -> Markup:
    """Prose as HTML blocks, its highest heading at ``heading_level`` and none left out below it.

    Terms are marked in running text, not in headings, links, code or numbers. ``language`` is that of the text: in it
    a table is called so for those who do not see it.
    """
    env: dict[str, Any] = {"numbers": numbers, "table": language.say("Table")}
    tokens = _PARSER.parse(_as_printed(text), env)
    _demote(tokens, heading_level)
    if terms is not None:
        _mark_terms(tokens, terms)
    return Markup(_PARSER.renderer.render(tokens, _PARSER.options, env))


def parsed(text: str) -> list[Token]:
    """Prose as the tokens of its blocks, for another form than HTML. References are tokens of type ``reference``."""
    return _PARSER.parse(_as_printed(text), {})


def render_inline(text: str, numbers: Numbers = no_numbers) -> Markup:
    """One line of prose as HTML without a paragraph around it."""
    return Markup(_PARSER.renderInline(_as_printed(text), {"numbers": numbers}))


def _as_printed(text: str) -> str:
    """The text as it is printed: no line break within an amount that the author typed, and the 2 of g/m2 raised."""
    return _INSIDE_A_LENGTH.sub("\N{NO-BREAK SPACE}", with_squares(text))


def link_allowed(url: str) -> bool:
    """Whether a link may be made: http, https, mailto, or a path from the page itself.

    A path from the root of the disk or of the server is refused, for a page must open from anywhere.
    """
    bare = "".join(letter for letter in url if letter > " ").replace("\\", "/")
    if bare.startswith("/"):
        return False
    scheme = _SCHEME.match(bare)
    return scheme is None or scheme[1].lower() in _ALLOWED


def _reference(state: StateInline, silent: bool) -> bool:
    if state.src[state.pos] != "{":
        return False
    if state.src.startswith("{{", state.pos):
        if not silent:
            state.pending += "{"
        state.pos += 2
        return True
    found = _REFERENCE.match(state.src, state.pos, state.posMax)
    if found is None:
        return False
    if not silent:
        token = state.push("reference", "", 0)
        token.content = found[1].strip()
        token.markup = found[0]
        token.meta = {"in_link": state.linkLevel > 0}
    state.pos = found.end()
    return True


def _render_reference(
    _renderer: RendererHTML, tokens: Sequence[Token], index: int, _options: object, env: dict[str, Any]
) -> str:
    token = tokens[index]
    filled: Filled | None = env["numbers"](token.content)
    if filled is None:
        return str(escape(token.markup))
    return str(filled.plain if token.meta["in_link"] else filled.linked)


def _mark_terms(tokens: Sequence[Token], terms: Terms) -> None:
    for before, token in pairwise(tokens):
        if token.type == "inline" and token.children and before.type != "heading_open":
            token.children = _with_terms(token.children, terms)


def _with_terms(children: Sequence[Token], terms: Terms) -> list[Token]:
    """The same line with its plain text marked; text goes on over the end of a line of the file."""
    found: list[Token] = []
    in_link = 0
    for child in children:
        in_link += {"link_open": 1, "link_close": -1}.get(child.type, 0)
        plain = child.type in ("text", "softbreak") and not in_link
        if plain and found and found[-1].type == "marked":
            found[-1].content += child.content or "\n"
        elif plain:
            found.append(Token("marked", "", 0, content=child.content or "\n", meta={"opens": not found}))
        else:
            found.append(child)
    for token in found:
        if token.type == "marked":
            token.content = str(terms(token.content, token.meta["opens"]))
    return found


def _render_marked(
    _renderer: RendererHTML, tokens: Sequence[Token], index: int, _options: object, _env: dict[str, Any]
) -> str:
    return tokens[index].content


def _render_picture(
    _renderer: RendererHTML, tokens: Sequence[Token], index: int, _options: object, env: dict[str, Any]
) -> str:
    return _words(tokens[index].children or [], env)


def _words(tokens: Sequence[Token], env: dict[str, Any]) -> str:
    """The words of a description alone: it may stand inside a link, so nothing in it may be one."""
    words = ""
    for token in tokens:
        if token.type == "reference":
            filled: Filled | None = env["numbers"](token.content)
            words += escape(token.markup) if filled is None else filled.plain
        elif token.type in ("softbreak", "hardbreak"):
            words += " "
        else:
            words += _words(token.children, env) if token.children else escape(token.content)
    return words


def _render_link(renderer: RendererHTML, tokens: Sequence[Token], index: int, options: Any, env: dict[str, Any]) -> str:
    token = tokens[index]
    if _SCHEME.match(str(token.attrGet("href"))):
        token.attrSet("rel", "noopener noreferrer")
    return renderer.renderToken(tokens, index, options, env)


def _render_table_open(
    _renderer: RendererHTML, _tokens: Sequence[Token], _index: int, _options: object, env: dict[str, Any]
) -> str:
    return f'<div class="scroll" role="group" aria-label="{escape(env["table"])}" tabindex="0"><table>\n'


def _render_table_close(
    _renderer: RendererHTML, _tokens: Sequence[Token], _index: int, _options: object, _env: dict[str, Any]
) -> str:
    return "</table></div>\n"


def _render_cell_open(
    renderer: RendererHTML, tokens: Sequence[Token], index: int, options: Any, env: dict[str, Any]
) -> str:
    """Alignment as a class, since the page's own security policy blocks style attributes."""
    token = tokens[index]
    style = str(token.attrs.pop("style", ""))
    if style:
        token.attrSet("class", "align-" + style.removeprefix("text-align:"))
    return renderer.renderToken(tokens, index, options, env)


def _demote(tokens: Sequence[Token], top: int) -> None:
    headings = [token for token in tokens if token.type in ("heading_open", "heading_close")]
    ranks = {tag: rank for rank, tag in enumerate(sorted({token.tag for token in headings}))}
    for token in headings:
        token.tag = f"h{min(_DEEPEST, top + ranks[token.tag])}"


def _parser() -> MarkdownIt:
    parser = MarkdownIt("commonmark", {"html": False}).enable("table")
    # Without the rules for HTML, what looks like a tag is text and is escaped with all other text.
    parser.disable(["html_block", "html_inline"])
    parser.inline.ruler.after("escape", "reference", _reference)
    parser.validateLink = link_allowed  # type: ignore[method-assign]
    for kind, rule in (
        ("reference", _render_reference),
        ("marked", _render_marked),
        ("image", _render_picture),
        ("link_open", _render_link),
        ("table_open", _render_table_open),
        ("table_close", _render_table_close),
        ("th_open", _render_cell_open),
        ("td_open", _render_cell_open),
    ):
        parser.add_render_rule(kind, rule)
    return parser


_PARSER = _parser()
