"""What is looked up: chemicals, ways, choices, words, and the page that leads to them."""

import re

from basinside.render.hazard_statements import STATEMENTS
from tests.render.pages_of_demo import content, pages, part_of, words


def test_the_reference_leads_to_every_page_of_its_kind() -> None:
    page = pages()["reference.html"]
    for path in (
        "values.html",
        "agents/index.html",
        "routes.html",
        "choices.html",
        "words.html",
        "sources.html",
        "visit.html",
        "trainer.html",
    ):
        assert f'href="{path}"' in page, path
        assert path in pages(), path
        nav = part_of(pages()[path], '<nav aria-label="Main">', "</nav>")
        assert 'aria-current="page">Reference' in nav, path


def test_every_link_inside_the_folder_leads_to_a_page_and_an_anchor_that_is_there() -> None:
    anchors = {path: set(re.findall(r'\sid="([^"]+)"', page)) for path, page in pages().items()}
    lost = []
    for path, page in pages().items():
        here = path.split("/")[:-1]
        for href in set(re.findall(r'<a [^>]*?href="([^"]+)"', page)):
            file, _, anchor = href.partition("#")
            parts = list(here) if file else path.split("/")
            for each in file.split("/") if file else ():
                parts = parts[:-1] if each == ".." else [*parts, each]
            target = "/".join(parts)
            if target not in pages() or (anchor and anchor not in anchors[target]):
                lost.append(f"{path}: {href}")
    # The self-test's own script makes the anchors of its items.
    assert [each for each in lost if "self-tests/" not in each] == []


def test_a_choice_stands_on_its_own_page_and_its_old_address_leads_there() -> None:
    for name, choice in content().choices.items():
        told = part_of(pages()["choices.html"], f'id="{name}"', "</article>")
        assert all(words(other.what.split("{{")[0]) in words(told) for other in choice.not_chosen)
        assert f'id="{name}"><a href="choices.html#{name}"' in pages()["values.html"], name
    steps = [
        (procedure, step.choice)
        for procedure in content().procedures.values()
        for _stage, step in procedure.steps
        if step.choice
    ]
    assert steps
    for procedure, asked in steps:
        page = pages()[f"procedures/{procedure.procedure}.html"]
        assert f'href="../choices.html#{asked}"' in page


def test_every_chemical_is_listed_with_its_signs_and_whether_it_is_used() -> None:
    page = pages()["agents/index.html"]
    for name, agent in content().agents.items():
        row = words(part_of(page, f'id="{name}"', "</dl>"))
        assert agent.name in row
        assert all(each in row.lower() for each in agent.hazards), name
        used = any(
            step.agent == name for each in content().procedures.values() for _s, step in each.steps
        )
        assert not used or "Not used here" not in row, name
    assert "Not used here" in words(page)


def test_a_chemicals_card_says_what_the_codes_on_its_label_mean() -> None:
    carded = {each.agent: each for each in content().agents.values() if each.statements}
    assert carded
    for name, agent in carded.items():
        said = words(pages()[f"agents/{name}.html"])
        for code in agent.statements:
            assert code in STATEMENTS, code
            assert f"{code} {STATEMENTS[code]}" in said


def test_a_chemicals_card_says_how_it_is_mixed_what_it_spoils_and_how_long_it_keeps() -> None:
    page = words(pages()["agents/chlorine.html"])
    figures = content().figures
    agent = content().agents["chlorine"]
    assert agent.stock_life
    assert agent.air_limit
    assert "Before use For the bath take one part" in page
    assert agent.harms
    assert f"What it spoils {' '.join(agent.harms.split())[:30]}" in page
    for reference in (agent.stock_life, agent.air_limit):
        value = figures[reference.figure].value
        assert f"{value.numeral()} {value.unit_text()}".replace("\N{NO-BREAK SPACE}", " ") in page
    assert all(each in page.lower() for each in agent.who_asks_first)


def test_a_way_names_each_instrument_once_as_permitted_or_refused() -> None:
    page = pages()["routes.html"]
    asked = [each for each in content().instruments.values() if each.label != "single use"]
    for route in content().routes:
        told = part_of(page, f'id="{route}"', "</section>")
        for instrument in asked:
            link = f'href="instruments/{instrument.instrument}.html#route-{route}"'
            assert told.count(link) == 1, (route, instrument.instrument)


def test_a_steam_way_says_of_each_vessel_what_it_reaches_here() -> None:
    told = words(part_of(pages()["routes.html"], 'id="steam-wrapped"', "</section>"))
    small = told[told.index("Small stovetop vessel") :]
    assert "At 2350 m its 103 kPa on the gauge give steam of 116.7 °C" in small
    assert "It cannot do this way here." in small
    large = told[told.index("Large stovetop vessel") : told.index("Small stovetop vessel")]
    assert "It can do this way." in large


def test_words_stand_in_the_order_of_the_alphabet_each_with_its_anchor() -> None:
    page = pages()["words.html"]
    shown = re.findall(r'<li id="([^"]+)"><h2>([^<]+)', page)
    assert [name for name, _ in shown] == sorted(
        content().words, key=lambda name: content().words[name].word.casefold()
    )
    for name, word in content().words.items():
        told = words(part_of(page, f'<li id="{name}">', "</li>"))
        assert all(each in told for each in word.also), name
