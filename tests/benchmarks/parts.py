"""Time the parts of one build in this process and print them as JSON (seconds)."""

from __future__ import annotations

import gc
import json
import sys
import tempfile
import time
from collections.abc import Iterable
from functools import partial
from pathlib import Path

from basinside import files
from basinside.check.run import check
from basinside.derive.everything import derive
from basinside.load.content import kind_of, load
from basinside.load.entries import read_entry
from basinside.load.marked_yaml import read_yaml
from basinside.load.memory import Memory
from basinside.pipeline import build
from basinside.render.environment import Theme
from basinside.render.view_types import ChromeView


class Watching(Theme):
    """A theme that keeps what it was asked to place, so that templates can be timed alone."""

    def __init__(self, read: dict[str, str]) -> None:
        super().__init__(read)
        self.asked: list[tuple[object, ChromeView]] = []

    def page(self, view: object, chrome: ChromeView) -> str:
        self.asked.append((view, chrome))
        return super().page(view, chrome)


def main() -> None:
    gc.disable()
    root = Path(sys.argv[1])
    theme = Theme(files.read_theme())
    memory, pages = Memory(), build.PageMemory()
    with tempfile.TemporaryDirectory() as out:
        begin = time.process_time()
        clinic = build.read_clinic(root, memory=memory)
        _write(Path(out), build.handbook_files(clinic, theme, memory=pages))
        full = time.process_time() - begin
    raw = files.read_authored(root)
    begin = time.process_time()
    content, problems = load(raw)
    loading = time.process_time() - begin
    assert not problems, problems[:3]
    begin = time.process_time()
    found = check(content, derive(content))
    checking = time.process_time() - begin
    assert not [each for each in found if each.stops], found[:3]
    edited = next((root / "content" / "procedures").iterdir())
    edited.write_text(edited.read_text() + "# edited\n")
    begin = time.process_time()
    again = build.read_clinic(root, memory=memory, before=clinic)
    for _, make in build.handbook_files(again, theme, memory=pages):
        make()
    rebuilt = time.process_time() - begin
    print(
        json.dumps(
            {
                "full": full,
                "load": loading,
                "check": checking,
                "again": rebuilt,
                "bound": _bound(raw, clinic),
            }
        )
    )


def _bound(raw: dict[str, bytes], clinic: build.Clinic) -> float:
    """Return the seconds of load + validate + the same templates + write, and nothing else."""
    watching = Watching(files.read_theme())
    for _, make in build.handbook_files(clinic, watching):
        make()
    bare = Theme(files.read_theme())
    with tempfile.TemporaryDirectory() as out:
        begin = time.process_time()
        for file, octets in raw.items():
            kind = kind_of(file)
            if kind is not None:
                data, _ = read_yaml(octets, file)
                read_entry(kind.model, data, file)
        _write(
            Path(out),
            (
                (f"{n}.html", partial(bare.page, view, chrome))
                for n, (view, chrome) in enumerate(watching.asked)
            ),
        )
        return time.process_time() - begin


def _write(folder: Path, made: Iterable[build.Made]) -> None:
    for path, make in made:
        files.write_made(folder / path, make().encode())


if __name__ == "__main__":
    main()
