"""The dilution card: each strength of the clinic from each product, in the house's own measures."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final

from basinside.model.amounts import AmountKind, Amounts, Answer, OwnStrength, Usual
from basinside.quantity import NO_BREAK_SPACE
from basinside.render.amount_words import amount_text, said_words
from basinside.render.view_types import plain
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
                _strength(amounts.usual, each, seen=n == 0)
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


def _strength(usual: tuple[Usual, ...], own: OwnStrength, *, seen: bool) -> CardBlockView:
    asked = [each for each in usual if each.about[:1] == (own.figure,)]
    volumes = list(dict.fromkeys(each.about[1] for each in asked))
    rows = []
    for kind in KINDS:
        answers = {each.about[1]: each.answer for each in asked if each.answer.kind == kind}
        if answers:
            rows.append(
                CardRowView(
                    label=_product(kind),
                    cells=tuple(_cell(answers.get(volume)) for volume in volumes),
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


def _product(kind: AmountKind) -> str:
    return {
        "liquid": _("Bottle"),
        "powder": _("Powder"),
        "tablets": _("Tablets"),
    }[kind]


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
    worn: list[str] = list(dict.fromkeys(worn for each in agents for worn in each.wear))
    settle = value_words(spot, SETTLE_FIGURE)
    life = next((unlinked(spot.value_prose(each.life)) for each in agents if each.life), ())
    return CardBlockView(
        heading=_("Every time"),
        lines=(
            *((plain(_("Wear: {worn}.").format(worn=listed(worn))),) if worn else ()),
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
