"""Handouts of the example's classes and of small folders, and their PDFs as outside libraries read them."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from functools import cached_property, lru_cache
from io import BytesIO

import pdfplumber
from content import EXAMPLE
from pdfplumber.page import Page
from pypdf import PdfReader

from sitegen.checks import review_class
from sitegen.classes import ComputedClass
from sitegen.findings import Collector
from sitegen.handouts import Copy, Made, Paper, Wanted, handout_of, handout_pdf
from sitegen.publishing import paper_page
from sitegen.quantities import System
from sitegen.reading import ContentFolder
from sitegen.tutorial.build import site

DAY = date(2027, 1, 5)
MM = 25.4 / 72
"""Millimetres of a point, the unit of PDF (ISO 32000-1, 8.3.2.3)."""
EVENING, HOLIDAY = "evening-tee", "holiday-trousers"


@dataclass(frozen=True)
class Sheets:
    """A handout and its PDF."""

    made: Made
    pdf: bytes

    @cached_property
    def reader(self) -> PdfReader:
        return PdfReader(BytesIO(self.pdf))

    @cached_property
    def pages(self) -> list[Page]:
        return pdfplumber.open(BytesIO(self.pdf)).pages

    @cached_property
    def page_texts(self) -> list[str]:
        """The words of each page with plain spaces between them."""
        return [" ".join(page.extract_text().split()) for page in self.reader.pages]

    @cached_property
    def text(self) -> str:
        """All words."""
        return " ".join(self.page_texts)


def class_in(folder: ContentFolder, key: str) -> ComputedClass:
    """A class in which nothing is wrong."""
    cls, collector = review_class(folder, f"classes/{key}.yaml")
    assert not collector.any_wrong, [each.message for each in collector.findings]
    assert cls is not None
    return cls


def sheets_of(
    folder: ContentFolder,
    key: str,
    *,
    size: str = "",
    units: tuple[System, ...] = (System.CENTIMETRES, System.INCHES),
    paper: Paper = Paper.A4,
    copy: Copy = Copy.STUDENT,
    large_print: bool = False,
) -> Sheets:
    """The handout of a class, for all its sizes or for one."""
    cls = class_in(folder, key)
    sizes = tuple(each.size for each in cls.written.students if size in ("", cls.computed.size_name(each.size)))
    page = paper_page(cls.computed, site(folder, Collector()), folder, units[0], DAY)
    assert page is not None
    made = handout_of(cls, page, folder, Wanted(sizes, units, paper, copy, large_print), DAY)
    return Sheets(made, handout_pdf(made))


@lru_cache(maxsize=8)
def example(
    key: str,
    size: str = "",
    paper: Paper = Paper.A4,
    copy: Copy = Copy.STUDENT,
    large_print: bool = False,
) -> Sheets:
    """A handout of the example."""
    folder = ContentFolder(EXAMPLE, "content_example")
    return sheets_of(folder, key, size=size, paper=paper, copy=copy, large_print=large_print)
