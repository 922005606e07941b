"""Both sides of the bench say the same words, or their speeds could not be compared."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

from tests.benchmarks.synthetic import make_clinic, make_markdown, words_of

PROCEDURES = 12


def _mkdocs(folder: Path) -> Path:
    subprocess.run(
        [sys.executable, "-m", "mkdocs", "build", "-q", "-f", str(folder / "mkdocs.yml")],
        check=True,
    )
    return folder / "site"


def test_the_plain_markdown_says_what_the_handbook_says(tmp_path: Path) -> None:
    ours, bare = tmp_path / "ours", tmp_path / "bare"
    ours.mkdir()
    bare.mkdir()
    make_clinic(ours, PROCEDURES)
    built = _mkdocs(ours)
    make_markdown(built, bare)
    plain = _mkdocs(bare)
    pages = sorted(path.relative_to(built) for path in built.rglob("*.html"))
    assert len(pages) > 2 * PROCEDURES
    for page in pages:
        said = words_of((built / page).read_text(encoding="utf-8"))
        assert words_of((plain / page).read_text(encoding="utf-8")) == said, page


def test_the_synthetic_handbook_has_ten_items_a_procedure(tmp_path: Path) -> None:
    make_clinic(tmp_path, PROCEDURES)
    text = "".join(path.read_text() for path in (tmp_path / "quizzes").rglob("*.yaml"))
    assert text.count("- item: ") == PROCEDURES * 10
    assert len(list((tmp_path / "content" / "procedures").iterdir())) == PROCEDURES
