"""How long an author waits from a save until the preview shows it."""

from __future__ import annotations

import socket
import subprocess
import sys
import time
import urllib.error
import urllib.request
from pathlib import Path
from typing import Final

PATIENCE_SECONDS: Final = 120
PAGE: Final = "procedures/work-0003.html"
FILE: Final = "content/procedures/work-0003.yaml"
SAVED: Final = "Saved just now."


def seconds_to_be_seen(clinic: Path) -> float:
    """Return the seconds from saving one procedure until its page on loopback shows it."""
    with socket.socket() as taken:
        taken.bind(("127.0.0.1", 0))
        port = int(taken.getsockname()[1])
    command = [sys.executable, "-m", "basinside", "preview"]
    server = subprocess.Popen(
        [*command, "--folder", str(clinic), "--port", str(port)],
        stdout=subprocess.DEVNULL,
        stderr=subprocess.DEVNULL,
    )
    try:
        _wait_for(port, "")
        file = clinic / FILE
        text = file.read_text(encoding="utf-8")
        line = next(each for each in text.splitlines() if " do: " in each)
        time.sleep(1)  # the watcher of the server looks twice a second
        begin = time.perf_counter()
        file.write_text(text.replace(line, f"{line} {SAVED}"), encoding="utf-8")
        _wait_for(port, SAVED)
        return time.perf_counter() - begin
    finally:
        server.terminate()
        server.wait(10)


def _wait_for(port: int, words: str) -> None:
    end = time.monotonic() + PATIENCE_SECONDS
    while time.monotonic() < end:
        try:
            with urllib.request.urlopen(f"http://127.0.0.1:{port}/{PAGE}", timeout=30) as answer:
                if words in answer.read().decode():
                    return
        except (urllib.error.URLError, ConnectionError, TimeoutError):
            pass
        time.sleep(0.05)
    raise TimeoutError("the preview did not show the page")
