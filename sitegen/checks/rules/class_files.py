"""What reading the file of a class finds by itself."""

from sitegen.checks.registry import found_while_reading

_FORMAT = "The content format of this program"
_TEE = "--- classes/evening.yaml\ntitle: Evening class\ntutorial: example\nstudents: 4\n"
_SESSION = "sessions: [{minutes: 120}]\n"

found_while_reading(
    id="session-backwards",
    area="classes",
    title="A session that ends before it begins",
    what="A session ends later on the same day than it begins.",
    why="Its minutes would be less than none, and it would stand wrong in every calendar.",
    source=_FORMAT,
    trips=_TEE + 'time_zone: Europe/London\nsessions: [{date: 2027-01-12, begins: "18:30", ends: "8:30"}]\n',
    passes=_TEE + 'time_zone: Europe/London\nsessions: [{date: 2027-01-12, begins: "18:30", ends: "20:30"}]\n',
)
found_while_reading(
    id="class-view",
    area="classes",
    title="A class that does not say which view it makes",
    what="Where the tutorial offers views, a class names the choice in each of them.",
    why="Pieces, steps and cloth differ from choice to choice, so there is no kit without it.",
    source=_FORMAT,
    trips="views: {neck: [band, hood]}\n" + _TEE + _SESSION,
    passes="views: {neck: [band, hood]}\n" + _TEE + "views: {neck: hood}\n" + _SESSION,
)
found_while_reading(
    id="class-empty",
    area="classes",
    title="A class of nobody, or of more students than one class holds",
    what="A class has from 1 to 200 students.",
    why="There is nothing to buy for nobody, and no layout for a whole factory.",
    source=_FORMAT,
    trips="sizes: [S, M]\n" + _TEE.replace("students: 4", "students: {S: 0, M: 0}") + _SESSION,
    passes="sizes: [S, M]\n" + _TEE.replace("students: 4", "students: {S: 0, M: 4}") + _SESSION,
)
_CHANGES = (
    "seam_allowance: 3/8 in\nfabrics: {main: {name: cotton, structure: woven, buy: 1 yd}}\n"
    "pieces: {sleeve: {cut: 2, fabric: main, length: 24 in}}\n"
    "changes:\n"
    "  longer: {piece: sleeve, line_at: 8 in from the top, lengthen_by: 1 in}\n"
    "  longest: {piece: sleeve, line_at: 8 in from the top, lengthen_by: 2 in}\n"
)
found_while_reading(
    id="class-changes",
    area="classes",
    title="Changes that cannot be made together",
    what="Two changes of a class alter one number of the tutorial.",
    why="Nobody said how long a sleeve becomes that is lengthened twice.",
    source=_FORMAT,
    trips=_CHANGES + _TEE + "changes: [longer, longest]\n" + _SESSION,
    passes=_CHANGES + _TEE + "changes: [longer]\n" + _SESSION,
)
