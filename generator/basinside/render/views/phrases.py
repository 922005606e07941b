"""What the page's scripts say, by key; scripts themselves hold no words."""

from __future__ import annotations

from typing import Any

PHRASES: dict[str, str] = {}


def page_phrases(*_components: str) -> dict[str, Any]:
    """Return the phrases of a page as its inline JSON."""
    return {"phrases": PHRASES}
