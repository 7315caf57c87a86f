"""A class in another language of its site, for a command that prints it."""

from __future__ import annotations

import sys
from dataclasses import replace

from sitegen.checks import review_class_in
from sitegen.cli.one_class import Found
from sitegen.tutorial.build import languages_of_folder


class NoSuchLanguage(Exception):  # noqa: N818  (an outcome that a person reads, not a fault of the program)
    """Why a class cannot be had in a language, in words."""


def in_language(found: Found, language: str, *, say: bool = True) -> Found:
    """A class in a language of its site, the first one where none is named. Says what is missing or wrong in it.

    Raises NoSuchLanguage for one that the site does not have.
    """
    known = languages_of_folder(found.folder).every
    if language in ("", known[0]):
        return found
    if language not in known:
        more = f"are {', '.join(known)}" if len(known) > 1 else f"is {known[0]} alone"
        raise NoSuchLanguage(
            f"the site has no language {language}: in site.yaml there {more}."
            f" Example: languages: [{', '.join((*known, language))}]"
        )
    cls, collector = review_class_in(found.cls, found.folder, language)
    wrong = sum(1 for each in collector.findings if each.severity.value == "wrong")
    missing = sum(1 for each in collector.findings if each.check == "translation-missing")
    if say and wrong:
        things = "1 thing is" if wrong == 1 else f"{wrong} things are"
        print(f"sitegen: in {language} {things} wrong in the tutorial; sitegen check tells what.", file=sys.stderr)
    if say and missing:
        texts = "1 text has" if missing == 1 else f"{missing} texts have"
        print(
            f"sitegen: {texts} no translation into {language} and will be in {known[0]}; sitegen check tells which.",
            file=sys.stderr,
        )
    if cls is None:
        return replace(found, any_wrong=True, plan_only=False)
    return replace(
        found,
        cls=cls,
        any_wrong=found.any_wrong or collector.any_wrong,
        plan_only=found.plan_only and not collector.any_wrong,
        language=language,
    )
