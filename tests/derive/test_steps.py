"""Soiled until the last rinse of cleaning, clean until the hold ends, then processed."""

import pytest

from basinside.derive.steps import place_steps
from basinside.model.content import Content
from basinside.model.procedure import Procedure
from tests.derive.clinic import demo, loaded
from tests.plain.clinic import base_files

STATES = {"s": "soiled", "c": "clean", "p": "processed"}


def procedure(written: str) -> Procedure:
    """Return a procedure of ``stage: action action; stage: action`` with steps numbered from 1."""
    at = ("x", ())
    stages, number = [], 0
    for stage in written.split(";"):
        name, _, actions = stage.partition(":")
        steps = []
        for action in actions.split(","):
            number += 1
            steps.append({"@": at, "step": f"n{number}", "action": action.strip(), "do": "x"})
        stages.append({"@": at, "stage": name.strip(), "steps": tuple(steps)})
    return Procedure.model_validate(
        {"@": at, "procedure": "p", "instrument": "i", "route": "r", "stages": tuple(stages)}
    )


@pytest.mark.parametrize(
    ("written", "after"),
    [
        ("cleaning: soak, clean, rinse; disinfection: expose, rinse; storage: store", "sscppp"),
        ("cleaning: clean, rinse, clean, rinse, dry; disinfection: expose", "sssccp"),
        ("cleaning: rinse, clean; disinfection: expose", "sss"),
        ("cleaning: clean, rinse; disinfection: mix, rinse, expose; drying: dry", "scccpp"),
        ("cleaning: clean, rinse; sterilization: load, expose, unload", "sccpp"),
        ("cleaning: clean, rinse; preparation: expose; storage: store", "sccc"),
        ("disinfection: expose; cleaning: clean, rinse", "sss"),
        ("cleaning: clean, rinse; disinfection: expose, rinse; cleaning: clean, rinse", "scpppp"),
    ],
)
def test_states_follow_actions_and_stages(written: str, after: str) -> None:
    whole = place_steps(Content(), procedure(written))
    assert "".join(each.after[0] for each in whole.steps) == after
    befores = [each.before for each in whole.steps]
    assert befores == ["soiled", *(each.after for each in whole.steps[:-1])]


def test_a_gap_stays_a_gap() -> None:
    whole = place_steps(Content(), procedure("cleaning: clean"))
    assert (whole.instrument, whole.route, whole.level, whole.parts) == (None, None, None, ())


def test_steps_are_numbered_through_all_stages() -> None:
    for each in demo().procedures.values():
        whole = place_steps(demo(), each)
        assert [step.number for step in whole.steps] == list(range(1, len(each.steps) + 1))
        if each.route is None:
            # It brings nothing to a level: what it is about is ready for use from the first step.
            assert {step.before for step in whole.steps} == {"processed"}
            continue
        assert [step.after for step in whole.steps if step.is_level_step] == ["processed"]
        assert whole.steps[0].before == "soiled"
        assert whole.steps[-1].after == "processed"


def test_what_is_worn_is_what_the_step_says_then_what_its_chemical_adds() -> None:
    content = loaded(base_files())
    raw = dict(base_files())
    raw["content/agents/chlorine.yaml"] = (
        b"agent: chlorine\nname: Chlorine\nfamily: chlorine\nwear: [apron, heavy gloves]\n"
    )
    raw["content/procedures/bulb-soak.yaml"] = raw["content/procedures/bulb-soak.yaml"].replace(
        b"        do: Mix the bath.\n",
        b"        do: Mix the bath.\n        wear: [mask, apron]\n",
    )
    mixed = place_steps(loaded(raw), loaded(raw).procedures["bulb-soak"])
    (mix,) = [each for each in mixed.steps if each.step.step == "mix"]
    assert mix.wear == ("mask", "apron", "heavy gloves")
    assert mix.agent is not None
    plain = place_steps(content, content.procedures["bulb-soak"])
    assert all(each.agent is None for each in plain.steps if each.step.agent is None)


def test_a_procedure_for_some_parts_has_those_parts() -> None:
    raw = dict(base_files())
    name = "content/procedures/bulb-soak.yaml"
    raw[name] = raw[name].replace(b"stages:", b"parts: [tip]\nstages:", 1)
    content = loaded(raw)
    whole = place_steps(content, content.procedures["bulb-soak"])
    assert [part.part for part in whole.parts] == ["tip"]
    assert whole.level == "high-level disinfection"
