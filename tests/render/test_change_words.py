"""Changes in plain words."""

from typing import Any

import pytest

from basinside.model.derived import Change
from basinside.render.change_words import change_lines, change_sentence


@pytest.mark.parametrize(
    ("change", "says"),
    [
        (
            {"kind": "value-changed", "id": "boil.hold", "old": "20 min", "new": "25 min"},
            "boil.hold: 20 min -> 25 min",
        ),
        ({"kind": "value-new", "id": "dry.air", "new": "4 h"}, "dry.air: new value, 4 h"),
        ({"kind": "value-gone", "id": "dry.air", "old": "4 h"}, "dry.air: value gone, was 4 h"),
        (
            {"kind": "step-new", "id": "boil/look", "safety": True},
            "boil/look: new step (safety step)",
        ),
        ({"kind": "step-gone", "id": "boil/look"}, "boil/look: step gone"),
        (
            {
                "kind": "step-changed",
                "id": "boil/hold",
                "member": "hold",
                "old": {"value": "1200 s", "from": "bubbles"},
                "new": {"value": "1500 s", "from": "bubbles"},
            },
            "boil/hold: how long changed: 20 min -> 25 min",
        ),
        (
            {
                "kind": "step-changed",
                "id": "boil/hold",
                "member": "wear",
                "old": None,
                "new": ["apron", "mask"],
            },
            "boil/hold: wear changed: nothing -> apron, mask",
        ),
        (
            {
                "kind": "step-reworded",
                "id": "boil/hold",
                "member": "do",
                "old": "Wet.",
                "new": "Wet it.",
            },
            "boil/hold: only the wording changed: Wet. -> Wet it.",
        ),
        (
            {"kind": "steps-moved", "id": "boil", "old": ["a", "b", "c"], "new": ["a", "c", "b"]},
            "boil: steps moved: c, b",
        ),
        (
            {"kind": "steps-moved", "id": "boil", "old": ["a"], "new": ["a"]},
            "boil: steps moved: to another stage",
        ),
        ({"kind": "procedure-new", "id": "boil"}, "boil: new procedure"),
        (
            {"kind": "choice-changed", "id": "boil.altitude", "old": "no", "new": "yes"},
            "boil.altitude: another choice was made: no -> yes",
        ),
    ],
)
def test_a_change_in_words(change: dict[str, Any], says: str) -> None:
    assert change_sentence(Change(**change)) == says


def test_nothing_changed_is_said() -> None:
    assert change_lines("2026.1", "2026.2", (), {}) == [
        "From 2026.1 to 2026.2:",
        "  Nothing changed.",
    ]


def test_who_has_to_refresh_is_named() -> None:
    change = Change(kind="step-new", id="boil/look")
    lines = change_lines("2026.1", "2026.2", (change,), {"bag-masks": ("boil/look",)})
    assert lines[-1] == "  bag-masks: boil/look"
    assert change_lines("a", "b", (change,), {})[-1] == "Nobody has to refresh anything."
