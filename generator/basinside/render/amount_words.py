"""An answer of a calculator in words: sentence by sentence, and whole for the prompt."""

from __future__ import annotations

import textwrap
from collections.abc import Iterable, Iterator
from datetime import date
from fractions import Fraction
from typing import Final

from basinside.model.amounts import Amount, Answer, Said
from basinside.render.amount_phrases import AMOUNT_PHRASES
from basinside.render.views.spot import day_words
from basinside.render.wording import _, sentence
from basinside.units import PPM_IN_PERCENT

LINE_SIGNS: Final = 92


def phrase(key: str, **holes: str) -> str:
    """Return a phrase of the calculators with its holes filled."""
    return _(AMOUNT_PHRASES[f"amounts.{key}"]).format(**holes)


def said_words(said: Said) -> str:
    """Return a sentence of an answer."""
    return phrase(f"said.{said.code}", **{name: _hole(name, value) for name, value in said.holes})


def amount_words(amount: Amount) -> tuple[str, str]:
    """Return a number and its unit as they are shown large; one of them may be empty."""
    if amount.unit == "date":
        return day_words(date.fromisoformat(amount.number)), ""
    if amount.number == "1" and f"amounts.unit.{amount.unit}.one" in AMOUNT_PHRASES:
        return amount.number, phrase(f"unit.{amount.unit}.one")
    return amount.number, unit_words(amount.unit)


def amount_text(amount: Amount) -> str:
    """Return a number and its unit in one."""
    return " ".join(filter(None, amount_words(amount)))


def unit_words(unit: str) -> str:
    """Return a unit: a symbol as it is, a word in the reader's language."""
    return phrase(f"unit.{unit}") if f"amounts.unit.{unit}" in AMOUNT_PHRASES else unit


def strength_words(percent: str) -> str:
    """Return a true strength, in % and in ppm."""
    ppm = Fraction(percent) * PPM_IN_PERCENT
    shown = str(ppm.numerator) if ppm.denominator == 1 else str(float(ppm))
    return phrase("strength-is", percent=percent, ppm=shown)


def answer_lines(answer: Answer) -> Iterator[str]:
    """Yield an answer or a refusal, line by line, as the prompt prints it."""
    if answer.refusal:
        yield from _wrapped(f"{phrase('refused')}: ", said_words(answer.refusal))
    for at, amount in enumerate(answer.amounts):
        text = f"{amount_text(amount)} {said_words(amount.of)}"
        yield from _wrapped("" if at == 0 else "  ", text)
    yield from _listed(
        phrase("would-do" if answer.refusal else "do-now"), map(said_words, answer.would_do)
    )
    yield from _listed(phrase("measured"), map(said_words, answer.measured))
    if answer.strength:
        yield from _listed(phrase("strength"), [strength_words(answer.strength)])
    yield from _listed(phrase("working"), map(said_words, answer.working))
    yield from _listed(phrase("reckoned"), map(said_words, answer.inputs))
    yield from _listed(phrase("cautions"), (phrase(f"caution.{each}") for each in answer.cautions))
    yield from _listed(phrase("sources"), (phrase(f"source.{each}") for each in answer.sources))


def _listed(heading: str, lines: Iterable[str]) -> Iterator[str]:
    shown = list(lines)
    if shown:
        yield ""
        yield heading
    for line in shown:
        yield from _wrapped("  ", sentence(line))


def _wrapped(start: str, text: str) -> list[str]:
    return textwrap.wrap(
        text, LINE_SIGNS, initial_indent=start, subsequent_indent=" " * max(len(start), 4)
    )


def _hole(name: str, value: str) -> str:
    if name in {"field", "measure"}:
        return phrase(f"{name}.{value}")
    if name == "unit":
        return unit_words(value)
    return day_words(date.fromisoformat(value)) if name.endswith("_day") else value
