"""The rule loose-figure."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Final

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.check.strength_words import QUOTED
from basinside.model.prose import Words, read_prose
from basinside.problem import Level

_UNITS: Final = (
    "min(?:ute)?s?|h(?:ours?)?|s(?:econds?)?|days?|weeks?|months?|years?|°C|°F|degrees|k?Pa|bar|psi"
    "|m?[lL]|lit(?:re|er)s?|k?g|ppm|%|metres?|uses|rinses|tablets|minutos?|horas?|heures?|jours?"
)
LOOSE: Final = re.compile(rf"\d(?<![\d.,-]\d)\d*(?:[.,]\d+)?[ \u00a0]?(?:{_UNITS})(?![\w-])")
"""A number in figures with a unit behind it."""
DIGIT: Final = re.compile(r"\d")


@rule(level=Level.WARN)
def check_loose_figure(checked: Checked) -> Iterator[Finding]:
    """A number with a unit is a value that is kept once, and sentences refer to it.

    Why: a number typed into a sentence stays when the value changes, and the wall says another
    time than the page. Read are sentences that the clinic says of itself, and what is right in
    an item and why. Not read is what quotes somebody: the other view of a value, why a choice was
    made and what was not chosen, words in quotation marks. Of items not the situation and the
    wrong options, whose numbers are of a story or wrong on purpose, and where there is a situation
    not what is right either, which may be worked out from it.
    Bad: `do: Soak it for 20 min.`
    Good: `do: Soak it for {{ chlorine.hold }}.`
    Source: common practice.
    """
    loose = {text: found for text in checked.own_texts if (found := _loose(text))}
    for each in checked.sentences if loose else ():
        if each.own and each.text in loose:
            yield Finding(
                each.place,
                f"“{loose[each.text]}” stands here as words, and changes with no value",
                "Keep it as a figure with its basis, and refer to it in two braces.",
            )


def _loose(text: str) -> str:
    if "{{" in text:
        if not DIGIT.search(text):
            return ""
        text = "|".join(span.text for span in read_prose(text) if isinstance(span, Words))
    if "“" in text or '"' in text:
        text = QUOTED.sub("", text)
    found = LOOSE.search(text)
    return found.group() if found else ""
