"""A form drawn from the assessment pool: seeded, stratified by topic, meeting the blueprint.

The same pool, assessment and seed give the same form. The order of items and of options is
drawn too and kept in the form, for page and paper alike.
"""

from __future__ import annotations

import random
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from basinside.canonical import digest
from basinside.derive.plans import marking_plan
from basinside.marking import quotas
from basinside.model.content import AskedItem, Content
from basinside.model.prose import Words, read_prose
from basinside.model.quiz import Assessment
from basinside.model.words import FORM_KINDS, THINKING

__all__ = [
    "DrawnItem",
    "UnfillableError",
    "draw_form",
    "drawn_digest",
    "form_documents",
    "quotas",
    "shown_text",
]


class UnfillableError(ValueError):
    """The pool cannot fill the blueprint; the message says what is short."""


@dataclass(frozen=True, slots=True, kw_only=True)
class DrawnItem:
    """An item of a form, with its options in the form's order (authored positions)."""

    asked: AskedItem
    order: tuple[int, ...]


def draw_form(content: Content, assessment: Assessment, seed: bytes) -> tuple[DrawnItem, ...]:
    """Return the items of one form.

    Items of one scenario stand together, in their written order. Among the many forms that meet
    the topic quotas the draw is repeated, seeded, until the thinking shares are met too.

    Raises:
        UnfillableError: when a topic has too few items, no draw meets the thinking shares, or an
            item is of a kind that no form can hold.
    """
    chance = random.Random(seed)  # noqa: S311 - a seed, kept secret inside the envelope
    pool = list(content.items("assessment"))
    by_topic: dict[str, list[AskedItem]] = {}
    for asked in pool:
        if asked.item.kind not in FORM_KINDS:
            raise UnfillableError(
                f"{asked.item.item} is of kind {asked.item.kind}, which a sealed form cannot hold"
                " yet; move it to a practice file"
            )
        by_topic.setdefault(asked.topic, []).append(asked)
    if sum(assessment.blueprint.topics.values()) != 100:
        raise UnfillableError("the shares of the topics do not make 100 %")
    wanted = quotas(assessment.blueprint.topics, assessment.items)
    for topic, number in wanted.items():
        have = len(by_topic.get(topic, ()))
        if have < number:
            raise UnfillableError(f"{topic} needs {number} items but the pool has {have}")
    for _ in range(2_000):
        chosen = [
            asked
            for topic, number in wanted.items()
            for asked in chance.sample(by_topic[topic], number)
        ]
        if _thinking_met(assessment, chosen):
            return tuple(
                DrawnItem(asked=asked, order=_shuffled(chance, len(asked.item.options)))
                for asked in _arranged(chance, chosen, pool)
            )
    raise UnfillableError("no draw has enough items of the kinds of thinking asked for")


def _thinking_met(assessment: Assessment, chosen: list[AskedItem]) -> bool:
    for thinking, share in assessment.blueprint.at_least.items():
        floor = THINKING.index(thinking)
        have = sum(THINKING.index(asked.item.thinking) >= floor for asked in chosen)
        if have * 100 < share * len(chosen):
            return False
    return True


def _arranged(
    chance: random.Random, chosen: list[AskedItem], pool: list[AskedItem]
) -> list[AskedItem]:
    groups: dict[str, list[AskedItem]] = {}
    place = {asked.item.item: n for n, asked in enumerate(pool)}
    for asked in chosen:
        key = asked.scenario.scenario if asked.scenario else f"/{asked.item.item}"
        groups.setdefault(key, []).append(asked)
    keys = sorted(groups)
    chance.shuffle(keys)
    return [
        asked
        for key in keys
        for asked in sorted(groups[key], key=lambda each: place[each.item.item])
    ]


def _shuffled(chance: random.Random, number: int) -> tuple[int, ...]:
    order = list(range(number))
    chance.shuffle(order)
    return tuple(order)


def form_documents(
    content: Content, assessment: Assessment, form: str, seed: bytes
) -> tuple[dict[str, Any], dict[str, Any]]:
    """Return what is sealed: the form as readers see it, and its keys.

    Both hold finished text (references replaced by values as people read them), so that a form
    stays what it was when a value changes later.
    """
    drawn = draw_form(content, assessment, seed)
    handbook = content.handbook
    head = {
        "handbook": handbook.handbook if handbook else "",
        "edition": handbook.edition if handbook else "",
        "assessment": assessment.assessment,
        "version": assessment.version,
        "form": form,
    }
    items, keys = [], []
    for each in drawn:
        item = each.asked.item
        options = [item.options[n] for n in each.order]
        items.append(
            {
                "item": item.item,
                "kind": item.kind,
                "topic": each.asked.topic,
                "situation": shown_text(each.asked.situation, content),
                "stem": shown_text(item.stem, content),
                "options": [shown_text(option.text, content) for option in options],
                "scenario": each.asked.scenario.scenario if each.asked.scenario else "",
            }
        )
        keys.append(
            {
                "plan": marking_plan(item, options),
                "reasons": [shown_text(option.because or "", content) for option in options],
                "beliefs": [shown_text(option.shows or "", content) for option in options],
                "about": list(item.about),
            }
        )
    form_document = {
        "format": "basinside/form/1",
        **head,
        "title": assessment.title,
        "seed": seed.hex(),
        "items": items,
        **({"minutes": assessment.minutes} if assessment.minutes else {}),
    }
    keys_document = {
        "format": "basinside/keys/1",
        **head,
        "form_drawn": drawn_digest(form_document),
        "pass_percent": assessment.pass_.percent,
        "items": keys,
    }
    return form_document, keys_document


def drawn_digest(form_document: Mapping[str, Any]) -> str:
    """Return ``drawn-v1`` of a form as it was drawn.

    It stands in the sealed keys and nowhere else, so that keys of another drawing under the same
    name do not mark this one: their options stood in another order.
    """
    return digest("drawn", form_document)


def shown_text(text: str, content: Content) -> str:
    """Return a sentence with every reference written out as people read the value."""
    parts = []
    for span in read_prose(text) if text else ():
        if isinstance(span, Words):
            parts.append(span.text)
            continue
        figure = content.figures.get(span.figure)
        if figure is None:
            parts.append(span.figure)
        else:
            value = figure.value.in_unit(span.unit) if span.unit else figure.value
            parts.append(value.text())
    return "".join(parts)
