"""Times at the steps: several at once, over a reload, interrupted, reached, late."""

from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page, expect

from tests.browser import script_lab
from tests.conftest import Opener

pytestmark = pytest.mark.browser

ABOUT = {
    "procedure": "cup-soak",
    "steps": {
        "start-timing": {
            "seconds": 1200,
            "longest": 1800,
            "time": "20 min",
            "name": "Chlorine bath",
            "interrupted": "Start the time again.",
        },
        "dry": {"seconds": 3600, "longest": None, "time": "1 h", "name": "Drying",
                "interrupted": "Let them dry on.", "goesOn": True},
    },
}  # fmt: skip
BODY = """
<section class="timers" data-component="timers" data-up="" hidden></section>
<div class="timer" id="bath" data-component="timer" data-step="start-timing"></div>
<div class="timer" id="dry" data-component="timer" data-step="dry"></div>
<div class="timer" id="other" data-component="timer" data-step="unknown">as it was</div>
"""


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    pages = {name: (BODY, {"timers": ABOUT}) for name in ("a.html", "b.html")}
    return script_lab.lay(tmp_path / "lab", pages)


def at(page: Page, moment: str) -> None:
    page.clock.install(time=moment)
    page.reload()


def text(page: Page, place: str) -> str:
    return page.locator(place).inner_text()


def start(page: Page, place: str) -> None:
    page.locator(place).get_by_role("button", name="Start").first.click()


def again(page: Page) -> None:
    """Reload once what was changed is kept."""
    page.evaluate("async () => (await Basinside.timers()).settled()")
    page.reload()


def later(page: Page, seconds: int) -> None:
    page.clock.run_for(seconds * 1000)


def test_a_time_says_when_it_is_out_and_what_to_write(open_page: Opener, folder: Path) -> None:
    page = open_page(folder / "a.html")
    at(page, "2026-11-20T14:12:00")
    start(page, "#bath")
    said = text(page, "#bath")
    assert "Out at 14:32" in said
    assert "in 14:12, out 14:32" in said
    assert "No later than 14:42" in said
    later(page, 65)
    assert text(page, "#bath .time-left").startswith("18:5")
    assert text(page, "#other") == "as it was"
    expect(page.locator(".timers")).to_be_visible()


def test_several_times_have_names_and_outlive_a_reload(open_page: Opener, folder: Path) -> None:
    page = open_page(folder / "a.html")
    at(page, "2026-11-20T23:50:00")
    start(page, "#bath")
    start(page, "#bath")
    page.locator("#dry summary").click()
    page.locator("#dry input").fill("Masks S1 and S2")
    start(page, "#dry")
    names = page.locator(".timers .time-name").all_inner_texts()
    assert names == ["Chlorine bath", "Chlorine bath (2)", "Masks S1 and S2"]
    assert "00:10 tomorrow" in text(page, "#bath")
    again(page)
    expect(page.locator("#bath .time")).to_have_count(2)
    page.locator("#bath").get_by_role("button", name="It is out").first.click()
    expect(page.locator("#bath .time")).to_have_count(1)
    again(page)
    page.goto((folder / "b.html").as_uri())
    expect(page.locator(".timers .time")).to_have_count(2)
    assert page.locator(".timers a").first.get_attribute("href") == (
        "procedures/cup-soak.html#start-timing"
    )


def test_reached_it_calls_and_late_it_says_so(open_page: Opener, folder: Path) -> None:
    page = open_page(folder / "a.html")
    at(page, "2026-11-20T14:12:00")
    start(page, "#bath")
    later(page, 1201)
    assert "Time reached at 14:32" in text(page, "#bath")
    assert "Chlorine bath: the time is reached." in text(page, ".timers [role=alert]")
    assert page.title().startswith("(1) time reached")
    page.get_by_role("button", name="Stop the sound").click()
    assert page.title() == "a page"
    later(page, 601)
    assert "Too long" in text(page, "#bath")
    assert "out by 14:42" in text(page, "#bath")


def test_what_was_interrupted_does_not_count(open_page: Opener, folder: Path) -> None:
    page = open_page(folder / "a.html")
    at(page, "2026-11-20T14:12:00")
    start(page, "#bath")
    later(page, 300)
    page.locator("#bath").get_by_role("button", name="It was interrupted").click()
    said = text(page, "#bath")
    assert "Interrupted at 14:17. This time does not count." in said
    assert "Start the time again." in said
    assert "Out at" not in said
    later(page, 3600)
    assert "reached" not in text(page, "#bath")
    page.locator("#bath").get_by_role("button", name="Start it again now").click()
    assert "Out at 15:37" in text(page, "#bath")


def test_what_may_go_on_is_only_put_off_by_the_pause(open_page: Opener, folder: Path) -> None:
    page = open_page(folder / "a.html")
    at(page, "2026-11-20T14:12:00")
    start(page, "#dry")
    later(page, 300)
    page.locator("#dry").get_by_role("button", name="It was interrupted").click()
    said = text(page, "#dry")
    assert "Let them dry on." in said
    assert "does not count" not in said
    later(page, 600)
    again(page)
    page.locator(".timers").get_by_role("button", name="Go on").click()
    said = text(page, "#dry")
    assert "in 14:12, out 15:22" in said
    assert "It stood still for 10:0" in said
    page.locator("#dry").get_by_role("button", name="It was interrupted").click()
    page.locator("#dry").get_by_role("button", name="Start it again now").click()
    assert "in 14:27, out 15:27" in text(page, "#dry")


def test_a_pause_does_not_put_off_the_latest_end(open_page: Opener, folder: Path) -> None:
    page = open_page(folder / "a.html")
    timer = {"began": 0, "seconds": 60, "longest": 100, "broken": 10_000, "paused": 5}
    on: Any = page.evaluate("each => Basinside.timing.resumed(each, 30500)", timer)
    assert (on["broken"], on["paused"]) == (None, 26)
    read: Any = page.evaluate("each => Basinside.timing.read(each, 40000)", on)
    assert (read["out"], read["latest"], read["state"]) == (86_000, 100_000, "running")


def test_times_that_run_are_shown_wherever_staff_may_be(
    built_demo: Path, open_page: Opener
) -> None:
    page = open_page("procedures/bag-mask-silicone-boil.html")
    name = page.locator(".timer input").first
    page.locator(".timer button").first.click()
    assert len(name.get_attribute("placeholder") or "") < 34
    page.evaluate("async () => (await Basinside.timers()).settled()")
    others = ("amounts", "today", "incidents", "values", "routes", "instruments/speculum")
    for path in (*others, "self-tests/cleaning", "agents/chlorine", "index"):
        page.goto((built_demo / f"{path}.html").as_uri())
        expect(page.locator(".timers .time")).to_have_count(1)
        link = page.locator(".timers a").first.get_attribute("href") or ""
        assert (built_demo / path).parent.joinpath(link.partition("#")[0]).exists(), path
    page.goto((built_demo / "print" / "index.html").as_uri())
    assert page.locator(".timers").count() == 0


def test_each_name_of_the_demo_is_kept_whole(built_demo: Path, open_page: Opener) -> None:
    page = open_page("index.html")
    most: int = page.evaluate("Basinside.timing.LONGEST_NAME")
    seen = 0
    for path in sorted((built_demo / "procedures").glob("*.html")):
        page.goto(path.as_uri())
        known: Any = page.evaluate("Basinside.inlineJson('timers')")
        for about in (known or {"steps": {}})["steps"].values():
            seen += 1
            assert len(about["name"]) + len(" (40)") <= most
            assert len(about["short"]) <= 40
            goes_on = any(word in about["interrupted"] for word in ("go on", "dry on", "ait on"))
            assert about["goesOn"] or not goes_on, about
    assert seen > 20


def test_back_from_a_value_leads_to_where_one_was(built_demo: Path, open_page: Opener) -> None:
    page = open_page("procedures/bag-mask-silicone-boil.html", (390, 844))
    value = page.locator(".step a.to-value").last
    value.scroll_into_view_if_needed()
    was = page.evaluate("scrollY")
    assert was > 844
    value.click()
    page.wait_for_url("**/values.html#*")
    page.go_back()
    page.wait_for_url("**/bag-mask-silicone-boil.html")
    page.wait_for_function("was => Math.abs(scrollY - was) < 200", arg=was)


def test_a_clock_that_went_back_is_said(open_page: Opener, folder: Path) -> None:
    page = open_page(folder / "a.html")
    at(page, "2026-11-20T14:12:00")
    start(page, "#bath")
    page.clock.set_fixed_time("2026-11-20T13:00:00")
    again(page)
    expect(page.locator("#bath")).to_contain_text("set back")


@pytest.mark.parametrize(
    "kept",
    [
        "null",
        "[",
        '{"format":"basinside/timers/1","timers":"x"}',
        '{"format":"basinside/timers/2","timers":[{"id":"a"}]}',
        (
            '{"format":"basinside/timers/1","timers":[null,7,{"id":"a","step":"b","name":"c",'
            '"began":-1,"seconds":1,"longest":null,"broken":null},{"id":"a","step":1}]}'
        ),
    ],
)
def test_what_a_stranger_left_is_not_believed(open_page: Opener, folder: Path, kept: str) -> None:
    page = open_page(folder / "a.html")
    read: Any = page.evaluate("kept => Basinside.timing.readKept(kept, Date.now())", kept)
    assert read == []


def test_clock_times_agree_with_pythons(open_page: Opener, folder: Path) -> None:
    page = open_page(folder / "a.html")
    counted = page.evaluate("all => all.map(Basinside.timing.counted)", [0, 59, 60, 3599, 3600])
    assert counted == ["00:00", "00:59", "01:00", "59:59", "1:00:00"]
