"""Which class it is, and how steps are named in its lists."""

from __future__ import annotations

import re

from markupsafe import Markup, escape

from sitegen.classes import ComputedClass
from sitegen.publishing.amounts import Filled
from sitegen.publishing.class_views.parts import ClassHead, StepName
from sitegen.publishing.markdown import render
from sitegen.publishing.plain_text import plain_text
from sitegen.quantities import ENGLISH, RULER, English, System, show_number
from sitegen.tutorial import Prose, Step

_END_OF_BLOCK = re.compile(r"</(?:p|li|h\d|tr)>")


def class_head(cls: ComputedClass, language: English = ENGLISH) -> ClassHead:
    """The title of a class, who is in it, and what it makes."""
    tutorial = cls.computed.tutorial
    count = cls.student_count
    sizes = ", ".join(
        language.say(f"{each.count} in size {name}")
        for each in cls.written.students
        if (name := cls.computed.size_name(each.size))
    )
    students = language.say(f"{count} student{'' if count == 1 else 's'}")
    made = "".join(f"; {view}: {choice.text}" for view, choice in cls.written.views.items())
    changes = ", ".join(change.name.replace("_", " ") for change in cls.written.changes)
    made += f"; changed: {changes}" if changes else ""
    return ClassHead(
        title=language.own(cls.written.title),
        students=f"{students}: {sizes}" if sizes else students,
        made=language.say(f"Tutorial {cls.written.tutorial.text}{made}"),
        tutorial=language.own(tutorial.title),
        where=language.own(cls.written.where),
    )


def step_name(step: Step, cls: ComputedClass, system: System, language: English = ENGLISH) -> StepName:
    """A step with the notes for its teacher."""
    return StepName(step.number, language.own(step.title), _notes(step.teacher, cls, system, language))


def _notes(text: Prose | None, cls: ComputedClass, system: System, language: English) -> tuple[str, ...]:
    """The paragraphs of a note, with the numbers of the sizes of the class."""
    if text is None:
        return ()

    def number(name: str) -> Filled | None:
        if name == "size":
            names = (cls.computed.size_name(each.size) or language.say("one size") for each in cls.written.students)
            words = Markup(escape(", ".join(names)))
            return Filled(words, words)
        found = [(each.size, cls.computed.number(name, each.size)) for each in cls.written.students]
        shown = [(size, show_number(worked, system, RULER, language)) for size, worked in found if worked is not None]
        if len(shown) < len(found):
            return None
        alike = len({amount for _, amount in shown}) == 1
        each_size = ", ".join(f"{cls.computed.size_name(size)} {amount}" for size, amount in shown)
        words = Markup(escape(shown[0][1] if alike else each_size))
        return Filled(words, words)

    blocks = (plain_text(block) for block in _END_OF_BLOCK.split(str(render(text.text, number))))
    return tuple(block for block in blocks if block)
