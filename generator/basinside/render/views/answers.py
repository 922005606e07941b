"""What stands in the place of options: an order, a number or pairs, for the list and the player."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from typing import Any

from basinside.model.item_kinds import (
    NumberFrom,
    PairKept,
    amount_of,
    pairs_that_matter,
    right_sides,
)
from basinside.model.quiz import Item
from basinside.quantity import Quantity
from basinside.render.view_types import (
    MatchedView,
    MatchView,
    MistakeView,
    NumberView,
    OrderView,
    PairKeptView,
    Prose,
    SpanView,
    plain,
)
from basinside.render.views.spot import Spot
from basinside.render.wording import _
from basinside.units import UNITS, typed_units


def order_view(spot: Spot, item: Item) -> OrderView | None:
    """Return the lines of an order, mixed in a way that is not right, and why they stand so."""
    if not item.entries:
        return None
    kept = pairs_that_matter(item.entries, item.matters)
    texts = [spot.prose(entry.text) for entry in item.entries]
    return OrderView(
        mixed=tuple(texts[n] for n in mixed_order([_said(text) for text in texts], kept)),
        lines=tuple(texts),
        because=spot.prose(item.because),
        belief=belief(spot, item.shows),
        kept=tuple(
            PairKeptView(
                rule=_("“{first}” comes before “{then}”.").format(
                    first=_said(texts[each.first]), then=_said(texts[each.then])
                ),
                because=spot.prose(each.said.because) if each.said else (),
                belief=belief(spot, each.said.shows) if each.said else (),
            )
            for each in kept
        ),
    )


def mixed_order(texts: Sequence[str], kept: Sequence[PairKept]) -> list[int]:
    """Return places in the order of their words, or backwards where that would be right."""
    order = sorted(range(len(texts)), key=lambda n: texts[n].casefold())
    right = all(order.index(pair.first) < order.index(pair.then) for pair in kept)
    return order[::-1] if right else order


def number_view(spot: Spot, item: Item) -> NumberView | None:
    """Return what number is right and what other numbers come from."""
    bounds = item.number.bounds(spot.desk.content.figures) if item.number else None
    if item.number is None or bounds is None:
        return None
    low, right, high = bounds
    accepted = ""
    if low != right or high != right:
        accepted = _("Anything from {low} to {high} counts as right.").format(
            low=low.text(), high=high.text()
        )
    return NumberView(
        ask=_("Answer with a number in {unit}.").format(unit=UNITS[right.unit].many)
        if UNITS[right.unit].many
        else _("Answer with a number."),
        right_word=_("Right:"),
        right=_amount(spot, item.number.right),
        accepted=accepted,
        because=spot.prose(item.number.because),
        mistakes=tuple(
            MistakeView(
                answer=_amount(spot, each.number),
                because=spot.prose(each.because),
                belief=belief(spot, each.shows),
            )
            for each in item.number.mistakes
        ),
    )


def match_view(spot: Spot, item: Item) -> MatchView | None:
    """Return left sides in their order and right sides in the order of their words."""
    if not item.pairs:
        return None
    rights = [spot.prose(each) for each in right_sides(item.pairs, item.extra)]
    return MatchView(
        left_word=_("Match each of these:"),
        right_word=_("with one of these; one may fit several, or none:"),
        lefts=tuple(spot.prose(pair.left) for pair in item.pairs),
        rights=tuple(sorted(rights, key=lambda each: _said(each).casefold())),
        pairs=tuple(
            MatchedView(
                left=spot.prose(pair.left),
                right=spot.prose(pair.right),
                because=spot.prose(pair.because),
                mistakes=tuple(
                    MistakeView(
                        answer=spot.prose(each.right),
                        because=spot.prose(each.because),
                        belief=belief(spot, each.shows),
                    )
                    for each in pair.mistakes
                ),
            )
            for pair in item.pairs
        ),
    )


def belief(spot: Spot, shows: str | None) -> Prose:
    """Return the belief behind a wrong answer as a sentence of its own, or nothing."""
    said = spot.prose(shows)
    if not said:
        return ()
    before, after = _("Whoever answers so may believe: {belief}.").split("{belief}")
    return (SpanView(text=before), *said, SpanView(text=after))


def answer_data(spot: Spot, item: Item) -> dict[str, Any]:
    """Return what the player needs besides the words of the views: places, units, numbers."""
    if item.entries:
        kept = pairs_that_matter(item.entries, item.matters)
        return {"before": [[each.first, each.then] for each in kept]}
    if item.pairs:
        rights = right_sides(item.pairs, item.extra)
        return {
            "rights": [spans_for_script(spot.prose(each)) for each in rights],
            "keys": [rights.index(pair.right) for pair in item.pairs],
            "wrong": [
                [rights.index(each.right) for each in pair.mistakes if each.right in rights]
                for pair in item.pairs
            ],
        }
    figures = spot.desk.content.figures
    bounds = item.number.bounds(figures) if item.number else None
    if item.number is None or bounds is None:
        return {}
    right = bounds[1]
    unit = UNITS[right.unit]
    return {
        "unit": [unit.one, unit.many],
        "units": {
            name: [str(worth.numerator), str(worth.denominator)]
            for name, worth in typed_units(right.unit).items()
        },
        "unsafe": item.number.unsafe,
        "numbers": [
            _typed(amount_of(each.number, figures), right.unit) for each in item.number.mistakes
        ],
    }


def _typed(amount: Quantity | None, unit: str) -> list[str]:
    """Return a number in a unit as a fraction, for a comparison that loses nothing."""
    number = amount.in_unit(unit).number if amount else Fraction(0)
    return [str(number.numerator), str(number.denominator)]


def _amount(spot: Spot, written: Quantity | NumberFrom) -> Prose:
    figures = spot.desk.content.figures
    if isinstance(written, NumberFrom) and written.times == 1 and written.figure in figures:
        return (spot.value(written.figure, figures[written.figure]),)
    amount = amount_of(written, figures)
    if amount is None:
        return plain(_("not stated"))
    return (SpanView(kind="value", text=amount.text(), machine=amount.base_text()),)


def _said(prose: Prose) -> str:
    return "".join(span.text for span in prose)


def spans_for_script(prose: Prose) -> list[Any]:
    """Return a sentence for a script: text as it is, a value with its machine form."""
    return [
        {"text": span.text, "value": span.machine} if span.kind == "value" else span.text
        for span in prose
    ]
