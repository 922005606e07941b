"""The hook for authors who use git: what it names is there, runs and stops a commit."""

import re
import shlex
import subprocess
import sys
import tomllib
from pathlib import Path
from typing import Any

import yaml

from tests.built import CHECKOUT
from tests.cli.run import basinside


def hook() -> dict[str, Any]:
    (only,) = yaml.safe_load((CHECKOUT / ".pre-commit-hooks.yaml").read_text(encoding="utf-8"))
    assert isinstance(only, dict)
    return only


def run_entry(folder: Path) -> subprocess.CompletedProcess[str]:
    """Run the entry as git would: in the author's folder, with no names of files after it."""
    project = tomllib.loads((CHECKOUT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    program, *words = shlex.split(hook()["entry"])
    assert program in project["scripts"]
    command = [sys.executable, "-m", program, *words]
    return subprocess.run(command, cwd=folder, capture_output=True, text=True, check=False)


def test_the_hook_passes_a_sound_handbook_and_stops_a_broken_one(tmp_path: Path) -> None:
    own = tmp_path / "own"
    basinside("new", own)
    passed = run_entry(own)
    assert (passed.returncode, passed.stderr) == (0, ""), passed.stdout
    figures = own / "content/figures/boiling.yaml"
    figures.write_text(figures.read_text(encoding="utf-8").replace("basis: ", "bassis: ", 1))
    stopped = run_entry(own)
    assert stopped.returncode == 1
    assert stopped.stdout.startswith("content/figures/boiling.yaml:")


def test_the_hook_is_asked_only_for_what_is_checked() -> None:
    asked = re.compile(hook()["files"])
    assert asked.search("content/figures/boiling.yaml")
    assert asked.search("quizzes/questions/steam.yaml")
    assert not asked.search("README.md")
    assert hook()["pass_filenames"] is False
    assert set(hook()) >= {"id", "name", "entry", "language"}
