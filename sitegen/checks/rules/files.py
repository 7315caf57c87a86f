"""What is found while files are opened and read, before anyone asks what they mean."""

from sitegen.checks.registry import found_while_reading

_STEP = "--- steps/01.yaml\ntitle: Cut\ntext: Cut the cloth.\n"
_SIZES = "sizes: [S, M]\n--- sizes.csv\n"
_TABLE = _SIZES + "number,S,M\nbody.bust,33,35\n"


def _file(id: str, title: str, what: str, why: str, trips: str, passes: str = _STEP) -> None:
    found_while_reading(id=id, area="files", title=title, what=what, why=why, trips=trips, passes=passes)


_file(
    "file-missing",
    "A file that is not there",
    "A file without which there is no site or no tutorial.",
    "Nothing can be said about what is not there.",
    "--- tutorial.yaml (a gap)\n",
)
_file(
    "no-tutorials",
    "A content folder without a tutorial",
    "There is nothing in the folder tutorials.",
    "There is nothing to check or to publish.",
    "--- . (removed)\n",
)
_file(
    "steps-missing",
    "Steps in a folder of another name",
    "A tutorial without a step whose folder has YAML files in a folder that is not called steps.",
    "The page would tell what is made and not how.",
    "--- Step/01.yaml\ntitle: Cut\ntext: Cut the cloth.\n",
)
_file(
    "file-unreadable",
    "A file that cannot be opened",
    "A file that this user may not read, or that is a folder.",
    "What is in it would be missing from the site without a word.",
    "--- steps/01.yaml (a folder)\n",
)
_file(
    "folder-unreadable",
    "A folder that cannot be opened",
    "A folder that this user may not read, or that is a file.",
    "Whatever is in it would be missing from the site without a word.",
    "--- steps (1 bytes)\n",
)
_file(
    "file-empty",
    "A file with nothing in it",
    "A file of no bytes, or of nothing but spaces and remarks.",
    "An empty file is most often one that was not saved.",
    "--- steps/01.yaml\n\n",
)
_file(
    "file-encoding",
    "A file that is not UTF-8",
    "A byte that is no UTF-8, as old spreadsheets and editors write fractions and accents.",
    "Fractions and accents would turn into other signs.",
    "--- steps/01.yaml\ntitle: Cut\ntext: Cut \udcbd in.\n",
)
_file(
    "file-too-large",
    "A file that is too large",
    "A text file of more than 2 MB.",
    "No tutorial needs so much text; most often it is a picture with the wrong ending.",
    "--- steps/01.yaml (3000000 bytes)\n",
)
_file(
    "file-name",
    "A file whose name cannot be used",
    "A name with a control character in it.",
    "It could not be shown in a message, or written into a page.",
    "--- steps/01\x07.yaml\ntitle: Cut\ntext: Cut.\n",
)
_file(
    "outside-folder",
    "A link that leaves the folder",
    "A file that is really a link to one outside the content folder.",
    "Nothing outside the author's folder is ever read or published.",
    "--- steps/01.yaml (link out)\n",
)
_file(
    "control-character",
    "A character that nobody can see",
    "A control character inside a text.",
    "It comes from a broken copy and would end up in a page.",
    "--- steps/01.yaml\ntitle: Cut\ntext: Cut\x07 it.\n",
)
_file(
    "yaml-syntax",
    "Punctuation that cannot be read",
    "A quote or bracket that is not closed, a tab for indentation, a missing space behind a colon, and the like.",
    "From there on nobody can tell what belongs to what.",
    '--- steps/01.yaml\ntitle: "Cut\ntext: Cut the cloth.\n',
)
_file(
    "yaml-alias",
    "An anchor or alias",
    "A value marked with & or taken from elsewhere with *.",
    "Few readers know them, and a few lines of them can blow up to millions.",
    "--- steps/01.yaml\ntitle: &a Cut\ntext: *a\n",
)
_file(
    "yaml-tag",
    "A type written out",
    "A value with a type in front, such as !!str.",
    "Types are known from the place of a value; a type from elsewhere could run a program.",
    "--- steps/01.yaml\ntitle: !!str Cut\ntext: Cut the cloth.\n",
)
_file(
    "yaml-deep",
    "Too many levels",
    "Lists and keys within each other more than twenty deep.",
    "No tutorial needs it; most often a bracket is missing.",
    "--- steps/01.yaml\ntitle: Cut\ntext: Cut.\nneeds: " + "[" * 25 + "]" * 25 + "\n",
)
_file(
    "yaml-too-many",
    "Too many values in one file",
    "More than a hundred thousand values in one file.",
    "No tutorial needs so many; most often something was pasted twice over.",
    "--- steps/01.yaml (100100 items)\n",
)
_file(
    "yaml-comment",
    "A remark where none was meant",
    "A # with a space before it and a digit behind it: YAML drops it and the rest of the line.",
    "“size #10” would be read as “size”.",
    "--- steps/01.yaml\ntitle: Cut\ntext: Cut.\nneeds: [needle]\nvideo: take #10\n",
)
_file(
    "many-documents",
    "Two documents in one file",
    "A line of three dashes that begins a second document.",
    "Only the first would be read.",
    "--- steps/01.yaml\ntitle: Cut\ntext: Cut.\n---\ntitle: Sew\n",
)
_file(
    "not-a-mapping",
    "A file that does not consist of keys with values",
    "A file that holds a list or plain text.",
    "Every file of a tutorial consists of keys with values.",
    "--- steps/01.yaml\n- Cut\n- Sew\n",
)
_file(
    "key-not-text",
    "A key that is not a word",
    "A list or keys with values in the place of a key.",
    "Keys are words; most often a bracket stands in the wrong place.",
    "--- steps/01.yaml\ntitle: Cut\ntext: Cut.\n[a, b]: c\n",
)
_file(
    "too-many-slips",
    "More slips than it helps to read",
    "More than two hundred faults in one file; the rest are not listed.",
    "Such a file is most often one of another kind.",
    "--- steps/01.yaml\n" + "\n".join(f"a: {number}" for number in range(230)) + "\n",
)
_file(
    "csv-quote-open",
    "A quoted cell that is not closed",
    "A quotation mark in the size table with no second one.",
    "All that follows would be one cell.",
    _SIZES + 'number,S,M\nbody.bust,"33,35\n',
    _TABLE,
)
_file(
    "csv-quote-behind",
    "Text behind a quoted cell",
    "Something between the closing quotation mark of a cell and the next comma.",
    "An inch mark inside quotes must be doubled; else the cell ends there.",
    _SIZES + 'number,S,M\nbody.bust,"33" in,35\n',
    _TABLE,
)
_file(
    "csv-row-short",
    "A row with too few cells",
    "A row of the size table that ends before the last column.",
    "Some size has no value.",
    _SIZES + "number,S,M\nbody.bust,33\n",
    _TABLE,
)
_file(
    "csv-row-long",
    "A row with too many cells",
    "A row of the size table that has more cells than there are headings.",
    "A decimal comma may have split one value in two.",
    _SIZES + "number,S,M\nbody.bust,33,35,37\n",
    _TABLE,
)
_file(
    "csv-header-empty",
    "A column without a heading",
    "A column of the size table that has values but no heading.",
    "Nobody can tell for which size they are.",
    _SIZES + "number,S,,M\nbody.bust,33,34,35\n",
    _TABLE,
)
_file(
    "csv-header-twice",
    "Two columns with one heading",
    "Two columns of the size table with the same heading.",
    "Nobody can tell which one is meant.",
    _SIZES + "number,S,M,M\nbody.bust,33,35,37\n",
    _TABLE,
)
_file(
    "csv-too-large",
    "A size table that is too large",
    "More than 2,000 rows or 200 columns.",
    "Most often the wrong sheet was saved.",
    _SIZES + "number,S,M\n" + "x.y,1,2\n" * 2100,
    _TABLE,
)
