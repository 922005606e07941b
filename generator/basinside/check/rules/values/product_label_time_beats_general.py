"""The rule product-label-time-beats-general."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final, NamedTuple

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.check.saying import amount
from basinside.model.entry import FigureRef
from basinside.model.equipment import Agent
from basinside.problem import Level, Place

STATES: Final = {
    "hold": "how long parts stay in it",
    "temperature": "how warm its bath is",
    "life": "how long its bath lasts",
    "at_least": "what its strip must show",
}


class _Used(NamedTuple):
    where: str
    reference: FigureRef


@rule(level=Level.STOP)
def check_product_label_time_beats_general(checked: Checked) -> Iterator[Finding]:
    """Time, temperature, life and strip limit are at least as strict as the label held asks.

    Why: a table prints one time for a substance; the bottle on the shelf was tested at its own
    strength, with its own heat. Labels of glutaraldehyde ask for 20 to 90 minutes at 25 °C where
    tables say 20 minutes at 20 °C. The stricter of the two counts, whichever it is.
    Bad: `label_says: {hold: {figure: label.hold}}` of 45 min, and a route that holds 20 min.
    Good: a route that holds 45 min or longer; or another product, and its label copied.
    Source: several endoscopy societies, Multisociety guideline on reprocessing flexible
    endoscopes (label times); Rutala, lecture of 2004 (45 minutes at 25 °C beside 20 at 20 °C).
    """
    used = _used(checked)
    for agent in checked.content.agents.values():
        label = agent.product.label_says if agent.product else None
        if label is None or agent.agent not in used:
            continue
        for key in STATES:
            asked: FigureRef | None = getattr(label, key)
            if asked is not None:
                ours = used[agent.agent].get(key, [])
                yield from _weaker(checked, agent, key, asked, ours)


def _used(checked: Checked) -> dict[str, dict[str, list[_Used]]]:
    """Return what is stated for each chemical that gives a level: key, then where and what."""
    found: dict[str, dict[str, list[_Used]]] = {}
    for each in checked.sound:
        agent = checked.content.agents.get(each.route.agent or "")
        if agent is None:
            continue
        here = found.setdefault(agent.agent, {})
        _add(here, "hold", f"the route {each.route.route}", each.route.hold)
        _add(here, "temperature", f"the route {each.route.route}", each.route.temperature)
        _add(here, "life", f"the chemical {agent.agent}", agent.life)
        if agent.strength_check:
            at_least = agent.strength_check.at_least
            _add(here, "at_least", f"the chemical {agent.agent}", at_least)
        for placed in each.whole.steps:
            if placed.is_level_step:
                _add(here, "hold", f"{each.name}/{placed.step.step}", placed.hold)
            if placed.step.agent == agent.agent:
                where = f"{each.name}/{placed.step.step}"
                _add(here, "temperature", where, placed.temperature)
    return found


def _add(here: dict[str, list[_Used]], key: str, where: str, reference: FigureRef | None) -> None:
    """Keep what is stated, each value once."""
    listed = here.setdefault(key, [])
    if reference and all(each.reference.figure != reference.figure for each in listed):
        listed.append(_Used(where, reference))


def _weaker(
    checked: Checked, agent: Agent, key: str, asked: FigureRef, ours: list[_Used]
) -> Iterator[Finding]:
    label = checked.figure(asked)
    if label is None:
        return
    says = f"the label of {agent.name} says {amount(label.value)} ({asked.figure})"
    if not ours:
        message = f"{says}, and nothing states {STATES[key]}"
        yield Finding(asked.place, message, also=(agent.place,))
    for where, reference in ours:
        figure = checked.figure(reference)
        if figure is None:
            continue
        place: Place = reference.place.at("figure")
        if figure.value.kind is not label.value.kind:
            said = f"{where} says {amount(figure.value)} ({reference.figure}); {says}, which"
            yield Finding(place, f"{said} cannot be compared with it", also=(agent.place,))
        elif figure.value > label.value if key == "life" else figure.value < label.value:
            yield Finding(
                place,
                f"{where} says {amount(figure.value)} ({reference.figure}); {says},"
                " which is stricter and goes before it",
                "Take the label's value, or hold another product.",
                (agent.place,),
            )
