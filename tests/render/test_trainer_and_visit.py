"""The trainer's numbers are worked out, and a visitor finds what there is."""

import re

import pytest

from basinside.render.views.trainer_numbers import amount
from basinside.science.steam import f0_minutes, judge_cycle
from tests.render.pages_of_demo import content, pages, part_of, words


def section(page: str, anchor: str) -> str:
    return part_of(pages()[page], f'id="{anchor}"', "</section>")


def record(anchor: str) -> tuple[list[float], list[float]]:
    """Return the readings that the page shows of a load."""
    rows = re.findall(
        r'<th scope="row">([\d.]+)</th><td>([\d.]+)\u00a0°C</td>', section("trainer.html", anchor)
    )
    return [float(minute) for minute, _ in rows], [float(heat) for _, heat in rows]


@pytest.mark.parametrize(
    ("value", "shown"),
    [
        (29.319, "29.3"),
        (0.0254999, "0.0254"),
        (1.0, "1.00"),
        (0.9999, "0.999"),
        (128.8, "128"),
        (5927.9, "5,920"),
        (0.0, "0"),
    ],
)
def test_amounts_are_rounded_down(value: float, shown: str) -> None:
    assert amount(value) == shown


def test_staff_are_told_never_to_release_on_f0() -> None:
    page = words(pages()["trainer.html"])
    assert (
        "Staff release a load on time at temperature, on the indicator and on dryness."
        " Never on F0." in page
    )


@pytest.mark.parametrize(("anchor", "held"), [("held", True), ("dipped", False)])
def test_a_shown_load_is_judged_as_its_own_readings_say(anchor: str, held: bool) -> None:
    minutes, celsius = record(anchor)
    told = words(section("trainer.html", anchor))
    judged = judge_cycle(minutes, celsius, 121, 30)
    assert judged.held is held
    assert ("Verdict Held." in told) is held
    assert ("Verdict Failed." in told) is not held
    shown = float(re.findall(r"F0 ([\d.]+) min at 121.1 °C", told)[-1])
    assert shown == pytest.approx(f0_minutes(minutes, celsius), rel=0.005)  # shown in tenths of °C


def test_the_load_that_failed_has_the_larger_f0() -> None:
    """So that nobody takes F0 for a reason to release a load."""
    assert f0_minutes(*record("dipped")) > f0_minutes(*record("held"))


def test_boiling_here_is_worth_what_its_heat_and_time_say() -> None:
    told = words(section("trainer.html", "boiling"))
    # 20 min at 92.15 °C: 20 x 10^((92.15 - 121.1) / 10) = 0.0255; at 100 °C 0.1552.
    assert "is worth 0.0254 min" in told or "is worth 0.0255 min" in told
    assert "at 100 °C, it would be worth 0.155 min" in told


def test_the_vessel_that_is_too_cool_is_refused_with_its_number() -> None:
    told = words(section("trainer.html", "vessels"))
    small = told[told.index("Small stovetop vessel") :]
    # 103 kPa on the gauge at 2,350 m is 116.8 °C: 30 x 10^((116.78 - 121.1) / 10) = 11.1.
    assert "116.7 11.0 No: never use it to sterilize here" in small


def test_survivors_follow_from_d() -> None:
    told = words(section("trainer.html", "survivors"))
    assert "3.00 min about 100,000" in told
    assert "18.0 min about 1 " in told


def test_the_trainers_page_leads_to_the_choice_of_reference() -> None:
    assert 'href="choices.html#f0.reference"' in section("trainer.html", "reference")


def test_a_visitor_finds_each_instruments_instructions() -> None:
    told = words(section("visit.html", "instructions"))
    for instrument in content().instruments.values():
        assert instrument.name in told
    assert "For one use only: nothing is reprocessed." in told


def test_a_visitor_finds_every_decision_with_its_people_and_its_day() -> None:
    choices = words(section("visit.html", "choices"))
    for choice in content().choices.values():
        assert choice.is_.lower() in choices.lower()
    assert "Infection-prevention lead and midwife in charge, 20 September 2026" in choices
    assert "look again by 20 September 2027" in choices
    assert "Uterine aspirator, heat-proof: cannula" in words(section("visit.html", "levels"))


def test_a_visitor_reads_the_policy_in_words() -> None:
    told = words(section("visit.html", "policy"))
    assert "Every procedure" in told
    assert "passed, not more than 90 days ago." in told
    assert (
        "Watched 3 times, 2 times in real work, by 2 different people, on 2 different days" in told
    )
    assert "The record lasts 12 months." in told


def test_a_visitor_finds_what_hangs_where_and_which_papers_are_kept() -> None:
    handbook = content().handbook
    assert handbook
    posted = words(section("visit.html", "posted"))
    assert all(each.at in posted.lower() or each.at in posted for each in handbook.posted)
    papers = words(section("visit.html", "papers"))
    assert "Load record" in papers
    assert "Kept for 5 years" in papers


def test_what_there_is_not_is_said() -> None:
    assert "Nothing is waived." in words(section("visit.html", "waivers"))
    assert "No names and no patients." in words(section("visit.html", "not-here"))
