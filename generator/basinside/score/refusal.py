"""An attempt that is not scored, and why, in a plain sentence."""

from __future__ import annotations


class NotScoredError(ValueError):
    """The attempt cannot be scored against this form; the message is one sentence."""
