"""The demo handbook, built once a test run and shared by its workers."""

import os
import subprocess
import sys
import time
from pathlib import Path

CHECKOUT = Path(__file__).resolve().parents[1]
PATIENCE_SECONDS = 180


def build(out: Path, *, config: Path = CHECKOUT / "mkdocs.yml", hash_seed: str = "0") -> None:
    """Build a handbook into `out` as a reader of the manual would; raise with what it printed."""
    command = [sys.executable, "-m", "mkdocs", "build", "--strict", "-f", str(config)]
    done = subprocess.run(
        [*command, "-d", str(out)],
        check=False,
        capture_output=True,
        text=True,
        cwd=config.parent,
        env={**os.environ, "PYTHONHASHSEED": hash_seed},
    )
    if done.returncode != 0:
        raise RuntimeError(f"the handbook did not build:\n{done.stdout}{done.stderr}")


def build_once(shared: Path) -> Path:
    """Build into `shared`/demo, or wait until another worker has; return the folder.

    Making the folder `demo.claimed` is the claim, since making a folder is one step.
    """
    out, claim, told = shared / "demo", shared / "demo.claimed", shared / "demo.told"
    try:
        claim.mkdir()
    except FileExistsError:
        end = time.monotonic() + PATIENCE_SECONDS
        while not told.exists():
            if time.monotonic() > end:
                raise TimeoutError("another worker did not finish the demo handbook") from None
            time.sleep(0.05)
    else:
        said = "no word"
        try:
            build(out)
            said = ""
        except RuntimeError as error:
            said = str(error)
        finally:
            written = shared / "demo.telling"
            written.write_text(said, encoding="utf-8")
            written.rename(told)
    said = told.read_text(encoding="utf-8")
    if said:
        raise RuntimeError(said)
    return out


def pages(folder: Path) -> list[Path]:
    """Return every page of a built folder, in order; there must be some."""
    found = sorted(folder.rglob("*.html"))
    assert found, f"no page in {folder}"
    return found


def files(folder: Path) -> dict[str, bytes]:
    """Return every file of a folder by its path inside it."""
    return {
        path.relative_to(folder).as_posix(): path.read_bytes()
        for path in sorted(folder.rglob("*"))
        if path.is_file()
    }
