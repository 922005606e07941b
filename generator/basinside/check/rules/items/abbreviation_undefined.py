"""The rule abbreviation-undefined."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Final

from basinside.check.checked import Checked
from basinside.check.item_texts import ReadItem
from basinside.check.rule import Finding, rule
from basinside.problem import Level
from basinside.units import UNITS

_SHORT: Final = re.compile(r"[A-Z][A-Z0-9]*[A-Z][A-Z0-9]*s?(?![\w-])")
_JOINS: Final = ("-", "_")
_SMALL: Final = re.compile(r"\b[a-z]+\b")


@rule(level=Level.WARN)
def check_abbreviation_undefined(checked: Checked) -> Iterator[Finding]:
    """A short form of capitals stands in the glossary, or is explained in the item in brackets.

    A word that the handbook also writes in small letters is no short form but said loudly; units
    are none either.
    Why: who has never heard what the letters stand for fails a question about something else.
    Bad: `stem: What does a TST strip show?`
    Good: `stem: What does a strip for time, steam and temperature (TST) show?`
    Source: Haladyna, Downing and Rodriguez, A review of multiple-choice item-writing guidelines,
    2002, guideline 13.
    """
    known = _known(checked)
    unknown: list[tuple[ReadItem, str]] = []
    for read in checked.items:
        text = _text(read)
        for short in dict.fromkeys(_shorts(text)):
            bare = short.removesuffix("s")
            if known.isdisjoint((short, bare, bare.casefold())) and f"({bare}" not in text:
                unknown.append((read, short))
    if not unknown:
        return
    small = {word for read in checked.items for word in _SMALL.findall(_text(read))}
    for read, short in unknown:
        if short.casefold() not in small:
            yield Finding(
                read.item.place.at("stem"),
                f"{read.name} says “{short}”, which the glossary does not have",
                "Write it out, or put it into content/words.yaml.",
                (read.item.place,),
            )


def _shorts(text: str) -> Iterator[str]:
    for found in _SHORT.finditer(text):
        before = text[found.start() - 1 : found.start()]
        if not (before.isalnum() or before in _JOINS):
            yield found[0]


def _text(read: ReadItem) -> str:
    return " ".join((read.situation, read.stem, *(each.text for each in read.options)))


def _known(checked: Checked) -> frozenset[str]:
    content = checked.content
    named = (
        *(text for word in content.words.values() for text in (word.word, *word.also)),
        *(each.name for each in content.agents.values()),
        *(each.name for each in content.equipment.values()),
        *UNITS,
    )
    return frozenset(word.strip("(),.") for text in named for word in text.split())
