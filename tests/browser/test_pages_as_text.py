"""What every file of the built demo handbook must hold, read without a browser."""

from pathlib import Path
from urllib.parse import unquote

from tests import built
from tests.browser import parsed

# What a page opened from disk needs, and not more (reasons: decision 5 of the architecture).
ALLOWED = {
    "default-src": {"'none'"},
    "script-src": {"'self'"},
    "style-src": {"'self'"},
    "img-src": {"'self'", "data:", "blob:"},
    "font-src": {"'self'", "data:"},
    "frame-src": {"'self'"},
    "worker-src": {"blob:"},
    "media-src": {"'self'"},
    "connect-src": {"'none'"},
    "form-action": {"'none'"},
    "base-uri": {"'none'"},
    "object-src": {"'none'"},
    "require-trusted-types-for": {"'script'"},
    "trusted-types": {"'none'"},
}
DEMANDED = {name for name, sources in ALLOWED.items() if sources == {"'none'"}} | {
    "script-src",
    "style-src",
    "require-trusted-types-for",
}


def test_every_page_parses_without_an_error(built_demo: Path) -> None:
    wrong = {page.name: parsed.parse(page).errors for page in built.pages(built_demo)}
    assert not {name: errors for name, errors in wrong.items() if errors}


def test_nothing_names_a_host_to_load_from_or_go_to(built_demo: Path) -> None:
    wrong = []
    for page in built.pages(built_demo):
        for where, address in parsed.addresses(parsed.parse(page)):
            if parsed.leads_elsewhere(address):
                wrong.append(f"{page.name}: {where} {address}")
    for sheet in [*built_demo.rglob("*.css"), *built_demo.rglob("*.svg")]:
        for where, address in parsed.css_addresses(sheet.name, sheet.read_text(encoding="utf-8")):
            if parsed.leads_elsewhere(address):
                wrong.append(f"{where}: {address}")
    assert not wrong


def test_every_link_inside_the_folder_leads_somewhere(built_demo: Path) -> None:
    trees = {page: parsed.parse(page) for page in built.pages(built_demo)}
    ids = {page: {e.get("id") for e in tree.elements()} for page, tree in trees.items()}
    wrong = []
    for page, tree in trees.items():
        for where, address in parsed.addresses(tree):
            if address.startswith(("data:", "blob:")):
                continue
            place, _, fragment = address.partition("#")
            target = (page.parent / unquote(place.partition("?")[0])).resolve() if place else page
            if not target.is_file() or not target.is_relative_to(built_demo.resolve()):
                wrong.append(f"{page.name}: {where} {address}: no such file in the folder")
            elif fragment and target in ids and unquote(fragment) not in ids[target]:
                wrong.append(f"{page.name}: {where} {address}: no such place on the page")
    assert not wrong


def test_every_page_has_the_content_policy(built_demo: Path) -> None:
    wrong = []
    for page in built.pages(built_demo):
        policy = parsed.policy(parsed.parse(page))
        wrong += [f"{page.name}: {name} is missing" for name in sorted(DEMANDED - policy.keys())]
        for name, sources in policy.items():
            more = sources - ALLOWED.get(name, set())
            if more or name not in ALLOWED:
                wrong.append(f"{page.name}: {name} allows {sorted(more)}")
    assert not wrong


def test_no_page_holds_script_or_style_of_its_own(built_demo: Path) -> None:
    wrong = []
    for page in built.pages(built_demo):
        for element in parsed.parse(page).elements():
            tag = parsed.local(element.tag)
            handlers = [name for name in element.attrib if name.lower().startswith("on")]
            if tag == "style" or "style" in element.attrib or handlers:
                wrong.append(f"{page.name}: <{tag}> {sorted(element.attrib)}")
            kind = element.get("type", "")
            if tag == "script" and not element.get("src") and kind != "application/json":
                wrong.append(f"{page.name}: a script of type {kind!r} without a file")
            if tag == "script" and (element.get("integrity") or kind == "module"):
                wrong.append(f"{page.name}: a script that no browser runs from disk")
            if tag == "meta" and element.get("http-equiv", "").lower() == "refresh":
                wrong.append(f"{page.name}: a page that goes elsewhere by itself")
            if tag == "a" and element.get("href", "").strip().lower().startswith("javascript:"):
                wrong.append(f"{page.name}: a link that runs a script")
    assert not wrong


def test_the_live_reload_of_preview_is_in_no_file(built_demo: Path) -> None:
    wrong = []
    for name, content in built.files(built_demo).items():
        if name.endswith((".html", ".js")) and (
            b"livereload" in content or b"unsafe-inline" in content
        ):
            wrong.append(name)
    assert not wrong
