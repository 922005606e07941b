"""How a question is answered when it has no options: an order, a number, pairs.

Each reads twice: what is asked stands in the open, what is right behind the line to press.
"""

from __future__ import annotations

from dataclasses import dataclass

from basinside.render.view_types.text import Prose


@dataclass(frozen=True, slots=True, kw_only=True)
class PairKeptView:
    """Of two lines of an order the one that comes first, why, and the belief against it."""

    rule: str
    because: Prose = ()
    belief: Prose = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class OrderView:
    """Lines to be put in order: ``mixed`` as they are asked, ``lines`` as they are right."""

    mixed: tuple[Prose, ...]
    lines: tuple[Prose, ...]
    because: Prose
    belief: Prose = ()
    kept: tuple[PairKeptView, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class MistakeView:
    """An answer that is wrong in a way that is known: a number, or a right side of a match."""

    answer: Prose
    because: Prose
    belief: Prose = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class NumberView:
    """A number to be worked out: the unit it is asked in, the right one, what else counts."""

    ask: str
    right_word: str
    right: Prose
    accepted: str = ""
    because: Prose
    mistakes: tuple[MistakeView, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class MatchedView:
    """A left side with what belongs to it, and why; ``mistakes`` are right sides that do not."""

    left: Prose
    right: Prose
    because: Prose
    mistakes: tuple[MistakeView, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class MatchView:
    """Left sides and right sides to be brought together; ``rights`` stand in no telling order."""

    left_word: str
    right_word: str
    lefts: tuple[Prose, ...]
    rights: tuple[Prose, ...]
    pairs: tuple[MatchedView, ...]
