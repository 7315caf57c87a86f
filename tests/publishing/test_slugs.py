"""Slugs: what an author's names are called in paths and anchors."""

from __future__ import annotations

import re
import string

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sitegen.publishing.site_place import site_path
from sitegen.publishing.slugs import LONGEST, Slugs, slug


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("binding-the-edge", "binding-the-edge"),
        ("Straight stitch", "straight-stitch"),
        ("IMG 1234", "img-1234"),
        ("step #2", "step-2"),
        ("50%25 done", "50-25-done"),
        ("a, b", "a-b"),
        (' "x:y?\\z" ', "x-y-z"),
        ("boutonnière", "boutonniere"),
        ("Øse på Ærme", "ose-pa-aerme"),
        ("Straße", "strasse"),
        ("½ turn", "1-2-turn"),
    ],
)
def test_slug_is_readable(text: str, expected: str) -> None:
    assert slug(text) == expected


@pytest.mark.parametrize(
    ("text", "head"), [("шов stitch", "stitch-"), ("петля", ""), ("縫い目", ""), ("!!!", ""), ("", ""), ("con", "con-")]
)
def test_slug_of_what_ascii_cannot_say_or_disks_cannot_hold_ends_in_a_digest(text: str, head: str) -> None:
    assert re.fullmatch(rf"{head}[0-9a-f]{{8}}", slug(text))
    assert slug(text) == slug(text)


def test_names_of_other_letters_have_other_slugs() -> None:
    assert len({slug(text) for text in ("шов", "петля", "шов stitch", "петля stitch", "!", "?")}) == 6


def test_name_written_with_one_sign_or_two_has_one_slug() -> None:
    assert slug("\u0439\u00e9") == slug("\u0438\u0306e\u0301")


def test_long_name_is_cut_and_stays_apart_from_another() -> None:
    one, other = slug("n" * 240), slug("n" * 241)
    assert len(one) == len(other) == LONGEST
    assert one != other
    assert slug("n" * LONGEST) == "n" * LONGEST


@given(st.text())
def test_any_text_becomes_a_file_name_for_every_disk(text: str) -> None:
    found = slug(text)
    assert site_path(f"{found}/{found}.html")
    assert len(found) <= LONGEST
    assert set(found) <= set(string.ascii_lowercase + string.digits + "-")
    assert slug(found) == found


@given(st.lists(st.text(alphabet="aA-_ бé/e\u0301\u0327", max_size=4)))
def test_no_two_names_of_a_namespace_share_a_slug(names: list[str]) -> None:
    slugs = Slugs()
    found = {name: slugs.of(name) for name in names}
    assert len(set(found.values())) == len(found)
    assert found == {name: slugs.of(name) for name in names}


def test_first_name_keeps_the_plain_slug_and_others_do_not_depend_on_their_order() -> None:
    one, other = Slugs(), Slugs()
    found = [one.of(name) for name in ("hand stitch", "hand-stitch", "hand_stitch")]
    assert found[0] == "hand-stitch"
    assert [other.of(name) for name in ("hand stitch", "hand_stitch", "hand-stitch")] == [found[0], found[2], found[1]]


def test_slug_that_is_taken_for_something_else_is_not_given() -> None:
    assert Slugs(taken=["main"]).of("Main") not in ("main", "")
