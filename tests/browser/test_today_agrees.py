"""Python and the page find the same ways open for 500 random shifts of the demonstration."""

import json
import random
from collections import Counter
from pathlib import Path
from typing import Any

import pytest

from basinside.pipeline.build import open_theme, read_clinic
from basinside.render.views.spot import Desk, Spot
from basinside.render.views.today_data import today_data
from tests.browser import script_lab
from tests.browser.shift_check import evaluated, some_ticks
from tests.built import CHECKOUT
from tests.conftest import Opener

pytestmark = pytest.mark.browser

SHIFTS = 500
TODAYS = ("2026-11-25", "2026-03-01", "2028-02-29", "2027-01-01")
RUN = """text => { const { plan, shifts } = JSON.parse(text);
  return JSON.stringify(shifts.map(([ticks, today]) =>
    Basinside.shift.evaluate(plan, ticks, today))); }"""


def demo_plan() -> dict[str, Any]:
    """Return the demonstration's plan as its page reads it."""
    clinic = read_clinic(CHECKOUT)
    desk = Desk(content=clinic.content, derived=clinic.derived, theme=open_theme())
    return today_data(Spot(desk=desk, path="today.html"))


def test_500_random_shifts(open_page: Opener, tmp_path: Path) -> None:
    rng = random.Random(20261125)
    plan = demo_plan()
    shifts = []
    for _ in range(SHIFTS):
        today = rng.choice(TODAYS)
        shifts.append((some_ticks(rng, plan, today), today))
    expected = [evaluated(plan, ticks, today) for ticks, today in shifts]
    page = open_page(script_lab.lay(tmp_path / "lab", {"a.html": ("", {})}) / "a.html")
    found = json.loads(page.evaluate(RUN, json.dumps({"plan": plan, "shifts": shifts})))
    assert found == expected
    seen(expected)


def seen(expected: list[list[dict[str, Any]]]) -> None:
    """The random shifts bring out every state and every reason, or they prove little."""
    states = Counter(each["state"] for shift in expected for each in shift)
    lacking = [
        lack
        for shift in expected
        for each in shift
        for way in each["ways"]
        for lack in way["missing"]
    ]
    assert set(states) == {"whole", "parts", "none"}
    assert {each["what"] for each in lacking} == {"need", "vessel", "bath"}
    assert {each["why"] for each in lacking if each["what"] == "bath"} == {
        "unmade", "future", "old", "failed", "unread", "unmeasured", "no-heat", "cold",
    }  # fmt: skip


@pytest.mark.parametrize(
    "kept",
    [
        None,
        "null",
        "[]",
        "{",
        '{"format":"basinside/shift/2","set":1000,"works":[],"baths":{}}',
        '{"format":"basinside/shift/1","set":"1000","works":[],"baths":{}}',
        '{"format":"basinside/shift/1","set":1000,"works":"all","baths":{}}',
        '{"format":"basinside/shift/1","set":1000,"works":[],"baths":null}',
        '{"format":"basinside/shift/1","set":999999,"works":["a"],"baths":{}}',
        '{"format":"basinside/shift/1","set":-5,"works":["a"],"baths":{}}',
    ],
)
def test_what_a_stranger_left_is_not_believed(
    open_page: Opener, tmp_path: Path, kept: str | None
) -> None:
    page = open_page(script_lab.lay(tmp_path / "lab", {"a.html": ("", {})}) / "a.html")
    read = page.evaluate("kept => Basinside.shift.readKept(kept, 2000, 12)", kept)
    assert read == {"set": 0, "works": [], "baths": {}}


def test_what_was_kept_is_read_until_its_shift_ends(open_page: Opener, tmp_path: Path) -> None:
    page = open_page(script_lab.lay(tmp_path / "lab", {"a.html": ("", {})}) / "a.html")
    kept = (
        '{"format":"basinside/shift/1","set":1000,"works":["a",7],'
        '"baths":{"b":{"made":"2026-11-25","strip":"yes","heat":3}}}'
    )
    ends = 1000 + 12 * 3600 * 1000
    read = "([kept, now]) => Basinside.shift.readKept(kept, now, 12)"
    assert page.evaluate(read, [kept, ends - 1]) == {
        "set": 1000,
        "works": ["a"],
        "baths": {"b": {"made": "2026-11-25", "strip": "", "read": "", "heat": ""}},
    }
    assert page.evaluate(read, [kept, ends])["set"] == 0
