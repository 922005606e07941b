"""The rule competency-scope-impossible."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from basinside.check.checked import Checked
from basinside.check.policies import lines_for
from basinside.check.rule import Finding, rule
from basinside.check.saying import amount, listed, rounded_down
from basinside.model.handbook import Handbook, PracticeNeed
from basinside.problem import Level
from basinside.quantity import Quantity
from basinside.units import Kind

_SIGNERS: Final = 2
"""Roles that may sign at least: one signs for the other (common practice)."""
_IN_A_YEAR: Final[dict[Kind, int]] = {Kind.DAYS: 365, Kind.MONTHS: 12, Kind.TIME: 365 * 86_400}
"""Base units of time in a year."""


@rule(level=Level.STOP)
def check_competency_scope_impossible(checked: Checked) -> Iterator[Finding]:
    """What the policy asks of a person can be done here.

    Why: a policy that asks for more births than the clinic has is signed with eyes shut, or
    nobody is ever signed for. A year's cases of the instrument are the bound: for runs at real
    work, for their time, and for how long somebody may pause, unless the way back asks for no real
    work. Two roles at least may sign, as nobody signs for themselves.
    Bad: `of_which_real: 4` with `cases_per_year: {laryngoscope: 3}`.
    Good: `{runs: 4, of_which_real: 1}`; the other runs may be simulated.
    Source: arithmetic; CDC and HICPAC, sample competency tool, 2016 (controlled simulation is a
    method of its own); common practice for two signers.
    """
    handbook = checked.content.handbook
    if handbook is None or not handbook.policy:
        return
    if len(set(handbook.who_signs)) < _SIGNERS:
        said = "no role" if not handbook.who_signs else f"only {listed(handbook.who_signs)}"
        yield Finding(
            handbook.place.at("who_signs"),
            f"{said} may sign, and nobody signs for themselves",
            "Name two roles under “who_signs:”.",
        )
    for name, procedure in checked.content.procedures.items():
        lines = lines_for(handbook, (name,))
        practice = next((line.practice for line in reversed(lines) if line.practice), None)
        back = next((line.way_back for line in reversed(lines) if line.way_back), None)
        pauses = (line.lapses_if_not_done_for for line in reversed(lines))
        pause = next((each for each in pauses if each), None)
        if back is not None and back.of_which_real == 0:
            pause = None
        if practice is not None:
            yield from _of_itself(practice)
        cases = handbook.clinic.cases_per_year.get(procedure.instrument or "")
        if cases is not None and procedure.route is not None:
            yield from _of_cases(handbook, name, cases, practice, pause)


def _of_itself(practice: PracticeNeed) -> Iterator[Finding]:
    """Yield findings for a line that cannot be met whatever the clinic has."""
    for key, asked in (
        ("of_which_real", practice.of_which_real),
        ("by_observers", practice.by_observers),
        ("on_days", practice.on_days),
    ):
        if asked > practice.runs:
            yield Finding(
                practice.place.at(key),
                f"the policy asks for “runs: {practice.runs}” and for “{key}: {asked}” of them",
                f"Write {practice.runs} at most, or more runs.",
            )


def _of_cases(
    handbook: Handbook,
    name: str,
    cases: int,
    practice: PracticeNeed | None,
    pause: Quantity | None,
) -> Iterator[Finding]:
    """Yield findings for what a year's cases of an instrument do not give."""
    also = (handbook.place,)
    if practice is not None and practice.of_which_real > cases:
        yield Finding(
            practice.place.at("of_which_real"),
            f"{name} is to be done {_times(practice.of_which_real)} at real work, and a year has"
            f" {_cases(cases)}",
            "Let more of the runs be simulated.",
            also,
        )
    elif practice is not None and practice.not_older_than is not None:
        within = _within(practice.not_older_than, cases)
        if practice.of_which_real > within:
            yield Finding(
                practice.place.at("not_older_than"),
                f"{name} is to be done {_times(practice.of_which_real)} at real work within"
                f" {amount(practice.not_older_than)}; of {_cases(cases)} a year"
                f" {rounded_down(within)} fall into that time",
                "Give it more time, or let more of the runs be simulated.",
                also,
            )
    if pause is not None and _within(pause, cases) < 1:
        yield Finding(
            handbook.place.at("policy"),
            f"{name} lapses when it is not done for {amount(pause)}; of {_cases(cases)} a year"
            " fewer than one falls into that time",
            "Let it lapse later, or write a way back with “of_which_real: 0”.",
            also,
        )


def _cases(number: int) -> str:
    return f"{number} case{'' if number == 1 else 's'}"


def _times(number: int) -> str:
    return "once" if number == 1 else f"{number} times"


def _within(time: Quantity, cases: int) -> float:
    """Return how many of a year's cases fall into a time."""
    return float(cases * time.base / _IN_A_YEAR[time.kind]) if time.kind in _IN_A_YEAR else cases
