"""Reads typed values out of nodes and says plainly what was expected where something else stands."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass, field
from fractions import Fraction

from sitegen.findings import Collector, Place, either, meant, nearest
from sitegen.quantities import BySize, NotUnderstood, Unit, parse_lengths, parse_number, parse_ratio, row_without_commas
from sitegen.reading import Empty, Mapping, Node, Scalar, Sequence
from sitegen.tutorial.build.commas import entries
from sitegen.tutorial.build.half_references import half_references
from sitegen.tutorial.build.short_texts import report_typographic_quotes, report_unwritten
from sitegen.tutorial.build.sizes_table import SizeTable
from sitegen.tutorial.build.translations import ENGLISH_ALONE, Languages, in_language, one_line, side_by_side
from sitegen.tutorial.model import Accepted, Amount, Claim, Lengths, OnlyIn, Prose, Reference, Share, Words

NAME = re.compile(r"[a-z][a-z0-9_]*")
_REFERENCE = re.compile(r"\{\s*([A-Za-z0-9_.]*)\s*\}")
_SHORT_FOR = {"cm": "centimetres", "centimeters": "centimetres", "mm": "centimetres", "metric": "centimetres"}
_SHORT_FOR |= {"in": "inches", "inch": "inches", "imperial": "inches", "kid": "child", "kids": "child"}
"""Words that are spelt nothing like that of the choices which they mean."""
_IN_PROSE = re.compile(r"\{\{|\{([^{}\n]{0,80})\}")


@dataclass
class Builder:
    """What all readers of one tutorial share: where findings go, the unit, the sizes, all that was typed."""

    collector: Collector
    languages: Languages = ENGLISH_ALONE
    untranslated: set[str] = field(default_factory=set)
    translated: dict[str, str] = field(default_factory=dict)
    unit: Unit = Unit.IN
    sizes: tuple[str, ...] = ()
    runs: tuple[int, ...] = ()
    accepted: list[Accepted] = field(default_factory=list)
    views: dict[str, tuple[str, ...]] = field(default_factory=dict)
    only_in: dict[str, OnlyIn] = field(default_factory=dict)
    table: SizeTable = field(default_factory=SizeTable)
    typed: list[Lengths] = field(default_factory=list)
    referred: list[Lengths] = field(default_factory=list)
    claims: list[Claim] = field(default_factory=list)
    unread: set[str] = field(default_factory=set)
    gaps: set[str] = field(default_factory=set)
    could_have: set[str] = field(default_factory=lambda: {"seam_allowance"})

    # -- single values ------------------------------------------------------------------------------

    def wrong(self, check: str, place: Place, message: str, *, said: str = "", should_be: str = "") -> None:
        """Report a fault of the file."""
        self.collector.wrong(check, place, message, said=said, should_be=should_be)

    def not_this(self, node: Node, expected: str, example: str) -> None:
        """Report a value of the wrong kind."""
        found = {Scalar: "a text", Sequence: "a list", Mapping: "keys with values", Empty: "nothing"}[type(node)]
        said = node.text if isinstance(node, Scalar) else ""
        shown = f"“{short(said)}”" if said else found
        self.wrong("wrong-kind", node.place, f"Expected {expected}, found {shown}. Example: {example}", said=said)

    def unknown(self, what: str, name: Scalar | Words, known: Iterable[str]) -> None:
        """Report a name that is none of the known ones, with the nearest."""
        known = tuple(known)
        near = nearest(name.text, known, most=1)
        hint = f" Nearest: {near[0]}." if near else f" Known are: {', '.join(known) or 'none'}."
        self.wrong(
            "unknown-reference",
            name.place,
            f"There is no {what} “{short(name.text)}”.{hint}",
            said=name.text,
            should_be=meant(name.text, known),
        )

    def words(
        self, node: Node, expected: str = "a text", example: str = "title: Lantern tee", *, read: bool = False
    ) -> Words | None:
        """A text on one or more lines. One that is ``read`` by students wants a translation into every language; that
        of the same text elsewhere does."""
        if read and isinstance(node, Scalar) and (said := self.translated.get(one_line(node.text))):
            return Words(said, node.place)
        node = self._in_language(node) if read else self._if_side_by_side(node)
        if isinstance(node, Scalar) and node.text.strip():
            report_unwritten(node, self.collector)
            report_typographic_quotes(node, self.collector)
            return Words(one_line(node.text), node.place)
        self.not_this(node, expected, example)
        return None

    def prose(self, node: Node, example: str = "text: Pin the band to the neckline.") -> Prose | None:
        """Running text with references."""
        node, language = in_language(node, self.languages, self.collector)
        if not isinstance(node, Scalar) or not node.text.strip():
            self.not_this(node, "running text", example)
            return None
        report_unwritten(node, self.collector)
        references = []
        for match in _IN_PROSE.finditer(node.text):
            if match.group(1) is None:
                continue
            name = match.group(1).strip()
            start = match.start(1) + match.group(1).index(name)
            references.append(Reference(name, node.at(start, start + len(name))))
        for open_one in half_references(node.text):
            self.wrong(
                "reference-open",
                node.at(open_one.start, open_one.end),
                f"A reference stands between two braces; {open_one.lacks} one is missing here.",
                said=node.text[open_one.start : open_one.end],
                should_be=open_one.should_be,
            )
        return Prose(node.text, node.place, tuple(references), node.at, language)

    def _in_language(self, node: Node) -> Node:
        found, language = in_language(node, self.languages, self.collector)
        if language and isinstance(found, Scalar):
            self.untranslated.add(one_line(found.text))
        return found

    def _if_side_by_side(self, node: Node) -> Node:
        """A text that is rather a name or a setting: it may have translations, and is not asked for them."""
        if side_by_side(node, self.languages) is not None:
            return self._in_language(node)
        if not self.languages.is_first and isinstance(node, Scalar):
            self.untranslated.add(one_line(node.text))
        return node

    def choice(self, node: Node, choices: Iterable[str], example: str) -> Words | None:
        """One word out of a few."""
        known = tuple(choices)
        words = self.words(node, either(known), example)
        if words is None or words.text in known:
            return words
        same = _SHORT_FOR.get(words.text.lower(), "")
        near = (same,) if same in known else nearest(words.text, known, most=1)
        self.wrong(
            "wrong-kind",
            words.place,
            f"Expected {either(known)}, found “{short(words.text)}”. Example: {example}",
            said=words.text,
            should_be=near[0] if near else "",
        )
        return None

    def yes_or_no(self, node: Node, example: str) -> bool | None:
        """true or false, or yes or no."""
        words = self.choice(node, ("true", "false", "yes", "no"), example)
        return words.text in ("true", "yes") if words else None

    def whole_number(self, node: Node, example: str, most: int = 100_000) -> int | None:
        """A count."""
        text = node.text.strip() if isinstance(node, Scalar) else ""
        if re.fullmatch(r"\d{1,6}", text) and int(text) <= most:
            return int(text)
        is_whole = re.fullmatch(r"[-+−]?\d+", text) is not None
        self.not_this(node, f"a whole number from 0 to {most}" if is_whole else "a whole number", example)
        return None

    def plain_number(self, node: Node, example: str) -> Fraction | None:
        """A number without a unit, such as a stitch setting."""
        if isinstance(node, Scalar):
            try:
                number = parse_number(node.text.removesuffix("mm"), example=example)
            except NotUnderstood:
                pass
            else:
                if number > 0:
                    return number
        self.not_this(node, "a number", example)
        return None

    def share(
        self, node: Node, example: str = "ratio: 80%", *, above_nothing: bool = False, below_whole: bool = False
    ) -> Share | None:
        """A ratio or a stretch in percent, where it must be above 0% or below 100% as such."""
        if not isinstance(node, Scalar):
            self.not_this(node, "a percentage", example)
            return None
        try:
            ratio = parse_ratio(node.text)
        except NotUnderstood:
            self.not_this(node, "a percentage", example)
            return None
        if above_nothing and ratio.value == 0:
            self.not_this(node, "a percentage above 0%", example)
            return None
        if below_whole and ratio.value >= 1:
            self.not_this(node, "a percentage below 100%", example)
            return None
        return Share(ratio, node.text.strip(), node.place)

    # -- lengths ------------------------------------------------------------------------------------

    def lengths(self, node: Node, name: str, *, bolt: bool = False) -> Lengths | None:
        """Lengths by size: a list of texts, one text with commas, or a reference to another number."""
        reference = self.reference_of(node)
        if reference is not None:
            referring = Lengths(name, node.place, reference, bolt)
            self.referred.append(referring)
            return referring
        by_name = self._by_name(node, name)
        amounts = by_name if by_name is not None else self._amounts(node)
        if amounts is None:
            self.unread.add(name)
            return None
        if by_name is None and len(amounts) not in (1, max(1, len(self.sizes))):
            self._wrong_count(node, name, amounts)
            if len(amounts) > len(self.sizes):
                self.unread.add(name)
                return None
        found = Lengths(name, node.place, BySize(tuple(amounts)), bolt)
        self.typed.append(found)
        return found

    def amount(self, node: Node, name: str) -> Amount | None:
        """One length that serves every size."""
        found = self.lengths(node, name)
        if found is None:
            return None
        if isinstance(found.source, Reference) or found.source.differs:
            self.not_this(node, "one length for all sizes", "seam_allowance: 3/8 in")
            return None
        return found.source.at(0)

    def reference_of(self, node: Node) -> Reference | None:
        """The reference that a value consists of, ``"{back.side}"``, also when the quotes were forgotten."""
        if isinstance(node, Scalar) and (match := _REFERENCE.fullmatch(node.text.strip())):
            return Reference(match.group(1), node.place)
        if isinstance(node, Mapping) and len(node.entries) == 1 and isinstance(node.entries[0].value, Empty):
            name = node.entries[0].key.text
            self.wrong(
                "reference-unquoted",
                node.place,
                "A reference as a value needs quotes, or YAML takes the braces for something else.",
                said="{" + name + "}",
                should_be='"{' + name + '}"',
            )
            return Reference(name, node.place)
        return None

    def _amounts(self, node: Node) -> list[Amount] | None:
        """Every entry of a by-size value; None when any was not understood (all are reported)."""
        parts = node.items if isinstance(node, Sequence) else (node,)
        if not parts:
            self.not_this(node, "lengths", "bust: 31, 33, 35 1/2 in")
            return None
        found: list[Amount] = []
        failed = False
        carried = self._carried_unit(parts)
        for part in parts:
            if not isinstance(part, Scalar) or not part.text.strip():
                self.not_this(part, "a length", "3/8 in or 31, 33, 35 1/2 in")
                failed = True
                continue
            try:
                typed = parse_lengths(part.text, carried)
            except NotUnderstood as trouble:
                row = self._row_without_commas(part, carried)
                if row is None:
                    self._not_a_length(part, trouble)
                    failed = True
                found.extend(row or ())
                continue
            found.extend(Amount(each, part.at(each.start, each.end)) for each in typed)
        return None if failed else found

    def _row_without_commas(self, node: Scalar, default: Unit) -> list[Amount] | None:
        """The values of a row that lacks its commas, which is reported; None for any other text."""
        spans = row_without_commas(node.text, len(self.sizes), default) if len(self.sizes) > 1 else ()
        if not spans:
            return None
        row = ", ".join(node.text[start:end] for start, end in spans)
        try:
            typed = parse_lengths(row, default)
        except NotUnderstood:
            return None
        self.wrong(
            "not-a-length",
            node.at(spans[0][0], spans[-1][1]),
            f"Put a comma and a space between the values of the sizes: {row}",
            said=node.text.strip(),
            should_be=row,
        )
        return [Amount(each, node.at(*span)) for each, span in zip(typed.values, spans, strict=True)]

    def _carried_unit(self, parts: tuple[Node, ...]) -> Unit:
        """In a YAML list the unit of the last entry serves those before it, as it does in a text."""
        last = parts[-1]
        if len(parts) > 1 and isinstance(last, Scalar):
            try:
                return parse_lengths(last.text, self.unit).values[-1].unit
            except NotUnderstood:
                pass
        return self.unit

    def _not_a_length(self, node: Scalar, trouble: NotUnderstood) -> None:
        end = trouble.offset + trouble.size if trouble.size else None
        said = node.text[trouble.offset : end]
        self.wrong(
            "not-a-length",
            node.at(trouble.offset, trouble.offset + max(1, trouble.size)),
            f"Expected {trouble.expected}, found “{short(said.strip() or node.text.strip())}”."
            f" Example: {trouble.example}",
            said=said.strip(),
        )

    def has_sizes(self, node: Node) -> bool:
        """Whether a value has names of sizes as keys, ``{S: 33 in, M: 35 in}``."""
        return isinstance(node, Mapping) and any(entry.key.text in self.sizes for entry in node.entries)

    def _by_name(self, node: Node, name: str) -> list[Amount] | None:
        """Values under the names of their sizes, ``{S: 33 in, M: 35 in}``; None when the value is none of these."""
        if not isinstance(node, Mapping) or not self.has_sizes(node):
            return None
        found: list[Amount] = []
        missing = [size for size in self.sizes if node.get(size) is None]
        if missing:
            self.gaps.add(name)
            said = f"size {missing[0]}" if len(missing) == 1 else f"sizes {', '.join(missing)}"
            self.wrong("size-count", node.place, f"{name} has no value for {said}.")
        for size in self.sizes:
            entry = node.get(size)
            amounts = self._amounts(entry.value) if entry is not None else None
            if amounts is None or len(amounts) != 1:
                return found if len(found) > 1 else None
            found.extend(amounts)
        for entry in node.entries:
            if entry.key.text not in self.sizes:
                self.wrong("size-count", entry.key.place, f"There is no size {entry.key.text}.", said=entry.key.text)
        return found

    def _wrong_count(self, node: Node, name: str, amounts: list[Amount]) -> None:
        wanted = max(1, len(self.sizes))
        self.gaps.add(name)
        if 1 < len(amounts) < wanted:
            missing = ", ".join(self.sizes[len(amounts) :])
            self.wrong(
                "size-count",
                node.place,
                f"{name} has {len(amounts)} values for {wanted} sizes: there is none for {missing}.",
                said=node.text.strip() if isinstance(node, Scalar) else "",
            )
            return
        expected = f"1 or {wanted}, one for each size ({', '.join(self.sizes)})" if wanted > 1 else "1"
        no_sizes = "" if self.sizes else " The tutorial lists no sizes. Example: sizes: [S, M, L]"
        self.wrong(
            "size-count",
            node.place,
            f"{name} has {len(amounts)} values, expected {expected}.{no_sizes}",
            said=node.text.strip() if isinstance(node, Scalar) else "",
        )

    # -- names --------------------------------------------------------------------------------------

    def entries(self, node: Node) -> tuple[Node, ...]:
        """The names of a list, or the only one; names with commas between them but no brackets are reported."""
        return entries(node, self.collector)

    def references(self, node: Node, example: str) -> tuple[Reference, ...]:
        """A list of names, or a single one, or a chain ``front.neckline + back.neckline``."""
        found: list[Reference] = []
        for part in self.entries(node):
            if not isinstance(part, Scalar) or not part.text.strip():
                self.not_this(part, "a name", example)
                continue
            found.extend(self.chain(part))
        return tuple(found)

    def chain(self, node: Scalar) -> tuple[Reference, ...]:
        """The names of a chain, each with its place."""
        found = []
        for match in re.finditer(r"[^\s+][^+]*", node.text):
            name = match.group().strip()
            start = match.start()
            found.append(Reference(name.strip("{}"), node.at(start, start + len(name))))
        return tuple(found)


def capital(text: str) -> str:
    """The text with a capital letter in front."""
    return text[:1].upper() + text[1:]


def short(text: str, most: int = 60) -> str:
    flat = " ".join(text.split())
    return flat if len(flat) <= most else flat[: most - 1] + "…"


def as_name(text: str) -> str:
    return re.sub(r"[^a-z0-9]+", "_", text.lower()).strip("_0123456789")
