"""The site as something that a phone can keep on its home screen (W3C Web Application Manifest)."""

from __future__ import annotations

import json
from collections.abc import Mapping

from sitegen.publishing.plain_text import plain_text
from sitegen.publishing.views import FRONT_PAGE, THEME_FOLDER, SiteView

WEB_MANIFEST = "site.webmanifest"


def web_manifest(site: SiteView, colours: Mapping[str, str]) -> str:
    """The manifest, with the colours that the theme has for it. Every address is relative to the manifest."""
    data = {
        "name": site.title,
        "description": plain_text(site.about),
        "lang": site.language,
        "start_url": FRONT_PAGE,
        "scope": "./",
        "display": "minimal-ui",
        "icons": [{"src": f"{THEME_FOLDER}/icon.svg", "sizes": "any", "type": "image/svg+xml", "purpose": "any"}],
        **colours,
    }
    return json.dumps({key: value for key, value in data.items() if value}, ensure_ascii=False, indent=1) + "\n"
