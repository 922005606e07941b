"""The rule source-changed-since-read."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.item_texts import ReadItem
from basinside.check.rule import Finding, rule
from basinside.model.prose import references
from basinside.problem import Level


@rule(level=Level.STOP)
def check_source_changed_since_read(checked: Checked) -> Iterator[Finding]:
    """No key rests on a value, or on an event, whose source has been followed by another.

    Looked at: the values in `rests_on`, those that right options refer to, and `built_on`.
    Why: the new edition of a source may say otherwise, and the key still says what the old one
    did.
    Bad: `rests_on: {values: {boil.hold: 20 min}}` while the source of boil.hold has
    `superseded_by`.
    Good: the value is read in the new source, and the item again.
    Source: common practice.
    """
    content = checked.content
    old = {name for name, source in content.sources.items() if source.superseded_by}
    if not old:
        return
    for read in checked.items:
        for name in _values(read):
            figure = content.figures.get(name)
            source = figure.source.partition(" ")[0] if figure and figure.source else ""
            if source in old:
                new = content.sources[source].superseded_by
                yield Finding(
                    read.item.place,
                    f"{read.name} rests on {name}, whose source ({checked.cited(source)}) was"
                    f" followed by {new}",
                    "Read the value in the new source, and then the item again.",
                )
        built = read.item.built_on
        source = built.source.partition(" ")[0] if built else ""
        if built and source in old:
            new = content.sources[source].superseded_by
            yield Finding(
                built.place.at("source"),
                f"{read.name} is built on {checked.cited(source)}, which was followed by {new}",
                "Read the new one, and then the item again.",
                (read.item.place,),
            )


def _values(read: ReadItem) -> dict[str, None]:
    rest = read.rests_on
    names = [*(rest.values if rest else ())]
    names += [each.figure for option in read.right for each in references(option.option.text)]
    return dict.fromkeys(names)
