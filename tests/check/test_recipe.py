"""The recipe of DEVELOPERS.md, followed word for word on a copy: the new rule speaks."""

import os
import re
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from tests.built import CHECKOUT

RECIPE = re.compile(r"```\w+\n(?P<text># (?P<file>\S+)\n.*?)```", re.DOTALL)
REGISTRY = Path("generator/basinside/check/registry.py")


def ran(copy: Path, *words: str) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [sys.executable, "-m", *words],
        cwd=copy,
        env={**os.environ, "PYTHONPATH": str(copy / "generator")},
        capture_output=True,
        text=True,
        check=False,
    )


@pytest.fixture
def copy(tmp_path: Path) -> Path:
    """A copy of the checkout, as far as rules need it, with what the recipe writes."""
    ignored = shutil.ignore_patterns("__pycache__")
    for name in ("generator", "tests/check", "site_theme"):
        shutil.copytree(CHECKOUT / name, tmp_path / name, ignore=ignored)
    for name in ("pyproject.toml", "tests/built.py"):
        shutil.copy(CHECKOUT / name, tmp_path / name)
    recipe = (CHECKOUT / "DEVELOPERS.md").read_text(encoding="utf-8").partition("### Add a rule")[2]
    written = list(RECIPE.finditer(recipe.partition("\n### ")[0]))
    assert [Path(each["file"]).suffix for each in written] == [".py", ".yaml"]
    for each in written:
        file = tmp_path / each["file"]
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_text(each["text"], encoding="utf-8")
    return tmp_path


def register(copy: Path) -> None:
    """Write the import and the line in the tuple, as the recipe's second point asks."""
    registry = copy / REGISTRY
    text = registry.read_text(encoding="utf-8")
    at = "RULES: Final[tuple[Rule, ...]] = ("
    module = "basinside.check.rules.instruments.pieces_marked"
    assert text.count(at) == 1
    text = text.replace(at, f"{at}\n    check_pieces_marked,")
    text = text.replace("\nRULES:", f"\nfrom {module} import check_pieces_marked\n\nRULES:")
    registry.write_text(text, encoding="utf-8")


def test_a_rule_is_added_by_the_recipe(copy: Path) -> None:
    asked = ("pytest", "tests/check/test_cases.py", "-q", "-p", "no:cacheprovider", "-k", "marked")
    case = "pieces-marked/bad-no-marks"
    before = ran(copy, *asked)
    assert before.returncode == 1
    assert "pieces-marked" in before.stdout
    register(copy)
    after = ran(copy, *asked, "-k", case)
    assert after.returncode == 0, after.stdout
    assert "1 passed" in after.stdout
    page = ran(copy, "basinside", "check", "--explain", "pieces-marked")
    assert "reaches none of them" in page.stdout, page.stderr
