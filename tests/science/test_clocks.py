"""Out-times over midnight, and the day on which a bath is thrown away."""

from __future__ import annotations

from datetime import UTC, date, datetime, timedelta
from decimal import Decimal
from pathlib import Path
from typing import Any

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st

from basinside.quantity import Kind, parse_quantity
from basinside.science.clocks import DiscardReason, add_months, discard_at, out_time

CHECKOUT = Path(__file__).resolve().parents[2]
DAYS = st.dates(min_value=date(2000, 1, 1), max_value=date(2200, 12, 31))
wall = datetime.fromisoformat
TIMES = st.datetimes(min_value=wall("2000-01-01 00:00"), max_value=wall("2200-12-31 00:00"))


@pytest.mark.parametrize(
    ("start", "hold", "out"),
    [
        (wall("2026-11-20 09:15"), timedelta(minutes=20), wall("2026-11-20 09:35")),
        (wall("2026-11-20 23:50"), timedelta(minutes=20), wall("2026-11-21 00:10")),
        (wall("2026-12-31 23:50"), 1200, wall("2027-01-01 00:10")),
        (wall("2028-02-28 23:59:59"), 1, wall("2028-02-29 00:00")),
        (wall("2027-02-28 23:59:59"), 1, wall("2027-03-01 00:00")),
        (wall("2026-11-20 20:00"), timedelta(hours=10), wall("2026-11-21 06:00")),
        (wall("2026-11-20 09:00"), Decimal("0.5"), wall("2026-11-20 09:00:00.500000")),
    ],
)
def test_the_part_comes_out_after_the_whole_hold(start: datetime, hold: Any, out: datetime) -> None:
    assert out_time(start, hold) == out


@given(TIMES, st.decimals(min_value="0.0000001", max_value=10**6, places=7))
def test_the_hold_is_never_cut_short(start: datetime, seconds: Decimal) -> None:
    held = out_time(start, seconds) - start
    microseconds = held // timedelta(microseconds=1)
    assert microseconds - 1 < seconds * 10**6 <= microseconds


@pytest.mark.parametrize(
    "hold",
    [
        0,
        -1,
        float("nan"),
        float("inf"),
        True,
        "20",
        None,
        1e300,
        timedelta(0),
        timedelta(-1),
        timedelta.max,
    ],
)
def test_a_hold_that_is_none_is_an_error(hold: Any) -> None:
    with pytest.raises(ValueError, match=r"^hold (must be|is too long)|after the year 9999"):
        out_time(wall("2026-11-20 00:00"), hold)


@pytest.mark.parametrize(
    "start", [datetime(2026, 11, 20, tzinfo=UTC), date(2026, 11, 20), "9:00", None]
)
def test_a_start_that_is_no_time_on_the_wall_is_an_error(start: Any) -> None:
    with pytest.raises(ValueError, match="start must be"):
        out_time(start, 60)


@pytest.mark.parametrize(
    ("day", "months", "later"),
    [
        (date(2026, 3, 1), 1, date(2026, 4, 1)),
        (date(2026, 1, 31), 1, date(2026, 2, 28)),
        (date(2028, 1, 31), 1, date(2028, 2, 29)),
        (date(2026, 8, 31), 6, date(2027, 2, 28)),
        (date(2028, 2, 29), 12, date(2029, 2, 28)),
        (date(2028, 2, 29), 48, date(2032, 2, 29)),
        (date(2096, 2, 29), 48, date(2100, 2, 28)),  # 2100 has no 29 February
        (date(2026, 12, 15), 1, date(2027, 1, 15)),
        (date(2026, 11, 30), 24, date(2028, 11, 30)),
        (date(2026, 5, 5), 0, date(2026, 5, 5)),
        (wall("2026-01-31 07:30"), 1, wall("2026-02-28 07:30")),
    ],
)
def test_months_are_civil_months(day: date, months: int, later: date) -> None:
    assert add_months(day, months) == later
    assert type(add_months(day, months)) is type(day)


@given(DAYS, st.integers(min_value=0, max_value=600))
def test_a_month_ahead_is_that_month_and_never_a_later_day(day: date, months: int) -> None:
    later = add_months(day, months)
    assert later.year * 12 + later.month == day.year * 12 + day.month + months
    next_day = later + timedelta(days=1)
    assert later.day == day.day or (later.day < day.day and next_day.month != later.month)


@given(DAYS, st.integers(min_value=0, max_value=600))
def test_a_later_day_is_never_sooner_over(day: date, months: int) -> None:
    assert add_months(day, months) <= add_months(day + timedelta(days=1), months)


@pytest.mark.parametrize("months", [-12 * 9000, 1.0, True, "1", None, float("nan"), 12 * 9000])
def test_months_that_are_none_are_an_error(months: Any) -> None:
    with pytest.raises(ValueError, match="months must"):
        add_months(date(2026, 1, 1), months)


MADE = date(2028, 2, 20)


@pytest.mark.parametrize(
    ("told", "on", "reason"),
    [
        ({"days": 14}, date(2028, 3, 5), "days"),  # over 29 February
        ({"days": 1}, date(2028, 2, 21), "days"),  # made fresh each day
        ({"months": 6}, date(2028, 8, 20), "months"),
        ({"days": 30, "months": 1}, date(2028, 3, 20), "months"),
        ({"days": 29, "months": 1}, date(2028, 3, 20), "days"),  # both on one day
        ({"days": 14, "strip_failed_on": date(2028, 2, 29)}, date(2028, 2, 29), "strip failed"),
        ({"days": 14, "cloudy_on": date(2028, 2, 29)}, date(2028, 2, 29), "cloudy"),
        ({"days": 14, "cloudy_on": date(2028, 3, 6)}, date(2028, 3, 5), "days"),
        ({"days": 14, "cloudy_on": date(2028, 3, 5)}, date(2028, 3, 5), "cloudy"),
        (
            {"days": 14, "cloudy_on": date(2028, 3, 1), "strip_failed_on": date(2028, 3, 1)},
            date(2028, 3, 1),
            "strip failed",
        ),
        (
            {"days": 14, "cloudy_on": date(2028, 3, 1), "strip_failed_on": date(2028, 3, 2)},
            date(2028, 3, 1),
            "cloudy",
        ),
        ({"days": 14, "strip_failed_on": MADE}, MADE, "strip failed"),  # on its first day
    ],
)
def test_whichever_comes_first_is_the_day_and_the_reason(
    told: dict[str, Any], on: date, reason: str
) -> None:
    found = discard_at(MADE, **told)
    assert (found.on, found.reason) == (on, DiscardReason(reason))


def test_with_times_it_is_thrown_away_at_the_same_hour() -> None:
    # Domain facts, section 1.4, CL-48, "V": a made-up chlorine solution is replaced after 24 h.
    made = wall("2026-12-31 08:30")
    assert discard_at(made, days=1).on == made + timedelta(hours=24)
    seen = wall("2026-12-31 14:00")
    assert discard_at(made, days=1, cloudy_on=seen).on == seen


def test_the_lives_that_are_printed() -> None:
    # Section 1.4, CL-46 and CL-47: fresh each day; section 4, BO-09: covered up to a week;
    # section 5, CH-08: peracetic acid at most 5 days; all "V".
    for printed, days in (("1 day", 1), ("1 week", 7), ("5 days", 5)):
        amount = int(parse_quantity(printed).base)
        assert amount == days
        assert discard_at(date(2026, 12, 28), days=amount).on == date(2026, 12, 28) + timedelta(
            days
        )
    # CDC 2008 table 4, "V".
    tables = yaml.safe_load((CHECKOUT / "tests/reference/cdc_tables.yaml").read_text("utf-8"))
    rows = {row["agent"]: row for row in tables["table 4"]["rows"].values()}
    made = date(2026, 12, 28)
    cases: tuple[tuple[str, date, date | None], ...] = (
        ("peroxide", date(2028, 12, 28), date(2027, 1, 18)),
        ("glutaraldehyde", date(2028, 12, 28), date(2027, 1, 11)),
        ("opa", date(2028, 12, 28), date(2027, 1, 11)),
        ("peracetic", date(2027, 6, 28), None),  # used once
    )
    for agent, unopened, life in cases:
        row = rows[agent]
        kept = parse_quantity(row["unopened-life"])
        assert kept.kind is Kind.MONTHS
        assert discard_at(made, months=int(kept.base)).on == unopened
        if life:
            shortest = row["life"][0] if isinstance(row["life"], list) else row["life"]
            assert discard_at(made, days=int(parse_quantity(shortest).base)).on == life


@given(
    DAYS,
    st.none() | st.integers(min_value=1, max_value=800),
    st.none() | st.integers(min_value=1, max_value=30),
    st.none() | st.integers(min_value=0, max_value=900),
    st.none() | st.integers(min_value=0, max_value=900),
)
def test_nothing_is_kept_longer_than_any_of_its_ends(
    made: date, days: int | None, months: int | None, strip: int | None, cloudy: int | None
) -> None:
    if days is None and months is None:
        days = 1
    failed = None if strip is None else made + timedelta(strip)
    seen = None if cloudy is None else made + timedelta(cloudy)
    found = discard_at(made, days=days, months=months, strip_failed_on=failed, cloudy_on=seen)
    ends = {
        DiscardReason.DAYS: None if days is None else made + timedelta(days),
        DiscardReason.MONTHS: None if months is None else add_months(made, months),
        DiscardReason.STRIP_FAILED: failed,
        DiscardReason.CLOUDY: seen,
    }
    assert found.on == min(end for end in ends.values() if end is not None)
    assert found.on == ends[found.reason]


@pytest.mark.parametrize(
    ("made", "told", "said"),
    [
        (MADE, {}, "days or months must be given"),
        (MADE, {"strip_failed_on": MADE}, "days or months must be given"),
        (MADE, {"days": 0}, "days must be a whole number"),
        (MADE, {"days": 1.5}, "days must be a whole number"),
        (MADE, {"days": True}, "days must be a whole number"),
        (MADE, {"months": 0}, "months must be a whole number"),
        (MADE, {"months": "6"}, "months must be a whole number"),
        (MADE, {"days": 14, "cloudy_on": date(2028, 2, 19)}, "must not be before made_on"),
        (MADE, {"days": 14, "strip_failed_on": date(2027, 3, 1)}, "must not be before made_on"),
        (MADE, {"days": 14, "cloudy_on": wall("2028-02-21 08:00")}, "must be a day or a time"),
        (
            wall("2028-02-20 08:00"),
            {"days": 14, "cloudy_on": date(2028, 2, 21)},
            "must be a day or a time",
        ),
        (MADE, {"days": 14, "cloudy_on": "2028-02-21"}, "cloudy_on must be a date"),
        ("2028-02-20", {"days": 14}, "made_on must be a date"),
        (None, {"days": 14}, "made_on must be a date"),
        (datetime(2028, 2, 20, 8, tzinfo=UTC), {"days": 14}, "without a time zone"),
        (date(9999, 12, 30), {"days": 14}, "after the year 9999"),
        (MADE, {"days": 10**12}, "after the year 9999"),
        (date(9999, 12, 30), {"months": 1}, "years 1 to 9999"),
    ],
)
def test_a_bath_that_is_told_wrongly_is_an_error(
    made: Any, told: dict[str, Any], said: str
) -> None:
    with pytest.raises(ValueError, match=said):
        discard_at(made, **told)
