"""Run a command as a person would, and find what it printed."""

import json
import shutil
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from click.testing import CliRunner

from basinside.cli import main
from tests.built import CHECKOUT
from tests.make_sample_evidence import make


@dataclass(frozen=True)
class Ran:
    """What a command came to: its exit code and all that it printed."""

    code: int
    said: str

    @property
    def lines(self) -> list[str]:
        return [each for each in self.said.splitlines() if each.strip()]


def basinside(
    *arguments: object, typed: str | None = None, env: Mapping[str, str] | None = None
) -> Ran:
    """Run `basinside` with arguments; whatever it raises but an exit is an error of ours."""
    told = CliRunner().invoke(
        main, [str(each) for each in arguments], input=typed, env=dict(env or {})
    )
    if told.exception is not None and not isinstance(told.exception, SystemExit):
        raise told.exception
    return Ran(told.exit_code, told.output)


def make_clinic(folder: Path) -> Path:
    """A copy of the demonstration clinic with evidence made for its content as it is now."""
    for name in ("content", "quizzes"):
        shutil.copytree(CHECKOUT / name, folder / name)
    shutil.copy2(CHECKOUT / "mkdocs.yml", folder)
    make(folder)
    return folder


def phrases(clinic: Path) -> dict[str, str]:
    """The demonstration's phrases by name."""
    text = (clinic / "quizzes/sample-evidence/DEMO-PHRASES.txt").read_text(encoding="utf-8")
    pairs = (line.split("  ", 1) for line in text.splitlines() if "  " in line)
    return {name.strip(): words.strip() for name, words in pairs}


def evidence(clinic: Path, start: str = "M-12-") -> list[Path]:
    folder = clinic / "quizzes" / "sample-evidence"
    return sorted(each for each in folder.glob(f"{start}*.json") if "key" not in each.name)


def sign(clinic: Path, into: Path, files: list[Path], *more: object, on: str = "2026-11-20") -> Ran:
    """Sign for M-12 with the demonstration key, on a day, with the files given."""
    known = phrases(clinic)
    return basinside(
        "sign", "--folder", clinic, "--scope", "bag-masks", "--learner", "M-12",
        "--key", clinic / "quizzes/sample-evidence/S-01.key.json", "--on", on,
        "--phrase", known["Key phrase of S-01"], "--marking-phrase", known["Marking phrase"],
        "--into", into, *more, *files,
    )  # fmt: skip


def edited(path: Path, into: Path, **changes: Any) -> Path:
    """A copy of a JSON file with some members changed; None takes one away."""
    value = json.loads(path.read_text(encoding="utf-8"))
    value = {name: each for name, each in {**value, **changes}.items() if each is not None}
    out = into / path.name
    out.write_text(json.dumps(value), encoding="utf-8")
    return out
