"""Procedures without a route: tests before use, and the work that several procedures share."""

import json

import pytest

from basinside.derive.everything import derive
from basinside.derive.forms import form_documents
from basinside.load.content import load
from basinside.pipeline.build import Clinic, handbook_files, open_theme
from tests.built import CHECKOUT
from tests.render.pages_of_demo import content, demo, pages, part_of, words

SHARED = [name for name, each in demo().content.procedures.items() if each.instrument is None]
TESTS = [
    name
    for name, each in demo().content.procedures.items()
    if each.instrument is not None and each.route is None
]


def test_there_are_tasks_and_tests_to_look_at() -> None:
    assert len(SHARED) >= 3
    assert len(TESTS) >= 2


@pytest.mark.parametrize("name", [*SHARED, *TESTS])
def test_without_a_route_nothing_is_said_of_levels(name: str) -> None:
    head = words(part_of(pages()[f"procedures/{name}.html"], '<dl class="headline">', "</dl>"))
    assert "Needs at least" not in head
    assert "Use limit" not in head
    assert head.startswith(" About ")
    row = words(
        part_of(pages()["procedures/index.html"], f'href="{"../"}procedures/{name}', "</dl>")
    )
    assert "Reaches" not in row


@pytest.mark.parametrize("name", SHARED)
def test_a_shared_task_stands_in_its_own_group_and_on_the_first_page(name: str) -> None:
    index = pages()["procedures/index.html"]
    group = part_of(index, '<h2 id="shared">Work around the basin</h2>', "</ul>")
    assert f"procedures/{name}.html" in group
    start = pages()["index.html"]
    assert f'href="procedures/{name}.html"' in start[start.index("Work around the basin") :]


@pytest.mark.parametrize("name", TESTS)
def test_a_test_stands_with_its_instrument(name: str) -> None:
    instrument = content().procedures[name].instrument
    page = pages()[f"instruments/{instrument}.html"]
    assert f"procedures/{name}.html" in part_of(page, ">Procedures</h2>", "</ul>")


def test_the_flow_line_has_the_stages_that_exist_and_no_other() -> None:
    for name in [*SHARED, *TESTS]:
        page = pages()[f"procedures/{name}.html"]
        staged = [each for each in content().procedures[name].stages if each.steps]
        if len(staged) < 2:
            assert '<nav class="flow"' not in page
            continue
        flow = part_of(page, '<nav class="flow"', "</nav>")
        assert flow.count("<li ") == len(staged), name
        assert "point of use to storage" not in flow


def test_a_step_that_leads_elsewhere_says_where_in_words() -> None:
    led = [
        (name, step)
        for name, procedure in content().procedures.items()
        for _stage, step in procedure.steps
        if step.see
    ]
    assert led
    for name, step in led:
        page = pages()[f"procedures/{name}.html"]
        told = page[page.index(f'id="{step.step}"') :].partition('<li class="step')[0]
        title = content().procedures[step.see or ""].title
        if title:
            assert f'<dt>How:</dt><dd><a href="../procedures/{step.see}.html">{title}</a>' in told


def test_a_picture_stands_at_its_step_and_says_what_to_do() -> None:
    drawn = [
        (name, step)
        for name, procedure in content().procedures.items()
        for _stage, step in procedure.steps
        if step.picture
    ]
    assert drawn
    for name, step in drawn:
        told = part_of(pages()[f"procedures/{name}.html"], f'id="{step.step}"', "</figure>")
        assert 'role="img" aria-label="' in told
        if "{{" not in step.do:
            assert " ".join(step.do.split()) in words(told.replace('"', "> <"))


def test_nothing_to_watch_means_no_sheet_to_watch_it_by() -> None:
    raw = dict(demo().raw)
    raw["content/procedures/sweep.yaml"] = (
        b"procedure: sweep\ntitle: Sweeping\nstages:\n  - stage: preparation\n    steps:\n"
        b"      - {step: sweep, action: clean, do: Sweep the floor.}\n"
    )
    changed, problems = load(raw)
    assert not problems
    clinic = Clinic(root=CHECKOUT, raw=raw, content=changed, derived=derive(changed), problems=())
    made = dict(handbook_files(clinic, open_theme()))
    assert "print/observation-sweep.html" not in made
    assert "observation-sweep" not in made["procedures/index.html"]()
    page = made["procedures/sweep.html"]()
    assert "observation-sweep" not in page
    assert '<nav class="flow"' not in page


def test_what_has_happened_stands_behind_the_answer_and_once_a_scenario() -> None:
    found = 0
    for topic in {each.topic for each in content().items("practice")}:
        page = pages()[f"self-tests/{topic}.html"]
        for asked in content().items("practice"):
            scenario, item = asked.scenario, asked.item
            if asked.topic != topic:
                continue
            told = part_of(page, f'<li class="question" id="{item.item}"', "</details>")
            last = scenario is not None and scenario.items[-1] is item
            built_on = item.built_on or (scenario.built_on if scenario and last else None)
            assert ('class="happened"' in told) == (built_on is not None), item.item
            if built_on:
                found += 1
                before, _, after = told.partition("<summary>")
                assert 'class="happened"' not in before
                assert 'class="happened"' in after
    assert found


def test_a_value_in_an_option_is_plain_text_and_so_tells_nothing() -> None:
    with_values = 0
    for asked in content().items("practice"):
        if not asked.item.options:
            continue
        page = pages()[f"self-tests/{asked.topic}.html"]
        told = part_of(page, f'<li class="question" id="{asked.item.item}"', "</details>")
        offered = part_of(told, '<ol class="options"', "</ol>")
        assert "<a " not in offered and "<data" not in offered, asked.item.item
        with_values += any("{{" in option.text for option in asked.item.options)
    assert with_values


def test_a_sealed_form_holds_nothing_of_what_has_happened() -> None:
    told = [
        each.built_on.says
        for asked in content().items("assessment")
        for each in (asked.item, asked.scenario)
        if each is not None and each.built_on
    ]
    assert told
    for name, assessment in content().assessments.items():
        both = json.dumps(form_documents(content(), assessment, "A", bytes(32)))
        assert "built_on" not in both, name
        assert [each for each in told if " ".join(each.split())[:40] in both] == []
