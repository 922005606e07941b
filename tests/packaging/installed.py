"""Build the wheel and the sdist from a copy of the checkout, and install into environments.

An environment of its own holds only Basinside; what it depends on is lent by the environment that
runs the tests (a ``.pth`` file), so that nothing is fetched and the tests take seconds.
"""

import os
import shutil
import subprocess
import sys
import sysconfig
import venv
from dataclasses import dataclass
from pathlib import Path

from tests.built import CHECKOUT

LEFT_OUT = shutil.ignore_patterns(
    ".git", ".venv", "site", "build", "dist", "*.egg-info", ".*_cache", "__pycache__", ".hypothesis"
)
# Hides an editable Basinside of the lending environment: the .pth lends its folder only, and a
# folder added by a .pth is not read for further .pth files.
LENT = "lent-dependencies.pth"


def run(command: list[str | Path], folder: Path) -> str:
    """Run a command in a folder, without what would make the checkout importable."""
    environ = {name: value for name, value in os.environ.items() if name != "PYTHONPATH"}
    done = subprocess.run(
        [str(part) for part in command],
        check=False,
        capture_output=True,
        text=True,
        cwd=folder,
        env=environ,
    )
    if done.returncode != 0:
        raise RuntimeError(f"{command} gave {done.returncode}:\n{done.stdout}{done.stderr}")
    return done.stdout + done.stderr


def copy_checkout(folder: Path) -> Path:
    """Copy the checkout, so that a build leaves nothing in it."""
    copy = folder / "checkout"
    shutil.copytree(CHECKOUT, copy, ignore=LEFT_OUT)
    return copy


def build(kind: str, source: Path, out: Path) -> Path:
    """Build a `wheel` or an `sdist` from a source folder with the test environment's tools."""
    run(
        [sys.executable, "-m", "build", "--no-isolation", f"--{kind}", "--outdir", out, source], out
    )
    (made,) = out.glob("*.whl" if kind == "wheel" else "*.tar.gz")
    return made


def unpack(sdist: Path, folder: Path) -> Path:
    """Unpack an sdist and return its top folder."""
    shutil.unpack_archive(sdist, folder, filter="data")
    (top,) = folder.iterdir()
    return top


@dataclass(frozen=True, kw_only=True)
class Environment:
    """An environment with Basinside installed one way."""

    home: Path

    @property
    def python(self) -> Path:
        return self.home / ("Scripts" if os.name == "nt" else "bin") / "python"

    def run(self, module: str, *arguments: str | Path, folder: Path) -> str:
        """Run ``python -m module`` in a folder; raise with what it printed when it fails."""
        return run([self.python, "-m", module, *arguments], folder)

    def script(self, name: str) -> Path:
        return self.python.with_name(name)


def install(home: Path, *what: str | Path) -> Environment:
    """Make an environment, lend it the dependencies, and install Basinside itself into it."""
    venv.create(home, with_pip=False, symlinks=os.name != "nt")
    environment = Environment(home=home)
    own = sysconfig.get_path("purelib", "venv", {"base": str(home), "platbase": str(home)})
    (Path(own) / LENT).write_text(sysconfig.get_path("purelib") + "\n", encoding="utf-8")
    pip: list[str | Path] = [sys.executable, "-m", "pip", "--python", environment.python]
    options = ["--no-deps", "--no-index", "--no-build-isolation", "--ignore-installed"]
    run([*pip, "install", *options, "--quiet", *what], home)
    return environment
