"""The demonstration, the small valid clinic, and small clinics written in a test."""

from collections.abc import Mapping
from functools import cache
from pathlib import Path

from basinside.derive.steps import place_steps
from basinside.load.content import load
from basinside.model.content import Content
from basinside.model.derived import PlacedStep, WholeProcedure
from tests.plain.clinic import base_files

CHECKOUT = Path(__file__).resolve().parents[2]


@cache
def demo_files() -> dict[str, bytes]:
    """Return the demonstration's files; not to be changed."""
    return {
        path.relative_to(CHECKOUT).as_posix(): path.read_bytes()
        for top in ("content", "quizzes")
        for path in sorted((CHECKOUT / top).rglob("*"))
        if path.suffix in {".yaml", ".svg"}
    }


@cache
def demo() -> Content:
    """Return the demonstration's model."""
    return loaded(demo_files())


def loaded(files: Mapping[str, bytes]) -> Content:
    """Return the model of files that must have no problem."""
    content, problems = load(files)
    assert problems == []
    return content


def changed(old: str, new: str, *, files: Mapping[str, bytes] | None = None) -> Content:
    """Return the small valid clinic, or other files, with words that stand there once changed."""
    before = base_files() if files is None else files
    holding = [name for name, raw in before.items() if raw.count(old.encode()) == 1]
    assert len(holding) == 1, f"{old!r} stands in {holding}"
    name = holding[0]
    return loaded({**before, name: before[name].replace(old.encode(), new.encode())})


def step_of(content: Content, path: str) -> tuple[WholeProcedure, PlacedStep]:
    """Return a procedure and one of its placed steps, by ``procedure/step``."""
    procedure, _, step = path.partition("/")
    whole = place_steps(content, content.procedures[procedure])
    return whole, next(each for each in whole.steps if each.step.step == step)
