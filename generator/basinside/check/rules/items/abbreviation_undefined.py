"""The rule abbreviation-undefined."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.item_texts import ReadItem
from basinside.check.known_words import (
    CAPITALS,
    explained_forms,
    is_explained,
    said_loudly,
    short_forms,
)
from basinside.check.rule import Finding, rule
from basinside.problem import Level


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
    explained = explained_forms(checked.content)
    said = _Shorts()
    unknown: list[tuple[ReadItem, str]] = []
    for read in checked.items:
        shorts = [*said[read.situation], *said[read.stem]]
        for each in read.options:
            shorts += said[each.text]
        if not shorts:
            continue
        text = _text(read)
        for short in dict.fromkeys(shorts):
            if not is_explained(short, explained, text):
                unknown.append((read, short))
    if not unknown:
        return
    loud = said_loudly({short for _, short in unknown}, "\n".join(map(_text, checked.items)))
    for read, short in unknown:
        if short not in loud:
            yield Finding(
                read.item.place.at("stem"),
                f"{read.name} says “{short}”, which the glossary does not have",
                "Write it out, or put it into content/words.yaml.",
                (read.item.place,),
            )


class _Shorts(dict[str, tuple[str, ...]]):
    """Texts to the short forms in them, each looked for once."""

    def __missing__(self, text: str) -> tuple[str, ...]:
        found = self[text] = tuple(short_forms(text)) if CAPITALS.search(text) else ()
        return found


def _text(read: ReadItem) -> str:
    return " ".join((read.situation, read.stem, *(each.text for each in read.options)))
