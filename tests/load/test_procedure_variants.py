"""A procedure written as a difference is its sibling with what differs, step by step."""

from typing import Any

import pytest

from basinside.load.marked_yaml import read_yaml
from basinside.load.procedure_variants import merge_procedures
from basinside.model.procedure import Procedure
from basinside.problem import Problem

SIBLING = """\
procedure: forceps-steam
title: Forceps by steam
instrument: forceps
route: steam
vessel: tall
parts: [jaw]
waive: [{rule: some-rule, because: B, by: A, second: C, on: 2026-01-01, until: 2027-01-01}]
stages:
  - stage: preparation
    steps:
      - step: open
        action: take apart
        do: Open the hinge.
        safety: yes
        danger: {kind: sharp, say: It is sharp.}
        waive: [{rule: other, because: B, by: A, second: C, on: 2026-01-01, until: 2027-01-01}]
      - step: count
        action: count
        do: Count them.
  - stage: disinfection
    not_applicable: Steam does it.
  - stage: sterilization
    steps:
      - step: steam
        action: expose
        do: Start the time.
        hold: {figure: steam.hold, from: both are reached}
  - stage: drying
    steps:
      - step: dry
        action: dry
        do: Let it dry.
"""
OWN = "procedure: scissors-steam\nvariant_of: forceps-steam\ninstrument: scissors\n"


def made(differences: str, sibling: str = SIBLING) -> tuple[Procedure | None, list[Problem]]:
    written: dict[str, dict[str, Any]] = {}
    for name, text in (("sibling", sibling), ("own", OWN + differences)):
        data, problems = read_yaml(text.encode(), f"{name}.yaml")
        assert problems == ()
        written[f"{name}.yaml"] = data
    whole, found = merge_procedures(written, "own.yaml")
    assert "sibling.yaml" not in whole
    return whole.get("own.yaml"), found


def steps(differences: str) -> list[tuple[str, str]]:
    procedure, problems = made(differences)
    assert problems == []
    assert procedure is not None
    return [(stage.stage, step.step) for stage, step in procedure.steps]


def said(differences: str) -> list[tuple[tuple[str | int, ...], str]]:
    return [(each.place.path, each.message) for each in made(differences)[1]]


def test_without_changes_it_is_the_sibling_but_for_what_is_its_own() -> None:
    procedure, problems = made("")
    assert problems == []
    assert procedure is not None
    assert (procedure.procedure, procedure.instrument) == ("scissors-steam", "scissors")
    assert (procedure.route, procedure.vessel) == ("steam", "tall")
    assert (procedure.title, procedure.parts, procedure.waive) == (None, (), ())
    assert [step.step for _, step in procedure.steps] == ["open", "count", "steam", "dry"]
    assert procedure.steps[0][1].waive == ()


def test_a_change_writes_only_the_keys_that_differ() -> None:
    procedure, problems = made("""\
changes:
  - step: open
    do: Open the scissors.
    drop: [danger]
  - step: steam
    hold: {figure: steam.longer}
""")
    assert problems == []
    assert procedure is not None
    opened, _, steamed, _ = [step for _, step in procedure.steps]
    assert (opened.do, opened.safety, opened.danger) == ("Open the scissors.", True, None)
    assert steamed.hold is not None
    assert (steamed.hold.figure, steamed.hold.from_) == ("steam.longer", "both are reached")
    assert (opened.place.file, opened.place.path) == ("own.yaml", ("changes", 0))
    assert procedure.steps[1][1].place.file == "sibling.yaml"


def test_a_new_step_stands_in_the_stage_of_the_step_it_follows() -> None:
    new = "action: lubricate\n    do: Oil it.\n"
    assert steps(f"""\
changes:
  - step: oil
    after: open
    {new}  - step: wipe
    after: oil
    {new}""") == [
        ("preparation", "open"),
        ("preparation", "oil"),
        ("preparation", "wipe"),
        ("preparation", "count"),
        ("sterilization", "steam"),
        ("drying", "dry"),
    ]


def test_a_known_step_moves_and_keeps_its_words() -> None:
    assert steps("changes: [{step: count, after: dry}]") == [
        ("preparation", "open"),
        ("sterilization", "steam"),
        ("drying", "dry"),
        ("drying", "count"),
    ]


def test_steps_are_left_out_and_an_empty_stage_goes_with_them() -> None:
    procedure, problems = made("without: [dry, count]\n")
    assert problems == []
    assert procedure is not None
    assert [stage.stage for stage in procedure.stages] == [
        "preparation",
        "disinfection",
        "sterilization",
    ]


def test_a_stage_is_not_done_or_gets_its_first_step() -> None:
    procedure, problems = made("""\
not_applicable: {drying: It is used wet.}
changes:
  - step: soak
    in_stage: disinfection
    action: soak
    do: Soak it.
""")
    assert problems == []
    assert procedure is not None
    _, disinfection, _, drying = procedure.stages
    assert (disinfection.not_applicable, [step.step for step in disinfection.steps]) == (
        None,
        ["soak"],
    )
    assert (drying.not_applicable, drying.steps) == ("It is used wet.", ())


def test_the_sibling_stays_as_it_was() -> None:
    written = {}
    for name, text in (("a", SIBLING), ("b", OWN + "without: [dry]\nchanges: [{step: open}]\n")):
        written[name], _ = read_yaml(text.encode(), name)
    before, _ = read_yaml(SIBLING.encode(), "a")
    merge_procedures(written, "b")
    assert written["a"] == before


@pytest.mark.parametrize(
    ("differences", "path", "message"),
    [
        ("without: [dri]\n", ("without", 0), "there is no step “dri” to leave out"),
        ("changes: [{step: oil, after: opened}]\n", ("changes", 0, "after"),
         "there is no step “opened” to come after"),
        ("changes: [{step: oil}]\n", ("changes", 0),
         "a new step says which step it comes “after”, or which stage it begins"),
        ("changes: [{step: oil, in_stage: storage}]\n", ("changes", 0, "in_stage"),
         "the sibling has no stage “storage”"),
        ("changes: [{step: open, drop: [hold]}]\n", ("changes", 0, "drop", 0),
         "the sibling's step has no “hold” to drop"),
        ("changes: [{do: Open it.}]\n", ("changes", 0),
         "a change begins with “step:” and the id of a step"),
        ("not_applicable: {dryin: No.}\n", ("not_applicable", "dryin"),
         "there is no stage “dryin”"),
        ("stages: []\n", ("stages",),
         "a variant writes its steps under “changes”, not under “stages”"),
        ("without: dry\n", ("without",), "without must be a list of step ids in brackets"),
        ("changes: {step: open}\n", ("changes",),
         "changes must be a list of steps: entries with “- ”"),
        ("not_applicable: drying\n", ("not_applicable",),
         "not_applicable must be stages with a reason each"),
    ],
)  # fmt: skip
def test_what_fits_nowhere_is_a_line(
    differences: str, path: tuple[str | int, ...], message: str
) -> None:
    assert (path, message) in said(differences)


def test_a_step_that_could_not_move_stays() -> None:
    procedure, problems = made("changes: [{step: count, after: nowhere}]\n")
    assert len(problems) == 1
    assert procedure is not None
    assert [step.step for _, step in procedure.steps] == ["open", "count", "steam", "dry"]


def test_a_misspelt_step_is_offered_its_likeness() -> None:
    (problem,) = made("changes: [{step: coumt, do: Count.}]\n")[1]
    assert problem.hint == "Or did you mean the step “count”?"
