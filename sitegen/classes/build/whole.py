"""Builds one class from its file."""

from __future__ import annotations

from collections.abc import Callable
from collections.abc import Mapping as Names
from collections.abc import Sequence as Several

from sitegen.classes.amounts import sold_by_length
from sitegen.classes.build.named import StepNames, called_like, counts, steps_named, steps_together
from sitegen.classes.build.prices import prices
from sitegen.classes.build.sessions import by_clocks, sessions, time_zone
from sitegen.classes.model import (
    DEFAULT_AT_TOOL,
    DEFAULT_SPARE_COUNTED,
    DEFAULT_SPARE_LENGTHS,
    ComputedClass,
    Count,
    SewingClass,
    Students,
    computed_class,
)
from sitegen.findings import Collector
from sitegen.quantities import Ratio, System, Unit
from sitegen.reading import ContentFolder, Mapping, Scalar
from sitegen.tutorial import Amount, Computed, Reference, Tutorial, Words, is_cut, made_together, trim_supplies
from sitegen.tutorial.build import Builder, Fields, Languages, languages_of_folder

FOLDER = "classes"
SEATS = "seats"
_MOST_STUDENTS = 200
_TRANSLATED = ("title", "where")
"""What students read on their page of the site, in its languages."""
_STUDENTS_EXAMPLE = "students: {S: 2, M: 3}"
Find = Callable[[str], Several[Computed]]
"""Gives a tutorial by the name of its folder, in each combination of its views; nothing when it cannot be read."""


def class_files(folder: ContentFolder, collector: Collector) -> tuple[str, ...]:
    """The class files of a content folder, by their paths in it; none when it has no classes."""
    names = folder.list(FOLDER, collector, suffixes=(".yaml", ".yml"))
    return tuple(f"{FOLDER}/{name}" for name in names)


def class_of(
    folder: ContentFolder, relative: str, known: Several[str], find: Find, collector: Collector
) -> ComputedClass | None:
    """One class with its tutorial; None when its file cannot be read, or there is no tutorial to go by (reported).

    ``known`` are the names of all tutorials of the folder.
    """
    node = folder.yaml(relative, collector)
    if node is None:
        return None
    builder = Builder(collector, languages_of_folder(folder))
    fields = Fields(builder, node, "the class")
    named = fields.words("tutorial", "tutorial: lantern-tee", required=True)
    if named is not None and named.text not in known:
        builder.unknown("tutorial", named, known)
    views = find(named.text) if named is not None and named.text in known else ()
    if named is None or not views:
        # What else the file says can be held against nothing; only its own keys are read.
        _title(fields)
        return None
    return _with_tutorial(relative, fields, named, views, _address(folder))


def _title(fields: Fields) -> str:
    return fields.text("title", "title: Evening class, a knit top", required=True)


def _translations(fields: Fields, *, told: bool) -> dict[str, dict[str, str]]:
    """The title and the place in every further language of the site in which they are written. What is missing is
    ``told`` where the class has a page that shows it."""
    languages = fields.builder.languages
    found: dict[str, dict[str, str]] = {}
    for code in languages.every[1:]:
        builder = Builder(fields.builder.collector if told else Collector(), Languages(code, languages.every))
        found[code] = {}
        for key in _TRANSLATED:
            entry = fields.node.get(key)
            if entry is None or not isinstance(entry.value, Scalar | Mapping):
                continue
            first, said = fields.builder.words(entry.value), builder.words(entry.value, read=True)
            if first is not None and said is not None and said.text not in builder.untranslated:
                found[code][first.text] = said.text
    return found


def _address(folder: ContentFolder) -> str:
    """The address that the site has in its file; what is wrong with it is said when the site is read."""
    node = folder.yaml("site.yaml", Collector()) if folder.exists("site.yaml") else None
    entry = node.get("address") if node is not None else None
    return entry.value.text.strip().rstrip("/") if entry is not None and isinstance(entry.value, Scalar) else ""


def _with_tutorial(
    relative: str, fields: Fields, named: Words, views: Several[Computed], address: str
) -> ComputedClass | None:
    builder = fields.builder
    chosen = _views(fields, views[0].tutorial)
    wanted = {(view, choice.text) for view, choice in chosen.items()}
    plain = next(each for each in views if wanted <= set(each.tutorial.chosen))
    tutorial = plain.tutorial
    units = fields.choice("measured_in", tuple(each.value for each in System), "measured_in: centimetres")
    measured_in = System(units) if units else None
    own = Unit.CM if measured_in is System.CENTIMETRES else Unit.IN
    builder.unit, builder.sizes = own if measured_in else tutorial.unit, tutorial.sizes
    steps = StepNames.of(tutorial)
    changes = _changes(fields, tutorial)
    found_sessions, sessions_unread = sessions(fields)
    zone = time_zone(fields, found_sessions)
    room = _room(fields, tutorial)
    supplies = {each.item.text: each.item.text for each in tutorial.supplies if each.item.text}
    spare = _spare(fields)
    on_site = fields.flag("on_site")
    found_prices, unread_prices = prices(fields, _by_length(tutorial), supplies)
    written = SewingClass(
        key=relative.rpartition("/")[2].rpartition(".")[0],
        place=fields.node.place,
        address=address,
        title=_title(fields),
        tutorial=named,
        measured_in=measured_in,
        changes=changes,
        views=chosen,
        students=_students(fields, tutorial),
        sessions=by_clocks(found_sessions, zone),
        time_zone=zone,
        where=fields.text("where", "where: the workroom, Harbour Street"),
        seats=room.pop(SEATS, None),
        room=room,
        at_tool=_share(fields, "at_tool", DEFAULT_AT_TOOL),
        brings=_brings(fields, tutorial),
        shared=counts(fields, "shared", supplies, "supply", "shared: {polyester thread: 2}"),
        widths=_widths(fields, tutorial),
        spare_lengths=spare[0],
        spare_counted=spare[1],
        before_class=steps_named(fields, "before_class", steps),
        left_out=steps_named(fields, "left_out", steps),
        homework=steps_named(fields, "homework", steps),
        together=steps_together(fields, steps),
        prices=found_prices,
        prices_place=listed.key.place if (listed := fields.node.get("prices")) is not None else None,
        prices_unread=unread_prices,
        sessions_unread=sessions_unread,
        on_site=on_site,
        translations=_translations(fields, told=on_site),
    )
    fields.finish()
    _each_step_once(written, fields, steps.known)
    keys = [change.name for change in changes]
    try:
        computed = made_together(plain, keys) if keys else plain
    except ValueError as trouble:
        builder.wrong(
            "class-changes",
            changes[-1].place,
            f"These changes cannot be made together: {trouble}. Leave one of them out.",
            said=changes[-1].name,
        )
        return None
    return computed_class(written, computed, plain, steps.known) if written.students else None


def _views(fields: Fields, tutorial: Tutorial) -> dict[str, Words]:
    """The choice in each view; the first choice, with a finding, where none is said."""
    node = fields.get("views")
    example = "views: {" + ", ".join(f"{view}: {choices[0]}" for view, choices in tutorial.views.items()) + "}"
    if node is not None and not isinstance(node, Mapping):
        fields.builder.not_this(node, "views with the choice of the class", "views: {neck: hood}")
        return {}
    found = {}
    for entry in node.entries if isinstance(node, Mapping) else ():
        if entry.key.text not in tutorial.views:
            fields.builder.unknown("view", entry.key, tutorial.views)
            continue
        choice = fields.builder.choice(entry.value, tutorial.views[entry.key.text], example)
        if choice is not None:
            found[entry.key.text] = choice
    written = node.keys if isinstance(node, Mapping) else ()
    for view, choices in tutorial.views.items():
        if view not in written:
            fields.builder.wrong(
                "class-view",
                fields.node.place,
                f"The tutorial offers {view}: {', '.join(choices)}. A class makes one of them. Example: {example}",
            )
    return found


def _changes(fields: Fields, tutorial: Tutorial) -> tuple[Reference, ...]:
    known = [*tutorial.changes, *tutorial.swaps]
    found: dict[str, Reference] = {}
    for words in fields.words_list("changes", "changes: [longer_sleeve]", named=True):
        if words.text not in known:
            fields.builder.unknown("change", words, known)
        elif words.text in found:
            fields.builder.wrong("key-twice", words.place, f"{words.text} stands here twice.", said=words.text)
        else:
            found[words.text] = Reference(words.text, words.place)
    return tuple(found.values())


def _students(fields: Fields, tutorial: Tutorial) -> tuple[Students, ...]:
    """How many students make each size, in the order of the sizes; none when it cannot be known (reported)."""
    node = fields.required("students", _STUDENTS_EXAMPLE if tutorial.sizes else "students: 8")
    if node is None:
        return ()
    if not tutorial.sizes:
        number = fields.builder.whole_number(node, "students: 8", most=_MOST_STUDENTS)
        if number == 0:
            fields.builder.not_this(node, "at least one student", "students: 8")
        return (Students(0, number, node.place),) if number else ()
    if not isinstance(node, Mapping):
        fields.builder.not_this(node, "how many students make each size", _STUDENTS_EXAMPLE)
        return ()
    by_name = counts(fields, "students", tutorial.sizes, "size", _STUDENTS_EXAMPLE, least=0)
    found = [
        Students(tutorial.sizes.index(name), count.number, count.place)
        for name, count in by_name.items()
        if count.number
    ]
    if not found and (by_name or not node.entries):
        fields.builder.wrong("class-empty", node.place, f"Nobody is in this class. Example: {_STUDENTS_EXAMPLE}")
    total = sum(each.count for each in found)
    if total > _MOST_STUDENTS:
        fields.builder.wrong(
            "class-empty", node.place, f"{total} students are more than one class holds; at most {_MOST_STUDENTS}."
        )
        return ()
    return tuple(sorted(found, key=lambda each: each.size))


def _room(fields: Fields, tutorial: Tutorial) -> dict[str, Count]:
    """The tools of the room under the names that the tutorial gives them, and its seats."""
    tools = tool_names(tutorial)
    found = counts(fields, "room", None, "tool", "room: {seats: 8, sewing machine: 4, iron: 2}", least=0)
    return {name if name == SEATS else called_like(name, tools) or name: count for name, count in found.items()}


def tool_names(tutorial: Tutorial) -> tuple[str, ...]:
    """Every tool that the tutorial or one of its steps lists."""
    listed = (*tutorial.tools, *(tool for step in tutorial.steps for tool in step.tools))
    return tuple(dict.fromkeys(words.text for words in listed))


def _brings(fields: Fields, tutorial: Tutorial) -> tuple[Words, ...]:
    """What each student brings, under the names that the tutorial gives it; other things stand as they are."""
    known = {each.item.text: each.item.text for each in tutorial.supplies} | {
        name: name for name in tool_names(tutorial)
    }
    known |= _by_length(tutorial)
    found = []
    for words in fields.words_list("brings", "brings: [scissors, pins]"):
        like = called_like(words.text, known)
        found.append(Words(known[like] if like else words.text, words.place))
    return tuple(found)


def _by_length(tutorial: Tutorial) -> dict[str, str]:
    """What is sold by its length: fabrics, elastics, cords and some supplies, by their keys and by their names."""
    names = {each.item.text: each.item.text for each in tutorial.supplies if sold_by_length(each)}
    names |= {each.item.text: each.item.text for each, trims in trim_supplies(tutorial) if is_cut(trims)}
    names |= {fabric.name: fabric.key for fabric in tutorial.fabrics.values()}
    keys = [*tutorial.fabrics, *tutorial.elastics]
    return names | {key.replace("_", " "): key for key in keys} | {key: key for key in keys}


def _widths(fields: Fields, tutorial: Tutorial) -> Names[str, tuple[Amount, ...]]:
    node = fields.get("widths")
    example = "widths: {canvas: [150 cm, 115 cm]}"
    if node is None:
        return {}
    if not isinstance(node, Mapping):
        fields.builder.not_this(node, "fabrics with their widths", example)
        return {}
    found = {}
    for entry in node.entries:
        if entry.key.text not in tutorial.fabrics:
            fields.builder.unknown("fabric", entry.key, tutorial.fabrics)
            continue
        items = [entry.value] if isinstance(entry.value, Scalar) else list(getattr(entry.value, "items", ()))
        if not items:
            fields.builder.not_this(entry.value, "one width or several", example)
        amounts = [fields.builder.amount(item, f"{entry.key.text}.width") for item in items]
        widths = tuple(amount for amount in amounts if amount is not None)
        if widths:
            found[entry.key.text] = widths
    return found


def _spare(fields: Fields) -> tuple[Ratio, Ratio]:
    """The spare of what is sold by its length, and of what is counted."""
    node = fields.get("spare")
    example = "spare: {lengths: 5%, counted: 10%}"
    if node is None:
        return DEFAULT_SPARE_LENGTHS, DEFAULT_SPARE_COUNTED
    if not isinstance(node, Mapping):
        fields.builder.not_this(node, "a share of lengths and of what is counted", example)
        return DEFAULT_SPARE_LENGTHS, DEFAULT_SPARE_COUNTED
    inner = Fields(fields.builder, node, "spare")
    found = _share(inner, "lengths", DEFAULT_SPARE_LENGTHS), _share(inner, "counted", DEFAULT_SPARE_COUNTED)
    inner.finish()
    return found


def _share(fields: Fields, key: str, default: Ratio) -> Ratio:
    """A share from 0 to 100 %."""
    node = fields.get(key)
    share = fields.builder.share(node, f"{key}: 50%") if node is not None else None
    if share is None:
        return default
    if node is not None and not 0 <= share.ratio.value <= 1:
        fields.builder.not_this(node, "a share from 0% to 100%", f"{key}: 50%")
        return default
    return share.ratio


def _each_step_once(written: SewingClass, fields: Fields, steps: Names[str, object]) -> None:
    """A step is done before class, at home, or left out, but only one of these."""
    seen: dict[int, str] = {}
    named = {"before_class": written.before_class, "left_out": written.left_out, "homework": written.homework}
    for key, names in named.items():
        for name in names:
            step = id(steps[name.name])
            if step in seen:
                fields.builder.wrong(
                    "given-twice",
                    name.place,
                    f"The step {name.name} stands under {seen[step]} too. Keep one of them.",
                    said=name.name,
                )
            seen.setdefault(step, key)
