"""What a shift is asked for, and what each way needs of it."""

import pytest

from basinside.derive.everything import derive
from basinside.model.content import Content
from basinside.model.shift import Shift, ShiftInstrument, ShiftWay
from tests.derive.clinic import changed, demo, loaded
from tests.plain.clinic import base_files


def shift_of(content: Content) -> Shift:
    return derive(content).shift


def shown(shift: Shift, instrument: str) -> ShiftInstrument:
    return next(each for each in shift.instruments if each.instrument.instrument == instrument)


def way(content: Content, procedure: str) -> ShiftWay:
    ways = (way for each in shift_of(content).instruments for way in each.ways)
    return next(each for each in ways if each.procedure.procedure == procedure)


def small() -> Content:
    return loaded(base_files())


def test_a_way_needs_water_detergent_and_no_agent_of_its_own_bath() -> None:
    only = way(small(), "bulb-soak")
    assert only.needs == ("water/drinking", "agent/detergent", "water/boiled")
    assert only.bath == "chlorine-bath"
    assert only.vessels == ()
    assert [part.part for part in only.parts] == ["body", "tip"]


def test_equipment_of_a_step_is_asked_for_when_it_has_a_kind() -> None:
    before = "wash-basin: {name: wash basin}"
    after = changed(before, "wash-basin: {name: wash basin, kind: container}")
    assert "equipment/wash-basin" not in way(small(), "bulb-soak").needs
    assert "equipment/wash-basin" in way(after, "bulb-soak").needs
    assert [each.group for each in shift_of(after).needs if each.id == "equipment/wash-basin"] == [
        "container"
    ]


def test_what_a_route_needs_is_asked_for_without_a_kind() -> None:
    hold = "hold: {figure: bath.hold}\n"
    after = changed(hold, f"{hold}needs: [bath-basin]\n", files=only_route())
    assert way(after, "bulb-soak").needs[0] == "equipment/bath-basin"
    groups = {each.id: each.group for each in shift_of(after).needs}
    assert groups["equipment/bath-basin"] == "other"
    assert groups["agent/detergent"] == "chemical"


def only_route() -> dict[str, bytes]:
    """Return the small clinic with the bath's hold written so that it stands there once."""
    files = dict(base_files())
    procedure = "content/procedures/bulb-soak.yaml"
    files[procedure] = files[procedure].replace(b"figure: bath.hold\n", b'figure: "bath.hold"\n')
    return files


def test_what_is_worn_is_asked_for_as_protection() -> None:
    after = changed("do: Mix the bath.", "do: Mix the bath.\n        wear: [heavy gloves, apron]")
    groups = {each.id: each.group for each in shift_of(after).needs}
    assert groups["worn/heavy-gloves"] == "protection"
    assert {"worn/heavy-gloves", "worn/apron"} <= set(way(after, "bulb-soak").needs)


@pytest.mark.parametrize(
    ("life", "days", "short"),
    [("1 day", 1, False), ("2 weeks", 14, False), ("8 h", 1, True), ("36 h", 1, False),
     ("2 months", 56, False)],
)  # fmt: skip
def test_a_life_is_counted_in_whole_days_on_the_safe_side(
    life: str, days: int, short: bool
) -> None:
    files = dict(base_files())
    figures = "content/figures/all.yaml"
    figure = f"  bath.life: {{is: life, value: {life}, basis: common practice}}\nchoices:"
    files[figures] = files[figures].replace(b"choices:", figure.encode())
    agent = "content/agents/chlorine.yaml"
    files[agent] = files[agent].rstrip() + b"\nlife: {figure: bath.life}\n"
    bath = shift_of(loaded(files)).baths[0]
    assert (bath.days, bath.within_a_day) == (days, short)


def test_a_bath_without_a_life_or_a_least_temperature_asks_for_neither() -> None:
    bath = shift_of(small()).baths[0]
    assert (bath.days, bath.least, bath.strip) == (None, None, True)
    assert bath.made_by == ()  # the only procedure that mixes it is of an instrument


def test_the_demonstrations_baths_say_how_long_how_warm_and_who_makes_them() -> None:
    baths = {each.route.route: each for each in shift_of(demo()).baths}
    chlorine, aldehyde = baths["chlorine-hld"], baths["glutaraldehyde-hld"]
    assert (chlorine.days, aldehyde.days) == (1, 14)
    assert [str(each.least) for each in (chlorine, aldehyde)] == ["20\N{NO-BREAK SPACE}°C"] * 2
    assert [each.procedure for each in chlorine.made_by] == ["making-up-chlorine"]


def test_a_steam_way_takes_the_vessel_that_gets_hot_enough_here() -> None:
    assert way(demo(), "delivery-set-steam").vessels == ("stovetop-adjustable",)
    assert "equipment/steam-vessel" not in way(demo(), "delivery-set-steam").needs


def test_a_refused_route_gives_no_way_and_a_part_route_its_parts() -> None:
    extractor = shown(shift_of(demo()), "vacuum-extractor")
    parts = {each.route.route: [part.part for part in each.parts] for each in extractor.ways}
    assert parts == {
        "chlorine-hld": ["cup", "tubing", "trap-jar", "trap-lid"],
        "chlorine-wipe": ["pump", "gauge"],
    }
    vinyl = shown(shift_of(demo()), "bag-mask-vinyl")
    assert [each.route.route for each in vinyl.ways] == ["chlorine-hld"]


def test_what_cannot_wait_comes_in_the_order_of_the_emergency_rules() -> None:
    names = [each.instrument.instrument for each in shift_of(demo()).instruments]
    assert names[:3] == ["bag-mask-silicone", "bag-mask-vinyl", "delivery-set"]
    assert names[-2:] == ["speculum", "suture-set"]
    assert len(shown(shift_of(demo()), "bag-mask-vinyl").emergency) == 2


def test_what_is_for_one_use_is_asked_nothing() -> None:
    names = {each.instrument.instrument for each in shift_of(demo()).instruments}
    assert not names & {"mucus-extractor", "syringe-and-needle"}


def test_without_strips_no_way_of_a_checked_chemical_stays_open() -> None:
    content = demo()
    checked = [
        way
        for each in shift_of(content).instruments
        for way in each.ways
        if way.route.agent and content.agents[way.route.agent].strength_check
    ]
    assert {way.route.kind for way in checked} == {"chemical", "wiping"}
    for way in checked:
        kinds = {
            content.equipment[need.removeprefix("equipment/")].kind
            for need in way.needs
            if need.startswith("equipment/")
        }
        assert "strip or indicator" in kinds, way.procedure.procedure
