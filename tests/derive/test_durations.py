"""About how long: what is held and waited, an allowance by hand, rounded up to five minutes."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from basinside.derive.durations import (
    HANDLING_SECONDS_PER_STEP,
    ROUNDED_TO_SECONDS,
    about,
    held_seconds,
    stages_about,
)
from basinside.model.content import Content
from basinside.model.entry import FigureRef
from basinside.quantity import parse_quantity
from tests.derive.clinic import demo, loaded
from tests.derive.golden_clinic import GOLDEN_FILES


@pytest.mark.parametrize(
    ("seconds", "shown"),
    [(0, "0 min"), (1, "5 min"), (300, "5 min"), (301, "10 min"), (3300, "55 min"),
     (3301, "1 h"), (3600, "1 h"), (5700, "1 h 35 min"), (86_400, "24 h")],
)  # fmt: skip
def test_rounded_up_to_five_minutes(seconds: int, shown: str) -> None:
    assert about(Fraction(seconds)).text().replace("\u00a0", " ") == shown


@given(st.fractions(0, 1_000_000))
def test_never_too_short_and_never_five_minutes_too_long(seconds: Fraction) -> None:
    assert 0 <= about(seconds).base - seconds < ROUNDED_TO_SECONDS


def test_held_and_waited_count_and_a_step_by_hand_has_its_allowance() -> None:
    content = loaded({name: text.encode() for name, text in GOLDEN_FILES.items()})
    stages = content.procedures["cup-bath"].stages
    whole, (one,) = stages_about(content, stages)
    # 20 min held and 30 s waited, then one step by hand
    assert 1230 + HANDLING_SECONDS_PER_STEP == 1290
    assert whole == one == parse_quantity("25 min")


def test_a_stage_without_steps_has_no_time() -> None:
    steam = demo().procedures["bag-mask-silicone-steam"]
    whole, stages = stages_about(demo(), steam.stages)
    none = [stage.stage for stage, time in zip(steam.stages, stages, strict=True) if time is None]
    assert none == ["disinfection", "transport"]
    assert whole >= max(each for each in stages if each is not None)


def test_the_whole_is_what_the_shown_stages_add_up_to() -> None:
    for name, procedure in demo().procedures.items():
        whole, stages = stages_about(demo(), procedure.stages)
        assert whole.base == sum(each.base for each in stages if each is not None), name


def test_a_value_that_is_no_time_holds_nothing() -> None:
    at = ("x", ())
    uses = FigureRef.model_validate({"@": at, "figure": "steam.gauge"})
    missing = FigureRef.model_validate({"@": at, "figure": "no.where"})
    assert held_seconds(demo(), uses) == held_seconds(demo(), missing) == 0
    assert held_seconds(demo(), None) == 0
    hold = FigureRef.model_validate({"@": at, "figure": "boil.hold"})
    assert held_seconds(demo(), hold) == demo().figures["boil.hold"].value.base
    assert held_seconds(Content(), hold) == 0
