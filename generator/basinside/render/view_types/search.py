"""The page that finds."""

from __future__ import annotations

from dataclasses import dataclass

from basinside.render.view_types.text import Prose


@dataclass(frozen=True, slots=True, kw_only=True)
class SearchView:
    """The page with the box; ``without_script`` stands where no script fills it."""

    title: str
    lead: Prose
    without_script: Prose
