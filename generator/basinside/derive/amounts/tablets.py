"""Chlorine from tablets: whole ones for each litre, with the strength that truly results."""

from __future__ import annotations

from fractions import Fraction
from math import ceil

from basinside.derive.amounts.chlorine import (
    LITRE,
    echo,
    more_cautions,
    read_volume,
    read_wanted,
    true_strength,
)
from basinside.derive.amounts.numbers import plain
from basinside.derive.amounts.typed import Reader
from basinside.model.amounts import CAUTIONS, SOURCES, Amount, Answer, Ground, said
from basinside.science.chlorine import tablets_per_litre

PERCENT: int = 100


def tablets(_ground: Ground, read: Reader) -> Answer:
    """Answer how many tablets go into a volume of water.

    Whole tablets are counted for each litre, as the published table does, and the last part of a
    litre has whole ones too.
    """
    grams = read.number("grams", "0.01", "20", "g")
    wanted = read_wanted(read)
    volume_ml, volume, unit = read_volume(read)
    per_litre = tablets_per_litre(grams, wanted).tablets
    count = Fraction(ceil(volume_ml * per_litre / LITRE))
    true = true_strength(count * grams, Fraction(PERCENT), volume_ml)
    return Answer(
        kind="tablets",
        inputs=(said("echo-tablets", number=plain(grams)), *echo(wanted, volume, unit)),
        amounts=(
            Amount(
                number=plain(count), unit="tablets", of=said("of-tablets", number=volume, unit=unit)
            ),
        ),
        strength=true,
        working=(
            said("work-each-litre", wanted=plain(wanted), grams=plain(grams), count=str(per_litre)),
            said("work-tablets", count=plain(count), number=volume, unit=unit, each=str(per_litre)),
        ),
        cautions=(*CAUTIONS["tablets"], *more_cautions(true, wanted)),
        sources=SOURCES["tablets"],
    )
