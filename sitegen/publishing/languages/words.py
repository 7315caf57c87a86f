"""The words of templates: read from ``words/en.yaml`` and its like in the folder of a theme, and from ``words.yaml``.

Texts stand in groups. ``{name}`` is a place for a value; a text of two forms, ``{one: "{count} step", other: "{count}
steps"}``, is told by its ``count``. What a language lacks is said in English and marked as such.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from markupsafe import Markup, escape

from sitegen.findings import Collector, Place, nearest
from sitegen.publishing.json_attribute import json_in_attribute
from sitegen.publishing.languages.foreign import foreign
from sitegen.publishing.languages.phrases import PLACE, places_of
from sitegen.publishing.languages.speech import ENGLISH_CODE
from sitegen.reading import ContentFolder, Node, Scalar
from sitegen.reading import Mapping as Keys

ONE, OTHER = "one", "other"
COUNT = "count"
_EXAMPLE = 'front: {tutorials: Patterns, steps: {one: "{count} step", other: "{count} steps"}}'


@dataclass(frozen=True, slots=True)
class Text:
    """A text of a theme, in one form or in two, and where it stands."""

    other: str
    one: str
    place: Place

    @property
    def places(self) -> frozenset[str]:
        """The names of its places, in either form."""
        return frozenset((*places_of(self.other), *places_of(self.one)))


Texts = Mapping[str, Text]
"""By their keys, ``front.tutorials``."""


class Words:
    """What templates call: ``t("front.steps", count=3)``. Values are escaped unless they are ``Markup``."""

    def __init__(self, texts: Texts, english: Texts, language: str, page: str) -> None:
        self._texts = texts
        self._english = english
        self._language = language
        self._page = page

    def __call__(self, key: str, **values: object) -> Markup:
        """A text with its places filled. Raises KeyError for a key or a place that there is not."""
        text, code = self._found(key)
        form = text.one if values.get(COUNT) == 1 else text.other
        parts = PLACE.split(form)
        said = (escape(part) if index % 2 == 0 else escape(values[part]) for index, part in enumerate(parts))
        return Markup(self._marked("".join(said), code))

    def group(self, name: str) -> Markup:
        """The texts of a group by their last names, as JSON for a script, in an attribute in single quotation marks."""
        found = {}
        for key in self._english:
            group, _, last = key.partition(".")
            if group == name:
                text, code = self._found(key)
                found[last] = self._marked(text.other, code)
                if text.one != text.other:
                    found[f"{last}_one"] = self._marked(text.one, code)
        return json_in_attribute(found)

    def _found(self, key: str) -> tuple[Text, str]:
        if key in self._texts:
            return self._texts[key], self._language
        return self._english[key], ENGLISH_CODE

    def _marked(self, text: str, code: str) -> str:
        return text if code == self._page or self._page.startswith(f"{code}-") else foreign(text, code)


def words_in(texts: Mapping[str, Texts], language: str) -> Words:
    """The words of a language out of those of a theme: of the very one, else of the one without its region."""
    plain = language.partition("-")[0].lower()
    own = texts.get(language) or texts.get(plain) or {}
    return Words(own, texts.get(ENGLISH_CODE, {}), language if own else ENGLISH_CODE, language)


def read_texts(folder: ContentFolder, path: str, collector: Collector) -> dict[str, Text]:
    """The texts of a file by their keys; what is not understood is reported and left out."""
    keys = folder.yaml(path, collector)
    found: dict[str, Text] = {}
    for group in keys.entries if keys is not None else ():
        if not isinstance(group.value, Keys):
            _not_understood(group.value, collector)
            continue
        for entry in group.value.entries:
            text = _text(entry.value)
            if text is None:
                _not_understood(entry.value, collector)
            else:
                found[f"{group.key.text}.{entry.key.text}"] = text
    return found


def _text(node: Node) -> Text | None:
    if isinstance(node, Scalar):
        return Text(node.text, node.text, node.place)
    if isinstance(node, Keys) and set(node.keys) == {ONE, OTHER}:
        one, other = (entry.value for name in (ONE, OTHER) if (entry := node.get(name)) is not None)
        if isinstance(one, Scalar) and isinstance(other, Scalar):
            return Text(other.text, one.text, node.place)
    return None


def _not_understood(node: Node, collector: Collector) -> None:
    message = f"Expected groups of texts, each text plain or with one and other. Example: {_EXAMPLE}"
    collector.wrong("theme-words", node.place, message)


def fits(texts: Texts, english: Texts, collector: Collector) -> None:
    """Report texts that no template asks for, and places that the English text does not have."""
    for key, text in texts.items():
        model = english.get(key)
        if model is None:
            near = nearest(key, english, most=1)
            hint = f" Did you mean {near[0]}?" if near else ""
            collector.wrong("theme-words", text.place, f"No page has a text called {key}.{hint}")
            continue
        for name in sorted(text.places - model.places):
            known = ", ".join(f"{{{each}}}" for each in sorted(model.places)) or "no place"
            message = f"The text {key} has no place {{{name}}}; there is {known}."
            collector.wrong("theme-words", text.place, message, said=f"{{{name}}}")
