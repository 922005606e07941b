"""What is open for given ticks, worked out a second time and in another way, and random ticks.

The page goes through ways and notes what each lacks; here each reason is a predicate over one
way, and a way's list is what the predicates say.
"""

import random
import re
from datetime import date, timedelta
from decimal import Decimal
from typing import Any

Plan = dict[str, Any]
Ticks = dict[str, Any]

NO_BATH = {"made": "", "strip": "", "read": "", "heat": ""}


def day_of(text: str) -> date | None:
    if not re.fullmatch(r"[0-9]{4}-[0-9]{2}-[0-9]{2}", text):
        return None
    try:
        return date.fromisoformat(text)
    except ValueError:
        return None


def bath_reasons(bath: dict[str, Any], tick: dict[str, str], today: date) -> list[str]:
    made = day_of(tick["made"])
    if bath["days"] is not None:
        if made is None:
            return ["unmade"]
        if made > today:
            return ["future"]
        if made + timedelta(days=bath["days"]) <= today:
            return ["old"]
    found = []
    if bath["strip"] and tick["strip"] == "failed":
        found.append("failed")
    elif bath["strip"] and (tick["strip"] != "passed" or day_of(tick["read"]) != today):
        found.append("unread")
    if bath["least"] is not None:
        typed = tick["heat"].strip()
        if not typed:
            found.append("unmeasured")
        elif not re.fullmatch(r"[0-9]{1,2}([.,][0-9]{1,2})?", typed):
            found.append("no-heat")
        elif Decimal(typed.replace(",", ".")) < Decimal(bath["least"]):
            found.append("cold")
    return found


def lacks(plan: Plan, way: dict[str, Any], ticks: Ticks, today: date) -> list[dict[str, str]]:
    works = set(ticks["works"])
    found = []
    if way["vessels"] and works.isdisjoint(way["vessels"]):
        found.append({"what": "vessel", "id": "", "why": ""})
    baths = {each["route"]: each for each in plan["baths"]}
    if way["bath"]:
        tick = ticks["baths"].get(way["bath"], NO_BATH)
        found += [
            {"what": "bath", "id": way["bath"], "why": why}
            for why in bath_reasons(baths[way["bath"]], tick, today)
        ]
    found += [{"what": "need", "id": n, "why": ""} for n in way["needs"] if n not in works]
    return found


def evaluated(plan: Plan, ticks: Ticks, today: str) -> list[dict[str, Any]]:
    """Return for each instrument its state, the parts left out, and what each way lacks."""
    now = date.fromisoformat(today)
    result = []
    for each in plan["instruments"]:
        ways = [
            {"procedure": way["procedure"], "missing": lacks(plan, way, ticks, now)}
            for way in each["ways"]
        ]
        covered = {
            part
            for way, found in zip(each["ways"], ways, strict=True)
            if not found["missing"]
            for part in way["parts"]
        }
        left = [part for part in each["parts"] if part not in covered]
        state = "whole" if not left else "parts" if covered else "none"
        result.append(
            {"instrument": each["instrument"], "state": state, "left": left, "ways": ways}
        )
    return result


def some_ticks(rng: random.Random, plan: Plan, today: str) -> Ticks:
    """Return ticks as a shift may make them, and as a stranger may leave them."""
    every = [
        *(each["id"] for each in plan["vessels"]),
        *(need["id"] for group in plan["groups"] for need in group["needs"]),
    ]
    share = rng.choice([0, 0.5, 0.9, 0.97, 1])
    works = [each for each in every if rng.random() < share]
    baths = {each["route"]: _bath(rng, today) for each in plan["baths"] if rng.random() < 0.9}
    return {"set": 1, "works": works, "baths": baths}


def _bath(rng: random.Random, today: str) -> dict[str, str]:
    now = date.fromisoformat(today)
    ago = [now - timedelta(days=n) for n in (0, 0, 0, 1, 2, 13, 14, 15, -1, 400)]
    strange = ["", "2026-02-30", "2026-13-01", "yesterday", "0000-00-00", "2026-1-1"]
    made = rng.choice([*(each.isoformat() for each in ago), rng.choice(strange)])
    heats = ["", "20", "20,0", "20.00", "19.99", "19,9", "21.5", "7", "99,99", "100", "-3", "2o",
             "20.123", " 22 ", "٢٥", "20.", ".5", "1e1"]  # fmt: skip
    strip = rng.choice(["", "passed", "passed", "passed", "failed"])
    read = rng.choice([today, today, today, "", (now - timedelta(days=1)).isoformat()])
    heat = rng.choice([*heats, f"{rng.randrange(18, 23)}{rng.choice('.,')}{rng.randrange(100)}"])
    return {"made": made, "strip": strip, "read": read, "heat": heat}
