"""Data for the script of a page."""

from __future__ import annotations

import json

from markupsafe import Markup


def json_in_attribute(data: object) -> Markup:
    """JSON that can stand in an attribute between single quotation marks as it is, its own double ones unescaped."""
    text = json.dumps(data, ensure_ascii=False, separators=(",", ":"))
    for sign in "&<>'":
        text = text.replace(sign, f"\\u{ord(sign):04x}")
    return Markup(text)
