"""What the words around a measurement make of it: a setting of the machine, a share, a count."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction

from sitegen.prose.find.measured import Measured, word_at
from sitegen.prose.find.numbers import Form
from sitegen.prose.find.tokens import TokenKind, Tokens
from sitegen.prose.measurement import Kind
from sitegen.prose.words import words
from sitegen.quantities import Unit

_STITCHES = words("stitch stitches zigzag zig-zag zig")
_LONGEST_STITCH = 8
"""Millimetres: no sewing machine of the home makes a longer or wider stitch (common practice, no source)."""
_SETTING_BEFORE = words("of to at is about around set between and length width a")
_BETWEEN_SETTINGS = words("wide long and by x × , length width with a")
_STITCHES_BEHIND = (["stitches", "per"], ["stitches", "to"], ["stitches", "an"], ["st", "/"], ["sts", "/"])
_MINUTES = 60
_DONE = words(". , ; ! ? ) and then before until a per") | frozenset(("", "\n"))
_DOES = words("it in out them this that on off over down up again")
_NO_PLURALS = words(
    "is this its as across us plus less times minus equals yards inches sizes was has always perhaps"
    " unless towards makes gives leaves needs means comes"
)


def with_settings(tokens: Tokens, found: Sequence[Measured]) -> list[Measured]:
    """The numbers, those that set a stitch told from lengths."""
    told: list[Measured] = []
    for one in found:
        plain = one.kind is Kind.LENGTH or (one.kind is None and not one.counted)
        said = replace(one, unit=None, kind=None) if one.supplied or one.carried else one
        second = plain and bool(told) and _second_setting(tokens, told[-1], one)
        setting = plain and (_is_setting(tokens, said) or second)
        told.append(replace(one, kind=Kind.STITCH) if setting else one)
    return told


def in_context(tokens: Tokens, found: Sequence[Measured]) -> list[Measured]:
    """The measurements, with ratios and counts told; numbers that measure nothing left out."""
    told: list[Measured] = []
    for one in found:
        if told and one.first < told[-1].behind:
            continue
        if (time := _hours(tokens, one)) is not None:
            told.append(time)
            continue
        if told and _ends_setting(tokens, told[-1], one):
            told[-1] = replace(told[-1], behind=one.behind, high=one.value)
            continue
        if (ratio := _ratio_of_decimals(tokens, one)) is not None:
            told.append(ratio)
            continue
        kind = _kind(tokens, one)
        if kind is None:
            continue
        behind = one.behind
        if kind is Kind.RATIO and one.kind is None:
            behind = _ratio_end(tokens, one)
        same = kind is one.kind and behind == one.behind
        told.append(one if same else replace(one, kind=kind, behind=behind))
    return told


def _hours(tokens: Tokens, one: Measured) -> Measured | None:
    """Hours with their part behind them: ``1 h 30``, ``an hour and a half``."""
    if one.kind is not None or one.counted:
        return None
    minutes = tokens.value(one.behind + 1)
    minutes_said = tokens.word(one.behind + 2) in ("min", "mins", "minutes")
    if one.form is Form.WHOLE and tokens.word(one.behind) == "h" and minutes is not None and minutes < _MINUTES:
        return replace(one, kind=Kind.TIME, value=one.value + minutes / _MINUTES, behind=one.behind + 2 + minutes_said)
    if one.form is Form.FRACTION and _words(tokens, one.first - 3, one.first) in (
        ["an", "hour", "and"],
        ["one", "hour", "and"],
    ):
        return replace(one, kind=Kind.TIME, value=1 + one.value, first=one.first - 3)
    return None


def _ends_setting(tokens: Tokens, before: Measured, one: Measured) -> bool:
    """Whether a number ends the range of a setting: ``stitch length 2.5 – 3``."""
    bare = one.kind is None and not one.counted and one.high is None and before.high is None
    setting = before.kind is Kind.STITCH and before.unit is None and before.value < one.value <= _LONGEST_STITCH
    return bare and setting and _words(tokens, before.behind, one.first) in (["–"], ["-"], ["to"])


def _ratio_of_decimals(tokens: Tokens, one: Measured) -> Measured | None:
    """A ratio with a decimal behind its sign: ``1:1.5``."""
    if one.kind is not None or one.counted or _words(tokens, one.behind, one.behind + 1) != [":"]:
        return None
    second = tokens.printed.get(one.behind + 1)
    if second is None or second.decimals is None or not second.value:
        return None
    if not tokens.touch(one.behind) or not tokens.touch(one.behind + 1):
        return None
    return replace(one, kind=Kind.RATIO, value=one.value / second.value, behind=one.behind + 2)


def _kind(tokens: Tokens, one: Measured) -> Kind | None:
    if one.kind is not None:
        return one.kind
    if one.counted:
        return None
    if _is_ratio(tokens, one):
        return Kind.RATIO
    return Kind.COUNT if _counts(tokens, one) else None


def _second_setting(tokens: Tokens, before: Measured, one: Measured) -> bool:
    """Whether this is the other side of a stitch: ``zigzag 3 mm wide and 1.5 mm long``."""
    if before.kind is not Kind.STITCH or one.value > _LONGEST_STITCH:
        return False
    link = _words(tokens, before.behind, one.first)
    if one.unit is None:  # “zigzag 3.5 wide and 2 long”
        return link in (["wide", "and"], ["long", "and"], ["wide", ","], ["long", ","]) and word_at(
            tokens, one.behind
        ) in ("long", "wide")
    if one.unit is not Unit.MM:
        return False
    if link[:1] == ["for"] == _words(tokens, one.behind, one.behind + 1) and link[-1:] == [","]:
        return True  # “3 mm for the gathering, 2.5 mm for everything else”
    return len(link) <= 4 and all(word in _BETWEEN_SETTINGS for word in link)


def _words(tokens: Tokens, first: int, behind: int) -> list[str]:
    return tokens.words[max(0, first) : max(0, behind)]


def _is_setting(tokens: Tokens, one: Measured) -> bool:
    """Whether it sets a stitch: ``stitch length 2.5``, ``zigzag 3 mm wide``, ``10 stitches per inch``."""
    if one.supplied and one.value <= _LONGEST_STITCH and set(_before(tokens, one.first)) & {"zigzag", "zag"}:
        return True
    if one.unit not in (None, Unit.MM) or one.value > _LONGEST_STITCH:
        return one.kind is None and _words(tokens, one.behind, one.behind + 2) in _STITCHES_BEHIND
    after = _words(tokens, one.behind, one.behind + 4)
    if after[:1] in (["from"], ["away"], ["inside"], ["beyond"], ["apart"]):
        return False
    if one.unit is None and (after[:1] == ["spi"] or after[:2] in _STITCHES_BEHIND):
        return True
    before = _before(tokens, one.first)
    tail = before[-4:]
    for word in ("length", "width"):
        if word in tail:
            at = len(tail) - 1 - tail[::-1].index(word)
            beside = set(tail[:at]) | {*before[-8:-4]} | set(tail[at + 1 : at + 3])
            if all(each in _SETTING_BEFORE for each in tail[at + 1 :]) and beside & _STITCHES:
                return True
            if at + 1 == len(tail) and one.form is Form.DECIMAL and one.unit is None:
                return True
    if one.unit is None and one.form is Form.WHOLE:
        return False
    if after[:1] in (["long"], ["wide"]) and set(tail[-2:]) & _STITCHES:
        return True
    if tail[-1:] == ["stitch"]:
        return not after or after[0] in (",", ".", ";", ")", "long", "wide")
    if tail[-2:] in (["machine", "to"], ["machine", "at"], ["stitches", "("]):
        return True
    return _stitch_behind(after) or _zigzag_before(tail)


def _before(tokens: Tokens, first: int) -> list[str]:
    """The words before, back to the start of the sentence at most."""
    words = _words(tokens, first - 8, first)
    for index in range(len(words) - 1, -1, -1):
        if words[index] in (".", "\n", ";"):
            return words[index + 1 :]
    return words


def _stitch_behind(after: list[str]) -> bool:
    words = [
        word
        for word in after
        if word
        not in (
            "-",
            "long",
            "wide",
            "length",
            "straight",
            "stretch",
            "basting",
            "zigzag",
            "narrow",
            "short",
            "machine",
            "medium",
        )
    ]
    return (
        (bool(words) and words[0] in ("stitch", "stitches"))
        or after[:1] == ["zigzag"]
        or after[:2] == ["wide", "zigzag"]
    )


def _zigzag_before(tail: list[str]) -> bool:
    fitting = [word for word in tail if word not in (",", "(", "-", "set", "to", "of", "at", "about", "a")]
    return bool(fitting) and fitting[-1] in ("zigzag", "zag", "stitch") and tail[-1:] != ["from"]


def _is_ratio(tokens: Tokens, one: Measured) -> bool:
    after = [*_words(tokens, one.behind, one.behind + 3), "", "", ""]
    if after[0] == "times" and one.form is Form.WHOLE and after[1] in _DONE and word_at(tokens, one.first - 1) in _DOES:
        return False  # “log in 5 times”
    if after[0] == "times" or (
        after[0] == ":"
        and tokens.starts[one.behind] == tokens.ends[one.behind - 1]
        and after[1].isdigit()
        and tokens.ends[one.behind] == tokens.starts[one.behind + 1]
    ):
        return True
    if (
        after[0] == "to"
        and after[1] in ("1", "one")
        and one.value > 1
        and after[2] not in ("in", "cm", "inch", "mm", '"', "-")
    ):
        return True
    return (one.form is Form.FRACTION and after[0] == "of") or (
        one.high is not None and one.form is Form.FRACTION and after[0] == "the"
    )


def _ratio_end(tokens: Tokens, one: Measured) -> int:
    after = _words(tokens, one.behind, one.behind + 2)
    return one.behind + 2 if after[:1] in ([":"], ["to"]) else one.behind + 1 if after[:1] == ["times"] else one.behind


def _counts(tokens: Tokens, one: Measured) -> bool:
    if one.form is not Form.WHOLE or one.value < 2 or one.high is not None or one.behind >= len(tokens):
        return False
    word = tokens.words[one.behind]
    plural = len(word) > 3 and word.endswith("s") and not word.endswith("ss") and word not in _NO_PLURALS
    return tokens.kinds[one.behind] is TokenKind.WORD and plural and one.value < Fraction(1000)
