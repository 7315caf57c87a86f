"""Which words say what in a sum that is told in words: each class of words has one symbol.

All of it is plain English of the trade, common practice without a source.
"""

from __future__ import annotations

from sitegen.prose.words import words

UPRIGHT, ACROSS = words("long tall high"), words("wide across broad")
"""Of a height and a width nobody makes a sum."""
CLASSES = {
    # plus, between two terms
    "+": "plus +",
    # brings one length to another
    "B": "brings bring bringing",
    # adds
    "A": "addition further extra another additional including add adding adds added allow allowing allows gain gains"
    " gained increase increased increases",
    # lengthens
    "l": "lengthen lengthening lengthened",
    # shortens
    "m": "shorten shortening shortened",
    # minus, between two terms
    "-": "minus less −",
    # takes off
    "T": "went spent subtract subtracting subtracted deduct deducting deducted remove removing removed lose loses"
    " off without trim trimming used removes lop lopped away trimmed trims gone chop chopped chops snip"
    " snipped reduce reduced reduces reducing lost eaten steal steals eat eats swallow swallows decrease"
    " decreased decreases shave shaved discard discarded waste wasted sacrifice dropped nip nipped pinch"
    " pinched swallowed absorbed absorbs consume consumes disappears vanishes",
    # makes
    "=": "= equals equal makes make making made gives give giving get gets getting comes come totals totalling"
    " totaling becomes arrive that's equalling sums result results works adds amounts amount yields produces reaches"
    " nets spells arrives mean",
    # has
    "g": "have has had you've got",
    # ease, which is what one length has more than another
    "E": "ease",
    # leaves
    "v": "rest surplus leftover unused balance leaves leave leaving left remain remains remaining spare remainder",
    # is
    "k": "is are was were be being it's measured measure measuring comes",
    # the reason, behind a result
    "r": "because since",
    # so
    "q": "now meaning accordingly so therefore hence means → thus",
    # what is done with the result: cut, buy, finish
    "u": "calls provide supply aside cut buy need needs needed finish finishes finished finishing ends end ended"
    " use uses asks ask cutting wants require requires takes take measures want took draw drawn draft tear rip grab"
    " prepare prepared reserve order ordered buys bought",
    # a dimension
    "W": "long wide deep high tall across broad thick",
    # in all
    "c": "altogether total together overall combined totals totalling totaling sum",
    # of
    "o": "of",
    # each
    "e": "each every per apiece everybody everyone",
    # an allowance
    "a": "allowance seam seamed hem turning casing facing heading",
    # allowances, of which there are mostly two
    "p": "allowances seams hems turnings",
    # equal parts
    "n": "parts pieces equal sections equally panels strips widths lots repeats repeat gap gaps spaces intervals"
    " interval even segments segment portions portion slices lots",
    # divides
    "/": "sharing divide divided dividing split splits shared share ÷ distribute distributed slice sliced",
    # doubles
    "D": "opens opened unfold unfolds unfolded twice double doubled doubling doubles twofold",
    # halves
    "H": "halve halved halving halves",
    # times
    "*": "times × * multiplied multiply",
    # by
    "b": "by over",
    # to
    "t": "to",
    # from
    "f": "from",
    # in
    "i": "in into",
    # and
    "&": "and &",
    # difference
    "d": "difference loss saving saves saved shrinkage",
    # what is wanted
    "y": "wanted should instead target wish supposed meant ought goal desired",
    # more
    ">": "longer wider bigger larger deeper taller fuller roomier broader",
    # again, as in “half as much again”
    "Q": "again",
    # less
    "<": "negative shorter narrower smaller shallower fewer tighter slimmer",
    # spaced
    "z": "evenly spaced space spacing",
    # things that stand in a row, with one gap fewer between them
    "j": "apart flag flags loop loops pleat pleats tuck tucks carriers button buttons buttonhole buttonholes mark"
    " marks eyelets pins hooks snaps rings ties straps",
    # stretches or shrinks
    "h": "stretch stretches stretched stretching shrink shrinks shrank shrunk",
}
"""The words of each symbol."""
