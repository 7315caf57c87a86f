"""Techniques and stitches gathered from all tutorials: where each is used, and with which settings."""

from sitegen.publishing.techniques.pages import (
    TECHNIQUES_PAGE,
    TechniquesView,
    TechniqueView,
    technique_pages,
    techniques_view,
    with_links,
)

__all__ = [
    "TECHNIQUES_PAGE",
    "TechniqueView",
    "TechniquesView",
    "technique_pages",
    "techniques_view",
    "with_links",
]
