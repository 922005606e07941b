"""What a form, its length and its cut mean, in words for the author."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import Final

from basinside.model.form_report import Chance, CutReport, FormReport
from basinside.render.wording import _, listed, n_

MOST_CRITICAL: Final = 10
"""More that must all be right fail many who know nearly everything: of ten, each known by 98 people
of 100, 82 have all right; of twenty, 67 (our own bound; 0.98 to the power of each)."""
FEWEST_JUDGES: Final = 5
"""From this many on a panel is usual in the health professions (Downing and others, 2006)."""


def form_report_lines(report: FormReport) -> list[str]:
    """Return the report of a form, or of what a pool makes possible."""
    return [*_blueprint(report), "", *_length(report)]


def _blueprint(report: FormReport) -> Iterator[str]:
    if report.form:
        head = (
            _("Blueprint of form {form}: met")
            if report.met
            else _("Blueprint of form {form}: NOT met")
        )
    else:
        head = _("The pool can fill a form") if report.met else _("The pool can NOT fill a form")
    yield head.format(form=report.form)
    for topic in report.topics:
        said = (
            _("  {topic}: {have}, as asked")
            if report.form and topic.have == topic.wanted
            else _("  {topic}: {have} of {wanted} asked for")
            if report.form
            else _("  {topic}: {have} in the pool, {wanted} in a form")
        )
        yield said.format(topic=topic.topic, have=topic.have, wanted=topic.wanted)
    for kind in report.thinking:
        yield _("  {thinking} or harder: {have}, at least {wanted} asked for").format(
            thinking=kind.thinking, have=kind.have, wanted=kind.wanted
        )
    if report.form:
        yield _("  critical: {n}, all of which must be right").format(n=report.critical)
    else:
        yield _("  critical: {n} in the pool").format(n=report.critical)
    if report.gone:
        yield _("  No longer in the pool, so not counted by thinking or as critical: {ids}").format(
            ids=listed(report.gone)
        )


def _length(report: FormReport) -> Iterator[str]:
    yield _("What {items} questions with {needed} to be right ({percent} %) mean").format(
        items=report.items, needed=report.needed, percent=report.percent
    )
    for chance in report.chances:
        yield _("  Who knows {percent} of 100 things passes {often}").format(
            percent=chance.percent, often=_often(chance.once)
        ) + _more(chance, report)
    if report.form and report.critical > MOST_CRITICAL:
        yield _(
            "  {n} critical questions are many: with more than {most}, people fail who know nearly"
            " all."
        ).format(n=report.critical, most=MOST_CRITICAL)
    if report.better is not None:
        items, cut = report.better
        yield _(
            "  To pass at most 10 of 100 of the first and at least 90 of 100 of the second, a form"
            " has {items} questions or more, with {cut} to be right."
        ).format(items=items, cut=cut)
    yield _(
        "  Counted as if each question were drawn anew from all that there is to know, and each"
        " known or not by itself."
    )
    if report.expected is not None:
        right = report.expected * report.items / 100
        yield _(
            "  Judges expect {right:.1f} of these {items} from somebody just able enough."
        ).format(right=right, items=report.items)


def _more(chance: Chance, report: FormReport) -> str:
    said = ""
    if report.attempts > 1:
        said += _("; {often} within {n} attempts").format(
            often=_often(chance.over_attempts), n=report.attempts
        )
    if chance.with_critical is not None and report.critical:
        said += _("; {often}").format(often=_often(chance.with_critical)) + n_(
            " when the critical one must be right too",
            " when all {n} critical ones must be right too",
            report.critical,
        )
    return said + "."


def _often(chance: float) -> str:
    """Return a chance as times in 100, never as never or as always."""
    times = round(chance * 100)
    if times == 0:
        return _("less than once in 100 times")
    if times == 100:
        return _("more than 99 times in 100")
    return n_("about once in 100 times", "about {n} times in 100", times)


def blank_sheet_lines(assessment: str, version: int, stems: Iterable[tuple[str, str]]) -> list[str]:
    """Return a sheet of ratings to fill in; what each question asks stands beside it."""
    return [
        "# " + _("Of 100 people who are just able enough, how many would have it right?"),
        "# " + _("A judge is named by role; copy the whole block for each judge."),
        f"standard: {assessment}",
        f"version: {version}",
        "on:",
        "judges:",
        "  - role:",
        "    ratings:",
        *(f"      {item}:  # {' '.join(stem.split())}" for item, stem in stems),
    ]


def cut_lines(report: CutReport) -> list[str]:
    """Return what judges expect, and how sure that is."""
    lines = [
        _("{judges} judges rated {rated} questions of {assessment}.").format(
            judges=report.judges, rated=report.rated, assessment=report.assessment
        ),
        _("Mean: somebody just able enough has {percent:.1f} % right.").format(
            percent=report.percent
        ),
        _("  ± {se:.1f} % if other judges like these had rated the same questions").format(
            se=report.se_judges
        ),
        _("  ± {se:.1f} % if other judges had rated other questions like these").format(
            se=report.se_items
        ),
        _("For {items} questions that is {needed} right, rounded up.").format(
            items=report.items, needed=report.needed
        ),
        _("The assessment asks for {asked} ({percent} %): {verdict}.").format(
            asked=report.asked,
            percent=report.asked_percent,
            verdict=_("the same")
            if report.asked == report.needed
            else _("more")
            if report.asked > report.needed
            else _("fewer than judges expect"),
        ),
    ]
    if report.rated_version != report.version:
        lines.append(
            _("Rated was version {rated}; the assessment is version {version} now.").format(
                rated=report.rated_version, version=report.version
            )
        )
    if report.not_rated:
        lines.append(_("Not rated: {ids}.").format(ids=listed(report.not_rated)))
    if report.judges < FEWEST_JUDGES:
        lines.append(_("Fewer than {n} judges are a beginning.").format(n=FEWEST_JUDGES))
    return [*lines, _("This is for you alone: no page of the folder says what assessments ask.")]
