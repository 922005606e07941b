"""The rule disputed-figure-as-key."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.item_texts import ReadItem
from basinside.check.rule import Finding, rule
from basinside.check.saying import listed
from basinside.model.item_kinds import NumberFrom
from basinside.problem import Level


@rule(level=Level.STOP)
def check_disputed_figure_as_key(checked: Checked) -> Iterator[Finding]:
    """Where sources differ an item asks what is so here: “in this clinic”, “here”, “our”.

    Asked of items whose key rests on a value with another view (`other_view`), or that are about a
    choice between sources (`about`).
    Why: somebody who learned elsewhere that a bath is five times as strong knows something that is
    right there. An item that asks what is right everywhere teaches that others work wrongly.
    Bad: `stem: How strong is a bath for disinfecting?`
    Good: `stem: How strong is the bath for disinfecting in this clinic?`
    Source: common practice.
    """
    words = checked.item_words
    if words is None:
        return
    content = checked.content
    disputed = {name for name, figure in content.figures.items() if figure.other_view}
    for read in checked.items:
        found = [name for name in _rested_on(read) if name in disputed]
        found += [name for name in read.about if name in content.choices]
        if not found or words.here.search(f"{read.situation} {read.stem}"):
            continue
        yield Finding(
            read.item.place.at("stem"),
            f"{read.name} rests on {listed(found)}, where others hold another view, and does not"
            " ask what is so here",
            "Write “in this clinic”, “here” or “our” into the stem or the situation.",
            (read.item.place,),
        )


def _rested_on(read: ReadItem) -> list[str]:
    names = [*read.rests_on.values] if read.rests_on else []
    number = None if read.options_only else read.item.number
    if number is not None and isinstance(number.right, NumberFrom):
        names.append(number.right.figure)
    for option in read.right:
        names += option.figures
    return names
