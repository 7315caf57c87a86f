"""The list of all pages for search engines (sitemaps.org protocol 0.9), and the file that names it (RFC 9309)."""

from __future__ import annotations

import xml.etree.ElementTree as ET
from collections.abc import Mapping
from datetime import date

from sitegen.publishing.discovery.addresses import absolute

SITE_MAP = "sitemap.xml"
ROBOTS = "robots.txt"


def site_map(pages: Mapping[str, date | None], address: str) -> str:
    """Every page by its path, with the day on which it changed where that is known."""
    root = ET.Element("urlset", {"xmlns": "http://www.sitemaps.org/schemas/sitemap/0.9"})
    for path, day in pages.items():
        page = ET.SubElement(root, "url")
        ET.SubElement(page, "loc").text = absolute(address, path)
        if day is not None:
            ET.SubElement(page, "lastmod").text = day.isoformat()
    ET.indent(root, space=" ")
    return f'<?xml version="1.0" encoding="utf-8"?>\n{ET.tostring(root, encoding="unicode")}\n'


def robots(address: str) -> str:
    """Every page may be read by every program; here is the list of them."""
    return f"User-agent: *\nDisallow:\n\nSitemap: {absolute(address, SITE_MAP)}\n"
