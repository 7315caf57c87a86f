"""Words of the trade that beginners do not know, each with a line that explains it.

That terms are left unexplained is what learners complain of most (three learner articles, names withheld); which words
they are is common practice, no source.
"""

from __future__ import annotations

import re
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class TradeWord:
    """A word of the trade: its name in a glossary, how it looks in a text, and what it means."""

    name: str
    pattern: re.Pattern[str]
    means: str


def _word(name: str, pattern: str, means: str) -> TradeWord:
    # A blank of a pattern may be the end of a line in the text.
    spaced = pattern.replace("[- ]", r"[-\s]").replace(" ", r"\s+")
    return TradeWord(name, re.compile(rf"\b(?:{spaced})\b", re.IGNORECASE), means)


TRADE_WORDS = (
    _word(
        "backstitch", r"back[- ]?stitch(?:es|ed|ing)?", "A few stitches sewn backwards, so that a seam stays closed."
    ),
    _word("baste", r"bast(?:e|es|ed|ing)", "To sew with long, loose stitches that are taken out later."),
    _word("bias", r"bias", "The slanting direction of woven cloth, in which it stretches."),
    _word("casing", r"casings?", "A tunnel of cloth for elastic or a cord."),
    _word(
        "clip",
        r"clip(?:s|ped|ping)? (?:into|(?:the |each |all )?(?:curve|corner|seam allowance|allowance)s?)",
        "To snip into a seam allowance, so that a curve lies flat.",
    ),
    _word("crotch point", r"crotch points?", "The point between the legs at which the inseams meet the rise."),
    _word("dart", r"darts?", "A fold sewn to a point, which shapes flat cloth."),
    _word(
        "ease",
        r"(?:wearing|design|negative) ease|of ease|eas(?:e|es|ed|ing) (?:in|into)",
        "Room: how much larger a garment is than the body.",
    ),
    _word("edge stitch", r"edge[- ]?stitch(?:es|ed|ing)?", "A row of stitches very close to an edge or a fold."),
    _word(
        "facing",
        r"facings|(?:an?|the|neck|armhole|waist) facing(?! (?:you|each|up|down))",
        "A piece sewn to an edge and turned inside to finish it.",
    ),
    _word("feed dogs", r"feed dogs?", "The small teeth under the foot of a machine that move the cloth."),
    _word(
        "grade a seam",
        r"grad(?:e|es|ed|ing) (?:the |both |these |your )?(?:seam allowances?|seams?|allowances?|layers?)",
        "To trim the layers of a seam allowance to different widths.",
    ),
    _word(
        "grain line", r"grain[- ]?lines?|straight[- ](?:of[- ])?grain|cross[- ]?grain", "The way of the long threads."
    ),
    _word("interfacing", r"interfac(?:ing|ings|ed)", "A layer that makes cloth firmer, often stuck on with an iron."),
    _word("nap", r"(?:with|without|with a|has a|no|the|one-way) nap", "The direction of a pile or of a print."),
    _word("notch", r"notch(?:es|ed)?", "A short mark at an edge. Edges that belong together have the same notches."),
    _word(
        "overlock", r"overlock(?:er|ers|ed|ing)?|serg(?:er|ers|ed|ing)", "A machine that sews over and trims an edge."
    ),
    _word("pivot", r"pivot(?:s|ed|ing)?", "To turn the cloth with the needle down in it."),
    _word("placket", r"plackets?", "A finished slit in a garment, so that it can be put on."),
    _word("raw edge", r"raw edges?", "An edge of cloth as it was cut."),
    _word("seam allowance", r"seam allowances?", "The cloth between the stitches and the raw edge."),
    _word("selvage", r"selv(?:age|ages|edge|edges)", "The firm woven edge on each side of the cloth."),
    _word(
        "staystitch", r"stay[- ]?stitch(?:es|ed|ing)?", "A row of stitches that keeps a curved edge from stretching."
    ),
    _word("tension", r"tensions?", "How tightly the machine pulls the thread."),
    _word("toile", r"toiles?|muslins?", "A trial garment in cheap cloth."),
    _word("topstitch", r"top[- ]?stitch(?:es|ed|ing)?", "A row of stitches that shows on the right side."),
    _word(
        "true",
        r"truing|trued|true (?:it|up|them)|true (?:the|this|that|each|both) (?:edge|seam|line|side)s?",
        "To draw an edge again as one smooth line.",
    ),
    _word("understitch", r"under[- ]?stitch(?:es|ed|ing)?", "A row of stitches that keeps a facing inside."),
    _word("yoke", r"yokes?", "A fitted piece at the shoulders or hips from which the rest hangs."),
)
