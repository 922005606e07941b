"""The sentences that authors wrote, with where each stands and whether it is the clinic's own say.

Items are not among them but for their keys: what a situation tells and what a wrong option claims
is not the clinic's. Not the clinic's either is the other side of a choice, and why the clinic did
not take it; those sentences quote what others print.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final, NamedTuple

from basinside.model.content import Content
from basinside.model.entry import Entry
from basinside.model.equipment import Agent
from basinside.model.instrument import Instrument
from basinside.model.procedure import Procedure
from basinside.model.quiz import Item
from basinside.problem import Place

WALL: Final = "wall"
"""The key of what a step says once more, shorter, where it hangs on the wall."""
Said = tuple[Entry, str, str]


class Sentence(NamedTuple):
    """A sentence or a few: in which entry, under which key, and whether it is the clinic's say."""

    entry: Place
    key: str
    text: str
    own: bool = True

    @property
    def place(self) -> Place:
        """Where it stands; few sentences are ever asked."""
        return self.entry.at(self.key)


def sentences_elsewhere(content: Content) -> Iterator[Sentence]:
    """Yield every sentence outside of procedures and items, in no order that means anything."""
    yield from _of_handbook(content)
    yield from _of_values(content)
    for agent in content.agents.values():
        yield from _of_agent(agent)
    for thing in content.equipment.values():
        yield from _given(thing.place, note=thing.note)
    for word in content.words.values():
        yield from _given(word.place, means=word.means)
        if word.not_:
            yield Sentence(word.place, "not", word.not_)
    for incident in content.incidents.values():
        yield from _given(incident.place, first_minute=incident.first_minute, then=incident.then)
    for instrument in content.instruments.values():
        yield from _of_instrument(instrument)
    for observation in content.observations.values():
        for line in observation.lines:
            yield from _given(line.place, see=line.see)
        for cue in observation.cues:
            yield Sentence(observation.place, "cues", cue)
        yield from _given(observation.place, who_may_observe=observation.who_may_observe)


def sentences_of_procedures(content: Content) -> Iterator[Sentence]:
    """Yield every sentence of the procedures."""
    for procedure in content.procedures.values():
        for entry, key, text in said_in(procedure):
            yield Sentence(entry.place, key, text)


def keys_of_items(content: Content) -> Iterator[Sentence]:
    """Yield what is right in each item and why."""
    for asked in content.items():
        yield from _of_key(asked.item, own=not asked.situation)


def _given(place: Place, **texts: str | None) -> Iterator[Sentence]:
    for key, text in texts.items():
        if text:
            yield Sentence(place, key, text)


def _of_handbook(content: Content) -> Iterator[Sentence]:
    if content.handbook is None:
        return
    clinic = content.handbook.clinic
    for emergency in clinic.emergency:
        yield from _given(emergency.place, when=emergency.when, do=emergency.do)
    for work in clinic.places:
        yield from _given(work.place, between=work.between)
    lacking = clinic.spore_test.not_available if clinic.spore_test else None
    if lacking:
        yield from _given(lacking.place, instead=lacking.instead, asked_for=lacking.asked_for)
    for line in content.handbook.policy:
        yield from _given(line.place, after_last_attempt=line.after_last_attempt)


def _of_values(content: Content) -> Iterator[Sentence]:
    for figure in content.figures.values():
        yield Sentence(figure.place, "is", figure.is_)
        if figure.other_view:
            yield Sentence(figure.place, "other_view", figure.other_view, own=False)
    for choice in content.choices.values():
        yield Sentence(choice.place, "is", choice.is_)
        yield Sentence(choice.place, "chosen", choice.chosen)
        yield Sentence(choice.place, "because", choice.because, own=False)
        for other in choice.not_chosen:
            yield Sentence(other.place, "what", other.what, own=False)


def _of_agent(agent: Agent) -> Iterator[Sentence]:
    yield from _given(
        agent.place,
        prepare=agent.prepare,
        ventilation=agent.ventilation,
        waste=agent.waste,
        harms=agent.harms,
    )
    if agent.strength_check:
        yield from _given(agent.strength_check.place, how=agent.strength_check.how)


def _of_instrument(instrument: Instrument) -> Iterator[Sentence]:
    yield from _given(instrument.place, found_on_the_shelf=instrument.found_on_the_shelf)
    if instrument.applies_to:
        yield from _given(instrument.applies_to.place, marked=instrument.applies_to.marked)
    if instrument.use_limit:
        yield from _given(instrument.use_limit.place, counts=instrument.use_limit.counts)
    for alike in instrument.look_alikes:
        yield from _given(alike.place, tell_apart=alike.tell_apart)
    for line in instrument.function_test:
        yield from _given(line.place, do=line.do, expect=line.expect, if_not=line.if_not)
    for part in instrument.parts:
        for sign in part.retire_when:
            yield from _given(sign.place, sign=sign.sign)
        if part.lubricate:
            oiled = part.lubricate
            yield from _given(oiled.place, amount=oiled.amount, when=oiled.when)


def said_in(procedure: Procedure) -> list[Said]:
    """Return what is said in a procedure: the entry, the key, and the text."""
    said: list[Said] = []
    for stage in procedure.stages:
        if stage.not_applicable:
            said.append((stage, "not_applicable", stage.not_applicable))
        for step in stage.steps:
            said.append((step, "do", step.do))
            if step.wall:
                said.append((step, WALL, step.wall))
            if step.why:
                said.append((step, "why", step.why))
            danger, hold = step.danger, step.hold
            if danger:
                said.append((danger, "say", danger.say))
            if hold:
                if hold.from_:
                    said.append((hold, "from", hold.from_))
                if hold.if_interrupted:
                    said.append((hold, "if_interrupted", hold.if_interrupted))
    return said


def _of_key(item: Item, *, own: bool) -> Iterator[Sentence]:
    """Yield what is right in an item and why; in one with a situation it may follow from that."""
    for option in item.options:
        if option.right is not None:
            yield Sentence(option.place, "right", option.right, own)
            if option.because:
                yield Sentence(option.place, "because", option.because, own)
    for pair in item.pairs:
        yield Sentence(pair.place, "right", pair.right, own)
        yield Sentence(pair.place, "because", pair.because, own)
    if item.number:
        yield Sentence(item.number.place, "because", item.number.because, own)


def key_texts(item: Item) -> list[str]:
    """Return the texts of an item's key alone."""
    return [each.text for each in _of_key(item, own=True)]
