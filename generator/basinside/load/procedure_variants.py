"""Procedures written as differences from a sibling.

``changes`` lists steps: one of the sibling's by its id, with only the keys that differ (and
``drop`` for keys it has no more), or a new one that says which step it comes ``after``, or which
stage that had none it begins (``in_stage``). A known step with ``after`` moves. ``without`` leaves
steps out, ``not_applicable`` says of a whole stage why it is not done. Each key keeps the place
it was written at; waivers and wording decisions are never inherited.
"""

from __future__ import annotations

import difflib
from collections.abc import Iterator, Mapping
from typing import Any, NamedTuple

from basinside.load.siblings import Data, Siblings, make_whole, merge_keys, no_such
from basinside.model.entry import PLACE_KEY
from basinside.model.procedure import Procedure
from basinside.model.words import STAGES
from basinside.problem import Level, Place, Problem

_OWN_KEYS = frozenset({"procedure", "variant_of", "title", "parts", "waive"})
_DIFFERENCES = frozenset({"changes", "without", "not_applicable"})
_OWN_STEP_KEYS = frozenset({"waive", "wording_only"})
_CHANGE_KEYS = frozenset({"after", "in_stage", "drop"})


def merge_procedures(
    written: Mapping[str, Data], wanted: str
) -> tuple[dict[str, Procedure], list[Problem]]:
    """Return the whole procedure of the wanted file, and its problems.

    Args:
        written: file -> plain data of one procedure, places included, siblings too.
        wanted: the file that is written as a difference.
    """
    kind = Siblings("procedure", "procedure", Procedure, _whole)
    return make_whole(written, kind, frozenset({wanted}))


def _whole(parent: Data, data: Data, file: str, problems: list[Problem]) -> Data:
    own = {key: value for key, value in data.items() if key not in _DIFFERENCES}
    base = {key: value for key, value in parent.items() if key not in _OWN_KEYS}
    if "stages" in own:
        message = "a variant writes its steps under “changes”, not under “stages”"
        place = Place(file, ("stages",))
        problems.append(
            Problem(place=place, rule="unknown-key", level=Level.NEVER, message=message)
        )
        del own["stages"]
    bench = _Bench(base.get("stages"), file, problems)
    bench.leave_out(data.get("without", ()))
    bench.not_done(data.get("not_applicable", {}))
    changes = data.get("changes", ())
    if isinstance(changes, tuple):
        for n, change in enumerate(changes):
            bench.change(change, Place(file, ("changes", n)))
    else:
        bench.wrong_shape("changes", "a list of steps: entries with “- ”")
    return {**merge_keys(base, own), "stages": bench.stages()}


class _Spot(NamedTuple):
    """Where a step stands: the index of its stage and its index there."""

    stage: int
    step: int


class _Bench:
    """The sibling's stages while they are changed."""

    def __init__(self, stages: Any, file: str, problems: list[Problem]) -> None:
        written = stages if isinstance(stages, tuple) else ()
        self._heads: list[Data] = [dict(each) for each in written if isinstance(each, dict)]
        self._steps: list[list[Data]] = [
            [_inherited(each) for each in head.pop("steps", None) or () if isinstance(each, dict)]
            for head in self._heads
        ]
        self._file = file
        self._problems = problems

    def stages(self) -> tuple[Data, ...]:
        """Return the stages as they are now, without those that became empty."""
        return tuple(
            {**head, "steps": tuple(steps)} if steps else head
            for head, steps in zip(self._heads, self._steps, strict=True)
            if steps or "not_applicable" in head
        )

    def leave_out(self, gone: Any) -> None:
        if not isinstance(gone, tuple):
            self.wrong_shape("without", "a list of step ids in brackets")
            return
        for n, each in enumerate(gone):
            if each is None:
                continue
            spot = self._find(each)
            if spot is None:
                self._unknown(Place(self._file, ("without", n)), each, "to leave out")
            else:
                del self._steps[spot.stage][spot.step]

    def not_done(self, reasons: Any) -> None:
        if not isinstance(reasons, dict):
            self.wrong_shape("not_applicable", "stages with a reason each")
            return
        for name, why in reasons.items():
            if isinstance(why, Place):
                continue
            place = Place(self._file, ("not_applicable", name))
            if name not in STAGES:
                near = difflib.get_close_matches(str(name), STAGES, 1, 0.5)
                hint = f"Did you mean “{near[0]}”?" if near else ""
                self._problems.append(no_such(place, f"there is no stage “{name}”", hint))
                continue
            head: Data = {PLACE_KEY: Place(self._file, ("not_applicable",)), "stage": name}
            head["not_applicable"] = why
            spots = [n for n, each in enumerate(self._heads) if each.get("stage") == name]
            for n in reversed(spots):
                del self._heads[n], self._steps[n]
            self._heads.insert(spots[0] if spots else len(self._heads), head)
            self._steps.insert(spots[0] if spots else len(self._steps), [])

    def change(self, change: Any, place: Place) -> None:
        name = change.get("step") if isinstance(change, dict) else None
        if not isinstance(name, str):
            message = "a change begins with “step:” and the id of a step"
            self._problems.append(_missing(place, message))
            return
        own = {key: value for key, value in change.items() if key not in _CHANGE_KEYS}
        spot = self._find(name)
        if spot is None:
            self._put(own, change, place)
            return
        old = self._steps[spot.stage][spot.step]
        dropped = change.get("drop", ())
        dropped = dropped if isinstance(dropped, tuple) else (dropped,)
        for n, key in enumerate(dropped):
            if key not in list(old):
                message = f"the sibling's step has no “{key}” to drop"
                self._problems.append(no_such(place.at("drop", n), message))
        kept = {key: value for key, value in old.items() if key not in dropped}
        merged = merge_keys(kept, own)
        if {"after", "in_stage"} & set(change):
            del self._steps[spot.stage][spot.step]
            if not self._put(merged, change, place):
                self._steps[spot.stage].insert(spot.step, merged)
        else:
            self._steps[spot.stage][spot.step] = merged

    def _put(self, step: Data, change: Data, place: Place) -> bool:
        after, stage = change.get("after"), change.get("in_stage")
        if after is not None:
            spot = self._find(after)
            if spot is None:
                self._unknown(place.at("after"), after, "to come after")
                return False
            self._steps[spot.stage].insert(spot.step + 1, step)
            return True
        if stage is not None:
            n = next((n for n, each in enumerate(self._heads) if each.get("stage") == stage), None)
            if n is None:
                message = f"the sibling has no stage “{stage}”"
                self._problems.append(no_such(place.at("in_stage"), message))
                return False
            self._heads[n].pop("not_applicable", None)
            self._steps[n].append(step)
            return True
        near = difflib.get_close_matches(str(step["step"]), list(self._ids()), 1, 0.7)
        hint = f"Or did you mean the step “{near[0]}”?" if near else ""
        message = "a new step says which step it comes “after”, or which stage it begins"
        self._problems.append(_missing(place, message, hint))
        return False

    def wrong_shape(self, key: str, shape: str) -> None:
        place = Place(self._file, (key,))
        message = f"{key} must be {shape}"
        problem = Problem(place=place, rule="wrong-shape", level=Level.NEVER, message=message)
        self._problems.append(problem)

    def _find(self, step: Any) -> _Spot | None:
        return next(
            (
                _Spot(m, n)
                for m, steps in enumerate(self._steps)
                for n, each in enumerate(steps)
                if each.get("step") == step
            ),
            None,
        )

    def _ids(self) -> Iterator[str]:
        for steps in self._steps:
            yield from (str(each.get("step")) for each in steps)

    def _unknown(self, place: Place, step: Any, purpose: str) -> None:
        near = difflib.get_close_matches(str(step), list(self._ids()), 1, 0.6)
        hint = f"Did you mean “{near[0]}”?" if near else ""
        self._problems.append(no_such(place, f"there is no step “{step}” {purpose}", hint))


def _inherited(step: Data) -> Data:
    return {key: value for key, value in step.items() if key not in _OWN_STEP_KEYS}


def _missing(place: Place, message: str, hint: str = "") -> Problem:
    return Problem(place=place, rule="missing-key", level=Level.NEVER, message=message, hint=hint)
