"""What a rule is, and how all of them are asked in one fixed order."""

from __future__ import annotations

import inspect
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass

from basinside.check.checked import Checked
from basinside.problem import Level, Place, Problem, one_line


@dataclass(frozen=True, slots=True)
class Finding:
    """One thing a rule objects to.

    ``also`` are other nodes that the finding is about: a waiver written at one of them counts
    too, such as one at the part whose level is too low.
    """

    place: Place
    message: str
    hint: str = ""
    also: tuple[Place, ...] = ()


Check = Callable[[Checked], Iterator[Finding]]


@dataclass(frozen=True, slots=True)
class Rule:
    """A rule: its id, its one level, the page that authors read, and the question it asks.

    ``dated`` ones ask for the day. ``of_all`` ones say that something is nowhere, which nobody
    knows while a file cannot be read: until then they are not asked.
    """

    id: str
    level: Level
    page: str
    check: Check
    dated: bool = False
    of_all: bool = False

    def asked_of(self, checked: Checked) -> bool:
        """Whether the rule can say something about a handbook as it is known."""
        known = checked.today is not None or not self.dated
        return known and not (self.of_all and checked.content.unread)


@dataclass(frozen=True, slots=True)
class Found:
    """A finding and the rule that found it."""

    rule: Rule
    finding: Finding

    def problem(self, waived_by: str = "") -> Problem:
        """Return the finding as a problem; its words are one line whatever an author wrote."""
        return Problem(
            place=self.finding.place,
            rule=self.rule.id,
            level=self.rule.level,
            message=one_line(self.finding.message),
            hint=one_line(self.finding.hint),
            waived_by=one_line(waived_by),
        )


def rule(*, level: Level, dated: bool = False, of_all: bool = False) -> Callable[[Check], Rule]:
    """Return what makes a Rule of a generator function ``check_<what>``.

    Args:
        level: the one level of the rule.
        dated: whether the rule depends on the day and runs only when one is given.
        of_all: whether it says that something is nowhere, and waits until all can be read.

    Raises:
        TypeError: when the function is not named ``check_*`` or has no docstring.
    """

    def made(check: Check) -> Rule:
        name = check.__name__
        prefix, _, what = name.partition("_")
        if prefix != "check" or not what or not check.__doc__:
            raise TypeError(f"{name}: a rule is named check_* and its docstring is its page")
        page = inspect.cleandoc(check.__doc__)
        return Rule(what.replace("_", "-"), level, page, check, dated, of_all)

    return made


def find(checked: Checked, rules: Iterable[Rule]) -> list[Found]:
    """Return every finding of the rules that can be asked, rule by rule."""
    return [
        Found(each, finding)
        for each in rules
        if each.asked_of(checked)
        for finding in each.check(checked)
    ]


def run_rules(checked: Checked, rules: Iterable[Rule]) -> list[Problem]:
    """Return every finding of every rule as a problem, in a fixed order, nothing waived."""
    return in_order(found.problem() for found in find(checked, rules))


def in_order(problems: Iterable[Problem]) -> list[Problem]:
    """Return problems in a fixed order, each once: by file, path, rule and words."""
    return sorted(dict.fromkeys(problems), key=_order)


def _order(problem: Problem) -> tuple[str, tuple[tuple[int, str], ...], str, str]:
    path = tuple((part, "") if isinstance(part, int) else (-1, part) for part in problem.place.path)
    return problem.place.file, path, problem.rule, problem.message
