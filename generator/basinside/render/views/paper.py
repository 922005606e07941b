"""An opened form as two prints: the questions with their answer strip, and the key."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from basinside.marking import items_needed
from basinside.model.handbook import Handbook
from basinside.render.view_types import ChromeView, FactView, LinkView, plain
from basinside.render.view_types.learning import BlankView
from basinside.render.view_types.paper import (
    AnswerKeyView,
    PaperOptionView,
    PaperQuestionView,
    QuestionFormView,
    StripRowView,
)
from basinside.render.views.spot import day_words
from basinside.render.wording import _, n_

Document = Mapping[str, Any]

PAPER_POLICY = "default-src 'none'; style-src 'self' file:; base-uri 'none'; form-action 'none'"
"""The content policy of a print: its style sheet and nothing else."""
STYLESHEET = "basinside.css"
"""The style sheet lies beside the prints."""


def letter(position: int) -> str:
    """Return what an option is called on paper: A is the first of the stored order."""
    return chr(ord("A") + position)


def question_form_view(form: Document, handbook: Handbook) -> QuestionFormView:
    """Return the questions of an opened form, to be answered by pen.

    ``handbook`` says on the paper until when it is good, and whom to ask.
    """
    return QuestionFormView(
        title=str(form["title"]),
        lead=plain(_lead(form)),
        head=(
            BlankView(label=_("Staff code"), width=2),
            BlankView(label=_("Date"), width=2),
        ),
        questions=tuple(_question(number, item) for number, item in enumerate(form["items"], 1)),
        strip_heading=_("Answers"),
        strip_lead=plain(
            _("Fill in the box of each answer you choose. Only this strip is marked.")
        ),
        strip=tuple(
            StripRowView(number=str(number), letters=_letters(item))
            for number, item in enumerate(form["items"], 1)
        ),
        facts=_facts(form, handbook),
    )


def answer_key_view(form: Document, keys: Document, handbook: Handbook) -> AnswerKeyView:
    """Return the key of an opened form: what is right, what is unsafe, and why."""
    pairs = list(zip(form["items"], keys["items"], strict=True))
    needed = items_needed(int(keys["pass_percent"]), len(pairs))
    return AnswerKeyView(
        title=_("Key: {title}").format(title=form["title"]),
        lead=plain(
            _(
                "For the marker only. Passed with {needed} of {items}, every critical question"
                " right and no unsafe answer."
            ).format(needed=n_("1 question", "{n} questions", needed), items=len(pairs))
        ),
        strip_heading=_("Right answers"),
        strip=tuple(
            StripRowView(
                number=str(number),
                letters=_letters(item),
                chosen=tuple(letter(n) for n in sorted(_right(key["plan"]))),
            )
            for number, (item, key) in enumerate(pairs, 1)
        ),
        questions=tuple(
            _question(number, item, key) for number, (item, key) in enumerate(pairs, 1)
        ),
        facts=_facts(form, handbook),
    )


def paper_chrome(title: str, language: str) -> ChromeView:
    """Return the frame of a print: no ways on, one style sheet beside it."""
    return ChromeView(
        language=language,
        policy=PAPER_POLICY,
        title=title,
        stylesheet=STYLESHEET,
        site_title="",
        home="",
        skip="",
        nav_label="",
        nav=(),
        alarm=LinkView(text="", href=""),
    )


def how_many(item: Document) -> str:
    """Return how many options a question asks for."""
    return _("Choose one.") if item["kind"] == "choice" else _("Choose all that are right.")


def _lead(form: Document) -> str:
    minutes = form.get("minutes")
    questions = n_("1 question", "{n} questions", len(form["items"]))
    if not minutes:
        return _("{questions}. Answer every one.").format(questions=questions)
    return _("{questions} in {minutes}. Answer every one.").format(
        questions=questions, minutes=n_("1 minute", "{n} minutes", int(minutes))
    )


def _question(number: int, item: Document, key: Document | None = None) -> PaperQuestionView:
    return PaperQuestionView(
        number=str(number),
        situation=plain(item["situation"]),
        stem=plain(item["stem"]),
        ask=how_many(item),
        word=_("Critical") if key is not None and key["plan"]["critical"] else "",
        options=tuple(
            PaperOptionView(
                letter=letter(n),
                text=plain(text),
                word=_word(key["plan"], n) if key is not None else "",
                because=plain(key["reasons"][n]) if key is not None else (),
            )
            for n, text in enumerate(item["options"])
        ),
    )


def _word(plan: Document, position: int) -> str:
    if position in _right(plan):
        return _("Right")
    unsafe = any(each.get("has") == position for each in plan["fail_any"])
    return _("Unsafe") if unsafe else ""


def _right(plan: Document) -> set[int]:
    return {each["has"] for each in plan["pass_all"] if "has" in each}


def _letters(item: Document) -> tuple[str, ...]:
    return tuple(letter(n) for n in range(len(item["options"])))


def _facts(form: Document, handbook: Handbook) -> tuple[FactView, ...]:
    said = (
        (_("Handbook"), handbook.title),
        (_("Edition"), form["edition"]),
        (
            _("Form"),
            _("{assessment}, version {version}, form {form}").format(
                assessment=form["assessment"], version=form["version"], form=form["form"]
            ),
        ),
        (
            _("Void after"),
            _("{day}, or when the next edition is out").format(day=day_words(handbook.review_by)),
        ),
        (_("Ask"), handbook.responsible),
    )
    return tuple(FactView(label=label, text=plain(str(text))) for label, text in said)
