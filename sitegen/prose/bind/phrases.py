"""The ways in which a text says what a length is, and the numbers that it may be in each of them."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass

from sitegen.prose.bind.parts import Around

_BRACKET = r"[\s-]*(?:\([^()]{1,30}\)\s*)?"
"""The same length in the other unit may stand between a length and what it is."""
_IS = r"(?:is|are|of|at|:|=|will be|comes to|becomes)(?: about| now| only)?\s*$"
_TO = r"to(?: about)?\s*$"
_FROM_EDGE = re.compile(r"(?:away )?from (?:the|both|their|its) (?:raw |cut )?edges?\b")
_TRIM = r"\b(?:trim|grade|cut back|cut down)(?:med|d|ming|ing|s)?"
_TAKEN_BACK = re.compile(r"\b(?:trim|grade|clip|layer|cut (?:back|down|away)|notch)", re.IGNORECASE)
"""An allowance is no longer what it was sewn with, or a depth is cut into it."""
_CHANGED = re.compile(r"\b(?:chang|instead|replac|rather than|different|usual)", re.IGNORECASE)
"""An allowance is spoken of that is not that of the tutorial."""
_OTHER_CASING = re.compile(r"\b(?:cord|drawstring|ribbon|tape|bias)|\belastic for\b|\bother\b", re.IGNORECASE)
_FINISHED = re.compile(r"\bfinish(?:ed|es)?\b", re.IGNORECASE)
_CUT = re.compile(r"\bcut(?:s|ting)?\b", re.IGNORECASE)
_OTHER_THING = re.compile(
    r"\b(?:slit|opening|snip|strip|cord|tail|thread|paper|sheet|rectangle|square|apart|from|of)\b[^.]{0,20}$",
    re.IGNORECASE,
)
"""Something else is so long: ``cut a slit 2 in long in the cuff``."""
_OTHER_TRIM = re.compile(
    r"\b(?:loops?|hangers?|labels?|pieces?|ends?|stays?|spare|scraps?|off|from|each|every|half|halves|two|three|four)\b",
    re.IGNORECASE,
)
"""Something else is cut from a cord or tape than what lies along its edges: ``a piece of tape 4 in long``."""
_TRIMS = (("cord|drawstring|piping", True), ("tape|ribbon|lace", False))
"""What cords and tapes are called, and whether they are surely those of the garment: tape also holds a shoulder."""
BY = re.compile(r"\s*(?:[x×]|by)\s*(?=[\d½¼¾⅛⅜⅝⅞])", re.IGNORECASE)
"""Between the two sides of a rectangle: ``40 × 50 cm``."""
_ENDS = re.compile(r"\bends?\b", re.IGNORECASE)
_NO_SEAM = re.compile(
    r"\b(?:stitch (?:length|width)|stitches|zigzag|gap|gather\w*|bast\w*|tack\w*|rows?|top-?stitch\w*|edge-?stitch\w*"
    r"|under-?stitch\w*|tape|elastic|ribbon|cord|every|apart|overlap\w*|lap\w*|machine"
    r"|again|first|second|twice|needles?|stay\w*|over-?stitch\w*|pleats?|darts?|corners?|practi[sc]\w+|pivot|hem|fold"
    r"|neaten|finish|clip|reinforce|begin|start|stop|labels?|loops?|patch\w*|button\w*)\b",
    re.IGNORECASE,
)
"""Something else is sewn than a seam, or it is sewn a second time, where its allowance is not what is told."""
_NO_ALLOWANCE = re.compile(
    r"\b(?:thread\w*|elastic|batting|wadding|interfacing|corner\w*|tails?|strip|point|canvas|hems?)\b", re.IGNORECASE
)
"""Something else is cut off, or the allowance of what is no seam."""
_NO_PLACE = r"(?!\s*(?:below|above|before|beyond|behind|past|short of|away|from)\b)"
"""A place is not what is left: ``trim the allowance from the notch to 3 cm below it``."""
_NO_TURN = re.compile(
    r"\b(?:in half|at a time|each time|less|below|above|from|(?<!wrong )(?<!right )sides?|corners?"
    r"|mitr\w+|facings?|slits?|vents?|plackets?|bands?|quarters?|strips?|straps?|ties?|loops?|ribbons?|paper|pattern)\b",
    re.IGNORECASE,
)
"""Something else is turned, or so much lies between two things."""


_FARTHEST = 160
"""Characters before a length in which the words of a phrase stand."""


@dataclass(frozen=True, slots=True)
class Phrase:
    """What stands right before and behind a length, the numbers it may then be, and an example.

    It is ``sure`` where the words can mean nothing else; it is ``less`` than one of them where something is cut back to
    it.
    """

    ahead: re.Pattern[str] | None
    behind: re.Pattern[str] | None
    names: Callable[[Around], Iterable[str]]
    example: str
    sure: bool = True
    less: bool = False

    def fits(self, around: Around) -> bool:
        """Whether it is what stands there."""
        if self.behind is not None and self.behind.match(around.behind) is None:
            return False
        near = max(0, len(around.ahead) - _FARTHEST)
        return self.ahead is None or self.ahead.search(around.ahead, near) is not None


def _phrase(
    ahead: str,
    behind: str,
    names: Callable[[Around], Iterable[str]],
    example: str,
    *,
    sure: bool = True,
    less: bool = False,
) -> Phrase:
    before, after = (re.compile(each, re.IGNORECASE) if each else None for each in (ahead, behind))
    return Phrase(before, after, names, example, sure, less)


def _allowances(around: Around) -> Iterator[str]:
    """The allowances of the parts that the sentence names, and of the seams of the step; else all of the tutorial."""
    if _TAKEN_BACK.search(around.sentence) or _CHANGED.search(around.sentence):
        return
    tutorial = around.tutorial
    parts = [key for key in (*tutorial.bands, *tutorial.pieces) if around.says(key)]
    if len(parts) == 1:
        yield f"{parts[0]}.seam_allowance"
    yield "seam_allowance"
    yield from (f"{name}.seam_allowance" for name in around.joined())
    if not parts:
        yield from (f"{key}.seam_allowance" for key in (*tutorial.bands, *tutorial.pieces))
    for key in parts or tutorial.pieces:
        edges = tutorial.pieces[key].edges.values() if key in tutorial.pieces else ()
        yield from (f"{edge.name}.seam_allowance" for edge in edges if edge.seam_allowance is not None)


def _seams(around: Around) -> Iterator[str]:
    """The allowances of the seams that the step sews."""
    step = around.step
    own = step is not None and any(join.seam_allowance is not None for join in step.every_join())
    if not own and not _NO_SEAM.search(around.clause) and not _TAKEN_BACK.search(around.sentence):
        yield from around.general_first(f"{name}.seam_allowance" for name in around.joined())


def _trimmed(around: Around) -> Iterator[str]:
    """The allowances of the seams that the step sews, of which something is cut off."""
    if not _NO_ALLOWANCE.search(around.clause):
        yield from around.general_first(f"{name}.seam_allowance" for name in around.joined())


def _seams_alone(around: Around) -> Iterator[str]:
    """The same in a step that sews nothing but seams, each in one go, where the sentence tells one distance."""
    step = around.step
    if step is None or step.hems or step.inserts or step.finishes or any(join.enclosed for join in step.joins):
        return
    if len(_FROM_EDGE.findall(around.sentence)) == 1:
        yield from _seams(around)


def _hems(around: Around) -> Iterator[str]:
    if not _TAKEN_BACK.search(around.sentence):
        step = around.step
        hems = [hem.name for hem in step.hems] if step is not None and step.hems else list(around.tutorial.hems)
        for hem in hems:
            yield from (f"{hem}.{field}" for field in ("allowance", "turn", "fold_under", "stitch_line"))


def _turned(around: Around) -> Iterator[str]:
    """What is turned up for the hems and casings of a step that turns nothing else."""
    step = around.step
    if step is None or step.joins or step.finishes or _NO_TURN.search(around.sentence) or _speaks_of_another(around):
        return
    for hem in step.hems:
        yield from (f"{hem.name}.{field}" for field in ("turn", "fold_under", "allowance"))
    for elastic in step.inserts:
        yield from (f"{elastic.name}.{field}" for field in ("casing", "casing_depth", "fold_under"))


def _speaks_of_another(around: Around) -> bool:
    """Whether the sentence names a piece, and none at which the step turns a hem or draws elastic in."""
    step, tutorial = around.step, around.tutorial
    if step is None:
        return False
    turned = {name.name for name in (*step.hems, *step.inserts)}
    hemmed = {edge.name for key in turned & set(tutorial.hems) for edge in tutorial.hems[key].edges}
    named = [piece for key, piece in tutorial.pieces.items() if around.says(key)]
    return bool(named) and not any(
        not hemmed.isdisjoint(edge.name for edge in piece.edges.values())
        or not turned.isdisjoint(side.name for side in piece.sides.values())
        for piece in named
    )


def _sized(*ways: str) -> Callable[[Around], Iterator[str]]:
    """The cut or finished length or width of the one part that is named before it."""

    def names(around: Around) -> Iterator[str]:
        tutorial = around.tutorial
        if _OTHER_THING.search(around.ahead):
            return
        keys = (*tutorial.bands, *tutorial.elastics, *tutorial.pieces)
        named = [key for key in keys if around.says(key, around.ahead)]
        if not named:
            kinds = ("bands", "elastics")
            named = [
                key for kind in kinds if around.says_the_only(kind, around.ahead) for key in getattr(tutorial, kind)
            ]
        finished = _FINISHED.search(around.sentence) is not None
        if len(named) == 1 and (finished or _CUT.search(around.ahead)):
            yield from (f"{named[0]}.{'finished' if finished else 'cut'}_{way}" for way in ways)

    return names


def _elastic(*fields: str) -> Callable[[Around], Iterator[str]]:
    """What an elastic and its casing measure, where the sentence speaks of no cord and of no other elastic."""

    def names(around: Around) -> Iterator[str]:
        if not _OTHER_CASING.search(around.sentence):
            yield from (f"{key}.{field}" for key in around.elastics() for field in fields)

    return names


def _lapped(around: Around) -> Iterator[str]:
    """The overlap of the elastic that the sentence speaks of, or of that whose ends a step laps which draws it in."""
    step = around.step
    of_step = step is not None and bool(step.inserts) and _ENDS.search(around.sentence) is not None
    if of_step or "elastic" in around.sentence.lower() or any(map(around.says, around.tutorial.elastics)):
        yield from (f"{key}.overlap" for key in around.elastics())


def _lapped_here(around: Around) -> Iterator[str]:
    """The overlap of the elastic that a step draws in, in a sentence that may speak of anything."""
    if around.step is not None and around.step.inserts:
        yield from (f"{key}.overlap" for key in around.elastics())


def _trim(words: str) -> Callable[[Around], Iterator[str]]:
    """How long a cord or tape is that the sentence names, or the only one of its kind, in these words."""
    kind = re.compile(rf"\b(?:{words})\b", re.IGNORECASE)

    def names(around: Around) -> Iterator[str]:
        trims = [key for key, trim in around.tutorial.trims.items() if kind.fullmatch(trim.kind)]
        named = [key for key in trims if around.says(key, around.clause)] or trims
        if len(named) == 1 and not _OTHER_TRIM.search(around.clause):
            yield f"{named[0]}.length"

    return names


def _called(field: str) -> Callable[[Around], Iterator[str]]:
    """A number of this field: of the part that is named, else of those of the step, else of the only one."""

    def names(around: Around) -> Iterator[str]:
        tutorial = around.tutorial
        if field.startswith("new_"):
            yield from (f"{key}.{field}" for key in around.changes())
            return
        keys = [key for key in (*tutorial.bands, *tutorial.elastics, *tutorial.pieces) if around.says(key)]
        if len(keys) == 1:
            yield f"{keys[0]}.{field}"

    return names


def _swatch(around: Around) -> Iterator[str]:
    fabrics = [fabric for fabric in around.tutorial.fabrics.values() if fabric.swatch is not None]
    if len(fabrics) == 1:
        yield f"{fabrics[0].key}.swatch_stretched"


def _changed(around: Around) -> Iterator[str]:
    yield from (f"{key}.amount" for key in around.changes())


_AND = r"and\b(?!\s*[\d½¼¾⅛⅜⅝⅞])"
"""Another length of the same thing may follow: ``with 4 cm and 5 cm openings``."""
_CUT_OF = r"\bcut\b[^.;:]{0,30}"
_ELASTIC = r"[^.;]{0,30}\belastic\b"
PHRASES = (
    _phrase("", rf"{_BRACKET}seam[\s-]+allowances?\b", _allowances, "sew it with a 3/8 in seam allowance"),
    _phrase(rf"\bseam allowances?(?: \w+){{0,3}}? {_IS}", "", _allowances, "the seam allowance is 1 cm"),
    _phrase("", rf"{_BRACKET}hem(?: allowance)?\b(?!\s*(?:tape|line))", _hems, "a 1 in hem"),
    _phrase(r"\bhem allowance (?:of|is)(?: about)?\s*$", "", _hems, "a hem allowance of 1 in"),
    _phrase(
        "",
        rf"{_BRACKET}(?:wide\s+|deep\s+)?(?:casing|tunnel|channel)\b",
        _elastic("casing", "casing_depth"),
        "a 4 cm casing",
    ),
    _phrase(rf"\b(?:casing|tunnel|channel) {_IS}", "", _elastic("casing", "casing_depth"), "a casing of 4 cm"),
    _phrase(
        r"\bcut(?:ting)?\s*$",
        rf"{_BRACKET}(?:from )?(?:of )?(?:the |your )?elastic\b(?! (?:off|away)\b)",
        _elastic("cut_length"),
        "cut 63 cm of elastic",
    ),
    _phrase(rf"\bcut\b{_ELASTIC}[^.;]{{0,20}} to\s*$", "", _elastic("cut_length"), "cut the elastic to 63 cm"),
    _phrase("", r"[\s-]*wide[\s-]+elastic\b", _elastic("width"), "2.5 cm wide elastic"),
    _phrase(r"\bthe\s*$", r"[\s-]*elastic\b", _elastic("width"), "the 2.5 cm elastic", sure=False),
    _phrase(r"\belastic\b[^.;,]{0,20}$", r"\s*wide\b", _elastic("width"), "elastic 2.5 cm wide"),
    *(
        _phrase(ahead, behind, names, example, sure=sure)
        for names, sure in ((_lapped, True), (_lapped_here, False))
        for ahead, behind, example in (
            (r"\b(?:over)?lap(?:s|ped|ping)?\b[^.;]{0,30}\bby(?: about)?\s*$", "", "lap its ends by 2 cm"),
            (r"\boverlap of\s*$", "", "an overlap of 2 cm"),
            ("", rf"{_BRACKET}overlap\b", "a 2 cm overlap"),
        )
    ),
    *(
        _phrase(ahead, behind, _trim(words), example, sure=sure)
        for words, sure in _TRIMS
        for ahead, behind, example in (
            (rf"{_CUT_OF}\b(?:{words})\b[^.;:,]{{0,20}}$", rf"{_BRACKET}long\b", "cut the cord 40 in long"),
            (rf"{_CUT_OF}\b(?:{words})\b[^.;:,]{{0,20}} to\s*$", "", "cut the cord to 40 in"),
            (r"\bcut(?:ting)?\s*$", rf"{_BRACKET}(?:of )?(?:the |your )?(?:{words})\b", "cut 40 in of cord"),
        )
    ),
    _phrase("", BY.pattern, _sized("length", "width"), "cut the panel 40 × 50 cm"),
    _phrase(
        r"\d\S*\s*(?:cm|mm|in|inch|inches|[\"″])?\s*(?:[x×]|by)\s*$",
        "",
        _sized("length", "width"),
        "cut the panel 40 × 50 cm",
    ),
    *(
        _phrase("", rf"\s*(?:\([^()]{{1,30}}\)\s*)?{word}\b", _sized(way), f"cut the cuff 8 in {word}")
        for word, way in (("long", "length"), ("wide", "width"))
    ),
    *(
        _phrase(
            rf"\b{field.replace('_', ' ')}(?: (?:of|for) [^.;,]{{1,40}}?)?(?: in size [\w+]+)? {_IS}",
            "",
            _called(field),
            f"the {field.replace('_', ' ')} of the leg is 1 m",
        )
        for field in (
            "new_cut_length",
            "new_finished_length",
            "cut_length",
            "cut_width",
            "finished_length",
            "finished_width",
        )
    ),
    _phrase(
        r"\b(?:turn|fold|press|iron)(?:ed|ing|s)?\b[^.;:,]{0,40}\b(?:up|under|over|in|down|by)\s*$",
        "",
        _turned,
        "turn up 2 cm",
    ),
    _phrase(
        r"\b(?:turn|fold|press|iron)(?:ed|ing|s)?\b[^.;:,]{0,40}$",
        rf"{_BRACKET}(?:up|under|over|down|to the (?:wrong side|inside))\b",
        _turned,
        "press 2 cm to the wrong side",
    ),
    _phrase(
        r"\b(?:turn|fold|press|iron)(?:ed|ing|s)?\b[^.;:]*\bthen\s*$",
        rf"{_BRACKET}(?:again|once more|more)\b",
        _turned,
        "press 1 cm to the wrong side, then 2 cm again",
    ),
    _phrase(
        rf"{_TRIM}\b[^.;:]{{0,40}}\b(?:seams?|allowances?)\b[^.;:]{{0,30}}\b{_TO}",
        _NO_PLACE,
        _trimmed,
        "trim the seam allowances to 5 mm",
        less=True,
    ),
    _phrase(
        rf"{_TRIM}(?: (?:it|them|both|each|all|this|that|back|down)){{0,3}} {_TO}",
        _NO_PLACE,
        _trimmed,
        "trim it to 5 mm",
        sure=False,
        less=True,
    ),
    _phrase(r"\b(?:reach|stretch(?:es)?(?: it)?(?: easily)? to)\s*$", "", _swatch, "it should reach 15 cm", sure=False),
    _phrase(
        r"\b(?:lengthen|shorten|spread)(?:ed|ing)?\b[^.;]{0,30}\bby\s*$",
        "",
        _changed,
        "lengthen the leg by 4 cm",
        sure=False,
    ),
    _phrase(
        r"\b(?:sew|stitch|join|seam)(?:n|s|ed|ing)?\b[^.;:,]{0,40}\bwith\s*$",
        rf"{_BRACKET}(?:[.,;]|$|{_AND}|to\b(?! (?:spare|go)\b))",
        _seams,
        "sew around with 6 mm",
    ),
    _phrase(
        r"\b(?:sew|stitch|join|seam)(?:n|s|ed|ing)?\b[^.;:]{0,60}\b(?:with|using|at|taking)(?: a| an| about)?\s*$",
        rf"{_BRACKET}(?:seams?\b(?! (?:tape|line|ripper))|[.,;:)]|$|{_AND}|all\b)",
        _seams,
        "sew around at 6 mm",
        sure=False,
    ),
    _phrase(
        r"\b(?:sew|stitch|take)\b[^.;:]{0,30}\ban?\s*$",
        r"[\s-]*seams?\b(?! (?:tape|line|ripper))",
        _seams,
        "sew a 1 cm seam",
        sure=False,
    ),
    _phrase(
        r"\b(?:sew|stitch|join|seam)(?:n|s|ed|ing)?\b(?:[^.;:]|\.(?=\d)){0,60}$",
        rf"{_BRACKET}{_FROM_EDGE.pattern}",
        _seams_alone,
        "sew 1 cm from the raw edge",
        sure=False,
    ),
)
"""The first of these that fits and names a number is what a length is."""
