"""The page of the calculators: what it asks, what this clinic usually needs, what to mind."""

from __future__ import annotations

from dataclasses import replace
from typing import Any, Final

from basinside.model.amounts import CAUTIONS, SOURCES, AmountKind
from basinside.render.amount_words import phrase
from basinside.render.view_types import LinkView, SignView, plain
from basinside.render.view_types.amounts import AmountSectionView, AmountsView
from basinside.render.view_types.procedure import DangerView
from basinside.render.views.amount_forms import amount_forms
from basinside.render.views.amount_tables import usual_table
from basinside.render.views.phrases import page_phrases
from basinside.render.views.spot import Spot
from basinside.render.wording import _

SIGNS: Final = {
    "gas": ("danger", "gas"),
    "burns": ("danger", "corrosive"),
    "fire": ("hazard", "oxidiser"),
    "scald": ("danger", "hot"),
    "steady-steam": ("danger", "steam under pressure"),
    "never-above-mark": ("mark", "general warning"),
    "never-alter": ("mark", "general warning"),
}
"""Which sign stands beside a caution; the others stand in words alone."""


def amounts_view(spot: Spot) -> AmountsView:
    """Return the page with every calculator."""
    sections = tuple(_section(spot, kind) for kind in CAUTIONS)
    return AmountsView(
        title=_("Amounts and times"),
        lead=plain(_lead(sections)),
        jump_label=_("What do you need?"),
        jump=tuple(LinkView(text=each.heading, href=f"#{each.kind}") for each in sections),
        sections=sections,
    )


def _lead(sections: tuple[AmountSectionView, ...]) -> str:
    """Return what the page is for; a handbook may as yet name no vessel, bottle or volume."""
    if not any(each.table for each in sections):
        return _(
            "Fill in the form. It shows how the answer is worked out, and says why when there"
            " is none."
        )
    return _(
        "The tables hold our own usual amounts. For anything else fill in the form."
        " It shows how the answer is worked out, and says why when there is none."
    )


def amounts_data(spot: Spot) -> dict[str, Any]:
    """Return what the page's script reckons with, and the forms it lays out."""
    ground = spot.desk.derived.amounts.ground
    return {
        "amount-ground": ground.data(),
        "amount-forms": amount_forms(spot),
        **page_phrases("amounts"),
    }


def amount_places() -> tuple[tuple[str, str, str], ...]:
    """Return (anchor, heading, lead) of each calculator, as it is looked for."""
    return tuple((kind, *_words(kind)) for kind in CAUTIONS)


def _section(spot: Spot, kind: AmountKind) -> AmountSectionView:
    heading, lead = _words(kind)
    return AmountSectionView(
        kind=kind,
        heading=heading,
        lead=plain(lead),
        table=usual_table(spot, kind),
        dangers=tuple(
            DangerView(sign=_sign(spot, each), say=plain(phrase(f"caution.{each}")))
            for each in CAUTIONS[kind]
            if each in SIGNS
        ),
        cautions=tuple(
            plain(phrase(f"caution.{each}")) for each in CAUTIONS[kind] if each not in SIGNS
        ),
        source_label=phrase("sources"),
        sources=tuple(phrase(f"source.{each}") for each in SOURCES[kind]),
        links_label=_("More:"),
        links=tuple(_links(spot, kind)),
    )


def _sign(spot: Spot, caution: str) -> SignView:
    kind, word = SIGNS[caution]
    sign = spot.sign(kind, word)
    return replace(sign, word=phrase("cautions")) if kind == "mark" else sign


def _links(spot: Spot, kind: AmountKind) -> list[LinkView]:
    content = spot.desk.content
    product = {"liquid": "liquid", "powder": "powder", "tablets": "tablets"}.get(kind)
    return [
        LinkView(text=agent.name, href=spot.link(f"agents/{name}.html"))
        for name, agent in content.agents.items()
        if product
        and agent.family == "chlorine"
        and agent.product
        and agent.product.kind == product
    ]


def _words(kind: AmountKind) -> tuple[str, str]:
    return {
        "liquid": (
            _("Chlorine from a bottle"),
            _("How much from the bottle, and how to pour it with our own jug and syringe."),
        ),
        "powder": (
            _("Chlorine from powder"),
            _("How many grams, weighed on a scale."),
        ),
        "tablets": (
            _("Chlorine from tablets"),
            _("How many whole tablets, and how strong that truly is."),
        ),
        "boiling": (
            _("Boiling at an altitude"),
            _("Where water boils, and for how long instruments are boiled."),
        ),
        "gauge": (
            _("Gauge of a steam vessel"),
            _("What the gauge must show there. Some vessels cannot reach it: then it says so."),
        ),
        "out-time": (
            _("When is it out?"),
            _("The clock time to write on the log, over midnight too."),
        ),
        "discard": (
            _("When is a solution thrown away?"),
            _("Its date, a failed strip or a cloudy bath: whichever comes first."),
        ),
        "load": (
            _("Was this steam load held long enough?"),
            _("Write down what was read while it ran. A break begins the time anew."),
        ),
        "sets": (
            _("How many sets do we need?"),
            _("So that each case finds a set that is ready, and the reserve stays closed."),
        ),
    }[kind]
