"""Rooms do not import each other; the world stays at the edge."""

import ast
from pathlib import Path

import pytest

from tests.house import imports
from tests.house.source_files import PACKAGE, named, ours

DISK = frozenset(
    [
        "read_text",
        "read_bytes",
        "write_text",
        "write_bytes",
        "mkdir",
        "unlink",
        "iterdir",
        "glob",
        "rglob",
        "rmdir",
        "rename",
        "replace_file",
        "symlink_to",
        "touch",
    ]
)
CLOCK = frozenset(("today", "now", "utcnow", "time", "monotonic", "perf_counter", "time_ns"))
CLOCKS = frozenset(("datetime", "date", "time"))
DRAWS = frozenset(("secrets", "uuid.uuid1", "uuid.uuid4", "os.urandom"))
MAY_DRAW = frozenset(("cli", "seal"))
MAY_TOUCH_DISK = frozenset(("files",))


def module_of(path: Path) -> str:
    parts = [*path.relative_to(PACKAGE.parent).with_suffix("").parts]
    return ".".join(parts[:-1] if parts[-1] == "__init__" else parts)


def dotted(node: ast.expr) -> str:
    if isinstance(node, ast.Name):
        return node.id
    if isinstance(node, ast.Attribute):
        return f"{dotted(node.value)}.{node.attr}"
    return ""


def touches_disk(tree: ast.AST) -> list[str]:
    """Return the calls of a module that reach the disk; its own package's files are not disk."""
    return [
        f"line {node.lineno}: {ast.unparse(node.func)}"
        for node in ast.walk(tree)
        if isinstance(node, ast.Call)
        and (
            (isinstance(node.func, ast.Name) and node.func.id == "open")
            or (isinstance(node.func, ast.Attribute) and node.func.attr in DISK)
        )
        and "resources" not in ast.unparse(node.func)
        and "files(" not in ast.unparse(node.func)
    ]


def reads_clock(tree: ast.AST) -> list[str]:
    """Return the calls of a module that read a clock."""
    found = []
    for node in ast.walk(tree):
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Attribute):
            holder = dotted(node.func.value).rpartition(".")[2]
            if node.func.attr in CLOCK and holder in CLOCKS:
                found.append(f"line {node.lineno}: {ast.unparse(node.func)}")
    return found


def draws(tree: ast.AST) -> list[str]:
    """Return where a module draws what cannot be drawn again; `random.Random(seed)` can."""
    found = []
    for node in ast.walk(tree):
        if isinstance(node, ast.Attribute):
            name = dotted(node)
            root, _, rest = name.partition(".")
            if name in DRAWS or root == "secrets" or (root == "random" and rest != "Random"):
                found.append(f"line {node.lineno}: {name}")
        if isinstance(node, ast.ImportFrom) and node.module in ("secrets", "random"):
            found.append(f"line {node.lineno}: from {node.module}")
    return found


def collected(ask: object, may: frozenset[str]) -> list[str]:
    found = []
    for path in ours(".py", below=PACKAGE):
        own = imports.first_inside(module_of(path))
        if own not in may and callable(ask):
            tree = ast.parse(path.read_text(encoding="utf-8"))
            found += [f"{named(path)}: {said}" for said in ask(tree)]
    return found


def test_rooms_do_not_import_each_other() -> None:
    found = []
    for path in ours(".py", below=PACKAGE):
        source, module = path.read_text(encoding="utf-8"), module_of(path)
        said = imports.complaints(source, module, is_package=path.stem == "__init__")
        found += [f"{named(path)}: {sentence}" for sentence in said]
    assert found == []


def test_every_folder_of_the_package_is_a_room_we_know() -> None:
    folders = {path.parent.relative_to(PACKAGE).parts[:1] for path in ours(".py", below=PACKAGE)}
    rooms = {parts[0] for parts in folders if parts} - {"demo", "starter"}
    assert rooms <= imports.ROOMS | imports.EDGES


def test_only_files_touches_the_disk() -> None:
    assert collected(touches_disk, MAY_TOUCH_DISK) == []


def test_only_the_command_line_reads_the_clock() -> None:
    assert collected(reads_clock, frozenset({"cli"})) == []


def test_nothing_is_drawn_but_where_keys_are_made() -> None:
    assert collected(draws, MAY_DRAW) == []


def test_no_broad_catch() -> None:
    found = []
    for path in ours(".py"):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.ExceptHandler):
                caught = ast.unparse(node.type) if node.type else ""
                thrown_on = ast.unparse(node.body[-1]) == "raise"  # to tidy up and pass it on
                if caught in ("", "Exception", "BaseException") and not thrown_on:
                    found.append(f"{named(path)}:{node.lineno}")
    assert found == []


@pytest.mark.parametrize(
    ("module", "source"),
    [
        ("basinside.load.yaml", "from basinside.derive import levels"),
        ("basinside.load.yaml", "from ..derive.levels import level"),
        ("basinside.load", "from . import x\nimport basinside.files"),
        ("basinside.model.step", "from basinside.science import steam"),
        ("basinside.science.steam", "import yaml"),
        ("basinside.check.rules", "from basinside import pipeline"),
        ("basinside.render.views", "from mkdocs.config import Config"),
        ("basinside.cli", "from basinside.score import marks"),
        ("basinside.problem", "from basinside.load import text"),
    ],
)
def test_a_wrong_import_is_found(module: str, source: str) -> None:
    assert len(imports.complaints(source, module, is_package=module == "basinside.load")) == 1


@pytest.mark.parametrize(
    ("module", "source"),
    [
        ("basinside.load.yaml", "from basinside.problem import Problem\nfrom . import spans"),
        ("basinside.check.rules.apart", "from ..order import x\nfrom basinside.model import Step"),
        ("basinside.pipeline", "from basinside import load, derive, files"),
        ("basinside.cli", "import click\nfrom basinside.pipeline import build"),
        ("basinside.mkdocs_plugin", "from mkdocs.plugins import BasePlugin"),
    ],
)
def test_a_right_import_is_not(module: str, source: str) -> None:
    assert imports.complaints(source, module) == []


@pytest.mark.parametrize(
    ("ask", "source"),
    [
        (touches_disk, "open('a')"),
        (touches_disk, "path.read_text()"),
        (reads_clock, "datetime.date.today()"),
        (reads_clock, "time.time()"),
        (draws, "secrets.token_bytes(3)"),
        (draws, "random.choice(a)"),
        (draws, "from random import shuffle"),
    ],
)
def test_reaching_the_world_is_found(ask: object, source: str) -> None:
    assert callable(ask)
    assert ask(ast.parse(source))


def test_a_seeded_draw_and_a_packaged_file_are_not_the_world() -> None:
    assert draws(ast.parse("random.Random(seed).shuffle(a)")) == []
    assert touches_disk(ast.parse("resources.files('a').joinpath('b').read_text()")) == []
