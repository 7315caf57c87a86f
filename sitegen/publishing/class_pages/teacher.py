"""The page of a class for its teacher: one file that needs no other, to be read from a disk and printed."""

from __future__ import annotations

from markupsafe import Markup

from sitegen.classes import ComputedClass, without_minutes
from sitegen.diagrams import STYLE_SHEET as DRAWING_STYLE
from sitegen.findings import Collector
from sitegen.publishing.class_pages.views import DrawnLayout, TeacherPage
from sitegen.publishing.class_views import kit_view, layout_drawing, plan_view, samples_view
from sitegen.publishing.languages import finished_page
from sitegen.publishing.render import render_class_teacher
from sitegen.publishing.site_look import site_look
from sitegen.publishing.spoken import speech_of
from sitegen.publishing.themes import Theme
from sitegen.publishing.whole_site import site_view
from sitegen.quantities import System
from sitegen.reading import ContentFolder
from sitegen.tutorial import Site

_SHEETS = ("style.css", "around.css", "classes.css")


def teacher_page(cls: ComputedClass, site: Site, folder: ContentFolder, system: System) -> str | None:
    """The page as HTML, lengths in these units, in the theme and the language of the site.

    None when the theme of the site cannot be used (reported when the site is checked).
    """
    look = site_look(site, folder, Collector())
    if look is None:
        return None
    shared = site_view(site, draft=False)
    language = speech_of(shared, cls.computed)
    kit = kit_view(cls, system, language)
    layouts = []
    for number, layout in enumerate(kit.layouts, start=1):
        svg, file = layout_drawing(layout, system, f"layout-{number}")
        layouts.append(DrawnLayout(layout.fabric, file.title, Markup(svg), file.description))
    page = TeacherPage(
        site=shared,
        kit=kit,
        plan=plan_view(cls, system, language) if not without_minutes(cls) else None,
        samples=samples_view(cls, system, language),
        layouts=tuple(layouts),
        style=_style(look.theme),
    )
    return finished_page(render_class_teacher(page, look.theme))


def _style(theme: Theme) -> Markup:
    """The sheets of the theme in the page itself. A style element ends at its end tag, wherever that stands."""
    files = theme.files()
    sheets = [DRAWING_STYLE, theme.drawing_rules(), *(files[name].decode("utf-8") for name in _SHEETS if name in files)]
    return Markup("\n".join(sheets).replace("</", "<\\/"))
