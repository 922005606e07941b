"""``make bench``: speeds and memory as ratios in one run, with the machine named.

Nothing here is asserted; the figures are for people. Both sides of a ratio run cold, without a
cache, in a process of their own, with the same collector setting.
"""

from __future__ import annotations

import json
import os
import platform
import subprocess
import sys
import tempfile
import time
from pathlib import Path

from basinside.pipeline import build
from tests.benchmarks import pages
from tests.benchmarks.preview import seconds_to_be_seen
from tests.benchmarks.synthetic import CHECKOUT, make_clinic, make_markdown

SIZES = (10, 100, 1_000)
RUNS = 3
MKDOCS = "import gc, sys; gc.disable(); from mkdocs.__main__ import cli; cli(sys.argv[1:])"


def main() -> None:
    sizes = [int(each) for each in sys.argv[1:]] or list(SIZES)
    print(
        f"machine: {platform.machine()}, {os.cpu_count()} cores, Python "
        f"{platform.python_version()}, {platform.system()} {platform.release()}"
    )
    demo()
    pages.main()
    for size in sizes:
        with tempfile.TemporaryDirectory() as folder:
            bench(Path(folder), size)


def demo() -> None:
    """Print how long the demonstration handbook takes, after start-up."""
    with tempfile.TemporaryDirectory() as folder:
        begin = time.perf_counter()
        clinic = build.read_clinic(CHECKOUT)
        for path, make in build.handbook_files(clinic, build.open_theme()):
            build.write_made(Path(folder) / path, make().encode())
        print(f"demo build after start-up: {time.perf_counter() - begin:.2f} s (held: 1 s)")


def bench(folder: Path, size: int) -> None:
    """Print every row for one size."""
    ours, bare = folder / "ours", folder / "bare"
    ours.mkdir()
    bare.mkdir()
    make_clinic(ours, size)
    _mkdocs(ours)
    make_markdown(ours / "site", bare)
    builds: dict[str, list[tuple[float, float]]] = {"ours": [], "bare": []}
    for _ in range(RUNS):  # paired: one of each in turn, so that a busy moment hits both
        builds["ours"].append(_mkdocs(ours))
        builds["bare"].append(_mkdocs(bare))
    mine, its = (min(each[0] for each in builds[name]) for name in ("ours", "bare"))
    memory = max(each[1] for each in builds["ours"])
    parts = _parts(ours)
    print(f"\n{size} procedures, {size * 10} items")
    _row("full build / bare MkDocs, same text", mine / its, 0.75, f"{mine:.2f} s / {its:.2f} s")
    _row(
        "full build / load + validate + templates + write",
        parts["full"] / parts["bound"],
        1.5,
        f"{parts['full']:.2f} s / {parts['bound']:.2f} s, in process",
    )
    _row(
        "check / loading",
        parts["check"] / parts["load"],
        0.3,
        f"{parts['check']:.2f} s / {parts['load']:.2f} s",
    )
    _row(
        "rebuild of one edited file / cold",
        parts["again"] / parts["full"],
        0.35,
        f"{parts['again']:.2f} s / {parts['full']:.2f} s",
    )
    print(f"  preview, from save to seen: {seconds_to_be_seen(ours):.1f} s (held: 2 s at 1,000)")
    print(f"  memory of the build: {memory:.0f} MB (held: 300 MB at 1,000)")


def _row(what: str, ratio: float, held: float, seconds: str) -> None:
    print(f"  {what}: {ratio:.2f} (held: {held:.2f}; {seconds})")


def _mkdocs(folder: Path) -> tuple[float, float]:
    """Return (processor seconds, peak MB) of one cold build."""
    command = [sys.executable, "-c", MKDOCS, "build", "-q", "-f", str(folder / "mkdocs.yml")]
    environment = {**os.environ, "PYTHONHASHSEED": "0"}
    process = subprocess.Popen(command, env=environment)
    _, status, used = os.wait4(process.pid, 0)
    if status:
        raise SystemExit(f"{folder}: the build failed")
    return used.ru_utime + used.ru_stime, used.ru_maxrss / 1024


def _parts(folder: Path) -> dict[str, float]:
    """Return the seconds of each part, the best of some runs in processes of their own."""
    runs = [
        json.loads(
            subprocess.run(
                [sys.executable, "-m", "tests.benchmarks.parts", str(folder)],
                check=True,
                capture_output=True,
                text=True,
            ).stdout
        )
        for _ in range(RUNS)
    ]
    return {name: min(run[name] for run in runs) for name in runs[0]}


if __name__ == "__main__":
    main()
