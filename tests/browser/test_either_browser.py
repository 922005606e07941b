"""The Firefox of these tests treats pages from disk as a reader's does."""

from pathlib import Path

import pytest

from tests.browser.driven import Driven

pytestmark = pytest.mark.browser

FETCH = "return fetch(args[0]).then(() => 'read', () => 'refused');"


def test_a_page_from_disk_may_not_read_the_file_beside_it(
    tmp_path: Path, any_browser: Driven
) -> None:
    (tmp_path / "beside.txt").write_text("a")
    page = tmp_path / "page.html"
    page.write_text("<!doctype html><title>a page</title>")
    any_browser.go(page.as_uri())
    assert any_browser.run("return document.title;") == "a page"
    assert any_browser.run(FETCH, (tmp_path / "beside.txt").as_uri()) == "refused"
