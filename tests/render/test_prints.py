"""What each sheet of paper has to say, and that every log a step writes in is a sheet."""

import re

import pytest

from basinside.model.words import PRINTS_OF, PRINTS_OF_CLINIC
from basinside.render.views.prints.catalogue import KINDS
from tests.render.pages_of_demo import content, demo, pages, part_of, words

PAPERS = re.compile(r"-(log|record|tally)$")
"""What equipment that is written in is called."""


def sheet(name: str) -> str:
    return part_of(pages()[f"print/{name}.html"], '<section class="print-sheet"', "</main>")


def heads(name: str) -> list[str]:
    return [words(each).strip() for each in re.findall(r'<th scope="col">(.*?)</th>', sheet(name))]


def written_in() -> dict[str, list[str]]:
    """Return the papers that steps write in, each with its procedures."""
    found: dict[str, list[str]] = {}
    for name, procedure in content().procedures.items():
        for _stage, step in procedure.steps:
            for each in (*step.needs, *step.with_):
                if PAPERS.search(each):
                    found.setdefault(each, []).append(name)
    return found


def test_every_log_that_a_step_writes_in_is_a_sheet() -> None:
    assert {"boiling-log", "soak-log", "load-record", "test-log", "use-tally"} <= set(written_in())
    for paper, procedures in written_in().items():
        if PRINTS_OF.get(paper) == "instrument":
            wanted = {f"{paper}-{content().procedures[name].instrument}" for name in procedures}
        else:
            wanted = {paper}
        assert {name for name in wanted if f"print/{name}.html" not in pages()} == set(), paper


def test_a_handbook_may_post_what_is_printed_and_nothing_else() -> None:
    assert {*PRINTS_OF_CLINIC, *PRINTS_OF} == {*KINDS, "observation"}


def test_a_load_is_read_three_times() -> None:
    said = heads("load-record")
    assert {"kPa", "°C", "Steam steady from"} <= set(said)
    assert any(each.startswith("Tape") for each in said)
    assert any(each.startswith("TEST opened: changed?") for each in said)
    block = re.findall(r"<tbody>(.*?)</tbody>", sheet("load-record"), re.DOTALL)[0]
    lines = re.findall(r"<tr>(.*?)</tr>", block, re.DOTALL)
    assert [words(each).strip() for each in lines] == ["start", "middle", "end"]
    assert [each.count("<td>") for each in lines] == [3, 3, 3]  # clock, pressure, heat
    assert lines[0].count('<td rowspan="3">') == len(said) - 3


@pytest.mark.parametrize("log", ["soak-log", "boiling-log"])
def test_a_log_has_room_for_the_function_test(log: str) -> None:
    assert "Test every line passed" in heads(log)


def test_a_soak_says_when_its_bath_was_made() -> None:
    assert "Bath made made on: day, hour" in heads("soak-log")


def test_the_test_log_has_a_column_for_each_line_of_the_test() -> None:
    lines = content().instruments["uterine-aspirator-heatproof"].function_test
    assert [each for each in heads("test-log") if each.isdigit()] == [
        str(n) for n in range(1, len(lines) + 1)
    ]
    assert all(each.expect in words(sheet("test-log")) for each in lines)


@pytest.mark.parametrize("name", ["boiling-log", "boiling-and-gauge-card"])
def test_what_may_float_is_named(name: str) -> None:
    instruments = content().instruments.values()
    may = [
        each.name
        for each in instruments
        if each.immersion and each.immersion.boiling == "floating allowed"
    ]
    assert may
    said = words(sheet(name)).lower()
    assert [each for each in may if f"may float: {each.lower()}" not in said] == []
    assert "everything under water" not in said


def test_a_label_says_the_strength_of_the_product_and_when_it_is_too_weak() -> None:
    labels = sheet("solution-label").split('<p class="label-name">')
    glutaraldehyde = next(each for each in labels if each.startswith("<b>Glutaraldehyde"))
    assert words(glutaraldehyde).startswith(" Glutaraldehyde 2 % w/v ")
    assert "Throw away below 1.5 % w/v" in words(glutaraldehyde)
    hazards = content().agents["glutaraldehyde"].hazards
    assert [each for each in hazards if each not in words(glutaraldehyde).lower()] == []
    shown = {match for each in labels for match in re.findall(r"(0\.\d+) % avail", words(each))}
    assert {"0.1", "0.05", "0.5"} <= shown


def test_what_hurts_in_the_bath_room_stands_in_full_on_a_card() -> None:
    said = words(sheet("chemical-accident-card"))
    for name in ("vapour-breathed", "spill-aldehyde"):
        incident = content().incidents[name]
        assert incident.name in said
        assert incident.first_minute in said
        assert incident.then.split(".")[0] in said
    assert "Hangs bath room and sink 2" in said


def test_a_time_on_a_card_says_of_what_it_is() -> None:
    said = words(sheet("exposure-card"))
    assert "Shortest airing of a room after gas or vapour: 30 min." in said
    assert "Ring at once, within 1 h at the latest" in said
    assert "at once, within 1 h at the latest" in words(pages()["incidents.html"])


def test_a_mask_is_for_powder_and_the_wipe_is_from_the_bottle() -> None:
    said = words(sheet("dilution-card"))
    assert re.search(r"Wear: [^.]*mask", said) is None
    assert "Powder: also mask." in said
    wipe = said[said.index("0.05 %: chlorine wipe") : said.index("0.5 %:")]
    assert "Tablets Not from this. The least makes 0.15 %" in wipe
    assert "Powder Not from this." in wipe
    assert "tablet " not in wipe.lower()


def test_a_chart_shows_all_that_is_worn_and_whom_to_ring_for_a_chemical() -> None:
    for name, whole in demo().derived.procedures.items():
        said = words(sheet(f"wall-chart-{name}"))
        worn = {each for placed in whole.steps for each in placed.wear}
        assert [each for each in worn if each not in said.lower()] == [], name
        uses = any(placed.agent and placed.agent.first_aid for placed in whole.steps)
        assert ("Splashed by a chemical Clinical officer on duty" in said) is uses, name


def test_the_chart_of_one_model_never_lends_its_warning_to_the_other() -> None:
    proof = words(sheet("wall-chart-uterine-aspirator-heatproof-boil"))
    cold = words(sheet("wall-chart-uterine-aspirator-coldonly-soak"))
    assert "Never heat it. Do not boil it." not in proof
    assert cold.index("Never heat it. Do not boil it.") < cold.index("For the Sorrel 50.")
    assert "Looks alike, but is not done by this chart: “Uterine aspirator, heat-proof”." in cold


def test_a_chart_of_unwrapped_steam_claims_no_sterile_store() -> None:
    said = words(sheet("wall-chart-uterine-aspirator-heatproof-steam"))
    assert "Gives: sterile only when it comes out." in said
    assert "Gives: sterile." not in said
    assert "Gives: sterile." in words(sheet("wall-chart-speculum-steam"))


def test_a_visitor_is_led_to_each_sheet_that_hangs() -> None:
    page = part_of(pages()["visit.html"], 'id="posted"', "</section>")
    linked = set(re.findall(r'href="(print/[^"]+)"', page))
    handbook = content().handbook
    assert handbook is not None
    wanted = {
        f"print/{each.print}-{each.of}.html" if each.of else f"print/{each.print}.html"
        for each in handbook.posted
    }
    assert wanted == linked
    assert linked <= set(pages())


def test_a_sheet_can_be_printed_from_its_page() -> None:
    page = pages()["print/soak-log.html"]
    assert 'data-component="print-sheet"' in page
    assert "Print this sheet" in page
    assert "onclick" not in page
