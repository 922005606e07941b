"""Amounts: read exactly, refused with a mend, compared within a kind, written out again."""

from __future__ import annotations

import operator
import pickle
from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from basinside.quantity import (
    UNITS,
    Kind,
    Quantity,
    QuantityError,
    parse_quantity,
    quantity_in,
)
from basinside.units import BASE_UNITS, WRITABLE

# Written -> in base units, as digests know it. Unit factors: NIST SP 811, 2008, B.8.
BASE_TEXTS = {
    "20 min": "1200 s",
    "20min": "1200 s",
    "20\u202fmin": "1200 s",
    "1 h 40 min": "6000 s",
    "1h40min": "6000 s",
    "1 min 30 s": "90 s",
    "1 h 5 s": "3605 s",
    "1.5 h": "5400 s",
    "2 hours": "7200 s",
    "20 minutes": "1200 s",
    "0.5 s": "0.5 s",
    "0 min": "0 s",
    "7 days": "7 day",
    "1 week": "7 day",
    "1 day": "1 day",
    "0 days": "0 day",
    "12 months": "12 month",
    "1 year": "12 month",
    "0.5 years": "6 month",
    "121 °C": "121 °C",
    "121 C": "121 °C",
    "121.10 °C": "121.1 °C",
    "-18 °C": "-18 °C",
    "\u22120.5 °C": "-0.5 °C",
    "-0 °C": "0 °C",
    "106 kPa gauge": "106000 Pa gauge",
    "205.04 kPa absolute": "205040 Pa absolute",
    "1 bar gauge": "100000 Pa gauge",
    "1.06 kgf/cm² gauge": "103950.49 Pa gauge",
    "1.06 kgf/cm2 gauge": "103950.49 Pa gauge",
    "15 psi gauge": "103421.359397525 Pa gauge",
    "-80 kPa gauge": "-80000 Pa gauge",
    "0.1 % available chlorine": "1000 ppm available chlorine",
    "1% available chlorine": "10000 ppm available chlorine",
    "5.25 % available chlorine": "52500 ppm available chlorine",
    "500 ppm available chlorine": "500 ppm available chlorine",
    "2 % w/v": "2 % w/v",
    "6.50 % w/w": "6.5 % w/w",
    "2350 m": "2350 m",
    "1000 ft": "304.8 m",
    "1 L": "1000 mL",
    "0.05 L": "50 mL",
    "50 mL": "50 mL",
    "14 g": "14 g",
    "0.25 kg": "250 g",
    "25 uses": "25 count",
    "1 use": "1 count",
    "7 parts": "7 count",
    "3": "3 count",
    "0.000001 g": "0.000001 g",
    "100000000000 m": "100000000000 m",
}

# Written -> the whole message.
REFUSED = {
    "0,5 % available chlorine": 'Write 0.5 with a point, not "0,5".',
    "1,25 h": 'Write 1.25 with a point, not "1,25".',
    "2,350 m": "Write 2350 without a comma.",
    "0.5 %": "Say of what the % is: % available chlorine, % w/v or % w/w.",
    "500 ppm": "Say what the ppm are of: write 500 ppm available chlorine.",
    "106 kPa": "Say gauge or absolute: write 106 kPa gauge or 106 kPa absolute.",
    "15 psi": "Say gauge or absolute: write 15 psi gauge or 15 psi absolute.",
    "1 kgf/cm2": "Say gauge or absolute: write 1 kgf/cm2 gauge or 1 kgf/cm2 absolute.",
    "20 mins": 'Write "min" or another known unit, not "mins".',
    "2350 masl": "Write a known unit, such as min, days, °C, kPa gauge, % available chlorine,"
    ' mL, g, m or uses, not "masl".',
    "5 ml": 'Write "mL" or another known unit, not "ml".',
    "7 dayes": 'Write "days" or another known unit, not "dayes".',
    "15 psig": 'Write "psi gauge" or another known unit, not "psig".',
    "2 % chlorine": 'Write "% available chlorine" or another known unit, not "% chlorine".',
    "5 furlong": "Write a known unit, such as min, days, °C, kPa gauge, % available chlorine, mL, "
    'g, m or uses, not "furlong".',
    "3 h min": 'Write "min" or another known unit, not "h min".',
    "": 'Begin with the number in figures, as in "20 min".',
    "min": 'Begin with the number in figures, as in "20 min", not "min".',
    "twenty min": 'Begin with the number in figures, as in "20 min", not "twenty min".',
    "2.5": 'Write the unit after the number, as in "2.5 mL".',
    "-3": "Write 3 without the minus sign; count is never below nought.",
    ".5 L": 'Write 0.5 with a nought before the point, not ".5".',
    "5. L": 'Write the number as in 20 or 0.5, with one point at most, not "5.".',
    "1.2.3 L": 'Write the number as in 20 or 0.5, with one point at most, not "1.2.3".',
    "10 000 ppm available chlorine": "Write one number without spaces inside it, then its unit.",
    "15-17 psi gauge": "Write one number here, not a range of two.",
    "20 to 30 min": "Write one number here, not a range of two.",
    "1e3 s": "Write the number as a plain decimal, such as 0.5 or 1000.",
    "1/2 h": "Write the number as a plain decimal, such as 0.5 or 1000.",
    "1½ h": "Write the number as a plain decimal, such as 0.5 or 1000.",
    "1234567890123456 s": "Write the number with at most 15 figures.",
    "1 h 90 min": "Write less than 60 min after h, or one unit only.",
    "1.5 h 20 min": "Write 1.5 h as a whole number or in one unit only.",
    "-20 min": "Write 20 without the minus sign; time is never below nought.",
    "-300 °C": "Write a temperature that is not below absolute zero, -273.15 °C.",
    "1.5 months": "Write months as a whole number, or choose a smaller unit, not 1.5 months.",
    "2.5 uses": "Write a count as a whole number, not 2.5 uses.",
}


@pytest.mark.parametrize(("written", "base"), BASE_TEXTS.items())
def test_base_text_is_the_one_digests_know(written: str, base: str) -> None:
    assert parse_quantity(written).base_text() == base


@pytest.mark.parametrize(("written", "message"), REFUSED.items())
def test_what_cannot_be_read_is_refused_with_its_mend(written: str, message: str) -> None:
    with pytest.raises(QuantityError) as refused:
        parse_quantity(written)
    assert str(refused.value) == message


@pytest.mark.parametrize(
    ("written", "numeral", "unit"),
    [
        ("20 min", "20", "min"),
        ("1 h 40 min", "1\u00a0h\u00a040", "min"),
        ("1 h 0 min", "1", "h"),
        ("0 h 0 min", "0", "min"),
        ("0 h 5 min", "5", "min"),
        ("7 days", "7", "days"),
        ("1 days", "1", "day"),
        ("1 person", "1", "person"),
        ("2 people", "2", "people"),
        ("0.10 % available chlorine", "0.1", "% available chlorine"),
        ("121 C", "121", "°C"),
        ("3", "3", ""),
        ("1 kgf/cm2 gauge", "1", "kgf/cm² gauge"),
    ],
)
def test_a_large_figure_splits_into_numeral_and_unit(written: str, numeral: str, unit: str) -> None:
    quantity = parse_quantity(written)
    assert (quantity.numeral(), quantity.unit_text()) == (numeral, unit)
    assert quantity.text() == (f"{numeral}\u00a0{unit}" if unit else numeral) == str(quantity)


@pytest.mark.parametrize(
    ("written", "unit", "text"),
    [
        ("6000 s", "minutes", "100 min"),
        ("6000 s", "h min", "1 h 40 min"),
        ("90 s", "h min s", "1 min 30 s"),
        ("100 s", "min", "1.667 min"),
        ("1 s", "h", "0.0002778 h"),
        ("0.5 % available chlorine", "ppm", "5000 ppm available chlorine"),
        ("15 psi gauge", "kPa", "103.4 kPa gauge"),
        ("2350 m", "ft", "7710 ft"),
        ("123457 m", "ft", "405043 ft"),
        ("14 days", "weeks", "2 weeks"),
        ("2 years", "months", "24 months"),
        ("7 parts", "count", "7"),
    ],
)
def test_an_amount_is_said_in_another_unit_of_its_kind(written: str, unit: str, text: str) -> None:
    quantity = parse_quantity(written)
    other = quantity.in_unit(unit)
    assert other.text().replace("\u00a0", " ") == text
    assert other == quantity


def test_a_rounded_numeral_says_so() -> None:
    assert not parse_quantity("100 s").in_unit("min").exact
    assert parse_quantity("90 s").in_unit("min").exact


@pytest.mark.parametrize(
    ("written", "unit", "message"),
    [
        ("20 kPa gauge", "kPa absolute", "Choose a unit of gauge pressure"),
        ("24 h", "days", "Choose a unit of time"),
        ("30 days", "months", "Choose a unit of civil days"),
        ("2 % w/v", "% w/w", "Choose a unit of w/v"),
        ("20 min", "minuts", 'Write "minutes"'),
    ],
)
def test_another_kind_or_no_unit_is_refused(written: str, unit: str, message: str) -> None:
    with pytest.raises(QuantityError, match=message):
        parse_quantity(written).in_unit(unit)


def test_a_value_without_a_finite_decimal_is_rounded_half_to_even_in_base_units() -> None:
    assert Quantity(number=Fraction(1, 3), unit="g").base_text() == "0.333333333 g"
    assert Quantity(number=Fraction(2, 3), unit="g").base_text() == "0.666666667 g"
    assert Quantity(number=Fraction(1, 3) / 10**12, unit="g").base_text() == "0 g"
    assert Quantity(number=Fraction(-1, 3) / 10**12, unit="°C").base_text() == "0 °C"


def test_equal_amounts_are_one_key_and_kinds_never_mix() -> None:
    assert parse_quantity("20 min") == parse_quantity("1200 s")
    assert len({parse_quantity("20 min"), parse_quantity("1200 s")}) == 1
    assert parse_quantity("2 % w/v") != parse_quantity("2 % w/w")
    assert parse_quantity("1 day") != parse_quantity("24 h")
    assert parse_quantity("20 min") != 1200


@pytest.mark.parametrize("compare", [operator.lt, operator.le, operator.gt, operator.ge])
@pytest.mark.parametrize(
    ("one", "other"),
    [
        ("24 h", "1 day"),
        ("30 days", "1 month"),
        ("1 bar gauge", "1 bar absolute"),
        ("2 % w/v", "2 % w/w"),
        ("1 L", "1 kg"),
    ],
)
def test_kinds_cannot_be_ordered(compare: object, one: str, other: str) -> None:
    assert callable(compare)
    with pytest.raises(TypeError, match="cannot be compared"):
        compare(parse_quantity(one), parse_quantity(other))


def test_an_unknown_unit_name_is_our_own_error() -> None:
    with pytest.raises(ValueError, match="no unit is named 'minute'"):
        Quantity(number=Fraction(1), unit="minute")


def test_every_kind_has_its_base_unit_and_a_way_to_be_written() -> None:
    assert set(BASE_UNITS) == set(Kind)
    assert {UNITS[name].kind for name in WRITABLE.values()} == set(Kind)


@given(st.text())
def test_any_text_is_an_amount_or_refused(text: str) -> None:
    _read_or_refused(text)


@given(st.from_regex(r"[-+−]?[0-9.,]{0,20} ?[0-9 hmins%/a-z½²٣]{0,20}", fullmatch=True))
def test_any_text_like_an_amount_is_one_or_refused(text: str) -> None:
    _read_or_refused(text)


def _read_or_refused(text: str) -> None:
    try:
        quantity = parse_quantity(text)
    except QuantityError as refused:
        message = str(refused)
        assert message.endswith(".")
        assert message.isprintable()
        assert len(message) < 200
    else:
        assert parse_quantity(quantity.text()) == quantity


DECIMALS = st.decimals(min_value=0, max_value=99999, places=4)


@given(DECIMALS, st.sampled_from(sorted(WRITABLE)), st.sampled_from(["", " ", "\u00a0", "\u2009"]))
def test_what_is_written_is_read_back_exactly(number: Decimal, spelling: str, space: str) -> None:
    unit = UNITS[WRITABLE[spelling]]
    if unit.kind in {Kind.COUNT, Kind.DAYS, Kind.MONTHS}:
        number = number.to_integral_value()
    quantity = parse_quantity(f"{number}{space}{spelling}")
    assert quantity.base == Fraction(number) * unit.factor
    again = parse_quantity(quantity.text())
    assert (again, again.unit, again.number) == (quantity, quantity.unit, quantity.number)
    assert quantity.base_text().endswith(BASE_UNITS[unit.kind])
    assert pickle.loads(pickle.dumps(quantity)) == quantity  # noqa: S301 - our own bytes


@given(st.integers(0, 500), st.integers(0, 59), st.integers(0, 59))
def test_a_time_in_several_units_is_read_back_exactly(h: int, minutes: int, s: int) -> None:
    quantity = parse_quantity(f"{h} h {minutes} min {s} s")
    assert quantity.base == h * 3600 + minutes * 60 + s
    assert parse_quantity(quantity.text()) == quantity


@given(DECIMALS, DECIMALS)
def test_order_is_the_order_of_the_amounts(one: Decimal, other: Decimal) -> None:
    in_litres, in_millilitres = parse_quantity(f"{one} L"), parse_quantity(f"{other} mL")
    litres = Fraction(other) / 1000
    assert (in_litres < in_millilitres) == (Fraction(one) < litres)
    assert (in_litres <= in_millilitres) == (Fraction(one) <= litres)
    assert (in_litres > in_millilitres) == (Fraction(one) > litres)
    assert (in_litres >= in_millilitres) == (Fraction(one) >= litres)
    assert (in_litres == in_millilitres) == (Fraction(one) == litres)


def _read(text: str) -> Quantity | None:
    try:
        return parse_quantity(text)
    except QuantityError:
        return None


@given(
    st.one_of(
        st.text(max_size=12),
        st.builds(
            "{}{}{}".format,
            st.integers(0, 9999),
            st.sampled_from(["", " ", "  "]),
            st.sampled_from(sorted(WRITABLE)),
        ),
        st.builds("{}h{}min".format, st.integers(0, 99), st.integers(0, 59)),
        st.builds("{} min {}".format, st.integers(0, 99), st.text(max_size=5)),
    )
)
def test_any_text_is_read_as_an_amount_or_as_none_alike(text: str) -> None:
    assert quantity_in(text) == _read(text)
