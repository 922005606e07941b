"""The dilution card: each strength of the clinic from each product, in the house's own measures."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final

from basinside.model.amounts import AmountKind, Amounts, Answer, OwnStrength, Usual
from basinside.model.equipment import Agent
from basinside.quantity import NO_BREAK_SPACE
from basinside.render.amount_words import amount_text, said_words
from basinside.render.view_types import Prose, plain
from basinside.render.view_types.prints import (
    CardBlockView,
    CardCellView,
    CardRowView,
    SheetView,
)
from basinside.render.views.prints.frame import (
    foot,
    joined,
    notices,
    print_hint,
    unlinked,
    value_words,
)
from basinside.render.views.spot import Spot
from basinside.render.wording import _, listed

KINDS: Final[tuple[AmountKind, ...]] = ("liquid", "powder", "tablets")
SETTLE_FIGURE: Final = "powder.settle"


def has_dilutions(usual: Iterable[Usual]) -> bool:
    """Whether there is any dilution to put on a card."""
    return any(each.answer.kind in KINDS for each in usual)


def dilution_card_view(spot: Spot) -> SheetView:
    """Return the card that hangs where chlorine is mixed."""
    amounts = spot.desk.derived.amounts
    return SheetView(
        kind="card",
        title=_("Chlorine: how much into how much water"),
        lead=plain(
            _("Water first, then chlorine. Made up to the litres, not added to them. Rounded up.")
        ),
        warn=plain(_products(amounts)),
        hint=print_hint(),
        notices=notices(spot),
        foot=foot(spot, "dilution-card", ring="chemical-or-burn"),
        card=(
            *(
                _strength(spot, each, seen=n == 0)
                for n, each in enumerate(amounts.ground.strengths)
            ),
            _cautions(spot),
        ),
    )


def _products(amounts: Amounts) -> str:
    """Return what the products must be for these amounts to hold."""
    ground = amounts.ground
    said = []
    if ground.liquid:
        said.append(_("Bottle: {percent} % available chlorine.").format(percent=ground.liquid))
    if ground.powder:
        said.append(_("Powder: {percent} %, weighed.").format(percent=ground.powder))
    if ground.tablet_grams:
        said.append(_("Tablets: {grams} g each, whole.").format(grams=ground.tablet_grams))
    return " ".join((*said, _("Another label? These amounts do not hold. Ask first.")))


def _strength(spot: Spot, own: OwnStrength, *, seen: bool) -> CardBlockView:
    usual = spot.desk.derived.amounts.usual
    asked = [each for each in usual if each.about[:1] == (own.figure,)]
    volumes = list(dict.fromkeys(each.about[1] for each in asked))
    only = _only_from(spot, own)
    rows = []
    for kind in KINDS:
        answers = {each.about[1]: each.answer for each in asked if each.answer.kind == kind}
        if answers:
            rows.append(
                CardRowView(
                    label=_product(kind),
                    cells=tuple(_cell(answers.get(volume)) for volume in volumes),
                    refusal=_refusal(tuple(answers.values()), other=only not in {None, kind}),
                )
            )
    return CardBlockView(
        heading=_("{percent} %: {use}").format(
            percent=own.percent, use=own.name[:1].lower() + own.name[1:]
        ),
        heads=(
            _("from"),
            *(
                _("for 1 litre") if each == "1" else _("for {n} litres").format(n=each)
                for each in volumes
            ),
        ),
        heads_seen=seen,
        rows=tuple(rows),
    )


def _only_from(spot: Spot, own: OwnStrength) -> str | None:
    """Return the kind of product from which alone a strength for wiping is made, if it is one."""
    content = spot.desk.content
    for route in content.routes.values():
        if route.kind == "wiping" and route.strength and route.strength.figure == own.figure:
            agent = content.agents.get(route.agent or "")
            return agent.product.kind if agent and agent.product else None
    return None


def _refusal(answers: tuple[Answer, ...], *, other: bool) -> str:
    """Return why a strength is not made from a product; nothing when it is."""
    strong = [each for each in answers if "much-stronger" in each.cautions]
    if strong and len(strong) == len(answers):
        return _("Not from this. The least makes {percent} %: more than twice as strong.").format(
            percent=strong[0].strength
        )
    if other:
        return _("Not from this. So little cannot be measured well: take the bottle.")
    return ""


def _product(kind: str) -> str:
    return {
        "liquid": _("Bottle"),
        "powder": _("Powder"),
        "tablets": _("Tablets"),
    }.get(kind, kind)


def _cell(answer: Answer | None) -> CardCellView:
    if answer is None or not answer.amounts:
        return CardCellView(amount="–")
    makes = _("makes {percent} %").format(percent=answer.strength) if answer.strength else ""
    if "much-stronger" in answer.cautions:
        makes = _("makes {percent} %: far stronger").format(percent=answer.strength)
    return CardCellView(
        amount=amount_text(answer.amounts[0]).replace(" ", NO_BREAK_SPACE),
        note=makes,
        lines=tuple(said_words(each) for each in answer.measured),
    )


def _cautions(spot: Spot) -> CardBlockView:
    agents = [each for each in spot.desk.content.agents.values() if each.family == "chlorine"]
    settle = value_words(spot, SETTLE_FIGURE)
    life = next((unlinked(spot.value_prose(each.life)) for each in agents if each.life), ())
    return CardBlockView(
        heading=_("Every time"),
        lines=(
            *_worn(agents),
            plain(
                _(
                    "Never with acid, ammonia or another cleaner: it makes a gas that kills."
                    " Window open. Plastic, not metal. Tablets whole."
                )
            ),
            *(
                (joined(_("Powder: let the lime settle for "), settle, _(", pour off the clear.")),)
                if settle
                else ()
            ),
            joined(
                _("Write the hour on the label. Read a strip before each use."),
                *((_(" Throw it away after "), life, ".") if life else ()),
            ),
        ),
    )


def _worn(agents: list[Agent]) -> tuple[Prose, ...]:
    """Return what is worn with every product, and what one of them asks for besides."""
    worn: list[str] = list(dict.fromkeys(worn for each in agents for worn in each.wear))
    always = [each for each in worn if all(each in agent.wear for agent in agents)]
    said = [_("Wear: {worn}.").format(worn=listed(always))] if always else []
    for agent in agents:
        more: list[str] = [each for each in agent.wear if each not in always]
        if more:
            name = _product(agent.product.kind) if agent.product else agent.name
            said.append(_("{product}: also {worn}.").format(product=name, worn=listed(more)))
    return (plain(" ".join(said)),) if said else ()
