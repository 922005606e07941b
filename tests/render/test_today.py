"""What the page of today brings along, and what it says without its script."""

import json
import re
from functools import cache
from typing import Any

from basinside.derive.everything import derive
from basinside.model.content import Content
from basinside.pipeline.build import open_theme
from basinside.render.site import Folder, pages
from basinside.render.views.spot import Desk, Spot
from basinside.render.views.today_data import SHIFT_HOURS, today_data
from basinside.render.views.today_phrases import TODAY
from tests.built import CHECKOUT
from tests.derive.clinic import demo, loaded
from tests.plain.clinic import base_files
from tests.render.pages_of_demo import part_of, words

LONGEST_SHIFT_HOURS = 12


def data_of(content: Content) -> dict[str, Any]:
    desk = Desk(content=content, derived=derive(content), theme=open_theme())
    return today_data(Spot(desk=desk, path="today.html"))


@cache
def demo_data() -> dict[str, Any]:
    return data_of(demo())


def made(content: Content) -> dict[str, str]:
    """Return the pages of a clinic that are asked for here, by path."""
    folder = Folder(content=content, derived=derive(content), theme=open_theme())
    return {
        each.path: each.make()
        for each in pages(folder)
        if each.path in {"today.html", "index.html"}
    }


def instrument(name: str) -> dict[str, Any]:
    found: dict[str, Any] = next(
        each for each in demo_data()["instruments"] if each["instrument"] == name
    )
    return found


def test_every_id_that_a_way_names_is_asked_for() -> None:
    data = demo_data()
    asked = {need["id"] for group in data["groups"] for need in group["needs"]}
    vessels = {each["id"] for each in data["vessels"]}
    baths = {each["route"] for each in data["baths"]}
    used: set[str] = set()
    for each in data["instruments"]:
        for way in each["ways"]:
            used.update(way["needs"])
            assert set(way["needs"]) <= asked
            assert set(way["vessels"]) <= vessels
            assert way["bath"] in {"", *baths}
            assert set(way["parts"]) <= set(each["parts"])
            assert way["minutes"] > 0
    assert used == asked  # and nothing is asked in vain


def test_each_need_is_asked_once_and_in_the_order_of_the_groups() -> None:
    groups = demo_data()["groups"]
    ids = [need["id"] for group in groups for need in group["needs"]]
    assert len(ids) == len(set(ids))
    assert [group["name"] for group in groups] == [
        "Heat", "Water", "Protection", "Strips and indicators", "Wrapping", "Containers",
        "Brushes and tools", "Chemicals",
    ]  # fmt: skip


def test_a_vessel_that_does_not_get_hot_enough_is_no_tick_and_says_why() -> None:
    data = demo_data()
    assert [each["id"] for each in data["vessels"]] == ["vessel/stovetop-adjustable"]
    (unfit,) = data["unfit"]
    assert unfit["name"].startswith("Small stovetop vessel")
    said = "".join(each if isinstance(each, str) else each["text"] for each in unfit["why"])
    assert re.search(r"^Steam, wrapped: At 2350.m its 103.kPa .* 116\.\d.°C at the most", said)
    assert re.search(r"Needed: 121.°C\. It cannot do this way here\.$", said)


def test_a_route_is_open_or_refused_and_never_both_nor_neither() -> None:
    handbook = demo().handbook
    has = handbook.clinic.has if handbook else ()
    names = {route: demo().routes[route].name for route in has}
    assert names
    for each in demo_data()["instruments"]:
        ways = {way["name"] for way in each["ways"]}
        refused = {route["name"] for route in each["refused"]}
        assert ways | refused == set(names.values())
        assert not ways & refused
        for route in each["refused"]:
            assert route["rows"]
            assert all(part and what.endswith(".") for part, what, _source in route["rows"])


def test_a_refusal_names_part_property_and_source() -> None:
    boiling = next(
        each for each in instrument("bag-mask-vinyl")["refused"] if each["name"] == "Boiling"
    )
    assert any(
        "does not stand it" in what and "§" in source for _p, what, source in boiling["rows"]
    )


def test_a_permitted_route_without_a_procedure_is_refused_in_those_words() -> None:
    (bulb,) = data_of(loaded(base_files()))["instruments"]
    (steam,) = bulb["refused"]
    assert steam["rows"] == [["This instrument", "no procedure is written for it here.", ""]]


def test_an_instrument_without_a_rule_says_whom_to_ask_or_ring() -> None:
    (bulb,) = data_of(loaded(base_files()))["instruments"]
    assert bulb["emergency"] == []
    assert bulb["ring"] == (
        "No emergency rule is written for it. Ask the infection-prevention lead."
    )
    files = dict(base_files())
    handbook = "content/handbook.yaml"
    files[handbook] = files[handbook].replace(
        b"clinic:\n",
        b"contacts:\n  - {contact: any, who: midwife, day: room 2, night: the bell}\nclinic:\n",
    )
    (bulb,) = data_of(loaded(files))["instruments"]
    assert bulb["ring"].endswith("Ring the midwife: by day room 2, by night the bell.")


def test_every_emergency_rule_is_signed() -> None:
    for each in demo_data()["instruments"]:
        assert each["emergency"], each["instrument"]
        assert all(
            "midwife in charge, 20 September 2026" in rule["by"] for rule in each["emergency"]
        )


def test_links_of_the_data_lead_to_pages_that_are_there() -> None:
    content = demo()
    there = {f"procedures/{name}.html" for name in content.procedures}
    there |= {f"instruments/{name}.html" for name in content.instruments}
    found = set(re.findall(r'"href": "([^"#]+\.html)"', json.dumps(demo_data())))
    assert found - {"values.html"} <= there
    assert len(found) > 20


def test_without_a_script_the_table_and_the_needs_are_there() -> None:
    page = made(demo())["today.html"]
    table = words(part_of(page, '<div class="matrix">', "</table>"))
    assert "Vacuum extractor with hand pump" in table
    about = derive(demo()).procedures["vacuum-extractor-soak"].about.text()
    assert f"Only cup, tubing, trap jar and trap lid about {about}".replace("\xa0", " ") in table
    assert "No does not stand it" in table
    text = words(page)
    assert "Ticking needs a script, and this browser runs none." in text
    assert "Its strip is read before each use. It is at 20 °C or more." in text
    assert "Open the sealed reserve set in cupboard 1." in text
    assert "Mucus extractor for newborns" in words(page[page.index('id="single-use"') :])


def test_a_page_and_ways_to_it_are_there_only_when_something_comes_back() -> None:
    with_ways = made(loaded(base_files()))
    assert "today.html" in with_ways
    assert with_ways["index.html"].count('href="today.html"') == 2
    files = {name: raw for name, raw in base_files().items() if "procedures" not in name}
    files = {name: raw for name, raw in files.items() if "quizzes" not in name}
    handbook = "content/handbook.yaml"
    files[handbook] = files[handbook].partition(b"posted:")[0]  # no chart of what is not there
    without = made(loaded(files))
    assert "today.html" not in without
    assert 'href="today.html"' not in without["index.html"]


def test_a_shift_is_twelve_hours_at_most() -> None:
    assert demo_data()["hours"] == SHIFT_HOURS == LONGEST_SHIFT_HOURS


def test_the_scripts_say_only_what_is_written_and_all_of_it() -> None:
    scripts = "".join(
        path.read_text(encoding="utf-8") for path in (CHECKOUT / "site_theme/js").glob("today*.js")
    )
    named = set(re.findall(r"'(today\.[a-z.-]+)'", scripts))
    begun = tuple(re.findall(r"`(today\.[a-z.-]+\.)\$\{", scripts))
    assert named <= set(TODAY)
    assert {key for key in TODAY if key not in named and not key.startswith(begun)} == set()
