"""How many items a cut asks for; in whole numbers, so that no rounding of fractions decides."""

from __future__ import annotations

from basinside.marking import items_needed

__all__ = ["items_needed"]
