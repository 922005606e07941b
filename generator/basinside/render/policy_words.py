"""What each line of a policy says when it holds, fails or is left open."""

from __future__ import annotations

from basinside.render.wording import _


def policy_phrases() -> dict[str, str]:
    """Return the phrases of a policy's findings: ``CODE.VERDICT`` and ``CODE.reason.REASON``."""
    return {
        **_people_phrases(),
        **_knowledge_phrases(),
        **_practice_phrases(),
        **_open_phrases(),
        "reason.no-time": _("The policy's limit of {limit} is no time."),
        "reason.nothing-to-judge": _("There is nothing to judge."),
    }


def _people_phrases() -> dict[str, str]:
    return {
        "signer-differs.holds": _("{signer} signs for {learner}: two people."),
        "signer-differs.fails": _("{learner} cannot sign for themselves."),
        "learner-same.holds": _("All evidence is of {learner}."),
        "learner-same.fails": _("Some evidence is of somebody else than {learner}: {others}."),
        "observers-differ.holds": _("Nobody observed themselves."),
        "observers-differ.fails": _("{learner} cannot observe themselves."),
        "evidence-once.holds": _("No piece of evidence stands twice."),
        "evidence-once.fails": _("The same evidence was given more than once."),
        "evidence-once.reason.same-file": _("{count} too many."),
        "evidence-once.reason.same-run": _(
            "Two sheets are of one run, or of two runs at the same time: {runs}. Two observers of"
            " one run share one sheet."
        ),
        "evidence-not-later.holds": _("No evidence is later than the day of signing."),
        "evidence-not-later.fails": _(
            "Some evidence is of {latest}, later than the day of signing ({on})."
        ),
        "evidence-current.holds": _("The evidence is on what edition {edition} says."),
        "evidence-current.fails": _("Some evidence is on what the handbook no longer says:"),
        "evidence-current.reason.attempt": _(
            "an attempt on edition {editions}; the current one is {edition}."
        ),
        "evidence-current.reason.procedure": _("the steps changed since in {procedures}."),
        "signer-listed.holds": _("The key of {signer} is on the trust list: {role}."),
        "signer-listed.fails": _("The key of {signer} is not on the trust list as in use."),
        "signer-listed.unknown": _(
            "There is no trust list yet: nobody who examines the record will know {signer}."
        ),
        "signer-listed.reason.not-in-use": _("It is retired, lost, or counts from a later day."),
        "evidence-of-scope.holds": _("All evidence is on {scope} and its assessment."),
        "evidence-of-scope.fails": _(
            "Some evidence is on something else than {scope} and its policy: {about}."
        ),
        "lasts.holds": _("The policy says how long a record lasts."),
        "lasts.fails": _("The policy does not say how long a record lasts (“lasts”)."),
        "practice-asked.holds": _("The policy asks for observed practice."),
        "practice-asked.fails": _(
            "The policy asks for no observed practice. Nobody works alone on a knowledge test."
        ),
    }


def _knowledge_phrases() -> dict[str, str]:
    return {
        "knowledge-passed.holds": _(
            "Knowledge: {assessment} was passed with {points} points ({needed} needed)."
        ),
        "knowledge-passed.fails": _("Knowledge: {assessment} was not passed."),
        "reason.no-attempt": _("There is no attempt among the evidence."),
        "reason.too-few-points": _("{points} points; {needed} are needed."),
        "reason.critical-missed": _("A critical question was missed ({points} points)."),
        "reason.unsafe-chosen": _("An unsafe answer was chosen ({points} points)."),
        "knowledge-recent.holds": _("Knowledge: not older than {limit}."),
        "knowledge-recent.fails": _("Knowledge: older than {limit}."),
        "knowledge-recent.unknown": _("Knowledge: not older than {limit}?"),
        "knowledge-recent.reason.too-old": _("The attempt is of {oldest}; {since} is the limit."),
        "attempts-allowed.holds": _("Attempts here: {used} of {allowed} allowed."),
        "attempts-allowed.fails": _("Attempts here: {used}, but only {allowed} allowed."),
    }


def _practice_phrases() -> dict[str, str]:
    return {
        "practice-runs.holds": _(
            "Practice, {procedure}: runs that count: {have} ({wanted} asked)."
        ),
        "practice-runs.fails": _("Practice, {procedure}: runs that count: {have}; {wanted} asked."),
        "practice-real.holds": _(
            "Practice, {procedure}: runs in real work: {have} ({wanted} asked)."
        ),
        "practice-real.fails": _(
            "Practice, {procedure}: runs in real work: {have}; {wanted} asked."
        ),
        "practice-observers.holds": _(
            "Practice, {procedure}: different observers: {have} ({wanted} asked)."
        ),
        "practice-observers.fails": _(
            "Practice, {procedure}: different observers: {have}; {wanted} asked."
        ),
        "practice-days.holds": _("Practice, {procedure}: different days: {have} ({wanted} asked)."),
        "practice-days.fails": _("Practice, {procedure}: different days: {have}; {wanted} asked."),
        "practice-recent.holds": _("Practice, {procedure}: not older than {limit}."),
        "practice-recent.fails": _("Practice, {procedure}: older than {limit}."),
        "practice-recent.unknown": _("Practice, {procedure}: not older than {limit}?"),
        "practice-recent.reason.too-old": _(
            "Only {have} of {of} runs are since {since}; the oldest is of {oldest}."
        ),
    }


def _open_phrases() -> dict[str, str]:
    return {
        "attempts-elsewhere.not-judged": _(
            "Attempts at {assessment} that are not among this evidence."
        ),
        "observers-entitled.not-judged": _("Whether the observers' own records were in date."),
        "lapse.not-judged": _("Whether the work was done within {after}."),
        "way-back.not-judged": _("The way back after a lapse (runs asked: {runs})."),
    }
