"""What the preview remembers of its pages is what a build from nothing would make."""

from __future__ import annotations

import shutil
from collections.abc import Callable
from pathlib import Path

import pytest

from basinside import files
from basinside.pipeline import build
from tests.built import CHECKOUT

BOIL = "content/procedures/bag-mask-silicone-boil.yaml"


class Preview:
    """A clinic that is read again after each change, as the preview server does."""

    def __init__(self, root: Path) -> None:
        self.root = root
        self.memory, self.pages = build.Memory(), build.PageMemory()
        self.before: build.Clinic | None = None
        self.theme: build.Theme | None = None

    def made(self) -> dict[str, str]:
        self.before = build.read_clinic(self.root, memory=self.memory, before=self.before)
        self.theme = build.open_theme(self.theme)
        made = build.handbook_files(self.before, self.theme, memory=self.pages)
        return {path: make() for path, make in made}


def from_nothing(root: Path) -> dict[str, str]:
    clinic = build.read_clinic(root)
    return {path: make() for path, make in build.handbook_files(clinic, build.open_theme())}


def _first_step_gone(root: Path) -> None:
    text = (root / BOIL).read_text(encoding="utf-8")
    first = text.index("      - step: ")
    second = text.index("      - step: ", first + 1)
    (root / BOIL).write_text(text[:first] + text[second:], encoding="utf-8")


def _other_title(root: Path) -> None:
    text = (root / BOIL).read_text(encoding="utf-8")
    changed = text.replace("instrument: ", "title: The long boil\ninstrument: ", 1)
    (root / BOIL).write_text(changed, encoding="utf-8")


def _no_practice(root: Path) -> None:
    for file in (root / "quizzes" / "questions").iterdir():
        if not file.name.startswith("assessment-"):
            file.unlink()


def _another_value(root: Path) -> None:
    file = root / "content" / "figures" / "boiling.yaml"
    text = file.read_text(encoding="utf-8")
    file.write_text(text.replace("value: 20 min", "value: 25 min", 1), encoding="utf-8")


@pytest.mark.parametrize("change", [_first_step_gone, _other_title, _no_practice, _another_value])
def test_a_change_reaches_every_page_it_concerns(
    tmp_path: Path, change: Callable[[Path], None]
) -> None:
    for name in ("content", "quizzes"):
        shutil.copytree(CHECKOUT / name, tmp_path / name)
    preview = Preview(tmp_path)
    before = preview.made()
    change(tmp_path)
    after = preview.made()
    assert after != before
    assert after == from_nothing(tmp_path)


def test_the_theme_is_opened_again_only_when_a_file_of_it_changed(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    theme = build.open_theme()
    assert build.open_theme(theme) is theme
    read = files.read_theme()
    monkeypatch.setattr(files, "read_theme", lambda: {**read, "css/tokens.css": "p { margin: 0 }"})
    assert build.open_theme(theme) is not theme


CHANGES = (
    ("content/words.yaml", "word: ", "word: zz "),
    ("content/agents/chlorine.yaml", "name: Chlorine solution", "name: Chlorine liquid"),
    ("content/instruments/uterine-aspirator-heatproof.yaml", "name: Uterine", "name: Raised-ring"),
    ("content/procedures/making-up-chlorine.yaml", "title: ", "title: New "),
    ("content/instruments/vacuum-extractor.yaml", "boil: no", "boil: yes"),
    ("content/routes/chlorine-wipe.yaml", "name: ", "name: New "),
    ("content/figures/steam.yaml", "chosen: >-", "chosen: >-\n      Now."),
    ("quizzes/observations/bag-mask-silicone-boil.yaml", "see: ", "see: Now. "),
    ("quizzes/questions/steam.yaml", "says: >-", "says: >-\n        Now."),
    ("quizzes/assessments/core.yaml", "title: ", "title: New "),
    ("content/handbook.yaml", "at: beside the stove", "at: over the stove"),
)


def test_changes_one_after_another_reach_every_page_they_concern(tmp_path: Path) -> None:
    for name in ("content", "quizzes"):
        shutil.copytree(CHECKOUT / name, tmp_path / name)
    preview = Preview(tmp_path)
    before = preview.made()
    for file, old, new in CHANGES:
        text = (tmp_path / file).read_text(encoding="utf-8")
        assert old in text, (file, old)
        (tmp_path / file).write_text(text.replace(old, new, 1), encoding="utf-8")
        after = preview.made()
        assert after != before, file
        wanted = from_nothing(tmp_path)
        assert [path for path in wanted if after.get(path) != wanted[path]] == [], file
        before = after
