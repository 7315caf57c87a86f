"""The language of a page, with the names that its tutorial gives to parts, and texts in another language on it."""

from __future__ import annotations

from markupsafe import Markup

from sitegen.publishing.languages import Speech, speech_in
from sitegen.publishing.markdown import Numbers, Terms, no_numbers, render, render_inline
from sitegen.publishing.views import SiteView
from sitegen.quantities import English
from sitegen.tutorial import Computed, Prose


def speech_of(site: SiteView, computed: Computed | None = None) -> Speech:
    """The language of the site, or of one tutorial in it."""
    plain = speech_in(site.language, site.first_language)
    if computed is None:
        return plain
    tutorial = computed.tutorial
    return plain.of_tutorial(tutorial.names, computed.numbers, tutorial.untranslated)


def rendered(
    text: Prose | None,
    language: English,
    numbers: Numbers = no_numbers,
    heading_level: int = 3,
    terms: Terms | None = None,
) -> Markup:
    """Prose as HTML blocks, in an element of its own language where that is another than ``language``, the page's."""
    if text is None:
        return Markup()
    html = render(text.text, numbers, heading_level, terms, speech_in(text.language) if text.language else language)
    return Markup('<div lang="{}">\n{}</div>\n').format(text.language, html) if text.language else html


def rendered_inline(text: Prose, numbers: Numbers = no_numbers) -> Markup:
    """A line of prose as HTML, in an element of its own language where that is another than the page's."""
    return of_its_language(render_inline(text.text, numbers), text)


def of_its_language(html: Markup, text: Prose) -> Markup:
    """What a line of prose became, in an element of its language where that is another than the page's."""
    return Markup('<span lang="{}">{}</span>').format(text.language, html) if text.language else html
