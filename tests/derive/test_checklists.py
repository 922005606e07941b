"""Every safety step is watched, then what only an author can add; each line has its digest."""

import pytest

from basinside.derive.checklists import checklist_for, line_digests
from basinside.derive.meanings import line_digest, step_digest, step_meaning
from basinside.derive.steps import place_steps
from basinside.model.content import Content
from basinside.model.derived import WholeProcedure
from tests.derive.clinic import demo, loaded
from tests.plain.clinic import base_files

OBSERVED = b"""observation: bulb-soak
lines:
  - line: talks
    see: Says aloud when the time began, {{ bath.hold }} ago at least.
cues: [Ask nothing while it is timed.]
who_may_observe: Whoever holds a record for it.
"""


def observed() -> tuple[Content, WholeProcedure]:
    content = loaded({**base_files(), "quizzes/observations/bulb-soak.yaml": OBSERVED})
    return content, place_steps(content, content.procedures["bulb-soak"])


def test_safety_steps_in_their_order_then_the_written_lines() -> None:
    checklist = checklist_for(*observed())
    assert [each.line for each in checklist.lines] == ["apart", "start-timing", "talks"]
    assert [each.placed is None for each in checklist.lines] == [False, False, True]
    assert checklist.cues == ("Ask nothing while it is timed.",)
    assert checklist.who_may_observe == "Whoever holds a record for it."


def test_without_a_file_the_safety_steps_stand_alone() -> None:
    content = loaded(base_files())
    checklist = checklist_for(content, place_steps(content, content.procedures["bulb-soak"]))
    assert [each.line for each in checklist.lines] == ["apart", "start-timing"]
    assert (checklist.cues, checklist.who_may_observe) == ((), "")


def test_a_verdict_is_bound_to_what_the_line_meant() -> None:
    content, whole = observed()
    digests = line_digests(content, whole)
    timing = next(each for each in whole.steps if each.step.step == "start-timing")
    assert digests["start-timing"] == step_digest(step_meaning(content, whole, timing))
    said = "Says aloud when the time began, 1200 s ago at least."
    assert digests["talks"] == line_digest("talks", said)
    assert list(digests) == ["apart", "start-timing", "talks"]


@pytest.mark.parametrize("procedure", demo().procedures)
def test_the_demonstrations_lists_hold_each_safety_step_once(procedure: str) -> None:
    content = demo()
    whole = place_steps(content, content.procedures[procedure])
    lines = [each.line for each in checklist_for(content, whole).lines]
    safety = [each.step.step for each in whole.steps if each.step.safety]
    assert lines[: len(safety)] == safety
    assert len(lines) == len(set(lines)) > len(safety)
