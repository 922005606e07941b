"""Scores in words: what was reached, what was missed, which unsafe answers were chosen."""

from __future__ import annotations

from basinside.model.results import AttemptResult, ObservationResult, WhyNot
from basinside.render.wording import _


def attempt_lines(result: AttemptResult) -> list[str]:
    """Return one attempt's result, line by line."""
    lines = [
        _("{learner}, {assessment}, form {form}, {date}: {verdict}.").format(
            learner=result.learner,
            assessment=result.assessment,
            form=result.form,
            date=result.date.isoformat(),
            verdict=_("passed") if result.passed else _("not passed"),
        ),
        _("  {points} of {of} points; {needed} needed. {right} of {items} items.").format(
            points=result.points,
            of=result.of_points,
            needed=result.needed,
            right=result.items_passed,
            items=len(result.items),
        ),
    ]
    lines += [
        _("  {topic}: {passed} of {of} items").format(
            topic=each.topic, passed=each.passed, of=each.of
        )
        for each in result.topics
    ]
    lines += [
        _("  Critical question missed: {stem} ({item}; answered {letters})").format(
            stem=each.stem, item=each.item, letters=each.letters or _("nothing")
        )
        for each in result.critical_missed
    ]
    lines += [
        _("  Unsafe answer chosen: “{option}” ({item})").format(option=option, item=each.item)
        for each in result.unsafe_chosen
        for option in each.unsafe
    ]
    return lines


def observation_lines(result: ObservationResult) -> list[str]:
    """Return one observed run, line by line."""
    lines = [
        _("{learner}, {procedure}, {date}, {setting}, seen by {observers}: {verdict}.").format(
            learner=result.learner,
            procedure=result.procedure,
            date=result.date.isoformat(),
            setting=result.setting,
            observers=" + ".join(result.observers),
            verdict=_("counts") if result.counts else _("does not count"),
        )
    ]
    return lines + [f"  {why_not_sentence(each)}" for each in result.why_not]


def why_not_sentence(why: WhyNot) -> str:
    """Return one reason why a run does not count."""
    if why.reason == "line-not-met":
        return _("{line}: {verdict}").format(line=why.line, verdict=why.verdict)
    return {
        "line-missing": _("{line}: no verdict on this line"),
        "line-unknown": _("{line}: this line is not on the checklist"),
        "line-outdated": _("{line}: this line means something else by now"),
        "second-observer-differs": _("the second observer did not see every line met"),
        "help-needed": _("the observer had to help"),
        "scope-changed": _("the procedure was changed after this run"),
    }[why.reason].format(line=why.line)


def tally_line(results: int, good: int) -> str:
    """Return the last line of a scoring: how many of how many are good."""
    return _("{good} of {results} passed or count.").format(good=good, results=results)


def result_data(result: AttemptResult | ObservationResult) -> dict[str, object]:
    """Return a result for a tool."""
    if isinstance(result, ObservationResult):
        return {
            "kind": "observation",
            "digest": result.digest,
            "procedure": result.procedure,
            "learner": result.learner,
            "observers": list(result.observers),
            "date": result.date.isoformat(),
            "setting": result.setting,
            "counts": result.counts,
            "why_not": [why_not_sentence(each) for each in result.why_not],
        }
    return {
        "kind": "attempt",
        "digest": result.digest,
        "assessment": result.assessment,
        "form": result.form,
        "learner": result.learner,
        "date": result.date.isoformat(),
        "points": result.points,
        "of": result.of_points,
        "needed": result.needed,
        "passed": result.passed,
        "topics": {each.topic: [each.passed, each.of] for each in result.topics},
        "critical_missed": [each.item for each in result.critical_missed],
        "unsafe_chosen": {each.item: list(each.unsafe) for each in result.unsafe_chosen},
    }
