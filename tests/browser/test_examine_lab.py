"""The page that examines: it finds what Python finds, and says no more than it can."""

import json
from datetime import date
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page, expect

from basinside.certify.examine import examine
from basinside.certify.multikey import did_key
from basinside.certify.page_rules import page_rules
from basinside.seal.codes import root_fingerprint, word_list
from tests.browser import script_lab
from tests.browser.driven import Driven
from tests.browser.forgeries import (
    STRANGER,
    TRUST,
    Record,
    altered_records,
    signed,
    trust_lists,
)
from tests.conftest import Opener

pytestmark = pytest.mark.browser

ON = date(2026, 12, 1)
WORDS = root_fingerprint(TRUST["root"]["did"])
ASK = """async ([texts, trust, words, on]) => {
  const rules = Basinside.inlineJson('examine');
  const found = [];
  for (const text of texts) {
    const record = Basinside.readJson(text);
    const { findings, standing, signer } = await Basinside.examineRecord(
      record, { trust: trust === null ? null : Basinside.readJson(trust), words, on, rules });
    found.push([standing, signer, findings.map(({ code, verdict, data }) => {
      const { detail, ...rest } = data;
      return [code, verdict, rest];
    })]);
  }
  return found;
}"""


def lay(folder: Path, trust: Record | None = TRUST) -> Path:
    data = {"trust": trust, "examine": page_rules(word_list())}
    pages = {"a.html": (script_lab.place("examine", "trust"), data)}
    return script_lab.lay(folder, pages) / "a.html"


def one_of_each_kind() -> list[Record]:
    """Records that between them are found to be everything a record can be found to be."""
    seen: set[tuple[str, ...]] = set()
    kept = []
    for record in altered_records():
        found = examine(
            record, trust=TRUST, root_words=WORDS, fingerprint=root_fingerprint, on=ON
        ).findings
        kinds = {(each.code, each.verdict, each.data.get("reason", "")) for each in found}
        if kinds - seen:
            kept.append(record)
        seen |= kinds
    return kept


def by_python(record: Record, trust: object, words: str | None, on: date | None) -> list[object]:
    found = examine(record, trust=trust, root_words=words, fingerprint=root_fingerprint, on=on)
    findings = [
        [each.code, str(each.verdict), {k: v for k, v in each.data.items() if k != "detail"}]
        for each in found.findings
    ]
    return [str(found.standing), found.signer, findings]


def differing(
    page: Page, records: list[Record], trust: object, words: str | None, on: date | None
) -> list[Any]:
    ours = [by_python(each, trust, words, on) for each in records]
    texts = [json.dumps(each, ensure_ascii=False) for each in records]
    trusted = None if trust is None else json.dumps(trust)
    theirs = page.evaluate(ASK, [texts, trusted, words, on.isoformat() if on else None])
    return [
        (n, texts[n][:200], one, other)
        for n, (one, other) in enumerate(zip(ours, theirs, strict=True))
        if one != other
    ][:3]


def test_the_page_finds_what_python_finds(tmp_path: Path, open_page: Opener) -> None:
    page = open_page(lay(tmp_path))
    records = altered_records()
    assert len(records) > 150
    assert differing(page, records, TRUST, WORDS, ON) == []
    standings = {str(by_python(each, TRUST, WORDS, ON)[0]) for each in records}
    assert standings == {"fails", "demonstration", "confirmed"}


def test_the_page_judges_the_trust_list_as_python_does(tmp_path: Path, open_page: Opener) -> None:
    page = open_page(lay(tmp_path))
    records = [signed(), signed("S-03"), signed("X-99")]
    other_words = root_fingerprint(did_key(STRANGER.public_key()))
    for trust in trust_lists():
        for words in (None, WORDS, other_words):
            assert differing(page, records, trust, words, ON) == []
    for on in (None, date(2026, 11, 19), date(2027, 11, 19), date(2027, 11, 20)):
        assert differing(page, records, TRUST, None, on) == []


def examined(page: Page, record: Record | str, words: str = "") -> None:
    text = record if isinstance(record, str) else json.dumps(record, ensure_ascii=False)
    page.get_by_label("Or paste the text of the record").fill(text)
    page.get_by_label("Six words of the root fingerprint").fill(words)
    page.get_by_label("Judge on this day").fill(ON.isoformat())
    page.get_by_role("button", name="Examine the record").click()


def test_a_good_record_is_said_to_be_no_more_than_it_is(tmp_path: Path, open_page: Opener) -> None:
    page = open_page(lay(tmp_path))
    examined(page, signed())
    heading = page.locator(".report h2")
    expect(heading).to_have_text("Signed by a listed person, according to this folder")
    assert page.evaluate("() => document.activeElement.matches('.report h2')")
    assert page.get_by_text("This page cannot vouch for its own folder.").is_visible()
    assert page.locator("li[data-code=who-sat]").is_visible()
    examined(page, signed(), " ".join(word[:4].upper() for word in WORDS.split()))
    expect(heading).to_have_text("Signed by a listed person, and the six words agree")
    assert page.get_by_text("This page cannot vouch for its own folder.").is_visible()
    for record in one_of_each_kind():
        examined(page, record)
        expect(page.locator("li[data-code=revoked]")).to_be_visible()
        said = page.locator(".report").inner_text()
        assert "examine." not in said
        assert "{" not in said


def test_a_forged_record_fails_in_words(tmp_path: Path, open_page: Opener) -> None:
    page = open_page(lay(tmp_path))
    forged = signed()
    forged["credentialSubject"]["identifier"][0]["identityHash"] = "N-015"
    examined(page, forged)
    expect(page.locator(".report h2")).to_have_text("This record cannot be relied on")
    assert "It was altered" in page.locator("li[data-code=signature]").inner_text()


def test_a_file_is_read_and_a_bad_one_is_refused(tmp_path: Path, open_page: Opener) -> None:
    page = open_page(lay(tmp_path))
    file = tmp_path / "n-014.record.json"
    file.write_text(json.dumps(signed()), encoding="utf-8")
    page.get_by_label("Record file").set_input_files(file)
    expect(page.locator(".report h2")).to_contain_text("according to this folder")
    status = page.get_by_role("status")
    for data, said in (
        (b"\xff\xfe", "The file is not text."),
        (b"x" * 1_100_000, "The file is too large to be a record."),
        (b'{"a": 1,\n "a": 2}', "The same member stands twice."),
        (b"[]", "This is not a record."),
    ):
        file.write_bytes(data)
        page.get_by_label("Record file").set_input_files(file)
        expect(status).to_contain_text(said)
        assert page.locator(".report h2").count() == 0
    examined(page, signed(), "apple")
    expect(status).to_contain_text(
        "not a word of our list" if "apple" not in word_list() else "six"
    )
    examined(page, signed(), WORDS.split()[0])
    expect(status).to_contain_text("you typed 1")
    examined(page, "")
    expect(status).to_contain_text("Choose a record file")


def test_either_browser_does_the_arithmetic(tmp_path: Path, any_browser: Driven) -> None:
    any_browser.go(lay(tmp_path).as_uri())
    forged = {**signed(), "name": "x"}
    records = [signed(), forged]
    trust = json.dumps(TRUST)
    found = any_browser.run(
        f"return ({ASK})(args);", [json.dumps(each) for each in records], trust, WORDS, str(ON)
    )
    assert found == [by_python(each, TRUST, WORDS, ON) for each in records]


def test_without_the_browsers_arithmetic_it_says_so(tmp_path: Path, open_page: Opener) -> None:
    address = lay(tmp_path)
    page = open_page(address)
    page.add_init_script("Object.defineProperty(crypto, 'subtle', { value: undefined });")
    page.goto(address.as_uri())
    assert page.get_by_text("This browser cannot check signatures.").is_visible()
