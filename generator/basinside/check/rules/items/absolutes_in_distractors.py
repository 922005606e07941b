"""The rule absolutes-in-distractors."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.item_texts import ReadOption, words_of
from basinside.check.item_words import ItemWords
from basinside.check.rule import Finding, rule
from basinside.problem import Level


@rule(level=Level.WARN)
def check_absolutes_in_distractors(checked: Checked) -> Iterator[Finding]:
    """Words such as “always” and “never” do not stand in wrong options alone.

    It asks when half of the wrong options or more have such a word and no right one has.
    Why: people learn that such options are wrong, and choose the other without knowing anything.
    Bad: `wrong: It must always be boiled` and `wrong: Only chlorine kills`
    Good: `wrong: It is boiled` and `wrong: It is laid in chlorine`
    Source: Haladyna, Downing and Rodriguez, A review of multiple-choice item-writing guidelines,
    2002, guideline 28a.
    """
    words = checked.item_words
    if words is None:
        return
    for read in checked.items:
        if words.absolutes.isdisjoint(read.said):
            continue
        found = [(each, claimed) for each in read.wrong if (claimed := _claims(each, words))]
        if not found or 2 * len(found) < len(read.wrong):
            continue
        if any(not words.absolutes.isdisjoint(each.words) for each in read.right):
            continue
        said = dict.fromkeys(word for _, claims in found for word in claims)
        yield Finding(
            found[0][0].option.place,
            f"{len(found)} of the {len(read.wrong)} wrong options of {read.name} say"
            f" “{'”, “'.join(said)}”, and no right one does",
            "Say it without, or with one in the right option too.",
            (read.item.place,),
        )


def _claims(option: ReadOption, words: ItemWords) -> list[str]:
    """Return the words of an option that claim too much."""
    if words.absolutes.isdisjoint(option.words):
        return []
    return [
        word for word in words_of(words.harmless.sub("", option.text)) if word in words.absolutes
    ]
