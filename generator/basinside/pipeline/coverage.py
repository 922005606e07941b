"""What each assessment covers: for authors at their own machine, never for the folder."""

from __future__ import annotations

from pathlib import Path

from basinside import files
from basinside.check.policies import lines_for
from basinside.derive.everything import derive
from basinside.load.content import load
from basinside.marking import quotas
from basinside.model.content import AskedItem, Content
from basinside.model.coverage import (
    AssessmentCovered,
    ProcedureCovered,
    StepCovered,
    TopicCovered,
)
from basinside.model.derived import Derived
from basinside.model.quiz import Assessment
from basinside.model.words import THINKING
from basinside.problem import any_stop
from basinside.render.coverage_report import coverage_data, coverage_lines

__all__ = ["coverage_data", "coverage_lines", "read_coverage"]


def read_coverage(root: Path) -> tuple[tuple[AssessmentCovered, ...], bool]:
    """Read a clinic's folder; return what its assessments cover, and whether all could be read.

    Raises:
        FolderError: when the folder cannot be read.
    """
    content, problems = load(files.read_authored(root))
    return what_assessments_cover(content, derive(content)), not any_stop(problems)


def what_assessments_cover(content: Content, derived: Derived) -> tuple[AssessmentCovered, ...]:
    """Return each assessment with its topics and the safety steps that it can ask about."""
    pool: dict[str, list[AskedItem]] = {}
    for asked in content.items("assessment"):
        pool.setdefault(asked.topic, []).append(asked)
    return tuple(
        AssessmentCovered(
            assessment=name,
            title=each.title,
            items=each.items,
            forms=each.forms,
            topics=_topics(each, pool),
            procedures=_procedures(content, derived, each),
        )
        for name, each in content.assessments.items()
    )


def _topics(assessment: Assessment, pool: dict[str, list[AskedItem]]) -> tuple[TopicCovered, ...]:
    shares = assessment.blueprint.topics
    in_a_form = quotas(shares, assessment.items)
    return tuple(
        TopicCovered(
            topic=topic,
            percent=percent,
            in_a_form=in_a_form[topic],
            pool=len(pool.get(topic, ())),
            critical=sum(each.item.critical for each in pool.get(topic, ())),
            thinking=tuple(
                (kind, sum(each.item.thinking == kind for each in pool.get(topic, ())))
                for kind in THINKING
            ),
        )
        for topic, percent in shares.items()
    )


def _procedures(
    content: Content, derived: Derived, assessment: Assessment
) -> tuple[ProcedureCovered, ...]:
    """Return the procedures for which the policy asks for this assessment, with safety steps."""
    topics = assessment.blueprint.topics
    about = content.asked_about("assessment")
    return tuple(
        ProcedureCovered(
            procedure=name,
            steps=tuple(
                StepCovered(
                    number=placed.number,
                    step=placed.step.step,
                    do=placed.step.do,
                    items=tuple(
                        asked.item.item
                        for asked in about.get(f"{name}/{placed.step.step}", ())
                        if asked.topic in topics
                    ),
                )
                for placed in whole.steps
                if placed.step.safety
            ),
        )
        for name, whole in derived.procedures.items()
        if _asked_for(content, name, assessment.assessment)
    )


def _asked_for(content: Content, procedure: str, assessment: str) -> bool:
    lines = lines_for(content.handbook, (procedure,)) if content.handbook else ()
    return any(each.knowledge and each.knowledge.assessment == assessment for each in lines)
