"""The example handbook, file by file: no page changes unseen."""

import difflib
from pathlib import Path

import pytest

from tests.golden.example import ASSETS, EXAMPLE, built, differences, golden, problems, whole

ACCEPT = "python -m tests.golden accept"
LINES_SHOWN = 40


@pytest.fixture(scope="session")
def kept(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The folder that was built, kept for whoever wants to look at it."""
    folder = tmp_path_factory.mktemp("example")
    for name, text in whole().items():
        path = folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8", newline="\n")
    return folder


def test_the_example_is_small_whole_and_without_a_problem() -> None:
    assert problems() == ()
    for folder, count in (("procedures", 4), ("instruments", 2), ("agents", 1)):
        assert len(list((EXAMPLE / "content" / folder).glob("*.yaml"))) == count


def test_the_folder_holds_what_it_should() -> None:
    assert sorted(built()) == sorted(golden()), f"look, then run: {ACCEPT}"


@pytest.mark.parametrize("name", sorted(golden()))
def test_a_file_is_as_it_should_be(name: str, kept: Path) -> None:
    now = built().get(name, "")
    if now == golden()[name]:
        return
    lines = difflib.unified_diff(
        golden()[name].splitlines(), now.splitlines(), "golden", "now", n=1, lineterm=""
    )
    shown = "\n".join(list(lines)[:LINES_SHOWN])
    pytest.fail(f"{shown}\n\nThe page is {kept / name}\nIf it is right, run: {ACCEPT}")


def test_the_assets_are_there() -> None:
    assets = {name for name in whole() if name.startswith(ASSETS)}
    assert assets == {
        "assets/basinside.css",
        "assets/basinside.js",
        "assets/search-index.js",
        "assets/store.js",
    }


def test_the_refused_route_says_why() -> None:
    page = built()["instruments/ear-tip.html"]
    refused = page[page.index("Boiling") :]
    assert "cone" in refused
    assert "Care of Alder specula and ear tips" in page


def test_building_again_gives_the_same() -> None:
    first = dict(whole())
    whole.cache_clear()
    assert whole() == first


def test_what_differs_is_named() -> None:
    assert differences({**golden(), "index.html": "x", "new.html": "y"}) == [
        "index.html",
        "new.html",
    ]
    less = {name: text for name, text in golden().items() if name != "values.html"}
    assert differences(less) == ["values.html"]
