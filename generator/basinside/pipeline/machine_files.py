"""Files that the program writes, read back as strictly as a stranger's."""

from __future__ import annotations

from pathlib import Path
from typing import TypeVar

from basinside import files
from basinside.load.json_text import JsonTextError, read_json
from basinside.model.machine_file import MachineFileError, Part
from basinside.pipeline.refusal import RefusedError

P = TypeVar("P", bound=Part)


def read_value(path: Path) -> object:
    """Return the JSON value of a file.

    Raises:
        FolderError: when the file cannot be read.
        RefusedError: when it is not the JSON we read; with its line and column.
    """
    try:
        return read_json(files.read_file(path), path.name)
    except JsonTextError as error:
        raise RefusedError(printable(str(error))) from None


def read_object(path: Path) -> dict[str, object]:
    """Return the JSON object of a file; raises as ``read_value``, and when it is no object."""
    value = read_value(path)
    if not isinstance(value, dict):
        raise RefusedError(f"{path.name}: the file does not hold one JSON object.")
    return value


def read_part(path: Path, kind: type[P]) -> P:
    """Return a file as one of our kinds; raises as ``read_value``, naming what is wrong where."""
    return as_part(read_value(path), kind, path.name)


def as_part(value: object, kind: type[P], name: str) -> P:
    """Return a JSON value as one of our kinds.

    Raises:
        RefusedError: naming the file and the first thing that is wrong with it.
    """
    try:
        return kind.from_plain(value)
    except MachineFileError as error:
        raise RefusedError(f"{name}: {printable(error.lines[0])}") from None


def printable(text: str) -> str:
    """Return text without letters that would steer a terminal."""
    return "".join(each if each.isprintable() else "\N{REPLACEMENT CHARACTER}" for each in text)
