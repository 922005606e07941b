"""What the calculators say: a phrase for everything, short sentences, the same words everywhere."""

import re

from basinside.derive.amounts import answer
from basinside.model.amounts import CAUTIONS, SOURCES, Amount, said
from basinside.render.amount_phrases import AMOUNT_PHRASES
from basinside.render.amount_words import (
    amount_text,
    answer_lines,
    said_words,
    strength_words,
)
from tests.derive.amount_questions import GROUND, questions

MOST_WORDS = 20


def test_every_answer_and_every_refusal_has_its_words() -> None:
    spoken: set[str] = set()
    for kind, typed in questions():
        found = answer(GROUND, kind, dict(typed))
        lines = list(answer_lines(found))
        assert lines
        assert not re.search(r"\{[a-z_]+\}", "\n".join(lines)), lines
        sentences = [*found.inputs, *found.working, *found.measured, *found.would_do]
        spoken.update(each.code for each in sentences)
    assert len(spoken) > 60


def test_every_caution_and_source_has_its_words() -> None:
    for codes, start in ((CAUTIONS, "caution"), (SOURCES, "source")):
        for each in (code for kind in codes.values() for code in kind):
            assert f"amounts.{start}.{each}" in AMOUNT_PHRASES


def test_sentences_are_short() -> None:
    long = [
        sentence
        for key, text in AMOUNT_PHRASES.items()
        if not key.startswith("amounts.source.")  # titles of publications
        for sentence in re.split(r"(?<=[.?!:;]) ", text)
        if len(re.findall(r"[^\W\d_][\w-]*", sentence)) > MOST_WORDS
    ]
    assert long == []


def test_holes_that_are_words_are_filled_by_words() -> None:
    assert said_words(said("echo-made", made_day="2028-02-29")) == (
        "made or opened on 29 February 2028"
    )
    pour = said("pour-full", times="2", measure="syringe", amount="10", unit="mL")
    assert said_words(pour) == "2 × syringe, full (10 mL)"
    assert said_words(said("missing", field="volume")) == (
        "Volume of the whole bath: nothing is written there."
    )


def test_a_number_stands_with_its_unit() -> None:
    of = said("of-sets")
    texts = [
        amount_text(Amount(number=number, unit=unit, of=of))
        for number, unit in (
            ("1", "tablets"), ("4", "tablets"), ("", "held"), ("130", "kpa-gauge"),
            ("2026-12-04", "date"), ("00:10", ""), ("20", "min"),
        )
    ]  # fmt: skip
    assert texts == [
        "1 tablet", "4 tablets", "Held long enough", "130 kPa gauge", "4 December 2026", "00:10",
        "20 min",
    ]  # fmt: skip
    assert strength_words("0.112") == "0.112 % available chlorine, or 1120 ppm"
