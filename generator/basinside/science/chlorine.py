"""Chlorine solutions: how much product and how much water.

Every strength is available chlorine: grams in 100 mL of a liquid, grams in 100 g of a powder.
A result is exact; where it has to be made whole, there is more product and never less.

Source: CDC, Best practices for environmental cleaning in global healthcare facilities with
limited resources, appendix E: parts of water, grams in a litre and degrees, with their examples.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from math import ceil

from basinside.science.bounds import Number, above_nought, within
from basinside.science.house_measures import Measure, Measured, Pour, in_house_measures

__all__ = [
    "Measure",
    "Measured",
    "Pour",
    "Tablets",
    "available_percent",
    "grams_per_litre",
    "in_house_measures",
    "parts_of_water",
    "percent_from_degrees",
    "percent_from_degrees_by_gas",
    "stock_millilitres",
    "strength_percent",
    "tablets_per_litre",
]

LOWEST_PERCENT = 0.000_001  # 0.01 mg in a litre: far below what any use asks for (our own bound)
HIGHEST_PERCENT = 100

# CDC, appendix E, footnote 2: one degree chlorum is about 0.3 %. It takes the product for weaker
# than the other view does, so that more of it is used: the safe side.
PERCENT_PER_DEGREE = 0.3
# From memory: a degree is one litre of chlorine gas in a litre of liquid, which weighs 3.17 g.
PERCENT_PER_DEGREE_BY_GAS = 0.317
HIGHEST_DEGREES = 100  # twice the strongest liquid that is sold, 48 degrees (our own bound)

# Grams in a mole: chlorine gas and sodium hypochlorite (IUPAC standard atomic weights).
CHLORINE_GRAMS_PER_MOLE = 70.906
HYPOCHLORITE_GRAMS_PER_MOLE = 74.442

PERCENT_TO_GRAMS_PER_LITRE = 10  # 1 g in 100 mL is 10 g in a litre


@dataclass(frozen=True, kw_only=True)
class Tablets:
    """Whole tablets for one litre, and the strength that they truly make."""

    tablets: int
    true_percent: float


def parts_of_water(stock_percent: Number, wanted_percent: Number) -> float:
    """Parts of water for one part of liquid product; a part is any one measure.

    Parameters
    ----------
    stock_percent:
        Strength of the product in % available chlorine, 0.000001 to 100.
    wanted_percent:
        Strength that is wanted in % available chlorine, not above the product's.

    Returns
    -------
    float
        Parts of water, (stock / wanted) - 1; nought when the product is used as it is.

    Raises
    ------
    ValueError
        When a strength is outside its range, or more is wanted than the product has.

    Examples
    --------
    >>> parts_of_water(3.5, 0.5)
    6.0
    """
    stock, wanted = _strengths("stock_percent", stock_percent, wanted_percent)
    return float(stock / wanted - 1)


def grams_per_litre(active_percent: Number, wanted_percent: Number) -> float:
    """Grams of powder for each litre of water.

    Parameters
    ----------
    active_percent:
        Available chlorine in the powder in % of its weight, 0.000001 to 100.
    wanted_percent:
        Strength that is wanted in % available chlorine, not above the powder's.

    Returns
    -------
    float
        Grams in a litre, (wanted / active) x 1000.

    Raises
    ------
    ValueError
        When a strength is outside its range, or more is wanted than the powder has.

    Examples
    --------
    >>> round(grams_per_litre(35, 0.5), 1)
    14.3
    """
    active, wanted = _strengths("active_percent", active_percent, wanted_percent)
    return float(wanted / active * 1000)


def stock_millilitres(volume_ml: Number, stock_percent: Number, wanted_percent: Number) -> float:
    """Liquid product for a bath that is then made up with water to its volume.

    Made up to the volume is not the same as added to it: 100 mL of 5 % made up to 1 L is 0.5 %,
    but added to 1 L it is 0.45 %.

    Parameters
    ----------
    volume_ml:
        The whole bath in mL, above 0.
    stock_percent:
        Strength of the product in % available chlorine, 0.000001 to 100.
    wanted_percent:
        Strength that is wanted in % available chlorine, not above the product's.

    Returns
    -------
    float
        Product in mL.

    Raises
    ------
    ValueError
        When a parameter is outside its range, or more is wanted than the product has.

    Examples
    --------
    >>> stock_millilitres(5000, 5, 0.1)
    100.0
    """
    volume = above_nought("volume_ml", volume_ml)
    stock, wanted = _strengths("stock_percent", stock_percent, wanted_percent)
    return float(volume * wanted / stock)


def strength_percent(stock_percent: Number, stock_ml: Number, water_ml: Number) -> float:
    """Strength that a liquid product truly makes with the water it is added to.

    Parameters
    ----------
    stock_percent:
        Strength of the product in % available chlorine, 0.000001 to 100.
    stock_ml, water_ml:
        Product above 0 and water from 0, both in mL or both in parts.

    Returns
    -------
    float
        Strength in % available chlorine.

    Raises
    ------
    ValueError
        When a parameter is outside its range.

    Examples
    --------
    >>> round(strength_percent(5, 100, 1000), 4)
    0.4545
    """
    stock = within("stock_percent", stock_percent, LOWEST_PERCENT, HIGHEST_PERCENT)
    product = above_nought("stock_ml", stock_ml)
    water = above_nought("water_ml", water_ml) if water_ml != 0 else Fraction(0)
    return float(stock * product / (product + water))


def percent_from_degrees(degrees: Number) -> float:
    """Strength of a product that is labelled in chlorometric degrees, on the safe side.

    Parameters
    ----------
    degrees:
        Degrees on the label, 0 to 100.

    Returns
    -------
    float
        Strength in % available chlorine, 0.3 % a degree.

    Raises
    ------
    ValueError
        When the degrees are outside 0 to 100 or no number.

    Examples
    --------
    >>> percent_from_degrees(8)
    2.4
    """
    return _from_degrees(degrees, PERCENT_PER_DEGREE)


def percent_from_degrees_by_gas(degrees: Number) -> float:
    """Return the other view of the same label: 0.317 % a degree, by the volume of the gas.

    Not for measuring out: it takes the product for stronger, and so uses less of it.
    Parameters, errors and unit are those of `percent_from_degrees`.

    Examples
    --------
    >>> round(percent_from_degrees_by_gas(12), 2)
    3.8
    """
    return _from_degrees(degrees, PERCENT_PER_DEGREE_BY_GAS)


def available_percent(hypochlorite_percent: Number) -> float:
    """Available chlorine of a liquid that is labelled in % sodium hypochlorite by mass.

    Parameters
    ----------
    hypochlorite_percent:
        Sodium hypochlorite in %, 0.000001 to 100.

    Returns
    -------
    float
        Strength in % available chlorine, 0.9525 of the label.

    Raises
    ------
    ValueError
        When the label is outside its range.

    Examples
    --------
    >>> round(available_percent(5.25), 2)
    5.0
    """
    label = within("hypochlorite_percent", hypochlorite_percent, LOWEST_PERCENT, HIGHEST_PERCENT)
    return float(label) * CHLORINE_GRAMS_PER_MOLE / HYPOCHLORITE_GRAMS_PER_MOLE


def tablets_per_litre(grams_active_per_tablet: Number, wanted_percent: Number) -> Tablets:
    """Whole tablets for one litre: rounded up, so that the solution is never too weak.

    Parameters
    ----------
    grams_active_per_tablet:
        Available chlorine in one tablet in g, 0.000001 to 1000.
    wanted_percent:
        Strength that is wanted in % available chlorine, 0.000001 to 100.

    Returns
    -------
    Tablets
        The whole number, at least one, and the strength in % that it truly makes.

    Raises
    ------
    ValueError
        When a parameter is outside its range.

    Examples
    --------
    >>> tablets_per_litre(1.5, 0.1)
    Tablets(tablets=1, true_percent=0.15)
    """
    grams = within("grams_active_per_tablet", grams_active_per_tablet, LOWEST_PERCENT, 1000)
    wanted = within("wanted_percent", wanted_percent, LOWEST_PERCENT, HIGHEST_PERCENT)
    tablets = ceil(wanted * PERCENT_TO_GRAMS_PER_LITRE / grams)
    return Tablets(
        tablets=tablets, true_percent=float(tablets * grams / PERCENT_TO_GRAMS_PER_LITRE)
    )


def _strengths(
    stock_name: str, stock_percent: Number, wanted_percent: Number
) -> tuple[Fraction, Fraction]:
    stock = within(stock_name, stock_percent, LOWEST_PERCENT, HIGHEST_PERCENT)
    wanted = within("wanted_percent", wanted_percent, LOWEST_PERCENT, HIGHEST_PERCENT)
    if wanted > stock:
        raise ValueError(
            f"wanted_percent must not be above {stock_name}, {stock_percent}: "
            f"no water makes it {wanted_percent}"
        )
    return stock, wanted


def _from_degrees(degrees: Number, percent_per_degree: float) -> float:
    read = within("degrees", degrees, 0, HIGHEST_DEGREES)
    return float(read * within("percent_per_degree", percent_per_degree, 0, 1))
