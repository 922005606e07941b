"""See to it that there is a Chromium: one found, else Debian's, else the one Playwright offers.

Run by ``make test``. Exit 0 with its path printed, or 1 with what to do.
"""

import os
import shutil
import subprocess
import sys
from pathlib import Path

from playwright.sync_api import sync_playwright

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from tests.browser import chromium

WANTED = ("chromium", "fonts-dejavu-extra")
FONTS = (
    Path("/usr/share/fonts/truetype/dejavu/DejaVuSansCondensed.ttf"),
    Path("/usr/share/fonts/dejavu-sans-fonts/DejaVuSansCondensed.ttf"),
)
"""Where the font lies that the tests of paper pin (`tests/browser/printed.py`)."""


def as_root() -> list[str] | None:
    """Return what to put before a command to run it as root, or None when that cannot be done."""
    if hasattr(os, "geteuid") and os.geteuid() == 0:
        return []
    if shutil.which("sudo") and run(["sudo", "-n", "true"]):
        return ["sudo", "-n"]
    return None


def run(command: list[str]) -> bool:
    return subprocess.run(command, check=False, stdout=sys.stderr).returncode == 0


def install_debians() -> bool:
    """Install Debian's Chromium and the font where apt-get may be used without a password."""
    before = as_root() if shutil.which("apt-get") else None
    if before is None:
        return False
    run([*before, "apt-get", "update", "-qq"])
    install = ["apt-get", "install", "-y", "-qq", "--no-install-recommends", *WANTED]
    return run([*before, *install]) and chromium.find() is not None


def main() -> int:
    """Find or install a Chromium."""
    with sync_playwright() as playwright:
        found = chromium.find_with(playwright)
        if found is None and not os.environ.get("BASINSIDE_CHROMIUM"):
            if not install_debians():
                run([sys.executable, "-m", "playwright", "install", "chromium"])
            found = chromium.find_with(playwright)
    if not any(each.is_file() for each in FONTS):
        install_debians()
    named = os.environ.get("BASINSIDE_CHROMIUM")
    if found is None and named:
        print(f"BASINSIDE_CHROMIUM names {named}, and there is no such file.", file=sys.stderr)
        return 1
    if found is None:
        print(
            "No Chromium found and none could be installed, so the browser tests cannot run.\n"
            "Install one (on Debian or Ubuntu: sudo apt-get install chromium), or name yours:\n"
            "  BASINSIDE_CHROMIUM=/path/to/chromium make test",
            file=sys.stderr,
        )
        return 1
    print(f"Chromium: {found}")
    return 0


if __name__ == "__main__":
    sys.exit(main())
