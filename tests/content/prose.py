"""What readers read besides the steps, by the kind of entry it stands in."""

from collections.abc import Callable, Iterator

from basinside.model.content import Content

Texts = Iterator[str | None]


def _incidents(content: Content) -> Texts:
    for incident in content.incidents.values():
        yield incident.first_minute
        yield incident.then


def _chemicals(content: Content) -> Texts:
    for agent in content.agents.values():
        yield from (agent.prepare, agent.ventilation, agent.harms, agent.waste)
        yield agent.strength_check.how if agent.strength_check else None


def _instruments(content: Content) -> Texts:
    for each in content.instruments.values():
        yield each.found_on_the_shelf
        yield each.applies_to.marked if each.applies_to else None
        yield from (alike.tell_apart for alike in each.look_alikes)
        yield from (sign.sign for part in each.parts for sign in part.retire_when)
        for line in each.function_test:
            yield from (line.do, line.expect, line.if_not)


def _words(content: Content) -> Texts:
    for word in content.words.values():
        yield from (word.means, word.not_)


def _choices(content: Content) -> Texts:
    for choice in content.choices.values():
        yield from (choice.because, *(other.what for other in choice.not_chosen))


def _emergencies(content: Content) -> Texts:
    assert content.handbook is not None
    yield from (each.do for each in content.handbook.clinic.emergency)
    yield from (each.note for each in content.equipment.values())


def _questions(content: Content) -> Texts:
    for asked in content.items():
        yield from (asked.situation, asked.item.stem)
        for option in asked.item.options:
            yield from (option.text, option.because)
        yield asked.item.because
        yield from (entry.text for entry in asked.item.entries)
        yield from (matter.because for matter in asked.item.matters)
        for pair in asked.item.pairs:
            yield from (pair.left, pair.right, pair.because)
            yield from (mistake.because for mistake in pair.mistakes)
        if asked.item.number:
            yield asked.item.number.because
            yield from (mistake.because for mistake in asked.item.number.mistakes)


PROSE: dict[str, Callable[[Content], Texts]] = {
    "incidents": _incidents,
    "chemicals": _chemicals,
    "instruments": _instruments,
    "words": _words,
    "choices": _choices,
    "emergencies": _emergencies,
    "questions": _questions,
}
