"""What assessments cover, in words for their author and as data for a tool."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import asdict
from typing import Any

from basinside.model.coverage import AssessmentCovered, ProcedureCovered, TopicCovered
from basinside.render.wording import _, listed, n_


def coverage_lines(covered: Iterable[AssessmentCovered], *, steps: bool = False) -> list[str]:
    """Return the report; ``steps`` names each item beside the safety step it asks about."""
    lines = [line for each in covered for line in (*_assessment(each, steps=steps), "")]
    if not lines:
        return [_("There is no assessment yet.")]
    return [*lines, _("This is for you alone: no page of the folder says what assessments ask.")]


def coverage_data(covered: Iterable[AssessmentCovered]) -> list[dict[str, Any]]:
    """Return the report for a tool."""
    return [asdict(each) for each in covered]


def _assessment(each: AssessmentCovered, *, steps: bool) -> Iterator[str]:
    yield _("{id}: {title}, {items} on {forms}").format(
        id=each.assessment,
        title=each.title,
        items=n_("one question", "{n} questions", each.items),
        forms=n_("one form", "each of {n} forms", each.forms),
    )
    yield ""
    yield _("Topics")
    for topic in each.topics:
        yield _topic(topic)
    yield ""
    yield _safety(each)
    for procedure in each.procedures:
        yield from _procedure(procedure, steps=steps)


def _topic(topic: TopicCovered) -> str:
    thinking = listed([f"{number} {kind}" for kind, number in topic.thinking if number])
    said = _("  {topic}: {percent} %, {in_a_form} of a form, {pool} in the pool").format(
        topic=topic.topic, percent=topic.percent, in_a_form=topic.in_a_form, pool=topic.pool
    )
    more = [
        *([thinking] if thinking else []),
        *([_("{n} critical").format(n=topic.critical)] if topic.critical else []),
    ]
    return f"{said} ({'; '.join(more)})" if more else said


def _safety(each: AssessmentCovered) -> str:
    if not each.procedures:
        return _("The policy asks for this assessment for no procedure.")
    asked = sum(one.asked for one in each.procedures)
    total = sum(len(one.steps) for one in each.procedures)
    return _("Safety steps: {asked} of {total} are asked about").format(asked=asked, total=total)


def _procedure(procedure: ProcedureCovered, *, steps: bool) -> Iterator[str]:
    yield _("  {procedure}: {asked} of {total}").format(
        procedure=procedure.procedure, asked=procedure.asked, total=len(procedure.steps)
    )
    for step in procedure.steps:
        if not step.items:
            yield _("    not asked: {n} {step}").format(n=step.number, step=step.step)
        elif steps:
            yield _("    {n} {step}: {items}").format(
                n=step.number, step=step.step, items=", ".join(step.items)
            )
