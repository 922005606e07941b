"""Why a mistake that no rule notices does no harm, where that can be worked out."""

from __future__ import annotations

from typing import Final, NamedTuple

from basinside.check.limits import outside
from basinside.model.content import Content
from basinside.model.derived import Derived, PlacedStep, WholeProcedure
from basinside.model.words import Action, at_least
from tests.mutations.kinds import Mutation

PAPER: Final[frozenset[Action]] = frozenset({"record", "report"})
"""What is done at the desk: no part, bath or vessel is touched."""
BARE_HANDS: Final[frozenset[Action]] = frozenset({"wash hands", "take off", "put on", "release"})
"""What comes before or after it has to do with the hands that hold the pen."""


class Seen(NamedTuple):
    """The clinic before a mistake and with it."""

    content: Content
    derived: Derived
    now: Content
    now_derived: Derived


def harmless(mutation: Mutation, seen: Seen) -> str:
    """Return why a mistake does no harm, or nothing where that is not known."""
    if mutation.kind == "change value":
        return _value(mutation.about, seen)
    if mutation.kind == "drop protection":
        return _worn_all_the_same(mutation, seen)
    if mutation.kind == "change tolerance":
        return _still_refused(mutation, seen)
    if mutation.kind == "swap steps":
        return _independent(mutation, seen)
    return ""


def _value(name: str, seen: Seen) -> str:
    figure = seen.now.figures.get(name)
    if figure is None or figure.worked_out is not None:
        return ""
    if figure.source_says is None:
        return "no source bounds this value, the clinic chooses it, and every page follows"
    if not outside(figure.value, figure.source_says):
        return "the value keeps to what its source prints, and every page follows"
    return ""


def _worn_all_the_same(mutation: Mutation, seen: Seen) -> str:
    """Return why nobody wears less: a card says it, it is on already, or nothing asks for it."""
    worn = {name: [each.wear for each in whole.steps] for name, whole in _wholes(seen.derived)}
    now = {name: [each.wear for each in whole.steps] for name, whole in _wholes(seen.now_derived)}
    if mutation.about == "chemical":
        agents = [each for each in seen.now.agents.values() if each.wear != _card(seen, each.agent)]
        hurts = any(each.hazards for each in agents)
        return "" if hurts or worn != now else "it has no hazard, and each step says what is worn"
    if {name: [set(each) for each in some] for name, some in worn.items()} == {
        name: [set(each) for each in some] for name, some in now.items()
    }:
        return "the card of the step's chemical asks for the same"
    lost = [
        (whole, placed, set(placed.wear) - set(later))
        for name, whole in _wholes(seen.derived)
        for placed, later in zip(whole.steps, now[name], strict=True)
        if set(placed.wear) - set(later)
    ]
    if all(gone == {"closed shoes"} for _, _, gone in lost):
        return "shoes stay on, nobody takes them off to wash hands"
    if all(_low_level(whole, placed) for whole, placed, _ in lost):
        return "low-level disinfection asks for clean hands only, and they were washed"
    return ""


def _card(seen: Seen, agent: str) -> tuple[str, ...]:
    before = seen.content.agents.get(agent)
    return before.wear if before else ()


def _low_level(whole: WholeProcedure, placed: PlacedStep) -> bool:
    level = whole.level
    low = level is not None and not at_least(level, "high-level disinfection")
    return low and placed.before == "processed" and placed.step.danger is None


def _wholes(derived: Derived) -> list[tuple[str, WholeProcedure]]:
    return list(derived.procedures.items())


def _still_refused(mutation: Mutation, seen: Seen) -> str:
    """Return why a part that stands a route too changes nothing: other reasons refuse it."""
    route = mutation.what.partition(" and ")[2].partition(":")[0]
    for name, now in seen.now_derived.instruments.items():
        then = {each.route.route: each for each in seen.derived.instruments[name].verdicts}
        for verdict in now.verdicts:
            before = then[verdict.route.route]
            if verdict.permitted != before.permitted:
                return ""
            if verdict.route.route == route and {each.part for each in verdict.fit} != {
                each.part for each in before.fit
            }:
                return ""
    return "the route stays refused for the instrument, for another part or for want of evidence"


def _independent(mutation: Mutation, seen: Seen) -> str:
    """Return why the order of two steps, and of what lies between, does not matter."""
    one, other = mutation.what.removesuffix(" in each other's place").split(" and ")
    name = mutation.file.rsplit("/", 1)[-1].removesuffix(".yaml")
    steps = seen.derived.procedures[name].steps
    ids = [placed.step.step for placed in steps]
    first, last = sorted((ids.index(one), ids.index(other)))
    turned = [(steps[first], each) for each in steps[first + 1 : last + 1]]
    turned += [(each, steps[last]) for each in steps[first + 1 : last]]
    if all(_at_the_desk(*pair) or _only_looks(*pair) for pair in turned):
        return "neither changes what the other finds: no part, bath or vessel is touched by one"
    return ""


def _at_the_desk(one: PlacedStep, other: PlacedStep) -> bool:
    """Return whether one of two steps is paper work, and the other not about the hands for it."""
    actions = {one.action, other.action}
    return bool(actions & PAPER) and not actions & BARE_HANDS and not _same_log(one, other)


def _same_log(one: PlacedStep, other: PlacedStep) -> bool:
    return not set(one.step.writes).isdisjoint(other.step.writes)


def _only_looks(one: PlacedStep, other: PlacedStep) -> bool:
    """Return whether both only look or count, at the same stage of soil, and decide nothing."""
    looks = {"inspect", "count"}
    same = {one.before, one.after} == {other.before, other.after}
    sure = one.step.makes_sure or other.step.makes_sure
    return {one.action, other.action} <= looks and same and not sure
