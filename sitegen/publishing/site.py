"""Makes the whole site from a content folder, if nothing in it is wrong, and has it written whole or not at all."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from datetime import date
from pathlib import Path

from sitegen.checks import Review, review
from sitegen.findings import Collector, Finding, Severity
from sitegen.pictures import Trouble
from sitegen.publishing.drawings import DrawingFiles
from sitegen.publishing.languages import finished_page, languages, unmarked
from sitegen.publishing.offline import SERVICE_WORKER, service_worker, version_of
from sitegen.publishing.path_findings import path_findings
from sitegen.publishing.photo_findings import findings_on, photos_of
from sitegen.publishing.picture_files import PictureFiles
from sitegen.publishing.releases import StoredRecord, read_record
from sitegen.publishing.render import ThemeBrokenError
from sitegen.publishing.site_files import Files, site_files
from sitegen.publishing.site_look import SiteLook, site_look
from sitegen.publishing.views import FRONT_PAGE
from sitegen.publishing.whole_site import Progress, folder_of, whole_site
from sitegen.publishing.write import SiteWriter
from sitegen.reading import ContentFolder
from sitegen.tutorial import Photo, Site

_NO_ADDRESS = (
    "site.yaml has no address, so nothing was written that needs it: no feed, no sitemap, no robots.txt, no 404.html, "
    "no canonical addresses and no pictures for link previews. Example: address: https://example.org/sewing"
)


@dataclass(frozen=True)
class Outcome:
    """What became of a publication. ``front`` is the page to open, None when nothing was written."""

    review: Review
    findings: tuple[Finding, ...]
    front: Path | None
    files: int = 0
    notes: tuple[str, ...] = ()


def publish(
    folder: ContentFolder,
    target: Path,
    *,
    draft: bool,
    progress: Progress,
    today: Callable[[], date] = date.today,
) -> Outcome:
    """Check the folder and, if nothing is wrong or it is a draft, write its site to the target.

    A folder of which something could not be read is never published. ``today`` gives the day of a release, for the
    pages that tell what moved. Raises NotReplaced when the target cannot be written; the old site is then as it was.
    """
    found = review(folder)
    pictures = PictureFiles(target)
    troubles = tuple(_picture_troubles(photos_of(found, folder), pictures))
    look_trouble = Collector()
    look = site_look(found.site, folder, look_trouble)
    findings = in_order(*found.findings, *troubles, *look_trouble.findings, *path_findings(found, look, folder))
    wrong = any(each.severity is Severity.WRONG for each in findings)
    without_pages = look is None or any(each.check == "theme-broken" for each in findings)
    if look is None or without_pages or found.any_unread or look_trouble.any_unread or (wrong and not draft):
        return Outcome(found, findings, None)
    try:
        with SiteWriter(target, forbidden=(folder.root,)) as writer:
            stored = read_record(target)
            day = today()
            for name, content in _files(found, look, folder, pictures, stored, progress, draft=draft, today=day):
                writer.write(name, content)
            writer.write(SERVICE_WORKER, service_worker(version_of(writer.written.items())))
    except ThemeBrokenError as broken:
        return Outcome(found, in_order(*findings, broken.finding), None)
    notes = [
        *writer.notes,
        stored.note,
        *_unspoken(found.site, look),
        "" if draft or found.site.address else _NO_ADDRESS,
    ]
    return Outcome(found, findings, target / FRONT_PAGE, len(writer.written), tuple(filter(None, notes)))


def _files(
    found: Review,
    look: SiteLook,
    folder: ContentFolder,
    pictures: PictureFiles,
    stored: StoredRecord,
    progress: Progress,
    *,
    draft: bool,
    today: date,
) -> Files:
    drawings = DrawingFiles(look.theme.drawing_rules())
    whole = whole_site(found, look, folder, pictures, drawings, progress, draft=draft, today=today, stored=stored)
    yield from _finished(site_files(whole, progress))
    for other in found.translations:
        translated = replace(found, site=other.site, tutorials=other.tutorials)
        below = folder_of(other.site)
        before = read_record(pictures.site / below)
        whole = whole_site(
            translated, look, folder, pictures, drawings, progress, draft=draft, today=today, stored=before
        )
        yield from ((f"{below}{name}", content) for name, content in _finished(site_files(whole, progress)))
    yield from drawings.files().items()
    yield from pictures.files().items()
    yield from look.files.items()


def _unspoken(site: Site, look: SiteLook) -> Iterator[str]:
    """A note for each language of the site that the program or the theme cannot speak."""
    for code in site.languages:
        plain = code.partition("-")[0].lower()
        if plain not in languages() or not (look.theme.words.get(code) or look.theme.words.get(plain)):
            yield (
                f"There are no words in {code} yet, so what the program says stands in English on these pages, marked"
                f" as English. There are words in {', '.join(languages())}; texts of pages can be put into words.yaml."
            )


def _finished(files: Files) -> Files:
    """The files with what is in another language marked in pages, and without marks elsewhere."""
    for name, content in files:
        if isinstance(content, bytes):
            yield name, content
        else:
            yield name, finished_page(content) if name.endswith(".html") else unmarked(content)


def _picture_troubles(photos: dict[Photo, Path], pictures: PictureFiles) -> Iterator[Finding]:
    """A finding for every photo that is there but cannot be shown, and for every mark that cannot be seen."""
    pictures.prepare_all(photos.values())

    def size(path: Path) -> tuple[int, int] | Trouble:
        made = pictures.prepared(path)
        return made if isinstance(made, Trouble) else (made.width, made.height)

    return findings_on(photos, size)


def look_findings(found: Review, folder: ContentFolder) -> tuple[Finding, ...]:
    """What is to be said of the look of the site: its theme, its colours and fonts, its logo; and of paths in it."""
    collector = Collector()
    look = site_look(found.site, folder, collector)
    return (*collector.findings, *path_findings(found, look, folder))


def in_order(*findings: Finding) -> tuple[Finding, ...]:
    """Findings of several sources in reading order."""
    return tuple(sorted(findings, key=lambda each: each.place))
