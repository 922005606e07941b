"""The example handbook: as it is built now, as it should be, and what differs."""

from functools import cache
from pathlib import Path

from basinside.pipeline.build import handbook_files, open_theme, place_problems, read_clinic

EXAMPLE = Path(__file__).resolve().parents[1] / "example"
ASSETS = "assets/"  # the theme's own files joined, which are read where they are written
RULES = "rules/"  # the pages of rules, which are read where the rules are written
GOLDEN = Path(__file__).resolve().parent / "example"


@cache
def problems() -> tuple[str, ...]:
    """Return what checking the example finds, as an author reads it."""
    return tuple(str(each) for each in place_problems(read_clinic(EXAMPLE)))


@cache
def built() -> dict[str, str]:
    """Return the pages of the built example but those of rules, by path; not to be changed."""
    return {path: text for path, text in whole().items() if not path.startswith((ASSETS, RULES))}


@cache
def whole() -> dict[str, str]:
    """Return every file of the built example, by path; not to be changed."""
    files = handbook_files(read_clinic(EXAMPLE), open_theme())
    return {path: make() for path, make in files}


@cache
def golden() -> dict[str, str]:
    """Return every file that it should be built into, by path; not to be changed."""
    return {
        path.relative_to(GOLDEN).as_posix(): path.read_bytes().decode()
        for path in sorted(GOLDEN.rglob("*"))
        if path.is_file()
    }


def differences(now: dict[str, str]) -> list[str]:
    """Return the paths that are not as they should be."""
    return sorted(name for name in {*now, *golden()} if now.get(name) != golden().get(name))
