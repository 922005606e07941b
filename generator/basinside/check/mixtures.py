"""What several rules hold about how strong a solution may be."""

from __future__ import annotations

from typing import Final

MUCH_TOO_STRONG: Final = 2
"""Times what is needed; a house's measures are rounded up, but never that far (our own bound)."""
