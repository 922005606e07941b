"""Which module imports what: the rules between the rooms of generator/basinside/."""

import ast
from collections.abc import Iterator
from dataclasses import dataclass

ROOMS = frozenset(
    [
        "model",
        "load",
        "science",
        "derive",
        "seal",
        "check",
        "render",
        "score",
        "statistics",
        "certify",
    ]
)
OPEN = frozenset(("problem", "quantity", "constants", "canonical", "science", "model"))
EDGES = frozenset(("cli", "mkdocs_plugin", "pipeline", "files", "__main__"))

# What a module may import of basinside beside itself and OPEN. The pipeline may import all.
ALSO = {
    "cli": frozenset({"pipeline"}),
    "__main__": frozenset({"cli"}),
    "mkdocs_plugin": frozenset({"pipeline"}),
}
CLOSED = {"model": frozenset({"science"})}  # open to all, but not to everybody's every wish
NOT_THERE = {
    "science": frozenset(("yaml", "pathlib", "os", "io", "json")),
    "model": frozenset(("yaml", "os", "io")),
    "derive": frozenset(("yaml", "os", "io", "mkdocs", "jinja2")),
    "seal": frozenset(("jinja2", "markupsafe", "html")),
    "score": frozenset(("jinja2", "markupsafe", "html")),
}
ONLY_THERE = {"mkdocs": "mkdocs_plugin", "click": "cli"}


@dataclass(frozen=True, kw_only=True)
class Import:
    """One imported dotted name and its line."""

    name: str
    line: int


def imports(source: str, module: str, *, is_package: bool) -> Iterator[Import]:
    """Yield every import of a module, relative ones made whole.

    Parameters: the source text, the module's dotted name, and whether it is an ``__init__``.
    """
    parts = module.split(".")
    for node in ast.walk(ast.parse(source)):
        if isinstance(node, ast.Import):
            for alias in node.names:
                yield Import(name=alias.name, line=node.lineno)
        elif isinstance(node, ast.ImportFrom):
            start = parts[: len(parts) - node.level + is_package] if node.level else []
            stem = ".".join([*start, *([node.module] if node.module else [])])
            for alias in node.names:
                yield Import(name=f"{stem}.{alias.name}", line=node.lineno)


def first_inside(name: str) -> str:
    """Return the room or top module of a dotted name in basinside; '' for other packages."""
    parts = name.split(".")
    return parts[1] if parts[0] == "basinside" and len(parts) > 1 else ""


def complaints(source: str, module: str, *, is_package: bool = False) -> list[str]:
    """Return what a module imports against the rules, one sentence each with its line."""
    own = first_inside(module)
    found = []
    for each in imports(source, module, is_package=is_package):
        there, package = first_inside(each.name), each.name.split(".")[0]
        said = f"line {each.line}: {own or module} imports {each.name}"
        if there in ROOMS | EDGES and own not in (there, "pipeline"):
            allowed = (OPEN | ALSO.get(own, frozenset())) - CLOSED.get(own, frozenset())
            if there not in allowed:
                found.append(f"{said}: only the pipeline joins rooms")
        if package in NOT_THERE.get(own, frozenset()):
            found.append(f"{said}: not in that room")
        if package in ONLY_THERE and own != ONLY_THERE[package]:
            found.append(f"{said}: only {ONLY_THERE[package]} may")
    return found
