"""Civil days and months, as people at a calendar count them."""

from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from basinside.certify.days import NotADurationError, day_after, day_before
from basinside.quantity import parse_quantity


@pytest.mark.parametrize(
    ("day", "amount", "later"),
    [
        ("2026-11-20", "12 months", "2027-11-20"),
        ("2026-11-20", "1 year", "2027-11-20"),
        ("2028-02-29", "12 months", "2029-02-28"),
        ("2028-02-29", "4 years", "2032-02-29"),
        ("2026-08-31", "6 months", "2027-02-28"),
        ("2027-08-31", "6 months", "2028-02-29"),
        ("2026-01-31", "1 month", "2026-02-28"),
        ("2026-12-31", "1 month", "2027-01-31"),
        ("2026-11-20", "90 days", "2027-02-18"),
        ("2026-11-20", "2 weeks", "2026-12-04"),
        ("2026-11-20", "47 h", "2026-11-21"),
        ("9999-12-31", "1 month", "9999-12-31"),
        ("9999-12-31", "1 day", "9999-12-31"),
    ],
)
def test_days_after(day: str, amount: str, later: str) -> None:
    assert day_after(date.fromisoformat(day), parse_quantity(amount)).isoformat() == later


@pytest.mark.parametrize(
    ("day", "amount", "earlier"),
    [
        ("2026-11-20", "90 days", "2026-08-22"),
        ("2026-03-31", "1 month", "2026-02-28"),
        ("2028-03-31", "1 month", "2028-02-29"),
        ("2029-02-28", "12 months", "2028-02-28"),
        ("2026-01-15", "2 months", "2025-11-15"),
        ("0001-01-01", "1 month", "0001-01-01"),
    ],
)
def test_days_before(day: str, amount: str, earlier: str) -> None:
    assert day_before(date.fromisoformat(day), parse_quantity(amount)).isoformat() == earlier


def test_what_is_no_time_is_refused() -> None:
    with pytest.raises(NotADurationError, match="is no time"):
        day_after(date(2026, 1, 1), parse_quantity("20 °C"))


@given(st.dates(), st.integers(min_value=0, max_value=10**8))
def test_never_leaves_the_calendar_and_never_turns_round(day: date, count: int) -> None:
    for unit in ("days", "months"):
        amount = parse_quantity(f"{count} {unit}")
        assert day_before(day, amount) <= day <= day_after(day, amount)
