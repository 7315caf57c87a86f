"""Terms of the glossary in prose: the first on a card opens its meaning, and each shows its US or UK name by choice.

Where it is not plain that a word is the term (``turn the band up`` is no turn of a hem), it is left alone. The
contract with a theme: ``as`` holds the word as it was written, ``us`` and ``uk`` its other names, hidden till chosen; a
``span`` around a button is one that no line may cut.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator

from markupsafe import Markup, escape

from sitegen.publishing.views import GlossaryEntry
from sitegen.quantities import plural

_WORD = re.compile(r"[\w'-]+")
_NOT_BEFORE_A_NOUN = frozenset(
    _WORD.findall("to not you and or then it will can must do does they we never that which should may who")
)
_NOT_BEFORE_A_VERB = frozenset(_WORD.findall("a an the its each your this that of with in on one two every no"))
_NOT_AFTER_A_NOUN = frozenset(
    _WORD.findall("the a an it them your each both all this these up out down over back until as along in")
)
_STOPS = re.compile(r"[.,:;!?)]+")
_SENTENCE_END = re.compile(r"(?:^|[.:;!?(]\s)\s*$")


class Terms:
    """The names of all terms: their own, the US and the UK ones, and their plurals."""

    def __init__(self, entries: Iterable[GlossaryEntry]) -> None:
        entries = tuple(entries)
        claimed: dict[str, set[str]] = {}
        self._entries: dict[str, GlossaryEntry] = {}
        for entry in entries:
            for name in _names(entry):
                claimed.setdefault(name, set()).add(entry.term)
                self._entries[name] = entry
        for name, owners in claimed.items():
            if len(owners) > 1:
                del self._entries[name]
        for entry in entries:
            self._entries |= dict.fromkeys(_forms(entry.term), entry)
        longest_first = sorted(self._entries, key=lambda name: (-len(name), name))
        either = "|".join(re.escape(name).replace(r"\ ", r"\s+") for name in longest_first)
        self._pattern = re.compile(rf"(?<![\w-])(?:{either})(?![\w-])", re.IGNORECASE) if either else None

    def found_in(self, text: str, *, opens: bool) -> Iterator[tuple[int, int, GlossaryEntry]]:
        """Start, end and term of each term in a text, the longest first where several begin at one place.

        ``opens`` says whether the text begins a sentence.
        """
        for found in self._pattern.finditer(text) if self._pattern else ():
            entry = self._entries[_plain(found[0])]
            if _is_meant(entry, text, found, opens=opens):
                yield found.start(), found.end(), entry


class PageTerms:
    """The terms of one page, with the meanings that it must hold."""

    def __init__(self, terms: Terms) -> None:
        self._terms = terms
        self._used: dict[str, GlossaryEntry] = {}
        self.names_differ = False
        """Whether any word of the page has another name in the US than in the UK."""

    @property
    def used(self) -> tuple[GlossaryEntry, ...]:
        """Every term that opens its meaning somewhere on the page."""
        return tuple(self._used.values())

    def card(self) -> CardTerms:
        """What marks the terms of one card."""
        return CardTerms(self)

    def marked(self, text: str, seen: set[str], *, opens: bool) -> Iterator[Markup]:
        """The text in pieces of HTML; the terms in ``seen`` open nothing again."""
        done = 0
        for start, end, entry in self._terms.found_in(text, opens=opens):
            shown = self._by_choice(text[start:end], entry)
            yield escape(text[done:start])
            done = end
            if entry.term not in seen:
                seen.add(entry.term)
                self._used[entry.term] = entry
                shown = Markup('<button popovertarget="t-{}">{}</button>').format(entry.anchor, shown)
                # A line may end behind a button whatever follows, so a stop could stand alone on the next one.
                if stops := _STOPS.match(text, end):
                    done = stops.end()
                    shown = Markup("<span>{}{}</span>").format(shown, stops[0])
            yield shown
        yield escape(text[done:])

    def _by_choice(self, word: str, entry: GlossaryEntry) -> Markup:
        us, uk = (_shown_as(word, names) for names in (entry.us, entry.uk))
        if us == uk:
            return escape(word)
        self.names_differ = True
        as_classes = " ".join(["as", *(name for name, shown in (("us", us), ("uk", uk)) if shown == word)])
        others = Markup().join(
            Markup('<span class="{}" hidden>{}</span>').format(name, shown)
            for name, shown in (("us", us), ("uk", uk))
            if shown != word
        )
        return Markup('<span class="{}">{}</span>{}').format(as_classes, word, others)


class CardTerms:
    """Marks the terms in the texts of one card, in the order of reading."""

    def __init__(self, page: PageTerms) -> None:
        self._page = page
        self._seen: set[str] = set()

    def __call__(self, text: str, opens: bool) -> Markup:
        """The text as HTML with its terms marked. ``opens`` says whether it begins a sentence."""
        return Markup().join(self._page.marked(text, self._seen, opens=opens))


def _plain(name: str) -> str:
    return " ".join(name.lower().split())


def _forms(name: str) -> tuple[str, ...]:
    """A name and its simple plural."""
    plain = _plain(name)
    return (plain,) if plain.endswith("s") else (plain, plural(plain))


def _names(entry: GlossaryEntry) -> set[str]:
    names = [entry.term, *entry.us.split(","), *entry.uk.split(",")]
    return {form for name in names if name.strip() for form in _forms(name)}


def _shown_as(word: str, names: str) -> str:
    """The word under the first of these names, in the number and with the capital that it has; itself if it is one."""
    each = [_forms(name) for name in names.split(",") if name.strip()]
    if not each or any(_plain(word) in forms for forms in each):
        return word
    many = _plain(word).endswith("s") and not _plain(word).endswith("ss")
    shown = each[0][-1] if many else each[0][0]
    return shown[:1].upper() + shown[1:] if word[:1].isupper() else shown


def _is_meant(entry: GlossaryEntry, text: str, found: re.Match[str], *, opens: bool) -> bool:
    """Whether a single word is the term, told from the words beside it: a noun is not a verb, nor a verb a noun."""
    if " " in _plain(found[0]):
        return True
    before, after = text[: found.start()], text[found.end() :]
    words_before = _WORD.findall(before.rpartition(".")[2].lower())
    last = words_before[-1] if words_before else ""
    if entry.means.startswith("To "):
        return last not in _NOT_BEFORE_A_VERB
    following = _WORD.match(after.lstrip().lower()) if after[:1].isspace() else None
    starts = bool(_SENTENCE_END.search(before)) and (bool(before) or opens)
    return not (starts or last in _NOT_BEFORE_A_NOUN or (following is not None and following[0] in _NOT_AFTER_A_NOUN))
