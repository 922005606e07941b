"""A thing that was asked for and is not done, in one plain sentence."""

from __future__ import annotations


class RefusedError(Exception):
    """What was asked for is refused; the message is one sentence with the mend."""
