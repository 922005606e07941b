"""A clinic with a mistake in it, and which rules say so that said nothing before."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping
from pathlib import Path
from typing import Any, Final, NamedTuple

import yaml

from basinside import files
from basinside.check.run import check
from basinside.derive.everything import derive
from basinside.load.content import load
from basinside.load.memory import Memory
from basinside.model.content import Content
from basinside.problem import Problem
from tests.mutations.kinds import Mutation

CHECKOUT: Final = Path(__file__).parents[2]
EXPECTED: Final[Mapping[str, Any]] = yaml.safe_load(
    (Path(__file__).parent / "expected.yaml").read_text(encoding="utf-8")
)
FORM: Final = frozenset({"unknown-id", "missing-key", "value-missing", "bad-value"})


class Verdict(NamedTuple):
    """What a mistake led to.

    ``caught``: one of the rules that should say so did. ``otherwise``: only others did.
    ``harmless``: nobody did, and ``why`` says why that is right. Else it was ``missed``.
    """

    mutation: Mutation
    outcome: str
    rules: frozenset[str]
    why: str = ""


class Judge:
    """The clinic as it stands, against which each mistake is compared."""

    def __init__(self, raw: Mapping[str, bytes] | None = None) -> None:
        self.raw = raw or files.read_authored(CHECKOUT)
        self.text = {name: each.decode() for name, each in self.raw.items() if _is_text(name)}
        self._memory = Memory()
        self.content, self.before = self._look(self.raw)
        self._first = derive(self.content)

    def _look(self, raw: Mapping[str, bytes]) -> tuple[Content, Counter[tuple[str, str, str]]]:
        content, problems = load(raw, self._memory)
        before = (self.content, self._first) if hasattr(self, "_first") else None
        problems = [*problems, *check(content, derive(content, before))]
        return content, Counter(map(_key, problems))

    def look_again(self, file: str, text: str) -> tuple[Content, list[tuple[str, str, str]]]:
        """Return the model with one file changed, and what is said now and was not before.

        Each problem as its rule, its file and its message.
        """
        content, found = self._look({**self.raw, file: text.encode()})
        return content, list((found - self.before).elements())

    def judge(self, mutation: Mutation) -> Verdict:
        """Return what a mistake led to."""
        _, problems = self.look_again(mutation.file, mutation.text)
        rules = frozenset(rule for rule, _, _ in problems)
        expected = _expected(mutation)
        if rules & expected:
            return Verdict(mutation, "caught", rules)
        if rules:
            return Verdict(mutation, "otherwise", rules)
        why = _harmless(mutation, self.content)
        return Verdict(mutation, "harmless" if why else "missed", rules, why)


def _key(problem: Problem) -> tuple[str, str, str]:
    return problem.rule, problem.place.file, problem.message


def _is_text(name: str) -> bool:
    return name.endswith(".yaml")


def _expected(mutation: Mutation) -> frozenset[str]:
    rows = EXPECTED[mutation.kind]
    return frozenset((*rows.get(mutation.about, ()), *rows.get("any", ())))


def _harmless(mutation: Mutation, content: Content) -> str:
    named = f"{mutation.file.rsplit('/', 1)[-1].removesuffix('.yaml')}: {mutation.what}"
    for row in EXPECTED["harmless"]:
        if named in row["mistakes"] or mutation.about in row.get("about", ()):
            return str(row["because"])
    return _value_is_free(mutation, content) if mutation.kind.startswith("change ") else ""


def _value_is_free(mutation: Mutation, content: Content) -> str:
    """Return why nothing needs to object to a value: what bounds it is not passed."""
    figure = content.figures.get(mutation.about)
    if figure is None:
        return ""
    if figure.source_says is None and figure.worked_out is None:
        return "no source bounds this value, the clinic chooses it, and every page follows"
    return ""
