"""Pairs of texts that say nearly the same, found without comparing each with each.

Two texts whose common words are more than a share of all their words (Jaccard) must have a word in
common among the rarest words of each: only those are looked up. Method: prefix filtering, as in
Bayardo, Ma and Srikant, Scaling up all pairs similarity search, 2007.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable, Iterator, Sequence
from itertools import chain
from typing import Final

FREQUENT: Final = 50
"""A word is frequent that is in more than one of so many texts: among the rarest of a text it is
looked for only where there are too few others (our own bound)."""


def overlap(one: Iterable[object], other: Iterable[object]) -> float:
    """Return the share of the words of both that are in both, 0 to 1.

    >>> overlap("abcd", "abce")
    0.6
    """
    first, second = frozenset(one), frozenset(other)
    common = len(first & second)
    return common / (len(first) + len(second) - common) if common else 0.0


def near_twins(
    texts: Sequence[Sequence[str]], share: float, fits: Callable[[int, int], bool]
) -> Iterator[tuple[int, int]]:
    """Yield (earlier, later) places of texts whose words overlap by more than ``share``.

    A text that is a twin of an earlier one is told of once and stands for no other: a thousand
    alike give 999 pairs.

    Args:
        texts: the words of each; one without words has no twin.
        share: above 0, below 1.
        fits: whether two places may be told of as twins.
    """
    counted = Counter(chain.from_iterable(texts))
    by_rarity = sorted(counted, key=lambda word: (counted[word], word))
    rank = {word: n for n, word in enumerate(by_rarity)}.__getitem__
    frequent = frozenset(word for word, times in counted.items() if times * FREQUENT > len(texts))
    sizes: list[int] = []
    least = _Least(share)
    holding: dict[str, list[int]] = {}
    for later, words in enumerate(texts):
        each_once = set(words)
        size = len(each_once)
        sizes.append(size)
        wanted = size - int(share * size)
        rare = each_once - frequent
        rarest = sorted(rare if len(rare) >= wanted else each_once, key=rank)[:wanted]
        met = Counter(chain.from_iterable([holding[word] for word in rarest if word in holding]))
        need = least[size]
        hopeful = [earlier for earlier, shared in met.items() if shared > need[sizes[earlier]]]
        for earlier in sorted(hopeful):
            if overlap(texts[earlier], each_once) > share and fits(earlier, later):
                yield earlier, later
                break
        else:
            for word in rarest:
                holding.setdefault(word, []).append(later)


class _Least(dict[int, dict[int, float]]):
    """By the sizes of two texts: more of the rarest words than this must be in both.

    Beyond the rarest words of both, no more can be common than one of them has left.
    """

    def __init__(self, share: float) -> None:
        self.share = share

    def __missing__(self, size: int) -> dict[int, float]:
        found = self[size] = _LeastBeside(self.share, size)
        return found


class _LeastBeside(dict[int, float]):
    def __init__(self, share: float, size: int) -> None:
        self.share, self.size = share, size

    def __missing__(self, other: int) -> float:
        asked = self.share / (1 + self.share) * (self.size + other)
        found = self[other] = asked - int(self.share * max(self.size, other))
        return found
