"""The preview server as an author meets it: save, look, break, mend."""

from __future__ import annotations

import shutil
import socket
import subprocess
import sys
import time
import urllib.error
import urllib.request
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from mkdocs.config import load_config
from mkdocs.structure.files import Files

from basinside import files
from basinside.mkdocs_plugin import BasinsidePlugin, HandbookFile
from tests.built import CHECKOUT

PATIENCE_SECONDS = 30


@pytest.fixture
def clinic(tmp_path: Path) -> Path:
    for name in ("content", "quizzes"):
        shutil.copytree(CHECKOUT / name, tmp_path / name)
    shutil.copy(CHECKOUT / "mkdocs.yml", tmp_path / "mkdocs.yml")
    return tmp_path


def _free_port() -> int:
    with socket.socket() as taken:
        taken.bind(("127.0.0.1", 0))
        return int(taken.getsockname()[1])


@pytest.fixture
def get(clinic: Path) -> Iterator[Callable[[str], str]]:
    port = _free_port()
    server = subprocess.Popen(
        [sys.executable, "-m", "basinside", "preview", "--folder", clinic, "--port", str(port)],
        stdout=subprocess.DEVNULL,
        stderr=subprocess.DEVNULL,
    )

    def fetch(path: str) -> str:
        with urllib.request.urlopen(f"http://127.0.0.1:{port}/{path}", timeout=10) as answer:
            return str(answer.read().decode())

    try:
        _until(lambda: "Highfell" in fetch("index.html"))
        yield fetch
    finally:
        server.terminate()
        server.wait(10)


def _until(ready: Callable[[], bool]) -> None:
    end = time.monotonic() + PATIENCE_SECONDS
    while True:
        try:
            if ready():
                return
        except (urllib.error.URLError, ConnectionError, TimeoutError):
            pass
        if time.monotonic() > end:
            raise AssertionError("the preview did not show what was awaited")
        time.sleep(0.1)


def test_a_save_is_seen_and_a_mistake_keeps_the_last_good_page(
    clinic: Path, get: Callable[[str], str]
) -> None:
    page = "procedures/bag-mask-silicone-boil.html"
    file = clinic / "content" / "procedures" / "bag-mask-silicone-boil.yaml"
    good = file.read_text(encoding="utf-8")
    old = next(line for line in good.splitlines() if " do: " in line)
    file.write_text(good.replace(old, f"{old} Then hum a tune."), encoding="utf-8")
    _until(lambda: "Then hum a tune." in get(page))

    file.write_text(good.replace("  do: ", "  doo: ", 1), encoding="utf-8")
    _until(lambda: "doo" in get(page))
    broken = get(page)
    assert "doo" in banners(broken)
    assert "bag-mask-silicone-boil.yaml:" in broken
    assert "Then hum a tune." in broken  # the last good page still stands below the problem

    file.write_text(good, encoding="utf-8")
    _until(lambda: "doo" not in get(page))
    assert "Then hum a tune." not in get(page)


def banners(page: str) -> str:
    """What stands in the banners of a page."""
    _, _, rest = page.partition('<section class="banners"')
    return rest.partition("</section>")[0]


def test_problems_stand_on_the_page_that_they_concern_and_the_rest_on_the_first(
    clinic: Path, get: Callable[[str], str]
) -> None:
    figures = clinic / "content" / "figures" / "boiling.yaml"
    good = figures.read_text(encoding="utf-8")
    figures.write_text(good.replace("basis: ", "bassis: ", 1), encoding="utf-8")
    _until(lambda: "bassis" in banners(get("values.html")))
    start, other = get("index.html"), get("procedures/speculum-boil.html")
    assert "bassis" not in start
    assert 'on the page <a href="values.html">' in banners(start)
    assert "bassis" not in other
    assert 'this is the page as it was before. <a href="../index.html">' in banners(other)
    assert "20" in other

    (clinic / "content" / "nowhere.yaml").write_text("a: b\n", encoding="utf-8")
    _until(lambda: "content/nowhere.yaml:" in banners(get("index.html")))

    (clinic / "content" / "nowhere.yaml").unlink()
    figures.write_text(good, encoding="utf-8")
    _until(lambda: 'data-kind="problem"' not in get("procedures/speculum-boil.html"))
    assert 'data-kind="problem"' not in get("values.html")


def test_a_file_that_cannot_be_read_keeps_the_last_good_pages(
    clinic: Path, get: Callable[[str], str]
) -> None:
    page = "procedures/speculum-boil.html"
    title = "<h1"
    file = clinic / "content" / "procedures" / "speculum-boil.yaml"
    good = file.read_bytes()
    file.write_bytes(b"\xff\xfe" + good.decode().encode("utf-16-le"))
    _until(lambda: "UTF-16" in banners(get(page)))
    assert title in get(page)
    assert "speculum-boil.yaml" in banners(get(page))
    file.write_bytes(good)
    _until(lambda: 'data-kind="problem"' not in get(page))


def test_a_folder_that_cannot_be_read_keeps_the_last_good_pages(
    clinic: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    config = load_config(str(clinic / "mkdocs.yml"))
    plugin = BasinsidePlugin()
    plugin.on_startup(command="serve", dirty=False)
    plugin.on_config(config)
    monkeypatch.setattr(files, "MOST_FILES", 1)
    plugin.on_config(config)
    made = {each.src_uri: each for each in plugin.on_files(Files([]), config)}
    start, page = made["index.html"], made["procedures/speculum-boil.html"]
    assert isinstance(start, HandbookFile)
    assert isinstance(page, HandbookFile)
    assert "more than 1 files" in banners(start.make())
    assert "as it was before" in banners(page.make())


def test_only_the_preview_softens_the_content_policy(get: Callable[[str], str]) -> None:
    page = get("index.html")
    assert "script-src &#39;self&#39; &#39;unsafe-inline&#39;" in page
    assert "connect-src &#39;self&#39;" in page
