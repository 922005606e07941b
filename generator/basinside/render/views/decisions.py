"""What was decided by name: choices, levels, what to do when nothing is allowed, waivers."""

from __future__ import annotations

from basinside.model.entry import Decided
from basinside.render.view_types import FactView, SectionView, SpanView, plain
from basinside.render.views.spot import Spot, day_words, ended, fact
from basinside.render.views.waived import placed_waivers
from basinside.render.wording import _, listed, sentence


def decided_sections(spot: Spot) -> tuple[SectionView, ...]:
    """Return the parts of the visit's page that hold decisions; empty ones say so."""
    return (
        _section(
            "choices",
            _("Choices where sources differ"),
            _choices(spot),
            _("No choice between sources was needed."),
        ),
        _section(
            "levels",
            _("Levels decided by name"),
            _levels(spot),
            _("No level differs from the class of its contact."),
        ),
        _section(
            "emergency",
            _("When nothing is allowed and somebody cannot wait"),
            _emergency(spot),
            _("No emergency rule is written."),
        ),
        _section(
            "waivers",
            _("Rules that are waived for a while"),
            tuple(
                fact(where.text, spot.prose(ended(each.because)), f"{each.rule} · {by_whom(each)}")
                for where, each in placed_waivers(spot)
            ),
            _("Nothing is waived."),
        ),
    )


def by_whom(decided: Decided) -> str:
    """Return who decided, when, and when it is looked at again or ends."""
    people = sentence(listed([each for each in (decided.by, decided.second) if each]))
    said = [people, day_words(decided.on)]
    if decided.look_again:
        said.append(_("look again by {day}").format(day=day_words(decided.look_again)))
    if decided.until:
        said.append(_("until {day}").format(day=day_words(decided.until)))
    return ", ".join(said)


def _section(anchor: str, heading: str, facts: tuple[FactView, ...], empty: str) -> SectionView:
    return SectionView(
        anchor=anchor, heading=heading, text=() if facts else (plain(empty),), facts=facts
    )


def _choices(spot: Spot) -> tuple[FactView, ...]:
    return tuple(
        fact(
            sentence(choice.is_),
            (
                *spot.prose(sentence(ended(choice.chosen))),
                *plain(" "),
                SpanView(kind="link", text=_("Why"), href=spot.link(f"choices.html#{name}")),
            ),
            by_whom(choice),
        )
        for name, choice in spot.desk.content.choices.items()
    )


def _levels(spot: Spot) -> tuple[FactView, ...]:
    return tuple(
        fact(
            _("{instrument}: {part}").format(instrument=instrument.name, part=part.shown_name),
            (
                *plain(_("{level}. The other view: ").format(level=sentence(decided.level))),
                *spot.prose(ended(decided.other_view)),
            ),
            by_whom(decided),
        )
        for instrument in spot.desk.content.instruments.values()
        for part in instrument.parts
        if (decided := part.level_decided) is not None
    )


def _emergency(spot: Spot) -> tuple[FactView, ...]:
    handbook = spot.desk.content.handbook
    return tuple(
        fact(sentence(each.when), spot.prose(each.do), by_whom(each))
        for each in (handbook.clinic.emergency if handbook else ())
    )
