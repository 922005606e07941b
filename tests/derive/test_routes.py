"""A route is permitted when every part survives it and somebody says that it reaches the level."""

from basinside.derive.routes import clinic_routes, judge_route, judge_routes, reached_level
from basinside.model.content import Content
from basinside.model.derived import RouteVerdict
from tests.derive.clinic import changed, demo, loaded
from tests.plain.clinic import base_files

SURVIVES = """    count: 1
    touches: [never the patient]
    survives: {source: maker §2, routes: {chlorine-bath: yes, steam: yes}}"""


def verdict(content: Content, route: str, instrument: str = "bulb") -> RouteVerdict:
    return judge_route(content, content.instruments[instrument], content.routes[route])


def against(content: Content, route: str, instrument: str = "bulb") -> list[tuple[str, str]]:
    return [
        (
            each.kind,
            each.part.part if each.part else each.vessel.vessel.vessel if each.vessel else "",
        )
        for each in verdict(content, route, instrument).reasons
    ]


def test_what_all_parts_survive_and_reaches_all_levels_is_permitted() -> None:
    content = loaded(base_files())
    bath, steam = judge_routes(content, content.instruments["bulb"])
    assert (bath.permitted, bath.level, bath.vessels) == (True, "high-level disinfection", ())
    assert (steam.permitted, steam.level) == (True, "sterile")
    assert [each.vessel.vessel for each in steam.vessels] == ["tall"]


def test_the_weakest_part_decides_and_is_named_with_its_source() -> None:
    no = SURVIVES.replace("chlorine-bath: yes", "chlorine-bath: no")
    content = changed(SURVIVES, no)
    assert against(content, "chlorine-bath") == [("part-not-survive", "body")]
    assert verdict(content, "chlorine-bath").reasons[0].source == "maker §2"


def test_what_nobody_states_is_refused_as_not_stated() -> None:
    content = changed(SURVIVES, SURVIVES.replace("chlorine-bath: yes, ", ""))
    assert against(content, "chlorine-bath") == [("part-not-stated", "body")]
    content = changed(SURVIVES, "\n".join(SURVIVES.splitlines()[:2]))
    assert against(content, "chlorine-bath") == [("part-not-stated", "body")]
    assert against(content, "steam") == [("part-not-stated", "body")]


def test_a_route_may_be_for_some_parts_only() -> None:
    content = changed(SURVIVES, SURVIVES.replace("chlorine-bath: yes", "chlorine-bath: no"))
    partly = verdict(content, "chlorine-bath")
    assert (partly.permitted, partly.partly) == (False, True)
    assert [each.part for each in partly.fit] == ["tip"]
    whole = verdict(loaded(base_files()), "chlorine-bath")
    assert (whole.permitted, whole.partly, len(whole.fit)) == (True, False, 2)
    unsaid = verdict(changed("  steam: {level: sterile, source: manual p.5}\n", ""), "steam")
    assert (unsaid.partly, unsaid.fit) == (False, ())


def test_surviving_is_not_reaching() -> None:
    content = changed("  steam: {level: sterile, source: manual p.5}\n", "")
    assert against(content, "steam") == [("no-evidence", "")]
    assert verdict(content, "steam").reaches is None


def test_of_the_routes_level_and_what_the_instrument_reaches_the_lower_holds() -> None:
    said = "chlorine-bath: {level: high-level disinfection, source: manual p.3}"
    content = changed(said, said.replace("high-level", "low-level"))
    bulb, bath = content.instruments["bulb"], content.routes["chlorine-bath"]
    assert reached_level(bulb, bath) == "low-level disinfection"
    (reason,) = verdict(content, "chlorine-bath").reasons
    assert (reason.kind, reason.needed, reason.reached) == (
        "level-too-low",
        "high-level disinfection",
        "low-level disinfection",
    )
    assert reason.part is not None
    assert reason.part.part == "tip"
    higher = changed(said, said.replace("high-level disinfection", "sterile"))
    assert verdict(higher, "chlorine-bath").level == "high-level disinfection"


def test_only_the_parts_that_are_asked_about_count() -> None:
    content = changed(SURVIVES, SURVIVES.replace("chlorine-bath: yes", "chlorine-bath: no"))
    bulb, bath = content.instruments["bulb"], content.routes["chlorine-bath"]
    assert judge_route(content, bulb, bath, bulb.parts[1:]).permitted
    assert not judge_route(content, bulb, bath, bulb.parts[:1]).permitted


def test_a_single_use_item_is_refused_for_that_alone() -> None:
    content = demo()
    for route in content.routes:
        reasons = [kind for kind, _ in against(content, route, "mucus-extractor")]
        assert reasons[:1] == ["single-use"]
        assert "part-not-stated" not in reasons


def test_steam_needs_a_vessel_that_gets_hot_enough_here() -> None:
    tall = "marked_working_pressure: 150 kPa gauge"
    low = changed(tall, "marked_working_pressure: 120 kPa gauge")
    assert against(low, "steam") == [("vessel-too-cool", "tall"), ("vessel-too-cool", "weighted")]
    at_sea = changed("altitude: 2350 m", "altitude: 0 m")
    steam = verdict(at_sea, "steam")
    assert steam.permitted
    assert [each.vessel.vessel for each in steam.vessels] == ["tall"]
    ovens = changed(
        "kind: gravity steam\n      regulator: {kind: dial and stopcock",
        "kind: dry heat oven\n      regulator: {kind: dial and stopcock",
    )
    assert against(ovens, "steam") == [("vessel-too-cool", "weighted")]


def test_the_demonstrations_verdicts() -> None:
    content = demo()
    table = {
        name: {each.route.route: each.permitted for each in judge_routes(content, instrument)}
        for name, instrument in content.instruments.items()
    }
    open_ways = {
        name: {route for route, permitted in each.items() if permitted}
        for name, each in table.items()
    }
    assert open_ways == {
        "bag-mask-silicone": {"boil", "steam-wrapped", "chlorine-hld"},
        "bag-mask-vinyl": {"chlorine-hld"},
        "mucus-extractor": set(),
        "syringe-and-needle": set(),
        "suction-bulb": {"boil"},
        "speculum": {"boil", "steam-wrapped"},
        "delivery-set": {"steam-wrapped"},
        "suture-set": {"steam-wrapped"},
        "uterine-aspirator-heatproof": {"boil", "steam-unwrapped"},
        "uterine-aspirator-coldonly": {"glutaraldehyde-hld"},
        # Some of their parts take one way and the others another: neither is open for the whole.
        "laryngoscope": set(),
        "vacuum-extractor": set(),
    }
    partly = {
        (name, each.route.route, tuple(part.part for part in each.fit))
        for name in ("laryngoscope", "vacuum-extractor")
        for each in judge_routes(content, content.instruments[name])
        if each.partly
    }
    assert partly == {
        ("laryngoscope", "glutaraldehyde-hld", ("blade", "lamp")),
        ("laryngoscope", "chlorine-wipe", ("handle", "battery-cap", "battery")),
        ("vacuum-extractor", "chlorine-hld", ("cup", "tubing", "trap-jar", "trap-lid")),
        ("vacuum-extractor", "chlorine-wipe", ("pump", "gauge")),
    }
    assert [each.route for each in clinic_routes(content)] == [
        "boil", "steam-wrapped", "steam-unwrapped", "chlorine-hld", "glutaraldehyde-hld",
        "chlorine-wipe",
    ]  # fmt: skip
