"""What is counted for a sheet is never less than what a browser sets, whatever is written."""

from __future__ import annotations

import random
import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser

from basinside import files
from basinside.derive.everything import derive
from basinside.load.content import load
from basinside.load.memory import Memory
from basinside.model.content import Content
from basinside.model.derived import Derived
from basinside.pipeline.build import open_theme
from basinside.render.print_file import all_prints, print_file
from tests.browser import printed
from tests.built import CHECKOUT

SEEDS = range(16)
PROCEDURES = (
    "uterine-aspirator-coldonly-soak",
    "steam-load",
    "making-up-chlorine",
    "uterine-aspirator-heatproof-vacuum-test",
)
WORDS = (
    "rinse the lid mask dry off in it a few still little illicit WWW MMM Ammonia zigzag 88 40, no?"
    " unscrew. (left) thermometer decontamination interrupted half-open “so” — ½ ² 92 °C"
).split(" ")
VALUES = (
    "{{ steam.vent }}",
    "{{ chlorine.hld-strength }}",
    "{{ steam.gauge }},",
    "{{ rinse.time }}.",
)
WALL = re.compile(r"^( *)wall: .*$", re.MULTILINE)
HEIGHTS = """() => ({
  column: Math.max(...[...document.querySelectorAll('.chart-column')]
    .map((each) => each.getBoundingClientRect().height)) * 25.4 / 96,
})"""


@pytest.fixture(scope="module")
def browser(
    tmp_path_factory: pytest.TempPathFactory, chromium_browser: Browser
) -> Iterator[Browser]:
    with printed.pinned(tmp_path_factory.mktemp("fonts"), chromium_browser) as started:
        yield started


@pytest.fixture(scope="module")
def memory() -> Memory:
    return Memory()


def _sentence(draw: random.Random, most: int) -> str:
    words = [draw.choice(WORDS) for _word in range(draw.randint(1, most))]
    if draw.random() < 0.4:
        words.insert(draw.randrange(len(words) + 1), draw.choice(VALUES))
    return " ".join(words)


def _drawn(seed: int, memory: Memory) -> tuple[str, Content, Derived]:
    """Return a handbook in which one procedure has other sentences for the wall."""
    draw = random.Random(seed)
    name = PROCEDURES[seed % len(PROCEDURES)]
    most = draw.randint(3, 13)
    raw = dict(files.read_authored(CHECKOUT))
    place = f"content/procedures/{name}.yaml"
    text = WALL.sub(lambda found: f"{found[1]}wall: '{_sentence(draw, most)}'", raw[place].decode())
    content, _problems = load({**raw, place: text.encode()}, memory)
    return name, content, derive(content)


@pytest.mark.parametrize("seed", SEEDS)
def test_a_chart_that_is_let_through_fits(
    seed: int, browser: Browser, memory: Memory, tmp_path: Path
) -> None:
    name, content, derived = _drawn(seed, memory)
    chart = derived.wall_charts[name]
    theme = open_theme()
    chosen = [each for each in all_prints(content, derived, theme) if each.of == name][:1]
    file = tmp_path / "chart.html"
    file.write_text(print_file(content, derived, theme, chosen), encoding="utf-8")
    page = printed.as_paper(browser, file.as_uri())
    heights = page.evaluate(HEIGHTS)
    assert heights["column"] <= chart.needed_mm
    if chart.fits:
        assert printed.over(page) == []
        assert [printed.sheets(page, paper) for paper in printed.PAPERS] == [1, 1]
    page.close()


def test_both_kinds_were_drawn(memory: Memory) -> None:
    fits = {
        derived.wall_charts[name].fits
        for name, _content, derived in (_drawn(seed, memory) for seed in SEEDS)
    }
    assert fits == {True, False}


def test_what_is_counted_is_not_far_more_than_what_is_set(
    browser: Browser, memory: Memory, tmp_path: Path
) -> None:
    """Most of what is counted is set: a chart is not refused for nothing."""
    shares = []
    theme = open_theme()
    content, _problems = load(files.read_authored(CHECKOUT), memory)
    derived = derive(content)
    for name in PROCEDURES:
        chosen = [each for each in all_prints(content, derived, theme) if each.of == name][:1]
        file = tmp_path / f"{name}.html"
        file.write_text(print_file(content, derived, theme, chosen), encoding="utf-8")
        page = printed.as_paper(browser, file.as_uri())
        shares.append(page.evaluate(HEIGHTS)["column"] / derived.wall_charts[name].needed_mm)
        page.close()
    assert min(shares) > 0.85


OTHER_PLACES = (
    ("altitude: 2350 m", "altitude: 4100 m", "strength: 5 %", "strength: 3.5 %"),
    ("altitude: 2350 m", "altitude: 40 m", "strength: 5 %", "strength: 8.25 %"),
    ("marks: 50 mL", "marks: 250 mL", "strength: 5 %", "strength: 2.6 %"),
)


@pytest.mark.parametrize("place", OTHER_PLACES, ids=lambda place: f"{place[1]}, {place[3]}")
def test_the_cards_and_logs_of_another_place_fit(
    place: tuple[str, str, str, str], browser: Browser, memory: Memory, tmp_path: Path
) -> None:
    raw = dict(files.read_authored(CHECKOUT))
    for name, old, new in (
        ("content/handbook.yaml", *place[:2]),
        ("content/agents/chlorine.yaml", *place[2:]),
    ):
        text = raw[name].decode()
        assert text.count(old) == 1
        raw[name] = text.replace(old, new).encode()
    content, _problems = load(raw, memory)
    derived, theme = derive(content), open_theme()
    for each in all_prints(content, derived, theme):
        if each.of:
            continue
        file = tmp_path / f"{each.name}.html"
        file.write_text(print_file(content, derived, theme, [each]), encoding="utf-8")
        page = printed.as_paper(browser, file.as_uri())
        assert printed.over(page) == [], each.name
        page.close()
