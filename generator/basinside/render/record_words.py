"""The sentences of a completion record, in the handbook's language."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from basinside.model.derived import Policy
from basinside.model.results import AttemptResult, ObservationResult
from basinside.render.wording import _, n_


@dataclass(frozen=True, slots=True, kw_only=True)
class RecordText:
    """What a record says in words."""

    name: str
    description: str
    criteria: str
    knowledge: str
    practice: str


def scope_title(scope: str, titles: Sequence[str]) -> str:
    """Return what a scope is called: its procedure's title, or its id made readable."""
    if len(titles) == 1:
        return titles[0]
    words = scope.replace("-", " ")
    return words[:1].upper() + words[1:]


def record_text(scope: str, level: str, policy: Policy) -> RecordText:
    """Return the sentences of a record for a scope (its title) and level, under a policy."""
    alone = level == "alone"
    return RecordText(
        name=scope,
        description=(
            _("May do this alone: {scope}.") if alone else _("May do this beside another: {scope}.")
        ).format(scope=scope),
        criteria=_criteria(policy),
        knowledge=_("Items passed"),
        practice=_("Observed practice"),
    )


def _criteria(policy: Policy) -> str:
    said = []
    if policy.knowledge is not None:
        said.append(
            _("Assessment {assessment} passed.").format(assessment=policy.knowledge.assessment)
        )
    need = policy.practice
    if need is not None:
        said.append(
            _(
                "For each procedure {runs} with every line met and without help, {real} of them"
                " real, seen by {observers}, on {days}."
            ).format(
                runs=n_("1 run", "{n} runs", need.runs),
                real=need.of_which_real,
                observers=n_("1 observer", "{n} observers", need.by_observers),
                days=n_("1 day", "{n} days", need.on_days),
            )
        )
    return " ".join(said) or _("As the policy of the handbook asks.")


def attempt_name(result: AttemptResult) -> tuple[str, str]:
    """Return what a record calls an attempt, and how it came about."""
    return (
        _("Attempt at {assessment}, form {form}, {date}").format(
            assessment=result.assessment, form=result.form, date=result.date.isoformat()
        ),
        _("{points} of {of} points, {needed} needed. Who answered was not watched here.").format(
            points=result.points, of=result.of_points, needed=result.needed
        ),
    )


def observation_name(result: ObservationResult) -> tuple[str, str]:
    """Return what a record calls an observed run, and how it came about."""
    first, *others = result.observers
    told = _("{setting}, {kind}, seen by {observer}.").format(
        setting=result.setting,
        kind=_("announced") if result.announced else _("spot check"),
        observer=first,
    )
    if others:
        told += " " + _("{second} as second observer did not sign.").format(second=others[0])
    return (
        _("Observation of {procedure}, {date}").format(
            procedure=result.procedure, date=result.date.isoformat()
        ),
        told,
    )


def beside_limit(beside: str) -> str:
    """Return the limit that names whom a person works beside."""
    return _("Works beside {beside} only.").format(beside=beside)
