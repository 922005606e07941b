"""Which options of an item people choose: counts always, shares only from enough people.

Source of the bound below which a wrong option does no work: Tarrant, Ware and Mohammed, An
assessment of functioning and non-functioning distractors, BMC Medical Education 9 (2009) 40.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Final

FEWEST_PEOPLE: Final = 30
"""With fewer, a share says more about who came than about the option (our own floor)."""
WORKS_FROM: Final = Fraction(5, 100)
"""A wrong option chosen by fewer is not looked at by anybody (Tarrant and others, 2009)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class OptionCounts:
    """How often each option was chosen, and what can be said of that."""

    people: int
    counts: tuple[int, ...]
    shares: tuple[Fraction, ...] | None
    """None when there are fewer than `FEWEST_PEOPLE`."""
    idle: tuple[int, ...]
    """Positions of wrong options that hardly anybody chose; nothing when shares are refused."""
    beats_key: tuple[int, ...]
    """Positions of wrong options chosen more often than the right one; likewise."""


def option_counts(chosen: Sequence[int | None], options: int, key: int) -> OptionCounts:
    """Return what people chose of an item with one right option.

    Args:
        chosen: each person's option by its position; None who left it out, and still counts.
        options: how many there are.
        key: the position of the right one.

    Raises:
        ValueError: when a position is none of the item's.
    """
    if any(each is not None and not 0 <= each < options for each in (*chosen, key)):
        raise ValueError(f"an option of this item is 0 to {options - 1}")
    people = len(chosen)
    counts = tuple(sum(each == n for each in chosen) for n in range(options))
    if people < FEWEST_PEOPLE:
        return OptionCounts(people=people, counts=counts, shares=None, idle=(), beats_key=())
    shares = tuple(Fraction(each, people) for each in counts)
    wrong = [n for n in range(options) if n != key]
    return OptionCounts(
        people=people,
        counts=counts,
        shares=shares,
        idle=tuple(n for n in wrong if shares[n] < WORKS_FROM),
        beats_key=tuple(n for n in wrong if counts[n] > counts[key]),
    )
