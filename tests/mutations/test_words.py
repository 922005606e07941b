"""Rules read fields: with every id renamed and every step reworded the verdicts are the same."""

from collections import Counter
from collections.abc import Callable, Mapping
from functools import cache

import pytest

from basinside.check.registry import RULE_BY_ID, RULES
from tests.mutations.drawn import drawn
from tests.mutations.judged import Judge
from tests.mutations.kinds import Mutation
from tests.mutations.reworded import ids_of, renamed, reworded

SAMPLE = {"drop step": 12, "swap steps": 10, "drop protection": 4, "change tolerance": 3}
ABOUT_WORDS = frozenset({"items", "prose", "prints"})
"""Groups of rules whose subject is words, or how much room they take."""
BY_FIELDS = tuple(each for each in RULES if each.check.__module__.split(".")[-2] not in ABOUT_WORDS)


@cache
def judge() -> Judge:
    return Judge(rules=BY_FIELDS)


@cache
def mistakes() -> tuple[tuple[Mutation, Counter[str]], ...]:
    """Return a sample of mistakes, each with how often each rule says so."""
    made = drawn(judge().text, SAMPLE)
    return tuple((each, _said(judge(), each.file, each.text)) for each in made)


def _said(where: Judge, file: str, text: str) -> Counter[str]:
    _, said = where.look_again(file, text)
    return Counter(rule for rule, _, _ in said if rule in RULE_BY_ID)


def _rename(raw: Mapping[str, bytes]) -> Mapping[str, bytes]:
    return renamed(raw, ids_of(judge().content))


@pytest.mark.parametrize("otherwise", [_rename, reworded], ids=["renamed", "reworded"])
def test_verdicts_do_not_hang_on_words(
    otherwise: Callable[[Mapping[str, bytes]], Mapping[str, bytes]],
) -> None:
    other = Judge(otherwise(judge().raw), BY_FIELDS)
    assert [rule for rule, _, _ in other.before if rule in RULE_BY_ID] == []
    for mutation, here in mistakes():
        ((file, raw),) = otherwise({mutation.file: mutation.text.encode()}).items()
        assert _said(other, file, raw.decode()) == here, mutation.what
