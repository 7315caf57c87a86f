"""What a page shows, and nothing else: plain frozen data from the computed tutorial to the templates.

Text fields are plain text and are escaped by the templates; ``Markup`` from ``markdown.render_inline`` may
stand in any of them that is read in a sentence. Fields of type ``Markup`` are HTML that this program made (from
Markdown or with numbers in it); author text never becomes ``Markup`` by any other way.
Links are relative; ``root`` leads from the page to the folder of the site and is empty or ends with ``/``.
Order in a tuple is the order on the page. Knows nothing of sums, of files or of the theme.
"""

from __future__ import annotations

from dataclasses import dataclass

from markupsafe import Markup

from sitegen.publishing.picture_views import Diagram, LogoPicture, Picture
from sitegen.publishing.view_choices import ViewChoice, chosen_views
from sitegen.publishing.whole_views import SizeFinder, WholeDrawings
from sitegen.quantities import System

FRONT_PAGE = "index.html"
GLOSSARY_PAGE = "glossary.html"
THEME_FOLDER = "theme"
"""Where the assets of the theme lie, seen from the folder of the site."""

MOST_SIZES = 24
"""The stylesheet knows so many sizes; a tutorial with more shows all of them and offers no choice."""


@dataclass(frozen=True, slots=True)
class Both:
    """One amount in the words of both systems: ``17 3/4 in`` and ``45 cm``. Twice the same text if it has no unit."""

    inches: str
    metric: str

    def text(self, system: System) -> str:
        """The words of one system."""
        return self.inches if system is System.INCHES else self.metric

    @property
    def alike(self) -> bool:
        """Whether there is nothing to choose between."""
        return self.inches == self.metric


@dataclass(frozen=True, slots=True)
class WorkingLine:
    """One line of a sum: what it gives, and the sum itself in words with its result."""

    gives: str
    """``neckband cut length``."""
    texts: tuple[Both, ...]
    """``17 in + 2 seam allowances of 3/8 in = 17 3/4 in``: a text that serves all sizes, or one for each in order."""
    told: str = ""
    """The id of the working that already has this very line; then there is no text here, only the way there."""
    place: str = ""
    """Where that working stands: ``on card 2``."""


@dataclass(frozen=True, slots=True)
class SumRow:
    """One row of a sum that is written below each other, with sizes as columns."""

    words: Markup
    """``+ back neckline``; the whole line where it is the same for every size."""
    cells: tuple[Both, ...] = ()
    """The amount of each size; empty where it is the same for every size."""


@dataclass(frozen=True, slots=True)
class NumberView:
    """A number of the tutorial as it is read."""

    name: str
    """The name in a reference: ``neckband.cut_length``."""
    words: str
    """The name in words: ``neckband cut length``."""
    values: tuple[Both, ...]
    """One value that serves all sizes, or one for each size in their order."""
    low: int = 0
    """The place in ``values`` of the smallest."""
    high: int = -1
    """The place in ``values`` of the largest."""
    working: tuple[WorkingLine, ...] = ()
    anchor: str = ""
    """The id of its working, unique on the page; empty when the page does not show how it was got."""
    place: str = ""
    """Where on the page that working stands: ``on card 2``, ``with the cutting list``."""

    @property
    def by_size(self) -> bool:
        """Whether the sizes read differently."""
        return len(set(self.values)) > 1


@dataclass(frozen=True, slots=True)
class NumberTable:
    """Rows of numbers with the sizes as columns, and the numbers whose working is told below."""

    rows: tuple[NumberView, ...] = ()
    working: tuple[NumberView, ...] = ()


@dataclass(frozen=True, slots=True)
class OtherLanguage:
    """The same site in another language."""

    code: str
    folder: str
    """From the folder of this language to that of the other: ``es/``, ``../``."""


@dataclass(frozen=True, slots=True)
class SiteView:
    """What every page of a site shares."""

    title: str
    author: str
    about: Markup = Markup()
    """Prose for the front page."""
    note: str = ""
    """One line in the foot of every page."""
    language: str = "en"
    first_language: str = ""
    """The language of the site's own root, in which what lacks a translation is shown; empty when there is one."""
    up: str = ""
    """From the folder of this language to that of the site, which holds the theme, pictures and drawings."""
    others: tuple[OtherLanguage, ...] = ()
    """The further languages of the site, in the order in which they are offered."""
    units_first: System = System.INCHES
    draft: bool = False
    """Whether every page bears the draft mark."""
    glossary: bool = True
    """Whether there is a page of terms to lead to."""
    techniques: bool = False
    """Whether there is a page of techniques to lead to."""
    searchable: bool = False
    """Whether there is a page to search on, and one of changes: those of a whole site."""
    logo: LogoPicture | None = None
    generator: str = "sitegen"


@dataclass(frozen=True, slots=True)
class Caution:
    """What can hurt, and the usual care."""

    name: str
    text: str
    cards: tuple[int, ...] = ()
    """Numbers of the cards where it applies; used where cautions are gathered."""


@dataclass(frozen=True, slots=True)
class Fabric:
    """A fabric and how much of it to buy."""

    name: str
    called: str = ""
    """The author's short name for it: ``main``, ``rib``."""
    shown_as: str = ""
    """That name in the language of the page; empty where it is the same."""
    structure: str = ""
    stretch: str = ""
    """``40% across, 15% down``."""
    width: Both | None = None
    weight: str = ""
    shrinkage: str = ""
    advice: str = ""
    buy: NumberView | None = None


@dataclass(frozen=True, slots=True)
class Supply:
    """Something to buy or to have at hand."""

    item: str
    size: Both | None = None
    amount: Both | None = None
    purpose: str = ""


@dataclass(frozen=True, slots=True)
class CutPiece:
    """One piece of the cutting list."""

    piece: str
    how_many: str
    """``1 on fold``, ``2 mirrored``."""
    fabric: str = ""
    numbers: tuple[NumberView, ...] = ()
    """Cut length, cut width, allowance: a row each."""


@dataclass(frozen=True, slots=True)
class Stitching:
    """The settings of one seam, hem or edge finish."""

    what: str
    """``neckband to front and back neckline``."""
    stitch: str = ""
    stitch_width: str = ""
    stitch_length: str = ""
    """``2.5 mm, about 10 stitches to the inch``."""
    allowance: NumberView | None = None
    from_fold: NumberView | None = None
    """Of a hem, how far from its fold the stitches run."""
    press: str = ""
    notes: tuple[str, ...] = ()
    """Ease, stretching, what stabilises the seam: a line each."""
    href: str = ""
    """The page of its stitch, relative to this page."""
    named: str = ""
    """The stitch as the author named it, whatever the language of the page."""
    is_hem: bool = False
    """Whether an edge is turned up: its allowance is that of the hem."""


@dataclass(frozen=True, slots=True)
class Video:
    """A place in the video of the tutorial."""

    time: str
    """``14:20``."""
    href: str = ""


@dataclass(frozen=True, slots=True)
class OtherWay:
    """A second way of doing a step."""

    when: Markup
    """When it suits."""
    prose: Markup
    stitching: tuple[Stitching, ...] = ()


@dataclass(frozen=True, slots=True)
class StepCard:
    """One step as the student sees it."""

    number: int
    anchor: str
    """The id of the card, the same from release to release, so that ticks are remembered."""
    title: str
    prose: Markup
    minutes: int | None = None
    needs: tuple[str, ...] = ()
    tools: tuple[str, ...] = ()
    cautions: tuple[Caution, ...] = ()
    stitching: tuple[Stitching, ...] = ()
    numbers: tuple[NumberView, ...] = ()
    """Every number that the card uses; those that differ by size become its table."""
    working: tuple[NumberView, ...] = ()
    """The numbers whose working is told on this card, so each on one card only."""
    pictures: tuple[Picture, ...] = ()
    diagrams: tuple[Diagram, ...] = ()
    look_for: Markup = Markup()
    if_wrong: Markup = Markup()
    other_way: OtherWay | None = None
    video: Video | None = None


@dataclass(frozen=True, slots=True)
class Change:
    """A change that the student may make before cutting, such as a longer sleeve."""

    title: str
    anchor: str
    text: Markup = Markup()
    numbers: NumberTable = NumberTable()
    diagrams: tuple[Diagram, ...] = ()
    bought: tuple[BoughtForChange, ...] = ()


@dataclass(frozen=True, slots=True)
class BoughtForChange:
    """How much to buy of a fabric of which a change needs more than the tutorial tells to buy without it."""

    fabric: str
    buy: NumberView


@dataclass(frozen=True, slots=True)
class TutorialCard:
    """A tutorial in the list on the front page."""

    key: str
    """The name of its folder."""
    title: str
    href: str
    """From the folder of the site: ``tutorials/lantern-tee/index.html``."""
    summary: Markup
    level: str = ""
    wearer: str = ""
    minutes: int | None = None
    sizes: tuple[str, ...] = ()
    cards: int = 0
    picture: Picture | None = None
    learn: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class FrontView:
    """The page with all tutorials."""

    site: SiteView
    tutorials: tuple[TutorialCard, ...]
    root: str = ""
    techniques: int = 0
    terms: int = 0
    """How many techniques and explained words the site has, each on a page of its own kind."""


@dataclass(frozen=True, slots=True)
class GlossaryEntry:
    """A term in one line, with its name on either side of the Atlantic."""

    term: str
    anchor: str
    means: str
    us: str = ""
    uk: str = ""


@dataclass(frozen=True, slots=True)
class TutorialView:
    """The page of one tutorial."""

    site: SiteView
    root: str
    """From the page to the folder of the site: ``../../``."""
    title: str
    summary: Markup
    cards: tuple[StepCard, ...]
    level: str = ""
    wearer: str = ""
    minutes: int | None = None
    """Of all cards together."""
    learn: tuple[str, ...] = ()
    before: Markup = Markup()
    """What to know before starting."""
    picture: Picture | None = None
    sizes: tuple[str, ...] = ()
    """Names of the sizes in order; empty or a single one when there is nothing to choose."""
    chart: NumberTable = NumberTable()
    """Body measurements by size."""
    finished: NumberTable = NumberTable()
    """Measurements of the finished garment by size."""
    fabrics: tuple[Fabric, ...] = ()
    supplies: tuple[Supply, ...] = ()
    tools: tuple[str, ...] = ()
    cautions: tuple[Caution, ...] = ()
    """All cautions of the cards, each once."""
    cutting: tuple[CutPiece, ...] = ()
    cutting_working: tuple[NumberView, ...] = ()
    buying_working: tuple[NumberView, ...] = ()
    """Working behind the fabric to buy."""
    changes: tuple[Change, ...] = ()
    chapters: str = ""
    """The file with the chapters of the video, relative to the page; empty when no card has a time."""
    views: tuple[ViewChoice, ...] = ()
    """What can be chosen about the garment; each choice leads to a page of its own."""
    home: str = ""
    """The folder of the tutorial, relative to the page: what is chosen there holds for all its views."""
    numbers: tuple[NumberView, ...] = ()
    """Every number that the page shows anywhere."""
    terms: tuple[GlossaryEntry, ...] = ()
    """The terms whose meaning opens somewhere on the page."""
    whole: WholeDrawings = WholeDrawings()
    """Drawings of the tutorial as a whole."""
    finder: SizeFinder | None = None
    """By what the student finds her size; None where there is nothing to choose."""
    names_differ: bool = False
    """Whether a word of the page has another name in the US than in the UK."""

    @property
    def card_anchors(self) -> dict[int, str]:
        """The id of each card by its number."""
        return {card.number: card.anchor for card in self.cards}

    @property
    def chosen(self) -> str:
        """What is chosen of the views: ``pocket: without``; each page of a tutorial has another."""
        return chosen_views(self.views)

    @property
    def choice_of_size(self) -> bool:
        """Whether the student can choose one size."""
        return 1 < len(self.sizes) <= MOST_SIZES


@dataclass(frozen=True, slots=True)
class GlossaryView:
    """The page of terms."""

    site: SiteView
    entries: tuple[GlossaryEntry, ...]
    root: str = ""
