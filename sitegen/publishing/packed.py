"""What a browser loads, without what only authors of themes read: style sheets, script and pages.

Nothing is renamed and no line is joined to another where that could change its meaning.
"""

from __future__ import annotations

import re
from collections.abc import Iterable

_COMMENT = re.compile(r"/\*.*?\*/", re.DOTALL)
_STRING = re.compile(r'("[^"]*")')
_SPACE = re.compile(r"\s+")
_SELECTOR = re.compile(r"(?:(?<=[{}])|^)[^{}@;]+(?=\{)")
_COMBINED = re.compile(r" ?([+~]) ?")
_AROUND = re.compile(r" ?([{};,>]) ?|(?<=:) | (?=!)")
_LAST = re.compile(r";}")
_TAG = re.compile(r"<[a-z][^<>]*>")
_QUOTED = re.compile(r"""="([^\s"'=<>`]+)"(?=[ >])""")
_BLOCK = (
    r"(?:div|section|article|header|footer|nav|figure|figcaption|details|summary|p|[uod]l|li|d[dt]|h[1-6]"
    r"|t(?:able|head|body|r)|caption|fieldset|legend)"
)
_LINE_AT_BLOCK = re.compile(rf"(?:(</?{_BLOCK}(?: [^<>]*)?>)\n|\n(?=</?{_BLOCK}[ >]))")
_LINE_IN_PICTURE = re.compile(r"(<(?:picture|source)(?: [^<>]*)?>)\n|\n(?=</picture>)")
_END_OF_PARAGRAPH = re.compile(
    r"</p>(?=</(?:div|section|article|header|footer|nav|figure|details|li|dd|blockquote)>|<ul[ >])"
)
"""At the end of what it stands in, and before a list, as in every working: its name, then a line for each size."""
_END_OF_CAPTION = re.compile(r"</caption>\n?(?=<thead|<tbody|<tr)")
_END_OF_CELL = re.compile(r"(?:</p>)?</t[hd]>(?=<t[hd][ >]|</tr>)")
_END_OF_ROW = re.compile(r"</tr>\n?(?=<tr[ >]|</tbody>|</thead>)")
_END_OF_ITEM = re.compile(
    r"</li>(?=<li[ >]|</[uo]l>)|</dt>(?=<d[dt][ >])|</dd>(?=<d[dt][ >]|</dl>|</div>)"
    r"|</thead>(?=<tbody)|</tbody>(?=<tbody|</table>)"
)
_EMPTY_LINES = re.compile(r">\n{2,}<")


def packed_styles(sheets: Iterable[str]) -> str:
    """The sheets in their order as one, without comments, indentation and spaces that mean nothing."""
    return "\n".join(_shorter(sheet) for sheet in sheets) + "\n"


def packed_script(script: str) -> str:
    """The script without indentation, empty lines and lines that are remarks."""
    lines = (line.strip() for line in script.splitlines())
    return "".join(f"{line}\n" for line in lines if line and not line.startswith("//"))


def packed_page(html: str) -> str:
    """The page without lines that mean nothing beside tags, without the end tag of a cell, row, item or paragraph
    where the next tag says it, and without the quotes round a value that needs none.

    Sources: HTML Living Standard, 13.1.2.4 "Optional tags" and 13.1.2.3 "Attributes". Tables are a third of a page of
    many sizes.
    """
    html = _TAG.sub(lambda tag: _QUOTED.sub(r"=\1", tag[0]), _EMPTY_LINES.sub(">\n<", html))
    html = _END_OF_PARAGRAPH.sub("", _LINE_IN_PICTURE.sub(r"\1", _LINE_AT_BLOCK.sub(r"\1", html)))
    html = _END_OF_CAPTION.sub("", html)
    return _END_OF_ITEM.sub("", _END_OF_ROW.sub("", _END_OF_CELL.sub("", html)))


def _shorter(sheet: str) -> str:
    parts = _STRING.split(_COMMENT.sub("", sheet))
    parts[::2] = [_AROUND.sub(lambda found: found[1] or "", _SPACE.sub(" ", part)) for part in parts[::2]]
    parts[::2] = [_SELECTOR.sub(lambda found: _COMBINED.sub(r"\1", found[0]), part) for part in parts[::2]]
    return _LAST.sub("}", "".join(parts)).strip()
