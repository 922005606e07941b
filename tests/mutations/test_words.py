"""Rules read fields: with every id renamed and every step reworded the verdicts are the same."""

from collections import Counter
from collections.abc import Callable, Mapping
from functools import cache

import pytest

from basinside.check.registry import RULE_BY_ID
from tests.mutations.drawn import drawn
from tests.mutations.judged import Judge
from tests.mutations.reworded import ids_of, renamed, reworded

SAMPLE = {"drop step": 25, "swap steps": 20, "drop protection": 10, "change tolerance": 5}
ABOUT_WORDS = frozenset({"items", "prose", "prints"})
"""Groups of rules whose subject is words, or how much room they take."""


@cache
def judge() -> Judge:
    return Judge()


def _by_fields(rule: str) -> bool:
    known = RULE_BY_ID.get(rule)
    return known is not None and known.check.__module__.split(".")[-2] not in ABOUT_WORDS


def _rename(raw: Mapping[str, bytes]) -> Mapping[str, bytes]:
    return renamed(raw, ids_of(judge().content))


@pytest.mark.parametrize("otherwise", [_rename, reworded], ids=["renamed", "reworded"])
def test_verdicts_do_not_hang_on_words(
    otherwise: Callable[[Mapping[str, bytes]], Mapping[str, bytes]],
) -> None:
    other = Judge(otherwise(judge().raw))
    assert [rule for rule, _, _ in other.before if _by_fields(rule)] == []
    for mutation in drawn(judge().text, SAMPLE):
        _, said = judge().look_again(mutation.file, mutation.text)
        ((file, raw),) = otherwise({mutation.file: mutation.text.encode()}).items()
        _, there = other.look_again(file, raw.decode())
        here = Counter(rule for rule, _, _ in said if _by_fields(rule))
        assert Counter(rule for rule, _, _ in there if _by_fields(rule)) == here, mutation.what
