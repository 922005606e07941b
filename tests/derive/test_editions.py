"""What changed between two editions, and who has something to learn again."""

import json
from collections.abc import Mapping
from typing import Any

import pytest

from basinside.derive.editions import compare, differs, edition_key, scopes_to_refresh
from basinside.derive.editions import edition_document as document
from basinside.model.derived import Change
from basinside.model.edition import ClosedEdition
from tests.derive.clinic import changed, demo, loaded
from tests.plain.clinic import base_files

PROCEDURE = "content/procedures/bulb-soak.yaml"
LOOK = "      - step: look\n        action: inspect\n        do: Look at each part.\n"
DRY = "      - step: dry-first\n        action: dry\n        do: Shake and wipe each part dry.\n"
WORDING = """        wording_only:
          {since: 2026.1, by: infection-prevention lead, second: midwife, on: 2026-05-01}
"""


def before() -> dict[str, Any]:
    return document(loaded(base_files()))


def rewritten(old: str, new: str) -> dict[str, Any]:
    return document(changed(old, new))


def told(new: Mapping[str, Any]) -> list[tuple[object, ...]]:
    return [
        (each.kind, each.id, each.member, each.old, each.new) for each in compare(before(), new)
    ]


def test_the_same_edition_has_no_change_and_is_a_closed_edition() -> None:
    assert compare(before(), before()) == ()
    assert not differs(before(), before())
    for whole in (before(), document(demo())):
        ClosedEdition.model_validate(json.loads(json.dumps(whole)))


def test_a_changed_value_is_told_with_every_step_it_reaches() -> None:
    new = rewritten("value: 20 min\n    source_says", "value: 25 min\n    source_says")
    hold = {"from": "the last part is under", "if_interrupted": "Start the time again.",
            "no_longer_than": "1800 s"}  # fmt: skip
    assert told(new) == [
        ("value-changed", "bath.hold", "", "20\u00a0min", "25\u00a0min"),
        ("step-changed", "bulb-soak/start-timing", "hold",
         {**hold, "value": "1200 s"}, {**hold, "value": "1500 s"}),
    ]  # fmt: skip
    assert differs(before(), new)


def test_a_value_written_otherwise_is_no_change() -> None:
    new = rewritten("value: 20 min\n    source_says", "value: 1200 s\n    source_says")
    assert compare(before(), new) == ()


def test_a_new_value_and_one_that_is_gone() -> None:
    more = "choices:\n  bath.presoak"
    new = rewritten(more, f"  bath.new: {{is: x, value: 3 uses, basis: from memory}}\n{more}")
    assert told(new) == [("value-new", "bath.new", "", None, "3\u00a0uses")]
    assert [each.kind for each in compare(new, before())] == ["value-gone"]


def test_a_choice() -> None:
    new = rewritten("chosen: not done", "chosen: done")
    assert told(new) == [("choice-changed", "bath.presoak", "", "not done", "done")]


def test_steps_moved_keep_their_meaning() -> None:
    new = rewritten(LOOK + DRY, DRY + LOOK)
    (moved,) = compare(before(), new)
    assert (moved.kind, moved.id) == ("steps-moved", "bulb-soak")
    at = moved.old.index("look")
    assert moved.old[at : at + 2] == ["look", "dry-first"]
    assert moved.new[at : at + 2] == ["dry-first", "look"]


def test_a_step_in_another_stage_moved() -> None:
    new = rewritten("  - stage: inspection and maintenance", "  - stage: storage")
    assert "steps-moved" in [each.kind for each in compare(before(), new)]


def test_a_new_step_and_one_that_is_gone() -> None:
    new = rewritten(LOOK, LOOK + LOOK.replace("step: look", "step: look-again"))
    assert told(new) == [("step-new", "bulb-soak/look-again", "", None, None)]
    back = compare(new, before())
    assert [(each.kind, each.id) for each in back] == [("step-gone", "bulb-soak/look-again")]


def test_a_reworded_step_counts_unless_somebody_says_by_name_that_it_does_not() -> None:
    reworded = LOOK.replace("Look at each part.", "Look closely at each part.")
    assert [each[0] for each in told(rewritten(LOOK, reworded))] == ["step-changed"]
    signed = rewritten(LOOK, reworded + WORDING)
    assert told(signed) == [
        (
            "step-reworded",
            "bulb-soak/look",
            "do",
            "Look at each part.",
            "Look closely at each part.",
        )
    ]
    later = WORDING.replace("2026.1", "2026.2")
    assert [each[0] for each in told(rewritten(LOOK, reworded + later))] == ["step-changed"]


def test_wording_only_never_covers_more_than_words() -> None:
    more = LOOK.replace("Look at each part.", "Look closely.") + "        safety: yes\n" + WORDING
    assert {each[0] for each in told(rewritten(LOOK, more))} == {"step-changed"}


def test_safety_is_told_with_the_change() -> None:
    (hold,) = [
        each
        for each in compare(
            before(), rewritten("from: the last part is under", "from: it is under")
        )
        if each.member == "hold"
    ]
    assert hold.safety
    assert not any(each.safety for each in compare(before(), rewritten("do: Look at", "do: See")))


def test_a_procedure_new_and_gone() -> None:
    files = dict(base_files())
    files["content/procedures/bulb-rinse.yaml"] = files[PROCEDURE].replace(
        b"procedure: bulb-soak", b"procedure: bulb-rinse"
    )
    new = document(loaded(files))
    assert told(new) == [("procedure-new", "bulb-rinse", "", None, None)]
    gone = compare(new, before())
    assert [(each.kind, each.id) for each in gone] == [("procedure-gone", "bulb-rinse")]


def refreshed(new: Mapping[str, Any]) -> dict[str, tuple[str, ...]]:
    old = before()
    old["scopes"] = {"all-baths": {"procedures": ["bulb-soak"], "digest": "x"}}
    return scopes_to_refresh(old, new, compare(old, new))


def test_who_has_something_to_learn_again() -> None:
    steps = ("bulb-soak/start-timing",)
    changed_value = rewritten("value: 20 min\n    source_says", "value: 25 min\n    source_says")
    assert refreshed(changed_value) == {"all-baths": steps, "bulb-soak": steps}
    moved = rewritten(LOOK + DRY, DRY + LOOK)
    assert refreshed(moved) == {"all-baths": ("bulb-soak",), "bulb-soak": ("bulb-soak",)}


def test_nothing_to_learn_when_only_words_or_reasons_changed() -> None:
    reworded = LOOK.replace("Look at each part.", "Look closely at each part.") + WORDING
    assert refreshed(rewritten(LOOK, reworded)) == {}
    because = "because: Soil uses up chlorine.\n    source"
    assert refreshed(rewritten(because, because.replace("Soil", "Dirt"))) == {}
    assert refreshed(rewritten("chosen: not done", "chosen: done")) == {}


def test_a_procedure_that_joins_a_group_is_to_be_learnt() -> None:
    old = before()
    old["scopes"] = {"all-baths": {"procedures": ["bulb-soak"], "digest": "x"}}
    new = json.loads(json.dumps(before()))
    new["procedures"]["bulb-rinse"] = new["procedures"]["bulb-soak"]
    new["scopes"] = {"all-baths": {"procedures": ["bulb-soak", "bulb-rinse"], "digest": "y"}}
    assert scopes_to_refresh(old, new, compare(old, new)) == {"all-baths": ("bulb-rinse",)}


def test_a_procedure_that_leaves_is_no_lesson() -> None:
    new = before()
    gone = {**new, "procedures": {}}
    assert compare(new, gone) == (Change(kind="procedure-gone", id="bulb-soak"),)
    assert scopes_to_refresh(new, gone, compare(new, gone)) == {}


@pytest.mark.parametrize(
    ("earlier", "later"),
    [("2026.1", "2026.2"), ("2026.9", "2026.10"), ("2026.10", "2027.1"), ("", "2026.1")],
)
def test_editions_are_ordered_by_number(earlier: str, later: str) -> None:
    assert edition_key(earlier) < edition_key(later)
