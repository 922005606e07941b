"""An order, a number and pairs in the player: by keyboard, over a reload, into a file, narrow.

The questions come from the words of an author through the real views.
"""

import json
import re
from functools import cache
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page, expect

from basinside.marking import evaluate, plan_answer
from basinside.model.attempt import Answer, Attempt
from basinside.pipeline.build import open_theme
from basinside.render.views.self_tests import self_test_data, self_test_view
from basinside.render.views.spot import Desk, Spot
from tests.browser import script_lab
from tests.browser.test_every_page import AXE, RUN_AXE, TAGS
from tests.browser.test_self_test_lab import choose_code, kept
from tests.conftest import Opener
from tests.plain.clinic import patched, read

pytestmark = pytest.mark.browser

WRITTEN = (Path(__file__).parents[1] / "check" / "kinds.yaml").read_text(encoding="utf-8")
ORDER, NUMBER, MATCH = "bath-order", "two-baths", "what-for-what"
RIGHT = ["Pull the tip off", "Brush each part", "Put every part under for 20\u00a0min"]


@cache
def spot() -> Spot:
    looked = read(patched({"files": {"quizzes/questions/kinds.yaml": WRITTEN}}))
    desk = Desk(content=looked.content, derived=looked.derived, theme=open_theme())
    return Spot(desk=desk, path="self-tests/kinds.html")


@cache
def data() -> dict[str, Any]:
    asked = [each for each in spot().desk.content.items() if each.topic == "kinds"]
    return json.loads(json.dumps(self_test_data(spot(), "kinds", asked)))


def lay(folder: Path) -> str:
    body = script_lab.place("self-test", "self-test")
    return (script_lab.lay(folder, {"a.html": (body, {"self-test": data()})}) / "a.html").as_uri()


def at(open_page: Opener, folder: Path, item: str, **more: Any) -> Page:
    lay(folder)
    page = open_page(folder / "a.html", **more)
    page.evaluate("item => { location.hash = item; }", item)
    expect(page.locator(f"form#{item}")).to_be_visible()
    return page


def lines(page: Page) -> list[str]:
    return page.locator(".order-lines li > span").all_inner_texts()


def put(page: Page, line: str, place: int) -> None:
    """Move a line to a place by its buttons."""
    for _ in range(10):
        now = lines(page).index(line)
        if now == place:
            return
        way = "Up" if now > place else "Down"
        page.get_by_role("button", name=f"{way} {line}").click()
    raise AssertionError(f"{line} does not get to {place}")


def check(page: Page) -> str:
    page.get_by_role("button", name="Check my answer").click()
    expect(page.locator(".result")).to_be_focused()
    return page.locator(".result h3").inner_text()


def test_the_first_order_is_never_right_and_leaving_it_is_no_answer(
    tmp_path: Path, open_page: Opener
) -> None:
    page = at(open_page, tmp_path, ORDER)
    passed = page.evaluate(
        """item => Array.from({length: 300}, () => Basinside.selfTest.blank(item))
          .filter(({order}) => Basinside.marking.evaluate(item.plan, {order}).passed).length""",
        data()["items"][0],
    )
    assert passed == 0
    page.get_by_role("button", name="Check my answer").click()
    expect(
        page.get_by_text("As it stands the order is not right. Move a line first.")
    ).to_be_visible()
    assert page.locator(".result").count() == 0
    assert page.get_by_role("button", name="1, not answered").count() == 1


def test_an_order_is_made_by_keyboard_and_the_focus_stays(
    tmp_path: Path, open_page: Opener
) -> None:
    page = at(open_page, tmp_path, ORDER)
    first = lines(page)[0]
    button = page.get_by_role("button", name=f"Down {first}")
    button.focus()
    status = page.locator(".question-now [role=status]")
    for place in (2, 3, 4):
        page.keyboard.press("Enter")
        expect(status).to_have_text(f"{first}: place {place} of 4.")
        expect(button).to_be_focused()
    assert lines(page)[3] == first
    page.keyboard.press("Space")
    expect(status).to_have_text(f"{first} cannot go further: place 4 of 4.")
    assert button.get_attribute("aria-disabled") == "true"
    page.keyboard.press("Shift+Tab")
    expect(page.get_by_role("button", name=f"Up {first}")).to_be_focused()
    page.keyboard.press("Space")
    assert lines(page)[2] == first


def test_an_order_is_judged_by_the_pairs_that_matter(tmp_path: Path, open_page: Opener) -> None:
    page = at(open_page, tmp_path, ORDER)
    for place, line in enumerate([RIGHT[1], RIGHT[0], RIGHT[2]]):
        put(page, line, place)
    put(page, "Write it down", 3)
    assert check(page) == "Your answer is not right. This could hurt someone."
    ask = page.locator("fieldset")
    expect(ask).to_contain_text("Pairs in the right order: 1 of 2 that matter.")
    expect(ask.locator("[data-verdict=wrong]")).to_have_text(
        "“Pull the tip off” comes before “Brush each part”. Soil hides under the tip. "
        "Whoever answers so may believe: a brush gets in everywhere."
    )
    expect(ask).to_contain_text("Each step makes the next one work.")
    yours, right = ask.locator(".ordered").all()
    assert yours.locator("li").all_inner_texts()[:2] == [RIGHT[1], RIGHT[0]]
    assert right.locator("li").all_inner_texts() == [*RIGHT, "Write it down"]


def test_an_order_that_keeps_them_is_right_wherever_the_rest_stands(
    tmp_path: Path, open_page: Opener
) -> None:
    page = at(open_page, tmp_path, ORDER)
    for place, line in enumerate(["Write it down", *RIGHT]):
        put(page, line, place)
    assert lines(page) == ["Write it down", *RIGHT]
    assert check(page) == "Your answer is right."
    expect(page.locator("fieldset")).to_contain_text("2 of 2 that matter")
    assert page.locator("[data-verdict=wrong]").count() == 0


@pytest.mark.parametrize(
    ("typed", "echo", "result", "told"),
    [
        ("40", "You wrote 40, read as 40\u00a0min.", "Your answer is right.", "40\u00a0min"),
        ("2400 s", "You wrote 2400 s, read as 40\u00a0min.", "Your answer is right.", "45"),
        ("42,5", "You wrote 42,5, read as 42.5\u00a0min.", "Your answer is right.", ""),
        ("20", "read as 20\u00a0min.", "Your answer is unsafe. This could hurt someone.",
         "That is one load. Whoever answers so may believe: one time counts for both."),
        ("1 h", "read as 60\u00a0min.", "Your answer is not right yet.", "That is three."),
        ("50", "read as 50\u00a0min.", "Your answer is not right yet.", "Anything from"),
    ],
)  # fmt: skip
def test_a_number_is_echoed_and_its_mistake_known(
    tmp_path: Path, open_page: Opener, typed: str, echo: str, result: str, told: str
) -> None:
    page = at(open_page, tmp_path, NUMBER)
    field = page.get_by_label("Your number, in min")
    field.fill(typed)
    expect(page.locator(".echo")).to_contain_text(echo)
    page.keyboard.press("Enter")  # the one way on of the form
    assert page.locator(".result h3").inner_text() == result
    ask = page.locator("fieldset")
    expect(ask).to_contain_text(
        "Right: 40\u00a0min. Anything from 40\u00a0min to 45\u00a0min counts"
    )
    expect(ask).to_contain_text(told)
    expect(ask).to_contain_text(echo)
    known = result != "Your answer is right." and typed != "50"
    assert ask.locator("[data-verdict=wrong]").count() == int(known)


def test_a_number_that_cannot_be_read_is_asked_for_again(tmp_path: Path, open_page: Opener) -> None:
    page = at(open_page, tmp_path, NUMBER)
    page.get_by_label("Your number, in min").fill("40 L")
    page.get_by_role("button", name="Check my answer").click()
    said = page.get_by_role("status").filter(has_text="“L” is not read here. Answer in min.")
    expect(said.last).to_be_visible()
    assert page.locator(".result").count() == 0
    assert page.get_by_role("button", name="2, not answered").count() == 1


def test_pairs_are_chosen_from_lists_and_each_is_explained(
    tmp_path: Path, open_page: Opener
) -> None:
    page = at(open_page, tmp_path, MATCH)
    page.get_by_label("The body").select_option("Chlorine")
    page.get_by_role("button", name="Check my answer").click()
    expect(page.get_by_text("Still to be chosen: 2")).to_be_visible()
    page.get_by_label("The tip").select_option("Steam")
    page.get_by_label("The cap").select_option("Brush")
    assert check(page) == "Your answer is unsafe. This could hurt someone."
    rows = page.locator(".matched li").all_inner_texts()
    assert [" ".join(each.split()) for each in rows] == [
        (
            "The tip: Brush. It is narrow. You chose: Steam. It melts. "
            "Whoever answers so may believe: everything stands heat."
        ),
        "The body: Chlorine. It is wide. You chose it.",
        "The cap: Brush. It is ribbed. You chose it.",
    ]


def test_every_answer_outlives_a_reload_and_the_file_is_worth_the_same(
    tmp_path: Path, open_page: Opener
) -> None:
    page = at(open_page, tmp_path, ORDER)
    choose_code(page)
    for place, line in enumerate([*RIGHT, "Write it down"]):
        put(page, line, place)
    page.get_by_label("Ask someone first").check()
    made = lines(page)
    page.get_by_role("button", name="Next question").click()
    page.get_by_label("Your number, in min").fill("2520 s")
    page.get_by_role("button", name="Next question").click()
    for name, right in (("The tip", "Brush"), ("The body", "Chlorine"), ("The cap", "Brush")):
        page.get_by_label(name).select_option(right)
    kept(page)
    page.goto("about:blank")
    page.goto(lay(tmp_path))
    expect(page.get_by_role("heading", name="Question 3 of 3")).to_be_visible()
    assert page.get_by_label("The body").locator("option:checked").inner_text() == "Chlorine"
    page.get_by_role("button", name="2, answered").click()
    assert page.get_by_label("Your number, in min").input_value() == "2520 s"
    page.get_by_role("button", name="1, answered").click()
    assert lines(page) == made
    expect(page.get_by_label("Ask someone first")).to_be_checked()

    page.get_by_role("button", name="Look over my answers").click()
    page.get_by_role("button", name="Finish").click()
    expect(page.get_by_text("Right: 3 of 3")).to_be_visible()
    with page.expect_download() as coming:
        page.get_by_role("button", name="Save my attempt to a file").click()
    text = coming.value.path().read_text(encoding="utf-8")
    attempt = Attempt.from_plain(json.loads(text))
    assert not {"sure", "typed", "points"} & {key for each in attempt.items for key in vars(each)}
    assert not {"sure", "typed"} & set(text.split('"'))
    assert attempt.items[1].number == "42"
    assert attempt.items[1].order is None
    plans = spot().desk.derived.plans
    for answer in attempt.items:
        assert evaluate(plans[answer.item], authored(answer)).passed, answer.item


def authored(answer: Answer) -> dict[str, object]:
    """Return an answer in the positions that its item was written in, as its plan counts."""
    given, mixed = plan_answer(answer), answer.order
    if mixed and answer.chosen:
        return {"chosen": sorted(mixed[p] for p in answer.chosen)}
    if mixed and answer.ordered:
        return {"order": [mixed[p] for p in answer.ordered]}
    return given


def test_what_was_sure_and_wrong_comes_first(tmp_path: Path, open_page: Opener) -> None:
    page = at(open_page, tmp_path, MATCH)
    for name in ("The tip", "The body", "The cap"):
        page.get_by_label(name).select_option("Steam")  # unsafe, and not sure
    page.get_by_label("Look it up first").check()
    page.get_by_role("button", name="Previous question").click()
    page.get_by_label("Your number, in min").fill("50")  # only wrong, but sure
    page.get_by_label("Do it now").check()
    check(page)
    expect(page.locator(".result")).to_contain_text("You would have done it now.")
    page.get_by_role("button", name="Look over my answers").click()
    page.get_by_role("button", name="Finish").click()
    headings = page.locator(".end h3").all_inner_texts()
    assert headings[:2] == [
        "You would have done these now: repeat them first",
        "Repeat these as well",
    ]
    sure, others = page.locator(".repeat").all()
    assert sure.get_by_role("button").all_inner_texts() == ["Go to question 2"]
    assert sure.get_by_role("link").first.get_attribute("href") == (
        "../procedures/bulb-soak.html#start-timing"
    )
    assert others.get_by_role("button").all_inner_texts() == [
        "Go to question 3", "Go to question 1",
    ]  # fmt: skip
    assert page.get_by_text("Right: 0 of 3").is_visible()


def test_how_sure_one_is_may_be_left_open_and_earns_nothing(
    tmp_path: Path, open_page: Opener
) -> None:
    page = at(open_page, tmp_path, NUMBER)
    page.get_by_label("Do it now").check()
    assert page.get_by_role("button", name="2, not answered").count() == 1
    page.get_by_label("Your number, in min").fill("40")
    check(page)
    expect(page.locator(".result")).not_to_contain_text("You would have done it now.")
    assert page.locator(".sure").count() == 0


def test_a_kept_answer_that_cannot_be_one_starts_blank(tmp_path: Path, open_page: Opener) -> None:
    page = at(open_page, tmp_path, ORDER)
    sound = {"chosen": [], "ordered": [], "typed": "", "sure": "", "checked": False,
             "seconds": 0, "changes": 0}  # fmt: skip
    mixed = [n * 3 + right for n in range(3) for right in (2, 0, 1)]
    tried: list[tuple[str, dict[str, Any], bool]] = [
        (ORDER, {"order": [3, 2, 1, 0], "ordered": [0, 1, 2, 3]}, True),
        (ORDER, {"order": [3, 2, 1, 0], "ordered": [0, 1, 2]}, False),
        (ORDER, {"order": [3, 2, 1, 0], "ordered": [0, 1, 2, 2]}, False),
        (ORDER, {"order": [3, 2, 1, 0], "typed": "5"}, False),
        (ORDER, {"order": [3, 2, 1, 0], "checked": True}, False),
        (NUMBER, {"order": [], "typed": "40", "checked": True}, True),
        (NUMBER, {"order": [], "typed": "forty", "checked": True}, False),
        (NUMBER, {"order": [], "typed": "4" * 41}, False),
        (NUMBER, {"order": [], "typed": 40}, False),
        (NUMBER, {"order": [], "typed": "40", "sure": "very"}, False),
        (MATCH, {"order": mixed, "chosen": [0, 4, 8]}, True),
        (MATCH, {"order": mixed, "chosen": [0, 1]}, False),
        (MATCH, {"order": mixed, "chosen": [9]}, False),
        (MATCH, {"order": list(range(9))[::-1], "chosen": []}, False),
    ]
    for item, given, fits in tried:
        answer = {"item": item, **sound, **given}
        draft = {"format": "basinside/draft/1", "topic": "kinds", "at": 0, "items": [answer]}
        told = page.evaluate(
            "([text, items]) => Basinside.sheetText.readDraft(text, 'kinds', items)",
            [json.dumps(draft), data()["items"]],
        )
        found = next(each for each in told["answers"] if each["item"] == item)
        assert (found == answer) is fits, (item, given)


@pytest.mark.parametrize("item", [ORDER, NUMBER, MATCH])
def test_it_fits_a_narrow_page_and_axe_finds_nothing(
    tmp_path: Path, open_page: Opener, item: str
) -> None:
    page = at(open_page, tmp_path, item, size=(320, 640))

    def look() -> None:
        assert page.evaluate("() => document.scrollingElement.scrollWidth") == 320
        found = page.evaluate(RUN_AXE, TAGS)
        assert [each["id"] for each in found["violations"]] == []
        small = page.evaluate(
            "names => [...document.querySelectorAll(names)]"
            ".map(each => each.getBoundingClientRect().height).filter(height => height < 44)",
            ".self-test button, .self-test select, .number-field input, .sure label",
        )
        assert small == []

    page.evaluate(AXE)
    look()
    if item == ORDER:
        page.get_by_role("button", name=re.compile("^Down ")).first.click()
    elif item == NUMBER:
        page.get_by_label("Your number, in min").fill("20")
    else:
        for name in ("The tip", "The body", "The cap"):
            page.get_by_label(name).select_option("Steam")
    check(page)
    look()


def test_without_a_script_what_is_asked_reads_and_the_answer_waits() -> None:
    asked = [each for each in spot().desk.content.items() if each.topic == "kinds"]
    order, number, match = self_test_view(spot(), "kinds", asked).questions

    def said(prose: Any) -> str:
        return "".join(span.text for span in prose)

    assert order.order is not None
    assert [said(each) for each in order.order.mixed] == sorted(
        [*RIGHT, "Write it down"], key=str.casefold
    )
    assert [said(each) for each in order.order.lines] == [*RIGHT, "Write it down"]
    assert number.amount is not None
    assert number.amount.ask == "Answer with a number in min."
    assert said(number.amount.right) == "40\u00a0min"
    assert match.match is not None
    assert [said(each) for each in match.match.rights] == ["Brush", "Chlorine", "Steam"]
    assert not (order.options or number.options or match.options)
