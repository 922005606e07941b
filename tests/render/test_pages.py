"""What the pages of the demonstration handbook say, read without a browser."""

import re

import pytest

from basinside.derive.everything import derive
from basinside.load.content import load
from basinside.pipeline.build import Clinic, handbook_files, open_theme
from tests.built import CHECKOUT
from tests.render.pages_of_demo import content, demo, pages, part_of, words

CAUTIONS = (
    "The manufacturer's instructions and local policy come first.",
    "never replaces them",
    "This work can hurt people",
)
VINYL = "instruments/bag-mask-vinyl.html"


def test_every_page_says_edition_days_duty_and_cautions() -> None:
    assert len(pages()) > 20
    for path, page in pages().items():
        foot = words(part_of(page, '<footer class="foot">', "</footer>"))
        assert "Edition 2026.2 issued 1 October 2026" in foot, path
        assert "Review due 1 October 2027" in foot, path
        assert "Responsible Infection-prevention lead" in foot, path
        assert all(each in foot for each in CAUTIONS), path


def test_every_sheet_of_paper_says_edition_days_duty_and_whom_to_ring() -> None:
    for path, page in pages().items():
        strip = words(part_of(page, '<div class="paper">', "</div></dl>"))
        assert "Edition 2026.2, issued 1 October 2026" in strip, path
        assert "Review due 1 October 2027" in strip, path
        assert "Responsible Infection-prevention lead" in strip, path
        assert "Void after 1 October 2027" in strip, path
        assert "Ring " in strip, path


def test_the_way_to_help_is_on_every_page() -> None:
    for path, page in pages().items():
        up = "../" * path.count("/")
        assert f'<a class="alarm" href="{up}incidents.html">' in page, path
        assert "Demonstration" in words(part_of(page, 'class="banners"', "</section>")), path


@pytest.mark.parametrize("route", ["boil", "steam-wrapped"])
def test_a_refused_way_names_the_parts_what_they_cannot_stand_and_the_source(route: str) -> None:
    told = words(part_of(pages()[VINYL], f'id="route-{route}"', '<p class="instead">'))
    assert "Refused" in told
    assert "Bag, intake valve and mask does not stand it" in told
    assert "Instructions for Larch 200 and 240 (2024), §5" in told


def test_every_refused_way_says_what_would_do() -> None:
    refused = pages()[VINYL].count('class="refused"')
    assert refused >= 2
    assert words(pages()[VINYL]).count("What would do: chlorine bath.") == refused


def test_a_permitted_way_says_its_level_who_says_so_and_how_long() -> None:
    told = part_of(pages()[VINYL], 'id="route-chlorine-hld"', "</li></ul><h2")
    said = words(told)
    assert "Permitted" in said
    assert "it reaches: high-level disinfection." in said
    assert "Who says it reaches that IARC Screening Group" in said
    assert '<a class="to-value" href="../values.html#chlorine.hold"><data value="1200 s">' in told


@pytest.mark.parametrize("name", ["bag-mask-silicone", "bag-mask-vinyl"])
def test_an_instrument_says_the_level_that_each_contact_asks_for(name: str) -> None:
    said = words(pages()[f"instruments/{name}.html"])
    assert "high-level disinfection" in said
    for part in content().instruments[name].parts:
        assert part.shown_name in said.lower()


def test_an_item_for_one_use_has_no_way_and_says_what_to_do_with_one() -> None:
    page = pages()["instruments/mucus-extractor.html"]
    assert "Never to be used again" in words(page)
    assert "Found on the shelf, opened or used?" in words(page)
    assert 'id="route-' not in page


def test_every_value_stands_once_with_its_amount_as_data_and_its_source() -> None:
    page = pages()["values.html"]
    for name, figure in content().figures.items():
        row = part_of(page, f'id="{name}"', "</li>")
        assert f'<data value="{figure.value.base_text()}">' in row, name
        if figure.source:
            said_by = content().sources[figure.source.split(" ", 1)[0]]
            assert words(said_by.title) in words(row), name
        else:
            assert figure.basis in words(row).lower() or "common practice" in words(row), name


def test_no_page_shows_a_reference_that_was_not_filled_in() -> None:
    typed = re.compile("<code>.*?</code>")  # what an author types stands on the pages of rules
    for path, page in pages().items():
        assert "{{" not in words(typed.sub("", page)), path
        assert not re.search(r"Undefined|NoneType|object at 0x|Quantity\(", words(page)), path


def test_every_step_stands_on_its_procedures_page_with_its_anchor() -> None:
    for name, procedure in content().procedures.items():
        page = pages()[f"procedures/{name}.html"]
        for _, step in procedure.steps:
            assert page.count(f'id="{step.step}"') == 1, step.step


def test_navigation_names_only_what_is_there() -> None:
    for path, page in pages().items():
        nav = part_of(page, '<nav aria-label="Main">', "</nav>")
        for href in re.findall(r'href="([^"#]+)', nav):
            assert href.removeprefix("../") in pages(), path


def test_a_handbook_with_an_instrument_alone_offers_nothing_that_it_lacks() -> None:
    kept = ("content/handbook.yaml", "content/sources.yaml", "content/equipment.yaml")
    raw = {name: text for name, text in demo().raw.items() if name in kept}
    bare, _ = load(raw)
    clinic = Clinic(root=CHECKOUT, raw=raw, content=bare, derived=derive(bare), problems=())
    made = dict(handbook_files(clinic, open_theme()))
    start = made["index.html"]()
    assert "Test yourself" not in words(start)
    assert "Procedures" not in words(part_of(start, '<nav aria-label="Main">', "</nav>"))
    assert "Examine" in words(start)
    assert not [path for path in made if path.startswith(("procedures/", "self-tests/"))]


WAIVER = (
    "waive: [{rule: source-missing, because: The sheet is on its way., by: matron,"
    " second: night lead, on: 2026-10-02, until: 2027-03-01}]"
)
SHOWN = (
    *("Waived here", "The sheet is on its way.", "source-missing", "matron", "night lead"),
    *("2 October 2026", "1 March 2027"),
)
BOIL = "bag-mask-silicone-boil"


def waived(file: str, line: str) -> dict[str, str]:
    """Return the pages of the demo with a waiver in the entry that begins with a line."""
    raw = dict(demo().raw)
    lines = raw[file].decode().splitlines()
    found = next(n for n, each in enumerate(lines) if each.strip(" -") == line)
    begun = lines[found]
    indent = len(begun) - len(begun.lstrip(" -")) + (2 if begun.endswith(":") else 0)
    raw[file] = "\n".join(
        [*lines[: found + 1], " " * indent + WAIVER, *lines[found + 1 :]]
    ).encode()
    content, problems = load(raw)
    assert not problems
    clinic = Clinic(root=CHECKOUT, raw=raw, content=content, derived=derive(content), problems=())
    made = handbook_files(clinic, open_theme())
    return {path: make() for path, make in made if path.endswith(".html")}


@pytest.mark.parametrize(
    ("file", "line", "page"),
    [
        ("content/handbook.yaml", "handbook: highfell", "sources.html"),
        ("content/figures/boiling.yaml", "boil.hold:", "values.html"),
        ("content/instruments/bag-mask-silicone.yaml", "instrument: bag-mask-silicone",
         "instruments/bag-mask-silicone.html"),
        ("content/instruments/bag-mask-silicone.yaml", "part: bag",
         "instruments/bag-mask-silicone.html"),
        (f"content/procedures/{BOIL}.yaml", f"procedure: {BOIL}", f"procedures/{BOIL}.html"),
        (f"content/procedures/{BOIL}.yaml", "step: put-on", f"procedures/{BOIL}.html"),
        ("content/agents/chlorine.yaml", "agent: chlorine", "agents/chlorine.html"),
        ("content/routes/boil.yaml", "route: boil", "instruments/bag-mask-silicone.html"),
        ("content/incidents.yaml", "incident: sharps", "incidents.html"),
        (f"quizzes/observations/{BOIL}.yaml", f"observation: {BOIL}",
         f"print/observation-{BOIL}.html"),
        ("quizzes/questions/cleaning.yaml", "item: slick-parts", "self-tests/cleaning.html"),
    ],
)  # fmt: skip
def test_a_waiver_is_shown_on_the_page_it_concerns(file: str, line: str, page: str) -> None:
    said = words(waived(file, line)[page])
    assert [each for each in SHOWN if each not in said] == []
    assert "Waived here" not in words(pages()[page])


def test_a_waiver_at_an_item_of_an_assessment_is_on_no_page() -> None:
    made = waived("quizzes/questions/assessment-cleaning.yaml", "item: left-out-of-washing")
    assert [path for path, page in made.items() if "The sheet is on its way." in page] == []
