"""The page of the calculators: by keyboard, narrow, refused, and without its script."""

from pathlib import Path

import pytest
from playwright.sync_api import Browser, Locator, Page, expect

from tests.browser.test_every_page import AXE, PHONE_WIDTH, RUN_AXE, TAGS, described
from tests.conftest import Opener

pytestmark = pytest.mark.browser

PAGE = "amounts.html"
KINDS = 9


def form(page: Page, kind: str) -> Locator:
    return page.locator(f"[data-kind={kind}]")


def ask(page: Page, kind: str) -> Locator:
    form(page, kind).get_by_role("button").click()
    return form(page, kind).get_by_role("status")


def test_a_bath_of_ones_own_by_keyboard(open_page: Opener) -> None:
    page = open_page(PAGE)
    here = form(page, "liquid")
    here.get_by_label("Strength on the label", exact=True).focus()
    page.keyboard.press("Control+A")
    page.keyboard.type("3,5")
    page.keyboard.press("Tab")
    page.keyboard.type("Another")
    page.keyboard.press("Tab")
    page.keyboard.type("0.5")
    page.keyboard.press("Tab")
    page.keyboard.type("7")
    page.keyboard.press("Enter")
    told = here.get_by_role("status")
    expect(told.locator(".figure").first).to_contain_text("1000 mL")
    expect(told).to_contain_text("1 part from the bottle to 6 parts of water")
    expect(told).to_contain_text("1 × jug, full (1000 mL)")
    expect(told).to_contain_text("“3,5” was read as 3.5")
    expect(told).to_contain_text("1000 mL = 7 L × 0.5 % ÷ 3.5 %")


def test_what_cannot_be_is_refused_with_what_would_do(open_page: Opener) -> None:
    page = open_page(PAGE)
    form(page, "liquid").get_by_label("Strength on the label", exact=True).fill("0.1")
    form(page, "liquid").get_by_label("Wanted strength", exact=True).select_option("0.5")
    told = ask(page, "liquid")
    expect(told.locator(".why-none")).to_contain_text("0.5 % cannot be made from 0.1 %.")
    expect(told).to_contain_text("Our tablets would do.")
    form(page, "gauge").get_by_label("Vessel", exact=True).select_option("stovetop-weight")
    told = ask(page, "gauge")
    expect(told).to_contain_text("This vessel cannot reach 121 °C at this altitude.")
    expect(told).to_contain_text("The large stovetop vessel with dial and stopcock reaches it.")
    expect(told.locator(".large")).to_have_count(0)


def test_another_vessel_asks_for_its_plate(open_page: Opener) -> None:
    page = open_page(PAGE)
    plate = form(page, "gauge").get_by_label("Highest pressure that its plate allows", exact=True)
    expect(plate).to_be_hidden()
    form(page, "gauge").get_by_label("Vessel", exact=True).select_option("other")
    expect(ask(page, "gauge").locator(".why-none")).to_contain_text("nothing is written there")
    plate.fill("140")
    expect(ask(page, "gauge").locator(".figure")).to_contain_text("130 kPa gauge")


def test_days_and_times_come_from_this_devices_clock(open_page: Opener) -> None:
    page = open_page(PAGE)
    page.clock.install(time="2026-12-31T23:50:00")
    page.reload()
    form(page, "out-time").get_by_label("What is held", exact=True).select_option("chlorine.hold")
    told = ask(page, "out-time")
    expect(told.locator(".figure").first).to_contain_text("00:10")
    expect(told).to_contain_text("the next day, 1 January 2027")
    form(page, "discard").get_by_label("Solution", exact=True).select_option("glutaraldehyde")
    expect(ask(page, "discard").locator(".figure")).to_contain_text("14 January 2027")


def test_a_load_that_broke_says_what_to_do(open_page: Opener) -> None:
    page = open_page(PAGE)
    form(page, "load").get_by_label("Log of the load", exact=True).fill(
        "14:00 100\n14:10 121\n14:30 119"
    )
    told = ask(page, "load")
    expect(told.locator(".figure").first).to_contain_text("Not held long enough")
    expect(told).to_contain_text("Do not release this load.")


def test_an_instrument_fills_in_what_the_clinic_says_of_it(open_page: Opener) -> None:
    page = open_page(PAGE)
    here = form(page, "sets")
    here.get_by_label("Instrument", exact=True).select_option(label="Speculum, stainless steel")
    expect(here.get_by_label("Sets of the ready reserve", exact=True)).to_have_value("2")
    here.get_by_label("Cases on a day", exact=True).fill("6")
    expect(ask(page, "sets").locator(".figure")).to_contain_text("4 sets")


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_answers_are_sound_for_axe_and_fit_a_narrow_page(open_page: Opener, scheme: str) -> None:
    page = open_page(PAGE, size=(PHONE_WIDTH, 640))
    page.emulate_media(color_scheme="dark" if scheme == "dark" else "light")
    form(page, "load").get_by_label("Log of the load", exact=True).fill("0 121\n40 121")
    form(page, "gauge").get_by_label("Vessel", exact=True).select_option("stovetop-weight")
    buttons = page.locator("[data-component=amount] button")
    expect(buttons).to_have_count(KINDS)
    for at in range(KINDS):
        buttons.nth(at).click()
    assert page.evaluate("document.scrollingElement.scrollWidth") <= PHONE_WIDTH
    page.evaluate(AXE)
    assert described(page.evaluate(RUN_AXE, TAGS)["violations"]) == []


def test_hands_find_every_field_and_button(open_page: Opener) -> None:
    page = open_page(PAGE, size=(390, 844))
    small = page.evaluate(
        """() => [...document.querySelectorAll('.amount-form input, .amount-form select, '
          + '.amount-form textarea, .amount-form button')]
          .filter((each) => each.offsetParent && each.getBoundingClientRect().height < 44)
          .map((each) => each.outerHTML)"""
    )
    assert small == []


def test_without_a_script_the_usual_amounts_are_there(
    chromium_browser: Browser, built_demo: Path
) -> None:
    with chromium_browser.new_context(java_script_enabled=False) as context:
        page = context.new_page()
        page.goto((built_demo / PAGE).as_uri())
        text = page.locator("main").inner_text()
    for said in (
        "100 mL = 1 × jug, filled to 100 mL",
        "0.112 %",
        "5 tablets",
        "130 kPa gauge or more, for 121 °C, and never above 150 kPa",
        "cannot reach 121 °C at this altitude",
        "Never with acid, ammonia or soap",
        "A gauge tells the temperature only after steady steam",
        "Never alter, load or tie down a weight or a valve.",
    ):
        assert said in text, said


def test_a_sheet_of_paper_has_the_tables_and_no_forms(open_page: Opener) -> None:
    page = open_page(PAGE)
    page.emulate_media(media="print")
    expect(page.locator(".amount-form").first).to_be_hidden()
    expect(page.locator(".amount table").first).to_be_visible()
    expect(page.locator(".amount-cautions").first).to_be_visible()
