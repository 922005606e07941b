"""Pairs of sets that hold nearly the same, found without comparing each with each.

Two sets of words whose overlap is more than a share of all their words (Jaccard) must have a word
in common among the rarest words of each: only those are looked up. Method: prefix filtering, as
in Bayardo, Ma and Srikant, Scaling up all pairs similarity search, 2007.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterator, Sequence


def overlap(one: frozenset[str], other: frozenset[str]) -> float:
    """Return the share of the words of both that are in both, 0 to 1.

    >>> overlap(frozenset("abcd"), frozenset("abce"))
    0.6
    """
    common = len(one & other)
    return common / (len(one) + len(other) - common) if common else 0.0


def near_twins(
    sets: Sequence[frozenset[str]], share: float, fits: Callable[[int, int], bool]
) -> Iterator[tuple[int, int]]:
    """Yield (earlier, later) places of sets that overlap by more than ``share``.

    A set that is a twin of an earlier one is told of once and stands for no other: a thousand
    alike give 999 pairs.

    Args:
        sets: the sets; an empty one has no twin.
        share: above 0, below 1.
        fits: whether two places may be told of as twins.
    """
    counted = Counter(word for each in sets for word in each)
    rank = {
        word: n for n, word in enumerate(sorted(counted, key=lambda each: (counted[each], each)))
    }
    by_word: dict[str, list[int]] = {}
    for later, words in enumerate(sets):
        size = len(words)
        if not size:
            continue
        rarest = sorted(words, key=rank.__getitem__)
        rarest = rarest[: size - int(share * size) or 1]
        tried: set[int] = set()
        for word in rarest:
            earlier = _first(sets, later, by_word.get(word, ()), tried, share, fits)
            if earlier is not None:
                yield earlier, later
                break
        else:
            for word in rarest:
                by_word.setdefault(word, []).append(later)


def _first(
    sets: Sequence[frozenset[str]],
    later: int,
    candidates: Sequence[int],
    tried: set[int],
    share: float,
    fits: Callable[[int, int], bool],
) -> int | None:
    words, size = sets[later], len(sets[later])
    for earlier in candidates:
        if earlier in tried:
            continue
        tried.add(earlier)
        other = len(sets[earlier])
        if min(size, other) <= share * max(size, other):
            continue
        if overlap(sets[earlier], words) > share and fits(earlier, later):
            return earlier
    return None
