"""Words only in views; no way into the page for text that is markup."""

import re

import pytest

from tests.house import words
from tests.house.source_files import THEME, named, ours

# Each makes markup or code of text, or asks for what a page from disk may not have.
NEVER_IN_SCRIPTS = re.compile(
    r"\b(innerHTML|outerHTML|insertAdjacentHTML|setHTMLUnsafe|setHTML|createContextualFragment"
    r"|DOMParser|srcdoc|eval|execScript|importScripts|XMLHttpRequest|WebSocket|EventSource"
    r"|sendBeacon|createPolicy|SharedWorker|serviceWorker)\b"
    r"|\bdocument\s*\.\s*write(ln)?\b|\bnew\s+Function\b|\bFunction\s*\(|\bfetch\s*\(|\bimport\b|\bexport\b"
    r"|\bset(Timeout|Interval)\s*\(\s*['\"`]|createElement\(\s*['\"`]script"
)
NEVER_IN_TEMPLATES = re.compile(
    r"\|\s*safe\b|\bautoescape\s+false|<style|\bstyle=|\son[a-z]+=|integrity=|type=\"module\""
    r"|https?://(?!www\.w3\.org/)",
    re.IGNORECASE,
)


def test_templates_hold_no_word() -> None:
    templates = list(ours(".html", below=THEME))
    assert templates
    found = [
        f"{named(path)}: {said}"
        for path in templates
        for said in words.in_template(path.read_text(encoding="utf-8"))
    ]
    assert found == []


def test_scripts_hold_no_sentence() -> None:
    found = [
        f"{named(path)}: {said}"
        for path in ours(".js", below=THEME)
        for said in words.in_script(path.read_text(encoding="utf-8"))
    ]
    assert found == []


def test_scripts_make_no_markup_of_text_and_ask_for_nothing() -> None:
    found = []
    for path in ours(".js", below=THEME):
        code = words.code_alone(path.read_text(encoding="utf-8"))
        found += [f"{named(path)}: {m[0]}" for m in NEVER_IN_SCRIPTS.finditer(code)]
    assert found == []


def test_templates_escape_and_hold_no_script_or_style_of_their_own() -> None:
    found = []
    for path in ours(".html", below=THEME):
        source = path.read_text(encoding="utf-8")
        found += [f"{named(path)}: {m[0]}" for m in NEVER_IN_TEMPLATES.finditer(source)]
    assert found == []


def test_sheets_load_nothing_and_hold_no_word() -> None:
    found = []
    for path in ours(".css", below=THEME):
        sheet = re.sub(r"/\*.*?\*/", "", path.read_text(encoding="utf-8"), flags=re.DOTALL)
        loads = re.findall(r"@import|@font-face|url\(\s*[\"']?(?!data:|#)[^)]*", sheet)
        spoken = re.findall(r"content:\s*[\"'][^\"']*[^\W\d_]{2,}[^\"']*[\"']", sheet)
        found += [f"{named(path)}: {said}" for said in [*loads, *spoken]]
    assert found == []


@pytest.mark.parametrize(
    "source",
    [
        "<p>Rinse</p>",
        '<img alt="a basin">',
        '<button aria-label="Save">{{ view.save }}</button>',
        '{{ heading("Have ready.") }}',
        "{% set words = 'Nothing saved here' %}",
        "<p>{{ view.count }}\n of {{ view.all }}</p>",
        '<meta name="description" content="a handbook">',
    ],
)
def test_a_word_in_a_template_is_found(source: str) -> None:
    assert len(words.in_template(source)) == 1


@pytest.mark.parametrize(
    "source",
    [
        '<p class="lead big">{{ view.text }} · {{ view.more }}</p>',
        '{%- from "components/text/macro.html" import prose -%}{# Why it is so. #}',
        '<meta name="viewport" content="width=device-width, initial-scale=1">',
        '{{ facts(view.facts, "tight small") }}',
        '<script type="application/json" id="{{ a }}">{{ view.json }}</script>',
    ],
)
def test_a_template_without_words_is_not(source: str) -> None:
    assert words.in_template(source) == []


@pytest.mark.parametrize(
    "script",
    [
        "say('Saved to a file');",
        "const a = `${n} questions left`;",
        'x = /\'/; show("Not saved yet")',
        "node.textContent = 'Choose one';",
    ],
)
def test_a_sentence_in_a_script_is_found(script: str) -> None:
    assert len(words.in_script(script)) == 1


@pytest.mark.parametrize(
    "script",
    [
        "'use strict'; // it's a remark\n/* don't mind */",
        "const name = 'AES-GCM', kind = 'application/json';",
        "root.querySelectorAll('main details summary')",
        "throw new Error('no such component: ' + name + ' in page')",
        "console.error('component failed to start', name)",
        "say(phrases['self-test.saved'])",
        "const found = text.match(/say 'two words'/);",
    ],
)
def test_a_script_without_sentences_is_not(script: str) -> None:
    assert words.in_script(script) == []


@pytest.mark.parametrize(
    "script",
    [
        "a.innerHTML = b",
        "document.write(b)",
        "new Function(b)",
        "eval(b)",
        "import('./b.js')",
        "new DOMParser()",
        "a.insertAdjacentHTML(b, c)",
        "fetch (b)",
    ],
)
def test_a_way_in_is_found(script: str) -> None:
    assert NEVER_IN_SCRIPTS.search(words.code_alone(script))


def test_a_remark_about_a_way_in_is_none() -> None:
    assert not NEVER_IN_SCRIPTS.search(
        words.code_alone("// no innerHTML here\n/* nor eval */ a();")
    )
