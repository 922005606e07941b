"""Instruments and procedures written as differences, made whole with their siblings' files."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from functools import partial
from typing import Any

from basinside.load.marked_yaml import read_yaml
from basinside.load.memory import Memory, Read
from basinside.load.named import Named, named_in
from basinside.load.procedure_variants import merge_procedures
from basinside.load.variants import merge_variants
from basinside.model.procedure import Procedure
from basinside.problem import Problem


def entries_in(entries: Mapping[str, Any], folder: str) -> dict[str, Any]:
    """Return what was read of the files of a folder, without what could not be."""
    return {
        file: value
        for file, value in entries.items()
        if file.startswith(folder) and value is not None
    }


def untyped(read: Mapping[str, Any], folder: str) -> dict[str, Any]:
    """Return the entries of a folder that are still plain data, by file."""
    return {file: each for file, each in entries_in(read, folder).items() if isinstance(each, dict)}


def whole_instruments(
    files: Mapping[str, bytes], read: Mapping[str, Any], memory: Memory | None
) -> Read:
    """Return the instruments, which are typed together: any may be a difference from another."""
    written = untyped(read, "content/instruments/")
    return _made_whole(files, written, memory, lambda: merge_variants(written))


def whole_procedures(
    files: Mapping[str, bytes], read: Mapping[str, Any], memory: Memory | None
) -> Read:
    """Return the procedures written as differences, each made again only when its line changed."""
    folder = entries_in(read, "content/procedures/")
    variants = {file: each for file, each in folder.items() if isinstance(each, dict)}
    if not variants:
        return Read({}, ())
    by_id = {
        each.procedure if isinstance(each, Procedure) else each.get("procedure"): file
        for file, each in folder.items()
        if isinstance(each, Procedure) or isinstance(each.get("procedure"), str)
    }
    whole: dict[str, Any] = {}
    problems: dict[Problem, None] = {}
    named: list[Named] = []
    for file in variants:
        line = _line_of(file, variants, by_id)
        made = _made_whole(files, line, memory, partial(_merge_line, files, line, file))
        whole.update(made.entry)
        problems.update(dict.fromkeys(made.problems))
        named.extend(made.named)
    return Read(whole, tuple(problems), (), tuple(named))


def _line_of(
    file: str, variants: Mapping[str, dict[str, Any]], by_id: Mapping[str, str]
) -> tuple[str, ...]:
    """Return a variant's file, its sibling's, and so on up to one that is written whole."""
    line = [file]
    while line[-1] in variants:
        parent = variants[line[-1]].get("variant_of")
        above = by_id.get(parent) if isinstance(parent, str) else None
        if above is None or above in line:
            break
        line.append(above)
    return tuple(line)


def _merge_line(
    files: Mapping[str, bytes], line: tuple[str, ...], file: str
) -> tuple[dict[str, Procedure], list[Problem]]:
    return merge_procedures({each: read_yaml(files[each], each)[0] for each in line}, file)


def _made_whole(
    files: Mapping[str, bytes],
    written: Iterable[str],
    memory: Memory | None,
    merge: Callable[[], tuple[dict[str, Any], list[Problem]]],
) -> Read:
    """Return what the entries of several files make together."""
    if not written:
        return Read({}, ())
    key, known = memory.recall_all(files, written) if memory else (None, None)
    if known is None:
        whole, problems = merge()
        names = tuple(each for one in whole.values() for each in named_in(one))
        known = Read(whole, tuple(problems), (), names)
        if memory is not None and key is not None:
            memory.keep(key, known)
    return known
