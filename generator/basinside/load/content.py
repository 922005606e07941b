"""All files of a clinic to one model, with every problem of form at once."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace
from typing import Any, Final, NamedTuple, TypeVar

from pydantic import BaseModel, ValidationError

from basinside.load.entries import read_entry
from basinside.load.json_text import JsonTextError, read_json
from basinside.load.marked_yaml import read_yaml
from basinside.load.memory import Memory, Read
from basinside.load.mentions import Mention, mentions_in
from basinside.load.named import Named, named_in
from basinside.load.pictures import clean_picture
from basinside.load.references import reference_problems
from basinside.load.strays import misfiled, stray
from basinside.load.whole import entries_in, untyped, whole_instruments, whole_procedures
from basinside.load.within import within
from basinside.model.content import Content
from basinside.model.edition import ClosedEdition
from basinside.model.equipment import Agent, EquipmentFile, IncidentFile, Route, WordFile
from basinside.model.figure import FigureFile, SourceFile
from basinside.model.handbook import Handbook
from basinside.model.instrument import Instrument
from basinside.model.procedure import Procedure
from basinside.model.quiz import Assessment, Observation, QuestionFile
from basinside.model.standard import Standard
from basinside.problem import Level, Place, Problem

LARGEST_EDITION_BYTES: Final = 64_000_000
"""A closed edition of 1,000 procedures is about 6 MB (our own cap)."""

M = TypeVar("M")


class Kind(NamedTuple):
    """A kind of file: where it lies, what it is read as, and the key that holds its id."""

    folder: str
    model: type[BaseModel]
    id_key: str = ""


SINGLE_FILES: Final = {
    "content/handbook.yaml": Kind("", Handbook),
    "content/sources.yaml": Kind("", SourceFile),
    "content/equipment.yaml": Kind("", EquipmentFile),
    "content/incidents.yaml": Kind("", IncidentFile),
    "content/words.yaml": Kind("", WordFile),
}
FOLDERS: Final = (
    Kind("content/figures/", FigureFile),
    Kind("content/agents/", Agent, "agent"),
    Kind("content/routes/", Route, "route"),
    Kind("content/instruments/", Instrument, "instrument"),
    Kind("content/procedures/", Procedure, "procedure"),
    Kind("quizzes/questions/", QuestionFile),
    Kind("quizzes/assessments/", Assessment, "assessment"),
    Kind("quizzes/observations/", Observation, "observation"),
    Kind("quizzes/standards/", Standard, "standard"),
)
KINDS: Final = {kind.folder: kind for kind in FOLDERS}
PICTURES: Final = "content/pictures/"
EDITIONS: Final = "content/editions/"
_OF_VALUES: Final = frozenset({"value", "source", "step or line"})
"""The kinds of what is named that values and sources are among."""


def load(files: Mapping[str, bytes], memory: Memory | None = None) -> tuple[Content, list[Problem]]:
    """Return the model of a clinic's files and every problem of form and of reference.

    Args:
        files: relative path with forward slashes -> bytes, ``content/...`` and ``quizzes/...``.
        memory: what earlier readings kept; unchanged files are not read again.
    """
    loaded = load_whole(files, memory)
    return loaded.content, loaded.problems


class Loaded(NamedTuple):
    """A clinic's model, every problem of form and of reference, and what is named outside prose."""

    content: Content
    problems: list[Problem]
    named: list[tuple[Named, ...]]


def load_whole(files: Mapping[str, bytes], memory: Memory | None = None) -> Loaded:
    """Return all that `load` finds, and the ids that entries name, for who asks where one is used.

    Args:
        files: as `load` takes them.
        memory: as `load` takes it.
    """
    problems: list[Problem] = []
    read: dict[str, Any] = {}
    mentions: dict[str, tuple[Mention, ...]] = {}
    named: list[tuple[Named, ...]] = []
    meant: set[str] = set()
    for file in sorted(files):
        kind = kind_of(file)
        found = (
            misfiled(file, files[file], kind.folder or file) if kind else (stray(file, files[file]))
        )
        if found is not None:
            problems.append(found.problem)
            meant.add(found.meant)
        elif kind is not None:
            one = _read(file, files[file], kind, memory)
            read[file], mentions[file] = one.entry, one.mentions
            problems.extend(one.problems)
            named.append(one.named)
    for folder, whole in (
        ("content/instruments/", whole_instruments(files, read, memory)),
        ("content/procedures/", whole_procedures(files, read, memory)),
    ):
        problems.extend(whole.problems)
        named.append(whole.named)
        read.update({file: whole.entry.get(file) for file in untyped(read, folder)})
    entries = {file: value for file, value in read.items() if value is not None}
    lost = frozenset(meant | {file for file, entry in read.items() if entry is None})
    content = replace(
        _gathered(files, entries, problems, memory),
        unread=lost,
        named=_values_and_sources(named, mentions.values()),
    )
    if content.handbook is None and "content/handbook.yaml" not in {*files, *meant}:
        message = "there is no content/handbook.yaml; begin with “basinside new FOLDER”"
        meant.add("content/handbook.yaml")
        problems.append(_problem(Place("content/handbook.yaml"), "file-missing", message))
    problems.extend(_repeated_items(content))
    problems.extend(_same_but_for_case(files))
    for entry in (
        content.handbook,
        *content.procedures.values(),
        *content.instruments.values(),
        *content.observations.values(),
        *content.standards.values(),
        *content.questions,
        *(each for each in entries.values() if isinstance(each, FigureFile)),
    ):
        problems.extend(within(entry))
    unread = meant | {file for file, entry in read.items() if entry is None}
    problems.extend(reference_problems(content, named, mentions, unread))
    if memory is not None:
        memory.forget_unused()
    return Loaded(content, problems, named)


def _values_and_sources(
    named: Iterable[tuple[Named, ...]], mentions: Iterable[tuple[Mention, ...]]
) -> frozenset[str]:
    """Return the ids of values and sources that fields and sentences name."""
    fields = {each.id for some in named for each in some if each.kind in _OF_VALUES}
    return frozenset(fields.union(each.figure for some in mentions for each in some))


def _gathered(
    files: Mapping[str, bytes],
    entries: Mapping[str, Any],
    problems: list[Problem],
    memory: Memory | None,
) -> Content:
    """Return the entries of all files by their ids; an id given twice is a problem more."""
    return Content(
        handbook=entries.get("content/handbook.yaml"),
        sources=_inner(entries, "content/sources.yaml", "sources"),
        figures=_unique(
            (
                (key, each)
                for file in entries_in(entries, "content/figures/").values()
                for key, each in file.figures.items()
            ),
            problems,
        ),
        choices=_unique(
            (
                (key, each)
                for file in entries_in(entries, "content/figures/").values()
                for key, each in file.choices.items()
            ),
            problems,
        ),
        agents=_by_id(entries, KINDS["content/agents/"], problems),
        routes=_by_id(entries, KINDS["content/routes/"], problems),
        equipment=_inner(entries, "content/equipment.yaml", "equipment"),
        words=_inner(entries, "content/words.yaml", "words"),
        incidents=_unique(
            (
                (each.incident, each)
                for each in getattr(entries.get("content/incidents.yaml"), "incidents", ())
            ),
            problems,
        ),
        instruments=_by_id(entries, KINDS["content/instruments/"], problems),
        procedures=_by_id(entries, KINDS["content/procedures/"], problems),
        questions=tuple(entries_in(entries, "quizzes/questions/").values()),
        assessments=_by_id(entries, KINDS["quizzes/assessments/"], problems),
        observations=_by_id(entries, KINDS["quizzes/observations/"], problems),
        standards=_by_id(entries, KINDS["quizzes/standards/"], problems),
        pictures=_pictures(files, problems, memory),
        editions=_editions(files, problems),
    )


def kind_of(file: str) -> Kind | None:
    """Return what a file is read as, or None when it is not read here."""
    if file in SINGLE_FILES:
        return SINGLE_FILES[file]
    if not file.endswith(".yaml"):
        return None
    return next((kind for kind in FOLDERS if file.startswith(kind.folder)), None)


def _read(file: str, raw: bytes, kind: Kind, memory: Memory | None) -> Read:
    key, known = memory.recall(file, raw) if memory else (None, None)
    if known is not None:
        return known
    data, problems = read_yaml(raw, file)
    entry: Any = None
    if _is_typed_later(kind, data) and (problems or isinstance(data, dict)):
        entry = None if problems else data  # typed once it is whole, with its sibling
    elif data is not None:
        entry, found = read_entry(kind.model, data, file)
        problems = problems + found
        if entry is None and not problems:  # nothing may be missing from a handbook in silence
            problems = (_problem(Place(file), "wrong-shape", "this file cannot be understood"),)
    mentions = mentions_in(raw.decode("utf-8", "replace"))
    read = Read(entry, problems, mentions, tuple(named_in(entry)))
    if memory is not None and key is not None:
        memory.keep(key, read)
    return read


def _is_typed_later(kind: Kind, data: Any) -> bool:
    """Whether an entry may be a difference from a sibling, and so is typed once it is whole."""
    if kind.model is Instrument:
        return True
    return kind.model is Procedure and isinstance(data, dict) and "variant_of" in data


def _inner(entries: Mapping[str, Any], file: str, key: str) -> Mapping[str, Any]:
    return getattr(entries[file], key) if file in entries else {}


def _by_id(entries: Mapping[str, Any], kind: Kind, problems: list[Problem]) -> dict[str, Any]:
    found = entries_in(entries, kind.folder)
    for file, entry in found.items():
        given, stem = getattr(entry, kind.id_key), file.rsplit("/", 1)[-1].removesuffix(".yaml")
        if given != stem:
            message = f"the file is named {stem}.yaml but holds “{given}”; name it {given}.yaml"
            problems.append(_problem(entry.place.at(kind.id_key), "file-name", message))
    return _unique(((getattr(each, kind.id_key), each) for each in found.values()), problems)


def _unique(pairs: Iterable[tuple[str, M]], problems: list[Problem]) -> dict[str, M]:
    out: dict[str, M] = {}
    folded: dict[str, str] = {}
    for key, entry in pairs:
        if key.casefold() in folded:
            place: Place = entry.place  # type: ignore[attr-defined]
            first: Place = out[folded[key.casefold()]].place  # type: ignore[attr-defined]
            message = f"“{key}” is written twice, here and in {first.file}; keep one"
            problems.append(_problem(place, "repeated-id", message))
        else:
            folded[key.casefold()] = key
            out[key] = entry
    return out


def _same_but_for_case(files: Mapping[str, bytes]) -> list[Problem]:
    """Return a problem for each file whose name differs from another's only by its case."""
    known: dict[str, str] = {}
    problems = []
    for file in sorted(files):
        other = known.setdefault(file.casefold(), file)
        if other != file:
            said = f"this name differs from {other} by its case only, and a memory stick keeps one"
            problems.append(_problem(Place(file), "repeated-id", f"{said}; rename or delete one"))
    return problems


def _repeated_items(content: Content) -> list[Problem]:
    problems: list[Problem] = []
    _unique(((asked.item.item, asked.item) for asked in content.items()), problems)
    return problems


def _pictures(
    files: Mapping[str, bytes], problems: list[Problem], memory: Memory | None
) -> dict[str, Any]:
    pictures = {}
    for file in sorted(files):
        if file.startswith(PICTURES) and file.endswith(".svg"):
            key, known = memory.recall(file, files[file]) if memory else (None, None)
            read = known or Read(*clean_picture(files[file], file))
            if memory is not None and key is not None:
                memory.keep(key, read)
            problems.extend(read.problems)
            if read.entry is not None:
                pictures[file.removeprefix(PICTURES)] = read.entry
    return pictures


def _editions(files: Mapping[str, bytes], problems: list[Problem]) -> dict[str, Any]:
    editions = {}
    for file in sorted(files):
        if not (file.startswith(EDITIONS) and file.endswith(".json")):
            continue
        try:
            value = read_json(files[file], file, LARGEST_EDITION_BYTES)
        except JsonTextError as error:
            place = Place(file, (), (error.line, error.column))
            problems.append(_problem(place, "file-unreadable", error.message))
            continue
        name = file.removeprefix(EDITIONS).removesuffix(".json")
        said = _not_closed(value, name)
        if said or not isinstance(value, dict):
            problems.append(_problem(Place(file), "file-unreadable", said))
        else:
            editions[name] = value
    return editions


def _not_closed(value: object, name: str) -> str:
    """Return why a value is not the closed edition of that name, or nothing."""
    try:
        closed = ClosedEdition.model_validate(value)
    except ValidationError:
        return "this is no closed edition; “basinside edition close” writes them"
    if closed.edition != name:
        return f"this is the closed edition {closed.edition}; name it {closed.edition}.json"
    return ""


def _problem(place: Place, rule: str, message: str) -> Problem:
    return Problem(place=place, rule=rule, level=Level.NEVER, message=message)
