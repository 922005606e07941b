"""What the author is told of a form and of its cut: for the author alone, never in the folder."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from fractions import Fraction
from pathlib import Path
from typing import Any, Final

from basinside import files
from basinside.derive.forms import quotas, shown_text
from basinside.load.content import load
from basinside.model.content import AskedItem, Content
from basinside.model.form_report import (
    Chance,
    CutReport,
    FormReport,
    ThinkingDrawn,
    TopicDrawn,
)
from basinside.model.quiz import Assessment
from basinside.model.standard import Standard
from basinside.model.words import THINKING
from basinside.pipeline.refusal import RefusedError
from basinside.render.form_report import blank_sheet_lines, cut_lines, form_report_lines
from basinside.score.cut import items_needed
from basinside.statistics.mastery import angoff, over_attempts, pass_probability, smallest_test

__all__ = [
    "blank_sheet",
    "cut_lines",
    "form_report_lines",
    "read_cut_report",
    "read_pool_report",
    "report_of_form",
    "report_of_pool",
]

KNOW_TOO_LITTLE: Final = 70
KNOW_ENOUGH: Final = 90
"""Percent of the field that somebody masters of whom the report speaks (our own choice)."""
RARE: Final = Fraction(10, 100)
"""How often either mistake may happen in the length that the report names (our own choice)."""


def read_pool_report(root: Path, assessment: str) -> FormReport:
    """Read a clinic's folder; return what the pool of an assessment makes possible.

    Raises:
        FolderError: when the folder cannot be read.
        RefusedError: when there is no such assessment.
    """
    content, _ = load(files.read_authored(root))
    return report_of_pool(content, assessment_of(content, assessment))


def read_cut_report(root: Path, assessment: str) -> CutReport:
    """Read a clinic's folder; return the cut that judges set for an assessment.

    Raises:
        FolderError: when the folder cannot be read.
        RefusedError: when there is no such assessment, or no sheet of ratings that can be read.
    """
    content, problems = load(files.read_authored(root))
    entry = assessment_of(content, assessment)
    sheet = f"quizzes/standards/{assessment}.yaml"
    standard = content.standards.get(assessment)
    if standard is None:
        raise RefusedError(
            f"There are no ratings of {assessment} that can be read in {sheet};"
            f" “basinside standard {assessment} --blank” prints a sheet to fill."
        )
    wrong = [each for each in problems if each.place.file == sheet and each.stops]
    if wrong:
        raise RefusedError(f"{sheet}: {wrong[0].message}.")
    return _cut(content, entry, standard)


def blank_sheet(root: Path, assessment: str) -> list[str]:
    """Return a sheet for one judge with every question of an assessment's pool, to be filled.

    Raises:
        FolderError: when the folder cannot be read.
        RefusedError: when there is no such assessment.
    """
    content, _ = load(files.read_authored(root))
    entry = assessment_of(content, assessment)
    asked = _pool(content, entry)
    stems = [(each.item.item, shown_text(each.item.stem, content)) for each in asked]
    return blank_sheet_lines(entry.assessment, entry.version, stems)


def assessment_of(content: Content, assessment: str) -> Assessment:
    """Return an assessment by its id.

    Raises:
        RefusedError: when there is none.
    """
    known = content.assessments
    if assessment not in known:
        raise RefusedError(
            f"There is no assessment “{assessment}”; there is {', '.join(known) or 'none'}."
        )
    return known[assessment]


def report_of_form(
    content: Content, assessment: Assessment, document: Mapping[str, Any]
) -> FormReport:
    """Return the report of a form as it was drawn.

    Args:
        content: the clinic's model, whose pool says what kind of item each is.
        assessment: the form's.
        document: the opened form.
    """
    pool = {asked.item.item: asked for asked in content.items("assessment")}
    ids = [each["item"] for each in document["items"]]
    found = [pool[each] for each in ids if each in pool]
    topics = [each["topic"] for each in document["items"]]
    return _report(
        content,
        assessment,
        form=document["form"],
        topics=topics,
        asked=found,
        gone=tuple(each for each in ids if each not in pool),
    )


def report_of_pool(content: Content, assessment: Assessment) -> FormReport:
    """Return the report of what a pool makes possible, before any form is drawn."""
    asked = _pool(content, assessment)
    return _report(
        content, assessment, form="", topics=[each.topic for each in asked], asked=asked, gone=()
    )


def _pool(content: Content, assessment: Assessment) -> list[AskedItem]:
    topics = assessment.blueprint.topics
    return [each for each in content.items("assessment") if each.topic in topics]


def _report(
    content: Content,
    assessment: Assessment,
    *,
    form: str,
    topics: Sequence[str],
    asked: Sequence[AskedItem],
    gone: tuple[str, ...],
) -> FormReport:
    items = len(topics) if form else assessment.items
    percent = assessment.pass_.percent
    needed = items_needed(percent, items)
    critical = sum(each.item.critical for each in asked)
    wanted = quotas(assessment.blueprint.topics, items)
    others = [topic for topic in dict.fromkeys(topics) if topic not in wanted]
    better = smallest_test(Fraction(KNOW_TOO_LITTLE, 100), Fraction(KNOW_ENOUGH, 100), RARE, RARE)
    return FormReport(
        assessment=assessment.assessment,
        version=assessment.version,
        form=form,
        items=items,
        needed=needed,
        percent=percent,
        attempts=assessment.attempts,
        topics=tuple(
            TopicDrawn(topic=topic, wanted=wanted.get(topic, 0), have=list(topics).count(topic))
            for topic in (*wanted, *others)
        ),
        thinking=tuple(_thinking(assessment, asked, items)),
        critical=critical,
        gone=gone,
        chances=tuple(
            _chance(each, items, needed, assessment.attempts, critical if form else None)
            for each in (KNOW_TOO_LITTLE, KNOW_ENOUGH)
        ),
        better=None if _tells_apart(items, needed) else (better.items, better.cut),
        expected=_expected(content.standards.get(assessment.assessment), asked) if form else None,
    )


def _thinking(
    assessment: Assessment, asked: Sequence[AskedItem], items: int
) -> list[ThinkingDrawn]:
    return [
        ThinkingDrawn(
            thinking=thinking,
            wanted=items_needed(share, items),
            have=sum(
                THINKING.index(each.item.thinking) >= THINKING.index(thinking) for each in asked
            ),
        )
        for thinking, share in assessment.blueprint.at_least.items()
    ]


def _chance(percent: int, items: int, needed: int, attempts: int, critical: int | None) -> Chance:
    """Return how likely somebody passes; each item is right with the same chance, alone."""
    proportion = Fraction(percent, 100)
    once = pass_probability(items, needed, proportion)
    with_critical = None
    if critical is not None:
        all_critical = pass_probability(critical, critical, proportion)
        rest = pass_probability(items - critical, needed - critical, proportion)
        with_critical = all_critical * rest
    return Chance(
        percent=percent,
        once=once,
        over_attempts=over_attempts(once, attempts),
        with_critical=with_critical,
    )


def _tells_apart(items: int, needed: int) -> bool:
    too_little = pass_probability(items, needed, Fraction(KNOW_TOO_LITTLE, 100))
    enough = pass_probability(items, needed, Fraction(KNOW_ENOUGH, 100))
    return too_little <= RARE and 1 - enough <= RARE


def _expected(standard: Standard | None, asked: Sequence[AskedItem]) -> float | None:
    """Return the percent that judges expect on some items; None when one was not rated."""
    if standard is None or not asked:
        return None
    ids = [each.item.item for each in asked]
    if not all(each in judge.ratings for judge in standard.judges for each in ids):
        return None
    total = sum(judge.ratings[each] for judge in standard.judges for each in ids)
    return float(Fraction(total, len(standard.judges) * len(ids)))


def _cut(content: Content, assessment: Assessment, standard: Standard) -> CutReport:
    judges = standard.judges
    rated = tuple(judges[0].ratings)
    found = angoff([[Fraction(judge.ratings[each], 100) for each in rated] for judge in judges])
    total = sum(judge.ratings[each] for judge in judges for each in rated)
    pool = _pool(content, assessment)
    return CutReport(
        assessment=assessment.assessment,
        version=assessment.version,
        rated_version=standard.version,
        judges=len(judges),
        rated=len(rated),
        percent=found.cut / len(rated) * 100,
        se_judges=found.se_judges / len(rated) * 100,
        se_items=found.se_items / len(rated) * 100,
        items=assessment.items,
        needed=-(-total * assessment.items // (100 * len(judges) * len(rated))),
        asked=items_needed(assessment.pass_.percent, assessment.items),
        asked_percent=assessment.pass_.percent,
        not_rated=tuple(each.item.item for each in pool if each.item.item not in rated),
    )
