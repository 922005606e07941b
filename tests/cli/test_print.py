"""Paper at the prompt: what there is, any choice of it in one file, and what is refused."""

from __future__ import annotations

import html
import json
import re
from pathlib import Path

import pytest

from tests.built import CHECKOUT
from tests.cli.run import basinside


def _sheets(file: Path) -> list[str]:
    return re.findall(r'<h1 class="sheet-title">([^<]*)</h1>', file.read_text(encoding="utf-8"))


def test_the_list_names_every_print() -> None:
    told = basinside("print", "--list", "--folder", CHECKOUT)
    assert told.code == 0
    names = [line for line in told.said.splitlines() if line and not line.startswith(" ")]
    assert names[:3] == ["exposure-card", "chemical-accident-card", "dilution-card"]
    assert "wall-chart-speculum-boil" in names
    assert "use-tally-uterine-aspirator-heatproof" in names
    assert len(names) == len(set(names))


def test_any_choice_of_prints_becomes_one_file(tmp_path: Path) -> None:
    file = tmp_path / "deep" / "monday.html"
    told = basinside(
        "print", "dilution-card", "use-tally", "wall-chart-speculum-boil", "dilution-card",
        "--into", file, "--folder", CHECKOUT,
    )  # fmt: skip
    assert told.code == 0
    assert "4 sheets" in told.said
    titles = _sheets(file)
    assert titles[0].startswith("Chlorine")
    assert [title.partition(":")[0] for title in titles[1:3]] == ["Uses", "Uses"]
    assert titles[3].endswith("boiling")


def test_the_file_needs_nothing_beside_it(tmp_path: Path) -> None:
    file = tmp_path / "all.html"
    assert basinside("print", "all", "--into", file, "--folder", CHECKOUT).code == 0
    text = file.read_text(encoding="utf-8")
    assert not re.search(r"<script|<link|https?://(?!www\.w3\.org)|\bsrc=|\burl\((?!#)", text)
    assert re.findall(r'<a\b[^>]*href="(?!#)', text) == []
    ids = re.findall(r'\bid="([^"]+)"', text)
    assert len(ids) == len(set(ids)) > 50
    assert "style-src 'sha256-" in html.unescape(text)


@pytest.mark.parametrize(
    ("asked", "said"),
    [
        ("wallchart", "Did you mean “wall-chart”?"),
        ("wall-chart-speculum-boyl", "Did you mean “wall-chart-speculum-boil”?"),
        ("poster", "basinside print --list"),
    ],
)
def test_a_name_that_means_no_print_is_refused(asked: str, said: str, tmp_path: Path) -> None:
    file = tmp_path / "paper.html"
    told = basinside("print", asked, "--into", file, "--folder", CHECKOUT)
    assert (told.code, file.exists()) == (1, False)
    assert said in told.said


def test_only_a_page_is_ever_written(tmp_path: Path) -> None:
    kept = tmp_path / "handbook.yaml"
    kept.write_text("handbook: mine\n")
    told = basinside("print", "all", "--into", kept, "--folder", CHECKOUT)
    assert told.code == 1
    assert kept.read_text() == "handbook: mine\n"


def test_nothing_asked_for_is_misuse() -> None:
    told = basinside("print", "--folder", CHECKOUT)
    assert told.code == 2
    assert "--list" in told.said


def test_what_stops_a_handbook_stops_its_paper(tmp_path: Path) -> None:
    folder = tmp_path / "clinic"
    basinside("new", folder)
    figures = folder / "content" / "figures" / "boiling.yaml"
    figures.write_text(figures.read_text().replace("basis: published", "basis: book"))
    told = basinside("print", "all", "--into", tmp_path / "paper.html", "--folder", folder)
    assert told.code == 1
    assert "basinside check" in told.said
    assert not (tmp_path / "paper.html").exists()


def write_what_check_says(folder: Path) -> None:
    """Write each value that check worked out anew, as an author would, and drop its source's."""
    told = json.loads(basinside("check", "--json", "--folder", folder).said)
    stale = [each for each in told if each["rule"] == "worked-out-elsewhere"]
    assert stale
    for each in stale:
        path = folder / each["file"]
        lines = path.read_text(encoding="utf-8").splitlines(keepends=True)
        said = re.search(r"[Ww]rite (.+) or a little to the safe side", each["hint"])
        assert said, each["hint"]
        lines[each["line"] - 1] = f"    value: {said[1]}\n"
        after = range(each["line"], each["line"] + 4)
        says = next(n for n in after if "source_says" in lines[n])
        lines[says] = "\n"
        path.write_text("".join(lines), encoding="utf-8")


def test_paper_follows_the_place(tmp_path: Path) -> None:
    """Another altitude and another bottle: check names each value, then every sheet agrees."""
    folder = tmp_path / "elsewhere"
    basinside("demo", folder)
    for name, old, new in (
        ("content/handbook.yaml", "altitude: 2350 m", "altitude: 300 m"),
        ("content/agents/chlorine.yaml", "strength: 5 % available", "strength: 3.5 % available"),
    ):
        path = folder / name
        text = path.read_text(encoding="utf-8")
        assert text.count(old) == 1
        path.write_text(text.replace(old, new), encoding="utf-8")
    file = tmp_path / "paper.html"
    kinds = ("dilution-card", "boiling-and-gauge-card", "wall-chart-making-up-chlorine")
    asked = ("print", *kinds, "--into", file, "--folder", folder)
    assert basinside(*asked).code == 1
    write_what_check_says(folder)
    told = basinside(*asked)
    assert told.code == 0, told.said
    text = file.read_text(encoding="utf-8")
    plain = re.sub(r"<[^>]*>|\s+", " ", text).replace("\u00a0", " ")
    assert "300 m" in plain
    assert "Bottle: 3.5 % available chlorine." in plain
    assert re.search(r"29 mL\D", plain)
    assert re.search(r"150 mL\D", plain)
    assert not re.search(r"\b100 mL\b chlorine", plain)
