"""The rule invented-maker-teaches-science."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from basinside.check.checked import Checked, Sound
from basinside.check.rule import Finding, rule
from basinside.model.words import Basis
from basinside.problem import Level

INVENTED: Final = "invented maker"
"""What a demonstration writes as `by` of instructions that nobody ever printed."""
SCIENCE: Final[frozenset[Basis]] = frozenset(
    {"published", "published (read second-hand)", "computed"}
)


@rule(level=Level.STOP)
def check_invented_maker_teaches_science(checked: Checked) -> Iterator[Finding]:
    """An invented maker gives permissions and limits; what is known comes from a real source.

    Why: a demonstration is copied. What its invented instructions permit is harmless, but a time
    or a level that they made up would be taken for something that was shown. Its word counts for
    what a part survives, how it is oiled and tested, and for values of the basis “manufacturer”.
    Not for published or computed values, nor alone for the level that a route reaches: then one
    of the route's own values has another source. What a question was built on was printed.
    Bad: `basis: published` with `source: larch-instructions §4`, whose `by` is “invented maker”.
    Good: `basis: manufacturer` for that value; or `source: iarc-manual p.130`.
    Source: common practice.
    """
    content = checked.content
    invented = {
        name for name, source in content.sources.items() if source.by.strip().casefold() == INVENTED
    }
    if not invented:
        return
    for name, figure in content.figures.items():
        if figure.basis in SCIENCE and figure.source and _of(figure.source) in invented:
            yield Finding(
                figure.place.at("source"),
                f"{name} has the basis “{figure.basis}” and rests on"
                f" {checked.cited(figure.source)}",
                "Write “basis: manufacturer”, or a source that printed it.",
                (figure.place,),
            )
    told: set[tuple[str, str]] = set()
    for each in checked.sound:
        key = (each.instrument.instrument, each.route.route)
        reaches = each.instrument.reaches.get(each.route.route)
        if key in told or reaches is None or _of(reaches.source) not in invented:
            continue
        told.add(key)
        if not _backed(checked, each, invented):
            yield Finding(
                reaches.place.at("source"),
                f"only {checked.cited(reaches.source)} says that {key[1]} brings {key[0]} to"
                f" {reaches.level}",
                "Cite who showed it, here or at the time of the route.",
                (each.instrument.place,),
            )
    for asked in content.items():
        built = asked.item.built_on or (asked.scenario.built_on if asked.scenario else None)
        if built and _of(built.source) in invented:
            yield Finding(
                built.place.at("source"),
                f"{asked.item.item} is built on an event in {checked.cited(built.source)}",
                "Cite where it was printed.",
                (asked.item.place,),
            )


def _of(citation: str) -> str:
    return citation.partition(" ")[0]


def _backed(checked: Checked, each: Sound, invented: set[str]) -> bool:
    """Whether a value of the route has a source that is not invented."""
    for reference in (each.route.hold, each.route.strength, each.route.temperature):
        figure = checked.figure(reference)
        if figure and figure.source and _of(figure.source) not in invented:
            return True
    return False
