"""What is covered, which rules hold, what is waived, what is due; and what no page may say."""

import re
from dataclasses import replace
from datetime import date, timedelta
from functools import cache
from pathlib import Path

import pytest

from basinside import files
from basinside.check.registry import RULES
from basinside.check.rule_cards import rule_cards
from basinside.constants import LOOK_UP_AGAIN_DAYS
from basinside.derive.everything import derive
from basinside.load.content import load
from basinside.pipeline.build import Clinic, handbook_files, open_theme
from basinside.render.views import coverage
from basinside.render.views.rules import GROUPS
from basinside.render.views.spot import day_words
from tests.built import CHECKOUT
from tests.render.pages_of_demo import content, demo, pages, part_of, words

WAIVER = """\
waive:
  - rule: {rule}
    because: The sheets are ordered.
    by: lead
    second: head
    on: 2026-09-01
    until: 2026-10-01
"""
MOST_BYTES = 150_000


def made(root: Path, edits: dict[str, tuple[str, str]] | None = None) -> dict[str, str]:
    """Return the pages of a clinic, some of its files edited, whatever a rule says to that."""
    raw = dict(files.read_authored(root))
    for name, (old, new) in (edits or {}).items():
        text = raw[name].decode()
        assert text.count(old) == 1, (name, old)
        raw[name] = text.replace(old, new).encode()
    read, problems = load(raw)
    assert problems == []
    clinic = Clinic(root=root, raw=raw, content=read, derived=derive(read), problems=())
    return {path: make() for path, make in handbook_files(clinic, open_theme())}


@cache
def waived() -> dict[str, str]:
    """Return the demonstration with a waiver at a procedure, a step, a part and two questions."""
    step = WAIVER.format(rule="sharps-out-first").replace("\n", "\n        ").strip()
    deep = WAIVER.format(rule="use-limit-counted").replace("\n", "\n    ").strip()
    asked = deep.replace("use-limit-counted", "colour-alone")
    return made(
        CHECKOUT,
        {
            "content/procedures/speculum-boil.yaml": (
                "procedure: speculum-boil\n",
                f"procedure: speculum-boil\n{WAIVER.format(rule='dry-before-store')}",
            ),
            "content/procedures/steam-load.yaml": (
                "      - step: check-valve\n",
                f"      - step: check-valve\n        {step}\n",
            ),
            "content/instruments/speculum.yaml": (
                "  - part: thumb-screw\n",
                f"  - part: thumb-screw\n    {deep}\n",
            ),
            "quizzes/questions/assessment-cleaning.yaml": (
                f"  - item: {sealed_item()}\n",
                f"  - item: {sealed_item()}\n    {asked}\n",
            ),
        },
    )


def sealed_item() -> str:
    asked = content().items("assessment")
    return next(
        each.item.item for each in asked if each.topic == "cleaning" and each.scenario is None
    )


def test_the_map_counts_what_the_content_holds() -> None:
    page = pages()["coverage.html"]
    asked = content().asked_about("practice")
    summary = part_of(page, '<div class="coverage summary">', "</div>")
    for name, whole in demo().derived.procedures.items():
        row = part_of(summary, f'<a href="#{name}">', "</tr>")
        safety = [each for each in whole.steps if each.step.safety]
        cells = re.findall(r"</i>(.*?)</td>", row)
        assert cells[0] == str(len(whole.steps)), name
        assert cells[1] == cells[3] == str(len(safety)), name
        here = sum(f"{name}/{each.step.step}" in asked for each in safety)
        told = part_of(page, f'id="{name}"', "</section>")
        assert cells[2].split(",")[0] == str(here), name
        gaps = told.count("<b>Not asked</b>")
        assert words(cells[4]).strip() == (f"{gaps} not asked" if gaps else "None"), name
        assert here + gaps + told.count("<td>Elsewhere:") == len(safety), name
        for each in safety:
            assert f'href="procedures/{name}.html#{each.step.step}"' in told
        assert f'href="print/observation-{name}.html"' in told


def test_a_step_of_the_map_leads_to_the_self_test_that_asks_about_it() -> None:
    page = pages()["coverage.html"]
    asked = content().asked_about("practice")
    seen = 0
    for name, whole in demo().derived.procedures.items():
        told = part_of(page, f'id="{name}"', "</section>")
        for placed in whole.steps:
            row = f'href="procedures/{name}.html#{placed.step.step}"'
            items = asked.get(f"{name}/{placed.step.step}", ())
            for topic in {each.topic for each in items}:
                seen += 1
                assert f'href="self-tests/{topic}.html#' in part_of(told, row, "</tr>")
    assert seen > 100


def test_a_safety_step_that_loses_its_question_becomes_a_gap() -> None:
    before = pages()["coverage.html"].count("<b>Not asked</b>")
    read = content()
    whole = demo().derived.procedures["steam-load"]
    asked = read.asked_about("practice")
    lost = next(
        each for each in whole.steps if each.step.safety and f"steam-load/{each.step.step}" in asked
    )
    path = f"steam-load/{lost.step.step}"
    questions = tuple(
        each.model_copy(update={"items": tuple(i for i in each.items if path not in str(i))})
        for each in read.questions
    )
    less = replace(read, questions=questions)
    clinic = replace(demo(), content=less, derived=derive(less))
    made_anew = dict(handbook_files(clinic, open_theme()))
    page = made_anew["coverage.html"]()
    assert page.count("<b>Not asked</b>") > before


def test_many_procedures_have_a_page_each(monkeypatch: pytest.MonkeyPatch) -> None:
    together = pages()["coverage.html"]
    monkeypatch.setattr(coverage, "MOST_TOGETHER", 3)
    apart = {path: make() for path, make in handbook_files(demo(), open_theme())}
    for name in content().procedures:
        assert f'href="coverage/{name}.html"' in apart["coverage.html"]
        page = apart[f"coverage/{name}.html"]
        told = part_of(page, f'id="{name}"', "</section>")
        one = part_of(together, f'id="{name}"', "</section>")
        assert words(told).split() == words(one).split()
        assert f'href="../procedures/{name}.html#' in told
    assert 'class="covered"' not in apart["coverage.html"]


def test_the_new_pages_are_small() -> None:
    for path in ("coverage.html", "due.html", "waivers.html", "rules/index.html"):
        assert len(pages()[path].encode()) <= MOST_BYTES, path


def test_each_rule_stands_on_its_page_with_its_reason_and_its_source() -> None:
    index = pages()["rules/index.html"]
    for each in rule_cards():
        page = pages()[f"rules/{each.group}.html"]
        told = words(part_of(page, f'id="{each.rule}"', "</article>"))
        for text in (each.says, each.more, each.why, each.bad, each.good, each.source):
            flat = " ".join(re.findall(r"\w+", text))
            assert flat.lower() in " ".join(re.findall(r"\w+", told)).lower(), each.rule
        assert f'href="{each.group}.html#{each.rule}"' in index.replace("../rules/", "")
    assert {each.id for each in RULES} <= {each.rule for each in rule_cards()}
    assert {each.group for each in rule_cards()} == set(GROUPS)


def test_every_waiver_is_listed_with_who_and_until_and_leads_to_its_place_and_its_rule() -> None:
    page = waived()["waivers.html"]
    for href, rule in (
        ("procedures/speculum-boil.html", "order.html#dry-before-store"),
        ("procedures/steam-load.html#check-valve", "order.html#sharps-out-first"),
        ("instruments/speculum.html#thumb-screw", "instruments.html#use-limit-counted"),
    ):
        told = part_of(page, f'<h2><a href="{href}"', "</dl>")
        assert f'href="rules/{rule}"' in told
        assert "lead · head" in words(told)
        assert "1 September 2026" in words(told)
        assert "1 October 2026" in words(told)
        assert 'data-after="2026-10-01" hidden>Ended</b>' in told
    assert page.count('class="waiver"') == 3
    said = "One more waiver stands at a question of an assessment, which stays sealed."
    assert said in words(page)
    assert sealed_item() not in page
    assert "Nothing is waived" not in words(page)
    assert "4 rules rest for a while." in words(waived()["reference.html"])


def test_a_waiver_in_place_leads_to_its_rule_and_says_when_it_has_ended() -> None:
    page = waived()["procedures/speculum-boil.html"]
    told = part_of(page, '<div class="waiver">', "</dl>")
    assert 'href="../rules/order.html#dry-before-store"' in told
    assert 'data-after="2026-10-01" hidden>Ended</b>' in told


def test_a_waivers_end_is_due() -> None:
    day = part_of(waived()["due.html"], 'datetime="2026-10-01"', "</ul>")
    assert "Waiver ends: Speculum, stainless steel: boiling" in words(day)
    assert day.count('data-after="2026-10-01" hidden>Overdue</b>') == 3


def test_every_day_of_the_handbook_is_due_in_order() -> None:
    page = pages()["due.html"]
    shown = re.findall(r'<li><time datetime="([^"]+)">([^<]+)</time>', page)
    assert [each for each, _ in shown] == sorted(each for each, _ in shown)
    assert all(day_words(date.fromisoformat(each)) == said for each, said in shown)
    assert part_of(page, f'datetime="{content().handbook.review_by}"', "</ul>")  # type: ignore[union-attr]
    for name, choice in content().choices.items():
        assert choice.look_again
        day = part_of(page, f'datetime="{choice.look_again}"', "</ul></li>")
        assert f'href="choices.html#{name}"' in day
    for name, figure in content().figures.items():
        if figure.checked:
            due = figure.checked + timedelta(days=LOOK_UP_AGAIN_DAYS)
            day = part_of(page, f'datetime="{due}"', "</ul></li>")
            assert f'href="values.html#{name}"' in day
    days = {each for each, _ in shown}
    assert {*re.findall(r'data-after="([^"]+)"', page)} == days


def test_a_new_clinic_has_nothing_waived_and_says_so() -> None:
    starter = CHECKOUT / "generator/basinside/starter"
    new = made(starter)
    assert "Nothing is waived. No rule rests anywhere" in words(new["waivers.html"])
    assert "This handbook is reviewed" in words(new["due.html"])
    assert "Not asked" in words(new["coverage.html"])
    assert "Rules in force" in words(new["reference.html"])


def test_what_has_no_source_stands_in_one_list_that_the_reference_leads_to() -> None:
    told = part_of(pages()["sources.html"], 'id="unsourced"', "<h2")
    for name, figure in content().figures.items():
        bare = figure.basis in {"common practice", "from memory"}
        assert (f'href="values.html#{name}"' in told) == bare, name
    assert 'href="sources.html#unsourced"' in pages()["reference.html"]


def test_the_reference_leads_to_how_it_stands_and_search_finds_it() -> None:
    index = dict(handbook_files(demo(), open_theme()))["assets/search-index.js"]()
    for path in ("due.html", "coverage.html", "waivers.html", "rules/index.html"):
        assert f'href="{path}"' in pages()["reference.html"], path
        assert f'["{path}",' in index, path
    assert '"overdue"' in index


def test_no_page_names_or_tells_a_question_of_an_assessment() -> None:
    shown = {path: words(page) for path, page in pages().items()}
    index = dict(handbook_files(demo(), open_theme()))["assets/search-index.js"]()
    open_ids = {each.item.item for each in content().items("practice")}
    stems = {each.item.stem.split("{{")[0].strip() for each in content().items("practice")}
    sealed = content().items("assessment")
    assert len(sealed) > 50
    for each in sealed:
        name, stem = each.item.item, each.item.stem.split("{{")[0].strip()
        assert name not in open_ids
        named = re.compile(rf"(?<![\w-]){re.escape(name)}(?![\w-])")
        for path, page in pages().items():
            assert not re.search(rf'["#]{re.escape(name)}"', page), (name, path)
            if "-" in name:
                assert not named.search(page) or is_a_step(name), (name, path)
        if stem not in stems and len(stem) > 20:
            assert not [path for path, text in shown.items() if stem in text], name
            assert stem not in index, name


def is_a_step(name: str) -> bool:
    """Whether an id is also that of a step or an entry, which pages may name."""
    steps = {s.step for each in content().procedures.values() for _stage, s in each.steps}
    return name in steps
