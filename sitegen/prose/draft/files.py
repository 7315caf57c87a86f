"""The files of a new content folder: from captions, or with next to nothing in them."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Mapping
from dataclasses import dataclass

from sitegen.prose.captions import Captions, clock
from sitegen.prose.draft.numbers import Heard, heard_in, told_in, unit_of
from sitegen.prose.draft.phrases import seen, talk_of
from sitegen.prose.draft.starter import GLOSSARY, TITLE, site_file, starter_step, starter_tutorial, tutorial_file
from sitegen.prose.draft.steps import Step, steps_of
from sitegen.prose.draft.yaml_text import block, comments, scalar
from sitegen.quantities import Unit

_LONGEST_NAME = 40
# Windows opens a device instead of a file under these names.
_DEVICES = {"con", "prn", "aux", "nul", *(f"{port}{n}" for port in ("com", "lpt") for n in range(1, 10))}
_LATEST = 100 * 3600
"""A player shows no time of a hundred hours."""


@dataclass(frozen=True, slots=True)
class Drafted:
    """The files of a draft by their paths in the content folder, and how much was found."""

    files: Mapping[str, str]
    key: str
    steps: int
    measurements: int
    wrong: int
    doubtful: int
    unit: Unit


def empty_folder() -> Mapping[str, str]:
    """A small content folder that passes every check, with remarks that say what to put where."""
    return {
        "site.yaml": site_file(Unit.IN),
        "glossary.yaml": GLOSSARY,
        "tutorials/first-tutorial/tutorial.yaml": starter_tutorial(),
        "tutorials/first-tutorial/steps/01-first-step.yaml": starter_step(),
    }


def drafted(captions: Captions, file_name: str | None) -> Drafted | None:
    """A content folder with the words of a video as steps; None when nothing is said in the captions.

    The tutorial is called like the file of the captions; ``file_name`` is None where they come from none. Titles are
    the first words of a step, and texts are the words as they were said; what was understood of each number stands in
    remarks at the head of the step, and ``confirmed: no`` until an author has read it.
    """
    steps = steps_of(talk_of(captions))
    if not steps:
        return None
    shown, key, title = _named(file_name)
    unit = unit_of(steps)
    told = told_in(captions, steps, unit)
    heard = [heard_in(step, unit, errors) for step, errors in zip(steps, told, strict=True)]
    home = f"tutorials/{key}"
    files = {
        "site.yaml": site_file(unit),
        "glossary.yaml": GLOSSARY,
        f"{home}/tutorial.yaml": tutorial_file(title, scalar(shown), unit, clock(steps[-1].ends)),
    }
    digits = max(2, len(str(len(steps))))
    for number, (step, numbers) in enumerate(zip(steps, heard, strict=True), 1):
        name = f"{number:0{digits}}-{_plain_name(step.title) or 'step'}.yaml"
        files[f"{home}/steps/{name}"] = _step_file(step, numbers, shown)
    return Drafted(
        files,
        key,
        len(steps),
        sum(len(each.measurements) for each in heard),
        sum(len(each.wrong) for each in heard),
        sum(len(each.doubtful) for each in heard),
        unit,
    )


def _named(file_name: str | None) -> tuple[str, str, str]:
    """What captions are called, the key of their tutorial and its title as a YAML value."""
    if file_name is None:
        return "standard input", "tutorial", TITLE
    file_name = seen(file_name)
    stem = re.sub(r"\.(?:vtt|srt|txt)$", "", file_name, flags=re.IGNORECASE)
    stem = re.sub(r"\.[a-z]{2,3}(?:-[A-Za-z]{2,4})?$", "", stem)  # talk.en.vtt
    key = _plain_name(stem) or "tutorial"
    return file_name, f"{key}-tutorial" if key in _DEVICES else key, _title(stem)


def _step_file(step: Step, heard: Heard, file_name: str) -> str:
    head = [
        f"Drafted from {file_name}, {clock(step.begins)} to {clock(step.ends)}."
        " The words are those of the talk, nothing is put in their place.",
        "Read them against the video, make sentences of them, then take out these remarks and “confirmed: no”.",
        "Until then nothing is published.",
    ]
    if heard.measurements:
        head += ["", "Numbers that were heard: when, the words, and what was understood."]
        head += [f"  {line}" for line in heard.measurements]
    if heard.wrong:
        head += ["", "Sums that do not add up. Find out which number is meant, and put it right:"]
        head += [f"  {line}" for line in heard.wrong]
    if heard.doubtful:
        head += ["", "Sums that may not add up. Listen again to what is meant:"]
        head += [f"  {line}" for line in heard.doubtful]
    video = f'video: "{clock(step.begins)}"\n' if step.begins < _LATEST else ""
    return f"{comments(head)}\nconfirmed: no\ntitle: {scalar(step.title)}\n{video}{block('text', step.text)}"


def _plain_name(text: str) -> str:
    """A name for a file or a folder: small letters, digits and hyphens."""
    letters = unicodedata.normalize("NFKD", text).encode("ascii", "ignore").decode("ascii").lower()
    whole = re.sub(r"[^a-z0-9]+", "-", letters.replace("'", "")).strip("-")
    if len(whole) <= _LONGEST_NAME:
        return whole
    return whole[: _LONGEST_NAME + 1].rpartition("-")[0] or whole[:_LONGEST_NAME]


def _title(stem: str) -> str:
    words = " ".join(re.sub(r"[-_.]+", " ", stem).split()) or "Tutorial"
    return scalar(words[:1].upper() + words[1:])
