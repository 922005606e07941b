"""Where an id is used, for the author who is about to change what it names."""

from __future__ import annotations

import difflib
import re
from collections.abc import Iterable
from dataclasses import dataclass, replace
from fractions import Fraction
from pathlib import Path
from typing import Any, Final

from basinside import files
from basinside.check.explain import all_ids
from basinside.derive.everything import derive
from basinside.load.content import load_whole
from basinside.load.marked_yaml import locate
from basinside.load.uses import Uses
from basinside.model.content import Content
from basinside.model.use import Meant
from basinside.pipeline.build import open_theme
from basinside.problem import Place
from basinside.quantity import Quantity
from basinside.render.sheets_compared import hung_anew, posted_words, sheets_of
from basinside.render.use_words import Found, Used, UseWords, unknown_id_lines

_NEAREST_OF_A_KIND: Final = 2
_MOST_HOLDING: Final = 5
_CHANGED: Final = Fraction(5, 4)
"""A value is made a quarter more to see which paper follows it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """What an id names and where each is used, or the nearest where it names nothing."""

    written: str
    content: Content
    found: tuple[Found, ...]
    near: tuple[Meant, ...]


def where_used(root: Path, written: str) -> Answer:
    """Return each thing that an id names with all its uses.

    Raises:
        FolderError: when the folder cannot be read.
    """
    raw = files.read_authored(root)
    loaded = load_whole(raw)
    uses = Uses(loaded.content, loaded.named, all_ids())
    meant = uses.meant(written)
    found = []
    for each in meant:
        used = uses.of(each)
        marks = _marks(raw, (use.place for use in used))
        placed = [
            Used(use=use, line=marks[use.place][0], column=marks[use.place][1]) for use in used
        ]
        placed.sort(key=lambda one: (one.use.place.file, one.line, one.column))
        found.append(_followed(loaded.content, raw, each, tuple(placed)))
    near = () if meant else _nearest(written, uses)
    return Answer(written=written, content=loaded.content, found=tuple(found), near=near)


def told(answer: Answer) -> list[str]:
    """Return an answer in words, line by line."""
    if not answer.found:
        return unknown_id_lines(answer.written, answer.near)
    words = UseWords(answer.content)
    lines: list[str] = []
    for each in answer.found:
        lines += ([""] if lines else []) + words.lines(each)
    return lines


def told_to_a_tool(answer: Answer) -> dict[str, Any]:
    """Return an answer for a tool."""
    words = UseWords(answer.content)
    return {
        "id": answer.written,
        "found": [words.data(each) for each in answer.found],
        "near": [{"kind": each.kind, "id": each.id} for each in answer.near],
    }


def _followed(
    content: Content, raw: dict[str, bytes], meant: Meant, uses: tuple[Used, ...]
) -> Found:
    """Return what is used with what follows for paper, for observers and for who is certified."""
    steps = dict.fromkeys(
        owner.id for used in uses for owner in used.use.owners if owner.kind == "step"
    )
    if meant.kind == "step":
        steps[meant.id] = None
    procedures = dict.fromkeys(each.partition("/")[0] for each in steps)
    if meant.kind == "procedure":
        procedures[meant.id] = None
    safety = {
        f"{name}/{step.step}"
        for name, procedure in content.procedures.items()
        for _, step in procedure.steps
        if step.safety
    }
    handbook = content.handbook
    scopes = handbook.scopes if handbook else {}
    mark = _marks(raw, (meant.place,))[meant.place] if meant.place else (0, 0)
    return Found(
        meant=meant,
        where=f"{meant.place.file}:{mark[0]}:{mark[1]}" if meant.place else "",
        uses=uses,
        hangs=_hanging(content, meant, procedures),
        watched=tuple(each for each in steps if each in safety),
        scopes=tuple(name for name, each in scopes.items() if procedures.keys() & set(each)),
    )


def _hanging(content: Content, meant: Meant, procedures: Iterable[str]) -> tuple[str, ...]:
    """Return the prints that hang somewhere and show a value, or are about what is touched."""
    if content.handbook is None:
        return ()
    posted = content.handbook.posted
    if meant.kind == "value":
        return tuple(posted_words(each) for each in hung_anew(posted, *_both(content, meant.id)))
    about = {meant.id, *procedures} if meant.kind != "source" else set()
    return tuple(posted_words(each) for each in posted if each.of in about)


def _both(content: Content, value: str) -> tuple[Any, Any]:
    """Return all sheets as they are, and as they are with a value that is a quarter more."""
    figure = content.figures[value]
    more = Quantity(number=figure.value.number * _CHANGED, unit=figure.value.unit)
    changed = figure.model_copy(update={"value": more})
    other = replace(content, figures={**content.figures, value: changed})
    theme = open_theme()
    now, then = (sheets_of(each, derive(each), theme) for each in (content, other))
    return now, then


def _marks(raw: dict[str, bytes], places: Iterable[Place]) -> dict[Place, tuple[int, int]]:
    by_file: dict[str, list[Place]] = {}
    for place in places:
        by_file.setdefault(place.file, []).append(place)
    marks: dict[Place, tuple[int, int]] = {}
    for file, some in by_file.items():
        if file.endswith(".yaml") and file in raw:
            marks.update(locate(raw[file], some))
        else:
            marks.update(dict.fromkeys(some, (1, 1)))
    return marks


def _nearest(written: str, uses: Uses) -> tuple[Meant, ...]:
    """Return the nearest ids of every kind, the nearest first: alike, or with all its words."""
    asked = written.casefold()
    words = [each for each in re.split(r"[/.\s]+", asked) if each]
    by_kind: dict[str, dict[str, Meant]] = {}
    for name, several in uses.known.items():
        for meant in several:
            by_kind.setdefault(meant.kind, {}).setdefault(name, meant)
    found: list[tuple[float, Meant]] = []
    for ids in by_kind.values():
        near = difflib.get_close_matches(asked, ids, _NEAREST_OF_A_KIND, 0.6)
        holding = [name for name in ids if words and all(each in name for each in words)]
        for name in dict.fromkeys((*near, *holding[:_MOST_HOLDING])):
            likeness = difflib.SequenceMatcher(None, asked, name).ratio()
            found.append((-likeness, ids[name]))
    ordered = sorted(found, key=lambda pair: (pair[0], pair[1].kind, pair[1].id))
    return tuple(dict.fromkeys(meant for _, meant in ordered))
