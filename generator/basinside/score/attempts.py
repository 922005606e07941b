"""Score one attempt against the opened form it was made on.

Points come from the marking plans alone. What an attempt says of itself is checked against the
sealed form first: another handbook, assessment, form, edition or item list is refused in words.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from basinside.marking import evaluate, fits, plan_answer
from basinside.model.attempt import Answer, Attempt
from basinside.model.results import AttemptResult, ItemResult, TopicResult
from basinside.score.cut import items_needed
from basinside.score.refusal import NotScoredError, day_of

Document = Mapping[str, Any]


def score_attempt(
    attempt: Attempt,
    form_document: Document,
    keys_document: Document,
    *,
    form_digest: str,
    answers_digest: str,
) -> AttemptResult:
    """Return what an attempt is worth.

    Args:
        attempt: answers as positions in the form's stored option order.
        form_document: the opened form.
        keys_document: its opened keys.
        form_digest: ``form-v1`` of the sealed form that both came from.
        answers_digest: ``answers-v1`` of the attempt.

    Raises:
        NotScoredError: when the attempt is a self-test, was made on another form, or holds an
            answer that its item cannot have been given.
    """
    _refuse_stranger(attempt, form_document, keys_document, form_digest)
    asked, keys = form_document["items"], keys_document["items"]
    items = tuple(
        _item(answer, item, key)
        for answer, item, key in zip(attempt.items, asked, keys, strict=True)
    )
    worth = sum(each.worth for each in items)
    percent = int(keys_document["pass_percent"])
    right = items_needed(percent, len(items))
    needed = right * (worth // len(items) if items else 0)
    points = sum(each.points for each in items)
    return AttemptResult(
        digest=answers_digest,
        assessment=attempt.id,
        form=str(attempt.form),
        edition=attempt.edition,
        learner=attempt.staff_code,
        date=day_of(attempt.date),
        points=points,
        of_points=worth,
        needed=needed,
        items_needed=right,
        passed=points >= needed
        and not any(each.unsafe or (each.critical and not each.passed) for each in items),
        items=items,
        topics=_topics(items),
    )


def letters_of(positions: tuple[int, ...]) -> str:
    """Return positions as paper calls them: A is the first option."""
    return "".join(chr(ord("A") + each) for each in positions)


def _refuse_stranger(attempt: Attempt, form: Document, keys: Document, form_digest: str) -> None:
    if attempt.kind != "assessment":
        raise NotScoredError(
            f"This is a self-test on {attempt.id}. Self-tests are practice, their keys are open;"
            " they are no evidence."
        )
    for name in ("handbook", "assessment", "version", "form", "edition"):
        if form.get(name) != keys.get(name):
            raise NotScoredError(f"The form and its keys differ in their {name}.")
    said = (
        ("handbook", attempt.handbook, form["handbook"]),
        ("assessment", attempt.id, form["assessment"]),
        ("form", attempt.form, form["form"]),
        ("edition", attempt.edition, form["edition"]),
    )
    for name, theirs, ours in said:
        if theirs != ours:
            raise NotScoredError(
                f"The attempt was made for {name} {theirs}; the sealed form is of {name} {ours}."
            )
    if attempt.form_digest != form_digest:
        raise NotScoredError(
            "The attempt was made on another sealing of this form: its options stood in another"
            " order, so it cannot be marked with these keys."
        )
    names = [each.item for each in attempt.items]
    wanted = [each["item"] for each in form["items"]]
    if names != wanted or len(keys["items"]) != len(wanted):
        raise NotScoredError("The attempt's questions are not those of the form, in its order.")


def _item(answer: Answer, asked: Document, key: Document) -> ItemResult:
    plan = key["plan"]
    given = plan_answer(answer)
    if not fits(plan, given):
        raise NotScoredError(
            f"The answer to {asked['item']} names an option that the question does not have."
        )
    outcome = evaluate(plan, given)
    return ItemResult(
        item=asked["item"],
        topic=asked["topic"],
        stem=asked["stem"],
        critical=bool(plan["critical"]),
        letters=letters_of(answer.chosen or answer.ordered or ()),
        points=outcome.points,
        worth=plan["worth"],
        passed=outcome.passed,
        unsafe=tuple(asked["options"][n] for n in outcome.unsafe),
    )


def _topics(items: tuple[ItemResult, ...]) -> tuple[TopicResult, ...]:
    names = dict.fromkeys(each.topic for each in items)
    return tuple(
        TopicResult(
            topic=name,
            passed=sum(each.passed for each in items if each.topic == name),
            of=sum(each.topic == name for each in items),
        )
        for name in names
    )
