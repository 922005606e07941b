"""Bytes that look random and are the same in every run."""

import hashlib
from collections.abc import Callable


def counted_bytes(start: str = "a") -> Callable[[int], bytes]:
    """Return a source of bytes that never repeats itself and always begins alike."""
    calls = 0

    def draw(count: int) -> bytes:
        nonlocal calls
        calls += 1
        return hashlib.shake_256(f"{start} {calls}".encode()).digest(count)

    return draw
