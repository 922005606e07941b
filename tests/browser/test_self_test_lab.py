"""The self-test alone: by keyboard, over a reload, into a file, and where nothing can be kept."""

import json
import re
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Dialog, Page, expect

from basinside.model.attempt import Attempt
from tests.browser import script_lab
from tests.browser.driven import Driven
from tests.conftest import Opener

pytestmark = pytest.mark.browser


def an_item(name: str, options: list[tuple[str, bool, bool]], **more: Any) -> dict[str, Any]:
    """A question; an option is (text, right, unsafe)."""
    keys = [n for n, option in enumerate(options) if option[1]]
    kind = more.pop("kind", "choice")
    critical = more.pop("critical", False)
    return {
        "item": name,
        "kind": kind,
        "critical": critical,
        "stem": [f"What about {name}, for ", {"text": "20 min", "value": "1200 s"}, "?"],
        "options": [
            {"text": [text], "because": [f"Because of {text}."], "right": right, "unsafe": unsafe}
            for text, right, unsafe in options
        ],
        "plan": {
            "item": name,
            "critical": critical,
            "worth": 60,
            "options": len(options),
            "points": {"kind": "plus-minus", "keys": keys}
            if kind == "multiple"
            else {"kind": "all-or-none"},
            "pass_all": [{"has": n} if n in keys else {"hasnt": n} for n in range(len(options))],
            "fail_any": [{"has": n} for n, option in enumerate(options) if option[2]],
        },
        "lead": [{"href": f"steps.html#{name}", "text": f"step {name}"}],
        **more,
    }


ITEMS = [
    an_item(
        "one",
        [("rinse", True, False), ("wait", False, False), ("skip", False, True)],
        critical=True,
        situation=["The basin is empty."],
    ),
    an_item(
        "two",
        [("gloves", True, False), ("apron", True, False), ("rings", False, False)],
        kind="multiple",
    ),
    an_item("three", [("yes", False, False), ("no", True, False)], kind="scenario"),
]
TEST = {"topic": "cleaning", "items": ITEMS}
BODY = script_lab.place("self-test", "self-test")


def lay(folder: Path, *, store: bool = True, items: list[dict[str, Any]] = ITEMS) -> Path:
    data = {"self-test": {**TEST, "items": items}}
    return script_lab.lay(folder, {"a.html": (BODY, data)}, store=store) / "a.html"


def choose_code(page: Page, code: str = "N-014") -> None:
    if page.locator(".staff-code summary").count():
        page.locator(".staff-code summary").click()
    page.locator(".staff-code button").first.click()
    page.locator(".staff-code input").fill(code)
    page.keyboard.press("Enter")


def pick(page: Page, *texts: str) -> None:
    for text in texts:
        page.get_by_label(text, exact=True).check()


def kept(page: Page) -> None:
    expect(page.get_by_text("Kept on this device for N-014.")).to_be_visible()


def test_whole_by_keyboard_alone(tmp_path: Path, open_page: Opener) -> None:
    page = open_page(lay(tmp_path))
    page.locator("h1").evaluate("(h) => { h.tabIndex = -1; h.focus(); }")

    def tab_to(selector: str) -> None:
        for _ in range(30):
            page.keyboard.press("Tab")
            if page.evaluate("(s) => document.activeElement.matches(s)", selector):
                return
        raise AssertionError(f"the keyboard does not reach {selector}")

    def focused() -> str:
        return str(page.evaluate("() => document.activeElement.innerText"))

    shown = page.locator(".picks label").all_inner_texts()
    tab_to("input[type=radio]")
    for _ in range(shown.index("skip")):
        page.keyboard.press("ArrowDown")
    if shown.index("skip") == 0:
        page.keyboard.press("Space")
    assert page.get_by_label("skip").is_checked()
    page.keyboard.press("Enter")  # checks: the form has one way to go on
    assert "unsafe" in focused()
    reasons = page.locator(".because").all_inner_texts()
    assert len(reasons) == len(shown)
    for text, reason in zip(shown, reasons, strict=True):
        assert f"Because of {text}." in reason
    assert "Unsafe, and you chose it." in reasons[shown.index("skip")]
    assert page.get_by_role("link", name="step one").get_attribute("href") == "steps.html#one"
    tab_to("button.first")
    page.keyboard.press("Enter")
    assert focused() == "Question 2 of 3"
    for text in ("gloves", "apron"):
        tab_to(f"input[value='{page.locator('.picks label').all_inner_texts().index(text)}']")
        page.keyboard.press("Space")
        page.locator("h2").focus()
    page.locator("h2").focus()
    tab_to("button[type=submit]")
    page.keyboard.press("Space")
    assert focused().startswith("Your answer is right.")

    tab_to("button:last-child")
    page.keyboard.press("Enter")
    assert focused() == "Before you finish"
    assert page.get_by_text("Questions without an answer: 1").is_visible()
    assert "No answer yet" in page.locator(".over li").first.inner_text()
    tab_to(".review button.first")
    page.keyboard.press("Enter")
    assert focused() == "What to repeat"
    assert page.get_by_text("Right: 1 of 3").is_visible()
    whys = page.locator(".repeat li b").all_inner_texts()
    assert [whys[0], whys[2]] == ["You chose an unsafe answer.", "Not answered."]


def test_an_answer_is_asked_for_before_it_is_checked(tmp_path: Path, open_page: Opener) -> None:
    page = open_page(lay(tmp_path))
    page.get_by_role("button", name="Check my answer").click()
    assert page.get_by_role("status").filter(has_text="Choose an answer first.").is_visible()
    assert page.locator(".because").count() == 0


def test_values_are_data_and_text_is_never_markup(tmp_path: Path, open_page: Opener) -> None:
    hostile = an_item("x", [("<b id=bad>a</b>", True, False), ("</script>", False, False)])
    page = open_page(lay(tmp_path, items=[hostile]))
    assert page.locator("data[value='1200 s']").first.inner_text() == "20 min"
    assert page.get_by_text("<b id=bad>a</b>", exact=True).is_visible()
    assert page.locator("#bad").count() == 0


def test_progress_is_kept_for_a_staff_code_and_for_nobody_else(
    tmp_path: Path, open_page: Opener
) -> None:
    page = open_page(lay(tmp_path))
    pick(page, "rinse")
    choose_code(page, "n 014")
    kept(page)
    page.get_by_role("button", name="Check my answer").click()
    shown = page.locator(".picks label").all_inner_texts()
    page.get_by_role("button", name="Next question").click()
    pick(page, "apron", "rings")
    kept(page)
    page.reload()
    assert page.get_by_text("Staff code N-014").is_visible()
    expect(page.get_by_role("heading", name="Question 2 of 3")).to_be_visible()
    expect(page.get_by_label("apron")).to_be_checked()
    assert not page.get_by_label("gloves").is_checked()
    page.get_by_role("button", name="1, checked").click()
    assert page.locator(".picks label").all_inner_texts() == shown

    page.locator(".staff-code summary").click()
    page.get_by_role("button", name="I am done here").click()
    assert page.locator("input:checked").count() == 0
    choose_code(page, "B-77")
    expect(page.get_by_role("button", name="1, not answered")).to_be_visible()
    choose_code(page)
    expect(page.get_by_role("button", name="1, checked")).to_be_visible()

    page.on("dialog", lambda dialog: dialog.accept())
    page.locator(".staff-code summary").click()
    page.get_by_role("button", name="Delete what this device keeps for N-014").click()
    expect(page.get_by_role("button", name="1, not answered")).to_be_visible()
    page.reload()
    expect(page.get_by_role("button", name="1, not answered")).to_be_visible()


def test_a_kept_text_is_a_strangers_text(tmp_path: Path, open_page: Opener) -> None:
    """Any page on the computer can write into our drafts."""
    address = lay(tmp_path)
    page = open_page(address)
    good = {"item": "two", "order": [2, 0, 1], "chosen": [0, 1], "checked": False, "seconds": 3}
    forged = {
        "format": "basinside/draft/1",
        "topic": "cleaning",
        "at": 99,
        "items": [
            {"item": "one", "order": [0, 0, 1], "chosen": [7], "checked": "yes"},
            {**good, "changes": 1},
            {**good, "item": "three", "order": [1, 0], "changes": 0},
        ],
    }
    texts = ["{", "[]", "null", '{"format": "basinside/draft/1", "items": 3}', json.dumps(forged)]
    for text in texts:
        answers = page.evaluate(
            "([text, items]) => Basinside.sheetText.readDraft(text, 'cleaning', items)",
            [text, ITEMS],
        )
    assert answers["at"] == 0
    assert [each["chosen"] for each in answers["answers"]] == [[], [0, 1], []]
    assert sorted(answers["answers"][0]["order"]) == [0, 1, 2]


def test_a_second_window_does_not_overwrite(tmp_path: Path, open_page: Opener) -> None:
    address = lay(tmp_path)
    first = open_page(address)
    choose_code(first)
    pick(first, "rinse")
    kept(first)
    second = first.context.new_page()
    second.goto(address.as_uri())
    choose_code(second)
    expect(second.get_by_label("rinse")).to_be_checked()
    pick(second, "wait")
    kept(second)
    pick(first, "skip")
    expect(first.get_by_text("is open for N-014 in another window")).to_be_visible()
    second.reload()
    expect(second.get_by_label("wait")).to_be_checked()


def test_the_saved_attempt_is_an_attempt_without_scores(tmp_path: Path, open_page: Opener) -> None:
    page = open_page(lay(tmp_path))
    shown = page.locator(".picks label").all_inner_texts()
    pick(page, "wait", "rinse")
    page.get_by_role("button", name="Next question").click()
    both = page.locator(".picks label").all_inner_texts()
    pick(page, "gloves", "rings")
    page.get_by_role("button", name="Look over my answers").click()
    page.get_by_role("button", name="Finish").click()
    page.get_by_role("button", name="Save my attempt to a file").click()
    assert page.get_by_text("Give your staff code first").is_visible()
    page.locator(".staff-code input").fill("N-014")
    page.keyboard.press("Enter")
    with page.expect_download() as coming:
        page.get_by_role("button", name="Save my attempt to a file").click()
    today = page.evaluate("() => Basinside.day(new Date())")
    assert coming.value.suggested_filename == f"highfell-cleaning-n-014-{today}.attempt.json"
    text = coming.value.path().read_text(encoding="utf-8")
    attempt = Attempt.from_plain(json.loads(text))
    assert (attempt.handbook, attempt.edition, attempt.kind, attempt.id) == (
        "highfell", "2026.2", "self-test", "cleaning"
    )  # fmt: skip
    assert (attempt.staff_code, attempt.date, attempt.language) == ("N-014", today, "en")
    assert not set(json.loads(text)) - set(Attempt.model_fields)
    one, two, three = attempt.items
    assert one.chosen == (shown.index("rinse"),)
    assert [ITEMS[0]["options"][p]["text"][0] for p in one.order or ()] == shown
    assert one.changes == 1
    assert two.chosen == tuple(sorted([both.index("gloves"), both.index("rings")]))
    assert three.chosen is None
    page.locator(".saved summary").click()
    assert page.locator("textarea").input_value() == text


def test_without_a_place_to_keep_it_says_so_and_works(tmp_path: Path, open_page: Opener) -> None:
    page = open_page(lay(tmp_path, store=False))
    open_page.complaints.clear()  # the browser itself logs that the frame's file is missing
    pick(page, "rinse")
    choose_code(page)
    banner = page.get_by_role("status").filter(has_text="This browser does not keep answers.")
    expect(banner).to_be_visible(timeout=8000)
    page.get_by_role("button", name="Check my answer").click()
    assert page.get_by_text("Your answer is right.").is_visible()
    asked: list[str] = []

    def leave(dialog: Dialog) -> None:
        asked.append(dialog.type)
        dialog.accept()

    page.on("dialog", leave)
    page.reload()
    assert asked == ["beforeunload"]
    open_page.complaints.clear()


def test_a_failing_component_leaves_the_page_readable(tmp_path: Path, open_page: Opener) -> None:
    body = '<section data-component="self-test"><p>As text.</p></section>' + BODY
    folder = script_lab.lay(tmp_path, {"a.html": (body, {"self-test": {"items": None}})})
    page = open_page(folder / "a.html")
    assert page.get_by_text("As text.").is_visible()
    assert any("component failed: self-test" in each for each in open_page.complaints)
    open_page.complaints.clear()


def test_a_framed_page_stops(tmp_path: Path, open_page: Opener) -> None:
    lay(tmp_path)
    (tmp_path / "outer.html").write_text('<!doctype html><iframe src="a.html"></iframe>')
    page = open_page(tmp_path / "outer.html")
    frame = page.frames[1]
    assert frame.evaluate("() => document.documentElement.childNodes.length") == 0


def test_the_store_frame_answers_only_its_parent_and_only_our_keys(
    tmp_path: Path, open_page: Opener
) -> None:
    page = open_page(lay(tmp_path))
    replies = page.evaluate(
        """async () => {
          const store = await Basinside.store();
          const tried = [];
          for (const key of ['other', 'hb:highfell:2026.2:N-014:', 'hb:highfell:2026.2:Anna:x']) {
            tried.push(await store.get(key).then(() => 'answered', () => 'refused'));
          }
          const key = Basinside.storeKey('N-014', 'x');
          tried.push(await store.put(key, 'a', null), await store.put(key, 'b', null));
          tried.push(await store.get(key), store.works);
          return tried;
        }"""
    )
    assert replies == ["refused", "refused", "refused", True, False, "a", True]


def test_the_store_frame_hears_nobody_beside_it(tmp_path: Path, open_page: Opener) -> None:
    page = open_page(lay(tmp_path))
    (tmp_path / "beside.html").write_text("<!doctype html><title>beside</title>")
    key = "hb:highfell:2026.2:N-014:x"
    page.evaluate("() => Basinside.store()")
    page.evaluate(
        """() => new Promise((done) => {
          const frame = document.createElement('iframe');
          frame.src = 'beside.html';
          frame.addEventListener('load', done);
          document.body.append(frame);
        })"""
    )
    beside = next(each for each in page.frames if each.url.endswith("beside.html"))
    asked = {"protocol": "basinside/store/1", "id": 1, "deed": "put", "key": key, "value": "x"}
    beside.evaluate("(a) => parent.frames[0].postMessage(a, '*')", {**asked, "was": None})
    page.wait_for_timeout(200)
    assert page.evaluate("async (key) => (await Basinside.store()).get(key)", key) is None


def test_either_browser_keeps_drafts_for_every_page_of_the_folder(
    tmp_path: Path, any_browser: Driven
) -> None:
    lay(tmp_path)
    script_lab.lay(tmp_path, {"b.html": ("", {})})
    put = "const s = await Basinside.store(); return [s.works, await s.put(args[0], 'x', null)];"
    key = "hb:highfell:2026.2:N-014:a"
    any_browser.go((tmp_path / "a.html").as_uri())
    assert any_browser.run(put, key) == [True, True]
    any_browser.go((tmp_path / "b.html").as_uri())
    assert any_browser.run("return (await Basinside.store()).get(args[0]);", key) == "x"
    assert any_browser.run(
        "const s = await Basinside.store(); await s.clear(args[0]); return s.get(args[1]);",
        "hb:highfell:2026.2:N-014:",
        key,
    ) is None  # fmt: skip


def test_every_phrase_that_scripts_name_has_words() -> None:
    known = script_lab.phrases()
    source = script_lab.script()
    named = set(re.findall(r"say\(\s*'([a-z0-9.-]+)'", source))
    named |= set(
        re.findall(r"'((?:self-test|staff-code|save|capability|examine)\.[a-z-]+)'", source)
    )
    assert len(named) > 50
    assert named <= set(known)


def test_the_phone_does_not_scroll_sideways(tmp_path: Path, open_page: Opener) -> None:
    page = open_page(lay(tmp_path), size=(320, 640))
    pick(page, "skip")
    page.get_by_role("button", name="Check my answer").click()
    assert page.evaluate("() => document.scrollingElement.scrollWidth") == 320
