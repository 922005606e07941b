"""An assessment form on paper: the questions with their answer strip, and the key."""

from __future__ import annotations

from dataclasses import dataclass

from basinside.render.view_types.learning import BlankView
from basinside.render.view_types.text import FactView, Prose


@dataclass(frozen=True, slots=True, kw_only=True)
class PaperOptionView:
    """One option by its letter; on the key with ``word`` (right, unsafe) and why."""

    letter: str
    text: Prose
    word: str = ""
    because: Prose = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class PaperQuestionView:
    """One question: ``ask`` says how many options to choose, ``word`` that it is critical."""

    number: str
    situation: Prose = ()
    stem: Prose
    ask: str
    word: str = ""
    options: tuple[PaperOptionView, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class StripRowView:
    """One row of the answer strip: the question's number and a box for each letter.

    ``chosen`` are the letters filled in beforehand: on the key, the right ones.
    """

    number: str
    letters: tuple[str, ...]
    chosen: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class QuestionFormView:
    """``question-form-ASSESSMENT-FORM.html``: what a learner gets."""

    title: str
    lead: Prose
    head: tuple[BlankView, ...]
    questions: tuple[PaperQuestionView, ...]
    strip_heading: str
    strip_lead: Prose
    strip: tuple[StripRowView, ...]
    facts: tuple[FactView, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class AnswerKeyView:
    """``answer-key-ASSESSMENT-FORM.html``: what only the marker gets."""

    title: str
    lead: Prose
    strip_heading: str
    strip: tuple[StripRowView, ...]
    questions: tuple[PaperQuestionView, ...]
    facts: tuple[FactView, ...]
