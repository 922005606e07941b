"""Chlorine from a bottle: any strength, any label, any volume, in the house's own measures."""

from __future__ import annotations

from fractions import Fraction
from typing import Final

from basinside.derive.amounts.chlorine import (
    echo,
    more_cautions,
    read_volume,
    read_wanted,
    refuse_above,
    true_strength,
)
from basinside.derive.amounts.measures import MANY_MOVES, measured_out
from basinside.derive.amounts.numbers import down, plain, up
from basinside.derive.amounts.typed import Reader
from basinside.model.amounts import CAUTIONS, SOURCES, Amount, Answer, Ground, Said, said
from basinside.science.bounds import exact
from basinside.science.chlorine import (
    PERCENT_PER_DEGREE,
    PERCENT_PER_DEGREE_BY_GAS,
    available_percent,
    parts_of_water,
    percent_from_degrees,
    stock_millilitres,
)

LABELS: Final = {
    "available": ("0.1", "20", "%"),
    "degrees": ("1", "60", "degrees"),
    "hypochlorite": ("0.1", "20", "%"),
}
"""What a label may say, with the bounds of what is sold (our own): most bottles have 2 to 15 %."""


def liquid(ground: Ground, read: Reader) -> Answer:
    """Answer how much of a liquid product goes into a volume that is made up with water."""
    label = read.choice("label", LABELS)
    strength = read.number("strength", *LABELS[label])
    stock, label_lines = _stock(label, strength)
    wanted = read_wanted(read)
    volume_ml, volume, unit = read_volume(read)
    refuse_above(ground, "liquid", stock, wanted)
    product = exact("product", stock_millilitres(volume_ml, stock, wanted))
    finer = min(up(product), volume_ml)
    out = measured_out(product, ground, by_weight=False, most=volume_ml)
    shown = out.total if out.lines else finer
    true = true_strength(shown, stock, volume_ml)
    rounded = "" if finer == product else "-up"
    parts = exact("parts", parts_of_water(stock, wanted))
    return Answer(
        kind="liquid",
        inputs=(*label_lines[:1], *echo(wanted, volume, unit)),
        amounts=(
            Amount(number=plain(shown), unit="mL", of=said("of-liquid", percent=plain(stock))),
            Amount(
                number=plain(volume_ml - shown),
                unit="mL",
                of=said("of-water", number=volume, unit=unit),
            ),
            *(
                (Amount(number=plain(finer), unit="mL", of=said("of-finer-measure")),)
                if finer < shown
                else ()
            ),
        ),
        measured=out.lines,
        strength=true,
        working=(
            *label_lines[1:],
            said(
                f"work-liquid{rounded}",
                product=plain(finer),
                number=volume,
                unit=unit,
                wanted=plain(wanted),
                stock=plain(stock),
            ),
            said("work-parts", parts=plain(down(parts))) if parts else said("work-neat"),
            *out.working,
        ),
        cautions=(
            *CAUTIONS["liquid"],
            *more_cautions(true, wanted),
            *(("measures-coarse",) if ground.measures and not out.lines else ()),
            *(("many-pours",) if out.moves > MANY_MOVES else ()),
        ),
        sources=SOURCES["liquid"],
    )


def _stock(label: str, strength: Fraction) -> tuple[Fraction, tuple[Said, ...]]:
    """Return a product's strength in % available chlorine, with its echo and its working."""
    number = plain(strength)
    if label == "degrees":
        stock = exact("stock", percent_from_degrees(strength))
        return stock, (
            said("echo-degrees", number=number),
            said(
                "work-degrees",
                number=number,
                each=plain(exact("degree", PERCENT_PER_DEGREE)),
                percent=plain(stock),
                other=plain(exact("degree", PERCENT_PER_DEGREE_BY_GAS)),
            ),
        )
    if label == "hypochlorite":
        stock = down(exact("stock", available_percent(strength)))
        return stock, (
            said("echo-hypochlorite", number=number),
            said("work-hypochlorite", number=number, percent=plain(stock)),
        )
    return strength, (said("echo-available", number=number),)
