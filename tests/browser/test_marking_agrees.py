"""Python and the page give the same points for 20,000 random plans and answers."""

import json
import random
from decimal import Decimal
from pathlib import Path
from typing import Any

import pytest

from basinside.marking import evaluate
from tests.browser import script_lab
from tests.conftest import Opener

pytestmark = pytest.mark.browser

PAIRS = 20_000
# As one text each way: thousands of small values would take far longer than the work itself.
RUN = """text => JSON.stringify(
  JSON.parse(text).map(([plan, answer]) => Basinside.marking.evaluate(plan, answer)))"""


def a_decimal(rng: random.Random) -> str:
    whole = str(rng.choice([0, 1, 7, 12, 121, 999_999_999_999, rng.randrange(200)]))
    fraction = rng.choice(["", "", ".5", ".50", ".0", ".000000000001", f".{rng.randrange(100)}"])
    return rng.choice(["", "", "-"]) + whole + fraction


def a_condition(rng: random.Random, options: int) -> dict[str, Any]:
    kind = rng.choice(["has", "hasnt", "has", "hasnt", "before", "between"])
    if kind == "before":
        return {"before": [rng.randrange(options), rng.randrange(options)]}
    if kind == "between":
        ends = {"low": a_decimal(rng), "high": a_decimal(rng)}
        return {"between": {name: ends[name] for name in ends if rng.random() < 0.8}}
    return {kind: rng.randrange(options)}


def an_order_plan(rng: random.Random) -> dict[str, Any]:
    """A plan as an order compiles to: pairs that must be kept, among as many entries."""
    entries = rng.randint(3, 6)
    pairs = [sorted(rng.sample(range(entries), 2)) for _ in range(rng.randint(1, entries))]
    return {"options": entries, "pass_all": [{"before": pair} for pair in pairs], "fail_any": []}


def a_match_plan(rng: random.Random) -> dict[str, Any]:
    """A plan as pairs compile to: one position for each left side, now and then an unsafe one."""
    lefts, rights = rng.randint(2, 5), rng.randint(2, 6)
    keys = [left * rights + rng.randrange(rights) for left in range(lefts)]
    others = [n for n in range(lefts * rights) if n not in keys]
    return {
        "options": lefts * rights,
        "pass_all": [{"has": n} if n in keys else {"hasnt": n} for n in range(lefts * rights)],
        "fail_any": [{"has": n} for n in rng.sample(others, rng.choice([0, 0, 1]))],
    }


def a_number_plan(rng: random.Random) -> dict[str, Any]:
    """A plan as a number compiles to: one range, no options."""
    low, high = sorted((a_decimal(rng), a_decimal(rng)), key=Decimal)
    return {
        "options": 0, "pass_all": [{"between": {"low": low, "high": high}}], "fail_any": [],
    }  # fmt: skip


def a_plan(rng: random.Random) -> dict[str, Any]:
    if rng.random() < 0.4:
        kind = rng.choice([an_order_plan, a_match_plan, a_number_plan])
        rest = {"item": "an-item", "critical": rng.random() < 0.3, "worth": 60}
        return {**rest, "points": {"kind": "all-or-none"}, **kind(rng)}
    options = rng.randint(2, 7)
    keys = sorted(rng.sample(range(options), rng.randint(1, options)))
    usual = [{"has": n} if n in keys else {"hasnt": n} for n in range(options)]
    unusual = [a_condition(rng, options) for _ in range(rng.randint(0, 3))]
    return {
        "item": "an-item",
        "critical": rng.random() < 0.3,
        "worth": 60,
        "options": options,
        "points": rng.choice([{"kind": "all-or-none"}, {"kind": "plus-minus", "keys": keys}]),
        "pass_all": usual if rng.random() < 0.6 else unusual,
        "fail_any": [a_condition(rng, options) for _ in range(rng.choice([0, 0, 1, 2]))],
    }


def an_answer(rng: random.Random, plan: dict[str, Any]) -> dict[str, Any]:
    options = plan["options"]
    if rng.random() < 0.1:
        # What no page of ours writes, but a file can hold.
        return rng.choice(
            [
                {},
                {"chosen": []},
                {"chosen": [1, 0]},
                {"chosen": [0, 0]},
                {"chosen": [options]},
                {"chosen": [-1]},
                {"order": [0]},
                {"order": [0] * options},
                {"number": "1e3"},
                {"number": ""},
                {"number": "1234567890123"},
                {"chosen": [0], "number": "1"},
            ]
        )
    kind = rng.random()
    if kind < 0.5 and all("before" in each for each in plan["pass_all"]):
        return {"order": list(range(options))}
    if not options:
        kind = 1.0
    if kind < 0.25 and plan["points"]["kind"] == "plus-minus":
        return {"chosen": plan["points"]["keys"]}
    if kind < 0.4:
        wanted = [each["has"] for each in plan["pass_all"] if "has" in each]
        return {"chosen": sorted(set(wanted))}
    if kind < 0.7:
        return {"chosen": sorted(rng.sample(range(options), rng.randint(1, options)))}
    if kind < 0.85:
        return {"order": rng.sample(range(options), options)}
    ends = [end for each in plan["pass_all"] for end in each.get("between", {}).values()]
    if ends and rng.random() < 0.6:
        end = rng.choice(ends)  # at the very end of the range, in one spelling or another
        return {"number": f"{end}0" if "." in end and len(end.split(".")[1]) < 12 else end}
    return {"number": a_decimal(rng)}


def test_both_sides_give_the_same_points(tmp_path: Path, open_page: Opener) -> None:
    rng = random.Random(20261125)
    pairs = []
    for _ in range(PAIRS):
        plan = a_plan(rng)
        pairs.append((plan, an_answer(rng, plan)))
    ours: list[dict[str, Any]] = []
    for plan, answer in pairs:
        outcome = evaluate(plan, answer)
        ours.append(
            {
                "points": outcome.points,
                "passed": outcome.passed,
                "unsafe": list(outcome.unsafe),
            }
        )
    # The pairs reach every kind of outcome; otherwise agreement would say little.
    right = [pair for pair, each in zip(pairs, ours, strict=True) if each["passed"]]
    for kind in ("order", "number", "chosen"):
        assert sum(kind in answer for _, answer in right) > PAIRS // 100, kind
    assert sum(plan["options"] > 7 for plan, _ in right) > PAIRS // 200  # matches
    assert {0, 20, 30, 60} <= {each["points"] for each in ours}
    assert sum(each["passed"] for each in ours) > PAIRS // 20
    assert sum(bool(each["unsafe"]) for each in ours) > PAIRS // 50

    folder = script_lab.lay(tmp_path, {"a.html": ("", {})})
    theirs = open_page(folder / "a.html").evaluate(RUN, json.dumps(pairs))
    assert json.loads(theirs) == ours
