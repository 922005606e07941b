"""A clinic with a mistake in it, and which rules say so that said nothing before."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping
from pathlib import Path
from typing import Any, Final, NamedTuple

import yaml

from basinside import files
from basinside.check.checked import Checked
from basinside.check.rule import Rule, run_rules
from basinside.check.run import check
from basinside.derive.everything import derive
from basinside.load.content import load
from basinside.load.memory import Memory
from basinside.model.content import Content
from basinside.model.derived import Derived
from basinside.problem import Problem
from tests.mutations.harmless import Seen, harmless
from tests.mutations.kinds import Mutation

CHECKOUT: Final = Path(__file__).parents[2]
EXPECTED: Final[Mapping[str, Any]] = yaml.safe_load(
    (Path(__file__).parent / "expected.yaml").read_text(encoding="utf-8")
)
FORM: Final = frozenset({"unknown-id", "missing-key", "value-missing", "bad-value"})
"""What says that a file names something that is gone, and not why that hurts anybody."""
LAYOUT: Final = frozenset({"wall-chart-overflows", "sentence-too-long", "reading-level"})
"""What says that words no longer fit, or are hard to read."""

Said = tuple[str, str, str]


class Verdict(NamedTuple):
    """What a mistake led to.

    ``caught``: one of the rules that should say so did. ``otherwise``: only others did, or only
    that something is named which is gone. ``harmless``: ``why`` says why nobody needs to say
    more. Else it was ``missed``.
    """

    mutation: Mutation
    outcome: str
    rules: frozenset[str]
    why: str = ""


class Judge:
    """The clinic as it stands, against which each mistake is compared.

    Without ``rules`` all are asked and waivers count; else these alone, and none does.
    """

    def __init__(
        self, raw: Mapping[str, bytes] | None = None, rules: tuple[Rule, ...] | None = None
    ) -> None:
        self._rules = rules
        self.raw = raw or files.read_authored(CHECKOUT)
        self.text = {name: each.decode() for name, each in self.raw.items() if _is_text(name)}
        self._memory = Memory()
        self.content, self._first, self.before = self._look(self.raw, None)

    def _look(
        self, raw: Mapping[str, bytes], before: tuple[Content, Derived] | None
    ) -> tuple[Content, Derived, Counter[Said]]:
        content, problems = load(raw, self._memory)
        derived = derive(content, before)
        if self._rules is None:
            found = check(content, derived)
        else:
            found = run_rules(Checked(content=content, derived=derived), self._rules)
        return content, derived, Counter(map(_key, [*problems, *found]))

    def _again(self, file: str, text: str) -> tuple[Seen, list[Said]]:
        before = (self.content, self._first)
        now, derived, found = self._look({**self.raw, file: text.encode()}, before)
        return Seen(*before, now, derived), list((found - self.before).elements())

    def look_again(self, file: str, text: str) -> tuple[Content, list[Said]]:
        """Return the model with one file changed, and what is said now and was not before.

        Each problem as its rule, its file and its message.
        """
        seen, said = self._again(file, text)
        return seen.now, said

    def judge(self, mutation: Mutation) -> Verdict:
        """Return what a mistake led to."""
        seen, problems = self._again(mutation.file, mutation.text)
        rules = frozenset(rule for rule, _, _ in problems)
        if rules & expected_of(mutation):
            return Verdict(mutation, "caught", rules)
        if rules - FORM - LAYOUT:
            return Verdict(mutation, "otherwise", rules)
        why = said_harmless(mutation) or harmless(mutation, seen)
        if why:
            return Verdict(mutation, "harmless", rules, why)
        return Verdict(mutation, "otherwise" if rules else "missed", rules)


def _key(problem: Problem) -> Said:
    return problem.rule, problem.place.file, problem.message


def _is_text(name: str) -> bool:
    return name.endswith(".yaml")


def expected_of(mutation: Mutation) -> frozenset[str]:
    """Return the rules that should say so: those of its kind, and of what it is about.

    Of two steps that were exchanged, the rules about the order of either are expected.
    """
    rows = EXPECTED[mutation.kind]
    abouts = [mutation.about]
    if mutation.kind == "swap steps":
        abouts = mutation.about.split(" and ")
    of_each = (rule for each in abouts for rule in rows.get(each, ()))
    return frozenset((*rows.get("any", ()), *of_each))


def named(mutation: Mutation) -> str:
    """Return what a mistake is called in the list of harmless ones."""
    return f"{mutation.file.rsplit('/', 1)[-1].removesuffix('.yaml')}: {mutation.what}"


def said_harmless(mutation: Mutation) -> str:
    """Return the reason that a person wrote why a mistake does no harm, or nothing."""
    where = mutation.file.rsplit("/", 1)[-1].removesuffix(".yaml")
    for row in EXPECTED["harmless"]:
        about = mutation.about in row.get("about", ()) and where in row.get("in", (where,))
        if row["kind"] == mutation.kind and (about or named(mutation) in row.get("mistakes", ())):
            return str(row["because"])
    return ""
