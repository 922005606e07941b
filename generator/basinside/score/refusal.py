"""An attempt or observation that is not scored, and why, in a plain sentence."""

from __future__ import annotations

from datetime import date


class NotScoredError(ValueError):
    """The file cannot be scored; the message is one sentence."""


def day_of(text: str) -> date:
    """Return a day as files write it; raises ``NotScoredError`` when no calendar has it."""
    try:
        return date.fromisoformat(text)
    except ValueError:
        raise NotScoredError(f"{text} is a day that no calendar has.") from None
