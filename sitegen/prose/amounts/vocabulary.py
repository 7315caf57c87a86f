"""Which words tie an amount to others: each class of words has one symbol. Plain English, common practice."""

from __future__ import annotations

from fractions import Fraction

from sitegen.prose.words import words

_CLASSES = {
    # is, which alone tells no result
    "i": "is are was were be been it's costs cost",
    # makes
    "=": "= that's thats comes come came makes make making made gives give equals equal works becomes bringing brings",
    # so
    "s": "so hence therefore thus means → meaning",
    ":": ": —",
    ",": ", ;",
    ".": ". ! ? …",
    "|": "|",
    "(": "( [",
    ")": ") ]",
    # in all
    "c": "total altogether overall combined sum totalling totaling totals",
    # leaves
    "v": "leaves leaving",
    # is left, behind an amount
    "w": "left leftover remaining owing owed due spare change",
    # each
    "e": "each every apiece",
    "&": "and & plus +",
    "-": "minus less − deduct",
    "/": "divide divided dividing split splitting shared share sharing ÷",
    "*": "times × * multiplied by",
    # off
    "o": "off discount reduction",
    "a": "at @",
    "f": "for",
    "A": "across",
    "D": "down",
    # pay
    "p": "pay pays paid spend spent",
}
SYMBOL_OF = {word: symbol for symbol, told in _CLASSES.items() for word in told.split()}
"""The symbol of each word or sign; where one word stands in two classes the later one holds."""
PAIRS = {
    ("in", "all"): "c", ("in", "total"): "c", ("all", "in"): "c", ("all", "told"): "c", ("all", "up"): "c",
    ("both", "on"): "c", ("both", "for"): "c", ("for", "both"): "c",
    ("to", "spare"): "w", ("left", "with"): "v", ("leave", "you"): "v", ("that", "is"): "=", ("that", "was"): "=",
    ("which", "is"): "=", ("which", "was"): "=",
    ("you're", "at"): "=", ("we're", "at"): "=", ("i'm", "at"): "=", ("you're", "up"): "=", ("was", "out"): "=",
    ("us", "at"): "=", ("us", "to"): "=", ("ran", "me"): "=", ("ran", "to"): "=", ("runs", "to"): "=",
    ("set", "me"): "=",
}  # fmt: skip
"""Pairs of words that are one: ``in all``, ``that is``."""
MONEY_WORDS = {
    "dollar": 1, "dollars": 1, "bucks": 1, "buck": 1, "quid": 1, "euro": 1, "euros": 1, "usd": 1, "gbp": 1, "eur": 1,
    "cent": 100, "cents": 100, "pence": 100, "p": 100,
}  # fmt: skip
"""The words behind a price, with how many of them make one of the main unit."""
CHARGE = words("ask asked charge charged charges want wants cost costs pay pays paid spent price owe")
"""Words shortly before ``12 pounds for the hem`` by which these are money."""
SIGNS = frozenset("$£€")
MINUTES_IN = {
    "second": Fraction(1, 60), "minute": Fraction(1), "hour": Fraction(60), "day": Fraction(1440),
    "week": Fraction(10080),
}  # fmt: skip
"""How many minutes a unit of time has."""
SHORT_TIMES = {"min": "minute", "hr": "hour", "sec": "second"}
VOLUMES = words("litre litres liter liters l ml pint pints")
HEDGES = words(
    "about around approximately roughly nearly almost approx circa ish under over ~ ≈ maybe like say least most close"
    " perhaps probably allow allowing budget charge charges ask asks asking collect bring reckon plan call sell sells"
    " round rounded buy order"
)
"""Words before an amount that make it a rounded one, or one that is chosen and not worked out."""
MORE_BEHIND = words(
    "with including incl plus after counting extra spare tax shipping vat postage instead cheaper dearer more less than"
    " off"
)
"""Words behind a result that take more into it than was told."""
MORE_COUNTED = words("with including incl plus after postage vat tax tips")
"""Words in a sentence behind a list that count in more than was listed."""
BUNDLE = words("set bundle deal offer special kit pack")
"""Words of things that cost less together than one by one."""
SUBJECTS = words(
    "that it this the whole lot piece all everything you we i she he they to in my our your which for them those these"
    " of um uh like just a at on if go its cost cloth fabric bought got get needed needs need have had took take made"
    " make sold sell used use bill sum price will would should could then"
)
"""Words between a price for one and the price for all that speak of nothing else."""
CALLED_TOGETHER = words(": , . they they're that's it's that is are come comes makes make for")
"""Words behind ``together`` that make it ``in all``."""
NO_NOUN = words(
    "a an the out and or of to in on at for so is are was with by across down each per from times that that's it it's"
    " your my his her our their us them all plus minus less over off but if when because i you we they he she go which"
    " apiece more not"
)
"""Words behind a number that name nothing that is counted."""
NO_THING = words("lot bit little few while time total good new big small large day week month year night ago bargain")
"""Words behind ``a`` that name nothing a price is the price of: ``$9 a week ago``."""
LENGTH_NAMES = {
    "metre": "M", "metres": "M", "meter": "M", "meters": "M", "m": "M", "yard": "YD", "yards": "YD", "yd": "YD",
    "foot": "FT", "ft": "FT", "inch": "IN", "cm": "CM",
}  # fmt: skip
"""The lengths by which cloth is sold, with the names of their units."""
HAS = words("has have takes take needs need uses use gets get holds wants contains")
"""Words behind a thing that tell how many of something it takes."""
PEOPLE = words("pupil student child person head participant learner sewer guest kid girl boy member")
"""Those among whom a cost is shared out."""
TOTAL_ROW = words("total altogether sum totals")
"""Words of a row that tells what the rows before it come to."""
COMPLETE_ROW = words("complete")
"""Words of a row that may tell what the rows before it come to."""
THE_WHOLE = words("whole lot all everything both")
"""Words behind ``That's £22 for the`` by which the price is that of all that was listed."""
MANY_IN = {"pair": 2, "both": 2, "dozen": 12}
"""How many things have one price: ``so £70 for the pair``."""
RATE_WORDS = words("rate pace speed")
"""Words behind ``at that`` that point back to what one takes."""
AHEAD = (("in", "front"), ("better", "off"), ("ahead",), ("cheaper",))
"""Words behind a price that tell it is the difference of two others."""
SAVED = words("save saves saved saving")
"""Words before such a price."""
TAKEN_OFF = words("less minus discount deposit off refund voucher paid")
"""Words of a row whose price is taken off and not added."""
ONE_OF_EACH = words("a per each every")
"""Words before a thing of which there are several alike: ``6 from each strip``."""
IN_A_ROW = (("side", "by", "side"), ("to", "a", "row"), ("in", "a", "row"), ("next", "to", "each"))
THESE = (("them",), ("these",), ("those",))
"""Words that point back to what was counted last."""
ACROSS = words("across wide")
UPRIGHT = words("down long high deep tall")
"""Words behind the two counts of a grid: ``8 blocks wide and 10 long``."""
WHERE = words("down on in for at along around across inside behind")
"""Words behind a count that tell where these are, and not what."""
SEVERAL = {"children": "child", "people": "person"}
"""Words for several that are not made with an s."""
DONE = words("cut made bought sewed sewn used had sold drew printed ordered took but only free because")
"""Words that tell what was done, or another thing, where a result might be read."""
LABELS = words("room page lesson table week step sheet unit number no part day session size row figure chapter no.")
"""Words before a number that only names something."""
FILLERS = words("um uh er exactly just only")
"""Words between ``is`` and a result that say nothing."""
EVERYBODY = words("everybody everyone each every per")
"""Words before what one of several does or has."""
ONE_THING = words("a an one each every")
"""Words before the name of a single thing."""
REST = words("rest remainder else")
"""Words for a part of which the amount is not told."""
TAKES = words("use uses used take takes took need needs want wants")
"""Words between so many things and how many of something they use up."""
PACKS = words("pack packs packet packets card cards box boxes bag bags sheet sheets set sets")
"""Things in which others are sold together."""
ADDED = (("add",), ("adding",), ("throw",), ("with",), ("put",))
"""With what a sentence opens that adds more to a price told before."""
SAVING = words("saving discount reduction")
"""Words for what a percentage takes off: ``a saving of £15``."""
MASSES = {"kilo": "kg", "kilogram": "kg", "kg": "kg", "lb": "pound", "pound": "pound", "ounce": "oz", "oz": "oz"}
"""The weights by which things are sold, with the names of their units."""
CHEAPER = words("because if instead deal discount discounted reduced off since as")
"""Words behind a price for several by which it is a lower one."""
WHEN = words("last this today yesterday tonight tomorrow earlier later before yesterday's next")
"""Words behind a count that tell when, and not what."""
SORTS = words("who who'd who've that more others")
"""Words behind a count that tell which of those counted before these are."""
USED = words("used use sold gave lost broke broken spoilt lent posted sent packed")
"""Words before how many of some things are gone."""
OF_THOSE = (("to", "make"), ("to", "do"), ("to", "sew"), ("of", "them"), ("to", "go"))
"""Words behind a count by which it counts what was named before."""
TO_A = words("to in on of")
"""Words between so many things and the one of several that has them: ``eight blocks to a row``."""
SPARES = words("over luck spoil spare spares")
"""Words behind a count by which some of it are to spare."""
SKIPS = words("skipping skip without not except between more extra leaving")
"""Words before ``both ends`` by which nothing stands there, or something else."""
FOUND = words("found got earned given won of which borrowed")
"""Words between prices by which one of them is not spent."""
BOTH_NAMED = words("a an one the of pair pairs both my your our single each that together")
"""Words beside the names of things of which the prices are summed."""
FROM = words("from of to with by")
"""Words behind a count that tell whose these are, or where they come from, and not what."""
ENOUGH = words(
    "enough plenty spare do will means gives over spoil luck should case cover least max maximum limit instead"
)
"""Words behind a count by which it is chosen and not worked out."""
HAD = words("have had has got i've we've you've found cut done made with finished sewn own already")
"""Words before how many there are of those that are wanted."""
TO_GO = words("to more left short still missing remain remaining")
"""Words behind how many are still wanting."""
TOTAL_OPENS = words("spent outgoings takings income outlay paid bill sum receipts expenses costs")
"""Words with which a sentence opens that tells what prices come to."""
TAX = words("gst vat tax deposit commission service duty surcharge")
"""Words for what is so many percent of a price."""
PERCENT_TAKEN = words("off discount less reduction sale cheaper reduced")
PERCENT_ADDED = words("over extra more plus added add vat gst tax on")
"""Words near a percentage by which it is taken off a price, or added to it."""
AFTER_PERCENT = words("then now cost costs paid pay pays rang came comes net to drops down")
"""Words between a price and what it is with so many percent off."""
GOES = words("goes go went profit towards toward clear banked")
"""Words behind a price that tell where the rest of another one goes."""
BOTH_ENDS = words("ends end last")
"""Words by which the first and the last of a row are counted both."""
NO_WASTE = words("waste nothing exactly even evenly wasted")
"""Words by which a length comes out even."""
PIECES = words("length piece bit strip section tie loop tab part chunk square rectangle circle bow")
"""What a length is cut into."""
GETS = words("get gets give gives make makes yield yields have cut")
"""Words between a length and what it is cut into."""
