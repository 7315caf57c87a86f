"""What reading the files and following their names finds by itself."""

from sitegen.checks.registry import found_while_reading
from sitegen.findings import Severity

_FABRIC = "fabrics: {main: {name: cotton, structure: woven}}\n"
_OTHER = (
    "level: beginner\n"
    "--- ../other/tutorial.yaml\ntitle: Example\nsummary: Another.\nmeasured_in: inches\n"
    "--- ../other/steps/01.yaml\ntitle: Cut\ntext: Cut.\n"
)


def _chain(links: int) -> str:
    """A piece with edges of which each is as long as the next."""
    edges = [f'e{number}: "{{front.e{number + 1}}}"' for number in range(links)]
    return f"pieces:\n  front: {{cut: 2, fabric: main, edges: {{{', '.join(edges)}, e{links}: 15 in}}}}\n"


found_while_reading(
    id="wrong-kind",
    title="A value of another kind than expected",
    what="A list where a text was expected, a word that is none of the known ones, a size that is not a number.",
    why="The program would have to guess what was meant.",
    trips="wearer: grown-up",
    passes="wearer: adult",
)
found_while_reading(
    id="text-unwritten",
    title="A text that is still to be written",
    what="A text that begins with “To be written”, as those do with which a new folder is made.",
    why="It would be published as if it were finished.",
    trips="--- steps/01.yaml\ntitle: Cut\ntext: To be written. What to do, in short sentences.\n",
    passes="--- steps/01.yaml\ntitle: Cut\ntext: Cut the front.\n",
)
found_while_reading(
    id="step-unconfirmed",
    title="A drafted step that nobody has confirmed",
    what="A step with confirmed: no, as begin writes it into each step that it drafts from captions.",
    why="What captions say is misheard often, and numbers most of all: the student would cut by it.",
    trips="--- steps/01.yaml\nconfirmed: no\ntitle: Cut\ntext: Cut the front.\n",
    passes="--- steps/01.yaml\nconfirmed: yes\ntitle: Cut\ntext: Cut the front.\n",
)
found_while_reading(
    id="list-without-brackets",
    severity=Severity.DOUBTFUL,
    title="Commas where a list may be meant",
    what="One text with commas where a list may stand, of tools, needs or supplies.",
    why="Students would see one long name of needs. Of tools and supplies each part is read as a thing of its own, so"
    " that one thing with a comma in its name would be parted.",
    trips="tools: scissors, pins",
    passes="tools: [scissors, pins]",
)
found_while_reading(
    id="typographic-quotes",
    severity=Severity.DOUBTFUL,
    title="A short text in the quotation marks of a word processor",
    what="A name, an amount or another short text that stands in “ ” or ‘ ’ as a whole.",
    why="Only straight marks quote in a file; these are read as part of the text, so that “1 m” is no length.",
    trips="tools: [“scissors”]",
    passes="tools: [scissors]",
)
found_while_reading(
    id="not-a-length",
    title="A text that is not a length",
    what="A length that cannot be read: a unit that is not known, a fraction no ruler has, words behind the number.",
    why="A length that is read as another one spoils cloth.",
    trips="seam_allowance: 3/7 in",
    passes="seam_allowance: 3/8 in",
)
found_while_reading(
    id="size-count",
    title="Another number of values than sizes",
    what="A value by size has one entry, or exactly one for each size.",
    why="One value too few moves every later size by one.",
    trips="sizes: [S, M, L]\nbody: {bust: '33, 35 in'}",
    passes="sizes: [S, M, L]\nbody: {bust: '33, 35, 37 in'}",
)
found_while_reading(
    id="unknown-key",
    title="A key that is not known",
    what="A key that the format does not have at this place; the nearest one is named.",
    why="A misspelt key would silently do nothing.",
    trips="weerer: adult",
    passes="wearer: adult",
)
found_while_reading(
    id="key-missing",
    title="A key that is needed is missing",
    what="A part lacks a key without which it cannot be computed or shown.",
    why="Half a part would come out half true.",
    trips="fabrics: {main: {structure: woven}}",
    passes=_FABRIC,
)
found_while_reading(
    id="key-twice",
    title="A key that stands twice",
    what="The same key, size or row twice in one place.",
    why="YAML would silently keep the last one.",
    trips="level: beginner\nlevel: expert",
    passes="level: beginner",
)
found_while_reading(
    id="given-twice",
    title="A number that is given twice",
    what="A number stands in the file and in the size table, or a change says twice how much.",
    why="Sooner or later one of the two is changed and the other is not.",
    trips=_FABRIC
    + "pieces: {sleeve: {cut: 2, fabric: main, length: 24 in}}\n"
    + "changes: {longer: {piece: sleeve, lengthen_by: 2 in, shorten_by: 1 in}}",
    passes=_FABRIC
    + "pieces: {sleeve: {cut: 2, fabric: main, length: 24 in}}\n"
    + "changes: {longer: {piece: sleeve, lengthen_by: 2 in}}",
)
found_while_reading(
    id="empty-value",
    title="A key with nothing behind it",
    what="A key whose value was left out.",
    why="Nobody can tell whether it was forgotten or not wanted.",
    trips="level:",
    passes="level: beginner",
)
found_while_reading(
    id="bad-name",
    title="A name that cannot be one",
    what="Names of parts are small letters, digits and underscores; names of folders have hyphens.",
    why="Names are used in references and addresses.",
    trips="fabrics: {Main cloth: {name: cotton, structure: woven}}",
    passes=_FABRIC,
)
found_while_reading(
    id="name-twice",
    title="One name for two parts",
    what="A piece and a band, say, with the same name.",
    why="A reference could mean either.",
    trips=_FABRIC + "pieces: {main: {cut: 2, fabric: main}}",
    passes=_FABRIC + "pieces: {panel: {cut: 2, fabric: main}}",
)
found_while_reading(
    id="reference-unquoted",
    title="A reference without quotes",
    what="A reference that stands as a whole value needs quotes around its braces.",
    why="YAML reads braces as something else.",
    trips="seam_allowance: 3/8 in\n"
    + _FABRIC
    + "pieces:\n  front: {cut: 2, fabric: main, edges: {side: 15 in}}\n"
    + "  back: {cut: 2, fabric: main, edges: {side: {front.side}}}",
    passes="seam_allowance: 3/8 in\n"
    + _FABRIC
    + "pieces:\n  front: {cut: 2, fabric: main, edges: {side: 15 in}}\n"
    + '  back: {cut: 2, fabric: main, edges: {side: "{front.side}"}}',
)
found_while_reading(
    id="unknown-row",
    title="A row of the size table that belongs to nothing",
    what="The first column of the size table names numbers of the tutorial, such as body.bust or front.side.",
    why="A misspelt row would silently do nothing.",
    trips="sizes: [S, M]\n--- sizes.csv\nnumber,S,M\nbodi.bust,33,35\n",
    passes="sizes: [S, M]\n--- sizes.csv\nnumber,S,M\nbody.bust,33,35\n",
)
found_while_reading(
    id="unknown-reference",
    area="references",
    title="A reference to nothing",
    what="A name in braces, or of an edge, fabric, hem or piece, that the tutorial does not have.",
    why="The student would read a hole in the middle of the sentence.",
    trips="seam_allowance: 3/8 in\nbefore_you_start: Sew with {seam_alowance} seams.",
    passes="seam_allowance: 3/8 in\nbefore_you_start: Sew with {seam_allowance} seams.",
    source="The content format of this program",
)
found_while_reading(
    id="reference-open",
    area="references",
    title="A reference with one brace",
    what="A name in a running text that has a brace before it or behind it, and none on its other side.",
    why="The student would read the name instead of the number.",
    trips="seam_allowance: 3/8 in\nbefore_you_start: Sew with {seam_allowance seams.",
    passes="seam_allowance: 3/8 in\nbefore_you_start: Sew with {seam_allowance} seams.",
    source="The content format of this program",
)
found_while_reading(
    id="title-twice",
    severity=Severity.DOUBTFUL,
    title="Two tutorials with one title",
    what="The title of a tutorial is that of another one of the site.",
    why="On the front page, in the search and in the feed nobody could tell the two apart.",
    trips=_OTHER,
    passes=_OTHER.replace("title: Example", "title: Another example"),
    source="The content format of this program",
)
found_while_reading(
    id="term-twice",
    severity=Severity.DOUBTFUL,
    title="A term that is explained twice",
    what="No two terms of the glossary differ in capitals only.",
    why="A term in a text opens one of the two, and nobody can know which one its author meant.",
    trips="--- ../../glossary.yaml\nhem: A folded edge.\nHem: The finished lower edge.\n",
    passes="--- ../../glossary.yaml\nhem: A folded edge.\nHem line: The finished lower edge.\n",
    source="The content format of this program",
)
found_while_reading(
    id="too-many-views",
    title="More combinations of views than can be looked at",
    what="Every combination of views is worked out, checked and published by itself; there may be 24 of them.",
    why="Nobody could look at so many garments before a release.",
    trips="views: {a: [b, c, d], e: [f, g, h], i: [j, k, l]}",
    passes="views: {a: [b, c, d], e: [f, g, h]}",
)
found_while_reading(
    id="accepted-nothing",
    severity=Severity.DOUBTFUL,
    title="An accepted finding that is not there",
    what="An entry of accept names a check and what it says, but nothing of the kind is found in this file.",
    why="What is accepted without need would hide the next slip.",
    trips="seam_allowance: 5/8 in (1.5 cm)\naccept: [{check: unit-pair, said: 5/8 in, reason: as printed}]",
    passes="seam_allowance: 5/8 in (1 cm)\naccept: [{check: unit-pair, said: 5/8 in (1 cm), reason: as printed}]",
)
found_while_reading(
    id="reference-kind",
    area="references",
    title="A reference to a percentage where a length is needed",
    what="A reference that stands for a length, but names a ratio or a stretch.",
    why="There is nothing that could be cut or sewn by it.",
    trips="fabrics: {main: {name: jersey, structure: knit, stretch_across: 40%}}\n"
    + "pieces: {front: {cut: 2, fabric: main, edges: {side: '{main.stretch_across}'}}}",
    passes="seam_allowance: 3/8 in\nfabrics: {main: {name: jersey, structure: knit, stretch_across: 40%}}\n"
    + "pieces: {front: {cut: 2, fabric: main, edges: {side: '{seam_allowance}'}}}",
    source="The content format of this program",
)
found_while_reading(
    id="circle",
    area="references",
    title="Numbers that need each other in a circle",
    what="Each of them is given by reference to the next, and the last to the first.",
    why="None of them can ever be worked out.",
    trips=_FABRIC
    + 'pieces:\n  front: {cut: 2, fabric: main, edges: {side: "{back.side}"}}\n'
    + '  back: {cut: 2, fabric: main, edges: {side: "{front.side}"}}',
    passes=_FABRIC
    + 'pieces:\n  front: {cut: 2, fabric: main, edges: {side: "{back.side}"}}\n'
    + "  back: {cut: 2, fabric: main, edges: {side: 15 in}}",
    source="The content format of this program",
)
found_while_reading(
    id="long-chain",
    area="references",
    title="Too many numbers that follow one from another",
    what="More than 100 numbers in a row of which each is given by reference to the next.",
    why="Nobody could follow the working of the first one.",
    trips=_FABRIC + _chain(101),
    passes=_FABRIC + _chain(99),
    source="The content format of this program",
)
found_while_reading(
    id="zero-length",
    area="references",
    title="A number that divides by nothing",
    what="A number that is divided by the length of something which is 0 long. Of a band round nothing it is told what"
    " it goes round.",
    why="It has no value.",
    trips="fabrics: {rib: {name: rib, structure: knit, swatch: {rest: 0 in, stretched: 7 in}}}",
    passes="fabrics: {rib: {name: rib, structure: knit, swatch: {rest: 4 in, stretched: 7 in}}}",
    source="Arithmetic",
)
found_while_reading(
    id="impossible-sum",
    title="A sum that cannot be done",
    what="Margins that leave nothing between them, an allowance as wide as the radius, a strip that its joins use up.",
    why="No number can come out of it, and whatever needs the number is missing too.",
    trips="spacings: {buttons: {length: 2 in, marks: 3, first_margin: 1 in, last_margin: 1 in}}",
    passes="spacings: {buttons: {length: 20 in, marks: 3, first_margin: 1 in, last_margin: 1 in}}",
    source="Arithmetic",
)
