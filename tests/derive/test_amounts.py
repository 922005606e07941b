"""What the calculators answer and refuse: published cases, the safe side, hostile typing."""

from fractions import Fraction

import pytest

from basinside.derive.amounts import answer
from basinside.derive.amounts.heights import gauge_kpa, reached_celsius
from basinside.derive.amounts.numbers import down, plain, up
from basinside.model.amounts import AMOUNT_KINDS, CAUTIONS, AmountKind, Answer, Typed
from tests.derive.amount_questions import GROUND, ODD, PUBLISHED, questions

LIQUID = {"label": "available", "strength": "5", "wanted": "0.1", "volume": "5", "unit": "L"}
LOAD = {"temperature": "121", "minutes": "30"}


def ask(kind: AmountKind, **typed: str) -> Answer:
    return answer(GROUND, kind, typed)


def liquid(**typed: str) -> Answer:
    return ask("liquid", **{**LIQUID, **typed})


def codes(found: Answer) -> list[str]:
    return [each.code for each in found.working]


def refused(found: Answer) -> str:
    assert found.refusal
    assert found.would_do
    assert not found.amounts
    assert not found.holds
    return found.refusal.code


@pytest.mark.parametrize(("kind", "typed", "number", "strength"), PUBLISHED)
def test_published_cases(kind: AmountKind, typed: Typed, number: str, strength: str) -> None:
    found = answer(GROUND, kind, dict(typed))
    assert found.refusal is None
    assert (found.amounts[0].number, found.strength) == (number, strength)


def test_a_bath_in_the_houses_own_measures_shows_its_working() -> None:
    found = liquid()
    assert [(each.number, each.unit) for each in found.amounts] == [("100", "mL"), ("4900", "mL")]
    assert [each.data() for each in found.measured] == [
        ["pour-to-mark", {"times": "1", "measure": "jug", "amount": "100", "unit": "mL"}]
    ]
    assert found.working[0].data() == [
        "work-liquid",
        {"product": "100", "number": "5", "unit": "L", "wanted": "0.1", "stock": "5"},
    ]
    assert found.working[1].data() == ["work-parts", {"parts": "49"}]


def test_the_answer_is_what_can_be_measured_and_says_what_a_finer_measure_would_do() -> None:
    found = liquid(strength="12")
    assert [each.number for each in found.amounts] == ["50", "4950", "41.7"]
    assert found.strength == "0.12"
    assert found.working[0].data()[1]["product"] == "41.7"


def test_rounding_never_makes_it_weaker_than_wanted() -> None:
    tried = 0
    for kind, typed in questions():
        found = answer(GROUND, kind, dict(typed))
        if found.strength:
            tried += 1
            wanted = dict(next(e.holes for e in found.inputs if e.code == "echo-wanted"))
            # The strength is shown cut to three figures, so as wanted cut likewise at least.
            assert Fraction(found.strength) >= down(Fraction(wanted["percent"])), typed
    assert tried > 1000


def test_a_label_is_said_which_way() -> None:
    assert liquid(label="degrees", strength="8").amounts[0].number == "209"
    by_mass = liquid(label="hypochlorite", strength="5.25")
    assert by_mass.amounts[0].of.data() == ["of-liquid", {"percent": "5"}]
    assert refused(liquid(label="")) == "not-a-choice"


def test_wanted_above_the_product_says_what_would_do() -> None:
    found = liquid(wanted="6")
    assert refused(found) == "above-product"
    assert [each.code for each in found.would_do] == ["use-stronger", "use-powder", "use-tablets"]
    assert "work-neat" in codes(liquid(wanted="5"))


def test_a_comma_is_read_and_echoed() -> None:
    found = liquid(wanted="0,1")
    assert found.inputs[-1].data() == ["read-comma", {"typed": "0,1", "number": "0.1"}]
    assert found.amounts == liquid().amounts


@pytest.mark.parametrize(
    ("typed", "code"),
    [
        ("", "missing"),
        ("   ", "missing"),
        ("1e999", "not-a-number"),
        ("NaN", "not-a-number"),
        ("-0", "below-nought"),
        ("−3", "below-nought"),
        ("٣٫٥", "not-a-number"),
        ("５", "not-a-number"),
        ("1,000", "two-ways"),
        ("1.500", "two-ways"),
        ("125.000", "two-ways"),
        ("9" * 41, "too-long"),
        ("9" * 100_000, "too-long"),
        ("1234567", "too-many-figures"),
        ("0.000000000001", "out-of-range"),
        ("0", "out-of-range"),
        ("1001", "out-of-range"),
        (".5", "not-a-number"),
        ("5 L", "not-a-number"),
    ],
)
def test_what_is_no_volume_is_refused(typed: str, code: str) -> None:
    assert refused(liquid(volume=typed)) == code


@pytest.mark.parametrize("kind", AMOUNT_KINDS)
@pytest.mark.parametrize("odd", ODD)
def test_nothing_typed_is_an_error_of_ours(kind: AmountKind, odd: str) -> None:
    fields = {
        name: odd
        for typed in (each for asked, each in questions() if asked == kind)
        for name in typed
    }
    found = answer(GROUND, kind, fields)
    assert found.cautions[: len(CAUTIONS[kind])] == CAUTIONS[kind]
    assert found.sources
    assert (found.refusal is None) == bool(found.amounts)


def test_a_measure_that_is_too_coarse_is_said() -> None:
    found = liquid(volume="100", unit="mL", wanted="0.01")
    assert found.measured
    assert "much-stronger" in found.cautions
    bath = liquid(volume="900")
    assert bath.measured[0].data()[1]["times"] == "18"
    assert "many-pours" in bath.cautions


def test_boiling_needs_no_more_time_up_to_5500_metres() -> None:
    for metres in ("0", "2350", "5500"):
        found = ask("boiling", altitude=metres)
        assert found.amounts[0].number == "20"
        assert "work-hot-enough" in codes(found)
    assert ask("boiling", altitude="2350").amounts[1].number == "92"
    high = ask("boiling", altitude="5501")
    assert refused(high) == "out-of-range"
    assert high.would_do[0].code == "altitude-metres"


def test_an_altitude_is_rounded_up_to_the_next_step() -> None:
    low, high = (ask("boiling", altitude=metres) for metres in ("2301", "2350"))
    assert low.amounts == high.amounts
    assert ask("boiling", altitude="2351").working[0].data() == ["work-height", {"metres": "2400"}]


def gauge(vessel: str = "other", **typed: str) -> Answer:
    usual = {"mark": "150", "unit": "kPa", "temperature": "121", "altitude": "2350"}
    return ask("gauge", vessel=vessel, **{**usual, **typed})


def test_a_gauge_stays_within_the_vessels_mark() -> None:
    assert gauge("dial").amounts[0].number == "130"
    assert gauge(mark="129").amounts[0].number == "129"
    found = gauge(mark="128.9")
    assert refused(found) == "cannot-reach"
    assert found.would_do[0].data() == ["other-vessel", {"vessel": "a dial"}]
    assert gauge(mark="20", unit="psi").refusal is None
    assert refused(gauge("weight")) == "weight-too-early"
    assert refused(gauge("oven")) == "no-steam-in-oven"
    assert refused(gauge("bare")) == "no-mark"
    for each in (gauge("dial"), found):
        assert each.cautions == ("steady-steam", "never-above-mark", "never-alter")


def test_the_table_of_heights_stays_on_the_safe_side() -> None:
    table = GROUND.heights
    assert len(table.boils) == len(table.air) == 111
    assert gauge_kpa(table, 121, 0) == 104
    assert reached_celsius(table, Fraction(103), 47) == 116
    assert reached_celsius(table, Fraction(5), 0) == 101
    assert reached_celsius(table, Fraction(0), 0) is None


def test_an_out_time_goes_over_midnight_and_rounds_up() -> None:
    found = ask("out-time", start="2027-12-31 23:50", hold="bath.hold")
    assert [each.number for each in found.amounts] == ["00:03", "00:20"]
    assert found.amounts[0].of.data() == ["out-next-day", {"out_day": "2028-01-01"}]
    far = ask("out-time", start="2028-02-28T12:00", hold="other", time="48", unit="h")
    assert far.amounts[0].of.data() == ["out-days-later", {"out_day": "2028-03-01", "days": "2"}]
    assert refused(ask("out-time", start="2027-02-29 12:00", hold="boil.hold")) == "not-a-day"
    assert refused(ask("out-time", start="12:00", hold="boil.hold")) == "not-a-moment"


@pytest.mark.parametrize(
    ("typed", "day", "why"),
    [
        ({}, "2028-03-01", "discard-days"),
        ({"product": "drum"}, "2028-08-29", "discard-months"),
        ({"product": "drum", "strip": "2028-03-02"}, "2028-03-02", "discard-strip"),
        ({"cloudy": "2028-03-01", "strip": "2028-03-01"}, "2028-03-01", "discard-strip"),
        ({"product": "other", "life": "2", "unit": "week"}, "2028-03-14", "discard-days"),
        ({"product": "other", "life": "12", "unit": "month"}, "2029-02-28", "discard-months"),
    ],
)
def test_a_solution_goes_at_whichever_is_first(typed: Typed, day: str, why: str) -> None:
    found = ask("discard", **{"made": "2028-02-29", "product": "chlorine", **typed})
    assert (found.amounts[0].number, found.amounts[0].of.code) == (day, why)


def test_a_strip_cannot_fail_before_the_bath_was_made() -> None:
    found = ask("discard", made="2028-02-29", product="chlorine", strip="2028-02-28")
    assert refused(found) == "before-made"


def test_a_broken_hold_begins_anew() -> None:
    broken = ask("load", log="14:00 100\n14:10 121\n14:30 120\n14:35 121.5\n15:00 121", **LOAD)
    assert broken.refusal is None
    assert broken.amounts[0].unit == "not-held"
    assert not broken.holds
    assert broken.would_do[0].code == "load-not-released"
    held = ask("load", log="23:45 121;0:15 121", **LOAD)
    assert held.holds
    assert held.amounts[1].number == "30"
    assert not ask("load", log="0 121\n29.99 121", **LOAD).holds
    cold = ask("load", log="0 100\n60 120.99", **LOAD)
    assert codes(cold) == ["work-never-reached"]


@pytest.mark.parametrize(
    ("log", "code"),
    [
        ("", "log-too-short"),
        ("0 121", "log-too-short"),
        ("0 121\n5", "log-line"),
        ("0 121\n14:05 121", "log-mixed"),
        ("5 121\n5 121", "log-order"),
        ("0 121\n5 250", "out-of-range"),
        ("0 121\n5 121.1234", "too-many-figures"),
        ("\n".join(f"{minute} 121" for minute in range(501)), "log-too-long"),
    ],
)
def test_a_log_that_is_none_is_refused(log: str, code: str) -> None:
    assert refused(ask("load", log=log, **LOAD)) == code


def test_sets_are_rounded_up_and_the_reserve_stays() -> None:
    typed = {"cases": "6", "turnaround": "150", "unit": "min", "hours": "8", "reserve": "1"}
    assert ask("sets", **typed).amounts[0].number == "3"
    hours = {**typed, "turnaround": "2,5", "unit": "h"}
    assert ask("sets", **hours).amounts[0].number == "3"
    assert ask("sets", **{**typed, "cases": "0"}).amounts[0].number == "1"
    assert refused(ask("sets", **{**typed, "reserve": "1.5"})) == "not-whole"


def test_numbers_are_plain_and_rounded_to_their_side() -> None:
    assert [plain(up(Fraction(n, 7))) for n in (1, 1000, 70)] == ["0.143", "143", "10"]
    assert [plain(down(Fraction(n, 7))) for n in (1, 1000, 70)] == ["0.142", "142", "10"]
    assert plain(Fraction(-1, 8)) == "-0.125"
