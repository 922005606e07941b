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
    assert "bag-mask-silicone-boil.yaml:" in broken
    assert "Then hum a tune." in broken  # the last good page still stands below the problem

    file.write_text(good, encoding="utf-8")
    _until(lambda: "doo" not in get(page))
    assert "Then hum a tune." not in get(page)


def test_only_the_preview_softens_the_content_policy(get: Callable[[str], str]) -> None:
    page = get("index.html")
    assert "script-src &#39;self&#39; &#39;unsafe-inline&#39;" in page
    assert "connect-src &#39;self&#39;" in page
