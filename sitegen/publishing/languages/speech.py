"""How a page says what the program makes: numbers, their names, workings, captions and labels.

English is the language in which all of it is made. Another language has a folder of tables beside this module:
``grammar.yaml`` with its habits, and files of English phrases, each with what the language says. What they lack stays
English and is marked as English. What authors name stays as they wrote it.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from functools import lru_cache
from pathlib import Path

from sitegen.findings import Collector
from sitegen.publishing.languages.foreign import foreign, unmarked
from sitegen.publishing.languages.phrases import Phrases, Say, fill
from sitegen.quantities import English, System, plural
from sitegen.reading import ContentFolder, Scalar
from sitegen.reading import Mapping as Keys
from sitegen.tutorial import words_of

ENGLISH_CODE = "en"
_TABLES = Path(__file__).resolve().parent / "tables"
_GRAMMAR = "grammar.yaml"
_NAMES = {
    "ca": "Català",
    "de": "Deutsch",
    "en": "English",
    "es": "Español",
    "fr": "Français",
    "gl": "Galego",
    "it": "Italiano",
    "nl": "Nederlands",
    "pt": "Português",
}
_BETWEEN_SENTENCES = re.compile(r"(?<=\.) (?=[A-ZÁÉÍÓÚÑ\d])")
_POINT = re.compile(r"(?<=\d)\.(?=\d)")


@dataclass(frozen=True, eq=False)
class Speech(English):
    """One language, and the names that one tutorial gives to its parts."""

    code: str = ENGLISH_CODE
    grammar: Mapping[str, str] = field(default_factory=dict)
    phrases: Phrases | None = None
    """None for English, which says everything as it was made."""
    names: Mapping[str, str] = field(default_factory=dict)
    """What parts and numbers of a tutorial are called in this language, by the English words for them."""
    untranslated: frozenset[str] = frozenset()
    """Words that the author wrote in the first language of the site alone."""
    first: str = ""
    """That language."""

    @property
    def as_made(self) -> bool:
        """Whether it is English, which says everything as it is made."""
        return self.phrases is None

    @property
    def metric_first(self) -> bool:
        """Whether its readers measure in centimetres, where an author says nothing else."""
        return self.grammar.get("units_first") == System.CENTIMETRES.value

    def amount(self, text: str) -> str:
        """With the decimal mark of the language. Inches stay fractions, and symbols of units are international."""
        mark = self.grammar.get("decimal_mark", ".")
        return text if mark == "." else _POINT.sub(mark, text).replace("sq in", "in²")

    def say(self, text: str) -> str:
        """The words in this language; marked as English where no table has them."""
        known = self._known(text)
        return foreign(text, ENGLISH_CODE) if known is None else known

    def own(self, text: str) -> str:
        """Words of the author: those of the trade in this language, all others as they were written.

        What was written in the first language alone is said only as a whole: a part of a sentence says nothing.
        """
        if text in self.untranslated:
            known = self._known(text, self._inner_or_marked)
            return foreign(text, self.first) if known is None or unmarked(known) != known else known
        known = self._known(text)
        return text if known is None else known

    def unmarked(self, text: str) -> str:
        """Without the marks of another language."""
        return unmarked(text)

    def several(self, count: int, name: str, amount: str) -> str:
        """``2 seam allowances of 3/8 in``; without the plural, where no table has it."""
        if self.phrases is None:
            return super().several(count, name, amount)
        things = self._known(plural(name))
        if things is not None:
            return fill(self.grammar["several"], count=str(count), things=things, amount=amount)
        return fill(self.grammar["several_times"], count=str(count), thing=self.say(name), amount=amount)

    def span(self, low: str, high: str) -> str:
        """``16 to 21``"""
        return super().span(low, high) if self.phrases is None else fill(self.grammar["span"], low=low, high=high)

    def number_name(self, name: str) -> str:
        """The name of a number in words: ``neckband.cut_length`` → neckband cut length."""
        return self.say(words_of(name))

    def of_tutorial(self, names: Mapping[str, str], numbers: Iterable[str], untranslated: frozenset[str]) -> Speech:
        """The same language with the names of one tutorial, and with all names of its numbers made out of them."""
        if self.phrases is None:
            return self
        numbers = tuple(numbers)
        own = {_words(name): said for name, said in names.items()}
        if self.first != self.code:
            keys = frozenset(_words(part) for name in numbers for part in name.split("."))
            untranslated = (untranslated | keys) - frozenset(own)
        plain = replace(self, names=own, untranslated=untranslated)
        return replace(plain, names={**{words_of(each): plain._number(each) for each in numbers}, **own})

    def sentences(self, text: str) -> str:
        """Sentences, each as a whole or, where no table has it, clause by clause."""
        if self.phrases is None or not text:
            return text
        return self._known(text) or " ".join(self._sentence(each) for each in _BETWEEN_SENTENCES.split(text))

    def _sentence(self, text: str) -> str:
        known = self._known(text)
        if known is not None:
            return known
        stop = "." if text.endswith(".") else ""
        clauses = self._each(text.removesuffix(stop), "; ")
        return foreign(text, ENGLISH_CODE) if clauses is None else f"{clauses}{stop}"

    def _each(self, text: str, sign: str) -> str | None:
        said = [self._known(part) for part in text.split(sign)]
        return None if None in said else sign.join(filter(None, said))

    def _inner(self, text: str) -> str:
        """Words inside a phrase: those of the author, or several clauses of the program."""
        if text in self.untranslated:
            return self.own(text)
        return self._known(text) or self._each(text, "; ") or self._each(text, ", ") or self.own(text)

    def _inner_or_marked(self, text: str) -> str:
        """The same for words that somebody wrote: what no table has is marked."""
        return self._known(text, self._inner_or_marked) or foreign(text, self.first)

    def _known(self, text: str, inner: Say | None = None) -> str | None:
        """The words as a name or a phrase, also without their capital or the article before them.

        ``inner`` says the words in the places of a phrase.
        """
        if self.phrases is None or not text:
            return text
        small = text[:1].lower() + text[1:]
        for words in dict.fromkeys((text, small, small.removeprefix("the "))):
            named = self.names.get(words)
            found = named if named is not None else self.phrases.find(words, inner or self._inner, self.amount)
            if found is not None:
                return found[:1].upper() + found[1:] if text[:1].isupper() else found
        return None

    def _number(self, name: str) -> str:
        """The field first, then what it belongs to, as a language with a word for ``of`` has it."""
        words = _words(name)
        if words in self.names or "." not in name:
            return self.own(words)
        change, then, number = name.partition(".then.")
        if then:
            return fill(self.grammar["number_after"], number=self._number(number), change=self.own(_words(change)))
        owner, _, last = name.rpartition(".")
        if owner == "body":
            return self._known(words) or self.own(_words(last))
        return fill(self.grammar["number_of"], number=self.own(_words(last)), owner=self._number(owner))


@lru_cache(maxsize=16)
def speech_in(code: str, first: str = "") -> Speech:
    """The language of this code, on a site whose first language is ``first``; English where it is not known."""
    plain = code.partition("-")[0].lower()
    if plain == ENGLISH_CODE or not (_TABLES / plain / _GRAMMAR).is_file():
        return Speech(first=first or code)
    grammar, table = tables_of(plain)
    return Speech(plain, grammar, Phrases(table), first=first or code)


def language_name(code: str) -> str:
    """What a language calls itself, its code where that is not known here."""
    return _NAMES.get(code.partition("-")[0].lower(), code)


def languages() -> tuple[str, ...]:
    """The codes of all languages that the program can speak."""
    return (ENGLISH_CODE, *sorted(each.name for each in _TABLES.iterdir() if (each / _GRAMMAR).is_file()))


def tables_of(code: str) -> tuple[dict[str, str], dict[str, str]]:
    """The habits of a language, and all its phrases by their English. Raises ValueError for what cannot be read."""
    collector = Collector()
    folder = ContentFolder(_TABLES / code, code)
    grammar: dict[str, str] = {}
    phrases: dict[str, str] = {}
    for file in folder.list("", collector, suffixes=(".yaml",)):
        keys = folder.yaml(file, collector)
        into = grammar if file == _GRAMMAR else phrases
        into.update(_texts(keys) if keys is not None else {})
    if collector.findings:
        raise ValueError("; ".join(f"{each.place}: {each.message}" for each in collector.findings))
    return grammar, phrases


def _texts(keys: Keys) -> dict[str, str]:
    return {entry.key.text: entry.value.text for entry in keys.entries if isinstance(entry.value, Scalar)}


def _words(name: str) -> str:
    return name.replace(".", " ").replace("_", " ")
