"""The demonstration is whole: enough of everything, short sentences, and nothing given away."""

from __future__ import annotations

import pytest

from basinside.model.procedure import Procedure, Stage, Step
from basinside.model.words import STAGES
from tests.content.demo import CHECKOUT, clinic, content, raw
from tests.content.reading import grade, said, sentences, words

PROCEDURES = tuple(content().procedures)
LEAST_ITEMS = {"practice": 24, "assessment": 18}
LEAST_STEPS, MOST_STEPS = 10, 25
MOST_WORDS, MOST_WORDS_OF_A_SAFETY_STEP = 20, 12
HIGHEST_GRADE, HIGHEST_GRADE_OF_SAFETY_STEPS = 8, 6


def test_four_procedures_of_three_instruments_and_two_vessels() -> None:
    assert len(PROCEDURES) == 4
    assert set(content().instruments) == {"bag-mask-silicone", "bag-mask-vinyl", "mucus-extractor"}
    assert len(clinic().vessels) == 2
    assert len(content().agents) == 2
    assert len(content().choices) == 2


@pytest.mark.parametrize("name", PROCEDURES)
def test_procedure_has_every_stage_and_a_length_that_can_be_learned(name: str) -> None:
    procedure = content().procedures[name]
    assert LEAST_STEPS <= len(procedure.steps) <= MOST_STEPS
    assert {each.stage for each in procedure.stages} == set(STAGES)
    for stage in procedure.stages:
        assert bool(stage.steps) != bool(stage.not_applicable)


@pytest.mark.parametrize("pool", LEAST_ITEMS)
def test_enough_items_and_a_third_of_them_in_scenarios(pool: str) -> None:
    asked = list(content().items(pool))
    assert len(asked) >= LEAST_ITEMS[pool]
    assert sum(each.scenario is not None for each in asked) * 3 >= len(asked)


def test_each_item_rests_on_something_and_each_wrong_option_names_its_belief() -> None:
    for asked in content().items():
        item = asked.item
        assert item.rests_on is not None, item.item
        assert item.about, item.item
        for option in item.options:
            assert option.because, (item.item, option.text)
            assert bool(option.shows) != option.is_right, (item.item, option.text)


def test_each_item_rests_on_steps_that_it_is_about() -> None:
    steps = {f"{name}/{step.step}" for name in PROCEDURES for _, step in each_step(name)}
    for asked in content().items():
        assert asked.item.rests_on is not None
        assert set(asked.item.rests_on.steps) <= steps
        assert set(asked.item.rests_on.steps) <= set(asked.item.about), asked.item.item


def each_step(name: str) -> tuple[tuple[Stage, Step], ...]:
    procedure: Procedure = content().procedures[name]
    return procedure.steps


def flat(text: str) -> str:
    return " ".join(text.split()).lower()


def test_assessment_stems_stand_nowhere_else() -> None:
    own = {questions.topic for questions in content().questions if questions.pool == "assessment"}
    files = {
        name: flat(data.decode("utf-8"))
        for name, data in raw().items()
        if name.endswith((".yaml", ".json"))
    }
    for evidence in sorted((CHECKOUT / "quizzes").rglob("*.json")):
        files[str(evidence)] = flat(evidence.read_text(encoding="utf-8"))
    assessed = {f"quizzes/questions/assessment-{topic}.yaml" for topic in own}
    assert assessed <= set(files)
    everything = " ".join(text for name, text in sorted(files.items()) if name not in assessed)
    inside = " ".join(files[name] for name in sorted(assessed))
    stems = [flat(each.item.stem) for each in content().items("assessment")]
    situations = {flat(each.situation) for each in content().items("assessment") if each.situation}
    assert len(set(stems)) == len(stems)
    assert not [each for each in (*stems, *situations) if each in everything]
    assert not [each for each in stems if inside.count(each) != 1]


# --- short and plain


def read(text: str | None) -> list[str]:
    return sentences(said(text, content())) if text else []


@pytest.mark.parametrize("name", PROCEDURES)
def test_sentences_of_steps_are_short(name: str) -> None:
    long = []
    for _, step in each_step(name):
        most = MOST_WORDS_OF_A_SAFETY_STEP if step.safety else MOST_WORDS
        long += [each for each in read(step.do) if len(words(each)) > most]
        say = step.danger.say if step.danger else None
        hold = step.hold.if_interrupted if step.hold else None
        others = [*read(step.why), *read(say), *read(hold), *read(step.wall)]
        long += [each for each in others if len(words(each)) > MOST_WORDS]
    assert long == []


@pytest.mark.parametrize("name", PROCEDURES)
def test_steps_are_plain_to_read(name: str) -> None:
    steps = [step for _, step in each_step(name)]
    whole = [said(text, content()) for step in steps for text in (step.do, step.why or "") if text]
    safety = [said(step.do, content()) for step in steps if step.safety]
    assert grade(whole) <= HIGHEST_GRADE
    assert grade(safety) <= HIGHEST_GRADE_OF_SAFETY_STEPS


def test_incidents_are_short_and_plain() -> None:
    texts = [
        said(text, content())
        for each in content().incidents.values()
        for text in (each.first_minute, each.then)
        if text
    ]
    assert texts
    assert not [each for text in texts for each in sentences(text) if len(words(each)) > MOST_WORDS]
    assert grade(texts) <= HIGHEST_GRADE
