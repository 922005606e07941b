"""The demonstration is whole: enough of everything, short sentences, and nothing given away."""

from __future__ import annotations

import re
from itertools import combinations

import pytest

from basinside.model.procedure import Procedure, Stage, Step
from basinside.model.words import STAGES
from tests.content.demo import CHECKOUT, clinic, content, raw
from tests.content.prose import PROSE
from tests.content.reading import grade, sentences, words

PROCEDURES = tuple(content().procedures)
ROUTED = tuple(name for name, each in content().procedures.items() if each.route)
LEAST_ITEMS = {"practice": 60, "assessment": 40}
LEAST_STEPS, LEAST_STEPS_OF_A_TASK, MOST_STEPS = 10, 4, 25
MOST_WORDS, MOST_WORDS_OF_A_SAFETY_STEP = 20, 12
HIGHEST_GRADE, HIGHEST_GRADE_OF_SAFETY_STEPS = 8, 6


def test_a_clinic_is_whole() -> None:
    model = content()
    assert len(model.instruments) >= 12
    single_use = [each for each in model.instruments.values() if each.label == "single use"]
    assert len(single_use) >= 2
    assert all(each.found_on_the_shelf for each in single_use)
    assert len(model.instruments) - len(single_use) >= 10
    assert len(model.procedures) >= 16
    assert len(model.agents) >= 10
    assert len(model.figures) >= 80
    assert len(model.choices) >= 18
    assert len(model.words) >= 40
    assert len(clinic().vessels) == 2


def test_every_instrument_that_is_used_again_is_drawn_twice_and_covered() -> None:
    for name, instrument in content().instruments.items():
        assert instrument.assembled, name
        if instrument.label == "single use":
            continue
        assert instrument.drawing, name
        assert instrument.instructions_held, name
        assert instrument.function_test, name
        covered = [
            part
            for each in content().procedures.values()
            if each.instrument == name and each.route
            for part in each.parts or tuple(part.part for part in instrument.parts)
        ]
        assert set(covered) == {part.part for part in instrument.parts}, name


def test_every_chemical_says_what_a_card_needs() -> None:
    harmless = {"water", "saline"}
    for name, agent in content().agents.items():
        if agent.family in harmless:
            continue
        assert agent.hazards or agent.family == "lubricant", name
        assert agent.wear, name
        assert agent.first_aid or agent.family == "lubricant", name
        assert agent.waste, name


def test_choices_are_made_by_two_roles_with_a_day_to_look_again() -> None:
    for name, choice in content().choices.items():
        assert {choice.by, choice.second} == {"infection-prevention lead", "midwife in charge"}
        assert choice.look_again is not None, name
        assert choice.not_chosen, name
    assert content().choices["chlorine.presoak"].chosen == "not done"


@pytest.mark.parametrize("name", PROCEDURES)
def test_procedure_has_every_stage_and_a_length_that_can_be_learned(name: str) -> None:
    procedure = content().procedures[name]
    least = LEAST_STEPS if procedure.route else LEAST_STEPS_OF_A_TASK
    assert least <= len(procedure.steps) <= MOST_STEPS
    if procedure.route:
        assert {each.stage for each in procedure.stages} == set(STAGES)
    for stage in procedure.stages:
        assert bool(stage.steps) != bool(stage.not_applicable)


@pytest.mark.parametrize("name", ROUTED)
def test_each_procedure_that_gives_a_level_is_watched(name: str) -> None:
    assert name in content().observations


def test_no_value_and_no_source_is_idle() -> None:
    model = content()
    text = b"\n".join(data for name, data in raw().items() if name.endswith(".yaml")).decode(
        "utf-8"
    )
    spoken = {each.split()[0] for each in re.findall(r"\{\{\s*([^}]+)\}\}", text)}
    named = set(re.findall(r"figure: ([a-z0-9.-]+)", text))
    assert set(model.figures) - spoken - named == set()
    cited = set(re.findall(r"(?:source|at): ([a-z0-9-]+)", text))
    assert set(model.sources) - cited == set()


# --- questions


def test_enough_items_over_eight_topics() -> None:
    asked = list(content().items())
    for pool, least in LEAST_ITEMS.items():
        mine = [each for each in asked if each.pool == pool]
        assert len(mine) >= least
        assert len({each.topic for each in mine}) >= 8
        assert sum(each.scenario is not None for each in mine) * 4 >= len(mine)
    assert sum(each.item.thinking in {"apply", "analyse"} for each in asked) >= 45


def test_published_errors_stand_behind_scenarios() -> None:
    scenarios = {
        (each.scenario.scenario if each.scenario else each.item.item): built
        for each in content().items()
        if (built := each.item.built_on or (each.scenario.built_on if each.scenario else None))
        and each.situation
    }
    assert len(scenarios) >= 25
    assert len({each.source.split(" ")[0] for each in scenarios.values()}) >= 20


MOST_SHARED_WORDS = 0.6
_SMALL = frozenset(
    "a an the of in on at to for and or is are was do does did you your it its this that these"
    " what which how when why who with from by be must may can should now first next".split()
)


def test_no_two_stems_share_more_than_three_words_in_five() -> None:
    stems = {each.item.item: frozenset(words(each.item.stem)) for each in content().items()}
    alike = []
    for (one, left), (other, right) in combinations(stems.items(), 2):
        if len(left & right) > MOST_SHARED_WORDS * len(left | right):
            alike.append((one, other))
        telling = (left - _SMALL, right - _SMALL)
        least = min(map(len, telling))
        if least > 2 and len(telling[0] & telling[1]) > MOST_SHARED_WORDS * least:
            alike.append((one, other))
    assert alike == []


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


@pytest.mark.parametrize("name", PROCEDURES)
def test_sentences_of_steps_are_short(name: str) -> None:
    long = []
    for _, step in each_step(name):
        most = MOST_WORDS_OF_A_SAFETY_STEP if step.safety else MOST_WORDS
        long += [each for each in sentences(step.do) if len(words(each)) > most]
        say = step.danger.say if step.danger else None
        hold = step.hold.if_interrupted if step.hold else None
        others = [each for text in (step.why, say, hold, step.wall) for each in sentences(text)]
        long += [each for each in others if len(words(each)) > MOST_WORDS]
    assert long == []


@pytest.mark.parametrize("name", PROCEDURES)
def test_steps_are_plain_to_read(name: str) -> None:
    steps = [step for _, step in each_step(name)]
    whole = [text for step in steps for text in (step.do, step.why) if text]
    safety = [step.do for step in steps if step.safety]
    assert grade(whole) <= HIGHEST_GRADE
    assert grade(safety) <= HIGHEST_GRADE_OF_SAFETY_STEPS


@pytest.mark.parametrize("kind", PROSE)
def test_prose_is_short_and_plain(kind: str) -> None:
    texts = [text for text in PROSE[kind](content()) if text]
    assert texts
    assert not [each for text in texts for each in sentences(text) if len(words(each)) > MOST_WORDS]
    assert grade(texts) <= HIGHEST_GRADE
