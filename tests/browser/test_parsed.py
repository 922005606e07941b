"""The reader of pages finds what the tests of every page look for."""

from pathlib import Path

import pytest

from tests.browser import parsed


def read(folder: Path, text: str) -> parsed.Parsed:
    path = folder / "page.html"
    path.write_text(text, encoding="utf-8")
    return parsed.parse(path)


def test_a_sound_page_has_no_errors(tmp_path: Path) -> None:
    text = "<!doctype html><html lang=en><head><title>a</title></head><body><p>b</p></body></html>"
    assert read(tmp_path, text).errors == ()


@pytest.mark.parametrize("wrong", ["<p>a</div>", "<p a=1 a=2>", "<table><p>x</p></table>"])
def test_a_broken_page_has_errors(tmp_path: Path, wrong: str) -> None:
    assert read(tmp_path, f"<!doctype html><title>a</title>{wrong}").errors


def test_addresses_are_found_wherever_they_hide(tmp_path: Path) -> None:
    page = read(
        tmp_path,
        "<!doctype html><title>a</title><img srcset='//a.test/1'><a href='b.html'>b</a>"
        "<style>@import 'https://c.test/'; p { background: url( 'wss://d.test' ) }</style>"
        "<svg><use xlink:href='#e'/><image href='HTTP://f.test'/></svg>"
        "<p style='background:url(//g.test)'>",
    )
    found = [address for _, address in parsed.addresses(page)]
    assert len(found) == 7
    assert [a for a in found if not parsed.leads_elsewhere(a)] == ["b.html", "#e"]


def test_a_namespace_is_no_address(tmp_path: Path) -> None:
    page = read(tmp_path, "<!doctype html><svg xmlns='http://www.w3.org/2000/svg'></svg>")
    assert not list(parsed.addresses(page))


def test_the_policy_is_read(tmp_path: Path) -> None:
    meta = "<meta http-equiv=content-security-policy content=\"default-src 'none'; img-src a b\">"
    read_policy = parsed.policy(read(tmp_path, f"<!doctype html>{meta}<title>a</title>"))
    assert read_policy == {"default-src": {"'none'"}, "img-src": {"a", "b"}}
