"""Files to model to problems to pages."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, replace
from datetime import date
from functools import partial
from pathlib import Path
from typing import Any

from basinside import files
from basinside.certify.page_rules import page_rules
from basinside.check.explain import all_ids, explain
from basinside.check.rule_cards import rule_cards
from basinside.check.run import check
from basinside.derive.everything import derive
from basinside.files import AUTHORED, FolderError
from basinside.load.content import load
from basinside.load.json_text import JsonTextError, read_json
from basinside.load.marked_yaml import locate
from basinside.load.memory import Memory
from basinside.model.content import Content
from basinside.model.derived import Derived
from basinside.problem import Level, Place, Placed, Problem, any_stop, one_line
from basinside.render.environment import Theme
from basinside.render.problem_pages import START, page_banners, problem_page
from basinside.render.report import report_data, report_lines, summary_line
from basinside.render.site import Folder, PageMaker, RestsOn, assets, pages
from basinside.seal.codes import word_list

__all__ = [
    "Clinic",
    "FolderError",
    "Made",
    "Memory",
    "PageMemory",
    "Theme",
    "all_ids",
    "check_site_folder",
    "explain",
    "folder_problem",
    "handbook_files",
    "open_theme",
    "place_problems",
    "problem_files",
    "read_clinic",
    "report_data",
    "report_lines",
    "summary_line",
    "theme_folder",
    "write_made",
]

TRUST_FILE = "content/trust.json"
BUILT_MARK = "assets/basinside.js"
"""A folder with this file holds a handbook, so it may be built again."""
theme_folder = files.theme_folder
write_made = files.write_made


def open_theme(before: Theme | None = None) -> Theme:
    """Return the theme of this installation; the one before while its files are the same."""
    read = files.read_theme()
    return before if before is not None and before.made_of(read) else Theme(read)


@dataclass(frozen=True, slots=True, kw_only=True)
class Clinic:
    """A clinic's folder, read and checked."""

    root: Path
    raw: Mapping[str, bytes]
    content: Content
    derived: Derived
    problems: tuple[Problem, ...]

    @property
    def stops(self) -> bool:
        """Whether a folder may not be built from it."""
        return any_stop(self.problems)


def read_clinic(
    root: Path,
    *,
    memory: Memory | None = None,
    before: Clinic | None = None,
    today: date | None = None,
) -> Clinic:
    """Read a clinic's folder, derive what follows and check it.

    Args:
        root: the folder that holds ``content`` and ``quizzes``.
        memory: what earlier readings kept, so that unchanged files are not read again.
        before: the clinic as it was read with that memory the last time.
        today: rules that depend on the day run only when it is given.

    Raises:
        FolderError: when the folder cannot be read.
    """
    raw = files.read_authored(root)
    content, problems = load(raw, memory)
    problems.extend(_unreadable_trust(raw))
    derived = derive(content, (before.content, before.derived) if before else None)
    problems.extend(check(content, derived, today=today))
    return Clinic(root=root, raw=raw, content=content, derived=derived, problems=tuple(problems))


def check_site_folder(root: Path, site: Path) -> None:
    """See that a build may empty a folder: it is new, empty, or holds a handbook built before.

    Raises:
        FolderError: when anything else lies there, or the clinic's own files do.
    """
    root, site = root.resolve(), site.resolve()
    if site.exists() and not site.is_dir():
        raise FolderError(f"{site}: this is a file; name a folder for the handbook")
    if root.is_relative_to(site) or any(site.is_relative_to(root / each) for each in AUTHORED):
        raise FolderError(
            f"{site}: the clinic's own files lie there, and a build empties its folder;"
            " name another, such as “site”"
        )
    if not (site / BUILT_MARK).is_file() and files.holds_anything(site):
        raise FolderError(
            f"{site}: other files lie there, and a build empties its folder;"
            " name one that is new or empty"
        )


def place_problems(clinic: Clinic) -> tuple[Placed, ...]:
    """Return the problems with the line and column of each, in the order of places."""
    by_file: dict[str, list[Place]] = {}
    for problem in clinic.problems:
        by_file.setdefault(problem.place.file, []).append(problem.place)
    marks: dict[Place, tuple[int, int]] = {}
    for file, places in by_file.items():
        if file in clinic.raw and not all(each.mark for each in places):
            marks.update(locate(clinic.raw[file], places))
    placed = [
        Placed(problem=each, line=mark[0], column=mark[1])
        for each in clinic.problems
        for mark in (each.place.mark or marks.get(each.place, (1, 1)),)
    ]
    return tuple(sorted(placed, key=lambda each: each.order))


def folder_problem(root: Path, error: FolderError) -> Placed:
    """Return what kept a folder from being read as a problem of the file that is named first."""
    named, colon, said = str(error).partition(": ")
    path = Path(named)
    inside = path.is_relative_to(root)
    file = path.relative_to(root).as_posix() if inside else named
    place = Place(file if colon else "content")
    message = one_line(said if colon else named)
    problem = Problem(place=place, rule="file-unreadable", level=Level.NEVER, message=message)
    return Placed(problem=problem, line=1, column=1)


class PageMemory:
    """The pages made last time, with the objects each was made from.

    Groups of objects that many pages share are compared once a build.
    """

    def __init__(self) -> None:
        self._known: dict[str, tuple[RestsOn, str]] = {}
        self._groups: dict[tuple[int, int], bool] = {}
        self._held: list[object] = []

    def recall(self, path: str, rests_on: RestsOn) -> str | None:
        """Return the page when it rests on the very same objects as last time."""
        known = self._known.get(path)
        if known is None or len(known[0]) != len(rests_on):
            return None
        same = all(map(self._same, known[0], rests_on))
        return known[1] if same else None

    def keep(self, path: str, rests_on: RestsOn, text: str) -> None:
        """Remember a page."""
        self._known[path] = (rests_on, text)

    def begin(self) -> None:
        """Begin a build: what was compared before may have gone."""
        self._groups = {}
        self._held = []

    def _same(self, old: tuple[object, ...], new: tuple[object, ...]) -> bool:
        if old is new:
            return True
        key = (id(old), id(new))
        if key not in self._groups:
            self._held.append((old, new))  # so that no id is given anew during this build
            self._groups[key] = len(old) == len(new) and all(
                one is other for one, other in zip(old, new, strict=True)
            )
        return self._groups[key]


Made = tuple[str, Callable[[], str]]
"""A file of the folder: its path, and what makes its text when it is written."""


def handbook_files(
    clinic: Clinic,
    theme: Theme,
    *,
    memory: PageMemory | None = None,
    problems: tuple[Placed, ...] = (),
    preview: bool = False,
) -> Iterator[Made]:
    """Yield every file of the handbook folder; each is made only when it is asked for.

    Args:
        clinic: the clinic; under preview the last that nothing stopped.
        theme: the theme.
        memory: the pages made before.
        problems: what the pages say is to be mended, each on the page it concerns.
        preview: whether this is shown while somebody writes.
    """
    folder = Folder(
        content=clinic.content,
        derived=clinic.derived,
        theme=theme,
        trust=_trust(clinic.raw),
        rules=page_rules(word_list()),
        rule_cards=rule_cards(),
        preview=preview,
    )
    if problems:
        paths = {maker.path for maker in pages(folder)}
        folder = replace(folder, banners=page_banners(problems, clinic.content, paths))
    if memory:
        memory.begin()
    for maker in pages(folder):
        yield maker.path, partial(_remembered, maker, memory) if memory else maker.make
    yield from _asset_files(theme)
    if TRUST_FILE in clinic.raw:
        yield "trust.json", clinic.raw[TRUST_FILE].decode


def _remembered(maker: PageMaker, memory: PageMemory) -> str:
    text = memory.recall(maker.path, maker.rests_on)
    if text is None:
        text = maker.make()
        memory.keep(maker.path, maker.rests_on, text)
    return text


def problem_files(clinic: Clinic, theme: Theme, problems: tuple[Placed, ...]) -> Iterator[Made]:
    """Yield what preview shows while there is no good edition: the problems, and nothing else."""
    yield START, partial(problem_page, clinic.derived, theme, problems)
    yield from _asset_files(theme)


def _asset_files(theme: Theme) -> Iterator[Made]:
    for path, text in assets(theme).items():
        yield path, partial(str, text)


def _unreadable_trust(raw: Mapping[str, bytes]) -> Iterator[Problem]:
    """Yield why the trust list cannot be read, before a build empties the folder for it."""
    try:
        value = read_json(raw.get(TRUST_FILE, b"{}"), TRUST_FILE)
    except JsonTextError as error:
        place, message = Place(TRUST_FILE, (), (error.line, error.column)), error.message
    else:
        if isinstance(value, dict):
            return
        place, message = Place(TRUST_FILE), "The file does not hold one JSON object."
    yield Problem(place=place, rule="file-unreadable", level=Level.NEVER, message=message)


def _trust(raw: Mapping[str, bytes]) -> Mapping[str, Any] | None:
    if TRUST_FILE not in raw:
        return None
    value = read_json(raw[TRUST_FILE], TRUST_FILE)
    return value if isinstance(value, dict) else None
