"""What is due: every day on which somebody has to look at something again, in order."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, timedelta
from typing import NamedTuple

from basinside.constants import LOOK_UP_AGAIN_DAYS
from basinside.model.entry import Decided
from basinside.model.figure import Figure
from basinside.render.view_types import (
    DueDayView,
    DueRowView,
    DueView,
    LinkView,
    PastView,
    Prose,
    plain,
)
from basinside.render.views.spot import Spot, day_words
from basinside.render.views.titles import procedure_title
from basinside.render.views.waived import placed_waivers
from basinside.render.views.waivers import rule_link
from basinside.render.wording import _, listed, n_, sentence


class _Due(NamedTuple):
    """Something that is due: the last good day, what it is, and what is said beside it."""

    day: date
    what: LinkView
    note: Prose
    several: tuple[LinkView, ...] = ()


def due_view(spot: Spot) -> DueView:
    """Return the page; what is past is marked by the page's script, for a page has no clock."""
    days: dict[date, list[_Due]] = {}
    for each in sorted(_all(spot), key=lambda one: one.day):
        days.setdefault(each.day, []).append(each)
    unchecked = tuple(
        _value_link(spot, name, figure)
        for name, figure in spot.desk.content.figures.items()
        if figure.source and figure.checked is None
    )
    return DueView(
        title=_("What is due"),
        lead=plain(
            _(
                "Every day on which somebody looks at something again, the first one on top. What"
                " is past by the date of this device is marked."
            )
        ),
        notes=() if days else (plain(_("Nothing in this handbook has a day.")),),
        days=tuple(
            DueDayView(
                day=day_words(day),
                machine=day.isoformat(),
                rows=tuple(_row(each) for each in several),
            )
            for day, several in days.items()
        ),
        undated_heading=_("Values with a source and without a day"),
        undated_lead=plain(
            _("Nobody wrote when these were last looked up. Look each up and write the day.")
        ),
        undated=unchecked,
    )


def _row(each: _Due) -> DueRowView:
    return DueRowView(
        past=PastView(word=_("Overdue"), after=each.day.isoformat()),
        what=each.what,
        note=each.note,
        several_label=n_("Show the one value", "Show the {n} values", len(each.several))
        if each.several
        else "",
        several=each.several,
    )


def _all(spot: Spot) -> Iterator[_Due]:
    """Yield all that is due: the handbook itself, decisions, waivers, values."""
    handbook = spot.desk.content.handbook
    if handbook:
        yield _Due(
            handbook.review_by,
            LinkView(text=_("This handbook is reviewed"), href=spot.link("index.html")),
            plain(_("By the {who}.").format(who=handbook.responsible)),
        )
    for what, decided in _decided(spot):
        yield from _again(what, decided)
    for where, waiver in placed_waivers(spot):
        if waiver.until:
            said = _("Waiver ends: {where}").format(where=where.text)
            what = LinkView(text=said, href=where.href or spot.link("waivers.html"))
            yield _Due(waiver.until, what, (*rule_link(spot, waiver.rule), *plain(".")))
    yield from _looked_up(spot)


def _again(what: LinkView, decided: Decided) -> Iterator[_Due]:
    """Yield the day to look again, and the day a decision ends."""
    for day, said in (
        (decided.look_again, _("Look again: {what}")),
        (decided.until, _("Ends: {what}")),
    ):
        if day:
            link = LinkView(text=said.format(what=what.text), href=what.href)
            yield _Due(day, link, plain(_by(decided)))


def _by(decided: Decided) -> str:
    people = sentence(listed([each for each in (decided.by, decided.second) if each]))
    return _("{people}, on {day}.").format(people=people, day=day_words(decided.on))


def _decided(spot: Spot) -> Iterator[tuple[LinkView, Decided]]:
    content = spot.desk.content
    for name, choice in content.choices.items():
        href = spot.link(f"choices.html#{name}")
        yield LinkView(text=spot.words(choice.is_), href=href), choice
    for instrument in content.instruments.values():
        for part in instrument.parts:
            if part.level_decided:
                said = _("level of {instrument}: {part}").format(
                    instrument=instrument.name, part=part.shown_name
                )
                href = spot.link(f"instruments/{instrument.instrument}.html#{part.part}")
                yield LinkView(text=said, href=href), part.level_decided
    for each in content.handbook.clinic.emergency if content.handbook else ():
        said = _("emergency rule: {when}").format(when=spot.words(each.when).rstrip("."))
        yield LinkView(text=said, href=spot.link("visit.html#emergency")), each
    for name, figure in content.figures.items():
        if figure.accepted:
            said = _("accepted here: {what}").format(what=spot.words(figure.is_))
            yield LinkView(text=said, href=spot.link(f"values.html#{name}")), figure.accepted
    for name, procedure in content.procedures.items():
        for _stage, step in procedure.steps:
            if step.wording_only:
                said = _("only the words of a step changed: {title}").format(
                    title=procedure_title(spot.desk.whole(name))
                )
                href = spot.link(f"procedures/{name}.html#{step.step}")
                yield LinkView(text=said, href=href), step.wording_only


def _looked_up(spot: Spot) -> Iterator[_Due]:
    """Yield, for each day on which values were looked up, when that is done again."""
    by_day: dict[date, list[LinkView]] = {}
    for name, figure in spot.desk.content.figures.items():
        if figure.checked:
            by_day.setdefault(figure.checked, []).append(_value_link(spot, name, figure))
    for day, links in by_day.items():
        said = n_("Look up one value again", "Look up {n} values again", len(links))
        yield _Due(
            day + timedelta(days=LOOK_UP_AGAIN_DAYS),
            LinkView(text=said, href=spot.link("values.html")),
            plain(_("Last looked up in the sources on {day}.").format(day=day_words(day))),
            tuple(links),
        )


def _value_link(spot: Spot, name: str, figure: Figure) -> LinkView:
    text = sentence(spot.words(figure.is_))
    return LinkView(text=text, href=spot.link(f"values.html#{name}"), note=figure.value.text())
