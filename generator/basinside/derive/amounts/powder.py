"""Chlorine from a powder: weighed in whole grams, with the strength that truly results."""

from __future__ import annotations

from fractions import Fraction
from math import ceil

from basinside.derive.amounts.chlorine import (
    echo,
    more_cautions,
    read_volume,
    read_wanted,
    refuse_above,
    true_strength,
)
from basinside.derive.amounts.measures import measured_out
from basinside.derive.amounts.numbers import plain, up
from basinside.derive.amounts.typed import Reader
from basinside.model.amounts import CAUTIONS, SOURCES, Amount, Answer, Ground, said
from basinside.science.bounds import exact
from basinside.science.chlorine import grams_per_litre, stock_millilitres


def powder(ground: Ground, read: Reader) -> Answer:
    """Answer how many grams of a powder go into a volume of water."""
    active = read.number("strength", "1", "100", "%")
    wanted = read_wanted(read)
    volume_ml, volume, unit = read_volume(read)
    refuse_above(ground, "powder", active, wanted)
    # One gram in 100 mL is one per cent: the same proportion as for mL of a liquid.
    grams = exact("grams", stock_millilitres(volume_ml, active, wanted))
    out = measured_out(grams, ground, by_weight=True)
    whole = Fraction(ceil(grams))
    weighed = out.total if out.lines else whole
    true = true_strength(weighed, active, volume_ml)
    per_litre = up(exact("grams", grams_per_litre(active, wanted)))
    finer = up(grams)
    return Answer(
        kind="powder",
        inputs=(said("echo-powder", number=plain(active)), *echo(wanted, volume, unit)),
        amounts=(
            Amount(number=plain(whole), unit="g", of=said("of-powder", percent=plain(active))),
            *(
                (Amount(number=plain(finer), unit="g", of=said("of-finer-scale")),)
                if finer < whole
                else ()
            ),
        ),
        measured=out.lines,
        strength=true,
        working=(
            said(
                "work-powder" if finer == grams else "work-powder-up",
                product=plain(finer),
                number=volume,
                unit=unit,
                wanted=plain(wanted),
                active=plain(active),
            ),
            said("work-per-litre", grams=plain(per_litre)),
            *((said("work-whole-grams", grams=plain(whole)),) if whole != grams else ()),
            *out.working,
        ),
        cautions=(*CAUTIONS["powder"], *more_cautions(true, wanted)),
        sources=SOURCES["powder"],
    )
