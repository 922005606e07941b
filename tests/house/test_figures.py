"""Each constant with a meaning says where it comes from; no function is longer than a screen."""

import ast
from collections.abc import Iterator
from pathlib import Path

from tests.house.source_files import PACKAGE, named, ours

SCREEN_LINES = 75
"""Lines of a function that a reader can hold beside its callers (our own bound)."""


def assigned(tree: ast.Module) -> Iterator[tuple[ast.stmt, str, bool]]:
    """Yield (statement, name, whether words stand right below it or below its group)."""
    for at, each in enumerate(tree.body):
        target = each.target if isinstance(each, ast.AnnAssign) else None
        if isinstance(target, ast.Name):
            rest = iter(tree.body[at + 1 :])
            after = next((one for one in rest if not isinstance(one, ast.AnnAssign)), None)
            below = isinstance(after, ast.Expr) and isinstance(after.value, ast.Constant)
            yield each, target.id, below


def unsourced(source: str) -> list[str]:
    """Return the constants of a module that have neither words below nor a remark beside."""
    lines = source.splitlines()
    return [
        name
        for each, name, below in assigned(ast.parse(source))
        if not below
        and not any("#" in line for line in lines[max(0, each.lineno - 4) : each.end_lineno])
    ]


def long_functions(path: Path) -> Iterator[str]:
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.FunctionDef):
            length = (node.end_lineno or node.lineno) - node.lineno + 1
            if length > SCREEN_LINES:
                yield f"{named(path)}:{node.lineno} {node.name}: {length} lines"


def test_constants_that_rooms_share_say_where_they_come_from() -> None:
    source = (PACKAGE / "constants.py").read_text(encoding="utf-8")
    assert len(list(assigned(ast.parse(source)))) > 15
    assert unsourced(source) == []


def test_each_science_of_the_trade_names_its_source() -> None:
    modules = [path for path in ours(".py", below=PACKAGE / "science") if path.stem != "__init__"]
    assert modules
    for path in modules:
        words = ast.get_docstring(ast.parse(path.read_text(encoding="utf-8"))) or ""
        assert "Source" in words, named(path)


def test_a_function_fits_a_screen() -> None:
    assert [said for path in ours(".py", below=PACKAGE) for said in long_functions(path)] == []


def test_a_bare_constant_would_be_found() -> None:
    assert unsourced("A: Final = 3\n\n\n\n\nB: Final = 4\n\ndef f(): ...\n") == ["A", "B"]
    assert unsourced('A: Final = 3\nB: Final = 4\n"""Both from the book, p. 4."""\n') == []
    assert unsourced("A: Final = 3  # common practice\n") == []
