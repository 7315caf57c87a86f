"""The keys of one part of a file: known ones are read, all others reported."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator

from sitegen.findings import nearest
from sitegen.reading import Empty, Entry, Mapping, Node, Sequence
from sitegen.sewing import known_name
from sitegen.tutorial.build.builder import NAME, Builder, as_name, capital, short
from sitegen.tutorial.build.commas import one_or_several, read_as_several
from sitegen.tutorial.build.translations import in_language
from sitegen.tutorial.model import Accepted, Claim, Lengths, OnlyIn, Prose, Words

_READ = frozenset(("title", "level", "item", "for", "note", "shows", "needs", "tools"))
"""Keys whose short texts are read by students, and want a translation where a site has several languages."""


def _is_list(node: Node) -> bool:
    """Whether a text by language holds lists: ``{en: [pins, scissors], es: [alfileres, tijeras]}``."""
    return isinstance(node, Mapping) and any(isinstance(entry.value, Sequence) for entry in node.entries)


def _plainly(key: str) -> str:
    """A key in small letters, with an underscore for each run of blanks or dashes in it."""
    return re.sub(r"[\s\-‐-–]+", "_", key.strip().lower())


class Fields:
    """The keys of one part: known ones are read, unknown ones reported with the nearest."""

    def __init__(self, builder: Builder, node: Mapping, what: str, prefix: str = "") -> None:
        self.builder = builder
        self.node = node
        self.what = what
        self.prefix = prefix
        self._known: set[str] = set()
        self._written_otherwise: set[str] = set()

    def get(self, key: str) -> Node | None:
        """The value behind a key, None when the key is absent; an empty value is reported."""
        self._known.add(key)
        entry = self._entry(key)
        if entry is None:
            return None
        if isinstance(entry.value, Empty):
            self.builder.wrong("empty-value", entry.key.place, f"{key} of {self.what} has no value.", said=key)
            return None
        return entry.value

    def _entry(self, key: str) -> Entry | None:
        """What stands under a key. One that is written in another way, ``seam allowance`` or ``Seam-Allowance``, is
        reported and read all the same; else all that follows from it would be reported too."""
        own = self.node.get(key)
        if own is not None:
            return own
        other = next((each for each in self.node.entries if _plainly(each.key.text) == key), None)
        if other is not None and other.key.text not in self._written_otherwise:
            self._written_otherwise.add(other.key.text)
            self.builder.wrong(
                "unknown-key",
                other.key.place,
                f"{capital(self.what)} has no key “{short(other.key.text)}”. It is read as {key}, which is how it is"
                " written.",
                said=other.key.text,
                should_be=key,
            )
        return other

    def required(self, key: str, example: str) -> Node | None:
        """The value behind a key that must be there."""
        value = self.get(key)
        if value is None and self._entry(key) is None:
            self.builder.wrong(
                "key-missing",
                self.node.place,
                f"{capital(self.what)} lacks {key}. Example: {example}",
                should_be=example,
            )
        return value

    def required_names(self, key: str, example: str) -> Node | None:
        """The one or several names behind a key that must be there; an empty list, which names nothing, is reported."""
        value = self.required(key, example)
        if isinstance(value, Sequence) and not value.items:
            self.builder.wrong(
                "empty-value", value.place, f"{key} of {self.what} is an empty list. Example: {example}", said="[]"
            )
            return None
        return value

    def text(self, key: str, example: str, *, required: bool = False) -> str:
        """A short text, empty when absent."""
        words = self.words(key, example, required=required)
        return words.text if words else ""

    def words(self, key: str, example: str, *, required: bool = False) -> Words | None:
        """A short text with its place."""
        node = self.required(key, example) if required else self.get(key)
        return self.builder.words(node, "a text", example, read=key in _READ) if node is not None else None

    def stitch(self, example: str) -> Words | None:
        """The stitch of a seam or hem, by its plain name where it is a known one."""
        node = self.get("stitch")
        said = self.builder.words(node, "a stitch", example) if node is not None else None
        return Words(known_name(said.text), said.place) if said is not None else None

    def flag(self, key: str) -> bool:
        """Yes or no, no when absent."""
        node = self.get(key)
        return bool(self.builder.yes_or_no(node, f"{key}: true")) if node is not None else False

    def choice(self, key: str, choices: tuple[str, ...], example: str) -> str:
        """One of a few words, empty when absent."""
        node = self.get(key)
        words = self.builder.choice(node, choices, example) if node is not None else None
        return words.text if words is not None else ""

    def prose(self, key: str) -> Prose | None:
        """Running text."""
        node = self.get(key)
        return self.builder.prose(node) if node is not None else None

    def words_list(self, key: str, example: str, *, named: bool = False, things: bool = False) -> tuple[Words, ...]:
        """A list of short texts. Of those that are ``named``, known words or names, none has a comma in it, and of
        names of ``things`` hardly one: a text with commas is read as several of them."""
        node = self.get(key)
        if node is None:
            return ()
        listed = in_language(node, self.builder.languages, self.builder.collector)[0] if _is_list(node) else node
        if named:
            items = self.builder.entries(listed)
        elif things:
            items = read_as_several(listed, self.builder.collector)
        else:
            one_or_several(listed, self.builder.collector)
            items = listed.items if isinstance(listed, Sequence) else (listed,)
        read = key in _READ and listed is node
        return tuple(words for item in items if (words := self.builder.words(item, "a text", example, read=read)))

    def mappings(self, key: str, example: str) -> list[Mapping]:
        """Keys with values: one such value, or a list of them."""
        node = self.get(key)
        if node is None:
            return []
        found = []
        for item in node.items if isinstance(node, Sequence) else (node,):
            if isinstance(item, Mapping):
                found.append(item)
            else:
                self.builder.not_this(item, "keys with values", example)
        return found

    def lengths(self, key: str, example: str = "", *, required: bool = False, bolt: bool = False) -> Lengths | None:
        """Lengths by size, from the file or from the size table, but not from both."""
        name = f"{self.prefix}{key}"
        self.builder.could_have.add(name)
        node = self.required(key, example) if required and name not in self.builder.table else self.get(key)
        return self.lengths_of(node, name, bolt=bolt)

    def lengths_of(self, node: Node | None, name: str, *, bolt: bool = False) -> Lengths | None:
        """The lengths of a value, or of the row of this name in the size table."""
        row = self.builder.table.take(name)
        self.builder.could_have.add(name)
        if node is None:
            return self.builder.lengths(row.value, name, bolt=bolt) if row else None
        if row:
            self.builder.wrong(
                "given-twice",
                node.place,
                f"{name} is given here and in the size table at line {row.key.place.line}. Keep one of them.",
            )
        return self.builder.lengths(node, name, bolt=bolt)

    def accept(self) -> None:
        """The findings that the author accepts in this file, each with what it says and a reason."""
        node = self.get("accept")
        example = "accept: [{check: unit-pair, said: 25.75 in (64.8 cm), reason: quoted from the regulation}]"
        for item in () if node is None else node.items if isinstance(node, Sequence) else (node,):
            if not isinstance(item, Mapping):
                self.builder.not_this(item, "check, said and reason", example)
                continue
            inner = Fields(self.builder, item, "an accepted finding")
            check, said, reason = (inner.text(key, example, required=True) for key in ("check", "said", "reason"))
            inner.finish()
            if check and said and reason:
                self.builder.accepted.append(Accepted(check, said, reason, item.place))

    def only_in(self) -> OnlyIn:
        """In which choices of the views this part belongs to the garment; nothing said means in all."""
        node = self.get("only_in")
        example = "only_in: {neck: hood}"
        if node is None:
            return {}
        if not isinstance(node, Mapping):
            self.builder.not_this(node, "views with their choices", example)
            return {}
        found: dict[str, tuple[str, ...]] = {}
        for entry in node.entries:
            choices = self.builder.views.get(entry.key.text)
            if choices is None:
                self.builder.unknown("view", entry.key, self.builder.views)
                continue
            items = self.builder.entries(entry.value)
            named = [words for item in items if (words := self.builder.words(item, "a choice", example))]
            for words in named:
                if words.text not in choices:
                    self.builder.unknown("choice", words, choices)
            found[entry.key.text] = tuple(words.text for words in named if words.text in choices)
        return found

    def claims(self, part: str, keys: Iterable[str]) -> None:
        """Numbers that the author wrote although they are computed."""
        for key in keys:
            lengths = self.lengths(key)
            if lengths is not None:
                self.builder.claims.append(Claim(lengths, part))

    def names(self) -> dict[str, str]:
        """What parts are called on the page, by their names: ``names: {neckband: {en: neckband, es: tira}}``."""
        node = self.get("names")
        if node is None:
            return {}
        example = "names: {neckband: {en: neckband, es: tira del escote}}"
        if not isinstance(node, Mapping):
            self.builder.not_this(node, "names of parts, each with what it is called", example)
            return {}
        words = {entry.key.text: self.builder.words(entry.value, "a name", example) for entry in node.entries}
        return {name: said.text for name, said in words.items() if said is not None}

    def parts(self, key: str, example: str) -> Iterator[tuple[str, Entry, Fields]]:
        """Named parts, each a mapping of its own: ``bands: {neckband: {…}}``."""
        node = self.get(key)
        if node is None:
            return
        if not isinstance(node, Mapping):
            self.builder.not_this(node, "names, each with its keys", example)
            return
        for entry in node.entries:
            name = entry.key.text
            if not NAME.fullmatch(name):
                self.builder.wrong(
                    "bad-name",
                    entry.key.place,
                    f"“{short(name)}” cannot be a name here. Use small letters, digits and underscores,"
                    " a letter first. Example: front_yoke",
                    said=name,
                    should_be=as_name(name),
                )
                name = self.meant(name, node)
            if isinstance(entry.value, Mapping):
                yield name, entry, Fields(self.builder, entry.value, f"{key.removesuffix('s')} {name}", f"{name}.")
            else:
                self.builder.not_this(entry.value, f"the keys of {name}", example)

    def meant(self, name: str, among: Mapping) -> str:
        """A name as it is to be put, by which all else calls the part most likely, unless another one has it."""
        meant = as_name(name)
        taken = {entry.key.text for entry in among.entries}
        return meant if NAME.fullmatch(meant) and meant not in taken else name

    @property
    def unknown(self) -> list[Entry]:
        """The keys that nobody has asked for so far, with what stands under them."""
        known = self._known | self._written_otherwise
        return [entry for entry in self.node.entries if entry.key.text not in known]

    def finish(self) -> None:
        """Report every key that nobody asked for."""
        unknown = self.unknown
        if unknown and self.prefix:
            self.builder.gaps.add(self.prefix.rstrip("._"))
        elif unknown:
            self.builder.gaps.update(entry.key.text for entry in unknown)
        sizes = [entry for entry in unknown if entry.key.text in self.builder.sizes]
        if sizes:
            self._sizes_as_keys(sizes)
        for entry in unknown:
            key = entry.key.text
            if entry in sizes:
                continue
            if isinstance(entry.value, Empty) and re.match(r"[\d½¼¾⅛⅜⅝⅞]", key):
                self._row_without_quotes(entry)
                continue
            near = nearest(key, self._known, most=1)
            hint = f" Did you mean {near[0]}?" if near else f" Known are: {', '.join(sorted(self._known))}."
            self.builder.wrong(
                "unknown-key",
                entry.key.place,
                f"{capital(self.what)} has no key “{short(key)}”.{hint}",
                said=key,
                should_be=near[0] if near else "",
            )

    def _sizes_as_keys(self, entries: list[Entry]) -> None:
        """Values by size stand below the number that they are of."""
        first = entries[0].key
        named = ", ".join(entry.key.text for entry in entries)
        key = next((each for each in ("length", "width") if each in self._known), min(self._known, default="length"))
        are = f"{named} is the name of a size" if len(entries) == 1 else f"{named} are names of sizes"
        self.builder.wrong(
            "unknown-key",
            first.place,
            f"{capital(self.what)} has no such keys: {are}. Values by size stand below the number that they are of."
            f" Example: {key}: {{{first.text}: 12 in, …}}",
            said=first.text,
        )

    def _row_without_quotes(self, entry: Entry) -> None:
        """A row of numbers within braces is cut at its commas: each number but the first becomes a key."""
        self.builder.wrong(
            "unknown-key",
            entry.key.place,
            f"“{short(entry.key.text)}” stands alone here. Within braces a comma ends a value, so a row of numbers"
            ' needs quotes. Example: {cut_length: "33, 35, 37 cm"}',
            said=entry.key.text,
        )
