"""Chlorine from a liquid, from a powder and from tablets: what the three have in common."""

from __future__ import annotations

from fractions import Fraction
from typing import Final

from basinside.derive.amounts.numbers import down, plain
from basinside.derive.amounts.typed import Reader, RefusedInputError
from basinside.model.amounts import Ground, Said, said
from basinside.units import PPM_IN_PERCENT

LITRE: Final = 1000  # mL
LEAST_WANTED, MOST_WANTED = "0.001", "20"  # % (our own bounds)
VOLUMES: Final = {"L": ("0.01", "1000"), "mL": ("10", "1000000")}
"""From a beaker to a tank (our own bounds): more is a slip of the unit."""
MUCH_STRONGER: Final = 2
"""Times as strong as wanted, from which the answer says so (common practice)."""


def read_volume(read: Reader) -> tuple[Fraction, str, str]:
    """Return a typed volume in mL, and the number and unit as they are echoed."""
    unit = read.choice("unit", VOLUMES)
    number = read.number("volume", *VOLUMES[unit], unit)
    return number * (LITRE if unit == "L" else 1), plain(number), unit


def read_wanted(read: Reader) -> Fraction:
    """Return the wanted strength in % available chlorine."""
    return read.number("wanted", LEAST_WANTED, MOST_WANTED, "%")


def echo(wanted: Fraction, volume: str, unit: str) -> tuple[Said, ...]:
    """Return the lines that echo what is made."""
    return (
        said("echo-wanted", percent=plain(wanted), ppm=plain(wanted * PPM_IN_PERCENT)),
        said("echo-volume", number=volume, unit=unit),
    )


def refuse_above(ground: Ground, kind: str, product: Fraction, wanted: Fraction) -> None:
    """Refuse what no water makes: a solution stronger than its product."""
    if wanted <= product:
        return
    others = [
        said(f"use-{name}", percent=strength)
        for name, strength in (("liquid", ground.liquid), ("powder", ground.powder))
        if name != kind and strength and Fraction(strength) >= wanted
    ]
    if ground.tablet_grams:
        others.append(said("use-tablets"))
    raise RefusedInputError(
        said("above-product", wanted=plain(wanted), product=plain(product)),
        said("use-stronger", percent=plain(wanted)),
        *others,
    )


def true_strength(product: Fraction, percent: Fraction, volume_ml: Fraction) -> str:
    """Return what a product really makes of a volume, in %, rounded down.

    ``product`` is in mL (or in g: one gram in 100 mL is one per cent).
    """
    return plain(down(product * percent / volume_ml))


def more_cautions(strength: str, wanted: Fraction) -> tuple[str, ...]:
    """Return what is said when rounding made it far stronger than wanted."""
    return ("much-stronger",) if Fraction(strength) > wanted * MUCH_STRONGER else ()
