"""``make fuzz``: spoil the small clinic over and over for a bounded time.

A crash is shrunk by Hypothesis, printed, and written below ``build/fuzz`` as the files that cause
it, ready to become a case of ``tests/fuzz/test_cases.py``.
"""

from __future__ import annotations

import sys
import time
from pathlib import Path

from hypothesis import HealthCheck, Phase, given, seed, settings

from tests.check.clinic import base_files
from tests.fuzz.looked import look
from tests.fuzz.spoiled import Spoil, spoiled, spoils

SECONDS = 60
ROUND = 200
"""Clinics of one seed; the time is looked at between rounds."""


def main() -> None:
    """Fuzz for the seconds that are named; end with 1 when something crashed."""
    end = time.monotonic() + (float(sys.argv[1]) if len(sys.argv) > 1 else SECONDS)
    number = int(time.time())
    looked = built = 0
    last: list[list[Spoil]] = [[]]

    def one(changes: list[Spoil]) -> None:
        nonlocal looked, built
        last[0] = changes
        looked += 1
        built += bool(look(spoiled(base_files(), changes)))

    asked = settings(
        max_examples=ROUND,
        deadline=None,
        database=None,
        phases=[Phase.generate, Phase.shrink],
        suppress_health_check=list(HealthCheck),
    )(given(spoils(base_files()))(one))
    while time.monotonic() < end:
        try:
            seed(number)(asked)()
        except Exception:
            where = Path("build/fuzz") / str(number)
            for name, raw in spoiled(base_files(), last[0]).items():
                if raw != base_files()[name]:
                    (where / name).parent.mkdir(parents=True, exist_ok=True)
                    (where / name).write_bytes(raw)
            print(f"seed {number}: {last[0]}\nthe files that cause it lie in {where}")
            raise
        number += 1
    print(f"{looked} spoiled clinics, {built} of them built; nothing crashed")


if __name__ == "__main__":
    main()
