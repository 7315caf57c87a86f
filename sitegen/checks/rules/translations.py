"""What reading finds out about texts that stand side by side in several languages."""

from sitegen.checks.registry import found_while_reading
from sitegen.findings import Severity

_SITE = "--- ../../site.yaml\ntitle: {en: Example, es: Ejemplo}\nauthor: Nobody\nlanguages: [en, es]\n"
_TUTORIAL = (
    "--- tutorial.yaml\ntitle: {en: Tee, es: Camiseta}\nsummary: {en: A tee., es: Una camiseta.}\n"
    + "measured_in: inches\n"
)
_STEP = "seam_allowance: 3/8 in\n--- steps/01.yaml\ntitle: {en: Sew, es: Coser}\n"
_BOTH = _SITE + _TUTORIAL + _STEP
_RIGHT = "text: {en: 'Sew it {seam_allowance} from the edge.', es: 'Cose a {seam_allowance} del borde.'}\n"

found_while_reading(
    id="translation-missing",
    area="languages",
    severity=Severity.DOUBTFUL,
    title="A text without a translation",
    what="A text that students read which lacks one of the languages of site.yaml.",
    why="The page in that language shows it in another one, marked as such.",
    source="The content format of this program; W3C, WCAG 2.2, success criterion 3.1.2",
    trips=_BOTH + "text: Sew it.\n",
    passes=_BOTH + _RIGHT,
)
found_while_reading(
    id="translation-references",
    area="languages",
    title="Translations that refer to different numbers",
    what="A text in one language that refers to other numbers than the same text in another, or to one more or less.",
    why="Readers of one language would sew by another number, or by none.",
    source="The content format of this program",
    trips=_BOTH + "text: {en: 'Sew it {seam_allowance} from the edge.', es: Cose a 1 cm del borde.}\n",
    passes=_BOTH + _RIGHT,
)
found_while_reading(
    id="translation-language",
    area="languages",
    title="A translation into a language that the site does not have",
    what="A text under a language that is not among the languages of site.yaml.",
    why="Nobody would see it; mostly the name of the language is a slip.",
    source="The content format of this program; language tags as BCP 47 has them",
    trips=_BOTH + "text: {en: Sew it., sp: Cose.}\n",
    passes=_BOTH + _RIGHT,
)
