"""A drawing that passed the allow-list, ready to stand inside a page."""

from __future__ import annotations

from dataclasses import dataclass

from basinside.problem import Place


@dataclass(frozen=True, slots=True, kw_only=True)
class Picture:
    """The markup of a drawing and the ids that its author gave to elements.

    Every id stands in ``markup`` with ``id_prefix`` before it, so that several drawings share a
    page; the prefix is made from the file's name.
    """

    place: Place
    markup: str
    ids: tuple[str, ...]
    id_prefix: str
