"""For the trainer: why time and heat belong together, with this clinic's own numbers.

Every number that follows from another is worked out here by ``science`` when the page is made.
Only the invented records and the rows of tables are written down.
"""

from __future__ import annotations

from typing import Final

from basinside.render.view_types import (
    LinkView,
    Prose,
    SectionView,
    TableView,
    TrainerView,
    plain,
)
from basinside.render.views.spot import Spot
from basinside.render.views.trainer_loads import load_sections, vessel_sections
from basinside.render.views.trainer_numbers import (
    altitude_metres,
    amount,
    reference_celsius,
    steam_route,
    worth_minutes,
)
from basinside.render.views.ways import tenths_down
from basinside.render.wording import _
from basinside.science.boiling import boiling_point_celsius
from basinside.science.lethality import Z_CELSIUS, lethal_rate, survivors

D_FIGURE: Final = "spore.d-value"
REFERENCE_CHOICE: Final = "f0.reference"
"""The ids under which a handbook keeps these, if it does."""

SHOWN_CELSIUS: Final = (90.0, 100.0, 110.0, 115.0, 118.0, 121.0, 124.0, 130.0, 134.0)
OTHER_REFERENCES: Final = (121.0, 121.11)  # other tables print these
SPORES: Final = 1_000_000  # on the strip of a usual spore test (common practice)


def trainer_view(spot: Spot) -> TrainerView:
    """Return the page for the trainer; what the handbook lacks is left out."""
    return TrainerView(
        title=_("For the trainer: time and heat belong together"),
        lead=plain(
            _(
                "F0 puts time and temperature into one number: the minutes at {reference}\u00a0°C"
                " that kill as many spores as the whole run. It is for teaching only."
            ).format(reference=f"{reference_celsius(spot):g}")
        ),
        rule=plain(
            _(
                "Staff release a load on time at temperature, on the indicator and on dryness."
                " Never on F0."
            )
        ),
        sections=(
            _minutes_worth(spot),
            *load_sections(spot),
            *_boiling(spot),
            *vessel_sections(spot),
            *_survivors(spot),
            _reference_section(spot),
        ),
    )


def _minutes_worth(spot: Spot) -> SectionView:
    reference = reference_celsius(spot)
    return SectionView(
        anchor="minute",
        heading=_("One minute is not like another"),
        text=(
            plain(
                _(
                    "Each {z}\u00a0°C more kills ten times as fast. One degree more or less is a"
                    " quarter more or less. So a vessel that is a little too cool needs far"
                    " more time."
                ).format(z=f"{Z_CELSIUS:g}")
            ),
        ),
        table=TableView(
            caption=_(
                "What a minute of moist heat is worth, in minutes at {reference}\u00a0°C"
            ).format(reference=f"{reference:g}"),
            columns=(
                _("Moist heat of"),
                _("One minute is worth"),
                _("Minutes needed for one at {reference}\u00a0°C").format(
                    reference=f"{reference:g}"
                ),
            ),
            rows=tuple(
                (
                    _("{celsius}\u00a0°C").format(celsius=f"{each:g}"),
                    amount(lethal_rate(each, reference)),
                    amount(1 / lethal_rate(each, reference)),
                )
                for each in SHOWN_CELSIUS
            ),
        ),
    )


def _boiling(spot: Spot) -> tuple[SectionView, ...]:
    content = spot.desk.content
    route = next((each for each in content.routes.values() if each.kind == "boiling"), None)
    hold = content.figures.get(route.hold.figure) if route and route.hold else None
    if route is None or route.hold is None or hold is None:
        return ()
    boil = boiling_point_celsius(altitude_metres(spot))
    minutes = float(hold.value.base) / 60
    worth = worth_minutes(spot, minutes, boil)
    again: Prose = (
        *plain(_("Boiling for ")),
        *spot.value_prose(route.hold),
        *plain(
            _(
                " at {boil}\u00a0°C, as water boils here, is worth {worth}\u00a0min"
                " at {reference}\u00a0°C. At the sea, at 100\u00a0°C, it would be"
                " worth {sea}\u00a0min."
            ).format(
                boil=tenths_down(boil),
                worth=amount(worth),
                reference=f"{reference_celsius(spot):g}",
                sea=amount(worth_minutes(spot, minutes, 100)),
            )
        ),
    )
    return (
        SectionView(
            anchor="boiling",
            heading=_("Why boiling is not sterilization"),
            text=(
                again,
                plain(
                    _(
                        "That is far too little for spores. It is plenty for germs that form none:"
                        " they die at lower heat. So boiling gives high-level disinfection and"
                        " never more, however long it goes on."
                    )
                ),
            ),
        ),
    )


def _survivors(spot: Spot) -> tuple[SectionView, ...]:
    figure, found = spot.desk.content.figures.get(D_FIGURE), steam_route(spot)
    if figure is None or found is None:
        return ()
    d_minutes = float(figure.value.base) / 60
    _route, heat, hold = found
    ours = worth_minutes(spot, float(hold.value.base) / 60, float(heat.value.base))
    shown = [d_minutes, 2 * d_minutes, 6 * d_minutes, ours]
    lead: Prose = (
        *plain(_("D is the time that leaves one spore in ten alive. For the test spore: ")),
        spot.value(D_FIGURE, figure),
        *plain(
            _(". Each further D leaves a tenth of the rest. Nothing is ever wholly dead on paper.")
        ),
    )
    return (
        SectionView(
            anchor="survivors",
            heading=_("How many spores are left"),
            text=(
                lead,
                plain(
                    _("The last row is our own hold: {minutes} at {heat}.").format(
                        minutes=hold.value.text(), heat=heat.value.text()
                    )
                ),
            ),
            table=TableView(
                caption=_("Of {spores} spores on a test strip").format(spores=f"{SPORES:,}"),
                columns=(_("F0"), _("Left alive")),
                rows=tuple(
                    (
                        _("{minutes}\u00a0min").format(minutes=amount(each)),
                        _left(survivors(SPORES, d_minutes, each)),
                    )
                    for each in shown
                ),
            ),
        ),
    )


def _left(count: float) -> str:
    if count >= 1:
        return _("about {n}").format(n=f"{count:,.0f}")
    return _("one, in about {n} such runs").format(n=amount(1 / count))


def _reference_section(spot: Spot) -> SectionView:
    reference = reference_celsius(spot)
    choice = spot.desk.content.choices.get(REFERENCE_CHOICE)
    base = lethal_rate(reference, reference)
    rows = []
    for other in OTHER_REFERENCES:
        ratio = lethal_rate(reference, other) / base - 1
        rows.append(
            (
                _("{celsius}\u00a0°C").format(celsius=f"{other:g}"),
                _("{percent}\u00a0%").format(percent=f"{ratio * 100:+.1f}"),
            )
        )
    return SectionView(
        anchor="reference",
        heading=_("Which temperature F0 refers to"),
        text=(
            plain(
                _(
                    "Tables differ. Always say the reference beside an F0. Here it is"
                    " {reference}\u00a0°C, and z is {z}\u00a0°C."
                ).format(reference=f"{reference:g}", z=f"{Z_CELSIUS:g}")
            ),
        ),
        table=TableView(
            caption=_("What another reference does to the same run"),
            columns=(_("Reference"), _("F0 changes by")),
            rows=tuple(rows),
        ),
        links=()
        if choice is None
        else (
            LinkView(
                text=_("Who chose this, and why"),
                href=spot.link(f"choices.html#{REFERENCE_CHOICE}"),
            ),
        ),
    )
