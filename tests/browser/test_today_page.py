"""What can I use today, as somebody at the basin finds it: ticks, baths, the end of a shift."""

import re
from pathlib import Path

import pytest
from playwright.sync_api import Locator, Page, expect

from tests.browser.test_every_page import AXE, RUN_AXE, TAGS, described
from tests.conftest import Opener

pytestmark = pytest.mark.browser

PHONE = (320, 640)
NOON = "2026-11-25T12:02:00"
VESSEL = "Large stovetop vessel"


@pytest.fixture
def today(open_page: Opener) -> Page:
    """The page at noon, with nothing ticked."""
    page = open_page("today.html")
    at(page, NOON)
    return page


def at(page: Page, moment: str) -> None:
    page.clock.install(time=moment)
    page.reload()
    expect(page.get_by_role("button", name="All of it works")).to_be_visible()


def everything(page: Page) -> None:
    page.get_by_role("button", name="All of it works").click()


def settled(page: Page) -> None:
    """Wait until what was ticked is kept."""
    page.evaluate("""async () => { const store = await Basinside.store();
      await store.get(Basinside.storeKey('-', 'ticks')); }""")


def shown(page: Page, instrument: str) -> Locator:
    return page.locator(f"#today-{instrument}")


def chlorine(page: Page, *, made: str, strip: str, heat: str) -> None:
    bath = page.locator("#tick-bath-chlorine-hld")
    bath.get_by_label("Made on").fill(made)
    bath.get_by_label(strip, exact=True).check()
    bath.get_by_label("Temperature").fill(heat)
    bath.get_by_label("Temperature").press("Tab")


def test_nothing_is_open_until_something_is_ticked(today: Page) -> None:
    expect(today.get_by_role("status")).to_have_text("Nothing is ticked yet, so nothing is open.")
    expect(today.locator(".usable")).to_have_count(0)
    expect(today.get_by_role("button", name="Print this")).to_be_hidden()


def test_with_the_sterilizer_off_and_the_strips_gone_boiling_is_still_open(today: Page) -> None:
    everything(today)
    today.get_by_label(VESSEL).uncheck()
    expect(today.get_by_role("status")).to_contain_text("No longer: Delivery set")
    for strips in ("Chlorine test strips", "Glutaraldehyde test strips"):
        today.get_by_label(strips).uncheck()
    masks = shown(today, "bag-mask-silicone")
    expect(masks.locator(".open-ways a")).to_have_text(["Boiling"])
    expect(masks.locator(".open-ways")).to_contain_text("Reaches: high-level disinfection.")
    expect(masks.locator(".ready")).to_have_text("about 2 h 15 min, ready about 14:20")
    expect(masks.locator(".open-ways a")).to_have_attribute(
        "href", "procedures/bag-mask-silicone-boil.html"
    )
    shut = masks.locator(".shut-ways")
    expect(shut).to_contain_text("No vessel for it works. Tick it once it does: Large stovetop")
    expect(shut).to_contain_text("chlorine test strips in date. Tick it once you have it.")
    expect(masks.locator(".emergency")).to_have_count(0)
    birth = shown(today, "delivery-set")
    expect(birth.locator(".state")).to_have_text("Nothing is open.")
    expect(birth.locator(".emergency")).to_contain_text("Open the sealed reserve set in cupboard 1")
    expect(birth.locator(".emergency")).to_contain_text("midwife in charge, 20 September 2026")


def test_a_route_that_is_never_open_says_part_property_and_source(today: Page) -> None:
    everything(today)
    vinyl = shown(today, "bag-mask-vinyl")
    vinyl.locator("summary").click()
    expect(vinyl.locator(".never-ways")).to_contain_text(
        re.compile(r"Boiling.*: does not stand it\. .*Instructions", re.DOTALL)
    )
    expect(vinyl.locator("details")).to_contain_text("What would do: chlorine bath.")
    today.get_by_label("Wire rack").uncheck()  # what was opened stays open
    expect(vinyl.locator("details")).to_have_attribute("open", "")


@pytest.mark.parametrize(
    ("made", "strip", "heat", "said"),
    [
        ("2026-11-24", "Passed", "21", "The bath was made yesterday. It lasts 1 day."),
        ("2026-11-23", "Passed", "21", "The bath was made 2 days ago."),
        ("2026-11-26", "Passed", "21", "lies ahead"),
        ("2026-11-25", "Failed", "21", "The strip failed. Pour the bath away"),
        ("2026-11-25", "Not read", "21", "No strip was read today."),
        ("2026-11-25", "Passed", "19,5", "The bath is too cold: 19,5 °C. It needs 20 °C or more."),
        ("2026-11-25", "Passed", "", "Nobody measured how warm the bath is."),
        ("2026-11-25", "Passed", "warm", "“warm” is no temperature of a bath."),
    ],
)
def test_a_bath_that_will_not_do_says_why_and_what_would(
    today: Page, made: str, strip: str, heat: str, said: str
) -> None:
    everything(today)
    chlorine(today, made=made, strip=strip, heat=heat)
    vinyl = shown(today, "bag-mask-vinyl")
    expect(vinyl.locator(".shut-ways")).to_contain_text(said)
    expect(vinyl.locator(".state")).to_have_text("Nothing is open.")
    expect(vinyl.locator(".emergency")).to_contain_text("Take the sealed reserve bag-mask")


def test_a_good_bath_opens_its_way_with_either_decimal_mark(today: Page) -> None:
    everything(today)
    today.locator("#tick-bath-chlorine-hld").get_by_role("button", name="Today").click()
    chlorine(today, made="2026-11-25", strip="Passed", heat="20,5")
    expect(today.get_by_role("status")).to_contain_text("Now also: Newborn bag-mask, vinyl")
    expect(shown(today, "bag-mask-vinyl").locator(".open-ways a")).to_have_text(["Chlorine bath"])
    expect(shown(today, "vacuum-extractor").locator(".state")).to_have_text("Open.")


def test_some_parts_are_not_the_whole(today: Page) -> None:
    everything(today)
    extractor = shown(today, "vacuum-extractor")
    expect(extractor.locator(".state")).to_have_text(
        "Open for some parts only. Not for: cup, tubing, trap jar, trap lid."
    )
    expect(extractor.locator(".open-ways")).to_contain_text("Only for pump and gauge.")
    expect(extractor.locator(".emergency")).to_contain_text("Take the sealed reserve extractor")


def test_without_water_nothing_is_open_and_every_instrument_has_its_rule(today: Page) -> None:
    everything(today)
    today.get_by_label("Clean water for washing").uncheck()
    said = "Instruments that can be made ready: 0 of 10."
    expect(today.get_by_role("status")).to_contain_text(said)
    expect(today.locator(".usable")).to_have_count(10)
    expect(today.locator(".usable .emergency p")).not_to_have_count(0)
    for each in today.locator(".usable").all():
        expect(each.locator(".emergency p").first).to_be_visible()


def test_ticks_stay_over_a_reload_and_end_with_the_shift(today: Page) -> None:
    everything(today)
    settled(today)
    expect(today.locator(".holds")).to_contain_text("hold until 00:02 tomorrow")
    today.reload()
    expect(today.locator(".usable")).to_have_count(10)
    today.clock.run_for(11 * 3600 * 1000)
    expect(today.locator(".usable")).to_have_count(10)
    today.clock.run_for(3600 * 1000 + 30_000)
    expect(today.locator(".usable")).to_have_count(0)
    expect(today.get_by_role("status")).to_have_text("The shift is over, and its ticks are gone.")
    today.reload()
    expect(today.get_by_label(VESSEL)).not_to_be_checked()


def test_a_strip_of_yesterday_says_nothing_after_midnight(today: Page) -> None:
    at(today, "2026-11-25T23:50:00")
    everything(today)
    glutaraldehyde = today.locator("#tick-bath-glutaraldehyde-hld")
    glutaraldehyde.get_by_label("Made on").fill("2026-11-24")
    glutaraldehyde.get_by_label("Passed").check()
    glutaraldehyde.get_by_label("Temperature").fill("22")
    glutaraldehyde.get_by_label("Temperature").press("Tab")
    aspirator = shown(today, "uterine-aspirator-coldonly")
    expect(aspirator.locator(".ready")).to_contain_text("01:55 tomorrow")
    today.clock.run_for(15 * 60 * 1000)
    expect(aspirator.locator(".shut-ways")).to_contain_text("No strip was read today.")
    expect(today.get_by_role("status")).to_contain_text("A new day has begun")
    expect(glutaraldehyde.get_by_label("Not read")).to_be_checked()


def test_one_press_ends_the_shift(today: Page) -> None:
    everything(today)
    today.get_by_role("button", name="The shift is over").click()
    expect(today.locator(".usable")).to_have_count(0)
    expect(today.get_by_label(VESSEL)).not_to_be_checked()


def test_another_window_sees_the_same_ticks(today: Page) -> None:
    everything(today)
    settled(today)
    other = today.context.new_page()
    other.clock.install(time=NOON)
    other.goto(today.url)
    expect(other.get_by_label(VESSEL)).to_be_checked()
    other.get_by_label(VESSEL).uncheck()
    settled(other)
    today.evaluate("window.dispatchEvent(new Event('focus'))")
    expect(today.get_by_label(VESSEL)).not_to_be_checked()
    expect(today.get_by_role("status")).to_contain_text("Ticks were changed in another window.")
    today.get_by_label("Two clean layers of wrap").uncheck()
    settled(today)
    other.evaluate("window.dispatchEvent(new Event('focus'))")
    expect(other.get_by_label("Two clean layers of wrap")).not_to_be_checked()


def test_where_the_store_is_blocked_the_page_says_so_and_works(
    built_demo: Path, open_page: Opener
) -> None:
    page = open_page("index.html")
    page.route("**/store.html", lambda route: route.abort())
    page.goto((built_demo / "today.html").as_uri())
    expect(page.locator(".notice")).to_contain_text("This browser keeps no ticks.")
    everything(page)
    expect(page.locator(".usable")).to_have_count(10)
    open_page.complaints.clear()  # the frame that was refused


def test_a_link_leads_to_the_tick_and_keys_do_the_rest(today: Page) -> None:
    today.get_by_label("Pot with a lid").focus()
    today.keyboard.press("Space")
    shown(today, "suction-bulb").get_by_role("link", name="stove with fuel").click()
    expect(today.get_by_label("Stove with fuel")).to_be_focused()
    today.keyboard.press("Space")
    expect(today.get_by_label("Stove with fuel")).to_be_checked()
    expect(shown(today, "suction-bulb").get_by_role("link", name="stove with fuel")).to_have_count(
        0
    )


@pytest.mark.parametrize("size", [PHONE, (1280, 800)])
def test_ticked_it_neither_scrolls_sideways_nor_has_small_targets(
    open_page: Opener, size: tuple[int, int]
) -> None:
    page = open_page("today.html", size=size)
    everything(page)
    page.get_by_label(VESSEL).uncheck()
    page.evaluate("document.querySelectorAll('details').forEach((d) => { d.open = true; })")
    assert page.evaluate("document.scrollingElement.scrollWidth") <= size[0]
    small = page.evaluate("""[...document.querySelectorAll(
        '.shift-tick, .shift-ticks button, .glance a, .usable h3 a, .open-ways a, summary')]
      .filter((each) => each.getBoundingClientRect().height < 43.9)
      .map((each) => each.outerHTML.slice(0, 80))""")
    assert small == []


def test_axe_finds_nothing_once_it_is_ticked(open_page: Opener) -> None:
    page = open_page("today.html")
    everything(page)
    page.get_by_label(VESSEL).uncheck()
    page.evaluate("document.querySelectorAll('details').forEach((d) => { d.open = true; })")
    page.evaluate(AXE)
    assert described(page.evaluate(RUN_AXE, TAGS)["violations"]) == []


def sheets(page: Page, paper: str) -> int:
    """Return how many sheets the page prints on."""
    return len(re.findall(rb"/Type\s*/Page\b", page.pdf(format=paper)))


@pytest.mark.parametrize("paper", ["A4", "Letter"])
@pytest.mark.parametrize("ticked", [True, False])
def test_the_shift_prints_on_two_sheets_at_most(today: Page, paper: str, ticked: bool) -> None:
    if ticked:
        everything(today)
        today.get_by_label(VESSEL).uncheck()
    assert 1 <= sheets(today, paper) <= 2


def test_paper_says_for_which_shift_and_what_is_not_there(today: Page) -> None:
    everything(today)
    today.get_by_label(VESSEL).uncheck()
    today.evaluate("window.dispatchEvent(new Event('beforeprint'))")
    today.emulate_media(media="print")
    stamp = today.locator(".stamp")
    expect(stamp).to_contain_text(
        "For this shift. Printed 12:02 on 25 November 2026. It holds until 00:02 tomorrow"
    )
    expect(stamp).to_contain_text("Not there this shift: Large stovetop vessel")
    expect(today.locator(".shift-ticks")).to_be_hidden()
    expect(today.locator(".any-day")).to_be_hidden()
    expect(today.locator(".never-line").first).to_be_visible()
    expect(today.locator(".usable").first).to_be_visible()
