"""Every value once, with its source and where it is used."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import PurePosixPath

from basinside.model.entry import FigureRef
from basinside.model.figure import Figure, SourceSays
from basinside.model.prose import references as prose_references
from basinside.render.view_types import (
    LinkView,
    MovedView,
    ValueGroupView,
    ValuesView,
    ValueView,
    plain,
)
from basinside.render.views.decisions import by_whom
from basinside.render.views.spot import Spot, day_words, ended, fact, present, state
from basinside.render.views.titles import procedure_title
from basinside.render.views.waivers import waiver_views
from basinside.render.wording import _, n_, sentence


def values_view(spot: Spot) -> ValuesView:
    """Return the page of every value, with the way on to each choice between sources."""
    used = uses_of_values(spot)
    groups: dict[str, list[ValueView]] = {}
    for name, figure in spot.desk.content.figures.items():
        subject = PurePosixPath(figure.place.file).stem
        groups.setdefault(subject, []).append(_value(spot, name, figure, used))
    return ValuesView(
        title=_("Values"),
        lead=plain(
            _(
                "Every time, temperature, strength and limit of this handbook stands here once,"
                " with its source. Pages show it from here."
            )
        ),
        jump_label=_("On this page"),
        jump=tuple(
            LinkView(
                text=_subject(name),
                href=f"#about-{name}",
                note=n_("one value", "{n} values", len(rows)),
            )
            for name, rows in groups.items()
        ),
        groups=tuple(
            ValueGroupView(anchor=f"about-{name}", heading=_subject(name), rows=tuple(rows))
            for name, rows in groups.items()
        ),
        choices_heading=_("Where sources differ, and what we chose"),
        choices_lead=plain(_("Each has its place on a page of its own.")),
        moved=tuple(
            MovedView(
                anchor=name,
                link=LinkView(text=sentence(choice.is_), href=spot.link(f"choices.html#{name}")),
            )
            for name, choice in spot.desk.content.choices.items()
        ),
    )


def _subject(name: str) -> str:
    return sentence(name.replace("-", " "))


def _value(spot: Spot, name: str, figure: Figure, used: dict[str, list[LinkView]]) -> ValueView:
    return ValueView(
        anchor=name,
        figure=spot.shown_figure(figure, ""),
        is_=spot.prose(state(figure.is_)),
        facts=present(
            fact(_("Source"), spot.basis(figure)),
            fact(_("The source says"), _source_says(figure.source_says)),
            fact(_("The maker says"), _source_says(figure.maker_says)),
            fact(
                _("Accepted by"),
                plain(ended(by_whom(figure.accepted))) if figure.accepted else (),
            ),
            fact(_("Another view"), spot.prose(figure.other_view)),
            fact(_("Checked"), day_words(figure.checked) if figure.checked else ""),
        ),
        used_label=n_(
            "Go to the one place where it is used",
            "Go to one of the {n} places where it is used",
            len(used.get(name, ())),
        ),
        used=tuple(used.get(name, ())),
        waivers=waiver_views(spot, figure.waive),
    )


def _source_says(says: SourceSays | None) -> str:
    if says is None:
        return ""
    if says.at_least is not None:
        return _("at least {value}").format(value=says.at_least.text())
    if says.at_most is not None:
        return _("at most {value}").format(value=says.at_most.text())
    if says.exactly is not None:
        return _("exactly {value}").format(value=says.exactly.text())
    if says.between is not None:
        low, high = says.between
        return _("between {low} and {high}").format(low=low.text(), high=high.text())
    return ""


def uses_of_values(spot: Spot) -> dict[str, list[LinkView]]:
    """Return, for each value, the pages that hold to it, each once."""
    found: dict[str, dict[str, str]] = {}
    for name, label, target in _uses(spot):
        found.setdefault(name, {}).setdefault(target, label)
    return {
        name: [LinkView(text=label, href=spot.link(target)) for target, label in targets.items()]
        for name, targets in found.items()
    }


def _uses(spot: Spot) -> Iterator[tuple[str, str, str]]:
    """Yield (value, words, address) for each place that holds to a value."""
    content = spot.desk.content
    for name in content.procedures:
        yield from _uses_in_steps(spot, name)
    for route in content.routes.values():
        held = (route.hold, route.temperature, route.strength)
        yield from _held_to(route.name, f"routes.html#{route.route}", held)
    for instrument in content.instruments.values():
        limit = instrument.use_limit
        tests = instrument.function_test
        yield from _held_to(
            instrument.name,
            f"instruments/{instrument.instrument}.html",
            (*(line.wait for line in tests), limit.at if limit else None),
            tuple(text for line in tests for text in (line.do, line.expect, line.if_not)),
        )
    for agent in content.agents.values():
        check = agent.strength_check
        said = (agent.prepare, agent.harms, agent.waste, agent.ventilation)
        yield from _held_to(
            agent.name,
            f"agents/{agent.agent}.html",
            (agent.life, agent.stock_life, agent.air_limit, check.at_least if check else None),
            (*said, check.how if check else None),
        )
    for incident in content.incidents.values():
        yield from _held_to(
            incident.name,
            f"incidents.html#{incident.incident}",
            (incident.wait, incident.within),
            (incident.first_minute, incident.then),
        )
    for name, choice in content.choices.items():
        others = (each.what for each in choice.not_chosen)
        texts = (choice.chosen, choice.because, *others)
        yield from _held_to(sentence(choice.is_), f"choices.html#{name}", (), texts)


def _held_to(
    label: str,
    target: str,
    references: tuple[FigureRef | None, ...],
    texts: tuple[str | None, ...] = (),
) -> Iterator[tuple[str, str, str]]:
    """Yield (value, words, address) for the values that an entry refers to or mentions."""
    for reference in references:
        if reference is not None:
            yield reference.figure, label, target
    for text in texts:
        for mentioned in prose_references(text or ""):
            yield mentioned.figure, label, target


def _uses_in_steps(spot: Spot, name: str) -> Iterator[tuple[str, str, str]]:
    whole = spot.desk.whole(name)
    title = procedure_title(whole)
    for placed in whole.steps:
        step = placed.step
        longer = step.hold.no_longer_than if step.hold else None
        texts = tuple(each for each in (step.do, step.why, step.wall) if each and "{{" in each)
        held = (step.hold, step.wait, step.strength, step.temperature, step.longest, longer)
        if texts or any(held):
            target = f"procedures/{name}.html#{step.step}"
            label = _("{title}, step {n}").format(title=title, n=placed.number)
            yield from _held_to(label, target, held, texts)
