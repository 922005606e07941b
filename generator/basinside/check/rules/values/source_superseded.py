"""The rule source-superseded."""

from __future__ import annotations

from collections.abc import Iterator

from basinside.check.checked import Checked
from basinside.check.rule import Finding, rule
from basinside.check.taken_over import taken_over
from basinside.model.content import Content
from basinside.problem import Level, Place


@rule(level=Level.WARN)
def check_source_superseded(checked: Checked) -> Iterator[Finding]:
    """What rests on a source that another one replaced is read again.

    Why: guidance is withdrawn, and a value copied from it lives on in every handbook. It warns and
    does not stop, so that whoever hears of a new edition writes `superseded_by` down at once; what
    was not chosen may quote the old one.
    Bad: `superseded_by: cdc-2024` at the source, and values that cite the old one.
    Good: the new one read, and each value that cited the old one cites it.
    Source: common practice.
    """
    sources = checked.content.sources
    gone = {name: each.superseded_by for name, each in sources.items() if each.superseded_by}
    if not gone:
        return
    for what, citation, place, owner in _cited(checked.content):
        name = citation.partition(" ")[0]
        if name in gone:
            yield Finding(
                place,
                f"{what} rests on {checked.cited(citation)}, which “{gone[name]}” replaced",
                "Read the new one, then cite it.",
                (owner, sources[name].place),
            )


def _cited(content: Content) -> Iterator[tuple[str, str, Place, Place]]:
    """Yield what rests on a source, the citation, its place and that of its entry."""
    for name, figure in content.figures.items():
        if figure.source:
            yield name, figure.source, figure.place.at("source"), figure.place
        if figure.maker_says:
            said = figure.maker_says
            yield name, said.source, said.place.at("source"), figure.place
    for name, choice in content.choices.items():
        if choice.source:
            yield f"the choice {name}", choice.source, choice.place.at("source"), choice.place
    yield from _cited_by_instruments(content)
    for name, agent in content.agents.items():
        if agent.source:
            yield f"the card of {name}", agent.source, agent.place.at("source"), agent.place
    for name, incident in content.incidents.items():
        if incident.source:
            place = incident.place
            yield f"the incident {name}", incident.source, place.at("source"), place


def _cited_by_instruments(content: Content) -> Iterator[tuple[str, str, Place, Place]]:
    for name, instrument in content.instruments.items():
        for route, reaches in instrument.reaches.items():
            if taken_over(instrument, reaches.place):
                continue
            what = f"that {route} reaches its level on {name}"
            yield what, reaches.source, reaches.place.at("source"), instrument.place
        for part in instrument.parts:
            for node in (part.survives, part.level_decided):
                if node is not None and not taken_over(instrument, node.place):
                    what = f"the {part.shown_name} of {name}"
                    yield what, node.source, node.place.at("source"), instrument.place
